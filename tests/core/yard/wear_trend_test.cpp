// SPDX-License-Identifier: GPL-3.0-or-later
// Wear of a nozzle set over the years. Tests and sets are invented; sums worked by hand.
#include "core/yard/wear_trend.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

WearTest on(const char* date, double ofNew, double uncertainty = 0.005) {
    return {date, {ofNew, uncertainty}};
}
double years(Day a, Day b) {
    return double((b - a).count()) / 365.25;
}

TEST(WearTrend, DatesAreReadAndWritten) {
    EXPECT_EQ(isoDate(*dayFor("2024-02-29")), "2024-02-29");
    EXPECT_EQ((*dayFor("2025-03-01") - *dayFor("2024-03-01")).count(), 365);
    for (const auto* bad : {"2025-02-29", "2025-2-9", "14.03.2026", "", "2025-13-01", "2025-0a-01"})
        EXPECT_FALSE(dayFor(bad).has_value()) << bad;
}

// By hand: 2 % to 6 % in two years is 2 % a year; 10 % two years later. Spread of the slope:
// √2·0.5 % / 2 years = 0.354 % a year.
TEST(WearTrend, TwoTestsMakeALine) {
    const auto trend = wearTrend({on("2024-03-01", 1.02), on("2026-03-01", 1.06)});
    ASSERT_TRUE(trend.isOk());
    EXPECT_NEAR(trend->perYear.value, 0.02, 1e-4);
    EXPECT_NEAR(trend->perYear.uncertainty, 0.00354, 1e-4);
    EXPECT_NEAR(years(*dayFor("2028-03-01"), trend->passes), 0, 0.01);
    EXPECT_NEAR(trend->atLast.value, 1.06, 1e-12);
    EXPECT_NEAR(trend->atLast.uncertainty, 0.005, 1e-12);
    EXPECT_EQ(isoDate(trend->lastTest), "2026-03-01");
    ASSERT_TRUE(trend->earliest && trend->latest);
    EXPECT_LT(*trend->earliest, trend->passes);
    EXPECT_LT(trend->passes, *trend->latest);
    EXPECT_LT(trend->passes - *trend->earliest, *trend->latest - trend->passes)
        << "a slope that may be small stretches the late side";
}

// By hand, Fieller: t' from the middle in years, mean 4 %, gap 6 %, slope 2 %, variances
// 0.005²/2 and 0.005²/2, k = 2: (4 - 0.5) t'² - 24 t' + (36 - 0.5) = 0 in (%)²: 2.165, 4.692 years
// after 2025-03-01.
TEST(WearTrend, TheBandIsFiellers) {
    const auto trend = wearTrend({on("2024-03-01", 1.02), on("2026-03-01", 1.06)});
    const Day middle = *dayFor("2025-03-01");
    EXPECT_NEAR(years(middle, *trend->earliest), 2.165, 0.01);
    EXPECT_NEAR(years(middle, *trend->latest), 4.692, 0.01);
}

// By hand: in the middle of two like tests 0.5 %/√2 = 0.354 %; a year further on √2 times that; at
// the ends of the band k = 2 reaches the limit, which is how the band is meant.
TEST(WearTrend, TheLineOnADay) {
    const auto trend = wearTrend({on("2024-03-01", 1.02), on("2026-03-01", 1.06)});
    const auto middle = trend->at(*dayFor("2025-03-01"));
    EXPECT_NEAR(middle.value, 1.04, 1e-9);
    EXPECT_NEAR(middle.uncertainty, 0.003536, 1e-5);
    EXPECT_NEAR(trend->at(trend->lastTest).uncertainty, trend->atLast.uncertainty, 1e-12);
    const auto early = trend->at(*trend->earliest);
    EXPECT_NEAR(early.value + 2 * early.uncertainty, 1.10, 1e-4);
    const auto late = trend->at(*trend->latest);
    EXPECT_NEAR(late.value - 2 * late.uncertainty, 1.10, 1e-4);
}

