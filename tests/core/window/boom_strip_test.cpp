// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/boom_strip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/hydraulics/boom_network.h"
#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::HasSubstr;
using testing::Not;

/// Invented: 72 nozzles of 1.2 L/min at 3 bar, 36 m, 150 L/ha; at 9.6 km/h just 3 bar.
struct Boom {
    Machine m = machine({24, 24, 24});
    Nozzle n = nozzle();
    Job j = job();
    Boom() {
        m.spacing = Sourced<Length>(metres(0.5));
        m.losses = {};
        m.checkValve = {};
        m.pump = {};
        m.limits = {};
        m.meter = {};
        m.restrictor = {};
        m.agitation = {};
        n.flow = Sourced<Flow>(lpm(1.2));
        n.at = Sourced<Pressure>(bar(3));
        n.pressureMin = Sourced<Pressure>(bar(1));
        j.rate = Sourced<AreaRate>(lha(150));
        j.specificGravity = Sourced<double>(1.0);
        m.boomPipe.bore = Sourced<Length>(metres(0.02));
        m.boomPipe.feeds = Sourced<std::vector<int>>({36});
    }
    WindowModel model() const { return WindowModel::make(m, n, j).value(); }
};
const Speed kSpeed = kmh(9.6);

std::string said(const BoomStrip& strip) {
    std::string all;
    for (const Fact& fact : strip.facts) all += Sentences::shipped().of(fact, {}) + "\n";
    return all;
}

TEST(BoomStrip, EvennessIsThatOfThePipe) {
    const Boom boom;
    const BoomStrip strip = evenStrip(boom.model(), kSpeed);
    ASSERT_EQ(strip.nozzles.size(), 72U);
    const BoomPipe pipe{72, metres(0.5), {metres(0.02)}, {36}, false};
    const auto even = boomEvenness(pipe, NozzleLaw(lpm(1.2), bar(3)), bar(3));
    ASSERT_TRUE(even.isOk());
    EXPECT_NEAR(*strip.nozzles.front().flow / even->nozzles.front().flow, 1.0, 1e-9);
    EXPECT_NEAR(*strip.nozzles[35].part, 1.0, 1e-9);
    EXPECT_NEAR(*strip.nozzles.back().part, std::sqrt(1 - even->drop), 1e-9);
    EXPECT_NEAR(*strip.limitPart, std::sqrt(0.9), 1e-12);
    EXPECT_EQ(strip.nozzles[23].section, 1);
    EXPECT_EQ(strip.nozzles[24].section, 2);
    EXPECT_EQ(strip.asksForWork, even->drop > kUsualDrop);
}

TEST(BoomStrip, ANarrowPipeIsUnevenAWideOneIsNot) {
    Boom boom;
    boom.m.boomPipe.bore->value = metres(0.012);
    const BoomStrip narrow = evenStrip(boom.model(), kSpeed);
    EXPECT_TRUE(narrow.asksForWork);
    EXPECT_THAT(said(narrow), HasSubstr("Uneven: the pressure drops by"));
    boom.m.boomPipe.bore->value = metres(0.04);
    const BoomStrip wide = evenStrip(boom.model(), kSpeed);
    EXPECT_FALSE(wide.asksForWork);
    EXPECT_THAT(said(wide), HasSubstr("Even enough"));
}

TEST(BoomStrip, UnknownPipeIsNotChecked) {
    Boom boom;
    boom.m.boomPipe.feeds.reset();
    const BoomStrip strip = evenStrip(boom.model(), kSpeed);
    EXPECT_TRUE(strip.nozzles.empty());
    EXPECT_FALSE(strip.asksForWork);
    EXPECT_EQ(strip.missing, (std::vector<std::string>{"boom_pipe.feeds"}));
    EXPECT_THAT(said(strip), HasSubstr("Not checked"));
    boom.m.boomPipe.bore.reset();
    EXPECT_EQ(evenStrip(boom.model(), kSpeed).missing.size(), 2U);
    boom.m.boomPipe.bore = Sourced<Length>(metres(0.02));
    boom.m.boomPipe.feeds = Sourced<std::vector<int>>({99});
    EXPECT_THAT(said(evenStrip(boom.model(), kSpeed)), HasSubstr("Nozzle 99 is not on this boom"));
}

// Derived by hand: the last nozzles of 72 at 0.5 m stand at 17.75 m; 150 / (1 ∓ 17.75/30) = 367
// and 94.2 L/ha, 245 % and 63 % of the rate.
TEST(BoomStrip, ATurnSaysTheDoseAtBothEnds) {
    const BoomStrip strip = turnStrip(Boom().model(), kSpeed, metres(30), UnitSystem::Metric);
    EXPECT_NEAR(*strip.nozzles.front().part, 1 / (1 - 17.75 / 30), 1e-9);
    EXPECT_NEAR(*strip.nozzles.back().part, 1 / (1 + 17.75 / 30), 1e-9);
    const std::string words = said(strip);
    EXPECT_THAT(words, HasSubstr("367 L/ha"));
    EXPECT_THAT(words, HasSubstr("145 % more product on each hectare"));
    EXPECT_THAT(words, HasSubstr("37 % less product"));
    EXPECT_THAT(words, HasSubstr("stays 150 L/ha"));
    EXPECT_TRUE(strip.hasMore && strip.hasLess);
    EXPECT_FALSE(strip.asksForWork);
}

