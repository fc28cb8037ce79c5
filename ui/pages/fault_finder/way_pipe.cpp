// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/way_pipe.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "ui/kit/metrics.h"
#include "ui/kit/palette.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// The first two lines of a text in a box; the rest is elided (the tool tip has it all).
void drawTwoLines(QPainter& painter, const QRect& box, const QString& text) {
    const QFontMetrics metrics(painter.font());
    QString first;
    QStringList words = text.split(u' ');
    while (
        !words.isEmpty() &&
        (first.isEmpty() || metrics.horizontalAdvance(first + u' ' + words.first()) <= box.width()))
        first += (first.isEmpty() ? QString() : u" "_s) + words.takeFirst();
    painter.drawText(QRect(box.left(), box.top(), box.width(), metrics.height()), Qt::AlignLeft,
                     metrics.elidedText(first, Qt::ElideRight, box.width()));
    if (words.isEmpty()) return;
    painter.drawText(QRect(box.left(), box.top() + metrics.height(), box.width(), metrics.height()),
                     Qt::AlignLeft,
                     metrics.elidedText(words.join(u' '), Qt::ElideRight, box.width()));
}

constexpr int kWidth = 128;
constexpr int kPipeAt = 28;
constexpr int kHeight = 98;
constexpr int kDiscAt = 22;

}  // namespace

WayNode::WayNode(const WayStop& stop, bool isFirst, bool isLast, QWidget* parent)
    : QAbstractButton(parent), m_stop(stop), m_isFirst(isFirst), m_isLast(isLast) {
    setObjectName(u"finder.way."_s + (stop.isInHand ? u"inHand"_s : stop.id));
    setFocusPolicy(stop.isInHand ? Qt::NoFocus : Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    QString all = stop.title;
    if (!stop.answer.isEmpty()) all += u": "_s + stop.answer;
    setText(all);
    setAccessibleName(all);
    if (!stop.isInHand) setToolTip(tr("%1\nClick or Enter: answer it again").arg(all));
}

QSize WayNode::sizeHint() const {
    return {px(kWidth), px(kHeight)};
}

void WayNode::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return click();
    QAbstractButton::keyPressEvent(event);
}

void WayNode::paintPipe(QPainter& painter, double y) {
    const double x = px(kDiscAt);
    const QPen pipe(color(Role::Accent), px(4), Qt::SolidLine, Qt::FlatCap);
    painter.setPen(pipe);
    if (!m_isFirst) painter.drawLine(QPointF(0, y), QPointF(x, y));
    if (!m_isLast) painter.drawLine(QPointF(x, y), QPointF(width(), y));
    if (!m_stop.other.isEmpty()) {
        painter.setPen(QPen(color(Role::Edge), 1, Qt::DashLine));
        const double low = px(74);
        painter.drawLine(QPointF(x, y + px(7)), QPointF(x, low));
        painter.drawLine(QPointF(x, low), QPointF(x + px(9), low));
    }
    if (m_stop.isInHand) {
        painter.setPen(QPen(color(Role::Accent), px(3)));
        painter.setBrush(color(Role::Raised));
        painter.drawRect(QRectF(x - px(9), y - px(9), px(18), px(18)));
        painter.setPen(Qt::NoPen);
        painter.setBrush(color(Role::Accent));
        painter.drawEllipse(QPointF(x, y), px(3.2), px(3.2));
        return;
    }
    painter.setPen(QPen(color(Role::Surface), px(2)));
    painter.setBrush(color(Role::Accent));
    painter.drawEllipse(QPointF(x, y), px(7), px(7));
}

void WayNode::paintWords(QPainter& painter, double y) {
    const int left = px(12);
    painter.setFont(textFont(TextSize::Small, m_stop.isInHand));
    painter.setPen(color(Role::Ink));
    painter.drawText(
        QRect(left, 0, width() - left - px(4), px(18)), Qt::AlignVCenter,
        painter.fontMetrics().elidedText(m_stop.title, Qt::ElideRight, width() - left - px(4)));
    const int side = px(kDiscAt) + px(12);
    painter.setFont(textFont(TextSize::Small, true));
    painter.setPen(color(Role::Accent));
    drawTwoLines(painter, QRect(side, static_cast<int>(y) + px(8), width() - side - px(4), px(30)),
                 m_stop.answer);
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Quiet));
    drawTwoLines(painter, QRect(side, px(67), width() - side - px(4), px(30)), m_stop.other);
}

void WayNode::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (underMouse() && !m_stop.isInHand) painter.fillRect(rect(), color(Role::AccentTint));
    painter.setRenderHint(QPainter::Antialiasing);
    paintPipe(painter, px(kPipeAt));
    paintWords(painter, px(kPipeAt));
    if (!hasFocus()) return;
    painter.setPen(QPen(color(Role::Focus), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 3, 3);
}

WayPipe::WayPipe(QWidget* parent)
    : QWidget(parent), m_scroll(new QScrollArea), m_row(new QHBoxLayout) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(14), px(5), px(6), px(2));
    column->setSpacing(px(2));
    column->addWidget(new TextLabel(tr("The way so far"), TextSize::Body, Role::Ink, true));
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFixedHeight(px(kHeight) + px(12));
    auto* inner = new RolePanel(Role::Surface);
    inner->setLayout(m_row);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(0);
    m_row->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_scroll->setWidget(inner);
    // The station in hand stays in sight, however long the way.
    QScrollBar* bar = m_scroll->horizontalScrollBar();
    connect(bar, &QScrollBar::rangeChanged, bar, [bar](int, int most) { bar->setValue(most); });
    column->addWidget(m_scroll);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void WayPipe::setStops(const std::vector<WayStop>& stops) {
    while (auto* item = m_row->takeAt(0)) {
        if (item->widget()) {
            item->widget()->hide();
            item->widget()->deleteLater();
        }
        delete item;
    }
    for (std::size_t i = 0; i < stops.size(); ++i) {
        auto* node = new WayNode(stops[i], i == 0, i + 1 == stops.size());
        m_row->addWidget(node);
        if (stops[i].isInHand) continue;
        connect(node, &QAbstractButton::clicked, this,
                [this, id = stops[i].id] { Q_EMIT stopChosen(id); });
    }
}

}  // namespace bw
