// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/farm_file.h"

#include <QFile>
#include <QFileInfo>
#include <QUuid>
#include <algorithm>
#include <array>
#include <utility>

#include "core/store/backup.h"
#include "core/store/connection.h"
#include "core/store/farm_lock.h"
#include "core/store/file_identity.h"
#include "core/store/migrator.h"
#include "core/store/record_stores.h"
#include "core/store/record_table.h"
#include "core/store/store_problem.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QDateTime timeNow(const FarmFileOptions& options) {
    return options.now ? options.now() : QDateTime::currentDateTime();
}

/// Behind links: log and lock of a database lie beside the file itself.
QString realPath(const QString& path) {
    const QFileInfo info(path);
    return info.exists() ? info.canonicalFilePath() : info.absoluteFilePath();
}

Problem note(std::string code, std::vector<Argument> arguments) {
    return {std::move(code), Severity::Note, {}, std::move(arguments)};
}

/// Marks an empty database as ours and gives it its tables.
Outcome furnish(Connection& connection) {
    const QString mark = u"PRAGMA application_id = %1"_s.arg(kFarmApplicationId);
    if (auto marked = connection.run(mark); !marked) return marked;
    return migrate(connection);
}

/// Jobs whose machine was set aside follow it.
void dropJobsWithoutMachine(FarmContents& contents) {
    const auto& machines = contents.season.machines;
    std::erase_if(contents.season.jobs, [&](const StoredJob& job) {
        const bool found = std::any_of(machines.begin(), machines.end(),
                                       [&](const auto& m) { return m.id == job.machine; });
        if (!found) contents.setAside.push_back(setAside("job", job.job.name, "machine"));
        return !found;
    });
}

QString tableOf(RecordKind kind) {
    switch (kind) {
        case RecordKind::Machine:
            return u"machine"_s;
        case RecordKind::Nozzle:
            return u"nozzle"_s;
        case RecordKind::Job:
            return u"job"_s;
        case RecordKind::Case:
            return u"case_record"_s;
        case RecordKind::Customer:
            return u"customer"_s;
        case RecordKind::Yard:
            return u"yard_record"_s;
    }
    return {};
}

}  // namespace

FarmFile::FarmFile(QString path, FarmFileOptions options)
    : m_path(std::move(path)), m_options(std::move(options)) {}

FarmFile::~FarmFile() {
    if (!m_connection || m_readOnly) return;
    // Statistics for the next time; whether it worked is of no matter.
    (void)m_connection->run(u"PRAGMA optimize"_s);
}

Result<std::unique_ptr<FarmFile>> FarmFile::create(const QString& path,
                                                   const FarmFileOptions& options) {
    const QString absolute = QFileInfo(path).absoluteFilePath();
    if (auto can = checkCanCreate(absolute); !can) return can.problem();
    // Made under another name, so that half a file never bears the name of a farm.
    const QString temporary =
        absolute + u".part-"_s + QUuid::createUuid().toString(QUuid::WithoutBraces).left(8);
    const auto furnished = [&]() -> Outcome {
        auto connection = Connection::open(temporary, {.writeAhead = false});
        if (!connection) return connection.problem();
        return furnish(*connection.value());
    }();
    if (!furnished) {
        QFile::remove(temporary);
        return furnished.problem();
    }
    if (!QFile::rename(temporary, absolute)) {
        QFile::remove(temporary);
        return error("file_exists", {}, {pathArgument("file", absolute)});
    }
    auto opened = open(absolute, options);
    if (opened) opened.value()->m_backedUpOn = timeNow(options).date();  // nothing to lose yet
    return opened;
}

Result<std::unique_ptr<FarmFile>> FarmFile::inMemory() {
    std::unique_ptr<FarmFile> out(new FarmFile({}, {}));
    auto connection = Connection::open(u":memory:"_s, {});
    if (!connection) return connection.problem();
    out->m_connection = std::move(connection).value();
    if (auto furnished = furnish(*out->m_connection); !furnished) return furnished.problem();
    return out;
}

Result<std::unique_ptr<FarmFile>> FarmFile::open(const QString& path,
                                                 const FarmFileOptions& options) {
    std::unique_ptr<FarmFile> out(new FarmFile(realPath(path), options));
    const auto identity = identify(out->m_path, farmFormat());
    if (!identity) return identity.problem();
    if (auto locked = out->lock(); !locked) return locked.problem();
    if (auto o = out->connect(*identity); !o) return o.problem();
    if (auto checked = out->m_connection->check(); !checked) return checked.problem();
    if (auto updated = out->update(); !updated) return updated.problem();
    return out;
}

Outcome FarmFile::lock() {
    m_readOnly = m_options.readOnly;
    if (m_readOnly) return Done{};
    if (!isWritable(m_path)) {
        m_readOnly = true;
        m_notices.push_back(warning("file_read_only", {}, {pathArgument("file", m_path)}));
        return Done{};
    }
    auto taken = FarmLock::take(m_path);
    if (!taken) return taken.problem();
    m_lock = std::move(taken).value();
    return Done{};
}

