// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/format.h"
#include "core/yard/wear_history.h"
#include "ui/kit/chart_panel.h"

namespace bw {

/// Mean flow of a set against a new one's by date: a disc with its bar (19 times in 20) for each
/// test, the line through them with its band, the limit, and the day on which it is passed.
class WearChart : public ChartPanel {
    Q_OBJECT

  public:
    explicit WearChart(QWidget* parent = nullptr);
    void setHistory(const WearHistory& history, const NumberStyle& style, const QString& summary);

  private:
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintBand(QPainter& painter, const ChartMap& map) const;
    void paintPassing(QPainter& painter, const ChartMap& map) const;
    ChartAxis timeAxis() const;
    ChartAxis flowAxis() const;
    double limitPercent() const { return m_history.limit * 100; }

    WearHistory m_history;
    NumberStyle m_style;
    ChartAxis m_time;
};

/// A day as years with a fraction, 2026.5.
double yearsOf(Day day);
/// "March 2028".
QString monthWords(Day day);

}  // namespace bw
