// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/section_list.h"

#include <algorithm>
#include <cctype>
#include <numeric>
#include <optional>

#include "core/model/usual_ranges.h"

namespace bw {
namespace {

constexpr int kMost = 1000000;  ///< a figure past this is a slip, and must not overflow

struct Token {
    enum class Kind { Number, Times, In, Separator, Other };
    Kind kind = Kind::Other;
    int number = 0;
    std::string text;
};

bool isDigit(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0;
}

/// "×" counts as "x".
std::string plain(std::string_view text) {
    std::string out(text);
    const std::string times = "\u00d7";
    for (auto at = out.find(times); at != std::string::npos; at = out.find(times))
        out.replace(at, times.size(), "x");
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

Token wordToken(const std::string& word) {
    if (word == "x") return {Token::Kind::Times, 0, word};
    if (word == "in") return {Token::Kind::In, 0, word};
    return {Token::Kind::Other, 0, word};
}

/// Words that only say what the figures are.
bool isFiller(const std::string& word) {
    return word == "nozzle" || word == "nozzles" || word == "section" || word == "sections";
}

std::vector<Token> tokensOf(const std::string& text) {
    std::vector<Token> out;
    std::size_t i = 0;
    while (i < text.size()) {
        const std::size_t start = i;
        if (isDigit(text[i])) {
            int number = 0;
            while (i < text.size() && isDigit(text[i]))
                number = std::min(kMost, number * 10 + (text[i++] - '0'));
            out.push_back({Token::Kind::Number, number, text.substr(start, i - start)});
        } else if (std::isalpha(static_cast<unsigned char>(text[i]))) {
            while (i < text.size() && std::isalpha(static_cast<unsigned char>(text[i]))) ++i;
            const std::string word = text.substr(start, i - start);
            if (!isFiller(word)) out.push_back(wordToken(word));
        } else if (text[i] == '*') {
            out.push_back({Token::Kind::Times, 0, "*"});
            ++i;
        } else if (text[i] == ',' || text[i] == ';' || text[i] == '+' || text[i] == '/') {
            out.push_back({text[i] == '/' ? Token::Kind::In : Token::Kind::Separator, 0,
                           std::string(1, text[i])});
            ++i;
        } else if (text[i] == ' ' || text[i] == '\t') {
            ++i;
        } else {
            out.push_back({Token::Kind::Other, 0, std::string(1, text[i++])});
        }
    }
    return out;
}

using Kind = Token::Kind;

bool areKinds(const std::vector<Token>& tokens, std::initializer_list<Kind> kinds) {
    return std::equal(tokens.begin(), tokens.end(), kinds.begin(), kinds.end(),
                      [](const Token& token, Kind kind) { return token.kind == kind; });
}

Problem unread(const std::string& typed) {
    return error("section_list_unread", "sections", {{"typed", typed}});
}

/// So many nozzles in so many sections, as even as can be: 13, 13, 12, 12, 12.
std::vector<int> spread(int nozzles, int sections) {
    std::vector<int> out(static_cast<std::size_t>(sections), nozzles / sections);
    for (int i = 0; i < nozzles % sections; ++i) ++out[static_cast<std::size_t>(i)];
    return out;
}

std::string joined(const std::vector<int>& sections) {
    std::string text;
    for (const int nozzles : sections) {
        if (!text.empty()) text += ", ";
        text += std::to_string(nozzles);
    }
    return text;
}

Problem tooMany(int nozzles) {
    const UsualRange* range = usualRange("machine.nozzles");
    const auto most = range ? static_cast<int>(range->possibleTo.si) : 1000;
    return error("section_list_many", "sections",
                 {{"nozzles", std::to_string(nozzles)}, {"most", std::to_string(most)}});
}

bool areTooMany(int nozzles) {
    const UsualRange* range = usualRange("machine.nozzles");
    return range && nozzles > range->possibleTo.si;
}

Result<std::vector<int>> evenly(int nozzles, int sections) {
    if (sections < 1 || nozzles < 1) return error("section_list_zero", "sections");
    if (areTooMany(std::max(nozzles, sections))) return tooMany(std::max(nozzles, sections));
    const auto parts = spread(nozzles, sections);
    if (nozzles % sections == 0) return parts;
    if (nozzles < sections) return error("section_list_zero", "sections");
    return error("section_list_uneven", "sections",
                 {{"nozzles", std::to_string(nozzles)},
                  {"sections", std::to_string(sections)},
                  {"example", joined(parts)}});
}

/// A list of figures and "count x figure", with or without separators.
Result<std::vector<int>> listOf(const std::vector<Token>& tokens, const std::string& typed) {
    std::vector<int> out;
    long total = 0;
    const auto add = [&](int count, int nozzles) {
        total += static_cast<long>(count) * nozzles;
        if (total > kMost || areTooMany(count)) total = kMost;
        if (total < kMost) out.insert(out.end(), static_cast<std::size_t>(count), nozzles);
    };
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        if (tokens[i].kind == Kind::Separator && i > 0 && i + 1 < tokens.size() &&
            tokens[i - 1].kind == Kind::Number)
            continue;
        if (tokens[i].kind != Kind::Number) return unread(typed);
        const bool isTimes = i + 2 < tokens.size() && tokens[i + 1].kind == Kind::Times &&
                             tokens[i + 2].kind == Kind::Number;
        const int count = isTimes ? tokens[i].number : 1;
        if (isTimes) i += 2;
        if (count == 0 || tokens[i].number == 0) return error("section_list_zero", "sections");
        add(count, tokens[i].number);
    }
    if (out.empty() && total < kMost) return unread(typed);
    if (areTooMany(static_cast<int>(total))) return tooMany(static_cast<int>(total));
    return out;
}

/// A figure with a minus or decimals in it, which the list would otherwise take for two.
std::optional<Problem> oddFigure(const std::string& text, const std::string& typed) {
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        const bool isFigure = isDigit(text[i + 1]);
        if (text[i] == '-' && isFigure)
            return error("section_list_negative", "sections", {{"typed", typed}});
        if (text[i] == '.' && isFigure)
            return error("section_list_fraction", "sections", {{"typed", typed}});
    }
    return std::nullopt;
}

}  // namespace

