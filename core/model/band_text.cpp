// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/band_text.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>

#include "core/units/format.h"

namespace bw {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\r';
}

std::string upper(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    return out;
}

/// A number, a word, or a sign of the text.
struct Token {
    enum class Kind { Number, Word, Dash, Percent, Separator } kind;
    std::string_view text;
};

/// A comma or point is part of a number between two digits, else it parts bands.
std::vector<Token> tokensOf(std::string_view s) {
    std::vector<Token> out;
    std::size_t i = 0;
    const auto take = [&](Token::Kind kind, std::size_t end) {
        out.push_back({kind, s.substr(i, end - i)});
        i = end;
    };
    while (i < s.size()) {
        const char c = s[i];
        std::size_t end = i + 1;
        if (isDigit(c)) {
            while (end < s.size() &&
                   (isDigit(s[end]) || ((s[end] == '.' || s[end] == ',') && end + 1 < s.size() &&
                                        isDigit(s[end + 1]))))
                ++end;
            take(Token::Kind::Number, end);
        } else if (std::isalpha(static_cast<unsigned char>(c))) {
            while (end < s.size() &&
                   (std::isalpha(static_cast<unsigned char>(s[end])) || s[end] == '/'))
                ++end;
            take(Token::Kind::Word, end);
        } else if (s.substr(i).starts_with("\u2013")) {  // en dash
            take(Token::Kind::Dash, i + 3);
        } else if (c == '-') {
            take(Token::Kind::Dash, end);
        } else if (c == '%') {
            take(Token::Kind::Percent, end);
        } else if (c == ',' || c == ';' || c == '\n') {
            take(Token::Kind::Separator, end);
        } else {
            ++i;
        }
    }
    return out;
}

/// What one band of the text holds, before it is made sense of.
struct RawBand {
    std::string_view name;            ///< category letters, or the percent figure
    std::vector<Pressure> pressures;  ///< one: its upper end; two: both ends
};

Problem bandProblem(std::string code, std::string_view part) {
    return error(std::move(code), {}, {{"part", std::string(part)}});
}

bool isFiller(std::string_view word) {
    const std::string w = upper(word);
    return w == "UP" || w == "TO" || w == "FROM" || w == "AND";
}

/// Reads tokens into bands; `nameOf` says whether the token at an index names a band.
template <class NameOf>
Result<std::vector<RawBand>> rawBands(const std::vector<Token>& tokens, const BandStyle& style,
                                      NameOf&& nameOf) {
    std::vector<RawBand> out;
    std::vector<Pressure> ahead;  // "1-1.6 VC": pressures before the name
    bool parted = true;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const Token& t = tokens[i];
        if (t.kind == Token::Kind::Separator) {
            parted = true;
            continue;
        }
        if (t.kind == Token::Kind::Dash || t.kind == Token::Kind::Percent ||
            (t.kind == Token::Kind::Word && isFiller(t.text)))
            continue;
        if (nameOf(i)) {
            out.push_back({t.text, std::move(ahead)});
            ahead.clear();
            parted = false;
            continue;
        }
        if (t.kind == Token::Kind::Word) return bandProblem("band_category_unknown", t.text);
        std::string typed(t.text);
        if (i + 1 < tokens.size() && tokens[i + 1].kind == Token::Kind::Word &&
            unitFor(tokens[i + 1].text) && !nameOf(i + 1)) {
            typed += " " + std::string(tokens[++i].text);
        }
        const auto pressure = parse<Pressure>(typed, style.pressure, style.marks);
        if (!pressure) return pressure.problem();
        const bool ofLast = !parted && !out.empty() && out.back().pressures.size() < 2;
        (ofLast ? out.back().pressures : ahead).push_back(*pressure);
    }
    if (!ahead.empty()) return bandProblem("band_category_missing", tokens.back().text);
    return out;
}

struct Ends {
    Pressure from;
    Pressure to;
};

/// Gives each band its two ends: an upper end alone starts where the last band ended.
Result<std::vector<Ends>> endsOf(const std::vector<RawBand>& raw, std::optional<Pressure> start) {
    std::vector<Ends> out;
    for (const auto& band : raw) {
        if (band.pressures.empty()) return bandProblem("band_pressure_missing", band.name);
        Ends ends;
        if (band.pressures.size() == 2) {
            ends = {band.pressures[0], band.pressures[1]};
        } else {
            if (out.empty() && !start) return bandProblem("band_start_missing", band.name);
            ends = {out.empty() ? *start : out.back().to, band.pressures[0]};
        }
        if (!(ends.from < ends.to)) return bandProblem("band_ends_early", band.name);
        if (!out.empty() && ends.from < out.back().to)
            return bandProblem("band_overlap", band.name);
        out.push_back(ends);
    }
    return out;
}

