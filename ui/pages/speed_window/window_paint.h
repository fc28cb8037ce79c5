// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>

#include "ui/kit/chart_panel.h"
#include "ui/pages/speed_window/window_study.h"

namespace bw {

// What both charts of the page share: the lit window between two posts, the job's speeds, and the
// changeover of the restrictor valve.

/// The job's slow to fast as a tinted column, then the veil over all speeds that do not hold.
void paintLitWindow(QPainter& painter, const ChartMap& map, const WindowStudy& study);
/// Where the posts stand inside the plot, and the changeover line, in the reader's unit.
std::vector<double> postsOf(const WindowStudy& study);
/// The two posts; dashed where the verdict rests on something that was not checked.
void paintPosts(QPainter& painter, const ChartMap& map, const WindowStudy& study);
/// Bracket and words of slow, usual and fast above the plot.
void paintJobSpeeds(QPainter& painter, const ChartMap& map, const WindowStudy& study);
/// The speed at which the valve is moved, with both sides named at height `y`; the plates' boxes.
std::vector<QRectF> paintChangeover(QPainter& painter, const ChartMap& map,
                                    const WindowStudy& study, double y);
/// Title of the y axis, one line above the speeds.
void paintAxisTitle(QPainter& painter, const ChartMap& map, const QString& title);

/// Room around the plot that these need, at a body of 12.
inline constexpr double kRoomLeft = 42, kRoomTop = 40, kRoomRight = 46, kRoomBottom = 22;

}  // namespace bw
