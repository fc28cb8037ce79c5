// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>

#include "ui/pages/yard/catch_chart.h"

namespace bw {

/// The catch test as a table, a row for each nozzle of the test or caught beside it.
class CatchTable : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit CatchTable(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
    void setView(const CatchChart::View& view);
    int nozzleAt(int row) const;
    int rowOf(int nozzle) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    enum Column { Number, Section, Caught, FlowThere, OfNew, OfMean, Verdict, kColumns };
    struct Row {
        int nozzle = 0;
        std::optional<CaughtNozzle> caught;
        QString volume;
        int section = 0;  ///< from 1; 0: none
    };
    QString text(const Row& row, int column) const;
    QString caughtText(int nozzle) const;

    CatchChart::View m_view;
    std::vector<Row> m_rows;
};

}  // namespace bw
