// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/model/choice.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/model/origin.h"
#include "core/store/statement.h"

/// The known fields of a record as rows of a value table, by `visitFields`. Numbers are SI; lists
/// are JSON arrays of SI numbers: sections [8, 9], points [[m³/s, Pa], …] (of a table [[Pa, m³/s],
/// …]), bands [[Pa, Pa, "C"], …] and [[Pa, Pa, percent], …].
namespace bw {

struct FieldRow {
    std::string key;
    Cell value;
    std::string typed;
    Origin origin = Origin::Handbook;
    std::string date;
    std::optional<Cell> from;
    std::optional<Cell> to;
    bool operator==(const FieldRow&) const = default;
};

// A list with a number that is not finite becomes that number, which the statement then refuses.
Cell toCell(const std::vector<int>& list);
Cell toCell(const std::vector<CurvePoint>& list);
Cell toCell(const std::vector<FlowPoint>& list);
Cell toCell(const std::vector<DropletBand>& list);
Cell toCell(const std::vector<DriftBand>& list);
inline Cell toCell(double number) {
    return number;
}
inline Cell toCell(int number) {
    return static_cast<double>(number);
}
inline Cell toCell(bool mark) {
    return mark ? 1.0 : 0.0;
}
template <int V, int L, int M, int T>
Cell toCell(Quantity<V, L, M, T> quantity) {
    return quantity.si();
}
template <class E>
Cell toCell(E choice) requires std::is_enum_v<E> {
    return std::string(choiceName(choice));
}

/// Each false, with `out` untouched or half written, when the cell holds no such thing.
bool fromCell(const Cell& cell, double& out);
bool fromCell(const Cell& cell, int& out);
bool fromCell(const Cell& cell, bool& out);
bool fromCell(const Cell& cell, std::vector<int>& out);
bool fromCell(const Cell& cell, std::vector<CurvePoint>& out);
bool fromCell(const Cell& cell, std::vector<FlowPoint>& out);
bool fromCell(const Cell& cell, std::vector<DropletBand>& out);
bool fromCell(const Cell& cell, std::vector<DriftBand>& out);
template <int V, int L, int M, int T>
bool fromCell(const Cell& cell, Quantity<V, L, M, T>& out) {
    double number = 0.0;
    if (!fromCell(cell, number)) return false;
    out = Quantity<V, L, M, T>::fromSi(number);
    return true;
}
template <class E>
bool fromCell(const Cell& cell, E& out) requires std::is_enum_v<E> {
    const auto* word = std::get_if<std::string>(&cell);
    const auto found = word ? choiceFor<E>(*word) : std::nullopt;
    if (found) out = *found;
    return found.has_value();
}

template <class T>
std::optional<Cell> toOptionalCell(const std::optional<T>& value) {
    return value ? std::optional<Cell>(toCell(*value)) : std::nullopt;
}
template <class T>
bool fromOptionalCell(const std::optional<Cell>& cell, std::optional<T>& out) {
    if (!cell) return true;
    return fromCell(*cell, out.emplace());
}

/// The rows of all fields that are known.
template <class Record>
std::vector<FieldRow> fieldRows(const Record& record) {
    std::vector<FieldRow> out;
    visitFields(record, [&](const char* key, const auto& field) {
        if (!field) return;
        out.push_back({key, toCell(field->value), field->typed, field->origin, field->date,
                       toOptionalCell(field->from), toOptionalCell(field->to)});
    });
    return out;
}

/// One field from its row; false if the row makes no sense.
template <class T>
bool readField(const FieldRow& row, Known<T>& out) {
    Sourced<T> field;
    if (!fromCell(row.value, field.value)) return false;
    if (!fromOptionalCell(row.from, field.from) || !fromOptionalCell(row.to, field.to))
        return false;
    field.typed = row.typed;
    field.origin = row.origin;
    field.date = row.date;
    out = std::move(field);
    return true;
}

/// Fills the fields of a record. Returns the key of the first odd row, or nothing. Keys that this
/// program does not know are left alone.
template <class Record>
std::optional<std::string> readFields(const std::vector<FieldRow>& rows, Record& record) {
    std::map<std::string_view, const FieldRow*> byKey;
    for (const auto& row : rows) byKey.emplace(row.key, &row);
    std::optional<std::string> odd;
    visitFields(record, [&](const char* key, auto& field) {
        const auto found = byKey.find(key);
        if (found == byKey.end()) return;
        if (!readField(*found->second, field) && !odd) odd = key;
    });
    return odd;
}

}  // namespace bw
