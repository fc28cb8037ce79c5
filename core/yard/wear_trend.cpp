// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/wear_trend.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/chi_squared.hpp>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace bw {
namespace {

constexpr double kDaysAYear = 365.25;
constexpr double kCover = 2.0;
constexpr double kScatterLevel = 0.99;  // judgement: one honest series in a hundred is called out
constexpr double kFarDays = 100 * 365.25;  // beyond that a date says nothing

std::optional<int> wholeNumber(std::string_view text) {
    int value = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool isWhole = problem == std::errc() && end == text.data() + text.size();
    return isWhole && value >= 0 ? std::optional(value) : std::nullopt;
}

/// Days since the first test, with what was found.
struct Point {
    double day = 0.0;
    double value = 0.0;
    double weight = 1.0;
};

/// value = mean + slope * (day - middle); the two are independent of each other.
struct Line {
    double middle = 0.0;
    double mean = 0.0;
    double slope = 0.0;  ///< a day
    double meanVariance = 0.0;
    double slopeVariance = 0.0;
    bool isScattered = false;

    double at(double day) const { return mean + slope * (day - middle); }
    double varianceAt(double day) const {
        return meanVariance + slopeVariance * (day - middle) * (day - middle);
    }
};

/// Widens the line where its points lie clearly further off than their errors allow.
void countScatter(const std::vector<Point>& points, Line& line) {
    const double freedom = double(points.size()) - 2;
    if (freedom < 1) return;
    double squares = 0.0;
    for (const auto& p : points) squares += p.weight * std::pow(p.value - line.at(p.day), 2);
    const boost::math::chi_squared expected(freedom);
    line.isScattered = squares > boost::math::quantile(expected, kScatterLevel);
    if (!line.isScattered) return;
    line.meanVariance *= squares / freedom;
    line.slopeVariance *= squares / freedom;
}

/// Needs two days or more.
Line fitted(const std::vector<Point>& points) {
    Line line;
    double weights = 0.0;
    for (const auto& p : points) {
        weights += p.weight;
        line.middle += p.weight * p.day;
        line.mean += p.weight * p.value;
    }
    line.middle /= weights;
    line.mean /= weights;
    double squares = 0.0;
    double products = 0.0;
    for (const auto& p : points) {
        squares += p.weight * (p.day - line.middle) * (p.day - line.middle);
        products += p.weight * (p.day - line.middle) * p.value;
    }
    line.slope = products / squares;
    line.meanVariance = 1 / weights;
    line.slopeVariance = 1 / squares;
    countScatter(points, line);
    return line;
}

struct Band {
    std::optional<double> from;  ///< days since the first test
    std::optional<double> to;
};

/// All days with (line - level)² <= k²·variance of the line there: a quadratic in the day. With a
/// slope that may be zero the days have no end.
Band fieller(const Line& line, double level) {
    const double gap = level - line.mean;
    const double a = line.slope * line.slope - kCover * kCover * line.slopeVariance;
    const double halfB = line.slope * gap;
    const double c = gap * gap - kCover * kCover * line.meanVariance;
    const double under = halfB * halfB - a * c;
    if (a == 0 || under < 0 || (a < 0 && c <= 0)) return {};
    const double root = std::sqrt(under);
    const double one = line.middle + (halfB - root) / a;
    const double other = line.middle + (halfB + root) / a;
    if (a > 0) return {one, other};
    return {std::max(one, other), std::nullopt};
}

std::optional<Problem> refusal(const std::vector<WearTest>& tests, double limit) {
    if (tests.empty()) return error("yard_no_runs", "tests");
    if (!(limit > 0) || !std::isfinite(limit)) return error("yard_not_positive", "limit");
    for (const auto& test : tests) {
        if (!dayFor(test.date)) return error("yard_bad_date", "tests", {{"date", test.date}});
        const bool isGood = test.ofNew.value > 0 && test.ofNew.uncertainty > 0 &&
                            std::isfinite(test.ofNew.value + test.ofNew.uncertainty);
        if (!isGood) return error("yard_not_positive", "tests");
    }
    if (tests.front().date == tests.back().date) return error("yard_wear_one_date", "tests");
    return std::nullopt;
}

std::vector<Point> pointsOf(const std::vector<WearTest>& tests) {
    std::vector<Point> out;
    const Day first = *dayFor(tests.front().date);
    for (const auto& test : tests)
        out.push_back({double((*dayFor(test.date) - first).count()), test.ofNew.value,
                       std::pow(test.ofNew.uncertainty, -2)});
    return out;
}

Day dayAfter(Day first, double days) {
    return first + std::chrono::days(std::lround(std::clamp(days, -kFarDays, kFarDays)));
}

void addWords(WearTrend& trend, double limit) {
    trend.shown.sum.push_back({"yard.wear_slope",
                               {{"percent", anyQuantity(trend.perYear.value * 100)},
                                {"spread", anyQuantity(trend.perYear.uncertainty * 200)}}});
    Fact passes{"yard.wear_passes_open",
                {{"limit", anyQuantity(limit * 100)}, {"date", isoDate(trend.passes)}}};
    if (trend.earliest) {
        passes.code = "yard.wear_passes_from";
        passes.arguments.push_back({"earliest", isoDate(*trend.earliest)});
    }
    if (trend.latest) {
        passes.code = trend.earliest ? "yard.wear_passes" : "yard.wear_passes_until";
        passes.arguments.push_back({"latest", isoDate(*trend.latest)});
    }
    trend.shown.sum.push_back(passes);
    if (trend.isScattered) trend.shown.warnings.push_back(warning("yard_wear_scatter", "tests"));
    if (!trend.latest) trend.shown.warnings.push_back(warning("yard_wear_unsure", "tests"));
}

}  // namespace

