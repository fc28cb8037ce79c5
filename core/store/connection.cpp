// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/connection.h"

#include <QSqlError>
#include <QUrl>
#include <QUuid>
#include <utility>

#include "core/store/store_problem.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const QString kMemory = u":memory:"_s;

/// What the driver opens; an immutable file needs a URI.
QString driverPath(const QString& path, const ConnectionOptions& options) {
    if (!options.readOnly || !options.immutable) return path;
    return QString::fromUtf8(QUrl::fromLocalFile(path).toEncoded()) + u"?immutable=1"_s;
}

QString driverOptions(const ConnectionOptions& options) {
    QString out = u"QSQLITE_BUSY_TIMEOUT=%1"_s.arg(options.busyMilliseconds);
    if (options.readOnly) out += u";QSQLITE_OPEN_READONLY"_s;
    if (options.readOnly && options.immutable) out += u";QSQLITE_OPEN_URI"_s;
    return out;
}

}  // namespace

Connection::Connection(QString path)
    : m_path(std::move(path)), m_name(QUuid::createUuid().toString(QUuid::WithoutBraces)) {}

Connection::~Connection() {
    m_commands.clear();
    m_database.close();
    m_database = {};
    QSqlDatabase::removeDatabase(m_name);
}

Result<std::unique_ptr<Connection>> Connection::open(const QString& path,
                                                     const ConnectionOptions& options) {
    std::unique_ptr<Connection> out(new Connection(path));
    if (auto opened = out->openWith(options); !opened) return opened.problem();
    if (auto applied = out->applySettings(options); !applied) return applied.problem();
    return out;
}

Outcome Connection::openWith(const ConnectionOptions& options) {
    m_database = QSqlDatabase::addDatabase(u"QSQLITE"_s, m_name);
    m_database.setDatabaseName(driverPath(m_path, options));
    m_database.setConnectOptions(driverOptions(options));
    if (m_database.open()) return Done{};
    // The driver has no words for some failures.
    QString detail = m_database.lastError().text().trimmed();
    if (detail.isEmpty()) detail = u"it cannot be opened"_s;
    return error("file_not_opened", {},
                 {pathArgument("file", m_path), {"detail", detail.toStdString()}});
}

Outcome Connection::applySettings(const ConnectionOptions& options) {
    const QString journal = m_path == kMemory    ? u"memory"_s
                            : options.writeAhead ? u"wal"_s
                                                 : u"delete"_s;
    // Foreign keys first: inside a transaction the setting would be ignored without a word.
    if (auto o = setPragma(u"foreign_keys"_s, u"ON"_s, u"1"_s); !o) return o;
    if (auto o = setPragma(u"temp_store"_s, u"MEMORY"_s, u"2"_s); !o) return o;
    if (auto o = setPragma(u"busy_timeout"_s, QString::number(options.busyMilliseconds),
                           QString::number(options.busyMilliseconds));
        !o) {
        return o;
    }
    if (options.readOnly) return Done{};
    if (auto o = setPragma(u"journal_mode"_s, journal, journal); !o) return o;
    return setPragma(u"synchronous"_s, u"FULL"_s, u"2"_s);
}

Outcome Connection::setPragma(const QString& name, const QString& wanted, const QString& readsAs) {
    if (auto set = run(u"PRAGMA %1 = %2"_s.arg(name, wanted)); !set) return set;
    const auto back = value(u"PRAGMA "_s + name);
    if (!back) return back.problem();
    if (*back == readsAs) return Done{};
    const QString detail = u"%1 is %2, not %3"_s.arg(name, *back, readsAs);
    return error("file_not_opened", {},
                 {pathArgument("file", m_path), {"detail", detail.toStdString()}});
}

Statement& Connection::command(const QString& sql) {
    const auto found = m_commands.find(sql);
    if (found != m_commands.end()) return found->second;
    return m_commands.emplace(sql, Statement(m_database, sql, m_path)).first->second;
}

Statement Connection::query(const QString& sql) const {
    return Statement(m_database, sql, m_path);
}

Outcome Connection::run(const QString& sql) {
    return query(sql).run();
}

Result<QString> Connection::value(const QString& sql) const {
    Statement statement = query(sql);
    if (auto ran = statement.run(); !ran) return ran.problem();
    if (statement.next()) return statement.qtext(0);
    if (auto read = statement.outcome(); !read) return read.problem();
    return QString();
}

Outcome Connection::check() const {
    const auto damaged = [&](const QString& detail) {
        return error("file_damaged", {},
                     {pathArgument("file", m_path), {"detail", detail.toStdString()}});
    };
    const auto quick = value(u"PRAGMA quick_check(1)"_s);
    if (!quick) return quick.problem();
    if (*quick != u"ok"_s) return damaged(*quick);
    const auto dangling = value(u"PRAGMA foreign_key_check"_s);
    if (!dangling) return dangling.problem();
    if (!dangling->isEmpty()) return damaged(u"a %1 belongs to nothing"_s.arg(*dangling));
    return Done{};
}

Result<Transaction> Transaction::begin(Connection& connection) {
    if (auto begun = connection.command(u"BEGIN IMMEDIATE"_s).run(); !begun) return begun.problem();
    return Transaction(connection);
}

Transaction::Transaction(Transaction&& other) noexcept
    : m_connection(std::exchange(other.m_connection, nullptr)) {}

Transaction::~Transaction() {
    // Whatever the database says to this, the transaction ends with the connection at the latest.
    if (m_connection) (void)m_connection->command(u"ROLLBACK"_s).run();
}

Outcome Transaction::commit() {
    auto done = m_connection->command(u"COMMIT"_s).run();
    if (done) m_connection = nullptr;
    return done;
}

}  // namespace bw
