// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/supply.h"

#include <algorithm>

namespace bw {
namespace {

bool isController(Limit limit) {
    return limit == Limit::PressureFloor || limit == Limit::PressureCeiling;
}

}  // namespace

bool isPumpCurveKnown(const Machine& machine) {
    const bool centrifugal =
        valueOr(machine.pump.kind, PumpKind::Centrifugal) == PumpKind::Centrifugal;
    return !centrifugal || machine.pump.curve.has_value();
}

bool isLeastFlowKnown(const Machine& machine) {
    if (!machine.control) return false;
    const ControlValve& valve = machine.controlValve;
    const bool hasSize = valve.flow && valve.at;
    switch (machine.control->value) {
        case Control::PumpSpeed:
            return machine.pump.leastSpeed.has_value();
        case Control::Throttle:
            return hasSize || (valve.leastOpening && valve.leastOpening->value <= 0);
        case Control::Bypass:
            return hasSize;
    }
    return false;
}

Flow heldFlow(const WindowLimits& limits, Flow wish) {
    Flow flow = wish;
    for (const bool byController : {true, false}) {
        for (const auto& f : limits.flows) {
            if (!f.pins || isController(f.limit) != byController) continue;
            flow = f.side == Side::Low ? std::max(flow, f.flow) : std::min(flow, f.flow);
        }
    }
    return flow;
}

}  // namespace bw
