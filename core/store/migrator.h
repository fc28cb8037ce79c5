// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <vector>

#include "core/store/connection.h"

namespace bw {

/// One step from format `number` - 1 to `number`: single SQL statements. Steps are only ever added;
/// one that was released is never edited.
struct Migration {
    int number = 0;
    QStringList statements;
};

/// All steps, 1 to `farmFormat()`, in order.
const std::vector<Migration>& migrations();
/// The format that this program writes.
int farmFormat();

/// The format of an open database.
Result<int> formatOf(const Connection& connection);

/// Takes the steps that the database lacks, each in one transaction with its format number. On a
/// problem the database stands at the last step that went through.
Outcome migrate(Connection& connection, const std::vector<Migration>& steps = migrations());

}  // namespace bw
