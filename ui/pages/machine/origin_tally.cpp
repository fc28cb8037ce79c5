// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/origin_tally.h"

#include <QPainter>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

OriginTally::OriginTally(QWidget* parent) : QWidget(parent) {
    setObjectName(u"machine.header.origins"_s);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

QStringList OriginTally::words() const {
    return {tr("%1 measured").arg(m_counts.measured), tr("%1 handbook").arg(m_counts.handbook),
            tr("%1 assumed").arg(m_counts.assumed)};
}

void OriginTally::setCounts(const OriginCounts& counts) {
    m_counts = counts;
    setAccessibleName(words().join(u", "_s));
    setToolTip(tr("Where this machine's values came from: %1").arg(words().join(u", "_s)));
    updateGeometry();
    update();
}

QSize OriginTally::sizeHint() const {
    const QFontMetrics metrics(textFont(TextSize::Small));
    int width = 0;
    for (const auto& text : words()) width += px(16) + metrics.horizontalAdvance(text) + px(10);
    return {width, px(20)};
}

QSize OriginTally::minimumSizeHint() const {
    return {px(90), px(20)};
}

/// Marks and figures alone where the words have no room.
void OriginTally::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setFont(textFont(TextSize::Small));
    painter.setPen(color(Role::Ink));
    const bool isShort = width() < sizeHint().width();
    constexpr Origin kOrigins[] = {Origin::Measured, Origin::Handbook, Origin::Assumed};
    const QStringList texts = words();
    int x = 0;
    for (int i = 0; i < 3; ++i) {
        const QString text = isShort ? texts[i].section(u' ', 0, 0) : texts[i];
        const double side = px(11);
        paintOriginMark(painter, QRectF(x, (height() - side) / 2, side, side), kOrigins[i],
                        theme().look());
        x += px(16);
        painter.drawText(QRect(x, 0, width(), height()), Qt::AlignVCenter | Qt::AlignLeft, text);
        x += painter.fontMetrics().horizontalAdvance(text) + px(10);
    }
}

}  // namespace bw
