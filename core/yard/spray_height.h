// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <numbers>

#include "core/units/quantity.h"

namespace bw {

/// Height of the nozzles over the target at which neighbouring fans of `fanDegrees` (over 0, under
/// 180) overlap by a part of their spacing: overlap = (pattern width − spacing) / spacing. Plain
/// geometry; real fans are narrower at low pressure, and a label or the nozzle's own sheet comes
/// first.
inline Length heightForOverlap(double fanDegrees, Length spacing, double overlap) {
    const double half = fanDegrees / 2 * std::numbers::pi / 180;
    return spacing * ((1 + overlap) / (2 * std::tan(half)));
}

}  // namespace bw
