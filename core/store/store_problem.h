// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSqlError>
#include <QString>
#include <string>
#include <vector>

#include "core/base/problem.h"

namespace bw {

/// An argument that names a file, as people see paths.
Argument pathArgument(const char* name, const QString& path);

/// What went wrong in the database, by its own result code: file_locked, file_read_only, file_full,
/// file_damaged (`detail`), or store_failed (`detail`). `file` names the farm file.
Problem storeProblem(const QSqlError& error, const QString& path);

}  // namespace bw
