// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_values.h"

#include <charconv>
#include <cmath>
#include <limits>

#include "core/exchange/json_fields.h"
#include "core/units/parse.h"

namespace bw {
namespace {

constexpr auto kMarks = DecimalMarks::PointOnly;

std::string lowerWithoutSpace(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c != ' ') out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return out;
}

bool isPlainGallon(std::string_view spelling) {
    const std::string word = lowerWithoutSpace(spelling);
    return word == "gal" || word == "gallon" || word == "gallons";
}

/// "12 gal" is a US gallon here: write it so that the parser, which asks which one, knows.
std::string withGallonNamed(std::string_view text) {
    const auto isLetter = [](unsigned char c) {
        return std::isalpha(c) != 0 && c != 'e' && c != 'E';
    };
    const auto word = std::find_if(text.begin(), text.end(), isLetter);
    const auto start = static_cast<std::size_t>(word - text.begin());
    if (!isPlainGallon(text.substr(start))) return std::string(text);
    return std::string(text.substr(0, start)) + "usgal";
}

std::string shownNumber(double number, int digits) {
    std::array<char, 64> buffer{};
    const auto [end, code] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                           std::chars_format::general, digits);
    return code == std::errc() ? std::string(buffer.data(), end) : std::string("0");
}

std::string inUnit(const UnitInfo& unit, const std::string& number) {
    const std::string symbol = jsonSymbol(unit.unit);
    return symbol.empty() ? number : number + " " + symbol;
}

bool readsBack(const std::string& number, const UnitInfo& unit, double si) {
    double value = 0.0;
    std::from_chars(number.data(), number.data() + number.size(), value);
    return value * unit.inSi == si;
}

/// The units of a dimension, the system's own first.
std::vector<UnitInfo> unitsOf(Dimension dimension, UnitSystem system) {
    const Unit own = displayUnit(system, dimension);
    std::vector<UnitInfo> out{info(own)};
    for (const auto& unit : units()) {
        if (unit.dimension == dimension && unit.unit != own) out.push_back(unit);
    }
    return out;
}

/// A number next to si / unit that gives exactly `si`, if there is one.
std::optional<std::string> exactNumber(const UnitInfo& unit, double si) {
    double down = si / unit.inSi;
    double up = down;
    for (int step = 0; step < 3; ++step) {
        for (const double number : {down, up}) {
            if (number * unit.inSi == si) return shownNumber(number, 17);
        }
        down = std::nextafter(down, -std::numeric_limits<double>::infinity());
        up = std::nextafter(up, std::numeric_limits<double>::infinity());
    }
    return std::nullopt;
}

}  // namespace

std::optional<Unit> jsonUnitFor(std::string_view spelling) {
    if (isPlainGallon(spelling)) return Unit::GallonUs;
    return unitFor(spelling);
}

std::string jsonSymbol(Unit unit) {
    if (unit == Unit::GallonUs) return "gal";
    std::string out;
    const std::string_view symbol = info(unit).symbol;
    for (std::size_t i = 0; i < symbol.size(); ++i) {
        const auto rest = symbol.substr(i);
        if (rest.starts_with("²"))
            out += "2", i += 1;
        else if (rest.starts_with("³"))
            out += "3", i += 1;
        else if (rest.starts_with("µ"))
            out += "u", i += 1;
        else
            out += symbol[i];
    }
    return out;
}

Result<AnyQuantity> parseJsonQuantity(std::string_view text, Dimension expected) {
    const auto read = parseQuantity(withGallonNamed(text), expected, std::nullopt, kMarks);
    if (read) return read->quantity;
    Problem problem = read.problem();
    for (auto& argument : problem.arguments) {
        if (argument.name == "typed")
            argument.value = shortened(text);
        else if (auto* words = std::get_if<std::string>(&argument.value))
            *words = shortened(*words);
    }
    return problem;
}

Result<AnyQuantity> parseJsonQuantity(std::string_view text) {
    std::optional<Problem> first;
    for (const auto& unit : units()) {
        if (unit.dimension == Dimension::None) continue;
        auto read = parseJsonQuantity(text, unit.dimension);
        if (read) return read;
        if (read.problem().code != "unit_wrong_kind") return read;
        if (!first) first = read.problem();
    }
    return *first;
}

std::string exactText(AnyQuantity quantity, UnitSystem system) {
    const auto candidates = unitsOf(quantity.dimension, system);
    for (const int digits : {5, 12, 15}) {
        for (const auto& unit : candidates) {
            const std::string number = shownNumber(quantity.si / unit.inSi, digits);
            if (readsBack(number, unit, quantity.si)) return inUnit(unit, number);
        }
    }
    for (const auto& unit : candidates) {
        if (const auto number = exactNumber(unit, quantity.si)) return inUnit(unit, *number);
    }
    return inUnit(candidates.front(), shownNumber(quantity.si / candidates.front().inSi, 17));
}

