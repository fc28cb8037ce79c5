// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/store_problem.h"

#include <QDir>

namespace bw {
namespace {

// Result codes of SQLite (sqlite.org/rescode.html); the low byte is the primary one.
constexpr int kBusy = 5;
constexpr int kLocked = 6;
constexpr int kReadOnly = 8;
constexpr int kCorrupt = 11;
constexpr int kFull = 13;
constexpr int kNotADatabase = 26;

}  // namespace

Argument pathArgument(const char* name, const QString& path) {
    const QString shown =
        path.isEmpty() ? QStringLiteral("(in memory)") : QDir::toNativeSeparators(path);
    return {name, shown.toStdString()};
}

Problem storeProblem(const QSqlError& sqlError, const QString& path) {
    const Argument file = pathArgument("file", path);
    const Argument detail{"detail", sqlError.text().trimmed().toStdString()};
    switch (sqlError.nativeErrorCode().toInt() & 0xff) {
        case kBusy:
        case kLocked:
            return error("file_locked", {}, {file});
        case kReadOnly:
            return error("file_read_only", {}, {file});
        case kFull:
            return error("file_full", {}, {file});
        case kCorrupt:
        case kNotADatabase:
            return error("file_damaged", {}, {file, detail});
        default:
            return error("store_failed", {}, {file, detail});
    }
}

}  // namespace bw
