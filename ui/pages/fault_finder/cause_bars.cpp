// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/cause_bars.h"

#include <QPainter>

#include "ui/kit/metrics.h"
#include "ui/kit/palette.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

void paintDots(QPainter& painter, const QRectF& box) {
    painter.save();
    painter.setClipRect(box);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(color(Role::Unchecked));
    const double step = px(5);
    for (double x = box.left() + 2; x < box.right(); x += step) {
        painter.drawEllipse(QPointF(x, box.top() + box.height() * 0.3), 0.9, 0.9);
        painter.drawEllipse(QPointF(x + step / 2, box.top() + box.height() * 0.72), 0.9, 0.9);
    }
    painter.restore();
}

void paintBar(QPainter& painter, const QRectF& box, const CauseBar& bar) {
    painter.setPen(QPen(color(Role::Line), 1));
    painter.setBrush(color(Role::Sunken));
    painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
    const QRectF filled(box.left(), box.top(), std::max(2.0, box.width() * bar.share),
                        box.height());
    if (!bar.isSomethingElse) return painter.fillRect(filled, color(Role::Accent));
    painter.setPen(QPen(color(Role::Unchecked), 1, Qt::DashLine));
    painter.setBrush(color(Role::UncheckedTint));
    painter.drawRect(filled.adjusted(0.5, 0.5, -0.5, -0.5));
    paintDots(painter, filled);
}

int textHeight(const QString& text, int width, const QFont& font) {
    if (text.isEmpty()) return 0;
    return QFontMetrics(font).boundingRect(0, 0, width, 4000, Qt::TextWordWrap, text).height();
}

}  // namespace

CauseBars::CauseBars(QWidget* parent) : QWidget(parent) {
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

void CauseBars::setBars(std::vector<CauseBar> bars) {
    m_bars = std::move(bars);
    QStringList all;
    for (const auto& bar : m_bars) {
        QString text = bar.name + u": "_s + bar.word;
        if (!bar.members.isEmpty()) text += u" ("_s + bar.members + u")"_s;
        all.append(text);
    }
    setAccessibleName(all.join(u"; "_s));
    updateGeometry();
    update();
}

int CauseBars::lay(QPainter* painter, int width) const {
    const QFont small = textFont(TextSize::Small);
    int y = 0;
    for (const auto& bar : m_bars) {
        const QFont name = textFont(TextSize::Body, bar.isStrong);
        const int wordWidth = QFontMetrics(small).horizontalAdvance(bar.word);
        const int nameWidth = std::max(px(60), width - wordWidth - px(12));
        const int nameHeight = textHeight(bar.name, nameWidth, name);
        const int membersHeight = textHeight(bar.members, width, small);
        if (painter) {
            painter->setFont(name);
            painter->setPen(color(Role::Ink));
            painter->drawText(QRect(0, y, nameWidth, nameHeight), Qt::TextWordWrap, bar.name);
            painter->setFont(small);
            painter->setPen(color(bar.isStrong ? Role::Ink : Role::Quiet));
            painter->drawText(QRect(width - wordWidth - 2, y, wordWidth + 2, nameHeight),
                              Qt::AlignRight | Qt::AlignVCenter, bar.word);
            painter->setPen(color(Role::Quiet));
            painter->drawText(QRect(0, y + nameHeight, width, membersHeight), Qt::TextWordWrap,
                              bar.members);
            paintBar(*painter, QRectF(0, y + nameHeight + membersHeight + px(3), width, px(9)),
                     bar);
        }
        y += nameHeight + membersHeight + px(3 + 9 + 8);
    }
    return y;
}

int CauseBars::heightForWidth(int width) const {
    return std::max(px(10), lay(nullptr, width));
}
QSize CauseBars::sizeHint() const {
    return {px(260), heightForWidth(width() > px(100) ? width() : px(260))};
}
QSize CauseBars::minimumSizeHint() const {
    return {px(120), width() > px(100) ? heightForWidth(width()) : px(20)};
}

void CauseBars::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void CauseBars::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    lay(&painter, width());
}

}  // namespace bw