std::string ends(Pressure from, Pressure to, Unit unit, char mark) {
    return formatExact(in(from, unit), mark) + "-" + formatExact(in(to, unit), mark);
}

std::vector<std::string_view> cellsOf(std::string_view row) {
    std::vector<std::string_view> out;
    std::size_t i = 0;
    while (i < row.size()) {
        while (i < row.size() && (isBlank(row[i]) || row[i] == ',')) ++i;
        const std::size_t begin = i;
        while (i < row.size() && row[i] != '\t' &&
               !(isBlank(row[i]) && i + 1 < row.size() && isDigit(row[i + 1])) &&
               !(row[i] == ',' && (i + 1 == row.size() || isBlank(row[i + 1])))) {
            ++i;
        }
        if (i > begin) out.push_back(row.substr(begin, i - begin));
    }
    return out;
}

}  // namespace

Result<std::vector<DropletBand>> parseDropletBands(std::string_view text,
                                                   std::optional<Pressure> start,
                                                   const BandStyle& style) {
    const auto tokens = tokensOf(text);
    const auto isName = [&](std::size_t i) {
        return tokens[i].kind == Token::Kind::Word &&
               choiceFor<DropletCategory>(upper(tokens[i].text)).has_value();
    };
    const auto raw = rawBands(tokens, style, isName);
    if (!raw) return raw.problem();
    const auto ends = endsOf(*raw, start);
    if (!ends) return ends.problem();
    std::vector<DropletBand> out;
    for (std::size_t i = 0; i < raw->size(); ++i) {
        out.push_back(
            {(*ends)[i].from, (*ends)[i].to, *choiceFor<DropletCategory>(upper((*raw)[i].name))});
    }
    return out;
}

Result<std::vector<DriftBand>> parseDriftBands(std::string_view text, std::optional<Pressure> start,
                                               const BandStyle& style) {
    const auto tokens = tokensOf(text);
    const auto isName = [&](std::size_t i) {
        return tokens[i].kind == Token::Kind::Number && i + 1 < tokens.size() &&
               tokens[i + 1].kind == Token::Kind::Percent;
    };
    const auto raw = rawBands(tokens, style, isName);
    if (!raw) return raw.problem();
    const auto ends = endsOf(*raw, start);
    if (!ends) return ends.problem();
    std::vector<DriftBand> out;
    for (std::size_t i = 0; i < raw->size(); ++i) {
        const auto percent = parseNumber((*raw)[i].name, style.marks);
        if (!percent) return percent.problem();
        if (*percent <= 0 || *percent >= 100)
            return bandProblem("band_percent_range", (*raw)[i].name);
        out.push_back({(*ends)[i].from, (*ends)[i].to, *percent});
    }
    return out;
}

Result<std::vector<FlowPoint>> parseFlowTable(std::string_view text, const BandStyle& style) {
    std::vector<FlowPoint> out;
    int number = 0;
    while (!text.empty()) {
        const auto end = text.find_first_of("\n;");
        const auto row = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        ++number;
        if (std::none_of(row.begin(), row.end(), isDigit)) continue;
        const auto cells = cellsOf(row);
        if (cells.size() != 2)
            return error("table_row_cells", {},
                         {{"row", std::to_string(number)}, {"part", std::string(row)}});
        const auto pressure = parse<Pressure>(cells[0], style.pressure, style.marks);
        if (!pressure) return pressure.problem();
        const auto flow = parse<Flow>(cells[1], style.flow, style.marks);
        if (!flow) return flow.problem();
        out.push_back({*pressure, *flow});
    }
    return out;
}

std::string dropletBandText(const std::vector<DropletBand>& bands, Unit unit, char mark) {
    std::string out;
    for (const auto& b : bands)
        out += (out.empty() ? "" : ", ") + std::string(choiceName(b.category)) + " " +
               ends(b.from, b.to, unit, mark);
    return out;
}

std::string driftBandText(const std::vector<DriftBand>& bands, Unit unit, char mark) {
    std::string out;
    for (const auto& b : bands)
        out += (out.empty() ? "" : ", ") + formatExact(b.percent, mark) + " % " +
               ends(b.from, b.to, unit, mark);
    return out;
}

std::string flowTableText(const std::vector<FlowPoint>& rows, Unit pressure, Unit flow, char mark) {
    std::string out;
    for (const auto& r : rows) {
        out += (out.empty() ? "" : "; ") + formatExact(in(r.pressure, pressure), mark) + " " +
               formatExact(in(r.flow, flow), mark);
    }
    return out;
}

}  // namespace bw
