// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/hydraulics/circuit.h"

namespace bw {
namespace {

/// Pressure that a centrifugal pump must stand at to pass its flow at its speed.
double curvePressure(const CircuitParts& parts, const CircuitState& state) {
    const PumpParts& pump = *parts.pump;
    const double head = pump.health * pump.shutOff.si() * state.pumpSpeed * state.pumpSpeed;
    const double total = state.pump.si();
    return parts.boom.specificGravity() *
           (head - (pump.droop.si() + parts.suction.si()) * total * total);
}

}  // namespace

CircuitBalance balance(const CircuitParts& parts, const CircuitState& state) {
    const double gravity = parts.boom.specificGravity();
    const double flowScale = std::max(state.pump.si(), 1e-12);
    const double pressureScale = std::max(state.pumpOutlet.si(), 1.0);
    const auto opening = [&](double conductance, Pressure p) {
        return conductance * std::sqrt(std::max(p.si(), 0.0) / gravity);
    };
    const auto lost = [&](SquareLoss k) {
        return gravity * k.si() * state.metered.si() * state.metered.si();
    };
    CircuitBalance worst;
    const auto flow = [&](double miss) {
        worst.flowMiss = std::max(worst.flowMiss, std::abs(miss) / flowScale);
    };
    const auto pressure = [&](double miss) {
        worst.pressureMiss = std::max(worst.pressureMiss, std::abs(miss) / pressureScale);
    };
    flow((state.pump - state.metered - state.agitation - state.outletLeak - state.bypass -
          state.relief)
             .si());
    flow(state.metered.si() - state.sprayed.si() -
         opening(parts.manifoldLeak.conductance, state.sensor));
    flow(state.agitation.si() - opening(parts.agitation.conductance, state.pumpOutlet));
    double sections = 0.0;
    for (const auto& section : parts.boom.sections())
        sections += parts.boom.sectionFlow(state.sensor, section).si();
    flow(state.sprayed.si() - sections);
    pressure((state.pumpOutlet - state.valveLoss - state.lineLoss - state.plumbingLoss -
              state.restrictorLoss - state.sensor)
                 .si());
    pressure(state.lineLoss.si() - lost(parts.line));
    pressure(state.plumbingLoss.si() - lost(parts.plumbing));
    pressure(state.restrictorLoss.si() - lost(parts.restrictor));
    const bool onCurve =
        parts.pump->kind == PumpKind::Centrifugal && state.limitedBy == CircuitLimit::None;
    if (onCurve) pressure(state.pumpOutlet.si() - curvePressure(parts, state));
    return worst;
}

}  // namespace bw
