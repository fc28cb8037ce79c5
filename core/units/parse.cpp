// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/parse.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <utility>

namespace bw {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

std::string_view trimmed(std::string_view s) {
    while (!s.empty() && isSpace(s.front())) s.remove_prefix(1);
    while (!s.empty() && isSpace(s.back())) s.remove_suffix(1);
    return s;
}

void replaceAll(std::string& s, std::string_view from, std::string_view to) {
    std::string out;
    std::size_t start = 0;
    for (std::size_t at = 0; (at = s.find(from, start)) != std::string::npos;
         start = at + from.size()) {
        out.append(s, start, at - start).append(to);
    }
    out.append(s, start);
    s = std::move(out);
}

/// Hard and thin spaces, the true minus and the vulgar fractions that keyboards offer.
std::string plain(std::string_view text) {
    std::string s(text);
    for (const auto space : {"\u00a0", "\u202f", "\u2009"}) replaceAll(s, space, " ");
    replaceAll(s, "\u2212", "-");
    replaceAll(s, "½", " 1/2");
    replaceAll(s, "¼", " 1/4");
    replaceAll(s, "¾", " 3/4");
    return s;
}

Problem numberProblem(std::string code, std::string_view typed) {
    return error(std::move(code), {}, {{"typed", std::string(typed)}});
}

bool mayGroup(std::string_view digitsBefore, std::size_t digitsAfter) {
    return digitsAfter == 3 && !digitsBefore.empty() && digitsBefore.size() <= 3 &&
           digitsBefore != "0";
}

/// One decimal number without spaces or fractions.
Result<double> parseDecimal(std::string_view text, DecimalMarks marks) {
    std::string_view body = text;
    if (!body.empty() && (body.front() == '-' || body.front() == '+')) body.remove_prefix(1);
    const auto mantissa = body.substr(0, body.find_first_of("eE"));
    const auto markCount = std::count_if(mantissa.begin(), mantissa.end(),
                                         [](char c) { return c == '.' || c == ','; });
    for (const char c : mantissa) {
        if (c == '\'') return numberProblem("number_group_mark", text);
        if (!isDigit(c) && c != '.' && c != ',') return numberProblem("number_letters", text);
    }
    if (markCount > 1) return numberProblem("number_group_mark", text);
    const auto at = mantissa.find_first_of(".,");
    std::string s(text.front() == '+' ? text.substr(1) : text);
    if (at != std::string_view::npos) {
        const bool comma = mantissa[at] == ',';
        if (comma && marks == DecimalMarks::PointOnly)
            return numberProblem("number_decimal_comma", text);
        const bool own =
            marks == DecimalMarks::PointOnly || comma == (marks == DecimalMarks::OwnComma);
        if (!own && mayGroup(mantissa.substr(0, at), mantissa.size() - at - 1))
            return numberProblem("number_group_mark", text);
        std::replace(s.begin(), s.end(), ',', '.');
    }
    double value = 0.0;
    const auto [end, code] = std::from_chars(s.data(), s.data() + s.size(), value);
    if (code == std::errc::result_out_of_range) return numberProblem("number_not_finite", text);
    if (code != std::errc() || end != s.data() + s.size())
        return numberProblem("number_letters", text);
    if (!std::isfinite(value)) return numberProblem("number_not_finite", text);
    return value;
}

Result<double> parseFraction(std::string_view text, std::size_t slash) {
    unsigned over = 0;
    unsigned under = 0;
    const auto top = text.substr(0, slash);
    const auto bottom = text.substr(slash + 1);
    const auto a = std::from_chars(top.data(), top.data() + top.size(), over);
    const auto b = std::from_chars(bottom.data(), bottom.data() + bottom.size(), under);
    const bool whole = a.ec == std::errc() && b.ec == std::errc() &&
                       a.ptr == top.data() + top.size() && b.ptr == bottom.data() + bottom.size();
    if (!whole || under == 0) return numberProblem("number_letters", text);
    return static_cast<double>(over) / under;
}

/// "7 1/2": a whole number, a blank and a fraction under one.
Result<double> parseMixed(std::string_view text, std::size_t blank, DecimalMarks marks) {
    const auto whole = trimmed(text.substr(0, blank));
    const auto rest = trimmed(text.substr(blank));
    const auto slash = rest.find('/');
    if (slash == std::string_view::npos)
        return numberProblem(isDigit(rest.front()) ? "number_group_mark" : "number_letters", text);
    const auto first = parseDecimal(whole, marks);
    const auto second = parseFraction(rest, slash);
    if (!first) return first.problem();
    if (!second) return second.problem();
    if (*second >= 1.0 || *first != std::floor(*first))
        return numberProblem("number_letters", text);
    return *first + (*first < 0 ? -*second : *second);
}

/// Where the number ends and the unit begins. An `e` belongs to the number only before a digit.
std::size_t unitStart(std::string_view s) {
    std::size_t end = 0;
    for (std::size_t i = 0; i < s.size(); ++i) {
        const char c = s[i];
        const bool exponent =
            (c == 'e' || c == 'E') && i > 0 && isDigit(s[i - 1]) && i + 1 < s.size() &&
            (isDigit(s[i + 1]) ||
             ((s[i + 1] == '-' || s[i + 1] == '+') && i + 2 < s.size() && isDigit(s[i + 2])));
        const bool slash = c == '/' && i > 0 && isDigit(s[i - 1]);
        if (!isDigit(c) && !isSpace(c) && c != '.' && c != ',' && c != '-' && c != '+' &&
            !exponent && !slash)
            break;
        if (!isSpace(c)) end = i + 1;
        if (exponent) ++i, end = i + 1;
    }
    return end;
}

Result<Unit> readUnit(std::string_view spelling, Dimension expected, std::string_view typed) {
    const auto unit = unitFor(spelling);
    if (unit) {
        if (info(*unit).dimension == expected) return *unit;
        return error(
            "unit_wrong_kind", {},
            {{"typed", std::string(typed)},
             {"unit", std::string(info(*unit).symbol)},
             {"example", std::string(info(displayUnit(UnitSystem::Metric, expected)).symbol)}});
    }
    std::string word(spelling);
    std::transform(word.begin(), word.end(), word.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (word == "gal" || word == "gallon" || word == "gallons")
        return error("unit_gallon_which", {}, {{"typed", std::string(typed)}});
    return error("unit_unknown", {},
                 {{"typed", std::string(typed)}, {"unit", std::string(spelling)}});
}

}  // namespace

Result<double> parseNumber(std::string_view raw, DecimalMarks marks) {
    const std::string clean = plain(raw);
    const auto text = trimmed(clean);
    if (text.empty()) return numberProblem("number_missing", raw);
    const auto blank = std::find_if(text.begin(), text.end(), isSpace);
    if (blank != text.end())
        return parseMixed(text, static_cast<std::size_t>(blank - text.begin()), marks);
    const auto slash = text.find('/');
    if (slash != std::string_view::npos) return parseFraction(text, slash);
    return parseDecimal(text, marks);
}

Result<ParsedQuantity> parseQuantity(std::string_view raw, Dimension expected,
                                     std::optional<Unit> bareUnit, DecimalMarks marks) {
    const std::string clean = plain(raw);
    const auto text = trimmed(clean);
    if (text.empty()) return numberProblem("number_missing", raw);
    const auto split = unitStart(text);
    const auto numberText = trimmed(text.substr(0, split));
    const auto unitText = trimmed(text.substr(split));
    if (numberText.empty()) return numberProblem("number_letters", raw);
    const auto number = parseNumber(numberText, marks);
    if (!number) return number.problem();
    ParsedQuantity out;
    out.number = *number;
    if (unitText.empty()) {
        if (!bareUnit)
            return error(
                "unit_missing", {},
                {{"typed", std::string(raw)},
                 {"example", std::string(info(displayUnit(UnitSystem::Metric, expected)).symbol)}});
        out.unit = *bareUnit;
    } else {
        const auto unit = readUnit(unitText, expected, raw);
        if (!unit) return unit.problem();
        out.unit = *unit;
        out.unitWasTyped = true;
    }
    out.quantity = {expected, out.number * info(out.unit).inSi};
    if (!std::isfinite(out.quantity.si)) return numberProblem("number_not_finite", raw);
    return out;
}

}  // namespace bw
