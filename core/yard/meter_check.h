// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/model/choice.h"
#include "core/yard/yard_checks.h"

namespace bw {

/// How the number in a controller counts: pulses for so much, or so much for a pulse. Asked for,
/// never guessed: the two are corrected in opposite directions.
enum class PulseConvention { PulsesPer, PerPulse };
template <>
struct ChoiceNames<PulseConvention> {
    static constexpr std::array<std::pair<PulseConvention, std::string_view>, 2> names{
        {{PulseConvention::PulsesPer, "pulses_per"}, {PulseConvention::PerPulse, "per_pulse"}}};
};

/// The corrected number: pulses per volume (or distance): old · shown / true; volume (or distance)
/// per pulse: old · true / shown. Common practice, no source. Its unit is that of `old`.
constexpr double correctedNumber(double old, PulseConvention convention, double shownOverTrue) {
    return convention == PulseConvention::PulsesPer ? old * shownOverTrue : old / shownOverTrue;
}
/// Part by which the rate misses its target while a loop trusts such a meter: -0.048 for 1.05.
constexpr double rateErrorFrom(double shownOverTrue) {
    return 1 / shownOverTrue - 1;
}

/// Y5: known volumes through the meter.
struct MeterRun {
    Measured<Volume> shown;
    Measured<Volume> known;
};
struct MeterCheck {
    Measured<double> shownOverTrue;          ///< 1.05 shows 5 % too much; mean of the runs
    std::optional<Measured<double>> number;  ///< corrected; nothing without an old one
    Measured<double> rateError;              ///< part; -0.048
    YardSum shown;
};
/// One run or more; `old` > 0 with its convention, or nothing. Problems: yard_no_runs,
/// yard_not_positive. Warnings: yard_runs_disagree (further apart than their errors, k = 2),
/// yard_volume_small (under 200 L), yard_meter_far (more than 15 % off: look for another reason).
Result<MeterCheck> meterCheck(const std::vector<MeterRun>& runs, std::optional<double> old,
                              PulseConvention convention);

/// Jug method: the meter's flow against nozzles caught with a jug: shown / (mean catch · nozzles).
/// `caught`: flow of each nozzle caught (one or more), `error` of each. Sampling is counted: the
/// mean of some stands for all with the spread between those caught. Problems: yard_no_runs,
/// yard_not_positive.
Result<MeterCheck> jugMethod(Measured<Flow> shown, const std::vector<Measured<Flow>>& caught,
                             int nozzles, std::optional<double> old, PulseConvention convention);

/// Y6: a measured course, both ways.
struct CourseReadings {
    Measured<Length> course;
    std::vector<Measured<Duration>> times;  ///< one a run; both ways if two or more
    std::optional<Measured<Speed>> shown;   ///< steady reading on the display
    std::optional<double> number;           ///< old speed number
    PulseConvention convention = PulseConvention::PulsesPer;
};
struct CourseCheck {
    Measured<Speed> speed;  ///< course · runs / all seconds
    std::optional<Measured<double>> shownOverTrue;
    std::optional<Measured<double>> number;
    YardSum shown;
};
/// Problems: yard_no_runs, yard_not_positive. Warnings: yard_one_way, yard_course_short (under
/// 60 m: the watch weighs too much; judgement), yard_ways_differ (over 5 %).
Result<CourseCheck> courseCheck(const CourseReadings& readings);

/// Course on which ounces caught from one nozzle equal gallons an acre (a 1/128 acre): 1/128 acre
/// over the width of the nozzle. Width > 0.
Length ounceCourse(Length width);
/// Rate from what was caught over a plot (> 0).
constexpr AreaRate rateFromPlot(Volume caught, Area plot) {
    return caught / plot;
}

}  // namespace bw
