// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/simulation/need_curve.h"
#include "core/units/format.h"
#include "core/window/window_curve.h"
#include "ui/kit/chart_panel.h"

namespace bw {

class Run;

/// Pressure against speed of the nozzle in hand with the running machine as a moving point: on the
/// curve the rate is right, over it too much, under it too little.
class PointChart : public ChartPanel {
    Q_OBJECT

  public:
    explicit PointChart(QWidget* parent = nullptr);
    /// The curve of the setup as it stands. `droplets`: bands of the nozzle.
    void showSetup(const Run& run, const std::vector<DropletStretch>& droplets,
                   const NumberStyle& style, double top);
    /// Where the run is now, with the way of the last seconds. Solves nothing.
    void showPoint(const Run& run);

  private:
    struct Ribbon {
        DropletCategory category = DropletCategory::M;
        std::vector<QPointF> points;
    };
    void splitIntoRibbons(const std::vector<NeedPoint>& curve,
                          const std::vector<DropletStretch>& droplets);
    QPointF valueOf(double speedSi, double pressureSi) const;
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintPumpBand(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;

    NumberStyle m_style;
    double m_perSpeed = 1.0, m_perPressure = 1.0;
    double m_slow = 0.0, m_fast = 0.0;
    std::optional<double> m_floor, m_ceiling;
    std::vector<QPointF> m_fed;
    std::vector<Ribbon> m_ribbons;
    std::vector<QPointF> m_way;
    std::optional<QPointF> m_now, m_other;
};

}  // namespace bw
