// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/curve_labels.h"

#include <QFontMetricsF>
#include <QObject>
#include <algorithm>

#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

constexpr double kCapWidth = 31, kCapHeight = 18, kWidest = 118;

}  // namespace

QSizeF CurveLabels::sizeOf(const Name& name) const {
    const QFontMetricsF first(m_map.font(TextSize::Small, name.isInHand));
    const QFontMetricsF second(m_map.font(TextSize::Small));
    const double words = std::min(
        m_map.px(kWidest),
        std::max(first.horizontalAdvance(name.first), second.horizontalAdvance(name.second)));
    const double lines = name.second.isEmpty() ? 1 : 2;
    return {m_map.px(kCapWidth + 10) + words,
            std::max(m_map.px(kCapHeight), lines * first.height()) + m_map.px(4)};
}

bool CurveLabels::isFree(const QRectF& box) const {
    if (!m_map.plot().adjusted(2, 2, -2, -2).contains(box)) return false;
    return std::none_of(m_taken.begin(), m_taken.end(),
                        [&](const QRectF& taken) { return taken.intersects(box); });
}

void CurveLabels::place(QPainter& painter, const std::vector<QPointF>& curve, const Name& name) {
    const QSizeF size = sizeOf(name);
    const double gap = m_map.px(7);
    for (const double part : {0.88, 0.78, 0.68, 0.58, 0.95, 0.48, 0.38, 0.28}) {
        if (curve.empty()) return;
        const auto i = static_cast<std::size_t>(part * static_cast<double>(curve.size() - 1));
        const QPointF at = m_map.point(curve[i]);
        // Rising curves leave room below on the right and above on the left.
        for (const QRectF& box :
             {QRectF(at + QPointF(gap, gap * 0.4), size),
              QRectF(at - QPointF(size.width() + gap, size.height()), size),
              QRectF(at + QPointF(2 * gap, -size.height() / 2), size),
              QRectF(at + QPointF(-size.width() / 2, 2.2 * gap), size),
              QRectF(at - QPointF(size.width() / 2, size.height() + 2.2 * gap), size)}) {
            if (!isFree(box)) continue;
            m_taken.push_back(box);
            paint(painter, box, name);
            return;
        }
    }
}

void CurveLabels::paint(QPainter& painter, const QRectF& box, const Name& name) const {
    painter.save();
    QColor plate = m_map.color(Role::Raised);
    plate.setAlphaF(0.82F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(plate);
    if (name.isDashed) {
        QPen dashed(m_map.color(Role::Unchecked), m_map.px(1.2), Qt::CustomDashLine);
        dashed.setDashPattern({3, 2});
        painter.setPen(dashed);
    }
    painter.drawRect(box);
    const QRectF cap(box.left() + m_map.px(3), box.top() + m_map.px(2), m_map.px(kCapWidth),
                     m_map.px(kCapHeight));
    paintNozzleChip(painter, cap, name.code, m_map.color(Role::Ink), m_map.color(Role::Raised));
    const double left = cap.right() + m_map.px(5);
    const double room = box.right() - left;
    const auto line = [&](const QString& text, const QFont& font, const QColor& ink, double top) {
        const QFontMetricsF metrics(font);
        painter.setFont(font);
        painter.setPen(ink);
        painter.drawText(QPointF(left, top + metrics.ascent()),
                         metrics.elidedText(text, Qt::ElideRight, room));
        return top + metrics.height();
    };
    const QFont first = m_map.font(TextSize::Small, name.isInHand);
    const double top = name.second.isEmpty() ? box.center().y() - QFontMetricsF(first).height() / 2
                                             : box.top() + m_map.px(2);
    const double below = line(name.first, first, name.ink, top);
    if (!name.second.isEmpty()) {
        line(name.second, m_map.font(TextSize::Small),
             m_map.color(name.isDashed ? Role::Unchecked : Role::Quiet), below);
    }
    painter.restore();
}

CurveLabels::Name curveName(const ChartMap& map, const StudiedNozzle& n, bool inHand) {
    CurveLabels::Name name;
    name.code = qs(n.nozzle.sizeCode);
    name.first = n.nozzle.isBuiltIn ? QObject::tr("size only") : qs(shortName(n.nozzle));
    if (inHand) name.second = QObject::tr("in hand");
    if (n.nozzle.isBuiltIn) name.second = QObject::tr("limits not checked");
    name.ink = inHand ? map.color(Role::Accent) : map.curve(n.style).color;
    name.isInHand = inHand;
    name.isDashed = n.nozzle.isBuiltIn;
    return name;
}

}  // namespace bw
