// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/verdict.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::HasSubstr;
using testing::Not;

const Sentences& words() {
    static const Sentences s = Sentences::shipped();
    return s;
}
const NumberStyle kMetric{UnitSystem::Metric, '.'};

Job flagLeaf() {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = {DropletCategory::C, DropletCategory::M};
    return j;
}

struct Case {
    Case(const Machine& m, const Nozzle& n, const Job& j)
        : model(WindowModel::make(m, n, j).value()), window(model.window()) {}
    std::string sentence(const NumberStyle& style = kMetric) const {
        return sentenceOf(verdictOf(model, window), words(), style);
    }
    std::string of(const Fact& fact) const { return words().of(fact, kMetric); }
    WindowModel model;
    SpeedWindow window;
};

TEST(Verdict, SaysWhatHoldsAndWhereTheJobLies) {
    const Case c(trailed28(), lowDrift03(), flagLeaf());
    const auto v = verdictOf(c.model, c.window);
    EXPECT_EQ(v.standing, Standing::Covers);
    EXPECT_EQ(words().of(v.title, kMetric), "Holds 150 L/ha from 6.9 to 13.3 km/h");
    EXPECT_THAT(c.sentence(), HasSubstr("On the values given, with droplets C or M. The job's 8 to "
                                        "12 km/h lies inside."));
    EXPECT_THAT(c.sentence(), Not(HasSubstr("Not checked")));
    Machine pumpless = trailed28();
    pumpless.pump = {};
    const Case bare(pumpless, lowDrift03(), flagLeaf());
    EXPECT_THAT(bare.sentence(),
                HasSubstr("Not checked: the least flow of the control, the pump."));
    const auto gaps = whatIsUnchecked(bare.model, bare.window);
    ASSERT_EQ(gaps.size(), 1U);
    EXPECT_EQ(bare.of(gaps[0].what),
              "the least flow of the control and the pump: the pump's data are not given");
    EXPECT_EQ(gaps[0].part, "machine");
    EXPECT_EQ(gaps[0].field, "pump.kind");
    EXPECT_THAT(c.sentence({UnitSystem::Us, '.'}),
                HasSubstr("Holds 16 gal/ac from 4.3 to 8.3 mph"));
}

TEST(Verdict, WhatStopsEachEndNamesTheBandThePressureAndTheNext) {
    const Case c(trailed28(), lowDrift03(), flagLeaf());
    const Stop low = whatStops(c.model, c.window, Side::Low);
    EXPECT_EQ(c.of(low.what), "droplets too coarse: VC, under 1.6 bar at the nozzle");
    EXPECT_EQ(c.of(low.past), "Rate stays right.");
    EXPECT_EQ(c.of(low.next.value()), "Next: 5.9 km/h, the pressure floor.");
    const Stop high = whatStops(c.model, c.window, Side::High);
    EXPECT_EQ(c.of(high.what), "the nozzle's highest pressure, 6 bar");
    EXPECT_EQ(c.of(high.shortly), "nozzle's highest");
}

TEST(Verdict, ADropletWishWithoutATableFitsNoJob) {
    Nozzle n = lowDrift03();
    n.droplets.reset();
    const Case c(trailed28(), n, flagLeaf());
    EXPECT_EQ(verdictOf(c.model, c.window).standing, Standing::NotChecked);
    EXPECT_THAT(c.sentence(), HasSubstr("Would hold 150 L/ha from"));
    EXPECT_THAT(c.sentence(), Not(HasSubstr("with droplets")));
    EXPECT_THAT(c.sentence(), HasSubstr("So it counts as fitting no job yet."));
    const auto gaps = whatIsUnchecked(c.model, c.window);
    ASSERT_EQ(gaps.size(), 1U);
    EXPECT_EQ(gaps[0].limit, Limit::Droplets);
    EXPECT_EQ(gaps[0].part, "nozzle");
    EXPECT_EQ(c.of(gaps[0].what), "droplets C or M: the nozzle has no droplet table");
    Job fast = flagLeaf();
    fast.slow = fast.usual = fast.fast = Sourced<Speed>(kmh(14));  // outside, and open all the same
    EXPECT_THAT(Case(trailed28(), n, fast).sentence(), HasSubstr("Would hold 150 L/ha from"));
    n.acceptUnchecked = true;
    EXPECT_EQ(standingOf(c.window, n), Standing::Covers);
}

