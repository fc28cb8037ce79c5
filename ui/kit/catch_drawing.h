// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/kit/chart_panel.h"

class QPainter;

/// The parts that every picture of a catch test has. Values are % off the base.
namespace bw {

/// Hatched kerbs beyond the limits, under `low` and over `high`.
void paintCatchLimits(QPainter& painter, const ChartMap& map, double low, double high);
/// The bar of a nozzle from the base to `value`, `half` a bar's width; one off the limits is
/// hatched, and otherwise for low than for high.
void paintCatchBar(QPainter& painter, const ChartMap& map, int nozzle, double half, double value,
                   bool isOff);
/// The line of the base, and a dashed one for the mean if that is another.
void paintCatchLines(QPainter& painter, const ChartMap& map, std::optional<double> mean);

}  // namespace bw
