// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/model/program_values.h"
#include "core/model/pump_curve.h"

namespace bw {
namespace {

constexpr double kWaterDensity = 1000.0;  // kg/m³

/// The pump of a profile; nothing if its kind is not known.
Result<std::optional<PumpParts>> pumpParts(const Machine& machine) {
    const Pump& p = machine.pump;
    if (!p.kind) return std::optional<PumpParts>();
    PumpParts out;
    out.kind = p.kind->value;
    out.relief = bare(p.reliefPressure);
    out.leastSpeed = valueOr(p.leastSpeed, 0.0);
    out.suctionAvailable = valueOr(p.suctionAvailable, program::kSuctionAvailable);
    if (out.kind == PumpKind::PositiveDisplacement) {
        if (!p.ratedFlow) return std::optional<PumpParts>();
        out.rated = p.ratedFlow->value;
        const bool throttled = valueOr(machine.control, Control::PumpSpeed) == Control::Throttle;
        if (throttled && !out.relief)
            return error("relief_missing_with_throttle", "pump.relief_pressure");
        return std::optional(out);
    }
    if (!p.shutOffPressure) return std::optional<PumpParts>();
    out.shutOff = p.shutOffPressure->value;
    if (p.curve && !p.curve->value.empty()) {
        const auto fit = fitPump(out.shutOff, p.curve->value);
        if (!fit) return fit.problem();
        out.droop = fit->droop;
    }
    return std::optional(out);
}

}  // namespace

Opening openingFor(Flow flow, Pressure pressure) {
    if (!(flow.si() > 0) || !(pressure.si() > 0)) return {};
    return {flow.si() / std::sqrt(pressure.si())};
}

Result<PumpFit> fitPump(Pressure shutOff, const std::vector<CurvePoint>& curve) {
    PumpFit fit;
    fit.droop = SquareLoss::fromSi(curveFall(shutOff, curve));
    if (fit.droop.si() < 0) return error("pump_curve_rising", "pump.curve");
    for (const auto& point : curve) {
        const Pressure miss = shutOff - fit.droop * (point.flow * point.flow) - point.pressure;
        fit.largestMiss = std::max(fit.largestMiss, Pressure::fromSi(std::abs(miss.si())));
    }
    return fit;
}

SquareLoss restrictorLoss(Length hole, double dischargeCoefficient) {
    const double area = dischargeCoefficient * std::numbers::pi / 4 * hole.si() * hole.si();
    return SquareLoss::fromSi(kWaterDensity / 2 / (area * area));
}

Result<CircuitParts> circuitParts(const Machine& machine, const NozzleLaw& law,
                                  double specificGravity, RestrictorPosition position) {
    const auto pump = pumpParts(machine);
    if (!pump) return pump.problem();
    CircuitParts parts(BoomLine(machine.sections->value, law, squareLoss(machine.losses.section),
                                shutOffLoss(machine.checkValve), specificGravity));
    parts.control = valueOr(machine.control, Control::PumpSpeed);
    parts.pump = *pump;
    parts.suction = squareLoss(machine.losses.suction);
    parts.line = squareLoss(machine.losses.line);
    parts.plumbing = squareLoss(machine.losses.plumbing);
    if (position == RestrictorPosition::Narrowed) {
        const auto hole = bare(machine.restrictor.hole);
        parts.restrictorUnknown = !hole;
        if (hole)
            parts.restrictor = restrictorLoss(
                *hole,
                valueOr(machine.restrictor.dischargeCoefficient, program::kDischargeCoefficient));
    }
    const auto& agitation = machine.agitation;
    if (agitation.flow && agitation.at)
        parts.agitation = openingFor(agitation.flow->value, agitation.at->value);
    const auto& valve = machine.controlValve;
    if (valve.flow && valve.at) parts.valve = openingFor(valve.flow->value, valve.at->value);
    parts.leastOpening = valueOr(valve.leastOpening, 0.0);
    return parts;
}

}  // namespace bw
