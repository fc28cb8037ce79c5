// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>

#include "core/model/machine.h"
#include "ui/kit/palette.h"

/// Our own symbols of a sprayer's circuit, painted about a point, sizes in units of the drawing.
namespace bw::symbols {

/// Sets the pen of outlines: ink, 1.6 wide; dashed for a part that is not known.
void outline(QPainter& painter, bool isKnown = true);
/// A pipe with walls along points; `tone` fills it.
void pipe(QPainter& painter, const QPolygonF& along, const QColor& tone);
/// The tank with its lid and level.
void tank(QPainter& painter, const QRectF& box, bool isKnown);
/// A lozenge with mesh.
void strainer(QPainter& painter, QPointF at, double size, bool isKnown);
/// A bow tie on its stem; `upright`: in a vertical pipe.
void valve(QPainter& painter, QPointF at, double size, bool isUpright, bool hasStem, bool isKnown);
/// Centrifugal: one wedge in a ring; piston or diaphragm: two; unknown: a question mark.
void pump(QPainter& painter, QPointF at, double radius, const Known<PumpKind>& kind);
/// An arrow bent over the pump: its speed is what changes the rate.
void speedArrow(QPainter& painter, QPointF at, double radius);
/// Three blades in a ring.
void meter(QPainter& painter, QPointF at, double radius, bool isKnown);
/// A neck in the line.
void restrictor(QPainter& painter, QPointF at, double size, bool isKnown);
/// A dial on a stem.
void dial(QPainter& painter, QPointF foot, double radius);
/// A small arrow head that shows where it flows; `angle` in degrees, 0 to the right.
void arrow(QPainter& painter, QPointF at, double angle);

}  // namespace bw::symbols