TEST(Verdict, BandOutsideIsSaidBySide) {
    const auto last = [](Speed slow, Speed usual, Speed fast) {
        Job j = flagLeaf();
        j.slow = Sourced<Speed>(slow);
        j.usual = Sourced<Speed>(usual);
        j.fast = Sourced<Speed>(fast);
        return Case(trailed28(), lowDrift03(), j).sentence();
    };
    EXPECT_THAT(last(kmh(5), kmh(10), kmh(12)), HasSubstr("slow speed, 5 km/h, lies under it."));
    EXPECT_THAT(last(kmh(8), kmh(10), kmh(15)), HasSubstr("fast speed, 15 km/h, lies over it."));
    EXPECT_THAT(last(kmh(5), kmh(10), kmh(15)),
                HasSubstr("slow speed, 5 km/h, lies under it, its fast speed, 15 km/h, over it."));
    EXPECT_THAT(last(kmh(4), kmh(5), kmh(6)), HasSubstr("usual speed, 5 km/h, lies under it."));
    EXPECT_THAT(last(kmh(13), kmh(14), kmh(15)), HasSubstr("usual speed, 14 km/h, lies over it."));
    EXPECT_THAT(last(kmh(10), kmh(10), kmh(10)), HasSubstr("The job's 10 km/h lies inside."));
}

TEST(Verdict, AnEmptyWindowSaysWhy) {
    Job j = flagLeaf();
    j.droplets = {DropletCategory::XF};
    EXPECT_THAT(Case(trailed28(), lowDrift03(), j).sentence(),
                HasSubstr("This nozzle has no droplets XF at any pressure."));
    Machine m = trailed28();
    m.limits.pressureFloor = Sourced<Pressure>(bar(6.8));
    const Case crossed(m, lowDrift03(), flagLeaf());
    EXPECT_EQ(verdictOf(crossed.model, crossed.window).standing, Standing::Empty);
    EXPECT_THAT(crossed.sentence(),
                HasSubstr("No speed holds 150 L/ha within all limits. The low "
                          "end, 13.7 km/h (the pressure floor), lies over the "
                          "high end, 13.3 km/h (the nozzle's highest pressure)."));
}

TEST(Verdict, WithoutLimitsNothingIsPromised) {
    const Case c(machine(), nozzle(), job());
    EXPECT_THAT(c.sentence(), HasSubstr("Nothing known stops 150 L/ha at any speed."));
    EXPECT_EQ(verdictOf(c.model, c.window).standing, Standing::NotChecked);
    const Stop high = whatStops(c.model, c.window, Side::High);
    EXPECT_FALSE(high.speed);
    EXPECT_EQ(c.of(high.what), "No limit known on the high side.");
}

TEST(Verdict, ARangeOfRatesAndWorkingByHandAreSaid) {
    Job j = flagLeaf();
    j.rateLeast = Sourced<AreaRate>(lha(120));
    j.rateMost = Sourced<AreaRate>(lha(180));
    Machine m = trailed28();
    m.senses = Sourced<Senses>(Senses::Nothing);
    const Case c(m, lowDrift03(), j);
    // Low end at the least rate: 6.9 · 150/120 = 8.6; high at the most: 13.3 · 150/180 = 11.1.
    EXPECT_THAT(c.sentence(), HasSubstr("Holds 120 to 180 L/ha from 8.6 to 11.1 km/h"));
    EXPECT_THAT(c.sentence(), HasSubstr("set by hand to the speed driven"));
}

TEST(Verdict, EveryCodeHasItsWords) {
    for (const auto& [limit, name] : ChoiceNames<Limit>::names)
        EXPECT_TRUE(words().has("limit." + std::string(name))) << name;
    Machine pulsed = trailed28();
    pulsed.pulsed.pressure = Sourced<Pressure>(bar(3));
    Job drift = flagLeaf();
    drift.driftPercent = Sourced<double>(75);
    Nozzle banded = lowDrift03();
    banded.drift = Sourced<std::vector<DriftBand>>({{bar(1), bar(2), 90}, {bar(2), bar(4), 75}});
    for (const auto& m : {trailed28(), selfPropelled100(), machine(), pulsed}) {
        for (const auto& n : {lowDrift03(), nozzle(), banded}) {
            for (const auto& j : {flagLeaf(), drift, job()}) {
                const Case c(m, n, j);
                std::string all = c.sentence();
                for (const Side side : {Side::Low, Side::High}) {
                    const Stop s = whatStops(c.model, c.window, side);
                    all += c.of(s.what) + c.of(s.shortly) + (s.speed ? c.of(s.past) : "");
                    if (s.next) all += c.of(*s.next);
                }
                for (const auto& gap : whatIsUnchecked(c.model, c.window)) all += c.of(gap.what);
                EXPECT_THAT(all, Not(HasSubstr("<"))) << all;
                EXPECT_THAT(all, Not(HasSubstr("{"))) << all;
            }
        }
    }
}

}  // namespace
}  // namespace bw
