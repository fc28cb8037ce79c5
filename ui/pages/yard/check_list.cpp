// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/check_list.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

enum LineRole { IdRole = Qt::UserRole, DetailRole, StateRole, MarkRole, HereRole };

/// One text of a line: its role, size and words.
struct Piece {
    QString text;
    Role role;
    TextSize size;
    bool isBold;
};

class LineDelegate : public QStyledItemDelegate {
  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    static QVector<Piece> pieces(const QModelIndex& index);
    static QString iconFor(const QModelIndex& index);
};

int side() {
    return px(14);
}
int iconRoom() {
    return px(20);
}

QVector<Piece> LineDelegate::pieces(const QModelIndex& index) {
    const bool isHere = index.data(HereRole).toBool();
    const auto mark = static_cast<CheckLine::Mark>(index.data(MarkRole).toInt());
    const Role quiet = isHere ? Role::Quiet : Role::Disabled;
    QVector<Piece> all{{index.data(Qt::DisplayRole).toString(), isHere ? Role::Ink : Role::Disabled,
                        TextSize::Body, true}};
    const QString detail = index.data(DetailRole).toString();
    if (!detail.isEmpty()) all.append({detail, quiet, TextSize::Small, false});
    const QString state = index.data(StateRole).toString();
    const Role role = mark == CheckLine::Mark::Done    ? Role::Ok
                      : mark == CheckLine::Mark::Begun ? Role::Caution
                      : mark == CheckLine::Mark::Best  ? Role::Accent
                                                       : quiet;
    if (!state.isEmpty()) all.append({state, role, TextSize::Small, mark == CheckLine::Mark::Best});
    return all;
}

QString LineDelegate::iconFor(const QModelIndex& index) {
    switch (static_cast<CheckLine::Mark>(index.data(MarkRole).toInt())) {
        case CheckLine::Mark::Done:
            return u"check"_s;
        case CheckLine::Mark::Begun:
            return u"clock"_s;
        case CheckLine::Mark::Best:
            return u"right"_s;
        default:
            return {};
    }
}

void LineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const bool isTaken = option.state & QStyle::State_Selected;
    painter->save();
    painter->fillRect(option.rect, color(isTaken ? Role::Raised : Role::Surface));
    if (isTaken)
        painter->fillRect(option.rect.left(), option.rect.top(), px(4), option.rect.height(),
                          color(Role::Accent));
    QRect box = option.rect.adjusted(side(), px(5), -px(8), -px(5));
    const auto all = pieces(index);
    for (qsizetype i = 0; i < all.size(); ++i) {
        const Piece& piece = all[i];
        painter->setFont(textFont(piece.size, piece.isBold));
        painter->setPen(color(piece.role));
        QRect line = box;
        const QString icon = i == all.size() - 1 && i > 0 ? iconFor(index) : QString();
        if (!icon.isEmpty()) {
            const double edge = px(14);
            paintIcon(*painter, QRectF(box.left(), box.top(), edge, edge), icon, color(piece.role));
            line.setLeft(box.left() + iconRoom());
        }
        QRect used;
        painter->drawText(line, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, piece.text, &used);
        box.setTop(used.bottom() + 1 + px(1));
    }
    painter->setPen(color(Role::Line));
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(QPen(color(Role::Focus), 2));
        painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
}

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* list = qobject_cast<const QListWidget*>(option.widget);
    const int whole = list ? list->viewport()->width() : px(220);
    int height = px(10);
    const auto all = pieces(index);
    for (qsizetype i = 0; i < all.size(); ++i) {
        const bool hasIcon = i == all.size() - 1 && i > 0 && !iconFor(index).isEmpty();
        const int width = whole - side() - px(8) - (hasIcon ? iconRoom() : 0);
        const QFontMetrics metrics(textFont(all[i].size, all[i].isBold));
        height += metrics.boundingRect(0, 0, width, 10000, Qt::TextWordWrap, all[i].text).height();
        height += px(1);
    }
    return {whole, height};
}

}  // namespace

CheckList::CheckList(QWidget* parent) : QListWidget(parent) {
    setItemDelegate(new LineDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setMouseTracking(true);
    QPalette ground = palette();
    ground.setColor(QPalette::Base, color(Role::Surface));
    setPalette(ground);
    connect(&theme(), &Theme::changed, this, [this] {
        QPalette next = palette();
        next.setColor(QPalette::Base, color(Role::Surface));
        setPalette(next);
        viewport()->update();
    });
    connect(this, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* now) {
        if (now) Q_EMIT taken(now->data(IdRole).toString());
    });
}

void CheckList::setLines(const QVector<CheckLine>& lines) {
    if (lines == m_lines) return;
    const bool isSameList =
        std::equal(lines.begin(), lines.end(), m_lines.begin(), m_lines.end(),
                   [](const CheckLine& a, const CheckLine& b) { return a.id == b.id; });
    m_lines = lines;
    const QString before = inHand();
    const QSignalBlocker quiet(this);
    if (!isSameList) clear();
    for (int i = 0; i < lines.size(); ++i) {
        const CheckLine& line = lines[i];
        auto* entry = isSameList ? item(i) : new QListWidgetItem(this);
        entry->setText(line.title);
        entry->setData(IdRole, line.id);
        entry->setData(DetailRole, line.detail);
        entry->setData(StateRole, line.state);
        entry->setData(MarkRole, static_cast<int>(line.mark));
        entry->setData(HereRole, line.isHere);
        entry->setData(Qt::AccessibleTextRole,
                       QStringList{line.title, line.detail, line.state}.join(u". "_s));
        entry->setToolTip(line.isHere ? QString() : line.state);
        entry->setFlags(line.isHere ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags);
    }
    setInHand(before);
    doItemsLayout();
}

void CheckList::setInHand(const QString& id) {
    const QSignalBlocker quiet(this);
    for (int i = 0; i < count(); ++i) {
        if (item(i)->data(IdRole).toString() == id) return setCurrentRow(i);
    }
}

QString CheckList::inHand() const {
    return currentItem() ? currentItem()->data(IdRole).toString() : QString();
}

void CheckList::resizeEvent(QResizeEvent* event) {
    QListWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) doItemsLayout();
}

void CheckList::keyPressEvent(QKeyEvent* event) {
    // Enter goes into what is in hand.
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (currentItem()) Q_EMIT itemActivated(currentItem());
        return;
    }
    if (event->key() == Qt::Key_End) {
        // The last that fits; those that do not stand below it.
        for (int i = count() - 1; i >= 0; --i) {
            if (item(i)->flags() & Qt::ItemIsEnabled) return setCurrentRow(i);
        }
    }
    QListWidget::keyPressEvent(event);
}

}  // namespace bw
