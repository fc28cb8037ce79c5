// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/verdict.h"

#include <algorithm>

#include "core/window/pressure_run.h"
#include "core/window/supply.h"

namespace bw {
namespace {

constexpr double kNarrow = 0.02;  ///< a window narrower than this part of its speed is one speed

bool isNozzleGap(Limit limit) {
    return limit == Limit::NozzleMinimum || limit == Limit::NozzleMaximum ||
           limit == Limit::Droplets || limit == Limit::DriftClass;
}

bool isSupply(Limit limit) {
    return limit == Limit::ControlMinimum || limit == Limit::Pump || limit == Limit::ReliefValve ||
           limit == Limit::Suction;
}

template <class Q>
Argument arg(std::string name, Q q) {
    return {std::move(name), anyQuantity(q)};
}

std::vector<Argument> dropletArguments(const Job& job) {
    std::vector<Argument> out;
    for (const auto category : job.droplets)
        out.push_back({"droplets", std::string(choiceName(category))});
    return out;
}

/// The ends that count: those of all rates where the job has a range of them.
const WindowEnd& lowEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->low : w.low;
}
const WindowEnd& highEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->high : w.high;
}
bool isEmpty(const SpeedWindow& w) {
    return w.allRates ? w.allRates->empty : w.empty;
}

Fact emptyTitle(const WindowModel& model, const SpeedWindow& w) {
    switch (w.emptyWhy) {
        case Limit::DropletsNone:
            return {"verdict.empty_droplets", dropletArguments(model.job())};
        case Limit::DriftNone:
            return {"verdict.empty_drift", {arg("percent", model.job().driftPercent->value)}};
        case Limit::NozzleMinimum:
        case Limit::NozzleMaximum:
            return {"verdict.empty_set_pressure",
                    {arg("pressure", model.machine().pulsed.pressure->value)}};
        default:
            return {w.allRates ? "verdict.empty_rates" : "verdict.empty", {arg("rate", w.rate)}};
    }
}

std::vector<Argument> rateArguments(const WindowModel& model) {
    const auto& d = model.demand();
    return {arg("rate", d.rate), arg("least", d.rateLeast), arg("most", d.rateMost)};
}

Fact holdsTitle(const WindowModel& model, const SpeedWindow& w) {
    const WindowEnd& low = lowEnd(w);
    const WindowEnd& high = highEnd(w);
    const bool hasLow = low.limit != Limit::None;
    const bool open = isOpen(w, model.nozzle()) && (hasLow || high.speed);
    Fact fact{open ? "verdict.would_hold" : "verdict.holds", rateArguments(model)};
    if (w.allRates) fact.code += "_rates";
    if (hasLow) fact.arguments.push_back(arg("low", *low.speed));
    if (high.speed) fact.arguments.push_back(arg("high", *high.speed));
    if (!hasLow)
        fact.code += high.speed ? "_up_to" : "_any";
    else if (!high.speed)
        fact.code += "_from";
    else if (high.speed->si() - low.speed->si() < kNarrow * high.speed->si())
        fact.code += "_narrow";
    return fact;
}

/// Why the ends have crossed: what each side asks for.
Fact crossedDetail(const SpeedWindow& w) {
    return {"verdict.crossed",
            {{"low_limit", limitWord(lowEnd(w).limit)},
             arg("low", *lowEnd(w).speed),
             {"high_limit", limitWord(highEnd(w).limit)},
             arg("high", highEnd(w).speed.value_or(Speed{}))}};
}

/// On what values: with the droplets and drift class asked for where they could be checked.
Fact givenDetail(const WindowModel& model, const SpeedWindow& w) {
    const auto gaps = nozzleGaps(w);
    const auto isGap = [&](Limit l) {
        return std::find(gaps.begin(), gaps.end(), l) != gaps.end();
    };
    const bool drops = !model.job().droplets.empty() && !isGap(Limit::Droplets);
    const bool drift = model.job().driftPercent && !isGap(Limit::DriftClass);
    Fact fact{"verdict.given", dropletArguments(model.job())};
    if (drops) fact.code += "_droplets";
    if (drift) {
        fact.code += "_drift";
        fact.arguments.push_back(arg("percent", model.job().driftPercent->value));
    }
    return fact;
}

