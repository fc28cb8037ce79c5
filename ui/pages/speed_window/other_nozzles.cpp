// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/other_nozzles.h"

#include <QFontMetricsF>
#include <QPainter>
#include <cmath>
#include <utility>

#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

OtherNozzles::OtherNozzles(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&theme(), &Theme::changed, this, qOverload<>(&QWidget::update));
}

void OtherNozzles::setEntries(std::vector<Entry> entries) {
    m_entries = std::move(entries);
    QStringList lines;
    for (const auto& e : m_entries) {
        QString line = e.name + u": "_s + e.pressure;
        if (e.droplets) line += u", "_s + letters(*e.droplets);
        if (e.isOff) line += u", "_s + tr("the rate does not hold here");
        lines.append(line);
    }
    setToolTip(lines.join(u'\n'));
    setAccessibleName(lines.isEmpty()
                          ? tr("No other candidates")
                          : tr("Other candidates at this speed: %1").arg(lines.join(u"; "_s)));
    update();
}

double OtherNozzles::widthOf(const Entry& e) const {
    const QFontMetricsF metrics(textFont(TextSize::Body));
    double width = nozzleChipSize(e.code).width() + px(5) + metrics.horizontalAdvance(e.pressure);
    if (e.droplets) width += px(5) + dropletChipSize(*e.droplets).width();
    return width + px(12);
}

QSize OtherNozzles::sizeHint() const {
    double width = 0;
    for (const auto& e : m_entries) width += widthOf(e);
    return {static_cast<int>(std::ceil(width)), px(20)};
}

QSize OtherNozzles::minimumSizeHint() const {
    return {px(120), px(20)};
}

void OtherNozzles::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setFont(textFont(TextSize::Body));
    const QFontMetricsF metrics(painter.font());
    const double middle = height() / 2.0;
    double x = 0;
    if (!m_entries.empty()) {
        const QFont small = textFont(TextSize::Small);
        const QString also = tr("also");
        painter.setFont(small);
        painter.setPen(color(Role::Quiet));
        painter.drawText(QRectF(0, 0, width(), height()), Qt::AlignVCenter, also);
        x = QFontMetricsF(small).horizontalAdvance(also) + px(8);
        painter.setFont(textFont(TextSize::Body));
    }
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        const Entry& e = m_entries[i];
        const double more = i + 1 < m_entries.size() ? px(14) : 0;
        if (x + widthOf(e) - px(12) + more > width()) {
            painter.setPen(color(Role::Quiet));
            painter.drawText(QRectF(x, 0, px(20), height()), Qt::AlignVCenter, u"…"_s);
            return;
        }
        const QSizeF cap = nozzleChipSize(e.code);
        paintNozzleChip(painter, QPointF(x + cap.width() / 2, middle), e.code);
        x += cap.width() + px(5);
        painter.setPen(color(e.isOff ? Role::Limit : Role::Ink));
        painter.drawText(QRectF(x, 0, metrics.horizontalAdvance(e.pressure) + 1, height()),
                         Qt::AlignVCenter, e.pressure);
        x += metrics.horizontalAdvance(e.pressure);
        if (e.droplets) {
            const QSizeF chip = dropletChipSize(*e.droplets);
            x += px(5);
            paintDropletChip(painter, QPointF(x + chip.width() / 2, middle), *e.droplets);
            x += chip.width();
        }
        x += px(12);
    }
}

}  // namespace bw