TEST(BoomStrip, WordsNotInfinitiesAtTheInnerEnd) {
    const auto model = Boom().model();
    const BoomStrip still = turnStrip(model, kSpeed, metres(17.75), UnitSystem::Metric);
    EXPECT_EQ(still.nozzles.front().state, StripState::StandsStill);
    EXPECT_FALSE(still.nozzles.front().part);
    EXPECT_THAT(said(still), HasSubstr("stands still"));
    const BoomStrip back = turnStrip(model, kSpeed, metres(17), UnitSystem::Metric);
    EXPECT_EQ(back.nozzles[0].state, StripState::BacksUp);
    EXPECT_THAT(said(back), HasSubstr("inner nozzles run backward"));
    EXPECT_THAT(said(back), HasSubstr("no mean is given"));
    EXPECT_THAT(said(back), HasSubstr("far over the planned one"));
    for (const auto& strip : {still, back}) {
        EXPECT_TRUE(strip.asksForWork);
        EXPECT_THAT(said(strip), Not(HasSubstr("inf")));
    }
}

// Derived by hand: 35.5 m between the last nozzles on 10 % are 3.53 m of height, 0.346 bar.
TEST(BoomStrip, ASlopeTakesPressureFromTheUpperEnd) {
    Boom boom;
    const BoomStrip strip = slopeStrip(boom.model(), kSpeed, 10, UnitSystem::Metric);
    const double apart = (*strip.nozzles.front().pressure - *strip.nozzles.back().pressure).si();
    EXPECT_NEAR(apart, 1000 * 9.80665 * 35.5 * std::sin(std::atan(0.1)), 1e-6);
    EXPECT_FALSE(strip.asksForWork);
    EXPECT_THAT(said(strip), HasSubstr("All nozzles stay over"));
    boom.n.pressureMin->value = bar(2.9);
    const BoomStrip low = slopeStrip(boom.model(), kSpeed, 10, UnitSystem::Metric);
    EXPECT_EQ(low.nozzles.back().state, StripState::UnderLowest);
    EXPECT_EQ(low.nozzles.front().state, StripState::Sprays);
    EXPECT_TRUE(low.asksForWork && low.hasLowPressure);
    EXPECT_THAT(said(low), HasSubstr("to 72 fall under the nozzle's lowest pressure"));
    boom.n.pressureMin.reset();
    EXPECT_THAT(said(slopeStrip(boom.model(), kSpeed, 10, UnitSystem::Metric)),
                HasSubstr("lowest pressure is not known: not checked"));
}

TEST(BoomStrip, AShutOffValveShutsTheUpperEnd) {
    Boom boom;
    boom.m.checkValve.kind = Sourced<ShutOffKind>(ShutOffKind::Diaphragm);
    boom.m.checkValve.openingPressure = Sourced<Pressure>(bar(0.5));
    const BoomStrip strip = slopeStrip(boom.model(), kmh(4), 10, UnitSystem::Metric);
    EXPECT_EQ(strip.nozzles.back().state, StripState::Shut);
    EXPECT_THAT(said(strip), HasSubstr("hold the shut-off valve open"));
}

/// At one flow all pressures go with density, friction too: the share that is lost stays.
TEST(BoomStrip, AHeavierMixIsAsEvenAsWaterAtTheSameFlow) {
    Boom boom;
    boom.m.boomPipe.bore->value = metres(0.016);
    const auto water = evenStrip(boom.model(), kSpeed);
    boom.j.specificGravity->value = 1.28;
    const auto heavy = evenStrip(boom.model(), kSpeed);
    for (const std::size_t i : {0U, 20U, 71U}) {
        EXPECT_NEAR(*heavy.nozzles[i].part, *water.nozzles[i].part, 1e-9) << i;
        EXPECT_NEAR(*heavy.nozzles[i].pressure / *water.nozzles[i].pressure, 1.28, 1e-9) << i;
    }
}

/// Invented: pulsed at 3 bar, half of the time on. The level boom's nozzles stand at the set
/// pressure, whatever the sections lose.
TEST(BoomStrip, OpenPulsedNozzlesStandAroundTheSetPressureOnASlope) {
    Boom boom;
    boom.m.pulsed.pressure = Sourced<Pressure>(bar(3));
    boom.m.losses.section = {Sourced<Pressure>(bar(0.5)), Sourced<Flow>(lpm(28.8))};
    const auto model = boom.model();
    const auto level = slopeStrip(model, 0.5 * kSpeed, 0, UnitSystem::Metric);
    EXPECT_NEAR(*level.nozzles.front().pressure / bar(3), 1.0, 1e-9);
    EXPECT_NEAR(*level.nozzles.back().flow / lpm(1.2), 1.0, 1e-9);
    const auto slope = slopeStrip(model, 0.5 * kSpeed, 10, UnitSystem::Metric);
    EXPECT_GT(*slope.nozzles.front().pressure, bar(3));
    EXPECT_LT(*slope.nozzles.back().pressure, bar(3));
}

/// Steep and slow: the upper half is dry and even the middle would stand under nothing, yet the
/// boom's flow stays.
TEST(BoomStrip, TheFlowOfTheBoomStaysHoweverSteep) {
    const Boom boom;
    for (const double percent : {0.0, 10.0, 40.0}) {
        const auto strip = slopeStrip(boom.model(), kmh(0.8), percent, UnitSystem::Metric);
        double sum = 0.0;
        for (const auto& n : strip.nozzles) sum += n.flow->si();
        EXPECT_NEAR(sum / (72 * lpm(0.1).si()), 1.0, 1e-6) << percent;
    }
}

}  // namespace
}  // namespace bw