std::optional<Day> dayFor(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = wholeNumber(text.substr(0, 4));
    const auto month = wholeNumber(text.substr(5, 2));
    const auto day = wholeNumber(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(unsigned(*month)),
                                           std::chrono::day(unsigned(*day))};
    return date.ok() ? std::optional(Day(date)) : std::nullopt;
}

std::string isoDate(Day day) {
    const std::chrono::year_month_day date(day);
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", int(date.year()),
                  unsigned(date.month()), unsigned(date.day()));
    return text.data();
}

std::optional<WearTest> wearTest(const std::string& date, const CatchSummary& summary,
                                 Pressure held, int nozzles, const ReadingErrors& errors) {
    const double caught = double(summary.nozzles.size());
    const bool isSample = caught < nozzles;
    const bool isKnown = summary.meanOfNew && held.si() > 0 && (!isSample || summary.cv);
    if (!isKnown) return std::nullopt;
    const double reading = summary.mean.uncertainty / summary.mean.value;
    const double gauge = 0.5 * (errors.gauge / held);
    // Of all nozzles caught nothing is left to chance.
    const double sample = isSample ? *summary.cv * std::sqrt((1 - caught / nozzles) / caught) : 0.0;
    const double part = std::hypot(reading, gauge, sample);
    return WearTest{date, {*summary.meanOfNew, *summary.meanOfNew * part}};
}

Measured<double> WearTrend::at(Day day) const {
    const double years = double((day - lastTest).count()) / kDaysAYear;
    const double before = middleBefore / kDaysAYear;
    const double further = (years + before) * (years + before) - before * before;
    const double variance = atLast.uncertainty * atLast.uncertainty +
                            perYear.uncertainty * perYear.uncertainty * further;
    return {atLast.value + perYear.value * years, std::sqrt(std::max(0.0, variance))};
}

Result<WearTrend> wearTrend(std::vector<WearTest> tests, double limit) {
    std::sort(tests.begin(), tests.end(),
              [](const WearTest& a, const WearTest& b) { return a.date < b.date; });
    if (auto bad = refusal(tests, limit)) return *bad;
    const auto points = pointsOf(tests);
    const Line line = fitted(points);
    if (!(line.slope > 0)) return error("yard_wear_falls", "tests");
    const Day first = *dayFor(tests.front().date);
    const double last = points.back().day;
    const double passes = line.middle + (1 + limit - line.mean) / line.slope;
    const Band band = fieller(line, 1 + limit);
    WearTrend out;
    out.perYear = {line.slope * kDaysAYear, std::sqrt(line.slopeVariance) * kDaysAYear};
    out.atLast = {line.at(last), std::sqrt(line.varianceAt(last))};
    out.lastTest = *dayFor(tests.back().date);
    out.middleBefore = last - line.middle;
    out.passes = dayAfter(first, passes);
    if (band.from) out.earliest = dayAfter(first, *band.from);
    if (band.to && *band.to < kFarDays) out.latest = dayAfter(first, *band.to);
    out.isScattered = line.isScattered;
    addWords(out, limit);
    return out;
}

}  // namespace bw
