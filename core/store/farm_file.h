// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QString>
#include <QStringList>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/store/record_change.h"

namespace bw {

/// The ending of farm files, with its point.
inline constexpr char16_t kFarmFileEnding[] = u".boomwright";

/// How a farm file is opened. The defaults are those of the program; tests and tools set the rest.
struct FarmFileOptions {
    bool readOnly = false;    ///< look only, even if the file could be written
    QString backupFolder;     ///< empty: "<name> backups" beside the file
    bool backUpDaily = true;  ///< a verified copy before the first edit of a day
    int backupsKept = 10;
    int busyMilliseconds = 3000;      ///< how long a lock of someone else is waited for
    std::optional<bool> onLocalDisk;  ///< absent: found out
    std::function<QDateTime()> now;   ///< absent: the clock of this computer
};

/// Everything in a farm file. What could not be read stays in the file and is named in `setAside`.
struct FarmContents {
    Season season;
    std::vector<StoredCase> cases;
    std::vector<StoredCustomer> customers;
    std::vector<StoredYardRecord> yard;
    std::vector<Problem> setAside;  ///< record_set_aside, one for each odd record
};

class BackupFolder;
class Connection;
class FarmLock;
struct FileIdentity;

/// One farm file: an SQLite database of our own format. Lives on the thread that opened it.
///
/// Problems of opening and creating (each with the argument `file`): file_missing,
/// file_folder_missing, file_is_folder, file_no_rights, file_empty, file_not_database,
/// file_foreign, file_newer (`format`, `known`), file_damaged (`detail`), file_in_use (`who`),
/// file_exists, file_not_opened (`detail`), backup_failed. A refused file is left as it was, to the
/// byte.
class FarmFile {
  public:
    /// Makes a new, empty farm file; refuses a path where something is already.
    static Result<std::unique_ptr<FarmFile>> create(const QString& path,
                                                    const FarmFileOptions& options = {});
    /// Opens a farm file; an older format is backed up, then brought up to date. One that may not
    /// be written opens for looking only, and `notices()` says so.
    static Result<std::unique_ptr<FarmFile>> open(const QString& path,
                                                  const FarmFileOptions& options = {});
    /// A farm file that lives only as long as this object.
    static Result<std::unique_ptr<FarmFile>> inMemory();
    ~FarmFile();
    FarmFile(const FarmFile&) = delete;
    FarmFile& operator=(const FarmFile&) = delete;

    QString path() const { return m_path; }  ///< absolute; empty in memory
    bool isReadOnly() const { return m_readOnly; }
    /// What the user should know after opening: file_read_only, file_on_network, file_updated.
    const std::vector<Problem>& notices() const { return m_notices; }

    /// Reads all records, one by one. Machines, nozzles, customers and cases by key, jobs by
    /// machine and position.
    Result<FarmContents> read();

    /// Stores all changes in one immediate transaction, or none of them. Records without a key must
    /// have been given one by `newId` before. Problems: file_read_only, file_locked, file_full,
    /// number_not_finite, store_failed (`detail`).
    Outcome apply(const std::vector<RecordChange>& changes);

    /// A key that no record of the kind has or ever had. Keys count up.
    RecordId newId(RecordKind kind);

    /// A setting that belongs to the farm ("season.name"), not to the user; empty if it was never
    /// set.
    QString setting(const QString& key);
    Outcome setSetting(const QString& key, const QString& value);

    /// Makes today's verified copy unless there is one. Called before the first edit of a day by
    /// itself; a program may call it earlier, when it is idle. Problem: backup_failed.
    Outcome backUpIfDue();
    /// A verified copy under a name of the user's choice; refuses an existing one.
    Outcome saveCopy(const QString& path);
    /// Backups of this file, newest first (absolute paths).
    QStringList backups() const;

    Connection& connection() { return *m_connection; }  ///< for the store's own tests

  private:
    FarmFile(QString path, FarmFileOptions options);
    Outcome lock();
    Outcome connect(const FileIdentity& identity);
    Outcome checkFormat(const Connection& connection) const;
    Outcome update();
    Outcome checkCanWrite();
    BackupFolder backupFolder() const;
    QString m_path;
    FarmFileOptions m_options;
    std::unique_ptr<FarmLock> m_lock;  // outlives the connection
    std::unique_ptr<Connection> m_connection;
    std::vector<Problem> m_notices;
    std::map<RecordKind, RecordId> m_lastIds;
    bool m_readOnly = false;
    QDate m_backedUpOn;  ///< the day for which the daily backup was last seen to
};

}  // namespace bw
