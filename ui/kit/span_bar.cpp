// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/span_bar.h"

#include <QPainter>
#include <cmath>

#include "ui/kit/hatch.h"
#include "ui/kit/icons.h"
#include "ui/kit/metrics.h"

namespace bw {
namespace {

double place(const QRectF& box, const Span& span, double value) {
    const double part = (value - span.from) / std::max(1e-12, span.to - span.from);
    return box.left() + std::clamp(part, 0.0, 1.0) * box.width();
}

/// Slow, usual, fast as a bracket with a notch for the usual speed.
void paintBracket(QPainter& painter, const QRectF& box, const Span& span, double top, double tick,
                  const QColor& ink, double pen) {
    const double slow = place(box, span, span.slow), usual = place(box, span, span.usual),
                 fast = place(box, span, span.fast);
    painter.setPen(QPen(ink, pen, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(slow - pen / 2, top), QPointF(fast + pen / 2, top));
    painter.drawLine(QPointF(slow, top), QPointF(slow, top + tick));
    painter.drawLine(QPointF(fast, top), QPointF(fast, top + tick));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPolygon(QPolygonF({QPointF(usual - tick, top), QPointF(usual + tick, top),
                                   QPointF(usual, top + tick * 1.2)}));
}

void paintBar(QPainter& painter, const QRectF& bar, SpanState state, Look look) {
    switch (state) {
        case SpanState::All:
        case SpanState::UsualOnly:
            painter.fillRect(bar, color(Role::Ok, look));
            break;
        case SpanState::NotChecked:
            paintHatch(painter, bar, Hatch::Dots, color(Role::Unchecked, look),
                       color(Role::UncheckedTint, look), 5.0, 0.9);
            break;
        case SpanState::Neither:
            painter.setPen(QPen(color(Role::Edge, look), 1));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(bar.adjusted(0.5, 0.5, -0.5, -0.5));
            break;
    }
}

void paintPosts(QPainter& painter, const QRectF& bar, const Span& span, double over, double pen,
                Look look) {
    painter.setPen(QPen(color(Role::Ink, look), pen, Qt::SolidLine, Qt::FlatCap));
    const auto post = [&](double x) {
        painter.drawLine(QPointF(x, bar.top() - over), QPointF(x, bar.bottom() + over));
    };
    if (span.low && *span.low > span.from) post(bar.left());
    if (span.high && *span.high < span.to) post(bar.right());
}

QRectF barBox(const QRectF& box, const Span& span, double top, double height) {
    const double left = place(box, span, span.low.value_or(span.from));
    const double right = place(box, span, span.high.value_or(span.to));
    return {left, top, std::max(0.0, right - left), height};
}

/// Figure and reason under one end of the bar, on the outer side where there is room.
void paintEnd(QPainter& painter, const QRectF& box, double x, double top, bool isLow,
              const QString& figure, const QString& reason, Look look) {
    const QFontMetricsF bold(textFont(TextSize::Body, true)), small(textFont(TextSize::Small));
    const Qt::Alignment side = isLow ? Qt::AlignRight : Qt::AlignLeft;
    const double pad = px(4);
    const auto line = [&](double width, double y, double height) {
        QRectF r(isLow ? x + pad - width : x - pad, y, width, height);
        if (r.left() < box.left() - px(30)) r.moveLeft(box.left() - px(30));
        if (r.right() > box.right() + px(30)) r.moveRight(box.right() + px(30));
        return r;
    };
    painter.setFont(textFont(TextSize::Body, true));
    painter.setPen(color(Role::Ink, look));
    painter.drawText(line(bold.horizontalAdvance(figure) + 1, top, bold.height()),
                     static_cast<int>(side), figure);
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Limit, look));
    painter.drawText(line(small.horizontalAdvance(reason) + 1, top + bold.height(), small.height()),
                     static_cast<int>(side), reason);
}

double widthOf(const QString& bold, const QString& small) {
    return std::max(QFontMetricsF(textFont(TextSize::Body, true)).horizontalAdvance(bold),
                    QFontMetricsF(textFont(TextSize::Small)).horizontalAdvance(small));
}

/// Left edge of the words on the bar: in its middle if they fit between those at the ends, else
/// beyond the high end's, else before the low end's; nothing where there is no room at all.
std::optional<double> middleLeft(const QRectF& box, const QRectF& bar, const Span& span) {
    const double width = widthOf(span.holds, span.spare), gap = px(10), pad = px(4);
    const bool ends = !span.lowFigure.isEmpty() || !span.highFigure.isEmpty();
    if (!ends || width + 2 * (pad + gap) <= bar.width()) return bar.center().x() - width / 2;
    const double after = bar.right() - pad + widthOf(span.highFigure, span.highReason) + 2 * gap;
    if (after + width <= box.right() + px(30)) return after;
    const double before = bar.left() + pad - widthOf(span.lowFigure, span.lowReason) - 2 * gap;
    if (before - width >= box.left() - px(30)) return before - width;
    return std::nullopt;
}

void paintMiddle(QPainter& painter, std::optional<double> left, double top, const Span& span,
                 Look look) {
    if (!left) return;
    const QFontMetricsF bold(textFont(TextSize::Body, true));
    const QRectF row(*left, top, widthOf(span.holds, span.spare) + 1, bold.height());
    painter.setFont(textFont(TextSize::Body, true));
    const Role role = span.state == SpanState::NotChecked ? Role::Unchecked
                      : span.state == SpanState::Neither  ? Role::Limit
                                                          : Role::Ok;
    painter.setPen(color(role, look));
    painter.drawText(row, Qt::AlignHCenter | Qt::AlignTop, span.holds);
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Quiet, look));
    painter.drawText(row.translated(0, bold.height()), Qt::AlignHCenter | Qt::AlignTop, span.spare);
}

