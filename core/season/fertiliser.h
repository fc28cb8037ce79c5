// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

// Liquid fertiliser: from the nutrient wanted to the volume to spray, and back.

/// Mass of nutrient in a volume of solution; `part` is the nutrient's part by weight (0.28 for 28
/// %).
constexpr Density nutrientContent(Density solution, double part) {
    return solution * part;
}

/// The rate of solution that brings a mass of nutrient on each area; content > 0.
constexpr AreaRate solutionRate(MassRate nutrient, Density content) {
    return nutrient / content;
}

/// The mass of nutrient that a rate of solution brings on each area.
constexpr MassRate nutrientRate(AreaRate rate, Density content) {
    return rate * content;
}

}  // namespace bw
