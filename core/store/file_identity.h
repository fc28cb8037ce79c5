// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>

#include "core/base/result.h"

namespace bw {

/// Stands in the header of every farm file ("BwFf" in ASCII): an SQLite database without it is not
/// ours.
inline constexpr std::uint32_t kFarmApplicationId = 0x42774666;

/// What the header of a farm file says.
struct FileIdentity {
    int format = 0;
    bool hasLog = false;   ///< a write-ahead log with something in it: a crash, or another program
    bool isAtRest = true;  ///< no log or journal lies beside it: nobody else has it open
};

/// Looks at a file without opening it as a database, so that nothing about it can change. `known`
/// is the newest format that this program reads. Problems: file_missing, file_folder_missing,
/// file_is_folder, file_no_rights, file_empty, file_not_database, file_foreign, file_newer.
Result<FileIdentity> identify(const QString& path, int known);

/// The problem of a format newer than `known`, if it is.
Outcome checkFormat(const QString& path, int format, int known);

/// Whether a new file could be put at the path: file_exists, file_folder_missing, file_no_rights.
Outcome checkCanCreate(const QString& path);

/// Whether file and folder may be written.
bool isWritable(const QString& path);

/// False on network shares, where a write-ahead log does not work.
bool isOnLocalDisk(const QString& path);

}  // namespace bw
