// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/migrations/steps.h"

namespace bw::steps {

using namespace Qt::StringLiterals;

/// Checks, catch tests and checklists. A record of the past: it outlives its machine, so the key is
/// no reference.
QStringList m0002Yard() {
    return {
        u"CREATE TABLE yard_record ("
        "  id INTEGER PRIMARY KEY AUTOINCREMENT,"
        "  machine_id INTEGER NOT NULL,"
        "  kind TEXT NOT NULL CHECK (kind IN ('check', 'catch_test', 'checklist')),"
        "  check_id TEXT NOT NULL,"
        "  started TEXT NOT NULL,"
        "  finished TEXT NOT NULL,"
        "  is_demo INTEGER NOT NULL CHECK (is_demo IN (0, 1)),"
        "  body TEXT NOT NULL CHECK (json_valid(body))"
        ") STRICT"_s,
        u"CREATE INDEX yard_machine ON yard_record (machine_id, started)"_s};
}

}  // namespace bw::steps
