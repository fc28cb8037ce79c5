// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const TableColumns kTable{u"machine"_s,
                          {u"customer_id"_s, u"name"_s, u"units"_s, u"notes"_s, u"is_demo"_s}};

Outcome writeMachineRow(Connection& connection, const StoredMachine& stored, bool isNew) {
    auto& command = rowCommand(connection, kTable, isNew);
    if (stored.customer == 0) {
        command.bindNull();
    } else {
        command.bind(stored.customer);
    }
    const Machine& machine = stored.machine;
    return writeOneRow(command.bind(machine.name)
                           .bind(std::string(name(machine.units)))
                           .bind(machine.notes)
                           .bind(machine.isDemo)
                           .bind(stored.id));
}

Outcome writeSetsAboard(Connection& connection, RecordId id, const std::vector<SetAboard>& sets) {
    auto& clear = connection.command(u"DELETE FROM set_aboard WHERE machine_id = ?"_s);
    if (auto gone = clear.bind(id).run(); !gone) return gone;
    auto& add = connection.command(
        u"INSERT INTO set_aboard (machine_id, place, position, nozzle) VALUES (?, ?, ?, ?)"_s);
    int place = 0;
    for (const auto& set : sets) {
        if (auto o = add.bind(id).bind(place++).bind(set.position).bind(set.nozzle).run(); !o)
            return o;
    }
    return Done{};
}

Result<std::unordered_map<RecordId, std::vector<SetAboard>>> readSetsAboard(
    Connection& connection) {
    std::unordered_map<RecordId, std::vector<SetAboard>> out;
    auto query = connection.query(
        u"SELECT machine_id, position, nozzle FROM set_aboard ORDER BY machine_id, place"_s);
    if (auto ran = query.run(); !ran) return ran.problem();
    while (query.next()) {
        out[query.integer(0)].push_back({static_cast<int>(query.integer(1)), query.text(2)});
    }
    if (auto read = query.outcome(); !read) return read.problem();
    return out;
}

/// The machine of one row; the name of its first odd field if it has one.
std::optional<std::string> readMachineRow(const Statement& from, StoredMachine& out) {
    out.id = from.integer(0);
    out.customer = from.integer(1);
    out.machine.name = from.text(2);
    out.machine.notes = from.text(4);
    out.machine.isDemo = from.integer(5) != 0;
    const auto units = unitSystemFor(from.text(3));
    if (!units) return "units";
    out.machine.units = *units;
    return std::nullopt;
}

}  // namespace

Outcome write(Connection& connection, const Change<StoredMachine>& change) {
    // Values and sets aboard go with their machine.
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const StoredMachine& after = *change.after;
    const Machine before = change.before ? change.before->machine : Machine{};
    if (auto row = writeMachineRow(connection, after, !change.before); !row) return row;
    if (before.setsAboard != after.machine.setsAboard) {
        if (auto sets = writeSetsAboard(connection, after.id, after.machine.setsAboard); !sets)
            return sets;
    }
    return writeFieldRows(connection, kTable.table, after.id, fieldRows(before),
                          fieldRows(after.machine));
}

Outcome readAll(Connection& connection, std::vector<StoredMachine>& out,
                std::vector<Problem>& aside) {
    const auto values = readFieldRows(connection, kTable.table);
    if (!values) return values.problem();
    auto sets = readSetsAboard(connection);
    if (!sets) return sets.problem();
    auto query = connection.query(
        u"SELECT id, customer_id, name, units, notes, is_demo FROM machine ORDER BY id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        StoredMachine stored;
        auto odd = readMachineRow(query, stored);
        stored.machine.setsAboard = std::move(sets.value()[stored.id]);
        if (!odd) odd = fillFrom(*values, stored.id, stored.machine);
        if (odd) {
            aside.push_back(setAside("machine", stored.machine.name, *odd));
        } else {
            out.push_back(std::move(stored));
        }
    }
    return query.outcome();
}

}  // namespace bw