Result<std::vector<int>> parseSections(std::string_view text) {
    const std::string typed(text);
    const std::string lower = plain(text);
    if (const auto problem = oddFigure(lower, typed)) return *problem;
    const auto tokens = tokensOf(lower);
    if (areKinds(tokens, {Kind::Number, Kind::In, Kind::Number}))
        return evenly(tokens[0].number, tokens[2].number);
    return listOf(tokens, typed);
}

Result<std::vector<int>> parseNozzleNumbers(std::string_view text) {
    const std::string typed(text);
    const auto unreadable = error("nozzle_numbers_unread", "boom_pipe.feeds", {{"typed", typed}});
    const std::string lower = plain(text);
    if (oddFigure(lower, typed)) return unreadable;
    std::vector<int> out;
    for (const Token& token : tokensOf(lower)) {
        const bool joins = token.kind == Kind::Separator || token.text == "and";
        if (joins && !out.empty()) continue;
        if (token.kind != Kind::Number || token.number < 1) return unreadable;
        out.push_back(token.number);
    }
    if (out.empty()) return unreadable;
    std::sort(out.begin(), out.end());
    const auto twice = std::adjacent_find(out.begin(), out.end());
    if (twice != out.end())
        return error("nozzle_numbers_twice", "boom_pipe.feeds",
                     {{"number", std::to_string(*twice)}});
    return out;
}

std::string nozzleNumbersText(const std::vector<int>& nozzles) {
    return joined(nozzles);
}

std::string sectionsText(const std::vector<int>& sections) {
    const bool areAlike =
        sections.size() >= 3 &&
        std::all_of(sections.begin(), sections.end(), [&](int n) { return n == sections[0]; });
    if (areAlike) return std::to_string(sections.size()) + " \u00d7 " + std::to_string(sections[0]);
    return joined(sections);
}

}  // namespace bw
