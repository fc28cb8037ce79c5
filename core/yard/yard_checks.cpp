// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/yard_checks.h"

#include <cmath>
#include <initializer_list>
#include <utility>

namespace bw {
namespace {

using Numbers = std::vector<double>;

/// The first reading that is not over zero or not finite, as a problem.
std::optional<Problem> notPositive(std::initializer_list<std::pair<const char*, double>> readings) {
    for (const auto& [where, value] : readings) {
        if (!(value > 0) || !std::isfinite(value)) return error("yard_not_positive", where);
    }
    return std::nullopt;
}

template <class T>
Argument arg(const char* name, T value) {
    return {name, anyQuantity(value)};
}

/// "0.50 bar, give or take 0.03": a value and twice its standard uncertainty.
template <class T>
Fact resultFact(const char* code, const Measured<T>& m) {
    return {code, {arg("value", m.value), arg("spread", m.uncertainty * 2.0)}};
}

double square(double x) {
    return x * x;
}

/// A flow at which a loss factor is said in words: its own reading.
Pressure lossAt(double k, Flow flow) {
    return Pressure::fromSi(k * square(flow.si()));
}

double pumpK(const Numbers& r) {
    return (r[0] - r[2]) / square(r[1]);
}

std::vector<UncertainNumber> numbersOf(const PumpLine& line) {
    return {bareNumber(line.shutOff), bareNumber(line.flow), bareNumber(line.pressure)};
}

/// Under this an in-line ball valve is ruled out, over it a diaphragm one; both judgement.
constexpr double kBallFrom = 15000;     // 0.15 bar
constexpr double kDiaphragmTo = 25000;  // 0.25 bar

std::optional<ShutOffKind> kindFor(const Measured<Pressure>& constant) {
    const double spread = 2 * constant.uncertainty.si();
    if (constant.value.si() - spread > kBallFrom) return ShutOffKind::Ball;
    if (constant.value.si() + spread < kDiaphragmTo) return ShutOffKind::Diaphragm;
    return std::nullopt;
}

}  // namespace

Result<PumpLine> pumpLine(const PumpLineReadings& r) {
    if (auto bad = notPositive({{"shutoff_pressure", r.shutOff.value.si()},
                                {"flow", r.flow.value.si()},
                                {"pressure", r.pressure.value.si()}}))
        return *bad;
    if (r.pressure.value >= r.shutOff.value)
        return error("yard_pressure_rises", "pressure",
                     {arg("pressure", r.pressure.value), arg("shutoff", r.shutOff.value)});
    PumpLine line{r.shutOff, r.flow, r.pressure, 0.0, 0.0, {}};
    const UncertainNumber k = propagate(pumpK, numbersOf(line));
    line.k = k.value;
    line.kUncertainty = k.uncertainty;
    const Pressure drop = r.shutOff.value - r.pressure.value;
    const double spread = std::hypot(r.shutOff.uncertainty.si(), r.pressure.uncertainty.si());
    line.shown.sum = {
        {"yard.pump_drop",
         {arg("shutoff", r.shutOff.value), arg("pressure", r.pressure.value), arg("drop", drop)}},
        {"yard.pump_k",
         {arg("flow", r.flow.value), arg("drop", drop), arg("half", r.flow.value / 2.0),
          arg("quarter", drop / 4.0)}},
        {"yard.pump_sure", {arg("percent", 200 * k.uncertainty / k.value)}}};
    if (drop.si() < 4 * spread)
        line.shown.warnings.push_back(warning("yard_drop_small", "flow", {arg("drop", drop)}));
    return line;
}

Measured<Flow> topFlow(const PumpLine& line, int nozzles, Flow each, Pressure at) {
    const double r = at.si() / square(nozzles * each.si());
    return measuredFrom<Flow>([r](const Numbers& n) { return std::sqrt(n[0] / (pumpK(n) + r)); },
                              numbersOf(line));
}

Pressure pressureOn(const PumpLine& line, Flow flow) {
    return line.shutOff.value - lossAt(line.k, flow);
}

Result<PumpLeft> pumpLeft(const PumpLeftReadings& r) {
    if (auto bad = notPositive({{"flow", r.flow.value.si()}, {"pressure", r.pressure.value.si()}}))
        return *bad;
    PumpLeft out{r.flow, r.pressure.value, {}};
    out.shown.sum = {resultFact("yard.pump_left", r.flow)};
    return out;
}

Result<NozzleLoss> nozzleLoss(const NozzleLossReadings& r) {
    if (auto bad =
            notPositive({{"low_flow", r.lowFlow.value.si()}, {"high_flow", r.highFlow.value.si()}}))
        return *bad;
    if (r.highFlow.value <= r.lowFlow.value) return error("yard_flow_not_larger", "high_flow");
    if (r.highLoss.value <= r.lowLoss.value)
        return error("yard_loss_falls", "high_loss",
                     {arg("low", r.lowLoss.value), arg("high", r.highLoss.value)});
    const std::vector<UncertainNumber> numbers{bareNumber(r.lowFlow), bareNumber(r.lowLoss),
                                               bareNumber(r.highFlow), bareNumber(r.highLoss)};
    const auto kOf = [](const Numbers& n) { return (n[3] - n[1]) / (square(n[2]) - square(n[0])); };
    const UncertainNumber k = propagate(kOf, numbers);
    NozzleLoss out;
    out.k = k.value;
    out.kUncertainty = k.uncertainty;
    out.constant = measuredFrom<Pressure>(
        [&](const Numbers& n) { return n[1] - kOf(n) * square(n[0]); }, numbers);
    out.highFlow = r.highFlow.value;
    out.kind = kindFor(out.constant);
    out.shown.sum = {{"yard.loss_grows",
                      {arg("flow", out.highFlow), arg("loss", lossAt(out.k, out.highFlow)),
                       arg("percent", 200 * k.uncertainty / k.value)}},
                     resultFact("yard.loss_constant", out.constant)};
    if (out.kind)
        out.shown.sum.push_back(
            {*out.kind == ShutOffKind::Ball ? "yard.kind_ball" : "yard.kind_diaphragm", {}});
    else
        out.shown.warnings.push_back(warning("yard_kind_unsure"));
    if (out.constant.value.si() < -2 * out.constant.uncertainty.si())
        out.shown.warnings.push_back(
            warning("yard_loss_negative", {}, {arg("value", out.constant.value)}));
    return out;
}

Result<SteadyFlow> steadyFlow(const SteadyFlowReadings& r) {
    if (auto bad = notPositive({{"steady", r.steady.si()}, {"wanders", r.wanders.si()}}))
        return *bad;
    if (r.steady <= r.wanders) return error("yard_steady_not_larger", "steady");
    SteadyFlow out;
    out.minimum = r.steady;
    out.estimate = {(r.steady + r.wanders) / 2.0, (r.steady - r.wanders) / std::sqrt(12.0)};
    out.position = r.position;
    out.shown.sum = {{"yard.steady", {arg("steady", r.steady), arg("wanders", r.wanders)}}};
    if (r.wanders / r.steady < 0.75)
        out.shown.warnings.push_back(warning("yard_steps_wide", "wanders"));
    return out;
}

Result<Recovery> recovery(const RecoveryReadings& r) {
    if (auto bad = notPositive({{"settled", r.settled.value.si()}})) return *bad;
    if (r.swing && !(r.swing->value.si() > 0)) return error("yard_not_positive", "swing");
    if (r.swings > 0 && !r.swing) return error("yard_swing_missing", "swing");
    Recovery out{r.settled, std::nullopt, {}};
    out.shown.sum.push_back(resultFact("yard.settled", r.settled));
    if (!r.swing) {
        out.shown.sum.push_back({"yard.no_swings", {}});
        return out;
    }
    out.delay = Measured<Duration>{r.swing->value / 4.0, r.swing->uncertainty / 4.0};
    out.shown.sum.push_back({"yard.delay",
                             {arg("swing", r.swing->value), arg("value", out.delay->value),
                              arg("spread", out.delay->uncertainty * 2.0)}});
    return out;
}

Result<AgitationFlow> agitationFlow(const AgitationReadings& r) {
    if (auto bad = notPositive({{"open", r.open.value.si()},
                                {"shut", r.shut.value.si()},
                                {"pressure", r.pressure.value.si()}}))
        return *bad;
    if (r.shut.value <= r.open.value)
        return error("yard_agitation_falls", "shut",
                     {arg("open", r.open.value), arg("shut", r.shut.value)});
    AgitationFlow out;
    out.at = r.pressure.value;
    out.flow = measuredFrom<Flow>([](const Numbers& n) { return n[1] - n[0]; },
                                  {bareNumber(r.open), bareNumber(r.shut)});
    out.shown.sum = {{"yard.agitation",
                      {arg("shut", r.shut.value), arg("open", r.open.value),
                       arg("value", out.flow.value), arg("spread", out.flow.uncertainty * 2.0)}}};
    if (out.flow.value.si() < 4 * out.flow.uncertainty.si())
        out.shown.warnings.push_back(warning("yard_difference_small", "shut"));
    return out;
}

Result<GaugeCheck> gaugeCheck(const GaugeReadings& r) {
    if (auto bad =
            notPositive({{"true_low", r.trueLow.value.si()}, {"true_high", r.trueHigh.value.si()}}))
        return *bad;
    if (r.trueHigh.value <= r.trueLow.value || r.shownHigh.value <= r.shownLow.value)
        return error("yard_pressure_not_larger", "true_high");
    const std::vector<UncertainNumber> numbers{bareNumber(r.shownLow), bareNumber(r.trueLow),
                                               bareNumber(r.shownHigh), bareNumber(r.trueHigh)};
    const auto scaleOf = [](const Numbers& n) { return (n[2] - n[0]) / (n[3] - n[1]); };
    GaugeCheck out;
    out.scale = measuredFrom<double>(scaleOf, numbers);
    out.offset =
        measuredFrom<Pressure>([&](const Numbers& n) { return n[0] - scaleOf(n) * n[1]; }, numbers);
    out.rest = r.rest;
    out.shown.sum = {{"yard.gauge_scale",
                      {arg("value", out.scale.value), arg("spread", out.scale.uncertainty * 2)}},
                     resultFact("yard.gauge_offset", out.offset)};
    return out;
}

}  // namespace bw
