// SPDX-License-Identifier: GPL-3.0-or-later
// Wear of each nozzle set, from the catch tests as they were noted. All catches are invented.
#include "core/yard/wear_history.h"

#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

/// Ten nozzles, all giving the same part of a new one's 1.2 L/min at 3 bar.
StoredYardRecord test(RecordId id, const char* day, double ofNew, const char* set = "Fan 03",
                      RecordId machine = 1) {
    YardRecord r;
    r.kind = YardKind::CatchTest;
    r.check = "Y7";
    r.machineId = machine;
    r.machineName = machine == 1 ? "Trailed" : "Mounted";
    r.started = std::string(day) + "T08:00:00";
    r.finished = std::string(day) + "T09:00:00";
    r.catchTest.set = set;
    r.catchTest.pressure = Sourced<Pressure>(build::bar(3));
    r.catchTest.newFlow = Sourced<Flow>(build::lpm(1.2));
    r.catchTest.sections = {5, 5};
    for (int n = 1; n <= 10; ++n)
        r.catchTest.catches.push_back(
            {n, false, Volume::fromSi(1.2e-3 * ofNew), make<Duration>(60, Unit::Second), ""});
    return {id, r};
}

// By hand: 2 % over new, 730 days later 6 %; 4 % more takes 730 days more: 29 February 2028.
TEST(WearHistory, AMachinesSetIsFollowedThroughTheYears) {
    const auto all = wearHistories({test(2, "2026-03-01", 1.06), test(1, "2024-03-01", 1.02),
                                    test(3, "2026-03-02", 1.01, "Fan 04"),
                                    test(4, "2025-03-01", 1.09, "Fan 03", 2)});
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].machineName, "Mounted");
    EXPECT_FALSE(all[0].trend.isOk());
    EXPECT_EQ(all[0].trend.problem().code, "yard_wear_one_date");
    EXPECT_EQ(all[2].set, "Fan 04");
    const WearHistory& fan = all[1];
    EXPECT_EQ(fan.set, "Fan 03");
    EXPECT_EQ(fan.records, (std::vector<RecordId>{1, 2}));
    ASSERT_TRUE(fan.trend.isOk());
    EXPECT_NEAR(fan.trend->perYear.value, 0.02, 2e-4);
    EXPECT_EQ(isoDate(fan.trend->passes), "2028-02-29");
}

TEST(WearHistory, WhatIsNotFinishedOrSaysNothingDoesNotCount) {
    auto open = test(1, "2024-03-01", 1.02);
    open.record.finished.clear();
    auto unnamed = test(2, "2024-03-01", 1.02, "");
    EXPECT_TRUE(wearHistories({open, unnamed}).empty());
    auto noNew = test(3, "2025-03-01", 1.02);
    noNew.record.catchTest.newFlow.reset();
    auto noPressure = test(4, "2025-04-01", 1.02);
    noPressure.record.catchTest.pressure.reset();
    const auto all = wearHistories({noNew, noPressure});
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].leftOut, 2);
    EXPECT_TRUE(all[0].tests.empty());
    EXPECT_EQ(all[0].trend.problem().code, "yard_no_runs");
}

TEST(WearHistory, TheLimitIsThatOfTheLastTest) {
    auto first = test(1, "2024-03-01", 1.02);
    auto last = test(2, "2026-03-01", 1.06);
    last.record.catchTest.limitOfNew = 0.08;
    const auto all = wearHistories({first, last});
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].limit, 0.08);
    EXPECT_EQ(isoDate(all[0].trend->passes).substr(0, 7), "2027-03");
}

}  // namespace
}  // namespace bw
