// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/units/unit.h"

namespace bw {

/// Which marks count as the decimal mark. People may type either; the one that is not their own is
/// refused where it could be a group mark ("1,250" for a reader of points, "1.250" for a reader of
/// commas). JSON knows the point alone.
enum class DecimalMarks { OwnPoint, OwnComma, PointOnly };

/// A number as typed, without its unit: "7 1/2", "2,8", "1e-3", "½". Group marks ("1,250.5",
/// "1 250", "1.250.000") are refused, never guessed; so is the mark that is not the reader's own
/// with exactly three digits behind it ("1,250" with OwnPoint), except after a lone 0 ("0,125").
/// Problems: number_missing, number_letters, number_group_mark, number_decimal_comma (PointOnly),
/// number_not_finite; the argument `typed` holds the text.
Result<double> parseNumber(std::string_view text, DecimalMarks marks = DecimalMarks::OwnPoint);

/// What was typed, read.
struct ParsedQuantity {
    AnyQuantity quantity;
    double number = 0.0;  ///< as typed, in `unit`
    Unit unit = Unit::None;
    bool unitWasTyped = false;
};

/// "40 psi", "2,8 bar", "15mph", "7 1/2 gal/ac", or a bare number in `bareUnit`.
/// Problems: as parseNumber, and unit_unknown, unit_gallon_which ("gal" alone), unit_wrong_kind
/// (names the unit typed and the dimension expected), unit_missing (no `bareUnit` given).
Result<ParsedQuantity> parseQuantity(std::string_view text, Dimension expected,
                                     std::optional<Unit> bareUnit,
                                     DecimalMarks marks = DecimalMarks::OwnPoint);

/// Typed form of parseQuantity.
template <class Q>
Result<Q> parse(std::string_view text, std::optional<Unit> bareUnit = std::nullopt,
                DecimalMarks marks = DecimalMarks::OwnPoint) {
    const auto read = parseQuantity(text, kDimensionOf<Q>, bareUnit, marks);
    if (!read) return read.problem();
    return Q::fromSi(read->quantity.si);
}

}  // namespace bw
