// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/exchange/json_values.h"
#include "core/model/origin.h"

/// Fields with an origin, and groups of fields, in JSON.
namespace bw {

/// Refuses keys that are not among `known` (dotted: "losses.line.at"), naming the nearest, and
/// groups that are no objects.
void checkKeys(const Json& object, const std::string& where, const std::vector<std::string>& known,
               JsonIssues& issues);

/// Origin, date and typed text of a value written as an object.
struct SourceKeys {
    Origin origin = Origin::Handbook;
    std::string date;
    std::optional<std::string> typed;
};
bool readSource(const Json& object, const std::string& where, SourceKeys& out, JsonIssues& issues);
/// Adds origin, date and typed text to a value's object.
void writeSource(const SourceKeys& source, OrderedJson& object);

template <class T>
bool readBound(const Json& object, const std::string& where, std::string_view key,
               std::optional<T>& out, JsonIssues& issues) {
    const Json* json = member(object, key);
    if (!json) return true;
    T value{};
    if (!readValue(*json, pathTo(where, key), value, nullptr, issues)) return false;
    out = std::move(value);
    return true;
}

/// A value, bare or as an object with its origin.
template <class T>
void readKnown(const Json& json, const std::string& where, Known<T>& out, JsonIssues& issues) {
    Sourced<T> field;
    if (!json.is_object()) {
        if (readValue(json, where, field.value, &field.typed, issues)) out = std::move(field);
        return;
    }
    SourceKeys source;
    if (!readSource(json, where, source, issues)) return;
    if (!readValue(json["value"], pathTo(where, "value"), field.value, &field.typed, issues))
        return;
    if (!readBound(json, where, "from", field.from, issues)) return;
    if (!readBound(json, where, "to", field.to, issues)) return;
    field.origin = source.origin;
    field.date = source.date;
    if (source.typed) field.typed = *source.typed;
    out = std::move(field);
}

/// The text to write for a quantity: as typed, if that reads as the same value; else worked out.
std::string quantityText(AnyQuantity quantity, const std::string& typed, UnitSystem units);

/// What stands for the value in JSON, and whether `typed` is that text itself.
template <class T>
std::pair<OrderedJson, bool> writtenAsTyped(const Sourced<T>& field, UnitSystem units) {
    return {written(field.value, units), field.typed.empty()};
}
template <int V, int L, int M, int T>
std::pair<OrderedJson, bool> writtenAsTyped(const Sourced<Quantity<V, L, M, T>>& field,
                                            UnitSystem units) {
    const std::string text = quantityText(anyQuantity(field.value), field.typed, units);
    return {OrderedJson(text), text == field.typed};
}

/// A field with all that is known of it, as short as it can be.
template <class T>
OrderedJson writtenField(const Sourced<T>& field, UnitSystem units) {
    auto [value, typedIsValue] = writtenAsTyped(field, units);
    const bool plain =
        field.origin == Origin::Handbook && field.date.empty() && !field.from && !field.to;
    if (plain && typedIsValue) return std::move(value);
    OrderedJson out{{"value", std::move(value)}};
    writeSource(
        {field.origin, field.date, typedIsValue ? std::nullopt : std::optional(field.typed)}, out);
    if (field.from && isWritable(*field.from)) out["from"] = written(*field.from, units);
    if (field.to && isWritable(*field.to)) out["to"] = written(*field.to, units);
    return out;
}

/// Sets a dotted key, making the groups on the way.
void put(OrderedJson& object, std::string_view dottedKey, OrderedJson value);
/// Sets a text, unless it is empty; a mark, unless it is false.
void putText(OrderedJson& object, std::string_view key, const std::string& text);
void putMark(OrderedJson& object, std::string_view key, bool mark);

template <class T>
void putKnown(OrderedJson& object, std::string_view dottedKey, const Known<T>& field,
              UnitSystem units) {
    if (field && isWritable(field->value)) put(object, dottedKey, writtenField(*field, units));
}

/// Reads an optional text or mark of a record.
void readOptionalText(const Json& object, const std::string& where, std::string_view key,
                      std::string& out, JsonIssues& issues);
void readOptionalMark(const Json& object, const std::string& where, std::string_view key, bool& out,
                      JsonIssues& issues);

}  // namespace bw
