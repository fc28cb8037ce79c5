// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>

#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const TableColumns kTable{u"job"_s,
                          {u"machine_id"_s, u"position"_s, u"name"_s, u"droplets"_s,
                           u"pinned_nozzle"_s, u"notes"_s, u"is_demo"_s}};

std::string dropletText(const std::vector<DropletCategory>& categories) {
    std::string out;
    for (const auto category : categories) {
        if (!out.empty()) out += ',';
        out += choiceName(category);
    }
    return out;
}

bool readDroplets(const QString& text, std::vector<DropletCategory>& out) {
    for (const QString& word : text.split(u',', Qt::SkipEmptyParts)) {
        const auto category = choiceFor<DropletCategory>(word.toStdString());
        if (!category) return false;
        out.push_back(*category);
    }
    return true;
}

std::optional<std::string> readJobRow(const Statement& from, StoredJob& out) {
    out.id = from.integer(0);
    out.machine = from.integer(1);
    out.position = static_cast<int>(from.integer(2));
    out.job.name = from.text(3);
    out.job.pinnedNozzle = from.text(5);
    out.job.notes = from.text(6);
    out.job.isDemo = from.integer(7) != 0;
    if (!readDroplets(from.qtext(4), out.job.droplets)) return "droplets";
    return std::nullopt;
}

}  // namespace

Outcome write(Connection& connection, const Change<StoredJob>& change) {
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const StoredJob& after = *change.after;
    auto row = writeOneRow(rowCommand(connection, kTable, !change.before)
                               .bind(after.machine)
                               .bind(after.position)
                               .bind(after.job.name)
                               .bind(dropletText(after.job.droplets))
                               .bind(after.job.pinnedNozzle)
                               .bind(after.job.notes)
                               .bind(after.job.isDemo)
                               .bind(after.id));
    if (!row) return row;
    const Job before = change.before ? change.before->job : Job{};
    return writeFieldRows(connection, kTable.table, after.id, fieldRows(before),
                          fieldRows(after.job));
}

Outcome readAll(Connection& connection, std::vector<StoredJob>& out, std::vector<Problem>& aside) {
    const auto values = readFieldRows(connection, kTable.table);
    if (!values) return values.problem();
    auto query = connection.query(
        u"SELECT id, machine_id, position, name, droplets, pinned_nozzle, notes, is_demo FROM job"
        " ORDER BY machine_id, position, id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        StoredJob stored;
        auto odd = readJobRow(query, stored);
        if (!odd) odd = fillFrom(*values, stored.id, stored.job);
        if (odd) {
            aside.push_back(setAside("job", stored.job.name, *odd));
        } else {
            out.push_back(std::move(stored));
        }
    }
    return query.outcome();
}

}  // namespace bw
