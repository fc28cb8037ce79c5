// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/exchange/json_yard.h"
#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// What is searched has its column; the rest of the record is its text.
const TableColumns kTable{u"yard_record"_s,
                          {u"machine_id"_s, u"kind"_s, u"check_id"_s, u"started"_s, u"finished"_s,
                           u"is_demo"_s, u"body"_s}};

template <class T>
bool isOdd(const Known<T>& field) {
    return field && !field->value.isFinite();
}

/// The body is a text, which would leave a number that is not finite out without a word.
Outcome checkFinite(const YardRecord& record) {
    const CatchTest& test = record.catchTest;
    const bool oddReading =
        std::any_of(record.readings.begin(), record.readings.end(),
                    [](const NotedReading& r) { return !std::isfinite(r.value.si); });
    const bool oddCatch =
        std::any_of(test.catches.begin(), test.catches.end(),
                    [](const NotedCatch& c) { return !c.volume.isFinite() || !c.time.isFinite(); });
    const bool oddTest = isOdd(test.pressure) || isOdd(test.newFlow) || !test.time.isFinite() ||
                         !std::isfinite(test.limitOfMean) || !std::isfinite(test.limitOfNew);
    if (oddReading) return error("value_not_finite", "readings");
    if (oddCatch || oddTest) return error("value_not_finite", "catch_test");
    return Done{};
}

}  // namespace

Outcome write(Connection& connection, const Change<StoredYardRecord>& change) {
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const auto& [id, record] = *change.after;
    if (auto checked = checkFinite(record); !checked) return checked;
    return writeOneRow(rowCommand(connection, kTable, !change.before)
                           .bind(record.machineId)
                           .bind(std::string(choiceName(record.kind)))
                           .bind(record.check)
                           .bind(record.started)
                           .bind(record.finished)
                           .bind(record.isDemo)
                           .bind(toJson(record))
                           .bind(id));
}

Outcome readAll(Connection& connection, std::vector<StoredYardRecord>& out,
                std::vector<Problem>& aside) {
    auto query = connection.query(u"SELECT id, started, body FROM yard_record ORDER BY id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        auto record = yardRecordFromJson(query.text(2));
        if (record)
            out.push_back({query.integer(0), std::move(record).value()});
        else
            aside.push_back(setAside("yard record", query.text(1), record.problem().where));
    }
    return query.outcome();
}

}  // namespace bw
