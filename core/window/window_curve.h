// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/window/speed_window.h"

namespace bw {

/// What really happens at `points` speeds (≥ 2) evenly from `from` to `to` (0 < from < to), and
/// just at each limit that pins the rate in between, so that corners stay sharp. In order.
std::vector<OperatingPoint> operatingCurve(const WindowModel& model, Speed from, Speed to,
                                           int points);

/// A stretch of the operating line over which the mean nozzle makes one droplet category.
struct DropletStretch {
    DropletCategory category = DropletCategory::M;
    Speed from, to;
    Pressure sensorFrom, sensorTo;
};
/// All of the nozzle's bands as speeds, rising. Pulsed: nothing (pressure does not follow speed).
std::vector<DropletStretch> dropletStretches(const WindowModel& model);

/// Sensor pressures for the least and the highest rate of a job with a range of rates, pinned by
/// floor and ceiling like the operating line; nothing if the job has one rate.
struct RateBandPoint {
    Speed speed;
    Pressure atLeast, atMost;
};
std::vector<RateBandPoint> rateBand(const WindowModel& model, Speed from, Speed to, int points);

/// Part of the time that pulsed nozzles are on for a mean flow of the whole boom; nothing if the
/// machine is not pulsed.
std::optional<double> onTimeShare(const WindowModel& model, Flow boomFlow);

/// The part of the plane worth drawing: speeds around the job and the ends of the window, and
/// sensor pressures from nothing to a little over the ceiling.
struct CurveExtent {
    Speed from, to;
    Pressure top;
    AreaRate rateTop;  ///< highest rate for the view of rate against speed
};
CurveExtent extentOf(const WindowModel& model, const SpeedWindow& window);

/// The highest boom sensor pressure that the machine can hold at the flow of a speed.
struct ReachPoint {
    Speed speed;
    Pressure sensorPressure;
};
/// What the pump can feed over a range of speeds, at the usual rate; points where it is infinite
/// are left out. Empty where the pump or its curve is not known.
std::vector<ReachPoint> pumpReach(const WindowModel& model, Speed from, Speed to, int points);

}  // namespace bw
