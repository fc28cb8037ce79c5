// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/matrix_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/season/matrix_model.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kColumn = 70;

/// Chip of the size and what kind of nozzle it is.
class NozzleHead : public QHeaderView {
  public:
    explicit NozzleHead(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
        setSectionsClickable(false);
        setHighlightSections(false);
        setMinimumHeight(px(60));
        setDefaultSectionSize(px(kColumn));
        setMinimumSectionSize(px(kColumn));
    }

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override {
        painter->fillRect(rect, color(Role::Sunken));
        painter->fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), color(Role::Line));
        painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), color(Role::Edge));
        const auto* matrix = static_cast<const MatrixModel*>(model());
        const StoredNozzle* stored = matrix->nozzleAt(section);
        if (!stored) return;
        const Nozzle& nozzle = stored->nozzle;
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        const double middle = QRectF(rect).center().x();
        const bool hasChip = !nozzle.sizeCode.empty();
        if (hasChip)
            paintNozzleChip(*painter, QPointF(middle, rect.top() + px(15)), qs(nozzle.sizeCode));
        painter->setFont(textFont(TextSize::Small));
        painter->setPen(color(Role::Ink));
        const QString word = qs(nozzle.family.empty() ? nozzle.name : nozzle.family);
        const int top = hasChip ? px(27) : px(4);
        const QRect lines(rect.left() + px(2), rect.top() + top, rect.width() - px(4),
                          rect.height() - top - px(2));
        painter->setClipRect(lines);
        painter->drawText(
            lines, static_cast<int>(Qt::AlignHCenter | Qt::AlignVCenter) | Qt::TextWordWrap, word);
        painter->restore();
    }
};

class MatrixDelegate : public TableDelegate {
  public:
    using TableDelegate::TableDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        painter->save();
        paintGround(painter, option, index);
        const auto* matrix = static_cast<const MatrixModel*>(index.model());
        if (const auto cell = matrix->cellAt(index)) paintCell(*painter, option.rect, *cell);
        painter->setRenderHint(QPainter::Antialiasing, false);
        paintFocus(painter, option);
        painter->restore();
    }

  private:
    static Role roleOf(const MatrixCell& cell) {
        if (cell.isUnchecked) return Role::Unchecked;
        switch (cell.span.state) {
            case SpanState::All:
                return Role::Ok;
            case SpanState::UsualOnly:
                return Role::Limit;
            default:
                return Role::Quiet;
        }
    }

    static void paintCell(QPainter& painter, const QRect& rect, const MatrixCell& cell) {
        const QRectF box = QRectF(rect).adjusted(0, 0, -1, -1);
        if (cell.isBest) painter.fillRect(box, color(Role::Raised));
        const double words = px(13);
        const QRectF bar = box.adjusted(px(1), px(1), -px(1), -words);
        if (cell.span.fast > 0) paintSpanThumb(painter, bar, cell.span, theme().look());
        painter.setFont(textFont(TextSize::Small, cell.isBest));
        painter.setPen(color(roleOf(cell)));
        const QRectF line(box.left(), box.bottom() - words - px(1), box.width(), words);
        painter.drawText(line, Qt::AlignCenter,
                         painter.fontMetrics().elidedText(cell.word, Qt::ElideRight,
                                                          static_cast<int>(line.width())));
        if (!cell.isBest) return;
        painter.setPen(QPen(color(Role::Accent), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box.adjusted(1, 1, -1, -1));
    }
};

bool isEnter(int key) {
    return key == Qt::Key_Return || key == Qt::Key_Enter;
}

}  // namespace

MatrixView::MatrixView(QWidget* parent) : DataTable(parent) {
    setObjectName(u"season.matrix.table"_s);
    setAccessibleName(tr("Jobs and nozzles: what holds"));
    setHorizontalHeader(new NozzleHead(this));
    setItemDelegate(new MatrixDelegate(this));
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::NoSelection);
    connect(this, &QAbstractItemView::doubleClicked, this, &MatrixView::openAsked);
}

int MatrixView::neededWidth() const {
    return model() ? model()->columnCount() * px(kColumn) + px(14) : 0;
}

void MatrixView::setMatrix(MatrixModel* model) {
    setModel(model);
}

void MatrixView::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    if (plain && isEnter(event->key()) && currentIndex().isValid())
        Q_EMIT openAsked(currentIndex());
    else if (plain && event->key() == Qt::Key_Left && currentIndex().column() == 0)
        Q_EMIT leftAtLeft();
    else
        DataTable::keyPressEvent(event);
}

void MatrixView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    DataTable::currentChanged(current, previous);
    Q_EMIT cellChanged();
}

}  // namespace bw
