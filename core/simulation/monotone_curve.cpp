// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/monotone_curve.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace bw {
namespace {

/// Slope at an inner knot: nothing where a neighbour is flat, else the weighted harmonic mean.
double innerSlope(double h0, double d0, double h1, double d1) {
    if (!(d0 > 0) || !(d1 > 0)) return 0.0;
    const double w0 = 2 * h1 + h0;
    const double w1 = h1 + 2 * h0;
    return (w0 + w1) / (w0 / d0 + w1 / d1);
}

/// Slope at an end by three knots, held where it would overshoot.
double endSlope(double h0, double d0, double h1, double d1) {
    const double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    return std::clamp(slope, 0.0, 3 * d0);
}

struct Ends {
    double start;
    double end;
};

/// Slopes at both ends of the pieces `first` to `last` (not included), which join smoothly.
void smoothRun(const std::vector<double>& h, const std::vector<double>& d, std::size_t first,
               std::size_t last, std::vector<Ends>& out) {
    if (last - first == 1) {
        out.push_back({d[first], d[first]});
        return;
    }
    double start = endSlope(h[first], d[first], h[first + 1], d[first + 1]);
    for (std::size_t i = first; i < last; ++i) {
        const double end = i + 1 < last ? innerSlope(h[i], d[i], h[i + 1], d[i + 1])
                                        : endSlope(h[i], d[i], h[i - 1], d[i - 1]);
        out.push_back({start, end});
        start = end;
    }
}

}  // namespace

MonotoneCurve::MonotoneCurve(std::vector<double> x, std::vector<double> y,
                             const std::vector<std::size_t>& corners) {
    assert(x.size() >= 2 && x.size() == y.size());
    const std::size_t n = x.size() - 1;
    std::vector<double> h(n);
    std::vector<double> d(n);
    for (std::size_t i = 0; i < n; ++i) {
        y[i + 1] = std::max(y[i + 1], y[i]);
        h[i] = x[i + 1] - x[i];
        d[i] = (y[i + 1] - y[i]) / h[i];
    }
    std::vector<Ends> m;
    std::size_t first = 0;
    for (const std::size_t corner : corners) {
        if (corner <= first || corner >= n) continue;
        smoothRun(h, d, first, corner, m);
        first = corner;
    }
    smoothRun(h, d, first, n, m);
    for (std::size_t i = 0; i < n; ++i) {
        const auto [start, end] = m[i];
        m_pieces.push_back({x[i], y[i], start, (3 * d[i] - 2 * start - end) / h[i],
                            (start + end - 2 * d[i]) / (h[i] * h[i])});
    }
    m_low = x.front();
    m_high = x.back();
    m_topValue = y.back();
    m_topSlope = m.back().end;
    const std::size_t bins = 2 * n;
    m_binsPerX = static_cast<double>(bins) / (m_high - m_low);
    std::size_t piece = 0;
    for (std::size_t bin = 0; bin <= bins; ++bin) {
        const double from = m_low + static_cast<double>(bin) / m_binsPerX;
        while (piece + 1 < n && m_pieces[piece + 1].x < from) ++piece;
        // One piece back: the rounding of the slice must never start past its x.
        m_bins.push_back(piece > 0 ? piece - 1 : 0);
    }
}

double MonotoneCurve::firstReaching(double y) const {
    if (least() >= y) return m_low;
    if (!(most() >= y)) return m_high;
    double low = m_low;
    double high = m_high;
    for (int i = 0; i < 100 && low < high; ++i) {
        const double middle = 0.5 * (low + high);
        if (middle <= low || middle >= high) break;
        (at(middle) >= y ? high : low) = middle;
    }
    return high;
}

double MonotoneCurve::lastNotOver(double y) const {
    if (!(most() > y)) return m_high;
    if (least() > y) return m_low;
    double low = m_low;
    double high = m_high;
    for (int i = 0; i < 100 && low < high; ++i) {
        const double middle = 0.5 * (low + high);
        if (middle <= low || middle >= high) break;
        (at(middle) > y ? high : low) = middle;
    }
    return low;
}

}  // namespace bw
