// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/field_checks.h"

#include <cmath>

#include "core/model/usual_ranges.h"

namespace bw {
namespace {

/// Room for the rounding of a conversion at the ends of a range.
constexpr double kRounding = 1e-9;

bool isUnder(double value, double end) {
    return value < end - kRounding * std::abs(end);
}
bool isOver(double value, double end) {
    return value > end + kRounding * std::abs(end);
}

bool checkPossible(ProblemList& list, const std::string& where, AnyQuantity value,
                   const UsualRange& range) {
    const std::vector<Argument> arguments{
        {"value", value}, {"from", range.possibleFrom}, {"to", range.possibleTo}};
    if (value.si < 0 && range.possibleFrom.si >= 0) {
        list.add(error("value_negative", where, arguments));
    } else if (value.si == 0 && range.possibleFrom.si > 0) {
        list.add(error("value_zero", where, arguments));
    } else if (isUnder(value.si, range.possibleFrom.si) || isOver(value.si, range.possibleTo.si)) {
        list.add(error("value_not_possible", where, arguments));
    } else {
        return true;
    }
    return false;
}

}  // namespace

bool checkNumber(ProblemList& list, std::string_view area, std::string_view key,
                 AnyQuantity value) {
    const std::string where(key);
    if (!std::isfinite(value.si)) {
        list.add(error("value_not_finite", where));
        return false;
    }
    const UsualRange* range = usualRange(std::string(area) + "." + where);
    if (!range) return true;
    if (!checkPossible(list, where, value, *range)) return false;
    if (range->from && range->to &&
        (isUnder(value.si, range->from->si) || isOver(value.si, range->to->si))) {
        list.add(warning("value_unusual", where,
                         {{"value", value}, {"from", *range->from}, {"to", *range->to}}));
    }
    return true;
}

void detail::checkAssumedRange(ProblemList& list, std::string_view key, AnyQuantity value,
                               AnyQuantity from, AnyQuantity to) {
    const std::vector<Argument> arguments{{"value", value}, {"from", from}, {"to", to}};
    if (!(from.si <= to.si)) {
        list.add(error("assumed_range_crossed", std::string(key), arguments));
    } else if (isUnder(value.si, from.si) || isOver(value.si, to.si)) {
        list.add(warning("assumed_outside_range", std::string(key), arguments));
    }
}

}  // namespace bw
