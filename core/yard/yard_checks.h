// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/model/machine.h"
#include "core/yard/measured.h"

/// The yard checks: readings in, a value of the machine out, with its uncertainty and the sum shown
/// as facts ("yard.…"). All on clean water; all pressures gauge. Readings that cannot be are
/// refused as problems "yard_…" whose `where` is the reading; doubts are in `warnings`.
namespace bw {

/// What every check hands back besides its value.
struct YardSum {
    std::vector<Fact> sum;  ///< the sum, step by step
    std::vector<Problem> warnings;
};

/// Y1, centrifugal pump at full speed: all sections off; all on with the biggest nozzles.
struct PumpLineReadings {
    Measured<Pressure> shutOff;   ///< P0 at the boom sensor's gauge
    Measured<Flow> flow;          ///< Q1, boom flow
    Measured<Pressure> pressure;  ///< p1 at Q1
};
/// The machine's own limit line p = P0 - k·Q² at the boom sensor. It holds pump, strainers, line,
/// meter and agitation as it stood.
struct PumpLine {
    Measured<Pressure> shutOff;
    Measured<Flow> flow;
    Measured<Pressure> pressure;
    double k = 0.0;             ///< Pa per (m³/s)²
    double kUncertainty = 0.0;  ///< standard
    YardSum shown;
};
/// Problems: yard_not_positive, yard_pressure_rises (p1 not under P0). Warning: yard_drop_small
/// (drop under four times its uncertainty).
Result<PumpLine> pumpLine(const PumpLineReadings& readings);
/// Top boom flow of nozzles of flow `each` at `at` (square-root law): Q = √(P0/(k+R)), R =
/// at/(N·each)². Needs nozzles > 0, each > 0, at > 0.
Measured<Flow> topFlow(const PumpLine& line, int nozzles, Flow each, Pressure at);
/// What stands at the sensor at that flow.
Pressure pressureOn(const PumpLine& line, Flow flow);

/// Y1d, diaphragm or piston pump: by-pass slowly towards shut; where the flow stops rising.
struct PumpLeftReadings {
    Measured<Flow> flow;
    Measured<Pressure> pressure;  ///< where it stands then
};
struct PumpLeft {
    Measured<Flow> left;  ///< for the boom, agitation as it stood
    Pressure at;
    YardSum shown;
};
/// Problem: yard_not_positive.
Result<PumpLeft> pumpLeft(const PumpLeftReadings& readings);

/// Y2: what is lost from the boom sensor to the end nozzle, at two flows.
struct NozzleLossReadings {
    Measured<Flow> lowFlow;
    Measured<Pressure> lowLoss;
    Measured<Flow> highFlow;
    Measured<Pressure> highLoss;
};
/// loss = c0 + k·Q². A c0 of about the opening pressure tells an in-line ball valve.
struct NozzleLoss {
    Measured<Pressure> constant;  ///< c0; may come out a little under zero by reading errors
    double k = 0.0;               ///< Pa per (m³/s)²
    double kUncertainty = 0.0;
    Flow highFlow;
    std::optional<ShutOffKind> kind;  ///< nothing where the readings cannot tell
    YardSum shown;
};
/// Problems: yard_not_positive, yard_flow_not_larger, yard_loss_falls. Warnings: yard_kind_unsure,
/// yard_loss_negative (c0 under zero by more than twice its uncertainty).
Result<NozzleLoss> nozzleLoss(const NozzleLossReadings& readings);

/// Y3: the last flow at which the figure stood, and the first at which it wandered.
struct SteadyFlowReadings {
    Flow steady;
    Flow wanders;
    RestrictorPosition position = RestrictorPosition::FullBore;
};
struct SteadyFlow {
    Flow minimum;             ///< to plan by: the last steady one
    Measured<Flow> estimate;  ///< where it starts, half way; uniform between the two
    RestrictorPosition position = RestrictorPosition::FullBore;
    YardSum shown;
};
/// Problems: yard_not_positive, yard_steady_not_larger. Warning: yard_steps_wide (the two lie more
/// than a quarter apart).
Result<SteadyFlow> steadyFlow(const SteadyFlowReadings& readings);

/// Y4: after a speed step of 20 %.
struct RecoveryReadings {
    Measured<Duration> settled;  ///< until within 5 %
    int swings = 0;
    std::optional<Measured<Duration>> swing;  ///< time of one whole swing
};
struct Recovery {
    Measured<Duration> settled;
    std::optional<Measured<Duration>> delay;  ///< a quarter of a swing; nothing without swings
    YardSum shown;
};
/// Problems: yard_not_positive, yard_swing_missing (swings counted, none timed).
Result<Recovery> recovery(const RecoveryReadings& readings);

/// Y8: boom flow at the same boom pressure with agitation open and shut.
struct AgitationReadings {
    Measured<Flow> open;
    Measured<Flow> shut;
    Measured<Pressure> pressure;
};
struct AgitationFlow {
    Measured<Flow> flow;
    Pressure at;
    YardSum shown;
};
/// Problems: yard_not_positive, yard_agitation_falls (shut not over open). Warning:
/// yard_difference_small (under four times its uncertainty).
Result<AgitationFlow> agitationFlow(const AgitationReadings& readings);

/// A gauge or sensor against a tested gauge at two pressures, and at rest.
struct GaugeReadings {
    Measured<Pressure> rest;  ///< shown without pressure
    Measured<Pressure> shownLow;
    Measured<Pressure> trueLow;
    Measured<Pressure> shownHigh;
    Measured<Pressure> trueHigh;
};
struct GaugeCheck {
    Measured<Pressure>
        offset;               ///< shown where the true pressure is nothing, from the two pressures
    Measured<double> scale;   ///< 1.02: rises 2 % too much
    Measured<Pressure> rest;  ///< shown without pressure
    YardSum shown;
};
/// Problems: yard_not_positive, yard_flow_not_larger's counterpart yard_pressure_not_larger.
Result<GaugeCheck> gaugeCheck(const GaugeReadings& readings);

}  // namespace bw
