// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/ways_out.h"

#include <gtest/gtest.h>

#include "core/model/nozzle_sizes.h"
#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

/// The telephone case of a US caller: 15 gal/ac at 7 mph with size 04 at 20 in and a floor of 40
/// psi. need = 40·(q/0.4)², q = 15·7·20/5940 = 0.35354 gal/min: 31.25 psi; right from 7.92 mph.
/// Derived with the exact unit formula.
struct Telephone {
    Telephone() {
        m = machine({20, 20, 20}, inches(20));
        m.units = UnitSystem::Us;
        m.limits.pressureFloor = Sourced<Pressure>(psi(40));
        n = nozzle(gpm(0.4), psi(40));
        n.sizeCode = "04";
        n.pressureMin = Sourced<Pressure>(psi(20));
        j = job(gpa(15), mph(7), mph(8), mph(10));
    }
    std::vector<WaysOut> ways() const {
        const auto model = WindowModel::make(m, n, j).value();
        return waysOut(model, model.window(), UnitSystem::Us);
    }
    Machine m;
    Nozzle n;
    Job j;
};

TEST(WaysOut, FloorNozzleSpeedAndRateAreFourWaysOutOfOneFinding) {
    const auto ways = Telephone().ways();
    ASSERT_EQ(ways.size(), 1U);
    const auto& w = ways.front();
    EXPECT_EQ(w.side, Side::Low);
    EXPECT_EQ(w.title().code, "ways.title_floor");
    EXPECT_NEAR(in(w.floor.value(), Unit::Psi), 31.0, 1e-9);  // 31.25, down to a whole one
    EXPECT_NEAR(in(w.speed.value(), Unit::MilePerHour), 7.92, 1e-9);
    EXPECT_NEAR(in(w.rate.value(), Unit::GallonUsPerAcre), 17.0, 1e-9);  // 15·7.92/7 = 16.97, up
    EXPECT_EQ(w.size.value(), "035");  // 0.35 gal/min: 40 psi gives 0.35 < 0.35354
    EXPECT_EQ(w.facts().size(), 4U);
}

TEST(WaysOut, EveryWayAloneBringsTheSpeedInside) {
    const Telephone t;
    const auto w = t.ways().front();
    Machine lower = t.m;
    lower.limits.pressureFloor->value = *w.floor;
    EXPECT_TRUE(speedWindow(lower, t.n, t.j)->holds(mph(7)));
    Job more = t.j;
    more.rate->value = *w.rate;
    EXPECT_TRUE(speedWindow(t.m, t.n, more)->holds(mph(7)));
    Nozzle smaller = t.n;
    smaller.flow->value = nozzleSize(*w.size)->us;
    EXPECT_TRUE(speedWindow(t.m, smaller, t.j)->holds(mph(7)));
    EXPECT_TRUE(speedWindow(t.m, t.n, t.j)->holds(*w.speed));
}

TEST(WaysOut, NeverAFloorUnderTheNozzlesLowestPressure) {
    Telephone t;
    t.n.pressureMin = Sourced<Pressure>(psi(35));  // over the 31 psi that the slow speed needs
    const auto w = t.ways().front();
    EXPECT_FALSE(w.floor);
    EXPECT_TRUE(w.speed && w.rate && w.size);
    t.n.pressureMin.reset();
    EXPECT_TRUE(t.ways().front().floorUnchecked);
    EXPECT_EQ(t.ways().front().facts().front().code, "ways.floor_unchecked");
}

TEST(WaysOut, OnTheHighSideNeverAHigherCeiling) {
    Telephone t;
    t.m.limits.pressureFloor.reset();
    t.m.limits.pressureCeiling = Sourced<Pressure>(psi(50));
    const auto ways = t.ways();
    ASSERT_EQ(ways.size(), 1U);
    EXPECT_EQ(ways.front().side, Side::High);
    EXPECT_FALSE(ways.front().floor);
    EXPECT_EQ(ways.front().size.value(), "05");
    for (const auto& fact : ways.front().facts())
        EXPECT_TRUE(Sentences::shipped().has(fact.code)) << fact.code;
    // 0.4·√(50/40) = 0.44721 gal/min; · 5940/(15·20) = 8.8548 mph.
    EXPECT_NEAR(in(ways.front().speed.value(), Unit::MilePerHour), 8.8548, 1e-4);
}

TEST(WaysOut, ARangeOfRatesIsHelpedAtItsLeastRate) {
    Telephone t;
    t.m.limits.pressureFloor->value = psi(30);  // under the 31.25 psi of 15 gal/ac at 7 mph
    EXPECT_TRUE(t.ways().empty());
    t.j.rateLeast = Sourced<AreaRate>(gpa(14));  // 27.2 psi at 7 mph
    const auto ways = t.ways();
    ASSERT_EQ(ways.size(), 1U);
    EXPECT_NEAR(in(ways.front().floor.value(), Unit::Psi), 27.0, 1e-9);
    EXPECT_FALSE(ways.front().rate);
}

TEST(WaysOut, NothingWhereTheWholeBandLiesInside) {
    Telephone t;
    t.m.limits.pressureFloor->value = psi(25);
    EXPECT_TRUE(t.ways().empty());
}

}  // namespace
}  // namespace bw
