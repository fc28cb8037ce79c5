// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/data_table.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

#include "ui/kit/metrics.h"

namespace bw {
namespace {

class TableHead : public QHeaderView {
  public:
    explicit TableHead(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
        setSectionsClickable(true);
        setHighlightSections(false);
        setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        setMinimumHeight(px(28));
    }

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override {
        painter->fillRect(rect, color(Role::Sunken));
        painter->fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), color(Role::Line));
        painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), color(Role::Edge));
        painter->setFont(textFont(TextSize::Small, true));
        painter->setPen(color(Role::Ink));
        const QVariant own = model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole);
        const auto alignment = own.isValid() ? Qt::Alignment(own.toInt()) : defaultAlignment();
        painter->drawText(rect.adjusted(px(6), 0, -px(6), 0),
                          static_cast<int>(alignment) | Qt::TextWordWrap,
                          model()->headerData(section, Qt::Horizontal).toString());
    }
};

}  // namespace

QSize TableDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    return {QStyledItemDelegate::sizeHint(option, index).width() + px(8), px(31)};
}

void TableDelegate::paintGround(QPainter* painter, const QStyleOptionViewItem& option,
                                const QModelIndex& index) {
    const QRect r = option.rect;
    const bool group = index.data(GroupRole).toBool();
    const bool selected = option.state & QStyle::State_Selected;
    painter->fillRect(r, color(group ? Role::Sunken : selected ? Role::AccentTint : Role::Surface));
    painter->fillRect(QRect(r.left(), r.bottom(), r.width(), 1), color(Role::Line));
    if (!group) painter->fillRect(QRect(r.right(), r.top(), 1, r.height()), color(Role::Line));
}

void TableDelegate::paintFocus(QPainter* painter, const QStyleOptionViewItem& option) {
    if (!(option.state & QStyle::State_HasFocus)) return;
    const QRectF box = QRectF(option.rect).adjusted(1, 1, -1, -1);
    painter->setPen(QPen(color(Role::Focus), 2));
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(box);
    painter->fillRect(QRectF(box.right() - 4, box.bottom() - 4, 5, 5), color(Role::Focus));
}

void TableDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    painter->save();
    paintGround(painter, option, index);
    const bool group = index.data(GroupRole).toBool();
    const QVariant own = index.data(Qt::ForegroundRole);
    const Role role = index.data(QuietRole).toBool() ? Role::Quiet : Role::Ink;
    const QVariant font = index.data(Qt::FontRole);
    painter->setFont(group            ? textFont(TextSize::Body, true)
                     : font.isValid() ? font.value<QFont>()
                                      : textFont(TextSize::Body));
    painter->setPen(own.isValid() ? own.value<QColor>() : color(role));
    const QVariant side = index.data(Qt::TextAlignmentRole);
    const auto alignment = side.isValid() ? Qt::Alignment(side.toInt())
                                          : Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter);
    const QRect inner = option.rect.adjusted(px(6), 0, -px(6), 0);
    const QString text = index.data(Qt::DisplayRole).toString();
    painter->drawText(inner, static_cast<int>(alignment),
                      painter->fontMetrics().elidedText(text, Qt::ElideRight, inner.width()));
    if (group) {
        const int used = painter->fontMetrics().horizontalAdvance(text) + px(12);
        painter->setFont(textFont(TextSize::Small));
        painter->setPen(color(Role::Quiet));
        painter->drawText(inner.adjusted(used, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                          index.data(Qt::UserRole).toString());
    }
    painter->setRenderHint(QPainter::Antialiasing, false);
    paintFocus(painter, option);
    painter->restore();
}

DataTable::DataTable(QWidget* parent) : QTableView(parent) {
    setHorizontalHeader(new TableHead(this));
    setItemDelegate(new TableDelegate(this));
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    viewport()->setBackgroundRole(QPalette::Window);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(px(31));
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(true);
    connect(&theme(), &Theme::changed, this, [this] {
        viewport()->update();
        horizontalHeader()->viewport()->update();
    });
}

void DataTable::setModel(QAbstractItemModel* model) {
    QTableView::setModel(model);
    if (!model) return;
    connect(model, &QAbstractItemModel::modelReset, this, &DataTable::spanGroups);
    connect(model, &QAbstractItemModel::rowsInserted, this, &DataTable::spanGroups);
    connect(model, &QAbstractItemModel::rowsRemoved, this, &DataTable::spanGroups);
    spanGroups();
}

void DataTable::spanGroups() {
    clearSpans();
    if (!model() || model()->columnCount() < 2) return;
    for (int row = 0; row < model()->rowCount(); ++row) {
        if (model()->index(row, 0).data(GroupRole).toBool())
            setSpan(row, 0, 1, model()->columnCount());
    }
}

QString DataTable::selectionText(bool all) const {
    if (!model()) return {};
    QModelIndexList cells = selectionModel()->selectedIndexes();
    if (cells.size() < 2 && all) {
        cells.clear();
        for (int r = 0; r < model()->rowCount(); ++r) {
            for (int c = 0; c < model()->columnCount(); ++c) cells.append(model()->index(r, c));
        }
    }
    std::sort(cells.begin(), cells.end(), [](const QModelIndex& a, const QModelIndex& b) {
        return a.row() != b.row() ? a.row() < b.row() : a.column() < b.column();
    });
    QString text;
    for (qsizetype i = 0; i < cells.size(); ++i) {
        if (i > 0) text += cells[i].row() == cells[i - 1].row() ? QChar(u'\t') : QChar(u'\n');
        text += cells[i].data(Qt::DisplayRole).toString();
    }
    return text.isEmpty() ? text : text + QChar(u'\n');
}

void DataTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        QApplication::clipboard()->setText(selectionText());
    } else if (event->matches(QKeySequence::Paste)) {
        Q_EMIT pasted(QApplication::clipboard()->text());
    } else if (event->key() == Qt::Key_Delete && state() != QAbstractItemView::EditingState) {
        Q_EMIT deletePressed();
    } else if (event->key() == Qt::Key_D && event->modifiers() == Qt::ControlModifier) {
        Q_EMIT fillDownPressed();
    } else {
        QTableView::keyPressEvent(event);
    }
}

}  // namespace bw
