// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/line_reading.h"

#include <algorithm>
#include <cmath>

#include "core/window/supply.h"

namespace bw {
namespace {

constexpr double kFelt = 0.005;  ///< a smaller part of the pump's pressure is not worth naming
constexpr double kSame = 1e-9;

Argument arg(const char* name, AnyQuantity value) {
    return {name, value};
}

/// Pulsed nozzles hold their pressure, so the circuit's boom law does not hold: the line is walked
/// back from the sensor. How the pump makes that pressure is left open.
void walkBack(const WindowModel& model, LineReading& line) {
    const auto& parts = model.circuit().parts();
    if (!parts.pump || !line.restrictorLoss) return;
    const Pressure outlet = line.sensor + line.lineLoss + line.plumbingLoss + *line.restrictorLoss;
    const double gravity = parts.boom.specificGravity();
    line.pumpOutlet = outlet;
    line.agitation =
        Flow::fromSi(parts.agitation.conductance * std::sqrt(std::max(0.0, outlet.si()) / gravity));
}

void takeState(const CircuitState& state, const CircuitParts& parts, LineReading& line) {
    if (state.status == SolveStatus::NotReached) return;
    line.agitation = state.agitation;
    line.pump = state.pump;
    line.suctionLoss = state.suctionLoss;
    line.pumpOutlet = state.pumpOutlet;
    line.control = state.control;
    if (parts.control == Control::Throttle) line.valveLoss = state.valveLoss;
    if (parts.control == Control::Bypass) line.bypass = state.bypass;
    if (parts.control == Control::PumpSpeed) line.speed = state.pumpSpeed;
    if (parts.pump->relief) line.relief = state.relief;
}

/// Without its curve it is not known how the pump is set for a flow: how fast it turns, what a
/// valve takes off it, what goes back.
void leavePumpOpen(const CircuitParts& parts, LineReading& line) {
    line.speed.reset();
    line.control.reset();
    line.bypass.reset();
    line.relief.reset();
    line.valveLoss.reset();
    if (parts.control == Control::PumpSpeed) return;
    line.pump.reset();
    line.suctionLoss.reset();
    if (parts.control == Control::Bypass) return;
    line.pumpOutlet.reset();
    line.agitation.reset();
}

/// The limit that the flow stands at, where it is not the flow wished for.
Limit heldBy(const WindowModel& model, const OperatingPoint& point) {
    if (point.verdict != PointVerdict::StuckHigh && point.verdict != PointVerdict::StuckLow)
        return Limit::None;
    for (const auto& limit : model.window().limits) {
        const double miss = std::abs(limit.flow.si() - point.boomFlow.si());
        if (limit.pins && miss <= kSame * point.boomFlow.si()) return limit.limit;
    }
    return Limit::None;
}

struct Share {
    const char* part;
    Pressure lost;
};

/// What takes most between pump and nozzle.
Share largest(const LineReading& line) {
    const Share shares[] = {{"part.valve", line.valveLoss.value_or(Pressure{})},
                            {"part.line", line.lineLoss},
                            {"part.plumbing", line.plumbingLoss},
                            {"part.restrictor", line.restrictorLoss.value_or(Pressure{})},
                            {"part.section", line.sectionLoss},
                            {"part.shut_off", line.shutOffLoss}};
    return *std::max_element(std::begin(shares), std::end(shares),
                             [](const auto& a, const auto& b) { return a.lost < b.lost; });
}

void addControl(const WindowModel& model, const LineReading& line, std::vector<Fact>& out) {
    const auto percent = [](double part) { return anyQuantity(100.0 * part); };
    if (line.speed) out.push_back({"line.pump_speed", {arg("percent", percent(*line.speed))}});
    if (model.circuit().parts().control == Control::Throttle && line.control)
        out.push_back({"line.valve_open", {arg("percent", percent(*line.control))}});
    if (line.bypass) out.push_back({"line.bypass", {arg("flow", anyQuantity(*line.bypass))}});
    if (line.relief && line.relief->si() > 0)
        out.push_back({"line.relief", {arg("flow", anyQuantity(*line.relief))}});
}

}  // namespace

LineReading lineAt(const WindowModel& model, Speed speed) {
    const OperatingPoint point = model.at(speed);
    const auto& parts = model.circuit().parts();
    const double gravity = parts.boom.specificGravity();
    const auto lost = [&](SquareLoss loss, Flow flow) { return gravity * (loss * (flow * flow)); };
    LineReading line;
    line.boom = point.boomFlow;
    line.heldBy = heldBy(model, point);
    line.sensor = point.sensorPressure;
    line.nozzle = point.nozzlePressure;
    line.lineLoss = lost(parts.line, line.boom);
    line.plumbingLoss = lost(parts.plumbing, line.boom);
    if (!parts.restrictorUnknown) line.restrictorLoss = lost(parts.restrictor, line.boom);
    line.shutOffLoss = parts.boom.valveLoss();
    const double share =
        static_cast<double>(parts.boom.largestSection()) / std::max(1, parts.boom.nozzles());
    line.sectionLoss = lost(parts.boom.sections().front().loss, share * line.boom);
    if (model.machine().pulsed.pressure)
        walkBack(model, line);
    else if (parts.pump && !parts.restrictorUnknown)
        takeState(model.circuit().atFlow(line.boom), parts, line);
    if (parts.pump && !isPumpCurveKnown(model.machine())) leavePumpOpen(parts, line);
    return line;
}

std::vector<Fact> lineFacts(const WindowModel& model, const LineReading& line) {
    std::vector<Fact> out;
    const auto& parts = model.circuit().parts();
    const bool isCurveOpen = parts.pump && !isPumpCurveKnown(model.machine());
    if (isCurveOpen) out.push_back({"line.curve_unknown", {}});
    if (!line.pumpOutlet) {
        if (parts.restrictorUnknown && parts.pump) out.push_back({"line.hole_unknown", {}});
        if (!parts.pump) out.push_back({"line.pump_unknown", {}});
        return out;
    }
    const Share most = largest(line);
    const std::vector<Argument> ends{arg("outlet", anyQuantity(*line.pumpOutlet)),
                                     arg("nozzle", anyQuantity(line.nozzle))};
    Fact way{"line.nothing_lost", ends};
    if (most.lost.si() > kFelt * line.pumpOutlet->si()) {
        way.code = "line.takes_most";
        way.arguments.push_back({"part", CodeText{most.part}});
        way.arguments.push_back(arg("lost", anyQuantity(most.lost)));
        if (line.suctionLoss && *line.suctionLoss > most.lost) {
            way.code = "line.takes_most_after";
            way.arguments.push_back(arg("suction", anyQuantity(*line.suctionLoss)));
        }
    }
    out.push_back(std::move(way));
    if (auto cut = suctionFact("line.suction_cut", model.machine(), parts.boom.specificGravity()))
        out.push_back(std::move(*cut));
    addControl(model, line, out);
    if (line.heldBy != Limit::None)
        out.push_back(
            {"line.held", {{"limit", CodeText{"limit." + std::string(choiceName(line.heldBy))}}}});
    return out;
}

}  // namespace bw