Fact bandDetail(const WindowModel& model, const SpeedWindow& w) {
    const auto& d = model.demand();
    const std::vector<Argument> speeds{arg("slow", d.slow), arg("usual", d.usual),
                                       arg("fast", d.fast)};
    if (d.slow == d.fast)
        return {w.coversUsual ? "verdict.speed_inside" : "verdict.speed_outside", speeds};
    if (w.coversBand) return {"verdict.band_inside", speeds};
    if (!w.coversUsual) {
        const bool under = lowEnd(w).speed && d.usual < *lowEnd(w).speed;
        return {under ? "verdict.usual_under" : "verdict.usual_over", speeds};
    }
    const bool slowOut = lowEnd(w).speed && d.slow < *lowEnd(w).speed;
    const bool fastOut = highEnd(w).speed && d.fast > *highEnd(w).speed;
    if (slowOut && fastOut) return {"verdict.both_out", speeds};
    return {slowOut ? "verdict.slow_out" : "verdict.fast_out", speeds};
}

void addConditions(const WindowModel& model, std::vector<Fact>& details) {
    const Machine& m = model.machine();
    if (m.pulsed.pressure)
        details.push_back({"verdict.pulsed", {arg("pressure", m.pulsed.pressure->value)}});
    if (hasRestrictor(m) && m.restrictor.changeoverFlow) {
        const bool narrowed = model.position() == RestrictorPosition::Narrowed;
        details.push_back({narrowed ? "verdict.valve_narrowed" : "verdict.valve_full_bore", {}});
    }
    if (valueOr(m.senses, Senses::Flow) == Senses::Nothing)
        details.push_back({"verdict.by_hand", {}});
    if (auto cut = suctionFact("verdict.suction_cut", m, model.demand().specificGravity))
        details.push_back(std::move(*cut));
}

Fact uncheckedDetail(const SpeedWindow& w) {
    Fact fact{"verdict.not_checked", {}};
    for (const Limit limit : w.notChecked) fact.arguments.push_back({"limits", limitWord(limit)});
    return fact;
}

std::string choice(std::string prefix, Limit limit) {
    return prefix.append(choiceName(limit));
}

Pressure neededAtUsual(const WindowModel& model) {
    const auto& d = model.demand();
    return model.line().meanNozzlePressure(d.rate * d.usual * model.width());
}

/// The droplet band just past one end of the run in use: its category and the pressure there.
void addDropletBand(const WindowModel& model, Side side, Fact& fact) {
    const auto& bands = model.nozzle().droplets->value;
    const auto run = runFor(allowedBands(bands, model.job().droplets), neededAtUsual(model));
    if (!run) return;
    const Pressure end = side == Side::Low ? run->from : run->to;
    fact.arguments.push_back(arg("pressure", end));
    const DropletBand* past = nullptr;
    for (const auto& b : bands) {
        const bool adjoins = side == Side::Low ? b.from < end && b.to.si() >= end.si() * (1 - 1e-9)
                                               : b.to > end && b.from.si() <= end.si() * (1 + 1e-9);
        if (adjoins) past = &b;
    }
    if (past) fact.arguments.push_back({"category", std::string(choiceName(past->category))});
}

void addDriftBand(const WindowModel& model, Side side, Fact& fact) {
    const double percent = model.job().driftPercent->value;
    const auto run =
        runFor(allowedBands(model.nozzle().drift->value, percent), neededAtUsual(model));
    if (run) fact.arguments.push_back(arg("pressure", side == Side::Low ? run->from : run->to));
    fact.arguments.push_back(arg("percent", percent));
}

