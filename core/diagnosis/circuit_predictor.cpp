// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/circuit_predictor.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/diagnosis/described.h"
#include "core/model/machine_fields.h"
#include "core/model/start_values.h"
#include "core/units/parse.h"

namespace bw {
namespace {

constexpr std::size_t kMostSeverities = 14;
constexpr std::size_t kFirstSeverities = 5;
/// Two neighbouring severities may differ by so many reading errors.
constexpr double kStepErrors = 1.5;
constexpr double kFeltErrors = 1.5;
constexpr double kFeltReal = 0.03;
/// Nobody calls about what nobody can feel (judgement: nearly nobody).
constexpr double kUnfelt = 0.05;

/// Causes whose equations are another's.
std::string injectedAs(const std::string& cause) {
    if (cause == "suction_valve_misset") return "suction_strainer";
    if (cause == "pump_airlocked") return "pump_worn";
    return cause;
}

/// A steady run cannot show these; the caller feels them otherwise.
bool isFeltElsewhere(const std::string& cause) {
    return cause == "gain_low" || cause == "actuator_slow" || cause == "checks_drip";
}

/// What a strainer or hose loses goes with 1/(1−x)²: even steps of log(1−x).
bool isBlockage(const std::string& cause) {
    static const std::set<std::string> kBlockages{
        "suction_strainer", "suction_hose", "line_strainer", "section_strainer", "hose_kinked"};
    return kBlockages.contains(cause);
}

double severityAt(const std::string& cause, const SeverityRange& range, double part) {
    if (!isBlockage(cause) || range.to >= 1) return range.from + (range.to - range.from) * part;
    return 1 - (1 - range.from) * std::pow((1 - range.to) / (1 - range.from), part);
}

/// How far apart two scenarios lie, in reading errors.
double apart(const Scenario& a, const Scenario& b) {
    double most = 0;
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (!a.readings[r] || !b.readings[r]) continue;
        const auto kind = static_cast<Reading>(r);
        const double error =
            std::min(readingError(kind, *a.readings[r]), readingError(kind, *b.readings[r]));
        if (error > 0) most = std::max(most, std::abs(*a.readings[r] - *b.readings[r]) / error);
    }
    return most;
}

/// The speed that comes right is left out: it is there or not, as the limit is.
void spreadBetween(const Scenario& a, const Scenario& b, Readings& spread) {
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (!a.readings[r] || !b.readings[r]) continue;
        const double half = std::abs(*a.readings[r] - *b.readings[r]) / std::sqrt(12.0);
        spread[r] = std::max(spread[r].value_or(0.0), half);
    }
}

void takeModelValues(Machine& machine) {
    for (const StartValue& start : startValues()) {
        if (start.use != StartUse::Model) continue;
        const auto view = fieldView(machine, start.key);
        if (!view || view->isKnown || startValue(machine, start.key) != &start) continue;
        const auto read =
            parseQuantity(start.value, view->dimension, Unit::None, DecimalMarks::PointOnly);
        if (read) setField(machine, start.key, read->quantity, start.value);
    }
}

/// The machine as it is known to stand: where nobody said how the restrictor stands, as it should.
Machine asReckoned(const CaseRecord& record, const CaseNumbers& numbers) {
    Machine machine = record.machine;
    takeModelValues(machine);
    if (!machine.restrictor.position && numbers.rightPosition())
        machine.restrictor.position = Sourced<RestrictorPosition>(*numbers.rightPosition());
    return machine;
}

}  // namespace

/// One way in which a cause may be present, its severity apart.
struct CircuitPredictor::Variant {
    std::string fault;  ///< injected; empty: none
    std::string name = {};
    double weight = 1.0;
    std::size_t first = 0;  ///< the section that takes section faults
    double speed = 0.0;     ///< true speed × (1 + this × severity)
    double restsAt = 0.0;   ///< rests at 1 + this × dead band
    std::optional<bool> atStop = {};
    bool unforeseen = false;
};

CircuitPredictor::CircuitPredictor(CaseNumbers numbers, LoopSetup setup)
    : m_numbers(std::move(numbers)), m_setup(std::move(setup)), m_speed(*m_numbers.speed) {
    m_healthy = steadyCircuit(m_setup, {.speed = m_speed});
}

