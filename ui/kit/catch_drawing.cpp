// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/catch_drawing.h"

#include <QPainter>
#include <algorithm>

#include "ui/kit/hatch.h"

namespace bw {
namespace {

constexpr double kKerb = 1.5;  ///< % of height of the hatched kerb beyond a limit

void paintRow(QPainter& painter, const ChartMap& map, double at, const QPen& pen) {
    painter.setPen(pen);
    painter.drawLine(QPointF(map.plot().left(), map.y(at)), QPointF(map.plot().right(), map.y(at)));
}

void paintKerb(QPainter& painter, const ChartMap& map, double from, double to, Hatch hatch) {
    paintHatch(painter, map.rows(from, to), hatch, map.color(Role::Limit),
               map.color(Role::LimitTint), map.px(7));
}

}  // namespace

void paintCatchLimits(QPainter& painter, const ChartMap& map, double low, double high) {
    const QPen pen(map.color(Role::Limit), map.px(1.4));
    paintKerb(painter, map, low - kKerb, low, Hatch::Rising);
    paintRow(painter, map, low, pen);
    paintKerb(painter, map, high, high + kKerb, Hatch::Falling);
    paintRow(painter, map, high, pen);
}

void paintCatchBar(QPainter& painter, const ChartMap& map, int nozzle, double half, double value,
                   bool isOff) {
    QRectF bar = map.box(nozzle - half, nozzle + half, std::min(0.0, value), std::max(0.0, value));
    if (bar.height() < map.px(2)) bar.setHeight(map.px(2));
    if (!isOff) return painter.fillRect(bar, map.color(Role::Measured));
    paintHatch(painter, bar, value < 0 ? Hatch::Rising : Hatch::Falling, map.color(Role::Raised),
               map.color(Role::Limit), map.px(5));
    painter.setPen(QPen(map.color(Role::Limit), map.px(1.2)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(bar);
}

void paintCatchLines(QPainter& painter, const ChartMap& map, std::optional<double> mean) {
    paintRow(painter, map, 0, QPen(map.color(Role::Ink), map.px(1.3)));
    if (mean) paintRow(painter, map, *mean, QPen(map.color(Role::Ink), map.px(1.3), Qt::DashLine));
}

}  // namespace bw