Outcome FarmFile::connect(const FileIdentity& identity) {
    // A write-ahead log that was left behind may hold a newer format than the file's header says,
    // so it is read, without a trace, before the file is opened for writing.
    if (identity.hasLog && !m_readOnly) {
        const auto look = Connection::open(m_path, {.readOnly = true});
        if (!look) return look.problem();
        if (auto fits = checkFormat(*look.value()); !fits) return fits;
    }
    ConnectionOptions how;
    how.readOnly = m_readOnly;
    how.immutable = m_readOnly && identity.isAtRest;
    how.writeAhead = m_options.onLocalDisk.value_or(isOnLocalDisk(m_path));
    how.busyMilliseconds = m_options.busyMilliseconds;
    if (!how.writeAhead)
        m_notices.push_back(note("file_on_network", {pathArgument("file", m_path)}));
    auto connection = Connection::open(m_path, how);
    if (!connection) return connection.problem();
    m_connection = std::move(connection).value();
    return checkFormat(*m_connection);
}

Outcome FarmFile::checkFormat(const Connection& connection) const {
    const auto format = formatOf(connection);
    if (!format) return format.problem();
    return bw::checkFormat(m_path, *format, farmFormat());
}

Outcome FarmFile::update() {
    const auto format = formatOf(*m_connection);
    if (!format) return format.problem();
    if (*format == farmFormat()) return Done{};
    const Argument file = pathArgument("file", m_path);
    if (m_readOnly) return error("file_old_read_only", {}, {file});
    const auto day = timeNow(m_options).date();
    auto saved = backupFolder().writeBeforeFormat(*m_connection, day, farmFormat());
    if (!saved) return saved;
    if (auto migrated = migrate(*m_connection); !migrated) return migrated;
    if (auto checked = m_connection->check(); !checked) return checked;
    m_notices.push_back(note("file_updated", {file, {"format", std::to_string(farmFormat())}}));
    return Done{};
}

BackupFolder FarmFile::backupFolder() const {
    return BackupFolder(m_path, m_options.backupFolder, m_options.backupsKept);
}

Result<FarmContents> FarmFile::read() {
    FarmContents out;
    Connection& c = *m_connection;
    const auto all = [&]() -> Outcome {
        if (auto o = readAll(c, out.customers, out.setAside); !o) return o;
        if (auto o = readAll(c, out.season.machines, out.setAside); !o) return o;
        if (auto o = readAll(c, out.season.nozzles, out.setAside); !o) return o;
        if (auto o = readAll(c, out.season.jobs, out.setAside); !o) return o;
        if (auto o = readAll(c, out.yard, out.setAside); !o) return o;
        return readAll(c, out.cases, out.setAside);
    }();
    if (!all) return all.problem();
    dropJobsWithoutMachine(out);
    out.season.name = setting(u"season.name"_s).toStdString();
    return out;
}

Outcome FarmFile::checkCanWrite() {
    if (m_readOnly) return error("file_read_only", {}, {pathArgument("file", m_path)});
    const QDate today = timeNow(m_options).date();
    if (m_options.backUpDaily && m_backedUpOn != today) {
        // An edit is not refused because a copy failed, but the user hears of it, once a day.
        if (auto saved = backUpIfDue(); !saved) m_notices.push_back(saved.problem());
        m_backedUpOn = today;
    }
    return Done{};
}

Outcome FarmFile::apply(const std::vector<RecordChange>& changes) {
    if (auto can = checkCanWrite(); !can) return can;
    auto transaction = Transaction::begin(*m_connection);
    if (!transaction) return transaction.problem();
    for (const auto& change : changes) {
        auto written = std::visit([&](const auto& c) { return write(*m_connection, c); }, change);
        if (!written) return written;
    }
    return transaction.value().commit();
}

RecordId FarmFile::newId(RecordKind kind) {
    const QString table = tableOf(kind);
    auto query = m_connection->query(u"SELECT seq FROM sqlite_sequence WHERE name = ?"_s);
    RecordId stored = 0;
    if (query.bind(table).run() && query.next()) stored = query.integer(0);
    RecordId& last = m_lastIds[kind];
    last = std::max(last, stored) + 1;
    return last;
}

QString FarmFile::setting(const QString& key) {
    auto query = m_connection->query(u"SELECT value FROM setting WHERE key = ?"_s);
    return query.bind(key).run() && query.next() ? query.qtext(0) : QString();
}

Outcome FarmFile::setSetting(const QString& key, const QString& value) {
    if (auto can = checkCanWrite(); !can) return can;
    return m_connection
        ->command(
            u"INSERT INTO setting (key, value) VALUES (?, ?)"
            " ON CONFLICT DO UPDATE SET value = excluded.value"_s)
        .bind(key)
        .bind(value)
        .run();
}

Outcome FarmFile::backUpIfDue() {
    if (m_path.isEmpty() || m_readOnly) return Done{};
    const auto day = timeNow(m_options).date();
    const BackupFolder folder = backupFolder();
    if (folder.hasDaily(day)) return Done{};
    return folder.writeDaily(*m_connection, day);
}

Outcome FarmFile::saveCopy(const QString& path) {
    return writeVerifiedCopy(*m_connection, QFileInfo(path).absoluteFilePath());
}

QStringList FarmFile::backups() const {
    return m_path.isEmpty() ? QStringList() : backupFolder().all();
}

}  // namespace bw
