// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/record_table.h"

#include <algorithm>

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const FieldRow* rowOf(const std::vector<FieldRow>& rows, const std::string& key) {
    const auto found =
        std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

Outcome writeFieldRow(Connection& connection, const QString& table, RecordId id,
                      const FieldRow& row) {
    const QString sql =
        u"INSERT INTO %1_value (%1_id, key, value, typed, origin, date, range_from, range_to)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
        " ON CONFLICT DO UPDATE SET value = excluded.value, typed = excluded.typed,"
        " origin = excluded.origin, date = excluded.date, range_from = excluded.range_from,"
        " range_to = excluded.range_to"_s.arg(table);
    auto written = connection.command(sql)
                       .bind(id)
                       .bind(row.key)
                       .bind(row.value)
                       .bind(row.typed)
                       .bind(std::string(name(row.origin)))
                       .bind(row.date)
                       .bind(row.from)
                       .bind(row.to)
                       .run();
    if (written) return written;
    Problem problem = written.problem();
    problem.where = row.key;
    return problem;
}

/// A row as it was read; false if it can be no value.
bool readRow(const Statement& from, FieldRow& out) {
    out.key = from.text(1);
    const auto value = from.cell(2);
    const auto origin = originFor(from.text(4));
    if (!value || !origin) return false;
    out.value = *value;
    out.typed = from.text(3);
    out.origin = *origin;
    out.date = from.text(5);
    out.from = from.cell(6);
    out.to = from.cell(7);
    return true;
}

}  // namespace

Statement& rowCommand(Connection& connection, const TableColumns& table, bool isNew) {
    if (isNew) {
        const QStringList marks(table.columns.size() + 1, u"?"_s);
        return connection.command(u"INSERT INTO %1 (%2, id) VALUES (%3)"_s.arg(
            table.table, table.columns.join(u", "_s), marks.join(u", "_s)));
    }
    return connection.command(
        u"UPDATE %1 SET %2 = ? WHERE id = ?"_s.arg(table.table, table.columns.join(u" = ?, "_s)));
}

Outcome writeOneRow(Statement& command) {
    if (auto ran = command.run(); !ran) return ran;
    if (command.rowsChanged() != 1) return error("record_gone");
    return Done{};
}

Outcome removeRow(Connection& connection, const QString& table, RecordId id) {
    return writeOneRow(connection.command(u"DELETE FROM %1 WHERE id = ?"_s.arg(table)).bind(id));
}

Outcome writeFieldRows(Connection& connection, const QString& table, RecordId id,
                       const std::vector<FieldRow>& before, const std::vector<FieldRow>& after) {
    for (const auto& row : before) {
        if (rowOf(after, row.key)) continue;
        auto& command =
            connection.command(u"DELETE FROM %1_value WHERE %1_id = ? AND key = ?"_s.arg(table));
        if (auto gone = command.bind(id).bind(row.key).run(); !gone) return gone;
    }
    for (const auto& row : after) {
        const auto* old = rowOf(before, row.key);
        if (old && *old == row) continue;
        if (auto written = writeFieldRow(connection, table, id, row); !written) return written;
    }
    return Done{};
}

Result<std::unordered_map<RecordId, ReadRows>> readFieldRows(Connection& connection,
                                                             const QString& table) {
    std::unordered_map<RecordId, ReadRows> out;
    auto query = connection.query(
        u"SELECT %1_id, key, value, typed, origin, date, range_from, range_to FROM %1_value"_s.arg(
            table));
    if (auto ran = query.run(); !ran) return ran.problem();
    while (query.next()) {
        auto& rows = out[query.integer(0)];
        FieldRow row;
        if (readRow(query, row)) {
            rows.rows.push_back(std::move(row));
        } else if (!rows.odd) {
            rows.odd = row.key;
        }
    }
    if (auto read = query.outcome(); !read) return read.problem();
    return out;
}

Problem setAside(const char* kind, const std::string& name, const std::string& field) {
    return warning("record_set_aside", {},
                   {{"kind", CodeText{std::string("record.") + kind}},
                    {"name", name.empty() ? std::string("?") : name},
                    {"field", field}});
}

}  // namespace bw
