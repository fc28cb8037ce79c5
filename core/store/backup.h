// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>
#include <QString>
#include <QStringList>

#include "core/store/connection.h"

namespace bw {

/// Writes a copy of an open database to `target`: made under another name, forced to the disk,
/// opened and checked, and only then given its name. An existing target is refused. Problem:
/// backup_failed (`file`: the target, `detail`).
Outcome writeVerifiedCopy(Connection& from, const QString& target);

/// The folder of one farm file's backups and what lies in it. Two kinds, each pruned by itself: one
/// a day, and one before each change of format.
class BackupFolder {
  public:
    /// `chosen` empty: "<name> backups" beside the file; else a folder of its own for this file
    /// below `chosen`, so that two farms of one name do not meet.
    BackupFolder(const QString& farmFile, const QString& chosen, int kept);

    const QString& path() const { return m_folder; }
    /// All backups, newest first.
    QStringList all() const;
    bool hasDaily(const QDate& day) const;
    Outcome writeDaily(Connection& from, const QDate& day) const;
    Outcome writeBeforeFormat(Connection& from, const QDate& day, int format) const;

  private:
    QStringList matching(const QString& pattern) const;
    Outcome write(Connection& from, const QString& name) const;
    void prune(const QString& pattern) const;
    QString m_folder;
    QString m_name;
    int m_kept;
};

}  // namespace bw
