// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/usual_ranges.h"

#include <cassert>
#include <map>

#include "core/base/csv_text.h"
#include "core/base/resource.h"
#include "core/units/parse.h"

namespace bw {
namespace {

std::optional<AnyQuantity> valueIn(std::string_view number, Unit unit) {
    if (number.empty()) return std::nullopt;
    const auto read = parseQuantity(number, info(unit).dimension, unit, DecimalMarks::PointOnly);
    assert(read.isOk());
    return read.isOk() ? std::optional(read->quantity) : std::nullopt;
}

using RangeMap = std::map<std::string, UsualRange, std::less<>>;

RangeMap readRanges() {
    const CsvTable csv = parseCsv(resource("data/usual_ranges.csv"));
    RangeMap out;
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        const auto unit = unitFor(csv.at(row, "unit")).value_or(Unit::None);
        UsualRange range;
        range.key = csv.at(row, "key");
        range.from = valueIn(csv.at(row, "usual_from"), unit);
        range.to = valueIn(csv.at(row, "usual_to"), unit);
        range.possibleFrom = valueIn(csv.at(row, "possible_from"), unit).value_or(AnyQuantity{});
        range.possibleTo = valueIn(csv.at(row, "possible_to"), unit).value_or(AnyQuantity{});
        range.source = csv.at(row, "source");
        out.emplace(range.key, range);
    }
    return out;
}

}  // namespace

const UsualRange* usualRange(std::string_view key) {
    static const RangeMap ranges = readRanges();
    const auto found = ranges.find(key);
    return found == ranges.end() ? nullptr : &found->second;
}

}  // namespace bw
