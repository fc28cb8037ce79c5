// SPDX-License-Identifier: GPL-3.0-or-later
// Catch tests; all catches are invented.
#include <gtest/gtest.h>

#include "core/yard/catch_test.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using build::lpm;

CatchEntry entry(int nozzle, double flow) {
    return {nozzle, {lpm(flow), lpm(0.005)}, std::nullopt};
}

// By hand: mean of 1.00, 1.00, 1.00, 0.90, 1.10 is 1.00; sample spread √(0.02 / 4) = 7.07 %.
TEST(CatchTest, TellsLowFromHighAndGivesTheSpread) {
    const auto summary = catchSummary(
        {entry(1, 1.0), entry(2, 1.0), entry(3, 1.0), entry(4, 0.9), entry(5, 1.1)}, {2, 3}, {});
    ASSERT_TRUE(summary.isOk());
    EXPECT_NEAR(summary->mean.value / lpm(1), 1.0, 1e-12);
    EXPECT_NEAR(*summary->cv, 0.070711, 1e-6);
    EXPECT_EQ(summary->nozzles[3].verdict, CatchVerdict::CleanAndCatchAgain);
    EXPECT_EQ(summary->nozzles[4].verdict, CatchVerdict::Replace);
    EXPECT_EQ(summary->nozzles[0].verdict, CatchVerdict::Good);
    EXPECT_FALSE(summary->replaceSet);
    ASSERT_EQ(summary->sections.size(), 2u);
    EXPECT_NEAR(summary->sections[1].mean / lpm(1), 1.0, 1e-12);
}

TEST(CatchTest, LowAfterCleaningIsReplaced) {
    auto entries = std::vector{entry(1, 1.0), entry(2, 1.0), entry(3, 0.8)};
    entries[2].again = Measured<Flow>{lpm(0.85), lpm(0.005)};
    EXPECT_EQ(catchSummary(entries, {}, {})->nozzles[2].verdict, CatchVerdict::Replace);
    entries[2].again = Measured<Flow>{lpm(1.0), lpm(0.005)};
    EXPECT_EQ(catchSummary(entries, {}, {})->nozzles[2].verdict, CatchVerdict::Good);
}

TEST(CatchTest, TwoHighOrAHighMeanIsTheSet) {
    EXPECT_TRUE(
        catchSummary({entry(1, 1.12), entry(2, 1.12), entry(3, 1.0), entry(4, 1.0)}, {}, lpm(1.0))
            ->replaceSet);
    EXPECT_TRUE(catchSummary({entry(1, 1.11)}, {}, lpm(1.0))->replaceSet);
    EXPECT_FALSE(catchSummary({entry(1, 1.10)}, {}, lpm(1.0))->replaceSet);
}

// By hand: 0.5 L in 30 s with 10 mL and 0.3 s: √(0.02² + 0.01²) = 2.24 %; 2 L in 120 s: 0.56 %.
TEST(CatchTest, WarnsWhereJugAndWatchCannotTell) {
    const auto flow = caughtFlow(make<Volume>(0.5, Unit::Litre), Duration::fromSi(30));
    EXPECT_NEAR(flow.uncertainty / flow.value, 0.02236, 1e-4);
    const auto small = caughtFlow(make<Volume>(0.25, Unit::Litre), Duration::fromSi(15));
    EXPECT_EQ(catchSummary({{1, small, {}}}, {}, {})->warnings.at(0).code, "yard_catch_coarse");
    const auto large = caughtFlow(make<Volume>(2, Unit::Litre), Duration::fromSi(120));
    EXPECT_TRUE(catchSummary({{1, large, {}}}, {}, {})->warnings.empty());
}

TEST(CatchTest, RefusesAndChooses) {
    EXPECT_EQ(catchSummary({}, {}, {}).problem().code, "yard_no_runs");
    EXPECT_EQ(catchSummary({entry(1, 1), entry(1, 1)}, {}, {}).problem().code, "yard_nozzle_twice");
    EXPECT_EQ(everyNozzle(14, 6), (std::vector{1, 7, 13}));
    EXPECT_EQ(sectionNozzles({2, 3}, 1), (std::vector{3, 4, 5}));
}

TEST(CatchTest, ALimitMustBeOverZero) {
    const std::vector<CatchEntry> entries{{1, {build::lpm(1.2), build::lpm(0.01)}, {}}};
    for (const double bad : {0.0, -0.05, std::nan("")}) {
        EXPECT_EQ(catchSummary(entries, {}, {}, {bad, 0.1}).problem().where, "limit_of_mean");
        EXPECT_EQ(catchSummary(entries, {}, {}, {0.05, bad}).problem().where, "limit_of_new");
    }
    EXPECT_TRUE(catchSummary(entries, {}, {}, {0.05, 0.1}).isOk());
}

}  // namespace
}  // namespace bw
