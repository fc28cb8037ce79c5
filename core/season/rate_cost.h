// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

/// Money that a rate error puts on the ground: `cost` is the product's on `costArea` (> 0) at the
/// right rate, `error` the relative error (0.1 for 10 % too much), `area` what was sprayed.
/// Negative for too little. In the currency of `cost`.
constexpr double costOfRateError(double cost, Area costArea, double error, Area area) {
    return cost * (area / costArea) * error;
}

}  // namespace bw
