// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/hatch.h"

#include <QPainter>
#include <cmath>

namespace bw {
namespace {

double firstAt(double from, double step) {
    return std::floor(from / step) * step;
}

void slanted(QPainter& painter, const QRectF& box, double step, bool rising) {
    // x + y (or x - y) is constant along a line; multiples of the step keep lines in place.
    const double lower = rising ? box.left() + box.top() : box.left() - box.bottom();
    const double upper = rising ? box.right() + box.bottom() : box.right() - box.top();
    const double stride = step * std::sqrt(2.0);
    for (double k = firstAt(lower, stride); k <= upper; k += stride) {
        if (rising)
            painter.drawLine(QPointF(k - box.top(), box.top()),
                             QPointF(k - box.bottom(), box.bottom()));
        else
            painter.drawLine(QPointF(k + box.top(), box.top()),
                             QPointF(k + box.bottom(), box.bottom()));
    }
}

void upright(QPainter& painter, const QRectF& box, double step) {
    for (double x = firstAt(box.left(), step); x <= box.right(); x += step)
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
}

void dots(QPainter& painter, const QRectF& box, double step, double radius) {
    const double half = step * 0.75;
    bool odd = std::fmod(std::floor(box.top() / half), 2.0) != 0.0;
    for (double y = firstAt(box.top(), half); y <= box.bottom() + half; y += half, odd = !odd) {
        for (double x = firstAt(box.left(), half * 2) + (odd ? half : 0); x <= box.right() + half;
             x += half * 2)
            painter.drawEllipse(QPointF(x, y), radius, radius);
    }
}

}  // namespace

void paintHatch(QPainter& painter, const QPainterPath& area, Hatch hatch, const QColor& line,
                const QColor& tint, double spacing, double width) {
    const QRectF box = area.boundingRect();
    if (box.isEmpty()) return;
    painter.save();
    painter.setClipPath(area, Qt::IntersectClip);
    painter.fillPath(area, tint);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(hatch == Hatch::Dots ? QPen(Qt::NoPen) : QPen(line, width));
    painter.setBrush(hatch == Hatch::Dots ? QBrush(line) : QBrush(Qt::NoBrush));
    switch (hatch) {
        case Hatch::Rising:
            slanted(painter, box, spacing, true);
            break;
        case Hatch::Falling:
            slanted(painter, box, spacing, false);
            break;
        case Hatch::Upright:
            upright(painter, box, spacing);
            break;
        case Hatch::Dots:
            dots(painter, box, spacing, width);
            break;
    }
    painter.restore();
}

void paintHatch(QPainter& painter, const QRectF& area, Hatch hatch, const QColor& line,
                const QColor& tint, double spacing, double width) {
    QPainterPath path;
    path.addRect(area);
    paintHatch(painter, path, hatch, line, tint, spacing, width);
}

}  // namespace bw
