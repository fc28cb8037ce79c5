// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/migrator.h"

#include "core/store/migrations/steps.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

Outcome take(Connection& connection, const Migration& step) {
    auto transaction = Transaction::begin(connection);
    if (!transaction) return transaction.problem();
    for (const QString& sql : step.statements) {
        if (auto ran = connection.run(sql); !ran) return ran;
    }
    // Inside the transaction: a step that fails leaves its number behind, too.
    if (auto ran = connection.run(u"PRAGMA user_version = %1"_s.arg(step.number)); !ran) return ran;
    return transaction.value().commit();
}

}  // namespace

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> steps{{1, steps::m0001First()}, {2, steps::m0002Yard()}};
    return steps;
}

int farmFormat() {
    return migrations().back().number;
}

Result<int> formatOf(const Connection& connection) {
    const auto text = connection.value(u"PRAGMA user_version"_s);
    if (!text) return text.problem();
    return text->toInt();
}

Outcome migrate(Connection& connection, const std::vector<Migration>& steps) {
    const auto format = formatOf(connection);
    if (!format) return format.problem();
    for (const auto& step : steps) {
        if (step.number <= *format) continue;
        if (auto taken = take(connection, step); !taken) return taken;
    }
    return Done{};
}

}  // namespace bw