TEST(WearTrend, ASurerTestWeighsMore) {
    const auto even =
        wearTrend({on("2023-03-01", 1.00), on("2024-03-01", 1.05), on("2025-03-01", 1.04)});
    const auto weighted =
        wearTrend({on("2023-03-01", 1.00), on("2024-03-01", 1.05, 0.05), on("2025-03-01", 1.04)});
    EXPECT_NEAR(weighted->atLast.value, 1.04, 0.001);
    EXPECT_GT(even->atLast.value, weighted->atLast.value);
}

TEST(WearTrend, RefusesWhatTellsNothing) {
    const auto code = [](std::vector<WearTest> tests, double limit = 0.10) {
        const auto trend = wearTrend(std::move(tests), limit);
        return trend ? std::string("ok") : trend.problem().code;
    };
    EXPECT_EQ(code({}), "yard_no_runs");
    EXPECT_EQ(code({on("2024-03-01", 1.02)}), "yard_wear_one_date");
    EXPECT_EQ(code({on("2024-03-01", 1.02), on("2024-03-01", 1.05)}), "yard_wear_one_date");
    EXPECT_EQ(code({on("2024-03-01", 1.05), on("2025-03-01", 1.02)}), "yard_wear_falls");
    EXPECT_EQ(code({on("2024-03-01", 1.02), on("2025-03-01", 1.02)}), "yard_wear_falls");
    EXPECT_EQ(code({on("2024-03-01", 1.02), on("last year", 1.05)}), "yard_bad_date");
    EXPECT_EQ(code({on("2024-03-01", 0.0), on("2025-03-01", 1.05)}), "yard_not_positive");
    EXPECT_EQ(code({on("2024-03-01", 1.0, 0.0), on("2025-03-01", 1.05)}), "yard_not_positive");
    EXPECT_EQ(code({on("2024-03-01", 1.0), on("2025-03-01", 1.05)}, 0.0), "yard_not_positive");
    EXPECT_EQ(code({on("2025-03-01", 1.05), on("2024-03-01", 1.02)}), "ok") << "any order";
}

TEST(WearTrend, ARiseThatMayBeNoneHasNoLatestDay) {
    const auto trend = wearTrend({on("2024-03-01", 1.02, 0.02), on("2025-03-01", 1.03, 0.02)});
    ASSERT_TRUE(trend.isOk());
    EXPECT_FALSE(trend->latest.has_value());
    EXPECT_EQ(trend->shown.warnings.at(0).code, "yard_wear_unsure");
    const auto worn = wearTrend({on("2024-03-01", 1.09, 0.02), on("2025-03-01", 1.11, 0.02)});
    EXPECT_FALSE(worn->earliest.has_value()) << "it may be past the limit already";
}

TEST(WearTrend, TestsOffTheLineAreCalledOutAndWidenIt) {
    const std::vector<WearTest> good{on("2022-03-01", 1.00), on("2023-03-01", 1.021),
                                     on("2024-03-01", 1.039), on("2025-03-01", 1.06)};
    auto scattered = good;
    scattered[1].ofNew.value = 1.06;
    scattered[2].ofNew.value = 1.00;
    EXPECT_TRUE(wearTrend(good)->shown.warnings.empty());
    const auto trend = wearTrend(scattered);
    ASSERT_TRUE(trend.isOk());
    EXPECT_TRUE(trend->isScattered);
    EXPECT_EQ(trend->shown.warnings.at(0).code, "yard_wear_scatter");
    EXPECT_GT(trend->perYear.uncertainty, 2 * wearTrend(good)->perYear.uncertainty);
}

