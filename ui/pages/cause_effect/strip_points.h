// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <vector>

#include "core/simulation/trace_ring.h"

namespace bw {

/// A figure of the trace, in SI.
using TraceFigure = double (*)(const TracePoint&);

/// The points of a strip chart from `from` on, in the reader's unit (`perUnit` times SI): of each
/// time slice of `slice` the lowest and highest in their order, a gap (NaN) where the machine does
/// not spray if `hasGaps`. Slices lie on multiples of their length, so that points keep still while
/// the chart scrolls.
std::vector<QPointF> stripPoints(const TraceRing& trace, double from, double slice, double perUnit,
                                 TraceFigure figure, bool hasGaps);

/// Without the points inside of flat runs: those that differ from both neighbours by less than
/// `least`. Long flat lines cost nothing then, and thick ones are drawn in one piece.
std::vector<QPointF> withoutFlats(const std::vector<QPointF>& points, double least);

}  // namespace bw
