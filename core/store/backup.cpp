// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/backup.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QUuid>
#include <algorithm>

#ifdef Q_OS_WIN
#include <io.h>
#else
#include <unistd.h>
#endif

#include "core/store/farm_file.h"
#include "core/store/store_problem.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

Problem failed(const QString& target, const std::string& detail) {
    return error("backup_failed", {}, {pathArgument("file", target), {"detail", detail}});
}

/// What the database said, as the detail of our own problem.
Problem failed(const QString& target, const Problem& inner) {
    for (const auto& a : inner.arguments) {
        if (a.name == "detail") return failed(target, std::get<std::string>(a.value));
    }
    return failed(target, inner.code);
}

/// VACUUM INTO leaves it to the system when the copy reaches the disk; we do not.
bool forceToDisk(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadWrite)) return false;
#ifdef Q_OS_WIN
    return _commit(file.handle()) == 0;
#else
    return ::fsync(file.handle()) == 0;
#endif
}

Outcome verify(const QString& path, const QString& format) {
    auto copy = Connection::open(path, {.readOnly = true, .immutable = true});
    if (!copy) return copy.problem();
    const auto read = copy.value()->value(u"PRAGMA user_version"_s);
    if (!read) return read.problem();
    if (*read != format)
        return error("backup_failed", {}, {{"detail", "the copy has another format"}});
    return copy.value()->check();
}

Outcome copyInto(Connection& from, const QString& temporary) {
    const auto format = from.value(u"PRAGMA user_version"_s);
    if (!format) return format.problem();
    if (auto ran = from.query(u"VACUUM INTO ?"_s).bind(temporary).run(); !ran) return ran;
    if (!forceToDisk(temporary)) {
        return error("backup_failed", {}, {{"detail", "the copy did not reach the disk"}});
    }
    return verify(temporary, *format);
}

const QString kDay = u"2[0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]"_s;
const QString kEnding = QString::fromUtf16(kFarmFileEnding);

/// The file's name without our ending; another ending stays, to tell files apart.
QString nameOf(const QString& farmFile) {
    const QString name = QFileInfo(farmFile).fileName();
    return name.endsWith(kEnding) ? name.chopped(kEnding.size()) : name;
}

}  // namespace

Outcome writeVerifiedCopy(Connection& from, const QString& target) {
    if (QFileInfo::exists(target)) return failed(target, "something of that name is already there");
    const QString temporary =
        target + u".part-"_s + QUuid::createUuid().toString(QUuid::WithoutBraces).left(8);
    const auto copied = copyInto(from, temporary);
    if (!copied) {
        QFile::remove(temporary);
        return failed(target, copied.problem());
    }
    if (!QFile::rename(temporary, target)) {
        QFile::remove(temporary);
        return failed(target, "the finished copy could not be renamed");
    }
    return Done{};
}

BackupFolder::BackupFolder(const QString& farmFile, const QString& chosen, int kept)
    : m_name(nameOf(farmFile)), m_kept(std::max(kept, 1)) {
    if (chosen.isEmpty()) {
        m_folder = QFileInfo(farmFile).absolutePath() + u"/%1 backups"_s.arg(m_name);
        return;
    }
    const auto hash = QCryptographicHash::hash(farmFile.toUtf8(), QCryptographicHash::Sha256);
    m_folder =
        QDir(chosen).absoluteFilePath(m_name + u' ' + QString::fromLatin1(hash.toHex().left(6)));
}

QStringList BackupFolder::matching(const QString& pattern) const {
    QStringList out;
    // Names carry the day, so that their order is that of time, whatever the files' own times say.
    const auto found = QDir(m_folder).entryList({pattern}, QDir::Files, QDir::Name);
    for (const QString& name : found) {
        if (name.startsWith(m_name + u' ')) out.prepend(QDir(m_folder).absoluteFilePath(name));
    }
    return out;
}

QStringList BackupFolder::all() const {
    return matching(u'*' + kDay + u'*' + kEnding);
}

bool BackupFolder::hasDaily(const QDate& day) const {
    return QFileInfo::exists(
        QDir(m_folder).absoluteFilePath(m_name + u' ' + day.toString(Qt::ISODate) + kEnding));
}

Outcome BackupFolder::writeDaily(Connection& from, const QDate& day) const {
    auto written = write(from, m_name + u' ' + day.toString(Qt::ISODate) + kEnding);
    if (written) prune(u'*' + kDay + kEnding);
    return written;
}

Outcome BackupFolder::writeBeforeFormat(Connection& from, const QDate& day, int format) const {
    const QString ending = u" before format %1"_s.arg(format) + kEnding;
    const QString stem = m_name + u' ' + day.toString(Qt::ISODate);
    QString name = stem + ending;
    for (int n = 2; QFileInfo::exists(QDir(m_folder).absoluteFilePath(name)); ++n) {
        name = stem + u" (%1)"_s.arg(n) + ending;
    }
    auto written = write(from, name);
    if (written) prune(u"* before format *"_s + kEnding);
    return written;
}

Outcome BackupFolder::write(Connection& from, const QString& name) const {
    if (!QDir().mkpath(m_folder)) return failed(m_folder, "the folder could not be made");
    QDir folder(m_folder);
    for (const QString& part : folder.entryList({u"*.part-*"_s}, QDir::Files)) folder.remove(part);
    return writeVerifiedCopy(from, folder.absoluteFilePath(name));
}

void BackupFolder::prune(const QString& pattern) const {
    const QStringList found = matching(pattern);
    for (qsizetype i = m_kept; i < found.size(); ++i) QFile::remove(found[i]);
}

}  // namespace bw
