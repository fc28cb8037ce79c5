// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const TableColumns kTable{u"customer"_s,
                          {u"name"_s, u"place"_s, u"phone"_s, u"notes"_s, u"is_demo"_s}};

}  // namespace

Outcome write(Connection& connection, const Change<StoredCustomer>& change) {
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const auto& [id, customer] = *change.after;
    return writeOneRow(rowCommand(connection, kTable, !change.before)
                           .bind(customer.name)
                           .bind(customer.place)
                           .bind(customer.phone)
                           .bind(customer.notes)
                           .bind(customer.isDemo)
                           .bind(id));
}

Outcome readAll(Connection& connection, std::vector<StoredCustomer>& out, std::vector<Problem>&) {
    auto query = connection.query(
        u"SELECT id, name, place, phone, notes, is_demo FROM customer ORDER BY id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        out.push_back(
            {query.integer(0),
             {query.text(1), query.text(2), query.text(3), query.text(4), query.integer(5) != 0}});
    }
    return query.outcome();
}

}  // namespace bw
