// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/report/report_context.h"
#include "core/report/sheet.h"
#include "core/window/speed_window.h"

namespace bw {

/// Parts of the cab card, for those sheets that show one job's window too.

/// The window on its scale of speeds; hanging under it, at whole speeds and the job's own, what
/// the gauge should show, the flow of the whole boom, and the drops there. Figures in brackets lie
/// outside the window.
SheetScale windowScale(const WindowModel& model, const SpeedWindow& window,
                       const ReportContext& context);

/// Pressure at the boom sensor against speed, with floor, ceiling, the ends of the window and the
/// job's speeds.
SheetLineChart pressureChart(const WindowModel& model, const SpeedWindow& window,
                             const ReportContext& context);

/// The values that the answer rests on, those that matter most first, with where they come from.
SheetList restsOnList(const WindowModel& model, const ReportContext& context, std::size_t most = 4);

/// What was not checked, one item each; one item that says so if nothing was left open.
SheetList uncheckedList(const WindowModel& model, const SpeedWindow& window,
                        const ReportContext& context);

/// The cautions that belong on paper with a speed window.
SheetCautions windowCautionsOnPaper(const WindowModel& model, const ReportContext& context);

/// Speeds for the figures under the scale: the job's own and whole steps about them, in order, at
/// most `most`.
std::vector<Speed> figureSpeeds(const WindowModel& model, Speed from, Speed to, UnitSystem units,
                                std::size_t most = 8);

/// Ticks of an axis at a step of 1, 2 or 5 times a power of ten, at most about `most`.
std::vector<std::pair<double, std::string>> axisTicks(double from, double to, int most,
                                                      char decimalMark);

}  // namespace bw
