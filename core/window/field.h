// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/hydraulics/boom_line.h"
#include "core/units/quantity.h"

namespace bw {

/// What a nozzle off the centre does while the machine turns.
struct TurnPoint {
    Length offset;                 ///< from the boom's centre, outward positive
    Speed speed;                   ///< over the ground; negative: it runs backward
    std::optional<AreaRate> rate;  ///< nothing: it stands still and the rate has no bound
    bool backsUp() const { return speed.si() < 0; }
    bool standsStill() const { return !rate; }
};

/// A nozzle at `offset` with the centre driving `speed` on a circle of `radius` (> 0): its speed is
/// v·(1 + y/R), so the rate there is A/|1 + y/R|.
TurnPoint turnAt(Length offset, Length radius, Speed speed, AreaRate rate);
/// The last nozzle on each side: inner first. The boom has `nozzles` at `spacing`.
std::pair<TurnPoint, TurnPoint> turnEnds(int nozzles, Length spacing, Length radius, Speed speed,
                                         AreaRate rate);
/// All nozzles from the inner end to the outer.
std::vector<TurnPoint> turnAlong(int nozzles, Length spacing, Length radius, Speed speed,
                                 AreaRate rate);

/// One nozzle of a boom on a cross slope.
struct SlopePoint {
    Length offset;  ///< uphill positive
    Pressure nozzlePressure;
    Flow flow;
};
/// A boom across a slope of `percent` (rise over run): a nozzle y uphill has ρ·g·y·sin φ less
/// pressure, one downhill as much more; the flow of the whole boom stays `boom`. Section losses and
/// shut-off valves are left out here: the pressure is that at the nozzles.
std::vector<SlopePoint> slopeAlong(const BoomLine& line, Length spacing, Flow boom, double percent);

}  // namespace bw
