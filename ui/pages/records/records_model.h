// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <optional>

#include "ui/pages/records/record_line.h"

namespace bw {

/// The records as rows.
class RecordsModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { When, Machine, What, Outcome, State, kColumns };
    using QAbstractTableModel::QAbstractTableModel;
    void setLines(std::vector<RecordLine> lines);
    const RecordLine& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }
    const std::vector<RecordLine>& lines() const { return m_lines; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString text(const RecordLine& line, int column) const;
    std::vector<RecordLine> m_lines;
};

/// What of them is shown, in the order asked for.
class RecordsFilter : public QSortFilterProxyModel {
    Q_OBJECT

  public:
    explicit RecordsFilter(RecordsModel& records, QObject* parent = nullptr);
    struct Wanted {
        QString machine;  ///< empty: all
        QString year;
        std::optional<LineKind> kind;
        QString text;  ///< every word, and every "part in quotes", must be found
    };
    void setWanted(Wanted wanted);
    /// Null beyond the end.
    const RecordLine* lineAt(int row) const;
    int rowOf(bool isCase, RecordId id) const;

  protected:
    bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

  private:
    RecordsModel& m_records;
    Wanted m_wanted;
    QStringList m_words;
};

}  // namespace bw
