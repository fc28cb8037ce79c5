// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/window/boom_strip.h"
#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/boom_table.h"

namespace bw {

/// The boom as one strip: a bar per nozzle from the line of 100 %, grouped by section. The cursor
/// stands on a nozzle.
class BoomChart : public ChartPanel {
    Q_OBJECT

  public:
    explicit BoomChart(QWidget* parent = nullptr);
    void setStrip(StripKind kind, const BoomStrip& strip, char decimalMark, const QString& summary);
    /// Puts the cursor on a nozzle, from 1.
    void showNozzle(int number);

  private:
    void placeAxis(ChartAxis& axis) const;
    void paintBars(QPainter& painter, const ChartMap& map) const;
    void paintSections(QPainter& painter, const ChartMap& map) const;
    void paintLines(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;
    QString axisTitle() const;
    QString endWords(bool isLeft) const;

    StripKind m_kind = StripKind::Even;
    BoomStrip m_strip;
};

}  // namespace bw
