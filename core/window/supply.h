// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/window/window_limits.h"

namespace bw {

/// Whether the pump's fall of pressure with flow is known. Without points it is reckoned flat, an
/// upper bound; an empty list of points says that it is flat. True for a displacement pump.
bool isPumpCurveKnown(const Machine& machine);

/// Whether the least flow of the control is known: how the rate is changed, and for a pump's speed
/// its least, for a throttle its size or that it shuts fully, for a by-pass its size.
bool isLeastFlowKnown(const Machine& machine);

/// What a wish of boom flow becomes: the controller's floor and ceiling first; the machine itself
/// has the last word.
Flow heldFlow(const WindowLimits& limits, Flow wish);

}  // namespace bw
