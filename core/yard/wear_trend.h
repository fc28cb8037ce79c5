// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/yard/catch_test.h"
#include "core/yard/measured.h"
#include "core/yard/yard_checks.h"

namespace bw {

using Day = std::chrono::sys_days;

/// "2026-03-14" as a day; nothing if it is no date.
std::optional<Day> dayFor(std::string_view isoDate);
std::string isoDate(Day day);

/// One catch test of a nozzle set: its mean flow as a part of a new one's (1.04: 4 % more), with
/// its standard uncertainty (over 0).
struct WearTest {
    std::string date;  ///< ISO
    Measured<double> ofNew;
};

/// A catch test as a point of the trend: its mean against a new nozzle's flow at the pressure
/// `held`
/// (> 0). Counted: the readings' errors, the gauge's (square-root law), and that some nozzles stand
/// for all `nozzles` of the set with the spread between them. Nothing if the flow of a new one is
/// not known (`meanOfNew`), or one nozzle of several was caught.
std::optional<WearTest> wearTest(const std::string& date, const CatchSummary& summary,
                                 Pressure held, int nozzles, const ReadingErrors& errors = {});

/// A straight line through the tests of one nozzle set, and when it passes the limit.
struct WearTrend {
    Measured<double> perYear;     ///< part of a new one's flow; 0.03 a year
    Measured<double> atLast;      ///< the line on the day of the last test
    Day lastTest;                 ///< of those given
    double middleBefore = 0.0;    ///< days from the tests' weighted middle to the last one
    Day passes;                   ///< best estimate
    std::optional<Day> earliest;  ///< k = 2; nothing: may be past it already
    std::optional<Day> latest;    ///< k = 2; nothing: the tests set no end to it
    YardSum shown;                ///< "yard.wear_..."
    bool isScattered = false;     ///< the tests lie further off the line than their errors say

    /// The line on a day, with its standard uncertainty: least at the tests' middle.
    Measured<double> at(Day day) const;
};

/// Least squares, each test weighted by its uncertainty; the band of the date is Fieller's (all
/// days on which the line, with k = 2 of its own spread, may stand at the limit). Tests that
/// scatter clearly more than their errors widen it. `limit`: part over new (0.10). Problems:
/// yard_no_runs, yard_bad_date, yard_not_positive (a flow, an uncertainty or the limit),
/// yard_wear_one_date, yard_wear_falls. Warnings: yard_wear_scatter, yard_wear_unsure (no latest
/// day).
/// A straight line is judgement: wear goes with hours and product, not with the calendar.
Result<WearTrend> wearTrend(std::vector<WearTest> tests, double limit = 0.10);

}  // namespace bw
