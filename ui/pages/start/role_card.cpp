// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/start/role_card.h"

#include <QPainter>
#include <QPainterPath>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/hatch.h"
#include "ui/kit/metrics.h"
#include "ui/kit/span_bar.h"

namespace bw {

namespace {

/// Three sets on one scale: all speeds, the usual one only, neither.
void paintPlan(QPainter& painter, const QRectF& box) {
    Span span;
    span.slow = 0.36;
    span.usual = 0.5;
    span.fast = 0.64;
    const SpanState states[] = {SpanState::All, SpanState::UsualOnly, SpanState::Neither};
    const double lows[] = {0.28, 0.44, 0.72}, highs[] = {0.74, 0.95, 0.93};
    const double row = box.height() / 3;
    for (int i = 0; i < 3; ++i) {
        span.state = states[i];
        span.low = lows[i];
        span.high = highs[i];
        paintSpanThumb(painter, QRectF(box.left(), box.top() + i * row, box.width(), row - px(6)),
                       span, theme().look());
    }
}

/// The walked way of a case, with the branches that were not.
void paintFix(QPainter& painter, const QRectF& box) {
    const double y = box.top() + px(18);
    const double step = box.width() / 4.5;
    painter.setPen(QPen(color(Role::Accent), px(5)));
    painter.drawLine(QPointF(box.left() + px(8), y), QPointF(box.left() + px(8) + 4 * step, y));
    for (int i = 0; i < 5; ++i) {
        const QPointF at(box.left() + px(8) + i * step, y);
        painter.setPen(QPen(color(Role::Edge), px(1.5), Qt::DotLine));
        if (i < 4)
            painter.drawPolyline(
                QPolygonF({at, at + QPointF(0, px(34)), at + QPointF(step * 0.4, px(34))}));
        painter.setPen(QPen(color(Role::Raised), px(2)));
        painter.setBrush(color(Role::Accent));
        if (i < 4) painter.drawEllipse(at, px(8), px(8));
        painter.setPen(QPen(color(Role::Accent), px(3)));
        painter.setBrush(color(Role::Raised));
        if (i == 4) painter.drawRect(QRectF(at.x() - px(10), at.y() - px(10), px(20), px(20)));
    }
}

/// The lit window: a curve between two posts, veiled beyond.
void paintTeach(QPainter& painter, const QRectF& box) {
    const double low = box.left() + box.width() * 0.24, high = box.left() + box.width() * 0.76;
    painter.fillRect(box, color(Role::Surface));
    painter.fillRect(QRectF(low, box.top(), high - low, box.height()), color(Role::AccentTint));
    paintHatch(painter, QRectF(box.left(), box.bottom() - px(14), box.width(), px(14)),
               Hatch::Rising, color(Role::Limit), color(Role::LimitTint));
    QPainterPath curve;
    for (int i = 0; i <= 40; ++i) {
        const double part = i / 40.0;
        const QPointF at(box.left() + part * box.width(),
                         box.bottom() - part * part * box.height());
        if (i == 0)
            curve.moveTo(at);
        else
            curve.lineTo(at);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(color(Role::Accent), px(3)));
    painter.drawPath(curve);
    painter.setPen(QPen(color(Role::Ink), px(2)));
    painter.drawLine(QPointF(low, box.top()), QPointF(low, box.bottom()));
    painter.drawLine(QPointF(high, box.top()), QPointF(high, box.bottom()));
}

}  // namespace

RolePicture::RolePicture(Kind kind, QWidget* parent) : QWidget(parent), m_kind(kind) {
    setFixedHeight(px(76));
}

void RolePicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(0, px(4), 0, -px(4));
    switch (m_kind) {
        case Kind::Plan:
            paintPlan(painter, box);
            break;
        case Kind::Fix:
            paintFix(painter, box);
            break;
        case Kind::Teach:
            paintTeach(painter, box);
            break;
    }
}

RoleCard::RoleCard(RolePicture::Kind kind, const QString& title, const QString& words,
                   QWidget* parent)
    : QWidget(parent),
      m_column(new QVBoxLayout(this)),
      m_state(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    m_column->setContentsMargins(px(18), px(16), px(18), px(18));
    m_column->setSpacing(px(8));
    m_column->addWidget(new TextLabel(title, TextSize::Verdict, Role::Ink, true));
    m_column->addWidget(new RolePicture(kind));
    m_column->addWidget((new TextLabel(words))->wrapped());
    m_column->addWidget(m_state->wrapped());
    m_column->addSpacing(px(4));
    m_column->addStretch(1);
    setAccessibleName(title);
}

Button* RoleCard::addDeed(const QString& text, const QString& icon, const QKeySequence& shownKey,
                          bool isFirst) {
    auto* button = new Button(text, icon, isFirst ? Button::Kind::Primary : Button::Kind::Plain);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    if (!shownKey.isEmpty()) button->setKey(shownKey, false);
    // Whatever height the row of cards has, the buttons follow the words.
    m_column->insertWidget(m_column->count() - 1, button);
    return button;
}

/// Wrapped words ask for height only once their width is known; the page scrolls rather than let
/// them run over the picture.
void RoleCard::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    setMinimumHeight(m_column->totalHeightForWidth(width()));
}

void RoleCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(color(Role::Line), 1));
    painter.setBrush(color(Role::Raised));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.fillRect(QRectF(0, 0, width(), px(3)), color(Role::Accent));
}

}  // namespace bw
