// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/data_table.h"

namespace bw {

/// A whole table with its heading, tab-separated, as it is shown now.
QString tableText(const QAbstractItemModel& model);

/// Cells of up to two lines; what is longer than that ends in dots.
class TwoLines : public TableDelegate {
    Q_OBJECT

  public:
    /// Gives a table rows of that height and puts itself in.
    static void putInto(DataTable& table);
    using TableDelegate::TableDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

}  // namespace bw
