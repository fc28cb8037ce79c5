// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/meter_check.h"

#include <algorithm>
#include <cmath>

#include "core/yard/course_speed.h"

namespace bw {
namespace {

using Numbers = std::vector<double>;

template <class T>
Argument arg(const char* name, T value) {
    return {name, anyQuantity(value)};
}

bool isPositive(double x) {
    return x > 0 && std::isfinite(x);
}

Measured<double> numberFor(double old, PulseConvention convention, const Measured<double>& ratio) {
    return measuredFrom<double>(
        [&](const Numbers& n) { return correctedNumber(old, convention, n[0]); },
        {bareNumber(ratio)});
}

void finish(MeterCheck& check, std::optional<double> old, PulseConvention convention) {
    const double ratio = check.shownOverTrue.value;
    check.rateError = measuredFrom<double>([](const Numbers& n) { return rateErrorFrom(n[0]); },
                                           {bareNumber(check.shownOverTrue)});
    check.shown.sum.push_back({ratio >= 1 ? "yard.meter_high" : "yard.meter_low",
                               {arg("percent", std::abs(ratio - 1) * 100),
                                arg("spread", check.shownOverTrue.uncertainty * 200)}});
    if (std::abs(ratio - 1) > 0.15) check.shown.warnings.push_back(warning("yard_meter_far"));
    if (!old) return;
    check.number = numberFor(*old, convention, check.shownOverTrue);
    check.shown.sum.push_back(
        {convention == PulseConvention::PulsesPer ? "yard.number_pulses_per"
                                                  : "yard.number_per_pulse",
         {arg("old", *old), arg("ratio", ratio), arg("value", check.number->value)}});
}

Measured<double> ratioOf(const MeterRun& run) {
    return measuredFrom<double>([](const Numbers& n) { return n[0] / n[1]; },
                                {bareNumber(run.shown), bareNumber(run.known)});
}

/// Mean of independent values; their uncertainties add as squares.
Measured<double> meanOf(const std::vector<Measured<double>>& values) {
    double sum = 0.0;
    double squares = 0.0;
    for (const auto& v : values) {
        sum += v.value;
        squares += v.uncertainty * v.uncertainty;
    }
    const double n = double(values.size());
    return {sum / n, std::sqrt(squares) / n};
}

bool disagree(const std::vector<Measured<double>>& values) {
    const auto less = [](const auto& a, const auto& b) { return a.value < b.value; };
    const auto [low, high] = std::minmax_element(values.begin(), values.end(), less);
    return high->value - low->value > 2 * std::hypot(low->uncertainty, high->uncertainty) + 1e-12;
}

/// Standard deviation of the mean of a sample out of `all`, from the spread within the sample.
double samplingError(const std::vector<Measured<Flow>>& caught, double mean, int all) {
    const double n = double(caught.size());
    if (caught.size() < 2 || n >= all) return 0.0;
    double squares = 0.0;
    for (const auto& one : caught) squares += std::pow(one.value.si() - mean, 2);
    return std::sqrt(squares / (n - 1) / n * (1 - n / all));
}

double readingError(const std::vector<Measured<Flow>>& caught) {
    double squares = 0.0;
    for (const auto& one : caught) squares += std::pow(one.uncertainty.si(), 2);
    return std::sqrt(squares) / double(caught.size());
}

void addCourseWarnings(const CourseReadings& r, CourseCheck& out) {
    auto& warnings = out.shown.warnings;
    if (r.times.size() < 2) warnings.push_back(warning("yard_one_way", "times"));
    if (r.course.value.si() < 60) warnings.push_back(warning("yard_course_short", "course"));
    const auto less = [](const auto& a, const auto& b) { return a.value < b.value; };
    const auto [low, high] = std::minmax_element(r.times.begin(), r.times.end(), less);
    if (high->value / low->value > 1.05) warnings.push_back(warning("yard_ways_differ", "times"));
}

Measured<Speed> speedOf(const CourseReadings& r) {
    std::vector<UncertainNumber> numbers{bareNumber(r.course)};
    for (const auto& time : r.times) numbers.push_back(bareNumber(time));
    return measuredFrom<Speed>(
        [](const Numbers& n) {
            double seconds = 0.0;
            for (std::size_t i = 1; i < n.size(); ++i) seconds += n[i];
            return courseSpeed(Length::fromSi(n[0] * double(n.size() - 1)),
                               Duration::fromSi(seconds))
                .si();
        },
        numbers);
}

}  // namespace

Result<MeterCheck> meterCheck(const std::vector<MeterRun>& runs, std::optional<double> old,
                              PulseConvention convention) {
    if (runs.empty()) return error("yard_no_runs", "runs");
    if (old && !isPositive(*old)) return error("yard_not_positive", "number");
    MeterCheck check;
    std::vector<Measured<double>> ratios;
    for (const auto& run : runs) {
        if (!isPositive(run.shown.value.si()) || !isPositive(run.known.value.si()))
            return error("yard_not_positive", "runs");
        ratios.push_back(ratioOf(run));
        check.shown.sum.push_back({"yard.meter_run",
                                   {arg("shown", run.shown.value), arg("known", run.known.value),
                                    arg("ratio", ratios.back().value)}});
        if (run.known.value.si() < 0.2 - 1e-9)
            check.shown.warnings.push_back(warning("yard_volume_small", "runs"));
    }
    check.shownOverTrue = meanOf(ratios);
    if (disagree(ratios)) check.shown.warnings.push_back(warning("yard_runs_disagree", "runs"));
    finish(check, old, convention);
    return check;
}

Result<MeterCheck> jugMethod(Measured<Flow> shown, const std::vector<Measured<Flow>>& caught,
                             int nozzles, std::optional<double> old, PulseConvention convention) {
    if (caught.empty()) return error("yard_no_runs", "caught");
    if (!isPositive(shown.value.si()) || nozzles <= 0) return error("yard_not_positive", "flow");
    if (old && !isPositive(*old)) return error("yard_not_positive", "number");
    double mean = 0.0;
    for (const auto& one : caught) {
        if (!isPositive(one.value.si())) return error("yard_not_positive", "caught");
        mean += one.value.si() / double(caught.size());
    }
    const double error = std::hypot(samplingError(caught, mean, nozzles), readingError(caught));
    MeterCheck check;
    check.shownOverTrue =
        measuredFrom<double>([&](const Numbers& n) { return n[0] / (n[1] * nozzles); },
                             {bareNumber(shown), UncertainNumber{mean, error}});
    check.shown.sum.push_back(
        {"yard.jug",
         {arg("mean", Flow::fromSi(mean)), arg("nozzles", double(nozzles)),
          arg("boom", Flow::fromSi(mean * nozzles)), arg("shown", shown.value)}});
    finish(check, old, convention);
    return check;
}

Result<CourseCheck> courseCheck(const CourseReadings& r) {
    if (r.times.empty()) return error("yard_no_runs", "times");
    if (!isPositive(r.course.value.si())) return error("yard_not_positive", "course");
    for (const auto& time : r.times) {
        if (!isPositive(time.value.si())) return error("yard_not_positive", "times");
    }
    if (r.shown && !isPositive(r.shown->value.si())) return error("yard_not_positive", "shown");
    if (r.number && !isPositive(*r.number)) return error("yard_not_positive", "number");
    CourseCheck out;
    out.speed = speedOf(r);
    out.shown.sum.push_back(
        {"yard.course",
         {arg("course", r.course.value), arg("runs", double(r.times.size())),
          arg("value", out.speed.value), arg("spread", out.speed.uncertainty * 2.0)}});
    addCourseWarnings(r, out);
    if (!r.shown) return out;
    out.shownOverTrue = measuredFrom<double>([](const Numbers& n) { return n[0] / n[1]; },
                                             {bareNumber(*r.shown), bareNumber(out.speed)});
    out.shown.sum.push_back(
        {"yard.speed_shown",
         {arg("shown", r.shown->value), arg("percent", (out.shownOverTrue->value - 1) * 100)}});
    if (!r.number) return out;
    out.number = numberFor(*r.number, r.convention, *out.shownOverTrue);
    out.shown.sum.push_back({r.convention == PulseConvention::PulsesPer
                                 ? "yard.speed_number_pulses_per"
                                 : "yard.speed_number_per_pulse",
                             {arg("old", *r.number), arg("ratio", out.shownOverTrue->value),
                              arg("value", out.number->value)}});
    return out;
}

Length ounceCourse(Length width) {
    const Area plot = make<Area>(1, Unit::Acre) / 128.0;
    return plot / width;
}

}  // namespace bw
