// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <utility>

#include "core/base/result.h"
#include "core/hydraulics/boom_line.h"
#include "core/model/machine.h"

namespace bw {

/// Flow per square root of pressure on water: what a fixed opening passes, m³/s per √Pa.
struct Opening {
    double conductance = 0.0;
    bool operator==(const Opening&) const = default;
};

/// Opening that passes `flow` when `pressure` is lost over it; closed if either is not positive.
Opening openingFor(Flow flow, Pressure pressure);

/// A pump at full speed on water. Centrifugal: p = a − c·Q². Positive displacement: Q = rated.
struct PumpParts {
    PumpKind kind = PumpKind::Centrifugal;
    Pressure shutOff;  ///< a
    SquareLoss droop;  ///< c
    Flow rated;
    std::optional<Pressure> relief;  ///< ideal: above it takes the rest
    double leastSpeed = 0.0;         ///< part of full speed
    double topSpeed = 1.0;           ///< under 1: the drive gives no more
    double health = 1.0;             ///< wear: part of head or of displacement left
    Pressure suctionAvailable;  ///< most that the suction side can lose before the pump cavitates
};

/// Fit of c to the points of a pump curve, with the largest miss of a point.
struct PumpFit {
    SquareLoss droop;
    Pressure largestMiss;
};
/// c = Σ(a − p_i)·Q_i² / ΣQ_i⁴. Problem: pump_curve_rising (c < 0).
Result<PumpFit> fitPump(Pressure shutOff, const std::vector<CurvePoint>& curve);

/// The whole spray line in numbers. A fault changes these and nothing else.
struct CircuitParts {
    explicit CircuitParts(BoomLine line) : boom(std::move(line)) {}

    Control control = Control::PumpSpeed;
    std::optional<PumpParts> pump;  ///< nothing: no pump known, no limit from it
    SquareLoss suction;
    SquareLoss line;
    SquareLoss plumbing;           ///< meter and restrictor at full bore
    SquareLoss restrictor;         ///< what narrowing adds
    Opening agitation;             ///< from the pump outlet to the tank
    Opening outletLeak;            ///< another branch there
    Opening manifoldLeak;          ///< behind the meter, not sprayed
    std::optional<Opening> valve;  ///< control valve fully open
    double leastOpening = 0.0;     ///< part of the stroke
    BoomLine boom;
    /// Narrowed, but the hole is not known: it adds no loss here, and the pump's limit is not sure.
    bool restrictorUnknown = false;
};

/// The parts of a machine with a nozzle's law, a mix, and the restrictor in a position.
/// Needs sections (positive). A pump without its pressure or flow counts as unknown. Problems:
/// pump_curve_rising, relief_missing_with_throttle.
Result<CircuitParts> circuitParts(const Machine& machine, const NozzleLaw& law,
                                  double specificGravity, RestrictorPosition position);

/// What a narrowed restrictor adds: a sharp-edged hole, small beside its pipe (K = (ρ/2)/(C_d·A)²).
SquareLoss restrictorLoss(Length hole, double dischargeCoefficient);

}  // namespace bw
