// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/window/window_limits.h"

namespace bw {

/// Whether the pump's fall of pressure with flow is known. Without points it is reckoned flat, an
/// upper bound; an empty list of points says that it is flat. True for a displacement pump.
bool isPumpCurveKnown(const Machine& machine);

/// Whether the least flow of the control is known: how the rate is changed, and for a pump's speed
/// its least, for a throttle its size or that it shuts fully, for a by-pass its size.
bool isLeastFlowKnown(const Machine& machine);

/// Where a by-pass or a throttle regulates, a displacement pump's whole flow passes its suction at
/// every speed. `given` is what it passes there where the suction loses all that it may before the
/// pump's own flow is reached: the pump cavitates then, whatever the speed.
struct SuctionCut {
    Flow given;
    Flow whole;
    Pressure lost;
};
/// Nothing where the suction is wide enough, or not known.
std::optional<SuctionCut> suctionCut(const Machine& machine, double specificGravity);
/// The same as a fact, `code` with flow, whole and lost.
std::optional<Fact> suctionFact(const char* code, const Machine& machine, double specificGravity);

/// What a wish of boom flow becomes: the controller's floor and ceiling first; the machine itself
/// has the last word.
Flow heldFlow(const WindowLimits& limits, Flow wish);

}  // namespace bw
