// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSqlDatabase>
#include <QString>
#include <map>
#include <memory>
#include <vector>

#include "core/base/result.h"
#include "core/store/statement.h"

namespace bw {

/// How a database is opened.
struct ConnectionOptions {
    bool readOnly = false;
    bool immutable = false;  ///< with readOnly: nobody else can be writing, so no side files
    bool writeAhead = true;  ///< write-ahead log; off where the disk is not a local one
    int busyMilliseconds = 3000;
};

/// One open database with the settings that the store relies on, each read back after it was set:
/// foreign keys on, full synchronous, journal as asked, temporary tables in memory. Belongs to the
/// thread that opened it.
class Connection {
  public:
    /// `path` may be ":memory:". Problem: file_not_opened (`detail`) or those of storeProblem.
    static Result<std::unique_ptr<Connection>> open(const QString& path,
                                                    const ConnectionOptions& options);
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    const QString& path() const { return m_path; }

    /// A statement that is kept prepared: for what changes something, again and again.
    Statement& command(const QString& sql);
    /// A statement of its own, for what reads rows.
    Statement query(const QString& sql) const;
    /// Runs one statement without values.
    Outcome run(const QString& sql);
    /// The first column of the first row as text; empty if there is none.
    Result<QString> value(const QString& sql) const;
    /// Sets a PRAGMA and reads it back.
    Outcome setPragma(const QString& name, const QString& wanted, const QString& readsAs);
    /// quick_check and foreign_key_check: file_damaged (`detail`).
    Outcome check() const;

  private:
    explicit Connection(QString path);
    Outcome openWith(const ConnectionOptions& options);
    Outcome applySettings(const ConnectionOptions& options);
    QString m_path;
    QString m_name;
    QSqlDatabase m_database;
    std::map<QString, Statement> m_commands;
};

/// An immediate transaction: holds the write lock from the start, so that it cannot fail half-way
/// for someone else's. Taken back unless committed.
class Transaction {
  public:
    static Result<Transaction> begin(Connection& connection);
    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    ~Transaction();
    Outcome commit();

  private:
    explicit Transaction(Connection& connection) : m_connection(&connection) {}
    Connection* m_connection;
};

}  // namespace bw
