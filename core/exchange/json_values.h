// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/exchange/json_document.h"
#include "core/model/choice.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/units/unit.h"

/// How the single values of the model stand in JSON: read (an issue and false when they cannot be)
/// and written.
namespace bw {

/// The unit for a spelling in a request. Here "gal" and "fl oz" are the US ones.
std::optional<Unit> jsonUnitFor(std::string_view spelling);
/// The symbol in plain ASCII, read back by jsonUnitFor: "mm2/s", "gal".
std::string jsonSymbol(Unit unit);
/// "number unit" with a decimal point.
Result<AnyQuantity> parseJsonQuantity(std::string_view text, Dimension expected);
/// The same for a quantity whose dimension is known from its unit alone.
Result<AnyQuantity> parseJsonQuantity(std::string_view text);
/// "number unit" that reads back the same: in the system's unit if a short number does it, else in
/// any unit, else with as many digits as it takes.
std::string exactText(AnyQuantity quantity, UnitSystem units);

/// A quantity from a string, or from the value of an object with its origin; `typed` (may be null)
/// gets the text.
bool readQuantity(const Json& json, const std::string& where, AnyQuantity& out, std::string* typed,
                  JsonIssues& issues);
bool readText(const Json& json, const std::string& where, std::string& out, JsonIssues& issues);
bool readWholeNumber(const Json& json, const std::string& where, int& out, JsonIssues& issues);

/// The words by which a choice may be named.
template <class E>
std::vector<std::string> choiceWords() {
    std::vector<std::string> out;
    for (const auto& [value, word] : ChoiceNames<E>::names) out.emplace_back(word);
    return out;
}
Problem jsonNotAChoice(const std::string& where, const std::string& given,
                       const std::vector<std::string>& words);

template <class E>
bool readChoice(const Json& json, const std::string& where, E& out, JsonIssues& issues) {
    std::string text;
    if (!readText(json, where, text, issues)) return false;
    const auto found = choiceFor<E>(text);
    if (!found) {
        issues.add(jsonNotAChoice(where, text, choiceWords<E>()));
        return false;
    }
    out = *found;
    return true;
}

bool readValue(const Json& json, const std::string& where, double& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, int& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, bool& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, CurvePoint& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, FlowPoint& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, DropletBand& out, std::string*,
               JsonIssues& issues);
bool readValue(const Json& json, const std::string& where, DriftBand& out, std::string*,
               JsonIssues& issues);

template <int V, int L, int M, int T>
bool readValue(const Json& json, const std::string& where, Quantity<V, L, M, T>& out,
               std::string* typed, JsonIssues& issues) {
    AnyQuantity any{kDimensionOf<Quantity<V, L, M, T>>, 0.0};
    if (!readQuantity(json, where, any, typed, issues)) return false;
    out = Quantity<V, L, M, T>::fromSi(any.si);
    return true;
}

template <class E>
bool readValue(const Json& json, const std::string& where, E& out, std::string*,
               JsonIssues& issues) requires std::is_enum_v<E> {
    return readChoice(json, where, out, issues);
}

template <class T>
bool readValue(const Json& json, const std::string& where, std::vector<T>& out, std::string*,
               JsonIssues& issues) {
    if (!json.is_array()) {
        issues.add(jsonWrongType(where, "list"));
        return false;
    }
    out.clear();
    for (std::size_t i = 0; i < json.size(); ++i) {
        T item{};
        if (!readValue(json[i], pathTo(where, i), item, nullptr, issues)) return false;
        out.push_back(std::move(item));
    }
    return true;
}

/// What a value is written as. Not finite numbers are never written: ask `isWritable` first.
OrderedJson written(double value, UnitSystem units);
OrderedJson written(int value, UnitSystem units);
OrderedJson written(bool value, UnitSystem units);
OrderedJson written(const CurvePoint& point, UnitSystem units);
OrderedJson written(const FlowPoint& point, UnitSystem units);
OrderedJson written(const DropletBand& band, UnitSystem units);
OrderedJson written(const DriftBand& band, UnitSystem units);
template <int V, int L, int M, int T>
OrderedJson written(Quantity<V, L, M, T> value, UnitSystem units) {
    return exactText(anyQuantity(value), units);
}
template <class E>
OrderedJson written(E value, UnitSystem) requires std::is_enum_v<E> {
    return std::string(choiceName(value));
}
template <class T>
OrderedJson written(const std::vector<T>& values, UnitSystem units) {
    auto out = OrderedJson::array();
    for (const auto& value : values) out.push_back(written(value, units));
    return out;
}

/// Whether every number in it is finite.
template <class T>
bool isWritable(const T&) {
    return true;
}
template <int V, int L, int M, int T>
bool isWritable(const Quantity<V, L, M, T>& value) {
    return value.isFinite();
}
inline bool isWritable(const double& value) {
    return std::isfinite(value);
}
inline bool isWritable(const CurvePoint& p) {
    return p.flow.isFinite() && p.pressure.isFinite();
}
inline bool isWritable(const FlowPoint& p) {
    return p.flow.isFinite() && p.pressure.isFinite();
}
inline bool isWritable(const DropletBand& b) {
    return b.from.isFinite() && b.to.isFinite();
}
inline bool isWritable(const DriftBand& b) {
    return b.from.isFinite() && b.to.isFinite() && std::isfinite(b.percent);
}
template <class T>
bool isWritable(const std::vector<T>& values) {
    for (const auto& value : values) {
        if (!isWritable(value)) return false;
    }
    return true;
}

}  // namespace bw
