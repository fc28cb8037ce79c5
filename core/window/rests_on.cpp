// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/rests_on.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "core/hydraulics/boom_line.h"
#include "core/model/program_values.h"

namespace bw {
namespace {

constexpr double kFelt = 0.005;  ///< a smaller relative move of an end is not worth saying
constexpr double kWorn = 1.10;   ///< usual limit of wear: common practice, no source

/// The value of a field as a quantity, if it is one.
template <class T>
std::optional<AnyQuantity> quantityOf(const T& value) {
    if constexpr (requires { DimensionOf<T>::value; })
        return anyQuantity(value);
    else
        return std::nullopt;
}

/// Keys of the control: how little it lets through, and what an open throttle takes. By-pass and
/// least settings count for nothing where pulsed nozzles set the flow.
void addControlKeys(const Machine& m, std::set<std::string>& keys) {
    const bool pulsed = m.pulsed.pressure.has_value();
    const auto control = valueOr(m.control, Control::PumpSpeed);
    if (!pulsed || control == Control::Throttle) keys.insert("control");
    if (control == Control::PumpSpeed && !pulsed) keys.insert("pump.least_speed");
    if (control == Control::Throttle || (control == Control::Bypass && !pulsed))
        keys.insert({"control_valve.flow", "control_valve.at"});
    if (control == Control::Throttle && !pulsed) keys.insert("control_valve.least_opening");
}

/// Keys of the machine that decide what the pump can feed and how little the control lets through.
void addSupplyKeys(const Machine& m, bool narrowed, std::set<std::string>& keys) {
    keys.insert({"pump.kind", "losses.suction.pressure", "losses.suction.at",
                 "pump.suction_available", "pump.relief_pressure", "losses.line.pressure",
                 "losses.line.at", "losses.plumbing.pressure", "losses.plumbing.at",
                 "agitation.flow", "agitation.at"});
    addControlKeys(m, keys);
    if (valueOr(m.pump.kind, PumpKind::Centrifugal) == PumpKind::Centrifugal)
        keys.insert({"pump.shutoff_pressure", "pump.curve"});
    else
        keys.insert("pump.rated_flow");
    if (narrowed) keys.insert({"restrictor.hole", "restrictor.discharge_coefficient"});
}

/// The field that the meter's lowest flow comes from: its own, else the changeover flow.
std::string meterKey(bool narrowed, const Machine& m) {
    const auto& own = narrowed ? m.meter.minimumNarrowed : m.meter.minimumFullBore;
    if (!own && hasRestrictor(m)) return "restrictor.changeover_flow";
    return narrowed ? "meter.minimum_narrowed" : "meter.minimum_full_bore";
}

/// Keys of the machine that the window uses.
std::set<std::string> machineKeys(const Machine& m, RestrictorPosition position) {
    std::set<std::string> keys{
        "spacing",           "sections",        "senses", "losses.section.pressure",
        "losses.section.at", "limits.top_speed"};
    const bool pulsed = m.pulsed.pressure.has_value();
    if (pulsed)
        keys.insert({"pulsed.pressure", "pulsed.duty_min", "pulsed.duty_max"});
    else
        keys.insert({"limits.pressure_floor", "limits.pressure_ceiling"});
    if (m.checkValve.openingPressure)
        keys.insert({"check_valve.kind", "check_valve.opening_pressure"});
    const bool narrowed = hasRestrictor(m) && position == RestrictorPosition::Narrowed;
    if (m.pump.kind) addSupplyKeys(m, narrowed, keys);
    if (!hasMeter(m)) return keys;
    keys.insert({"meter.maximum", meterKey(narrowed, m)});
    return keys;
}

std::set<std::string> nozzleKeys(const Nozzle& n, const Job& job) {
    std::set<std::string> keys{"pressure_min", "pressure_max"};
    if (n.table)
        keys.insert("table");
    else
        keys.insert({"flow", "at", "exponent"});
    if (!job.droplets.empty()) keys.insert("droplets");
    if (job.driftPercent) keys.insert("drift");
    return keys;
}

std::set<std::string> jobKeys() {
    return {"rate",  "rate_least", "rate_most",        "slow",
            "usual", "fast",       "specific_gravity", "drift_percent"};
}

/// The field that a limit is made of, as far as it is one.
std::string keyOf(Limit limit, bool narrowed, const Machine& m) {
    const bool centrifugal = valueOr(m.pump.kind, PumpKind::Centrifugal) == PumpKind::Centrifugal;
    switch (limit) {
        case Limit::PressureFloor:
            return "machine.limits.pressure_floor";
        case Limit::PressureCeiling:
            return "machine.limits.pressure_ceiling";
        case Limit::NozzleMinimum:
            return "nozzle.pressure_min";
        case Limit::NozzleMaximum:
            return "nozzle.pressure_max";
        case Limit::DropletsTooCoarse:
        case Limit::DropletsTooFine:
        case Limit::DropletsUnlisted:
            return "nozzle.droplets";
        case Limit::DriftClass:
            return "nozzle.drift";
        case Limit::MeterMinimum:
            return "machine." + meterKey(narrowed, m);
        case Limit::MeterMaximum:
            return "machine.meter.maximum";
        case Limit::DutyMinimum:
            return "machine.pulsed.duty_min";
        case Limit::DutyMaximum:
            return "machine.pulsed.duty_max";
        case Limit::TopSpeed:
            return "machine.limits.top_speed";
        case Limit::Pump:
            return centrifugal ? "machine.pump.shutoff_pressure" : "machine.pump.rated_flow";
        case Limit::ReliefValve:
            return "machine.pump.relief_pressure";
        case Limit::Suction:
            return "machine.losses.suction.pressure";
        case Limit::ControlMinimum:
            return valueOr(m.control, Control::PumpSpeed) == Control::PumpSpeed
                       ? "machine.pump.least_speed"
                       : "machine.control_valve.flow";
        default:
            return {};
    }
}

using KeyValue = std::pair<std::string, AnyQuantity>;

/// What the program takes for a supply of which the profile leaves something open.
void addSupplyValues(const Machine& m, bool narrowed, std::vector<KeyValue>& out) {
    const bool isLossKnown = squareLoss(m.losses.suction).si() > 0;
    if (isLossKnown && !m.pump.suctionAvailable)
        out.emplace_back("pump.suction_available", anyQuantity(program::kSuctionAvailable));
    if (narrowed && m.restrictor.hole && !m.restrictor.dischargeCoefficient)
        out.emplace_back("restrictor.discharge_coefficient",
                         anyQuantity(program::kDischargeCoefficient));
}

/// The values that the window uses and nobody gave.
std::vector<KeyValue> programValues(const Machine& m, bool narrowed) {
    std::vector<KeyValue> out;
    if (m.pulsed.pressure && !m.pulsed.dutyMin)
        out.emplace_back("pulsed.duty_min", anyQuantity(program::kDutyLeast));
    if (m.pulsed.pressure && !m.pulsed.dutyMax)
        out.emplace_back("pulsed.duty_max", anyQuantity(program::kDutyMost));
    if (m.pump.kind) addSupplyValues(m, narrowed, out);
    const bool isByChangeover = narrowed && !m.meter.minimumNarrowed && m.restrictor.changeoverFlow;
    if (hasMeter(m) && isByChangeover)
        out.emplace_back("meter.minimum_narrowed",
                         anyQuantity(*meterMinimum(m, RestrictorPosition::Narrowed)));
    return out;
}

/// The key under which a limit names what it is made of, for a value of the program.
std::string keyOfProgram(const std::string& where) {
    if (where == "machine.pump.suction_available") return "machine.losses.suction.pressure";
    if (where == "machine.meter.minimum_narrowed") return "machine.restrictor.changeover_flow";
    return where;
}

std::optional<WindowEnds> solvedEnds(const Machine& m, const Nozzle& n, const Job& j) {
    const auto ends = windowEnds(m, n, j);
    return ends ? std::optional(*ends) : std::nullopt;
}

/// Sets a field by its key to one end of its own range.
template <class R>
void setToEnd(R& record, const std::string& key, bool upper) {
    visitFields(record, [&](std::string_view k, auto& field) {
        if (k == key && field) field->value = upper ? *field->to : *field->from;
    });
}

class Reader {
  public:
    Reader(const Machine& machine, const Nozzle& nozzle, const Job& job, const WindowModel& model)
        : m_machine(machine), m_nozzle(nozzle), m_job(job) {
        const auto w = model.window();
        m_narrowed = model.position() == RestrictorPosition::Narrowed;
        const WindowEnd& low = w.allRates ? w.allRates->low : w.low;
        const WindowEnd& high = w.allRates ? w.allRates->high : w.high;
        m_binding = {keyOf(low.limit, m_narrowed, machine), keyOf(high.limit, m_narrowed, machine)};
    }

