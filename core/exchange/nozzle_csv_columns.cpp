// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cctype>
#include <set>

#include "core/exchange/nozzle_csv.h"

namespace bw {
namespace {

/// Headings that people give, as plain words. The first that fits counts.
struct Synonym {
    std::string_view words;
    NozzleColumn meaning;
};
constexpr std::array kSynonyms{
    Synonym{"name", NozzleColumn::Name},
    Synonym{"nozzle", NozzleColumn::Name},
    Synonym{"nozzle name", NozzleColumn::Name},
    Synonym{"type", NozzleColumn::Name},
    Synonym{"model", NozzleColumn::Name},
    Synonym{"description", NozzleColumn::Name},
    Synonym{"part", NozzleColumn::Name},
    Synonym{"part number", NozzleColumn::Name},
    Synonym{"family", NozzleColumn::Family},
    Synonym{"series", NozzleColumn::Family},
    Synonym{"range", NozzleColumn::Family},
    Synonym{"size code", NozzleColumn::SizeCode},
    Synonym{"size", NozzleColumn::SizeCode},
    Synonym{"iso size", NozzleColumn::SizeCode},
    Synonym{"code", NozzleColumn::SizeCode},
    Synonym{"kind", NozzleColumn::Kind},
    Synonym{"spray pattern", NozzleColumn::Kind},
    Synonym{"pattern", NozzleColumn::Kind},
    Synonym{"flow", NozzleColumn::Flow},
    Synonym{"flow rate", NozzleColumn::Flow},
    Synonym{"nominal flow", NozzleColumn::Flow},
    Synonym{"capacity", NozzleColumn::Flow},
    Synonym{"output", NozzleColumn::Flow},
    Synonym{"at", NozzleColumn::At},
    Synonym{"at pressure", NozzleColumn::At},
    Synonym{"pressure", NozzleColumn::At},
    Synonym{"rated pressure", NozzleColumn::At},
    Synonym{"rating pressure", NozzleColumn::At},
    Synonym{"reference pressure", NozzleColumn::At},
    Synonym{"pressure min", NozzleColumn::PressureMin},
    Synonym{"min pressure", NozzleColumn::PressureMin},
    Synonym{"minimum pressure", NozzleColumn::PressureMin},
    Synonym{"lowest pressure", NozzleColumn::PressureMin},
    Synonym{"pressure from", NozzleColumn::PressureMin},
    Synonym{"pmin", NozzleColumn::PressureMin},
    Synonym{"pressure max", NozzleColumn::PressureMax},
    Synonym{"max pressure", NozzleColumn::PressureMax},
    Synonym{"maximum pressure", NozzleColumn::PressureMax},
    Synonym{"highest pressure", NozzleColumn::PressureMax},
    Synonym{"pressure to", NozzleColumn::PressureMax},
    Synonym{"pmax", NozzleColumn::PressureMax},
    Synonym{"exponent", NozzleColumn::Exponent},
    Synonym{"table", NozzleColumn::Table},
    Synonym{"flow table", NozzleColumn::Table},
    Synonym{"droplets", NozzleColumn::Droplets},
    Synonym{"droplet size", NozzleColumn::Droplets},
    Synonym{"droplet class", NozzleColumn::Droplets},
    Synonym{"droplet category", NozzleColumn::Droplets},
    Synonym{"spray quality", NozzleColumn::Droplets},
    Synonym{"drift", NozzleColumn::Drift},
    Synonym{"drift reduction", NozzleColumn::Drift},
    Synonym{"drift class", NozzleColumn::Drift},
    Synonym{"spray angle", NozzleColumn::SprayAngle},
    Synonym{"angle", NozzleColumn::SprayAngle},
    Synonym{"passage", NozzleColumn::Passage},
    Synonym{"smallest passage", NozzleColumn::Passage},
    Synonym{"material", NozzleColumn::Material},
    Synonym{"price", NozzleColumn::Price},
    Synonym{"price each", NozzleColumn::Price},
    Synonym{"unit price", NozzleColumn::Price},
    Synonym{"cost", NozzleColumn::Price},
    Synonym{"accept unchecked", NozzleColumn::AcceptUnchecked},
    Synonym{"demo", NozzleColumn::Demo},
    Synonym{"notes", NozzleColumn::Notes},
    Synonym{"note", NozzleColumn::Notes},
    Synonym{"remarks", NozzleColumn::Notes},
    Synonym{"comment", NozzleColumn::Notes},
    Synonym{"origins", NozzleColumn::Origins},
};

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

/// The heading as words parted by single blanks; "@" becomes "at". Brackets fall away.
std::vector<std::string> wordsOf(std::string_view header) {
    std::vector<std::string> out;
    std::string word;
    const auto end = [&] {
        while (word.ends_with('.')) word.pop_back();
        if (!word.empty()) out.push_back(word);
        word.clear();
    };
    for (const char c : lower(header)) {
        if (c == '@') {
            end();
            out.emplace_back("at");
        } else if (std::string_view(" \t\r\n_()[]:;,*\"").find(c) != std::string_view::npos) {
            end();
        } else {
            word += c;
        }
    }
    end();
    return out;
}

bool isFigure(const std::string& word) {
    return !word.empty() && std::isdigit(static_cast<unsigned char>(word.front()));
}

std::optional<Pressure> pressureIn(const std::string& figure, const std::string& unit) {
    const auto read = parse<Pressure>(figure + " " + unit);
    return read ? std::optional(*read) : std::nullopt;
}

/// Takes "3 bar" or "40psi" out of the words, and the "at" before it.
std::optional<Pressure> takePressure(std::vector<std::string>& words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!isFigure(words[i])) continue;
        std::size_t end = i + 1;
        auto pressure = pressureIn(words[i], "");
        if (!pressure && end < words.size()) pressure = pressureIn(words[i], words[end++]);
        if (!pressure) continue;
        const std::size_t begin = i > 0 && words[i - 1] == "at" ? i - 1 : i;
        words.erase(words.begin() + static_cast<std::ptrdiff_t>(begin),
                    words.begin() + static_cast<std::ptrdiff_t>(end));
        return pressure;
    }
    return std::nullopt;
}

