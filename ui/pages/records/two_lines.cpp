// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/two_lines.h"

#include <QHeaderView>
#include <QPainter>
#include <QTextLayout>

#include "ui/kit/metrics.h"

namespace bw {

namespace {

/// A text as one or two lines that fit a width.
QStringList linesOf(const QString& text, const QFont& font, int width) {
    QTextLayout layout(text, font);
    layout.beginLayout();
    QTextLine first = layout.createLine();
    if (first.isValid()) first.setLineWidth(width);
    layout.endLayout();
    if (!first.isValid() || first.textLength() >= text.size()) return {text};
    const QFontMetrics metrics(font);
    return {text.left(first.textLength()).trimmed(),
            metrics.elidedText(text.mid(first.textLength()), Qt::ElideRight, width)};
}

}  // namespace

QString tableText(const QAbstractItemModel& model) {
    QString text;
    for (int row = -1; row < model.rowCount(); ++row) {
        QStringList cells;
        for (int i = 0; i < model.columnCount(); ++i)
            cells << (row < 0 ? model.headerData(i, Qt::Horizontal) : model.index(row, i).data())
                         .toString();
        text += cells.join(u'\t') + u'\n';
    }
    return text;
}

void TwoLines::putInto(DataTable& table) {
    table.setItemDelegate(new TwoLines(&table));
    table.verticalHeader()->setDefaultSectionSize(px(42));
}

void TwoLines::paint(QPainter* painter, const QStyleOptionViewItem& option,
                     const QModelIndex& index) const {
    painter->save();
    paintGround(painter, option, index);
    const QFont font = textFont(TextSize::Body);
    painter->setFont(font);
    painter->setPen(color(index.data(QuietRole).toBool() ? Role::Quiet : Role::Ink));
    const QRect inner = option.rect.adjusted(px(6), px(3), -px(6), -px(4));
    const QStringList lines = linesOf(index.data().toString(), font, inner.width());
    const int height = painter->fontMetrics().height();
    int top = inner.center().y() - height * static_cast<int>(lines.size()) / 2 + 1;
    for (const QString& line : lines) {
        const QRect at(inner.left(), top, inner.width(), height);
        painter->drawText(at, Qt::AlignLeft | Qt::AlignVCenter,
                          painter->fontMetrics().elidedText(line, Qt::ElideRight, at.width()));
        top += height;
    }
    painter->setRenderHint(QPainter::Antialiasing, false);
    paintFocus(painter, option);
    painter->restore();
}

}  // namespace bw
