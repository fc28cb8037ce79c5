// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/kit/chart_panel.h"
#include "ui/kit/chart_view.h"

/// The level of a chart that a hand can move.
namespace bw {

void ChartPanel::setLevel(std::optional<double> y, double least, double most, double step,
                          const QString& name) {
    m_level = y;
    m_levelLeast = least;
    m_levelMost = most;
    m_levelStep = step;
    m_view->setAccessibleDescription(name);
    m_view->repaintAll();
}

void ChartPanel::moveLevel(double y) {
    if (!m_level || !(m_levelStep > 0)) return;
    y = std::clamp(std::round(y / m_levelStep) * m_levelStep, m_levelLeast, m_levelMost);
    if (y == m_levelMoved.value_or(*m_level)) return;
    m_levelMoved = y;
    Q_EMIT levelMoved(y);
}

void ChartPanel::takeLevel(bool isMeant) {
    if (!m_levelMoved) return;
    const double y = *m_levelMoved;
    m_levelMoved.reset();
    if (isMeant)
        Q_EMIT levelTaken(y);
    else
        Q_EMIT levelTakenBack();
}

QRectF ChartPanel::levelGrip(const ChartMap& map) const {
    if (!m_level) return {};
    const double y = map.y(m_levelMoved.value_or(*m_level));
    return {map.plot().left() - map.px(9), y - map.px(7), map.px(14), map.px(14)};
}

/// Two strokes in a small plate on the axis: something to take hold of.
void ChartPanel::paintLevel(QPainter& painter, const ChartMap& map) {
    if (!m_level || map.look() == Look::Print) return;
    const QRectF grip = levelGrip(map);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(map.color(Role::Focus), map.px(1.4)));
    painter.setBrush(map.color(Role::Raised));
    painter.drawRoundedRect(grip, map.px(3), map.px(3));
    for (const double dy : {-2.0, 2.0}) {
        const double y = grip.center().y() + map.px(dy);
        painter.drawLine(QPointF(grip.left() + map.px(3), y), QPointF(grip.right() - map.px(3), y));
    }
    painter.restore();
}

}  // namespace bw
