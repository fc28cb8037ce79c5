// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/stability.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/numeric.h"
#include "core/simulation/rate_loop.h"

namespace bw {
namespace {

/// What the controller takes for the flow in a steady state.
double sensed(const LoopSetup& setup, const BoomLine& entered, const CircuitState& state) {
    if (setup.senses == Senses::Pressure)
        return entered.flowAt(setup.meter.sensorScale * state.sensor).si();
    return setup.meter.scale * state.metered.si();
}

}  // namespace

GainLimit gainLimit(Duration deadTime, Duration hydraulicLag, Duration meterLag) {
    const double theta = deadTime.si();
    const double h = hydraulicLag.si();
    const double m = meterLag.si();
    const double quarter = std::numbers::pi / 2;
    const auto excess = [&](double w) {
        return w * theta + std::atan(w * h) + std::atan(w * m) - quarter;
    };
    const double w = risingRoot(excess, 0.0, quarter / theta).x;
    return {w * std::sqrt(1 + w * w * h * h) * std::sqrt(1 + w * w * m * m),
            Duration::fromSi(2 * std::numbers::pi / w)};
}

double flowPerStroke(const Circuit& circuit, double control) {
    constexpr double kReach = 1e-5;
    const double low = std::max(0.0, control - kReach);
    const double high = std::min(1.0, control + kReach);
    const double less = circuit.atControl(low).metered.si();
    const double more = circuit.atControl(high).metered.si();
    return less > 0 && more > less ? std::log(more / less) / (high - low) : 0.0;
}

std::optional<double> workingControl(const LoopSetup& setup, Speed speed) {
    const double wish = (setup.target * (setup.meter.speedScale * speed) *
                         (setup.meter.widthScale * setup.widthOn()))
                            .si();
    if (!(wish > 0)) return std::nullopt;
    const Circuit circuit(setup.running());
    const BoomLine entered = setup.enteredRunning();
    const auto excess = [&](double u) {
        return sensed(setup, entered, circuit.atControl(u)) - wish;
    };
    const Root found = risingRoot(excess, 0.0, 1.0);
    return found.isBracketed ? std::optional(found.x) : std::nullopt;
}

std::optional<LoopStability> stability(const LoopSetup& setup, Speed speed) {
    if (setup.senses == Senses::Nothing) return std::nullopt;
    const auto control = workingControl(setup, speed);
    if (!control) return std::nullopt;
    LoopStability out;
    out.control = *control;
    out.flowPerStroke = flowPerStroke(Circuit(setup.running()), *control);
    out.gain = setup.control.gain * out.flowPerStroke;
    const Duration half = Duration::fromSi(RateLoop::kStep / 2);
    const GainLimit limit = gainLimit(setup.control.deadTime + half, setup.control.hydraulicLag,
                                      setup.control.meterLag);
    out.gainAtLimit = limit.gain;
    out.period = limit.period;
    return out;
}

}  // namespace bw
