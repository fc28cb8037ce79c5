// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPersistentModelIndex>
#include <vector>

#include "ui/kit/data_table.h"
#include "ui/pages/season/job_cells.h"

namespace bw {

/// The jobs table as people know it from a spreadsheet: typing replaces a cell, F2 mends it, Enter
/// goes down, Tab to the right and on to the next job. Machine heads are passed over.
class JobsTable : public DataTable {
    Q_OBJECT

  public:
    explicit JobsTable(QWidget* parent = nullptr);
    void setModel(QAbstractItemModel* model) override;
    /// The typed columns on screen, in order.
    std::vector<JobColumn> shownColumns() const;
    /// The width at which no column is cut.
    int neededWidth() const;
    void fitColumns();
    /// Puts a cell in hand.
    void goToCell(int row, JobColumn column, bool edit);
    /// A job was made of what was typed on the new line: the cell in hand becomes that of the job.
    void followTyped(int row, JobColumn column);

  Q_SIGNALS:
    /// Enter or a double click on a verdict.
    void openAsked(const QModelIndex& index);
    void copyAsked();
    void pasteAsked();
    /// Esc: a refused text beside the cell is let go.
    void dropAsked(const QModelIndex& index);
    /// The right arrow at the last column.
    void leftAtRight();
    void cellChanged();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void resizeEvent(QResizeEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

  private:
    QModelIndex stepped(int step) const;
    void goDown();
    QPersistentModelIndex m_typed;
    bool m_isMoving = false;  ///< another cell is being put in hand, which closes the field
};

}  // namespace bw
