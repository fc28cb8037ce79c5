// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/advice.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/window/supply.h"
#include "core/window/verdict.h"
#include "core/window/window_ends.h"

namespace bw {
namespace {

constexpr double kTie = 1e-9;
constexpr double kWorthSaying = 0.005;

template <class Q>
Argument arg(std::string name, Q q) {
    return {std::move(name), anyQuantity(q)};
}

void addFloorFindings(const FloorAdvice& floor, Pressure set, Advice& advice) {
    if (set.si() > floor.most->si() * (1 + kTie)) {
        advice.body.push_back({"advice.floor_over_need", {arg("most", *floor.most)}});
        advice.asksForWork = true;
    }
    if (floor.least && set.si() < floor.least->si() * (1 - kTie)) {
        advice.body.push_back({"advice.floor_under_nozzle", {arg("least", *floor.least)}});
        advice.asksForWork = true;
    }
}

/// Why the valve matters on this machine: what it does for the meter, and for what regulates.
std::vector<Fact> restrictorReasons(const Machine& machine) {
    std::vector<Fact> out;
    if (hasMeter(machine)) out.push_back({"advice.valve_meter", {}});
    const auto control = bare(machine.control);
    if (control == Control::Throttle) out.push_back({"advice.valve_throttle", {}});
    if (control == Control::Bypass) out.push_back({"advice.valve_bypass", {}});
    if (control == Control::PumpSpeed) out.push_back({"advice.valve_pump_speed", {}});
    return out;
}

Fact crossingFact(const WindowModel& model, const RestrictorAdvice& advice) {
    const std::vector<Argument> arguments{
        arg("speed", advice.crossingSpeed),
        arg("flow", model.machine().restrictor.changeoverFlow->value)};
    switch (advice.band) {
        case Band::Under:
            return {"advice.valve_under", arguments};
        case Band::Over:
            return {"advice.valve_over", arguments};
        case Band::Straddles:
            break;
    }
    return {"advice.valve_straddles", arguments};
}

/// The speed at which a side is pinned first, if anything pins it.
const SpeedLimit* firstPin(const SpeedWindow& w, Side side) {
    const SpeedLimit* found = nullptr;
    for (const auto& l : w.limits) {
        if (!l.pins || l.side != side) continue;
        if (!found || (side == Side::Low ? l.speed > found->speed : l.speed < found->speed))
            found = &l;
    }
    return found;
}

Speed speedUnder(Speed pin, UnitSystem units) {
    const double step = info(displayUnit(units, Dimension::Speed)).inSi;
    const double whole = std::floor(0.9 * pin.si() / step) * step;
    return whole > 0 ? Speed::fromSi(whole) : 0.8 * pin;
}
Speed speedOver(Speed pin, UnitSystem units) {
    const double step = info(displayUnit(units, Dimension::Speed)).inSi;
    return Speed::fromSi(std::ceil(1.05 * pin.si() / step) * step);
}

Outside outsideAt(const WindowModel& model, Speed speed, Limit pin, UnitSystem units) {
    Outside out;
    out.point = model.at(speed);
    out.title = {"outside.title", {arg("rate", out.point.rate), arg("speed", speed)}};
    out.body.push_back({"outside." + std::string(choiceName(pin)), {}});
    if (const auto dose = doseFact(out.point.rateRatio, units)) out.body.push_back(*dose);
    return out;
}

/// What the window would be in the other position: what the Season reckons with.
Fact windowThere(const WindowModel& model, RestrictorPosition position) {
    Machine machine = model.machine();
    machine.restrictor.position = Sourced<RestrictorPosition>(position);
    const auto there = windowEnds(machine, model.nozzle(), model.job());
    if (!there || there->empty) return {"advice.valve_there_empty", {}};
    const Speed low = there->low.value_or(Speed{});
    if (!there->high) return {"advice.valve_there_from", {arg("low", low)}};
    return {"advice.valve_there", {arg("low", low), arg("high", *there->high)}};
}

}  // namespace

std::optional<Advice> floorAdvice(const WindowModel& model, const SpeedWindow& window) {
    if (!window.floor || !window.floor->most) return std::nullopt;
    const FloorAdvice& floor = *window.floor;
    const auto set = bare(model.machine().limits.pressureFloor);
    Advice advice;
    if (!floor.least) {
        advice.title = {"advice.floor_unknown", {}};
        advice.body.push_back({"advice.floor_most", {arg("most", *floor.most)}});
    } else if (!floor.recommended) {
        advice.title = {"advice.floor_none", {}};
        advice.body.push_back(
            {"advice.floor_none_why", {arg("least", *floor.least), arg("most", *floor.most)}});
        advice.asksForWork = true;
    } else {
        advice.title = {set ? "advice.floor_set" : "advice.floor_unset",
                        {arg("recommended", *floor.recommended)}};
        if (set) advice.title.arguments.push_back(arg("set", *set));
        advice.body.push_back({"advice.floor_protects", {}});
    }
    if (set) addFloorFindings(floor, *set, advice);
    return advice;
}

std::optional<Advice> restrictorAdvice(const WindowModel& model, const SpeedWindow& window) {
    if (!hasRestrictor(model.machine())) return std::nullopt;
    if (!window.restrictor) return Advice{{"advice.valve_unknown", {}}, {}, false};
    const auto& r = *window.restrictor;
    const bool narrowed = r.position == RestrictorPosition::Narrowed;
    Advice advice;
    advice.title = {narrowed ? "advice.valve_narrowed" : "advice.valve_full_bore", {}};
    if (r.position != model.position()) {
        advice.asksForWork = true;
        advice.body.push_back(
            {narrowed ? "advice.valve_stands_full_bore" : "advice.valve_stands_narrowed", {}});
        advice.body.push_back(windowThere(model, r.position));
    }
    advice.body.push_back(crossingFact(model, r));
    for (auto& reason : restrictorReasons(model.machine()))
        advice.body.push_back(std::move(reason));
    if (narrowed && !model.machine().restrictor.hole)
        advice.body.push_back({"advice.valve_hole_unknown", {}});
    return advice;
}

std::vector<Outside> outsideExamples(const WindowModel& model, const SpeedWindow& window,
                                     UnitSystem units) {
    std::vector<Outside> out;
    const auto& d = model.demand();
    if (const auto* pin = firstPin(window, Side::Low); pin && pin->speed.si() > 0) {
        const Speed speed = d.slow < pin->speed ? d.slow : speedUnder(pin->speed, units);
        out.push_back(outsideAt(model, speed, pin->limit, units));
    }
    if (const auto* pin = firstPin(window, Side::High)) {
        const Speed speed = d.fast > pin->speed ? d.fast : speedOver(pin->speed, units);
        const auto top = bare(model.machine().limits.topSpeed);
        if (!top || speed <= *top) out.push_back(outsideAt(model, speed, pin->limit, units));
    }
    return out;
}

std::vector<Fact> leftAtUsual(const WindowModel& model, UnitSystem units) {
    const auto& d = model.demand();
    std::vector<Fact> out;
    for (const Speed speed : {d.slow, d.fast}) {
        if (speed == d.usual) continue;
        // At a standing pressure the flow stands, so the rate goes with one over speed.
        const double ratio = d.usual / speed;
        out.push_back({"outside.left_at_usual",
                       {arg("pressure", model.neededSensorPressure(d.usual)), arg("speed", speed),
                        arg("rate", ratio * d.rate)}});
        if (const auto dose = doseFact(ratio, units)) out.push_back(*dose);
    }
    return out;
}

std::optional<Fact> doseFact(double rateRatio, UnitSystem units) {
    const double off = rateRatio - 1.0;
    if (std::abs(off) < kWorthSaying) return std::nullopt;
    const double size = std::abs(100.0 * off);
    const double percent = size < 10 ? std::round(10 * size) / 10 : std::round(size);
    if (off < 0) return Fact{"dose.less", {arg("percent", percent)}};
    return Fact{units == UnitSystem::Us ? "dose.more_acre" : "dose.more_hectare",
                {arg("percent", percent)}};
}

Fact pointFact(const OperatingPoint& point) {
    if (point.verdict == PointVerdict::OnRate) return {"point.on_rate", {}};
    Fact fact{point.verdict == PointVerdict::BeyondLimit ? "point.beyond" : "point.off", {}};
    for (const Limit limit : point.past) fact.arguments.push_back({"limits", limitWord(limit)});
    fact.arguments.push_back(arg("percent", std::round(100.0 * point.rateRatio)));
    return fact;
}

Fact pointFact(const WindowModel& model, const OperatingPoint& point) {
    if (point.verdict != PointVerdict::OnRate) return pointFact(point);
    const auto cut =
        suctionFact("point.on_rate_cut", model.machine(), model.demand().specificGravity);
    return cut.value_or(pointFact(point));
}

Fact pastFact(const OperatingPoint& point) {
    Fact fact{"point.past", {}};
    for (const Limit limit : point.past) fact.arguments.push_back({"limits", limitWord(limit)});
    return fact;
}

Fact shortPointFact(const OperatingPoint& point) {
    Fact fact = pointFact(point);
    fact.code += "_shortly";
    return fact;
}

std::vector<Fact> sectionFacts(const WindowModel& model, const SpeedWindow& window) {
    const auto& rows = window.sectionsOff;
    if (rows.size() < 2 || !rows.front().underMinimum) return {};
    const Machine& m = model.machine();
    if (valueOr(m.sectionReturns, SectionReturns::None) == SectionReturns::Metered)
        return {{"sections.metered", {}}};
    const auto unseen = std::find_if(rows.begin(), rows.end(),
                                     [](const SectionsOn& row) { return *row.underMinimum; });
    const SectionsOn& told = unseen == rows.end() ? rows.back() : *unseen;
    const std::vector<Argument> arguments{
        {"on", std::to_string(told.sectionsOn)},
        {"flow", anyQuantity(told.flow)},
        {"minimum", anyQuantity(meterMinimum(m, model.position()).value())}};
    const char* code = unseen == rows.end()   ? "sections.all_seen"
                       : told.sectionsOn == 1 ? "sections.unseen_one"
                                              : "sections.unseen";
    std::vector<Fact> out{{code, arguments}};
    const auto& d = model.demand();
    if (d.rateLeast < d.rate) out.push_back({"sections.least_rate", {arg("rate", d.rateLeast)}});
    return out;
}

}  // namespace bw
