// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures of catch tests; all catches are invented.
#include "core/yard/catch_picture.h"

#include <gtest/gtest.h>

namespace bw {
namespace {

Flow litres(double perMinute) {
    return make<Flow>(perMinute, Unit::LitrePerMinute);
}

Result<CatchSummary> summaryFor(std::vector<double> flows, std::optional<Flow> fresh) {
    std::vector<CatchEntry> entries;
    for (const double flow : flows)
        entries.push_back({int(entries.size()) + 1, {litres(flow), Flow{}}, std::nullopt});
    return catchSummary(entries, {2, 2}, fresh);
}

TEST(CatchPicture, PartsAreOfANewNozzleWhereItsFlowIsKnown) {
    const auto summary = summaryFor({1.20, 1.24, 1.30, 1.22}, litres(1.20));
    ASSERT_TRUE(summary.isOk());
    const auto picture = catchPicture(*summary, litres(1.20));
    EXPECT_TRUE(picture.isOfNew);
    // Mean 1.24 against 1.20 new: 5 % over the mean is 1.085 of new, nearer than 10 % over new.
    EXPECT_NEAR(picture.mean, 1.24 / 1.20, 1e-12);
    EXPECT_NEAR(picture.low, 0.95 * 1.24 / 1.20, 1e-12);
    EXPECT_NEAR(picture.high, 1.05 * 1.24 / 1.20, 1e-12);
    EXPECT_FALSE(picture.highIsOfNew);
    EXPECT_NEAR(picture.nozzles[2], 1.30 / 1.20, 1e-12);
    EXPECT_NEAR(picture.sections[1], 1.26 / 1.20, 1e-12);
}

TEST(CatchPicture, TheNearerOfTheTwoUpperLimitsIsShown) {
    const auto summary = summaryFor({1.30, 1.30, 1.30, 1.30}, litres(1.20));
    ASSERT_TRUE(summary.isOk());
    // 5 % over the mean is 1.1375 of a new one; 10 % over a new one comes first.
    const auto picture = catchPicture(*summary, litres(1.20));
    EXPECT_TRUE(picture.highIsOfNew);
    EXPECT_NEAR(picture.high, 1.10, 1e-12);
}

TEST(CatchPicture, WithoutANewFlowTheMeanIsTheBase) {
    const auto summary = summaryFor({1.0, 1.1, 0.9, 1.0}, std::nullopt);
    ASSERT_TRUE(summary.isOk());
    const auto picture = catchPicture(*summary, std::nullopt);
    EXPECT_FALSE(picture.isOfNew);
    EXPECT_NEAR(picture.mean, 1.0, 1e-12);
    EXPECT_NEAR(picture.nozzles[1], 1.1, 1e-12);
    EXPECT_NEAR(picture.base.si(), litres(1.0).si(), 1e-15);
}

TEST(CatchPicture, TheLeastTimeIsWhereTheWarningEnds) {
    const ReadingErrors errors;
    for (const double flow : {0.3, 0.8, 1.58, 4.0}) {
        const double least = leastCatchTime(litres(flow), litres(flow), 0.05).si();
        for (const double factor : {0.99, 1.01}) {
            const auto time = Duration::fromSi(least * factor);
            const CatchEntry entry{1, caughtFlow(litres(flow) * time, time, errors), std::nullopt};
            const auto summary = catchSummary({entry}, {}, std::nullopt);
            ASSERT_TRUE(summary.isOk());
            EXPECT_EQ(summary->warnings.empty(), factor > 1) << flow << " L/min";
        }
    }
}

}  // namespace
}  // namespace bw
