// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>
#include <optional>
#include <vector>

#include "core/model/season.h"
#include "core/units/format.h"
#include "ui/kit/data_table.h"

namespace bw {

/// The nozzle list: own nozzles first, then the sizes of the standard, each under a group row.
class NozzlesModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { Name, FlowColumn, AtColumn, Range, Droplets, Drift, Price, ColumnCount };
    /// The nozzle's size code and droplet categories, for the delegate.
    enum Role { SizeCodeRole = Qt::UserRole + 200, CategoriesRole, UncheckedRole };

    using QAbstractTableModel::QAbstractTableModel;
    /// Shows these own nozzles and built-in sizes whose name or family holds `filter`.
    void setContent(const std::vector<StoredNozzle>& own, const QString& filter,
                    const NumberStyle& style);
    /// The nozzle of a row; nothing for a group row. Own nozzles carry their id, sizes 0.
    const StoredNozzle* nozzleAt(int row) const;
    /// Row of an own nozzle; -1 if it is not shown.
    int rowOf(RecordId id) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    struct Row {
        QString group;
        QString groupNote;
        std::optional<StoredNozzle> nozzle;
    };
    void addGroup(const QString& title, const QString& note, std::vector<StoredNozzle> nozzles,
                  const QString& filter);
    QString cellText(const Nozzle& nozzle, int column) const;

    std::vector<Row> m_rows;
    NumberStyle m_style;
};

/// Paints the size cap before the name, and droplet chips.
class NozzleDelegate : public TableDelegate {
    Q_OBJECT

  public:
    using TableDelegate::TableDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

/// Range of pressure in words: "1 to 6 bar", "from 1 bar", "not checked".
QString pressureRangeText(const Nozzle& nozzle, const NumberStyle& style);

}  // namespace bw