/// A unit that a nozzle's figures can have; the "min" of "pressure min" is none.
std::optional<Unit> nozzleUnit(const std::string& word) {
    const auto unit = unitFor(word);
    if (!unit || word == "at") return std::nullopt;
    const Dimension dimension = info(*unit).dimension;
    const bool isOurs = dimension == Dimension::Flow || dimension == Dimension::Pressure ||
                        dimension == Dimension::Length || *unit == Unit::Percent;
    return isOurs ? unit : std::nullopt;
}

/// Takes a unit out of the words: the last word that is one, and the "in" of "in bar".
std::optional<Unit> takeUnit(std::vector<std::string>& words) {
    for (std::size_t i = words.size(); i-- > 0;) {
        const auto unit = nozzleUnit(words[i]);
        if (!unit) continue;
        words.erase(words.begin() + static_cast<std::ptrdiff_t>(i));
        if (i > 0 && words[i - 1] == "in")
            words.erase(words.begin() + static_cast<std::ptrdiff_t>(i) - 1);
        return unit;
    }
    return std::nullopt;
}

std::string joined(const std::vector<std::string>& words) {
    std::string out;
    for (const auto& word : words) out += (out.empty() ? "" : " ") + word;
    return out;
}

/// Words that say nothing of what a column holds.
void dropCurrency(std::vector<std::string>& words) {
    static const std::set<std::string, std::less<>> kCurrencies{"eur", "usd", "gbp",    "cad",
                                                                "aud", "$",   "\u20ac", "\u00a3"};
    std::erase_if(words, [](const std::string& word) { return kCurrencies.contains(word); });
}

std::optional<NozzleColumn> meaningOf(const std::string& words) {
    for (const auto& synonym : kSynonyms)
        if (synonym.words == words) return synonym.meaning;
    return std::nullopt;
}

CsvColumn columnOf(const std::string& header) {
    CsvColumn out;
    out.header = header;
    auto words = wordsOf(header);
    out.at = takePressure(words);
    out.unit = takeUnit(words);
    dropCurrency(words);
    out.meaning = meaningOf(joined(words));
    const bool isFlow = out.meaning == NozzleColumn::Flow || words.empty();
    if (out.at && isFlow) out.meaning = NozzleColumn::FlowAt;
    if (!out.meaning && out.unit && words.empty()) {
        const Dimension dimension = info(*out.unit).dimension;
        if (dimension == Dimension::Flow) out.meaning = NozzleColumn::Flow;
        if (dimension == Dimension::Pressure) out.meaning = NozzleColumn::At;
    }
    return out;
}

/// How often a separator stands in the heading, outside quotes.
std::size_t count(std::string_view line, char separator) {
    bool isQuoted = false;
    std::size_t sum = 0;
    for (const char c : line) {
        if (c == '"') isQuoted = !isQuoted;
        sum += !isQuoted && c == separator;
    }
    return sum;
}

/// Figures such as "1,6" against figures such as "1.6".
DecimalMarks marksOf(const CsvTable& table) {
    int commas = 0, points = 0;
    for (const auto& row : table.rows) {
        for (const auto& cell : row) {
            for (std::size_t i = 1; i + 1 < cell.size(); ++i) {
                const auto isDigit = [&](std::size_t at) {
                    return std::isdigit(static_cast<unsigned char>(cell[at])) != 0;
                };
                if (!isDigit(i - 1) || !isDigit(i + 1)) continue;
                commas += cell[i] == ',';
                points += cell[i] == '.';
            }
        }
    }
    return commas > points ? DecimalMarks::OwnComma : DecimalMarks::OwnPoint;
}

}  // namespace

CsvStyle guessCsvStyle(std::string_view text, UnitSystem units) {
    CsvStyle out;
    out.units = units;
    const auto heading = text.substr(0, text.find('\n'));
    for (const char separator : {';', '\t'})
        if (count(heading, separator) > count(heading, out.separator)) out.separator = separator;
    out.marks = marksOf(parseCsv(text, out.separator, false));
    return out;
}

std::vector<CsvColumn> guessColumns(const std::vector<std::string>& header) {
    std::vector<CsvColumn> out;
    std::set<NozzleColumn> taken;
    for (const auto& one : header) {
        out.push_back(columnOf(one));
        auto& meaning = out.back().meaning;
        if (!meaning || *meaning == NozzleColumn::FlowAt) continue;
        if (!taken.insert(*meaning).second) meaning.reset();
    }
    return out;
}

}  // namespace bw
