// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <vector>

#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// Names of curves on a chart: cap, short name and a quiet second line, placed beside the curve
/// where they hide nothing placed before. Sizes alone wear a dashed box.
class CurveLabels {
  public:
    explicit CurveLabels(const ChartMap& map) : m_map(map) {}

    struct Name {
        QString code;    ///< of the size, for the cap
        QString first;   ///< "low-drift"
        QString second;  ///< "in hand", "limits not checked"; may be empty
        QColor ink;
        bool isInHand = false;
        bool isDashed = false;
    };
    /// Keeps a box free of names.
    void block(const QRectF& box) { m_taken.push_back(box); }
    /// Paints the name beside the best of these points of its curve (values); nothing if none of
    /// them is free or inside the plot.
    void place(QPainter& painter, const std::vector<QPointF>& curve, const Name& name);

  private:
    QSizeF sizeOf(const Name& name) const;
    bool isFree(const QRectF& box) const;
    void paint(QPainter& painter, const QRectF& box, const Name& name) const;

    const ChartMap& m_map;
    std::vector<QRectF> m_taken;
};

/// The name of a candidate's curve.
CurveLabels::Name curveName(const ChartMap& map, const StudiedNozzle& nozzle, bool inHand);

}  // namespace bw
