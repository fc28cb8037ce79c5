// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "core/units/quantity.h"

namespace bw {

/// The water that all ratings are on: 1 kg/L, as extension sheets take it (8.33 to 8.3453 lb/gal).
constexpr Density waterDensity() {
    return Density::fromSi(1000);
}

/// Weight against water.
constexpr double specificGravity(Density liquid, Density water = waterDensity()) {
    return liquid / water;
}

/// What a flow or rate of the liquid is multiplied by to give the water flow of the same nozzle at
/// the same pressure: sqrt(SG), for a nozzle of the square-root law. SG > 0.
inline double densityFactor(double specificGravity) {
    return std::sqrt(specificGravity);
}

/// The rate to look up in a table for water when `rate` of the liquid is wanted.
inline AreaRate waterEquivalentRate(AreaRate rate, double specificGravity) {
    return rate * densityFactor(specificGravity);
}

}  // namespace bw
