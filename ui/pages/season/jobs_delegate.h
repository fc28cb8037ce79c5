// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/data_table.h"

namespace bw {

/// Paints the cells of the jobs table (chips, verdict with its mark, problem marks) and makes the
/// fields in which they are typed.
class JobsDelegate : public TableDelegate {
    Q_OBJECT

  public:
    using TableDelegate::TableDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;

  private:
    QWidget* nozzleEditor(QWidget* parent, const QModelIndex& index) const;
};

}  // namespace bw