bool isEmptySpan(const Span& span) {
    return !span.low && !span.high && span.state == SpanState::Neither;
}

}  // namespace

int spanHeight() {
    return px(70);
}

void paintSpan(QPainter& painter, const QRectF& box, const Span& span, Look look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double axis = box.top() + px(20);
    painter.setPen(QPen(color(Role::Edge, look), 1));
    painter.drawLine(QPointF(box.left(), axis), QPointF(box.right(), axis));
    paintBracket(painter, box, span, box.top() + px(3), px(4), color(Role::Accent, look), px(2));
    const double words = axis + px(15);
    if (isEmptySpan(span)) {
        paintMiddle(painter, middleLeft(box, box, span), words, span, look);
        painter.restore();
        return;
    }
    const QRectF bar = barBox(box, span, axis - px(6), px(12));
    paintBar(painter, bar, span.state, look);
    paintPosts(painter, bar, span, px(7), px(3), look);
    const double mark = px(20);
    if (span.lowLimit != Limit::None)
        paintIcon(painter, QRectF(bar.left() - px(8) - mark, axis - mark / 2, mark, mark),
                  iconOf(span.lowLimit), color(Role::Limit, look));
    if (span.highLimit != Limit::None)
        paintIcon(painter, QRectF(bar.right() + px(8), axis - mark / 2, mark, mark),
                  iconOf(span.highLimit), color(Role::Limit, look));
    if (!span.lowFigure.isEmpty())
        paintEnd(painter, box, bar.left(), words, true, span.lowFigure, span.lowReason, look);
    if (!span.highFigure.isEmpty())
        paintEnd(painter, box, bar.right(), words, false, span.highFigure, span.highReason, look);
    paintMiddle(painter, middleLeft(box, bar, span), words, span, look);
    painter.restore();
}

void paintSpanThumb(QPainter& painter, const QRectF& box, const Span& span, Look look) {
    painter.save();
    painter.setClipRect(box, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing, false);
    const double axis = std::round(box.top() + box.height() * 0.6) + 0.5;
    painter.setPen(QPen(color(Role::Line, look), 1));
    painter.drawLine(QPointF(box.left(), axis), QPointF(box.right(), axis));
    const bool faint = span.state == SpanState::Neither || span.state == SpanState::NotChecked;
    if (!isEmptySpan(span)) {
        const QRectF bar = barBox(box, span, axis - px(4) - 0.5, px(9));
        paintBar(painter, bar, span.state, look);
        if (span.state == SpanState::UsualOnly) {
            // The part of the job's speeds that the window leaves out.
            const double slow = place(box, span, span.slow), fast = place(box, span, span.fast);
            const QColor line = color(Role::Limit, look), tint = color(Role::LimitTint, look);
            if (slow < bar.left())
                paintHatch(painter, QRectF(slow, bar.top(), bar.left() - slow, bar.height()),
                           Hatch::Rising, line, tint, 4.0);
            if (fast > bar.right())
                paintHatch(painter,
                           QRectF(bar.right(), bar.top(), fast - bar.right(), bar.height()),
                           Hatch::Falling, line, tint, 4.0);
        }
        if (!faint) paintPosts(painter, bar, span, px(2), 2, look);
    }
    painter.setRenderHint(QPainter::Antialiasing);
    paintBracket(painter, box, span, box.top() + 0.5, px(3),
                 color(faint ? Role::Edge : Role::Ink, look), 1);
    painter.restore();
}

SpanBar::SpanBar(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

void SpanBar::setSpan(const Span& span) {
    m_span = span;
    setAccessibleName(tr("Speed window"));
    setAccessibleDescription(QStringList({span.holds, span.lowFigure, span.lowReason,
                                          span.highFigure, span.highReason, span.spare})
                                 .join(QStringLiteral(" ")));
    update();
}

void SpanBar::setRoom(double left, double right) {
    m_left = left;
    m_right = right;
    update();
}

void SpanBar::setLook(std::optional<Look> look) {
    m_look = look;
    update();
}

QSize SpanBar::sizeHint() const {
    return {px(400), spanHeight()};
}
QSize SpanBar::minimumSizeHint() const {
    return {px(200), spanHeight()};
}

void SpanBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintSpan(painter, QRectF(rect()).adjusted(px(m_left), 0, -px(m_right), 0), m_span,
              m_look.value_or(theme().look()));
}

}  // namespace bw
