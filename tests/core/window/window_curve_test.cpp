// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/window_curve.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/window/candidates.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Job flagLeaf() {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = {DropletCategory::C, DropletCategory::M};
    return j;
}

TEST(WindowCurve, HoldsACornerAtEachLimitThatPins) {
    const auto model = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    const auto curve = operatingCurve(model, kmh(4), kmh(16), 25);
    EXPECT_EQ(curve.size(), 28U);  // least control flow, floor and ceiling lie between
    EXPECT_TRUE(std::is_sorted(curve.begin(), curve.end(),
                               [](const auto& a, const auto& b) { return a.speed < b.speed; }));
    EXPECT_NEAR(in(curve.front().sensorPressure, Unit::Bar), 1.6, 1e-9);
    EXPECT_NEAR(in(curve.back().sensorPressure, Unit::Bar), 7.0, 1e-9);
    const auto corner = std::find_if(curve.begin(), curve.end(), [](const auto& p) {
        return p.speed > kmh(5.85) && p.speed < kmh(5.95);
    });
    ASSERT_NE(corner, curve.end());
    EXPECT_NEAR(corner->rateRatio, 1.0, 1e-9);
}

TEST(WindowCurve, DropletStretchesAgreeWithWhatHappensThere) {
    const auto model = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    const auto stretches = dropletStretches(model);
    ASSERT_EQ(stretches.size(), 3U);
    for (const auto& s : stretches) {
        const Speed middle = 0.5 * (s.from + s.to);
        const auto point = model.at(middle);
        EXPECT_EQ(point.droplets, s.category);
        EXPECT_GT(model.neededSensorPressure(middle), s.sensorFrom);
        EXPECT_LT(model.neededSensorPressure(middle), s.sensorTo);
    }
    EXPECT_EQ(stretches[0].category, DropletCategory::VC);
    EXPECT_NEAR(stretches[0].to.si(), stretches[1].from.si(), 1e-12);
    Machine pulsed = trailed28();
    pulsed.pulsed.pressure = Sourced<Pressure>(bar(3));
    EXPECT_TRUE(
        dropletStretches(WindowModel::make(pulsed, lowDrift03(), flagLeaf()).value()).empty());
}

/// What the pump can feed lies over the curve until the pump's own end, and under it after.
TEST(WindowCurve, ThePumpsReachCrossesTheNeedAtThePumpsEnd) {
    const auto model =
        WindowModel::make(selfPropelled100(), lowDrift04(), job(gpa(12), mph(9), mph(11), mph(12)))
            .value();
    Speed end;
    for (const auto& l : model.window().limits) {
        if (l.limit == Limit::Pump) end = l.speed;
    }
    ASSERT_GT(end, mph(9));
    const auto reach = pumpReach(model, mph(4), mph(25), 60);
    ASSERT_EQ(reach.size(), 61U);
    for (const auto& p : reach) {
        const bool isFed = p.sensorPressure >= model.neededSensorPressure(p.speed);
        EXPECT_EQ(isFed, p.speed <= end) << in(p.speed, Unit::MilePerHour);
    }
    Machine pumpless = selfPropelled100();
    pumpless.pump = {};
    const auto none = WindowModel::make(pumpless, lowDrift04(), job(gpa(12))).value();
    EXPECT_TRUE(pumpReach(none, mph(4), mph(25), 60).empty());
}

TEST(WindowCurve, ExtentShowsTheJobAndBothEnds) {
    for (const auto& n : {lowDrift03(), lowDrift04(), nozzle(lpm(4)), nozzle(lpm(0.2))}) {
        const auto model = WindowModel::make(trailed28(), n, flagLeaf()).value();
        const auto extent = extentOf(model, model.window());
        EXPECT_LT(extent.from, kmh(8));
        EXPECT_GT(extent.from.si(), 0);
        EXPECT_GT(extent.to, kmh(12));
        EXPECT_LT(extent.to, kmh(60));
        EXPECT_GT(extent.top, bar(7));
        EXPECT_GT(extent.rateTop, lha(150));
    }
    const auto bare = WindowModel::make(machine(), nozzle(), job()).value();
    EXPECT_GT(extentOf(bare, bare.window()).top, bare.neededSensorPressure(kmh(12)));
}

TEST(WindowCurve, RateBandLiesAboutTheOperatingLine) {
    Job j = flagLeaf();
    EXPECT_TRUE(
        rateBand(WindowModel::make(trailed28(), lowDrift03(), j).value(), kmh(4), kmh(16), 5)
            .empty());
    j.rateLeast = Sourced<AreaRate>(lha(120));
    j.rateMost = Sourced<AreaRate>(lha(180));
    const auto model = WindowModel::make(trailed28(), lowDrift03(), j).value();
    const auto band = rateBand(model, kmh(4), kmh(16), 13);
    ASSERT_EQ(band.size(), 13U);
    const auto& middle = band[6];  // 10 km/h
    // 120 L/ha at 10 km/h is the flow of 150 at 8, 180 that of 150 at 12.
    EXPECT_NEAR(middle.atLeast.si(), model.neededSensorPressure(kmh(8)).si(), 1.0);
    EXPECT_NEAR(middle.atMost.si(), model.neededSensorPressure(kmh(12)).si(), 1.0);
    EXPECT_NEAR(in(band.front().atLeast, Unit::Bar), 1.6, 1e-9);
    EXPECT_NEAR(in(band.back().atMost, Unit::Bar), 7.0, 1e-9);
}

TEST(WindowCurve, OnTimeShareIsTheMeanFlowOverTheFullFlow) {
    const auto plain = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    EXPECT_FALSE(onTimeShare(plain, plain.at(kmh(10)).boomFlow));
    Machine m = machine();  // 24 nozzles of 1.2 L/min at 3 bar: 28.8 L/min in full
    m.pulsed.pressure = Sourced<Pressure>(bar(3));
    const auto model = WindowModel::make(m, nozzle(), job()).value();
    EXPECT_NEAR(onTimeShare(model, lpm(14.4)).value(), 0.5, 1e-12);
}

TEST(NearestNozzles, CoveringOnesFirstThenByPressureAndFarOnesNotAtAll) {
    Nozzle far = nozzle(lpm(20));
    far.name = "far";
    Nozzle broken = nozzle();
    broken.name = "broken";
    broken.flow.reset();
    Nozzle sizeOnly = nozzle(lpm(1.2));
    sizeOnly.name = "size only";
    Nozzle covers = lowDrift03();
    covers.name = "covers";
    Nozzle big = lowDrift04();
    big.name = "big";
    const auto names =
        nearestNozzles(trailed28(), flagLeaf(), {far, broken, sizeOnly, big, covers});
    ASSERT_EQ(names.size(), 3U);
    EXPECT_EQ(names[0], "covers");
    EXPECT_EQ(names[1], "big");  // holds the usual speed, and is known
    EXPECT_EQ(names[2], "size only");
    EXPECT_EQ(nearestNozzles(trailed28(), flagLeaf(), {sizeOnly, big, covers}, 1).size(), 1U);
}

}  // namespace
}  // namespace bw
