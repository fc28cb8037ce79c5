// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/statement.h"

#include <QSqlDatabase>
#include <QSqlError>
#include <QVariant>
#include <cmath>
#include <utility>

#include "core/store/store_problem.h"

namespace bw {

Statement::Statement(const QSqlDatabase& database, const QString& sql, QString path)
    : m_query(database), m_path(std::move(path)) {
    m_query.setForwardOnly(true);
    m_isPrepared = m_query.prepare(sql);
}

Statement& Statement::add(const QVariant& value) {
    m_query.bindValue(m_bound++, value);
    return *this;
}

Statement& Statement::bind(double number) {
    if (!std::isfinite(number) && !m_problem) m_problem = error("value_not_finite");
    return add(number);
}

Statement& Statement::bind(std::int64_t number) {
    return add(QVariant::fromValue<qlonglong>(number));
}

Statement& Statement::bind(const std::string& text) {
    return bind(QString::fromStdString(text));
}

Statement& Statement::bind(const QString& text) {
    // A null string would be stored as NULL; an empty text is a text.
    return add(text.isNull() ? QStringLiteral("") : text);
}

Statement& Statement::bind(const Cell& cell) {
    return std::visit([this](const auto& value) -> Statement& { return bind(value); }, cell);
}

Statement& Statement::bind(const std::optional<Cell>& cell) {
    return cell ? bind(*cell) : bindNull();
}

Statement& Statement::bindNull() {
    return add(QVariant(QMetaType(QMetaType::Double)));
}

Outcome Statement::run() {
    m_bound = 0;
    if (m_problem) return *std::exchange(m_problem, std::nullopt);
    if (!m_isPrepared || !m_query.exec()) return storeProblem(m_query.lastError(), m_path);
    return Done{};
}

bool Statement::next() {
    return m_query.next();
}

Outcome Statement::outcome() const {
    if (m_query.lastError().isValid()) return storeProblem(m_query.lastError(), m_path);
    return Done{};
}

std::optional<Cell> Statement::cell(int column) const {
    const QVariant value = m_query.value(column);
    if (value.isNull()) return std::nullopt;
    if (value.typeId() == QMetaType::QString) return Cell(value.toString().toStdString());
    return Cell(value.toDouble());
}

}  // namespace bw
