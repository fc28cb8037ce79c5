// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/supply.h"

#include <algorithm>
#include <cmath>

#include "core/hydraulics/boom_line.h"
#include "core/model/program_values.h"

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

std::optional<SuctionCut> suctionCut(const Machine& machine, double specificGravity) {
    const bool displaces =
        machine.pump.kind && machine.pump.kind->value == PumpKind::PositiveDisplacement;
    const bool isWhole = valueOr(machine.control, Control::PumpSpeed) != Control::PumpSpeed;
    const double loss = specificGravity * squareLoss(machine.losses.suction).si();
    if (!displaces || !isWhole || !machine.pump.ratedFlow || !(loss > 0)) return std::nullopt;
    const Pressure available = valueOr(machine.pump.suctionAvailable, program::kSuctionAvailable);
    const SuctionCut cut{Flow::fromSi(std::sqrt(available.si() / loss)),
                         machine.pump.ratedFlow->value, available};
    return cut.given < cut.whole ? std::optional(cut) : std::nullopt;
}

std::optional<Fact> suctionFact(const char* code, const Machine& machine, double specificGravity) {
    const auto cut = suctionCut(machine, specificGravity);
    if (!cut) return std::nullopt;
    return Fact{code,
                {{"flow", anyQuantity(cut->given)},
                 {"whole", anyQuantity(cut->whole)},
                 {"lost", anyQuantity(cut->lost)}}};
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
