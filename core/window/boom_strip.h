// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/window/speed_window.h"

namespace bw {

/// What a nozzle of the strip does that a figure alone does not say.
enum class StripState { Sprays, UnderLowest, Shut, StandsStill, BacksUp };

/// One nozzle of the boom, left to right as seen from the seat.
struct StripNozzle {
    int number = 1;   ///< from the left
    int section = 1;  ///< from the left
    Length offset;    ///< from the middle, right positive
    std::optional<Pressure> pressure;
    std::optional<Flow> flow;
    std::optional<Speed> speed;    ///< negative: it runs backward
    std::optional<AreaRate> rate;  ///< in a turn; nothing: it stands still
    /// Even: flow against that at the feed. Turn: rate against the planned one. Slope: flow
    /// against the level boom's. Nothing where there is no bound.
    std::optional<double> part;
    StripState state = StripState::Sprays;
};

/// The boom nozzle by nozzle, and what it says in words "strip.…".
struct BoomStrip {
    std::vector<StripNozzle> nozzles;  ///< empty: not checked
    std::vector<Fact> facts;           ///< whole sentences, the result first
    std::vector<std::string> missing;  ///< fields of the machine that would mend "not checked"
    bool asksForWork = false;          ///< a usual limit is passed, or a nozzle drops out
    std::optional<double> limitPart;   ///< even: the part of the flow at the usual limit
    bool hasMore = false;              ///< somewhere over the planned rate (caution C16)
    bool hasLess = false;              ///< somewhere under it (caution C17)
    bool hasLowPressure = false;       ///< a nozzle under its lowest pressure (caution C20)
};

/// How even the pipe along the boom feeds its nozzles at the pressure of a speed (> 0). Not checked
/// while bore or feeds are unknown; a ring that is not known counts as none. Shut-off valves take
/// the same from every nozzle, so they change nothing here; neither does a section's loss.
BoomStrip evenStrip(const WindowModel& model, Speed speed);
/// A left turn with the boom's middle on a circle of `radius` (> 0).
BoomStrip turnStrip(const WindowModel& model, Speed speed, Length radius, UnitSystem units);
/// Across a slope of `percent` (0 and up) that rises to the right.
BoomStrip slopeStrip(const WindowModel& model, Speed speed, double percent, UnitSystem units);

}  // namespace bw
