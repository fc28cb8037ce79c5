// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

/// Ground speed over a measured course; time > 0.
constexpr Speed courseSpeed(Length course, Duration time) {
    return course / time;
}

/// Time that a course takes at a speed (> 0).
constexpr Duration courseTime(Length course, Speed speed) {
    return course / speed;
}

}  // namespace bw