Fact stopFact(const WindowModel& model, const SpeedLimit& stop) {
    Fact fact{choice("stop.", stop.limit), {arg("flow", stop.flow), arg("speed", stop.speed)}};
    const Machine& m = model.machine();
    const auto add = [&](Pressure p) { fact.arguments.push_back(arg("pressure", p)); };
    switch (stop.limit) {
        case Limit::PressureFloor:
            add(m.limits.pressureFloor->value);
            break;
        case Limit::PressureCeiling:
            add(m.limits.pressureCeiling->value);
            break;
        case Limit::NozzleMinimum:
            add(model.nozzle().pressureMin->value);
            break;
        case Limit::NozzleMaximum:
            add(model.nozzle().pressureMax->value);
            break;
        case Limit::DropletsTooCoarse:
        case Limit::DropletsTooFine:
        case Limit::DropletsUnlisted:
            addDropletBand(model, stop.side, fact);
            break;
        case Limit::DriftClass:
            addDriftBand(model, stop.side, fact);
            break;
        default:
            break;
    }
    if (stop.limit == Limit::DropletsUnlisted || stop.limit == Limit::DriftClass)
        fact.code += stop.side == Side::Low ? "_low" : "_high";
    return fact;
}

Fact pastFact(const SpeedLimit& stop) {
    if (stop.pins) return {stop.side == Side::Low ? "past.stuck_high" : "past.stuck_low", {}};
    switch (stop.limit) {
        case Limit::MeterMinimum:
        case Limit::MeterMaximum:
            return {"past.meter", {}};
        case Limit::NozzleMinimum:
            return {"past.pattern", {}};
        case Limit::TopSpeed:
            return {"past.top_speed", {}};
        default:
            return {"past.rate_right", {}};
    }
}

const SpeedLimit* limitOf(const SpeedWindow& w, Limit limit, Side side) {
    const auto it = std::find_if(w.limits.begin(), w.limits.end(),
                                 [&](const auto& l) { return l.limit == limit && l.side == side; });
    return it == w.limits.end() ? nullptr : &*it;
}

/// Without a pump nothing of the supply can be checked: one gap, not four.
Unchecked supplyGap(const SpeedWindow& w) {
    Unchecked gap{Limit::Pump, {"unchecked.supply", {}}, "machine", "pump.kind"};
    for (const Limit limit : w.notChecked) {
        if (isSupply(limit)) gap.what.arguments.push_back({"limits", limitWord(limit)});
    }
    return gap;
}

std::string fieldThatMends(Limit limit, const Machine& m) {
    switch (limit) {
        case Limit::PressureFloor:
            return "limits.pressure_floor";
        case Limit::PressureCeiling:
            return "limits.pressure_ceiling";
        case Limit::TopSpeed:
            return "limits.top_speed";
        case Limit::Meter:
            return m.meter.maximum ? "meter.minimum_full_bore" : "meter.maximum";
        case Limit::Pump:
            return isPumpCurveKnown(m) ? "restrictor.hole" : "pump.curve";
        case Limit::ControlMinimum:
            if (!m.control) return "control";
            return m.control->value == Control::PumpSpeed ? "pump.least_speed"
                                                          : "control_valve.flow";
        case Limit::ReliefValve:
            return m.pump.reliefPressure ? "restrictor.hole" : "pump.relief_pressure";
        case Limit::Suction:
            return "losses.suction.pressure";
        default:
            return {};
    }
}

/// Why a limit is not checked, where that differs with what is missing.
std::string uncheckedCode(Limit limit, const Machine& m) {
    const std::string field = fieldThatMends(limit, m);
    if (field == "pump.curve") return "unchecked.pump_curve";
    if (field == "pump.least_speed") return "unchecked.least_speed";
    if (field == "control") return "unchecked.control";
    const bool byHole = field == "restrictor.hole" && limit != Limit::Pump;
    return choice(byHole ? "unchecked.narrowed." : "unchecked.", limit);
}

}  // namespace

