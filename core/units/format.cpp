// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/format.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace bw {
namespace {

struct Digits {
    int significant;
    int maxDecimals;
};

/// Three figures, and no more decimals than anybody reads in that unit.
Digits digitsFor(Unit unit) {
    switch (unit) {
        case Unit::Psi:
        case Unit::Kilopascal:
        case Unit::KilometrePerHour:
        case Unit::MilePerHour:
        case Unit::MetrePerSecond:
        case Unit::LitrePerHectare:
        case Unit::GallonUsPerAcre:
        case Unit::GallonImperialPerAcre:
        case Unit::Percent:
            return {3, 1};
        case Unit::Bar:
        case Unit::LitrePerMinute:
            return {3, 2};
        case Unit::GallonUsPerMinute:
        case Unit::GallonImperialPerMinute:
            return {3, 3};
        case Unit::Hectare:
        case Unit::Acre:
            return {4, 1};
        case Unit::MillilitrePerMinute:
        case Unit::Millilitre:
            return {4, 0};
        default:
            return {3, 3};
    }
}

std::string withMark(std::string s, char mark) {
    std::replace(s.begin(), s.end(), '.', mark);
    return s;
}

std::string fixed(double number, int decimals) {
    std::array<char, 400> buffer{};
    const auto [end, code] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                           std::chars_format::fixed, decimals);
    if (code != std::errc()) return "—";
    std::string s(buffer.data(), end);
    if (s.find_first_not_of("-0.") == std::string::npos && s.front() == '-') s.erase(0, 1);
    return s;
}

std::string withoutTrailingZeros(std::string s) {
    if (s.find('.') == std::string::npos) return s;
    while (s.back() == '0') s.pop_back();
    if (s.back() == '.') s.pop_back();
    return s;
}

}  // namespace

std::string formatFixed(double number, int decimals, char mark) {
    if (!std::isfinite(number)) return "—";
    return withMark(fixed(number, decimals), mark);
}

std::string formatNumber(double number, Unit unit, char mark) {
    if (!std::isfinite(number)) return "—";
    const auto [significant, maxDecimals] = digitsFor(unit);
    const double size = std::abs(number);
    const int leading = size > 0 ? static_cast<int>(std::floor(std::log10(size) + 1e-9)) + 1 : 1;
    const int decimals = std::clamp(significant - leading, 0, maxDecimals);
    return withMark(withoutTrailingZeros(fixed(number, decimals)), mark);
}

std::string formatExact(double number, char mark) {
    if (!std::isfinite(number)) return "—";
    std::array<char, 64> buffer{};
    const auto [end, code] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                           std::chars_format::general, 12);
    if (code != std::errc()) return "—";
    return withMark(std::string(buffer.data(), end), mark);
}

std::string format(AnyQuantity q, Unit unit, char mark) {
    std::string s = formatNumber(toUnit(q, unit), unit, mark);
    if (unit != Unit::None) s += " " + std::string(info(unit).symbol);
    return s;
}

Unit readableUnit(AnyQuantity q, UnitSystem system) {
    const double size = std::abs(q.si);
    if (q.dimension == Dimension::Length && size > 0) {
        if (system == UnitSystem::Us && size < 1.0) return Unit::Inch;
        if (system != UnitSystem::Us && size < 0.1) return Unit::Millimetre;
    }
    return displayUnit(system, q.dimension);
}

std::string format(AnyQuantity q, const NumberStyle& style) {
    return format(q, readableUnit(q, style.units), style.decimalMark);
}

}  // namespace bw