std::unique_ptr<CircuitPredictor> CircuitPredictor::make(const CaseRecord& record,
                                                         const CaseNumbers& numbers) {
    if (!numbers.needSensor || !numbers.speed || numbers.sections.empty()) return nullptr;
    Job job = record.job;
    if (!job.usual) job.usual = Sourced<Speed>(*numbers.speed);
    job.slow.reset();
    job.fast.reset();
    auto setup = LoopSetup::make(asReckoned(record, numbers), record.nozzle, job);
    if (!setup || setup->parts.restrictorUnknown) return nullptr;
    auto made =
        std::unique_ptr<CircuitPredictor>(new CircuitPredictor(numbers, std::move(setup).value()));
    const auto& sensor = made->m_healthy.readings[static_cast<std::size_t>(Reading::GaugePressure)];
    return sensor && std::isfinite(*sensor) ? std::move(made) : nullptr;
}

std::vector<CircuitPredictor::Variant> CircuitPredictor::variantsOf(const Cause& cause) const {
    const std::string& id = cause.id;
    const std::string fault = injectedAs(id);
    if (id == "restrictor_position") {
        const bool narrowed = m_setup.restrictor.position == RestrictorPosition::Narrowed;
        if (describes("restrictor", m_numbers) == Described::Shows)
            return {{.fault = "", .name = narrowed ? "narrowed" : "full_bore"}};
        return {{.fault = fault, .name = narrowed ? "full_bore" : "narrowed"}};
    }
    if (id == "speed_too_slow" || id == "speed_too_fast") {
        const double way = id == "speed_too_slow" ? -1.0 : 1.0;
        return {{.fault = "", .speed = m_numbers.speedWasRead ? 0.0 : way}};
    }
    if (id == "dead_band_large")
        return {{.fault = fault, .restsAt = 1.0}, {.fault = fault, .restsAt = -1.0}};
    if (id == "actuator_reversed")
        return {{.fault = fault, .atStop = true}, {.fault = fault, .atStop = false}};
    if (!isInjectable(fault)) return {{.fault = "", .unforeseen = true}};
    if (id == "actuator_stiff" || id == "meter_part_full")  // now and then rests anywhere
        return {{.fault = fault, .weight = 0.7}, {.fault = "", .weight = 0.3, .unforeseen = true}};
    const bool ofSection = id.starts_with("section_") || id.starts_with("one_nozzle_");
    if (!ofSection) return {{.fault = fault}};
    std::vector<Variant> out;
    const auto& sections = m_setup.parts.boom.sections();
    for (std::size_t i = 0; i < sections.size(); ++i) {
        auto same = std::find_if(out.begin(), out.end(), [&](const Variant& v) {
            return sections[v.first].nozzles == sections[i].nozzles;
        });
        if (same == out.end())
            out.push_back({.fault = fault, .first = i});
        else
            same->weight += 1;
    }
    return out;
}

std::optional<Scenario> CircuitPredictor::at(const Variant& v, const Cause& cause, double x) const {
    if (v.unforeseen) return Scenario{};
    LoopSetup setup = m_setup;
    if (v.first > 0) {
        const BoomLine& boom = setup.parts.boom;
        auto sections = boom.sections();
        std::swap(sections.front(), sections[v.first]);
        setup.parts.boom = BoomLine(sections, boom.law(), boom.valveLoss(), boom.specificGravity());
        setup.entered = setup.parts.boom;
    }
    SteadyWish wish{.speed = m_speed * (1 + v.speed * x), .atStop = v.atStop};
    if (m_other && !applyFault(setup, *m_other)) return std::nullopt;
    if (!v.fault.empty() && !applyFault(setup, {v.fault, x})) return std::nullopt;
    if (m_numbers.speedWasRead) wish.speed = wish.speed / setup.meter.speedScale;
    if (cause.id == "one_nozzle_blocked") wish.oneNozzle = 1 - x;
    if (cause.id == "one_nozzle_worn") wish.oneNozzle = 1 + x;
    wish.restsAt = 1 + v.restsAt * setup.control.deadBand;
    Scenario out = steadyCircuit(setup, wish);
    if (cause.id == "checks_drip") out.shown.reset();
    return out;
}