CodeText limitWord(Limit limit) {
    return {choice("limit.", limit)};
}

std::vector<Limit> nozzleGaps(const SpeedWindow& window) {
    std::vector<Limit> out;
    std::copy_if(window.notChecked.begin(), window.notChecked.end(), std::back_inserter(out),
                 isNozzleGap);
    return out;
}

bool isOpen(const SpeedWindow& window, const Nozzle& nozzle) {
    return !nozzle.acceptUnchecked && !nozzleGaps(window).empty();
}

Standing standingOf(const SpeedWindow& window, const Nozzle& nozzle) {
    if (isEmpty(window)) return Standing::Empty;
    if (!window.coversUsual) return Standing::Neither;
    if (isOpen(window, nozzle)) return Standing::NotChecked;
    return window.coversBand ? Standing::Covers : Standing::UsualOnly;
}

Verdict verdictOf(const WindowModel& model, const SpeedWindow& window) {
    Verdict verdict;
    verdict.standing = standingOf(window, model.nozzle());
    if (verdict.standing == Standing::Empty) {
        verdict.title = emptyTitle(model, window);
        if (window.emptyWhy == Limit::None) verdict.details.push_back(crossedDetail(window));
    } else {
        verdict.title = holdsTitle(model, window);
        verdict.details.push_back(givenDetail(model, window));
        verdict.details.push_back(bandDetail(model, window));
    }
    addConditions(model, verdict.details);
    if (!window.notChecked.empty()) verdict.details.push_back(uncheckedDetail(window));
    if (verdict.standing != Standing::Empty && isOpen(window, model.nozzle()))
        verdict.details.push_back({"verdict.fits_no_job", {}});
    return verdict;
}

std::string sentenceOf(const Verdict& verdict, const Sentences& sentences,
                       const NumberStyle& style) {
    std::string out = sentences.of(verdict.title, style) + ".";
    for (const auto& fact : verdict.details) out += " " + sentences.of(fact, style);
    return out;
}

Stop whatStops(const WindowModel& model, const SpeedWindow& window, Side side) {
    const bool low = side == Side::Low;
    const WindowEnd& end = low ? lowEnd(window) : highEnd(window);
    Stop stop;
    stop.side = side;
    stop.limit = end.limit;
    const SpeedLimit* found = limitOf(window, end.limit, side);
    if (!found) {
        const std::string code = low ? "stop.none_low" : "stop.none_high";
        stop.what = {code, {}};
        stop.shortly = {code + "_shortly", {}};
        return stop;
    }
    stop.speed = end.speed;
    stop.what = stopFact(model, *found);
    stop.shortly = {choice("shortly.", end.limit), {}};
    stop.past = pastFact(*found);
    if (!end.next.empty()) {
        const auto& next = end.next.front();
        stop.next = {"stop.next", {arg("speed", next.speed), {"limit", limitWord(next.limit)}}};
    }
    return stop;
}

std::vector<Unchecked> whatIsUnchecked(const WindowModel& model, const SpeedWindow& window) {
    std::vector<Unchecked> out;
    const bool pumpUnknown = !model.circuit().parts().pump;
    bool supplySaid = false;
    for (const Limit limit : window.notChecked) {
        if (pumpUnknown && isSupply(limit)) {
            if (!supplySaid) out.push_back(supplyGap(window));
            supplySaid = true;
            continue;
        }
        Fact what{uncheckedCode(limit, model.machine()), {{"nozzle", model.nozzle().name}}};
        if (limit == Limit::Droplets) {
            const auto wish = dropletArguments(model.job());
            what.arguments.insert(what.arguments.end(), wish.begin(), wish.end());
        }
        out.push_back({limit, std::move(what), isNozzleGap(limit) ? "nozzle" : "machine",
                       fieldThatMends(limit, model.machine())});
    }
    return out;
}

}  // namespace bw
