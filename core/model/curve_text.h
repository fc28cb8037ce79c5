// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/model/machine.h"
#include "core/units/format.h"
#include "core/units/parse.h"

namespace bw {

/// Points of a pump's curve as people write them: flow at pressure, points parted by semicolons.
/// "40 gal/min at 112 psi; 80 at 90"; bare figures are in the system's units.
/// Problems: curve_text_unread (`point`), those of parseQuantity, at "pump.curve".
Result<std::vector<CurvePoint>> parseCurve(std::string_view text, UnitSystem system,
                                           DecimalMarks marks = DecimalMarks::OwnPoint);
/// "40 at 112; 80 at 90", in the style's units.
std::string curveText(const std::vector<CurvePoint>& curve, const NumberStyle& style);

}  // namespace bw
