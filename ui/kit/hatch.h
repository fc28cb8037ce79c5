// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPainterPath>

class QPainter;

namespace bw {

/// The forms that carry a meaning where hue may not: floor "/", ceiling "\", pump upright, not
/// checked dots.
enum class Hatch { Rising, Falling, Upright, Dots };

/// Fills an area with `tint` and hatches it with own lines, clipped to it, `spacing` pixels apart
/// (Qt's brush patterns do not scale in print). Lines keep their place when the area grows.
void paintHatch(QPainter& painter, const QPainterPath& area, Hatch hatch, const QColor& line,
                const QColor& tint, double spacing = 8.0, double width = 1.0);
void paintHatch(QPainter& painter, const QRectF& area, Hatch hatch, const QColor& line,
                const QColor& tint, double spacing = 8.0, double width = 1.0);

}  // namespace bw
