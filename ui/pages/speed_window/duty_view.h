// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// On-time share against speed, for pulsed nozzles: they stand at one pressure, the share makes the
/// rate. Least and greatest share hatched; the pump's end as an upright hatch.
class DutyView : public ChartPanel {
    Q_OBJECT

  public:
    explicit DutyView(QWidget* parent = nullptr);
    /// Shows a study; the caller keeps it alive until the next one. Null, or not pulsed: nothing.
    void setStudy(const WindowStudy* study, const QString& summary);
    void showCursor(Speed speed);

  private:
    std::vector<QPointF> points(const StudiedNozzle& nozzle) const;
    double shareAt(const StudiedNozzle& nozzle, Speed speed) const;
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;
    void paintPumpEnd(QPainter& painter, const ChartMap& map) const;
    std::vector<QRectF> paintPlates(QPainter& painter, const ChartMap& map) const;

    const WindowStudy* m_study = nullptr;
    double m_least = 0.0;
    double m_most = 100.0;
};

}  // namespace bw
