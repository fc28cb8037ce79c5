// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/units/unit.h"

namespace bw {

/// How a person reads numbers: the units, and the decimal mark.
struct NumberStyle {
    UnitSystem units = UnitSystem::Metric;
    char decimalMark = '.';
    bool operator==(const NumberStyle&) const = default;
};

/// The number alone in `unit`, with digits sensible for that unit and size: 3 significant figures
/// for readings, never more decimals than the unit's usual gauge shows. "—" when not finite.
std::string formatNumber(double number, Unit unit, char decimalMark = '.');
/// A number with exactly `decimals` decimals, or as few as show it to `significant` figures.
std::string formatFixed(double number, int decimals, char decimalMark = '.');
/// Shortest text that reads back as the same number to 12 digits: for what was typed.
std::string formatExact(double number, char decimalMark = '.');
/// The unit in which a value is said in a sentence: that of the system, but small lengths (spacing,
/// holes) in inches or millimetres.
Unit readableUnit(AnyQuantity q, UnitSystem system);
/// Number and unit in the style's unit for the value, "2.8 bar", "20 in".
std::string format(AnyQuantity q, const NumberStyle& style);
std::string format(AnyQuantity q, Unit unit, char decimalMark = '.');
template <class Q>
std::string format(Q q, const NumberStyle& style) {
    return format(anyQuantity(q), style);
}

}  // namespace bw
