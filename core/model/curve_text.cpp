// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/curve_text.h"

#include <algorithm>

namespace bw {
namespace {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::vector<std::string_view> splitAt(std::string_view text, std::string_view mark) {
    std::vector<std::string_view> parts;
    for (auto at = text.find(mark); at != std::string_view::npos; at = text.find(mark)) {
        parts.push_back(trimmed(text.substr(0, at)));
        text.remove_prefix(at + mark.size());
    }
    parts.push_back(trimmed(text));
    return parts;
}

Problem unread(std::string_view point) {
    return error("curve_text_unread", "pump.curve", {{"point", std::string(point)}});
}

Result<CurvePoint> parsePoint(std::string_view text, UnitSystem system, DecimalMarks marks) {
    const auto parts = splitAt(text, "at");
    if (parts.size() != 2) return unread(text);
    const auto flow = parse<Flow>(parts[0], displayUnit(system, Dimension::Flow), marks);
    if (!flow) return flow.problem();
    const auto pressure =
        parse<Pressure>(parts[1], displayUnit(system, Dimension::Pressure), marks);
    if (!pressure) return pressure.problem();
    return CurvePoint{*flow, *pressure};
}

}  // namespace

Result<std::vector<CurvePoint>> parseCurve(std::string_view text, UnitSystem system,
                                           DecimalMarks marks) {
    std::vector<CurvePoint> curve;
    for (const auto part : splitAt(text, ";")) {
        const auto point = parsePoint(part, system, marks);
        if (!point) {
            Problem problem = point.problem();
            problem.where = "pump.curve";
            return problem;
        }
        curve.push_back(*point);
    }
    return curve;
}

std::string curveText(const std::vector<CurvePoint>& curve, const NumberStyle& style) {
    std::string text;
    const auto number = [&](auto q) {
        const Unit unit = displayUnit(style.units, kDimensionOf<decltype(q)>);
        return formatNumber(in(q, unit), unit, style.decimalMark);
    };
    for (const auto& point : curve) {
        if (!text.empty()) text += "; ";
        text += number(point.flow) + " at " + number(point.pressure);
    }
    return text;
}

}  // namespace bw