    std::vector<RestsOn> read(RestrictorPosition position) {
        readPart("machine.", m_machine, machineKeys(m_machine, position),
                 [this](const std::string& key, bool upper) {
                     Machine m = m_machine;
                     setToEnd(m, key, upper);
                     return solvedEnds(m, m_nozzle, m_job);
                 });
        for (const auto& [key, value] : programValues(m_machine, m_narrowed)) {
            RestsOn item;
            item.where = "machine." + key;
            item.origin = Origin::Assumed;
            item.value = value;
            item.isProgram = true;
            item.binds = m_binding.count(keyOfProgram(item.where)) > 0;
            m_items.push_back(std::move(item));
        }
        readPart("nozzle.", m_nozzle, nozzleKeys(m_nozzle, m_job),
                 [this](const std::string& key, bool upper) {
                     Nozzle n = m_nozzle;
                     setToEnd(n, key, upper);
                     return solvedEnds(m_machine, n, m_job);
                 });
        readPart("job.", m_job, jobKeys(), [this](const std::string& key, bool upper) {
            Job j = m_job;
            setToEnd(j, key, upper);
            return solvedEnds(m_machine, m_nozzle, j);
        });
        return std::move(m_items);
    }

  private:
    template <class R, class Solve>
    void readPart(const std::string& part, const R& record, const std::set<std::string>& keys,
                  Solve&& solve) {
        visitFields(record, [&](std::string_view k, const auto& field) {
            const std::string key(k);
            if (!field || keys.count(key) == 0) return;
            RestsOn item;
            item.where = part + key;
            item.origin = field->origin;
            item.date = field->date;
            item.value = quantityOf(field->value);
            item.binds = m_binding.count(item.where) > 0;
            item.hasRange = field->origin == Origin::Assumed && field->from && field->to;
            if (item.hasRange)
                item.move = moveOf(quantityOf(*field->from), quantityOf(*field->to), key, solve);
            if (item.where == "nozzle.flow" && field->origin != Origin::Measured)
                item.worn = wornEnds();
            m_items.push_back(std::move(item));
        });
    }

