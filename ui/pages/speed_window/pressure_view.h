// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// Pressure at the boom sensor against speed: a curve a candidate, the one in hand as a ribbon of
/// its droplet bands; floor and ceiling hatched; the lit window; the changeover line.
class PressureView : public ChartPanel {
    Q_OBJECT

  public:
    explicit PressureView(QWidget* parent = nullptr);
    /// Shows a study; the caller keeps it alive until the next one. Null: nothing.
    void setStudy(const WindowStudy* study, const QString& summary);
    /// Cursor line and ring on the curve in hand. Asks the model for one point.
    void showCursor(Speed speed);

  private:
    ChartCurve curveOf(const StudiedNozzle& nozzle, bool inHand) const;
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintLimitBands(QPainter& painter, const ChartMap& map) const;
    void paintPumpBand(QPainter& painter, const ChartMap& map) const;
    void paintRateBand(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    std::vector<QRectF> paintPlates(QPainter& painter, const ChartMap& map) const;
    std::vector<QRectF> paintInHand(QPainter& painter, const ChartMap& map) const;
    void paintNames(QPainter& painter, const ChartMap& map, const std::vector<QRectF>& taken) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;
    void paintDropletScale(QPainter& painter, const ChartMap& map) const;

    const WindowStudy* m_study = nullptr;
};

}  // namespace bw
