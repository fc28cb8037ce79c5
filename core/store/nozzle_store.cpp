// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const TableColumns kTable{
    u"nozzle"_s,
    {u"name"_s, u"family"_s, u"size_code"_s, u"accept_unchecked"_s, u"notes"_s, u"is_demo"_s}};

StoredNozzle readNozzleRow(const Statement& from) {
    StoredNozzle out;
    out.id = from.integer(0);
    out.nozzle.name = from.text(1);
    out.nozzle.family = from.text(2);
    out.nozzle.sizeCode = from.text(3);
    out.nozzle.acceptUnchecked = from.integer(4) != 0;
    out.nozzle.notes = from.text(5);
    out.nozzle.isDemo = from.integer(6) != 0;
    return out;
}

}  // namespace

/// Whatever is stored is the farm's own, so `isBuiltIn` has no column.
Outcome write(Connection& connection, const Change<StoredNozzle>& change) {
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const auto& [id, nozzle] = *change.after;
    auto row = writeOneRow(rowCommand(connection, kTable, !change.before)
                               .bind(nozzle.name)
                               .bind(nozzle.family)
                               .bind(nozzle.sizeCode)
                               .bind(nozzle.acceptUnchecked)
                               .bind(nozzle.notes)
                               .bind(nozzle.isDemo)
                               .bind(id));
    if (!row) return row;
    const Nozzle before = change.before ? change.before->nozzle : Nozzle{};
    return writeFieldRows(connection, kTable.table, id, fieldRows(before), fieldRows(nozzle));
}

Outcome readAll(Connection& connection, std::vector<StoredNozzle>& out,
                std::vector<Problem>& aside) {
    const auto values = readFieldRows(connection, kTable.table);
    if (!values) return values.problem();
    auto query = connection.query(
        u"SELECT id, name, family, size_code, accept_unchecked, notes, is_demo FROM nozzle"
        " ORDER BY id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        StoredNozzle stored = readNozzleRow(query);
        if (const auto odd = fillFrom(*values, stored.id, stored.nozzle)) {
            aside.push_back(setAside("nozzle", stored.nozzle.name, *odd));
        } else {
            out.push_back(std::move(stored));
        }
    }
    return query.outcome();
}

}  // namespace bw
