// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>
#include <QTableView>

namespace bw {

/// Roles of a model beside Qt's own.
enum TableRole {
    SortRole = Qt::UserRole + 100,  ///< the raw value (double or text) by which rows are sorted
    QuietRole,                      ///< bool: shown in the quiet role
    GroupRole,  ///< bool: a group row; its text spans the row, with Qt::UserRole as quiet text
};

/// Draws cells as the house does: hairlines, focus cell with a 2 px frame and fill handle.
class TableDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  protected:
    /// Draws over a cell what all cells share: grid lines, group ground, focus frame. For own
    /// delegates.
    static void paintGround(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index);
    static void paintFocus(QPainter* painter, const QStyleOptionViewItem& option);
};

/// A table in the house's look: sunken head, hairlines, rows of 31 px, copy of the selection as
/// tab-separated text (Ctrl+C). Paste (Ctrl+V) and Delete are signals: the page owns the data.
class DataTable : public QTableView {
    Q_OBJECT

  public:
    explicit DataTable(QWidget* parent = nullptr);
    /// The selected cells as tab-separated text; all cells if fewer than two are selected and
    /// `all`.
    QString selectionText(bool all = false) const;
    void setModel(QAbstractItemModel* model) override;
    /// Spans the group rows over all columns.
    void spanGroups();

  Q_SIGNALS:
    void pasted(const QString& text);
    void deletePressed();
    void fillDownPressed();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
};

}  // namespace bw
