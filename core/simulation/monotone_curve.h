// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace bw {

/// A rising (never falling) curve through knots: piecewise cubic that keeps the order of the knots
/// (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980). Flat runs stay flat. Reading it allocates
/// nothing. Beyond the knots it goes on straight.
class MonotoneCurve {
  public:
    MonotoneCurve() : MonotoneCurve({0.0, 1.0}, {0.0, 0.0}) {}
    /// At least two knots; `x` rising strictly. A `y` below the one before it is lifted to it. At
    /// the inner knots of `corners` (rising) the curve may bend sharply.
    MonotoneCurve(std::vector<double> x, std::vector<double> y,
                  const std::vector<std::size_t>& corners = {});

    double at(double x) const {
        if (x <= m_low) return m_pieces.front().y + m_pieces.front().slope * (x - m_low);
        if (x >= m_high) return m_topValue + m_topSlope * (x - m_high);
        const Piece& p = m_pieces[pieceFor(x)];
        const double d = x - p.x;
        return p.y + d * (p.slope + d * (p.square + d * p.cube));
    }
    double low() const { return m_low; }
    double high() const { return m_high; }
    double least() const { return m_pieces.front().y; }
    double most() const { return m_topValue; }
    /// The least x between the ends whose y reaches `y`; the upper end if none does.
    double firstReaching(double y) const;
    /// The greatest x between the ends whose y is not over `y`; the lower end if all are.
    double lastNotOver(double y) const;

  private:
    struct Piece {
        double x, y, slope, square, cube;
    };
    std::size_t pieceFor(double x) const {
        std::size_t i = m_bins[static_cast<std::size_t>((x - m_low) * m_binsPerX)];
        while (i + 1 < m_pieces.size() && x >= m_pieces[i + 1].x) ++i;
        return i;
    }
    std::vector<Piece> m_pieces;
    std::vector<std::size_t> m_bins;  ///< for each even slice of x, the piece at its lower end
    double m_low = 0.0;
    double m_high = 1.0;
    double m_topValue = 0.0;
    double m_topSlope = 0.0;
    double m_binsPerX = 1.0;
};

}  // namespace bw
