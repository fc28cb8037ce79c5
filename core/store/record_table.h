// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <unordered_map>
#include <vector>

#include "core/model/season.h"
#include "core/store/connection.h"
#include "core/store/field_rows.h"
#include "core/store/record_change.h"

/// What the tables of all kinds of records have in common. Everything here runs inside the caller's
/// transaction.
namespace bw {

/// A table and its columns but the key, in the order in which they are bound.
struct TableColumns {
    QString table;
    QStringList columns;
};

/// The statement that writes one row: its columns are bound in order, then the key.
Statement& rowCommand(Connection& connection, const TableColumns& table, bool isNew);
/// Runs it; record_gone if there is no row of that key.
Outcome writeOneRow(Statement& command);
Outcome removeRow(Connection& connection, const QString& table, RecordId id);

/// Brings the value rows of one record from `before` to `after`; only rows that differ are written.
/// Problem value_not_finite carries the field's key as `where`.
Outcome writeFieldRows(Connection& connection, const QString& table, RecordId id,
                       const std::vector<FieldRow>& before, const std::vector<FieldRow>& after);

/// Value rows by record. A row that cannot be one at all stands in `odd` by its key.
struct ReadRows {
    std::vector<FieldRow> rows;
    std::optional<std::string> odd;
};
Result<std::unordered_map<RecordId, ReadRows>> readFieldRows(Connection& connection,
                                                             const QString& table);

/// Fills a record from its rows. Returns the key of the first odd one, or nothing.
template <class Record>
std::optional<std::string> fillFrom(const std::unordered_map<RecordId, ReadRows>& all, RecordId id,
                                    Record& record) {
    const auto found = all.find(id);
    if (found == all.end()) return std::nullopt;
    if (found->second.odd) return found->second.odd;
    return readFields(found->second.rows, record);
}

/// record_set_aside: a record that stays in the file as it is. `kind` is "machine", "job" and so
/// on.
Problem setAside(const char* kind, const std::string& name, const std::string& field);

}  // namespace bw
