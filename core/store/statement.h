// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSqlQuery>
#include <QSqlRecord>
#include <QString>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>

#include "core/base/result.h"

namespace bw {

/// One value of a column that may hold a number (SI) or a text.
using Cell = std::variant<double, std::string>;

/// One prepared SQL statement with typed values. Values are bound from left to right, then `run`.
///
/// Numbers that are not finite are refused (value_not_finite), because the database would take NaN
/// for "nothing". Errors of binding and preparing come out of `run`.
class Statement {
  public:
    Statement(const QSqlDatabase& database, const QString& sql, QString path);

    Statement& bind(double number);
    Statement& bind(std::int64_t number);
    Statement& bind(int number) { return bind(static_cast<std::int64_t>(number)); }
    Statement& bind(bool mark) { return bind(std::int64_t{mark}); }
    Statement& bind(const std::string& text);
    Statement& bind(const QString& text);
    Statement& bind(const char*) = delete;
    Statement& bind(const Cell& cell);
    Statement& bind(const std::optional<Cell>& cell);
    Statement& bindNull();

    /// Executes with the values bound so far, and forgets them.
    Outcome run();
    /// The next row; false at the end or on an error, which `outcome` then tells.
    bool next();
    Outcome outcome() const;
    int rowsChanged() const { return m_query.numRowsAffected(); }
    /// Lets go of the rows, so that the statement keeps no lock.
    void finish() { m_query.finish(); }

    int columns() const { return m_query.record().count(); }
    std::int64_t integer(int column) const { return m_query.value(column).toLongLong(); }
    std::string text(int column) const { return m_query.value(column).toString().toStdString(); }
    QString qtext(int column) const { return m_query.value(column).toString(); }
    /// A number or a text; nothing if the column is empty.
    std::optional<Cell> cell(int column) const;

  private:
    Statement& add(const QVariant& value);
    QSqlQuery m_query;
    QString m_path;
    int m_bound = 0;
    std::optional<Problem> m_problem;
    bool m_isPrepared = false;
};

}  // namespace bw