/// Severities close enough together that no reading jumps over more than its error, each with the
/// part of the range that it stands for and how far its readings change within that part.
std::vector<Scenario> CircuitPredictor::scan(const Variant& v, const Cause& cause) const {
    struct Point {
        double part;
        Scenario s;
        double severity;
    };
    std::vector<Point> points;
    const bool single = v.unforeseen || cause.severity.to <= cause.severity.from ||
                        (v.fault.empty() && v.speed == 0);
    const std::size_t first = single ? 1 : kFirstSeverities;
    for (std::size_t i = 0; i < first; ++i) {
        const double part = single ? 0.0 : static_cast<double>(i) / (kFirstSeverities - 1);
        const double x = severityAt(cause.id, cause.severity, part);
        if (auto s = at(v, cause, x)) points.push_back({part, std::move(*s), x});
    }
    while (points.size() > 1 && points.size() < kMostSeverities) {
        std::size_t widest = 1;
        double most = 0;
        for (std::size_t i = 1; i < points.size(); ++i) {
            const double distance = apart(points[i - 1].s, points[i].s);
            if (distance > most) most = distance, widest = i;
        }
        if (most < kStepErrors) break;
        const double part = (points[widest - 1].part + points[widest].part) / 2;
        const double x = severityAt(cause.id, cause.severity, part);
        auto s = at(v, cause, x);
        if (!s) break;
        points.insert(points.begin() + static_cast<std::ptrdiff_t>(widest),
                      {part, std::move(*s), x});
    }
    std::vector<Scenario> out;
    for (std::size_t i = 0; i < points.size(); ++i) {
        Scenario s = points[i].s;
        const std::size_t before = i > 0 ? i - 1 : 0;
        const std::size_t after = std::min(i + 1, points.size() - 1);
        s.weight = v.weight;
        if (points.size() > 1)  // every severity of the range is as likely as another
            s.weight *= (points[after].severity - points[before].severity) /
                        (points.back().severity - points.front().severity) / 2;
        s.variant = v.name;
        if (before < i) spreadBetween(points[before].s, points[i].s, s.spread);
        if (after > i) spreadBetween(points[after].s, points[i].s, s.spread);
        out.push_back(std::move(s));
    }
    return out;
}

bool CircuitPredictor::isFelt(const Scenario& s) const {
    if (s.uneven || apart(s, m_healthy) > kFeltErrors) return true;
    if (s.real && m_healthy.real && std::abs(*s.real - *m_healthy.real) > kFeltReal) return true;
    return s.shown != m_healthy.shown;
}

std::vector<Scenario> CircuitPredictor::all(const Cause& cause, double& feltPart) const {
    std::vector<Scenario> out;
    for (const Variant& v : variantsOf(cause))
        for (auto& s : scan(v, cause)) out.push_back(std::move(s));
    feltPart = 1.0;
    const bool unpredicted = out.size() == 1 && !out.front().shown && !out.front().real;
    const bool described =
        cause.id == "restrictor_position" && describes("restrictor", m_numbers) == Described::Shows;
    if (isFeltElsewhere(cause.id) || unpredicted || described) return out;
    double felt = 0, total = 0;
    for (auto& s : out) {
        total += s.weight;
        if (isFelt(s))
            felt += s.weight;
        else
            s.weight *= kUnfelt;
    }
    if (!(felt > 0)) feltPart = kUnfelt;
    return out;
}

Prediction CircuitPredictor::predict(const Cause& cause) const {
    if (!machineHas(cause.needs, m_numbers)) return {{Scenario{}}, 0.0, {}};
    Prediction out;
    out.scenarios = all(cause, out.priorFactor);
    describe(cause, m_numbers, m_healthy, out);
    return out;
}

std::vector<Scenario> CircuitPredictor::together(const Cause& cause, const Fault& other) const {
    CircuitPredictor both = *this;
    both.m_other = other;
    std::vector<Scenario> out;
    for (const Variant& v : both.variantsOf(cause))
        for (auto& s : both.scan(v, cause)) out.push_back(std::move(s));
    return out;
}

}  // namespace bw
