// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/data_table.h"

namespace bw {

class MatrixModel;

/// The matrix of jobs and nozzles: a thumb of the speed window and a word in each cell, the nozzle
/// as a chip in the head.
class MatrixView : public DataTable {
    Q_OBJECT

  public:
    explicit MatrixView(QWidget* parent = nullptr);
    void setMatrix(MatrixModel* model);
    /// The width at which all nozzles are seen.
    int neededWidth() const;

  Q_SIGNALS:
    /// Enter or a double click on a cell.
    void openAsked(const QModelIndex& index);
    /// The left arrow at the first column.
    void leftAtLeft();
    void cellChanged();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
};

}  // namespace bw
