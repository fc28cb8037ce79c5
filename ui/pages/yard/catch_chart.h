// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/catch_picture.h"
#include "ui/kit/chart_panel.h"

namespace bw {

/// What is caught so far, across the boom: a bar per nozzle from "new" (or from the mean), the
/// limits as hatched kerbs, off ones named with what to do, the boom with its sections below.
class CatchChart : public ChartPanel {
    Q_OBJECT

  public:
    struct View {
        CatchTest test;
        std::vector<int> order;  ///< the nozzles to catch
        std::optional<CatchSummary> summary;
        CatchPicture picture;
        int inHand = 0;  ///< 0: none
        NumberStyle style;
    };
    explicit CatchChart(QWidget* parent = nullptr);
    void setView(View view, const QString& summary);

  private:
    ChartAxis yAxis() const;
    double off(double part) const;
    int nozzles() const;
    void paintLimits(QPainter& painter, const ChartMap& map) const;
    void paintBars(QPainter& painter, const ChartMap& map) const;
    void paintOpen(QPainter& painter, const ChartMap& map) const;
    void paintLines(QPainter& painter, const ChartMap& map) const;
    void paintOffNames(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;
    void paintSide(QPainter& painter, const ChartMap& map) const;
    void paintBoom(QPainter& painter, const ChartMap& map) const;
    void paintSections(QPainter& painter, const ChartMap& map) const;

    View m_view;
};

}  // namespace bw