// The true day lies within the band in 95 % of 1,000 tries (93 to 97.5 % for chance).
TEST(WearTrend, TheTrueDayLiesInTheBand) {
    std::mt19937 random(20260314);
    std::uniform_real_distribution<double> slope(0.02, 0.05);
    std::uniform_real_distribution<double> sure(0.003, 0.01);
    std::uniform_int_distribution<int> apart(200, 500);
    std::uniform_int_distribution<int> count(2, 6);
    std::normal_distribution<double> normal;
    const Day first = *dayFor("2020-03-01");
    int held = 0;
    int tries = 0;
    int closed = 0;
    while (tries < 1000) {
        const double perDay = slope(random) / 365.25;
        std::vector<WearTest> tests;
        Day day = first;
        for (int i = count(random); i > 0; --i) {
            const double truth = 1 + perDay * double((day - first).count());
            const double error = sure(random);
            tests.push_back({isoDate(day), {truth + error * normal(random), error}});
            day += std::chrono::days(apart(random));
        }
        const auto trend = wearTrend(tests);
        if (!trend) continue;  // a rise lost in its errors is refused, and says so
        ++tries;
        const Day truth = first + std::chrono::days(std::lround(0.10 / perDay));
        held += (!trend->earliest || *trend->earliest <= truth) &&
                (!trend->latest || truth <= *trend->latest);
        closed += trend->earliest && trend->latest;
    }
    EXPECT_GE(held, 930);
    EXPECT_LE(held, 975);
    EXPECT_GT(closed, 800) << "bands without an end would hold anything";
}

// By hand: mean 1.25 of 1.20 is 1.0417. Readings 0.01/√2/1.25 = 0.5657 %; gauge half of
// 0.05/2.5 = 1 %; sample: spread √2·0.05/1.25 = 5.657 %, times √((1 - 2/8) / 2) = 3.464 %. Together
// 3.650 %.
TEST(WearTrend, ACatchTestIsAPoint) {
    const auto flow = [](double x) { return build::lpm(x); };
    const std::vector<CatchEntry> entries{{1, {flow(1.2), flow(0.01)}, {}},
                                          {5, {flow(1.3), flow(0.01)}, {}}};
    const auto summary = catchSummary(entries, {}, flow(1.2));
    const auto point = wearTest("2026-03-14", *summary, build::bar(2.5), 8);
    ASSERT_TRUE(point.has_value());
    EXPECT_NEAR(point->ofNew.value, 1.0417, 1e-4);
    EXPECT_NEAR(point->ofNew.uncertainty / point->ofNew.value, 0.03650, 1e-4);
    const auto whole = wearTest("2026-03-14", *summary, build::bar(2.5), 2);
    EXPECT_NEAR(whole->ofNew.uncertainty / whole->ofNew.value, 0.01149, 1e-4);
    EXPECT_FALSE(wearTest("", *catchSummary(entries, {}, {}), build::bar(2.5), 8).has_value());
    const auto one = catchSummary({entries[0]}, {}, flow(1.2));
    EXPECT_FALSE(wearTest("", *one, build::bar(2.5), 8).has_value());
    EXPECT_FALSE(wearTest("", *summary, build::bar(0), 8).has_value());
}

TEST(WearTrend, EveryOutcomeHasItsWords) {
    const auto words = Sentences::shipped();
    for (const auto& tests :
         {std::vector{on("2024-03-01", 1.02), on("2026-03-01", 1.06)},
          std::vector{on("2024-03-01", 1.02, 0.02), on("2025-03-01", 1.03, 0.02)},
          std::vector{on("2024-03-01", 1.09, 0.02), on("2025-03-01", 1.11, 0.02)},
          std::vector{on("2020-03-01", 1.0), on("2025-03-01", 1.098)}}) {
        const auto trend = wearTrend(tests);
        ASSERT_TRUE(trend.isOk());
        for (const auto& fact : trend->shown.sum) {
            const auto text = words.of(fact, {});
            EXPECT_EQ(text.find_first_of("{<"), std::string::npos) << text;
        }
        for (const auto& problem : trend->shown.warnings)
            EXPECT_TRUE(words.has("problem." + problem.code)) << problem.code;
    }
}

}  // namespace
}  // namespace bw
