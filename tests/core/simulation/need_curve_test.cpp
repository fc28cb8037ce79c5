// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/need_curve.h"

#include <gtest/gtest.h>

#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/window/speed_window.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

/// The speed window works the same line out by itself.
TEST(NeedCurve, IsTheSpeedWindowsOwnCurve) {
    const build::LoopCase c = build::trailedCase();
    const auto model = WindowModel::make(c.machine, c.nozzle, c.job).value();
    const auto curve = needCurve(c.setup(), build::kmh(4), build::kmh(16), 13);
    ASSERT_EQ(curve.size(), 13U);
    for (const auto& p : curve)
        EXPECT_NEAR(p.needed / model.neededSensorPressure(p.speed), 1.0, 1e-9);
    EXPECT_NEAR(curve[6].speed.si(), build::kmh(10).si(), 1e-12);
}

TEST(NeedCurve, FollowsTargetAndFaultsButNotTheSectionsThatAreOff) {
    LoopSetup setup = build::highRate100().setup();
    const auto at = [](const LoopSetup& s) {
        return needCurve(s, build::mph(12), build::mph(13), 2).back().needed;
    };
    const Pressure before = at(setup);
    LoopSetup more = setup;
    more.target = 2 * more.target;
    EXPECT_NEAR(at(more) / before, 4.0, 0.01) << "pressure goes with the square of the rate";
    LoopSetup off = setup;
    off.isOn.assign(off.isOn.size(), false);
    EXPECT_TRUE(needCurve(off, build::mph(1), build::mph(2), 2).empty());
    ASSERT_TRUE(applyFault(setup, {"nozzle_small", 0.2}).isOk());
    EXPECT_GT(at(setup), 1.4 * before);
}

TEST(SectionShares, AStrainerStarvesItsSectionAlone) {
    LoopSetup setup = build::highRate100().setup();
    const LoopSample healthy = simulate(setup, {Duration::fromSi(40), 1, {}, false}).last;
    for (const double share : sectionShares(setup, healthy)) EXPECT_NEAR(share, 1.0, 0.05);
    ASSERT_TRUE(applyFault(setup, {"section_strainer", 0.95}).isOk());
    const LoopSample blocked = simulate(setup, {Duration::fromSi(40), 1, {}, false}).last;
    const auto shares = sectionShares(setup, blocked);
    EXPECT_LT(shares[0], 0.5);
    for (std::size_t i = 1; i < shares.size(); ++i) EXPECT_GT(shares[i], 1.05);
    setup.isOn[1] = false;
    EXPECT_EQ(sectionShares(setup, blocked)[1], 0.0);
    LoopSample standing = blocked;
    standing.isSpraying = false;
    for (const double share : sectionShares(setup, standing)) EXPECT_EQ(share, 0.0);
}

}  // namespace
}  // namespace bw
