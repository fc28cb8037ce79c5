// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/strip_points.h"

#include <cmath>
#include <limits>

namespace bw {

std::vector<QPointF> stripPoints(const TraceRing& trace, double from, double slice, double perUnit,
                                 TraceFigure figure, bool hasGaps) {
    std::vector<QPointF> out;
    std::size_t i = trace.firstFrom(Duration::fromSi(from));
    bool isGap = true;
    while (i < trace.size()) {
        const double index = std::floor(trace.at(i).time / slice);
        QPointF low, high;
        bool isAny = false, isCut = false;
        for (; i < trace.size() && std::floor(trace.at(i).time / slice) == index; ++i) {
            const TracePoint& p = trace.at(i);
            if (hasGaps && !p.isSpraying) {
                isCut = true;
                continue;
            }
            const QPointF at(p.time, figure(p) * perUnit);
            if (!isAny || at.y() < low.y()) low = at;
            if (!isAny || at.y() > high.y()) high = at;
            isAny = true;
        }
        if (isAny) {
            out.push_back(low.x() <= high.x() ? low : high);
            if (low.x() != high.x()) out.push_back(low.x() <= high.x() ? high : low);
            isGap = false;
        }
        if (isCut && !isGap) {
            out.emplace_back(std::numeric_limits<double>::quiet_NaN(), 0.0);
            isGap = true;
        }
    }
    // The line reaches the newest figure, where its dot stands.
    if (!isGap && !out.empty() && out.back().x() != trace.newest().time)
        out.emplace_back(trace.newest().time, figure(trace.newest()) * perUnit);
    return out;
}

std::vector<QPointF> withoutFlats(const std::vector<QPointF>& points, double least) {
    std::vector<QPointF> out;
    for (std::size_t i = 0; i < points.size(); ++i) {
        // NaN compares false: the ends of a run stay.
        const bool isInside = i > 0 && i + 1 < points.size() && !out.empty() &&
                              std::abs(points[i].y() - out.back().y()) < least &&
                              std::abs(points[i + 1].y() - out.back().y()) < least;
        if (!isInside) out.push_back(points[i]);
    }
    return out;
}

}  // namespace bw
