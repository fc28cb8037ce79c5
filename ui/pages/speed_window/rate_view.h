// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// Rate against speed: the target dashed, and what really comes out: on the target while the
/// window holds, off it where a limit pins the flow.
class RateView : public ChartPanel {
    Q_OBJECT

  public:
    explicit RateView(QWidget* parent = nullptr);
    /// Shows a study; the caller keeps it alive until the next one. Null: nothing.
    void setStudy(const WindowStudy* study, const QString& summary);
    void showCursor(Speed speed);

  private:
    std::vector<QPointF> offTarget(const StudiedNozzle& nozzle) const;
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;

    const WindowStudy* m_study = nullptr;
};

}  // namespace bw
