// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

/// Flow of a nozzle, or of several caught together, from what was caught in a time (> 0).
constexpr Flow catchFlow(Volume caught, Duration time) {
    return caught / time;
}

}  // namespace bw