bool readQuantity(const Json& json, const std::string& where, AnyQuantity& out, std::string* typed,
                  JsonIssues& issues) {
    if (json.is_object()) {
        // Rows of tables keep no origin of their own; the value alone is taken.
        SourceKeys source;
        return readSource(json, where, source, issues) &&
               readQuantity(json["value"], pathTo(where, "value"), out, typed, issues);
    }
    if (!json.is_string()) {
        issues.add(jsonWrongType(where, json.is_number() ? "quantity_not_number" : "quantity"));
        return false;
    }
    const auto& text = json.get_ref<const std::string&>();
    const auto read = parseJsonQuantity(text, out.dimension);
    if (!read) {
        Problem problem = read.problem();
        problem.where = where;
        issues.add(std::move(problem));
        return false;
    }
    out = *read;
    if (typed) *typed = text;
    return true;
}

bool readText(const Json& json, const std::string& where, std::string& out, JsonIssues& issues) {
    if (!json.is_string()) {
        issues.add(jsonWrongType(where, "text"));
        return false;
    }
    out = json.get<std::string>();
    return true;
}

bool readWholeNumber(const Json& json, const std::string& where, int& out, JsonIssues& issues) {
    const double number = json.is_number() ? json.get<double>() : 0.5;
    if (number != std::floor(number) || std::abs(number) > 1e9) {
        issues.add(jsonWrongType(where, "whole_number"));
        return false;
    }
    out = static_cast<int>(number);
    return true;
}

Problem jsonNotAChoice(const std::string& where, const std::string& given,
                       const std::vector<std::string>& words) {
    std::string all;
    for (const auto& word : words) all += (all.empty() ? "" : ", ") + word;
    return error(
        "json_not_a_choice", where,
        {{"given", shortened(given)}, {"nearest", nearestWord(given, words)}, {"choices", all}});
}

bool readValue(const Json& json, const std::string& where, double& out, std::string*,
               JsonIssues& issues) {
    if (!json.is_number()) {
        issues.add(jsonWrongType(where, "number"));
        return false;
    }
    out = json.get<double>();
    return true;
}

bool readValue(const Json& json, const std::string& where, int& out, std::string*,
               JsonIssues& issues) {
    return readWholeNumber(json, where, out, issues);
}

bool readValue(const Json& json, const std::string& where, bool& out, std::string*,
               JsonIssues& issues) {
    if (!json.is_boolean()) {
        issues.add(jsonWrongType(where, "yes_no"));
        return false;
    }
    out = json.get<bool>();
    return true;
}

namespace {

bool isPair(const Json& json, const std::string& where, std::string_view kind, JsonIssues& issues) {
    if (json.is_array() && json.size() == 2) return true;
    issues.add(jsonWrongType(where, kind));
    return false;
}

bool readFromTo(const Json& json, const std::string& where, Pressure& from, Pressure& to,
                std::string_view third, JsonIssues& issues) {
    if (!json.is_object()) {
        issues.add(jsonWrongType(where, "group"));
        return false;
    }
    checkKeys(json, where, {"from", "to", std::string(third)}, issues);
    for (const std::string_view key : {std::string_view("from"), std::string_view("to"), third}) {
        if (!member(json, key)) issues.add(jsonMissing(pathTo(where, key)));
    }
    return issues.none() && readValue(json["from"], pathTo(where, "from"), from, nullptr, issues) &&
           readValue(json["to"], pathTo(where, "to"), to, nullptr, issues);
}

}  // namespace

bool readValue(const Json& json, const std::string& where, CurvePoint& out, std::string*,
               JsonIssues& issues) {
    return isPair(json, where, "flow_pressure", issues) &&
           readValue(json[0], pathTo(where, 0), out.flow, nullptr, issues) &&
           readValue(json[1], pathTo(where, 1), out.pressure, nullptr, issues);
}

bool readValue(const Json& json, const std::string& where, FlowPoint& out, std::string*,
               JsonIssues& issues) {
    return isPair(json, where, "pressure_flow", issues) &&
           readValue(json[0], pathTo(where, 0), out.pressure, nullptr, issues) &&
           readValue(json[1], pathTo(where, 1), out.flow, nullptr, issues);
}

bool readValue(const Json& json, const std::string& where, DropletBand& out, std::string*,
               JsonIssues& issues) {
    return readFromTo(json, where, out.from, out.to, "category", issues) &&
           readChoice(json["category"], pathTo(where, "category"), out.category, issues);
}

bool readValue(const Json& json, const std::string& where, DriftBand& out, std::string*,
               JsonIssues& issues) {
    return readFromTo(json, where, out.from, out.to, "percent", issues) &&
           readValue(json["percent"], pathTo(where, "percent"), out.percent, nullptr, issues);
}

OrderedJson written(double value, UnitSystem) {
    return value;
}
OrderedJson written(int value, UnitSystem) {
    return value;
}
OrderedJson written(bool value, UnitSystem) {
    return value;
}

OrderedJson written(const CurvePoint& point, UnitSystem units) {
    return OrderedJson::array({written(point.flow, units), written(point.pressure, units)});
}

OrderedJson written(const FlowPoint& point, UnitSystem units) {
    return OrderedJson::array({written(point.pressure, units), written(point.flow, units)});
}

OrderedJson written(const DropletBand& band, UnitSystem units) {
    return {{"from", written(band.from, units)},
            {"to", written(band.to, units)},
            {"category", std::string(choiceName(band.category))}};
}

OrderedJson written(const DriftBand& band, UnitSystem units) {
    return {{"from", written(band.from, units)},
            {"to", written(band.to, units)},
            {"percent", band.percent}};
}

}  // namespace bw
