// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

// rate · speed · width = flow. `width` is the spacing for one nozzle, the sprayed width for the
// boom.

/// What is sprayed on the ground by a flow over a width (> 0) at a speed (> 0).
constexpr AreaRate sprayRate(Flow flow, Speed speed, Length width) {
    return flow / (speed * width);
}

/// The flow that a rate needs over a width at a speed.
constexpr Flow neededFlow(AreaRate rate, Speed speed, Length width) {
    return rate * speed * width;
}

/// The speed at which a flow over a width (> 0) gives a rate (> 0).
constexpr Speed speedFor(AreaRate rate, Flow flow, Length width) {
    return flow / (rate * width);
}

}  // namespace bw
