// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/catch_picture.h"
#include "ui/kit/chart_panel.h"

namespace bw {

/// A past catch test in small: a bar per nozzle across the boom, from a new one's flow (from the
/// mean if that is not known), with the limits as hatched kerbs and the sections below.
class CatchBars : public ChartPanel {
    Q_OBJECT

  public:
    explicit CatchBars(QWidget* parent = nullptr);
    void setTest(const CatchTest& test, const CatchSummary& summary, const NumberStyle& style);

  private:
    double off(double part) const;
    ChartAxis yAxis() const;
    void paintBars(QPainter& painter, const ChartMap& map) const;
    void paintSections(QPainter& painter, const ChartMap& map) const;

    CatchTest m_test;
    CatchSummary m_summary;
    NumberStyle m_style;
    CatchPicture m_picture;
};

}  // namespace bw