    template <class Solve>
    std::optional<Move> moveOf(std::optional<AnyQuantity> from, std::optional<AnyQuantity> to,
                               const std::string& key, Solve& solve) {
        if (!from || !to) return std::nullopt;
        const auto atFrom = solve(key, false);
        const auto atTo = solve(key, true);
        if (!atFrom || !atTo) return std::nullopt;
        return Move{*from, *to, *atFrom, *atTo};
    }

    std::optional<WindowEnds> wornEnds() const {
        Nozzle n = m_nozzle;
        n.flow->value = kWorn * n.flow->value;
        return solvedEnds(m_machine, n, m_job);
    }

    const Machine& m_machine;
    const Nozzle& m_nozzle;
    const Job& m_job;
    bool m_narrowed = false;
    std::set<std::string> m_binding;
    std::vector<RestsOn> m_items;
};

double part(std::optional<Speed> a, std::optional<Speed> b) {
    if (a.has_value() != b.has_value()) return std::numeric_limits<double>::infinity();
    if (!a) return 0.0;
    const double size = std::max(a->si(), b->si());
    return size > 0 ? std::abs(a->si() - b->si()) / size : 0.0;
}

double reach(const Move& move) {
    if (move.atFrom.empty || move.atTo.empty) return std::numeric_limits<double>::infinity();
    return std::max(part(move.atFrom.low, move.atTo.low), part(move.atFrom.high, move.atTo.high));
}

int rank(const RestsOn& item) {
    if (item.move && reach(*item.move) > kFelt) return 0;
    if (item.binds) return 1;
    if (item.worn) return 2;
    return item.origin == Origin::Assumed ? 3 : 4;
}

bool comesFirst(const RestsOn& a, const RestsOn& b) {
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return rank(a) == 0 && reach(*a.move) > reach(*b.move);
}

void addEnds(Fact& fact, const char* name, std::optional<Speed> speed) {
    if (speed) fact.arguments.push_back({name, anyQuantity(*speed)});
}

}  // namespace

std::vector<RestsOn> restsOn(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto model = WindowModel::make(machine, nozzle, job);
    if (!model) return {};
    auto items = Reader(machine, nozzle, job, *model).read(model->position());
    std::stable_sort(items.begin(), items.end(), comesFirst);
    return items;
}

Fact moveFact(const Move& move) {
    Fact fact{"rests.moves_none", {{"from", move.from}, {"to", move.to}}};
    if (move.atFrom.empty || move.atTo.empty) {
        fact.code = move.atFrom.empty && move.atTo.empty ? "rests.empty_both" : "rests.empty_one";
        return fact;
    }
    const bool low = part(move.atFrom.low, move.atTo.low) > kFelt;
    const bool high = part(move.atFrom.high, move.atTo.high) > kFelt;
    if (high && (!move.atFrom.high || !move.atTo.high)) {
        fact.code = "rests.opens_high";
        return fact;
    }
    addEnds(fact, "low_from", move.atFrom.low);
    addEnds(fact, "low_to", move.atTo.low);
    addEnds(fact, "high_from", move.atFrom.high);
    addEnds(fact, "high_to", move.atTo.high);
    if (low && high)
        fact.code = "rests.moves_both";
    else if (low || high)
        fact.code = low ? "rests.moves_low" : "rests.moves_high";
    return fact;
}

Fact wornFact(const WindowEnds& worn) {
    if (worn.empty) return {"rests.worn_empty", {}};
    Fact fact{worn.high ? "rests.worn" : "rests.worn_from", {}};
    addEnds(fact, "low", worn.low);
    addEnds(fact, "high", worn.high);
    return fact;
}

}  // namespace bw
