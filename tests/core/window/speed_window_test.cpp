// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/speed_window.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

double inKmh(std::optional<Speed> v) {
    return in(v.value(), Unit::KilometrePerHour);
}
double inMph(std::optional<Speed> v) {
    return in(v.value(), Unit::MilePerHour);
}

bool contains(const std::vector<Limit>& list, Limit limit) {
    return std::find(list.begin(), list.end(), limit) != list.end();
}

std::optional<Speed> speedOf(const SpeedWindow& w, Limit limit) {
    for (const auto& l : w.limits) {
        if (l.limit == limit) return l.speed;
    }
    return std::nullopt;
}

SpeedWindow solved(const Machine& m, const Nozzle& n, const Job& j) {
    const auto w = speedWindow(m, n, j);
    EXPECT_TRUE(w.isOk()) << (w ? "" : w.problem().code);
    return w.isOk() ? *w : SpeedWindow{};
}

// Source: an independent prototype solver of the same equations on the invented demo machine,
// printed to 0.1 km/h.
TEST(SpeedWindow, AgreesWithThePrototypeOnTheTrailedDemoMachine) {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = {DropletCategory::M, DropletCategory::C};
    const auto w = solved(trailed28(), lowDrift03(), j);
    EXPECT_NEAR(inKmh(w.low.speed), 6.9, 0.05);
    EXPECT_EQ(w.low.limit, Limit::DropletsTooCoarse);
    EXPECT_NEAR(inKmh(w.low.next.at(0).speed), 5.9, 0.05);
    EXPECT_EQ(w.low.next.at(0).limit, Limit::PressureFloor);
    EXPECT_NEAR(inKmh(w.high.speed), 13.3, 0.05);
    EXPECT_EQ(w.high.limit, Limit::NozzleMaximum);
    EXPECT_NEAR(inKmh(speedOf(w, Limit::PressureCeiling)), 13.9, 0.05);
    EXPECT_TRUE(w.coversBand);
    // 150 L/ha · 10 km/h · 28 m / 600 = 70 L/min (exact).
    EXPECT_NEAR(in(w.atUsual.boomFlow, Unit::LitrePerMinute), 70.0, 1e-9);
    // The prototype printed 3.81 as the mean of a noisy run at this point.
    EXPECT_NEAR(in(w.atUsual.sensorPressure, Unit::Bar), 3.81, 0.01);
    // Pinned on the floor at 5 km/h: 178 L/ha.
    const auto point = WindowModel::make(trailed28(), lowDrift03(), j).value().at(kmh(5));
    EXPECT_EQ(point.verdict, PointVerdict::StuckHigh);
    EXPECT_NEAR(in(point.rate, Unit::LitrePerHectare), 178, 0.5);
}

// Source: the same prototype on the invented self-propelled machine, printed to 0.1 mph.
TEST(SpeedWindow, AgreesWithThePrototypeOnTheSelfPropelledDemoMachine) {
    Job j = job(gpa(12), mph(9), mph(11.5), mph(12.5));
    j.droplets = {DropletCategory::M, DropletCategory::C};
    const auto w = solved(selfPropelled100(), lowDrift04(), j);
    EXPECT_NEAR(inMph(w.low.speed), 8.0, 0.05);
    EXPECT_EQ(w.low.limit, Limit::DropletsTooCoarse);
    EXPECT_NEAR(inMph(speedOf(w, Limit::PressureFloor)), 6.6, 0.05);
    EXPECT_NEAR(inMph(w.high.speed), 12.8, 0.05);
    EXPECT_EQ(w.high.limit, Limit::Pump);
    EXPECT_NEAR(inMph(speedOf(w, Limit::PressureCeiling)), 14.4, 0.05);
    ASSERT_TRUE(w.floor && w.floor->recommended);
    EXPECT_NEAR(in(*w.floor->recommended, Unit::Psi), 15.0, 1e-9);
    ASSERT_TRUE(w.restrictor);
    EXPECT_NEAR(inMph(w.restrictor->crossingSpeed), 12.4, 0.05);
    EXPECT_EQ(w.restrictor->position, RestrictorPosition::Narrowed);
    EXPECT_EQ(w.restrictor->band, Band::Straddles);
}

TEST(SpeedWindow, PinnedRateFallsWithSpeedExactly) {
    Machine m = trailed28();
    Nozzle n = lowDrift03();
    n.exponent = Sourced<double>(0.47);  // holds for any exponent and shut-off valve
    const auto model = WindowModel::make(m, n, job()).value();
    const auto floorSpeed = *speedOf(model.window(), Limit::PressureFloor);
    for (const double part : {0.2, 0.5, 0.9}) {
        EXPECT_NEAR(model.at(part * floorSpeed).rateRatio, 1 / part, 1e-12);
    }
}

TEST(SpeedWindow, BetweenDropletLimitAndFloorTheRateIsRight) {
    Job j = job();
    j.droplets = {DropletCategory::M, DropletCategory::C};
    const auto model = WindowModel::make(trailed28(), lowDrift03(), j).value();
    const auto w = model.window();
    const Speed between = 0.5 * (*w.low.speed + w.low.next.front().speed);
    const auto point = model.at(between);
    EXPECT_EQ(point.verdict, PointVerdict::BeyondLimit);
    EXPECT_NEAR(point.rateRatio, 1.0, 1e-12);
    EXPECT_EQ(point.past, std::vector<Limit>{Limit::DropletsTooCoarse});
}

// Common practice, no source: a target of 5 gal/ac that cannot come under 6 is a floor at 1.44
// times the need.
TEST(SpeedWindow, FloorAt144PercentOfTheNeedGivesSixForFive) {
    Machine m = machine({20, 20, 20}, inches(20));
    const Nozzle n = nozzle(gpm(0.4), psi(40));
    const Job j = job(gpa(5), mph(15), mph(15), mph(15));
    const auto need = WindowModel::make(m, n, j).value().neededSensorPressure(mph(15));
    m.limits.pressureFloor = Sourced<Pressure>(1.44 * need);
    const auto w = solved(m, n, j);
    EXPECT_NEAR(in(w.atUsual.rate, Unit::GallonUsPerAcre), 6.0, 1e-9);
    EXPECT_EQ(w.atUsual.verdict, PointVerdict::StuckHigh);
}

// Common practice, no source: 90 to 130 ft of width, changeover at 26 gal/min, 15 mph: 5 gal/ac is
// under it (narrowed), 10 gal/ac over it (full bore).
TEST(SpeedWindow, ChangeoverOfTheTradeExample) {
    for (const int nozzles : {54, 66, 78}) {  // 90, 110 and 130 ft at 20 in
        Machine m = machine({nozzles}, inches(20));
        m.restrictor.fitted = Sourced<bool>(true);
        m.restrictor.changeoverFlow = Sourced<Flow>(gpm(26));
        const Nozzle n = nozzle(gpm(0.4), psi(40));
        const auto under = solved(m, n, job(gpa(5), mph(15), mph(15), mph(15)));
        EXPECT_EQ(under.restrictor.value().band, Band::Under) << nozzles;
        EXPECT_EQ(under.restrictor->position, RestrictorPosition::Narrowed) << nozzles;
        const auto over = solved(m, n, job(gpa(10), mph(15), mph(15), mph(15)));
        EXPECT_EQ(over.restrictor.value().band, Band::Over) << nozzles;
        EXPECT_EQ(over.restrictor->position, RestrictorPosition::FullBore) << nozzles;
    }
}

// Published: Iowa State University Extension, Integrated Crop Management News 844: 12 to 15 mph
// from 40 psi needs 63 psi (exact 62.5).
TEST(SpeedWindow, IowaStateSpeedAndPressure) {
    const Nozzle n = nozzle(gpm(0.404), psi(40));
    const double rate =
        0.404 * 5940 / (12 * 20);  // whatever gives 40 psi at 12 mph with this nozzle on 20 in
    const auto model =
        WindowModel::make(machine({60}, inches(20)), n, job(gpa(rate), mph(12), mph(12), mph(15)))
            .value();
    EXPECT_NEAR(in(model.neededSensorPressure(mph(12)), Unit::Psi), 40.0, 1e-9);
    EXPECT_NEAR(in(model.neededSensorPressure(mph(15)), Unit::Psi), 63.0, 0.5);
    EXPECT_NEAR(in(model.neededSensorPressure(mph(15)), Unit::Psi), 62.5, 1e-9);
}

TEST(SpeedWindow, UnknownNeverPasses) {
    Job j = job();
    j.droplets = {DropletCategory::C};
    j.driftPercent = Sourced<double>(75);
    Machine m = machine();
    const auto w = solved(m, nozzle(), j);
    for (const auto limit : {Limit::PressureFloor, Limit::PressureCeiling, Limit::TopSpeed,
                             Limit::NozzleMinimum, Limit::NozzleMaximum, Limit::Droplets,
                             Limit::DriftClass, Limit::Meter, Limit::Pump, Limit::ControlMinimum}) {
        EXPECT_TRUE(contains(w.notChecked, limit)) << choiceName(limit);
    }
    EXPECT_EQ(w.low.limit, Limit::None);
    EXPECT_EQ(w.low.speed, Speed{});
    EXPECT_FALSE(w.high.speed);
    m.senses = Sourced<Senses>(Senses::Pressure);
    EXPECT_FALSE(contains(solved(m, nozzle(), j).notChecked, Limit::Meter));
}

TEST(SpeedWindow, WhatIsKnownOfThePumpIsReckonedWithAndTheRestIsNotChecked) {
    EXPECT_TRUE(solved(trailed28(), lowDrift03(), job()).notChecked.empty());
    Machine m = trailed28();
    m.losses.suction = {};
    m.pump.reliefPressure.reset();
    m.controlValve = {};
    EXPECT_EQ(solved(m, lowDrift03(), job()).notChecked,
              (std::vector<Limit>{Limit::ControlMinimum, Limit::ReliefValve, Limit::Suction}));
    m.pump = {};
    EXPECT_EQ(solved(m, lowDrift03(), job()).notChecked,
              (std::vector<Limit>{Limit::ControlMinimum, Limit::Pump}));
}

TEST(SpeedWindow, NarrowedWithoutAKnownHoleLeavesThePumpUnsure) {
    Machine m = selfPropelled100();
    m.restrictor.hole.reset();
    EXPECT_TRUE(contains(solved(m, lowDrift04(), job()).notChecked, Limit::Pump));
    m.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    EXPECT_FALSE(contains(solved(m, lowDrift04(), job()).notChecked, Limit::Pump));
}

// Derived by hand from two readings: k = (7.4 - 4.6) / 210²; 7.4 bar shut in, 4.6 bar at 210 L/min;
// 72 nozzles of 1.6 L/min at 3 bar reach 160 L/min at 5.8 bar, which is 17.8 km/h at 150 L/ha on 36
// m.
TEST(SpeedWindow, PumpLineOfTwoReadings) {
    Machine m = machine({36, 36});
    m.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
    m.pump.shutOffPressure = Sourced<Pressure>(bar(7.4));
    m.pump.curve = Sourced<std::vector<CurvePoint>>({{lpm(210), bar(4.6)}});
    const auto w = solved(m, nozzle(lpm(1.6)), job(lha(150), kmh(10), kmh(12), kmh(14)));
    EXPECT_EQ(w.high.limit, Limit::Pump);
    EXPECT_NEAR(inKmh(w.high.speed), 17.8, 0.05);
    const auto model = WindowModel::make(m, nozzle(lpm(1.6)), job()).value();
    EXPECT_NEAR(in(model.at(kmh(25)).boomFlow, Unit::LitrePerMinute), 160, 0.5);
    EXPECT_NEAR(in(model.at(kmh(25)).sensorPressure, Unit::Bar), 5.8, 0.05);
}

// The same, R24: a 1.28 liquid costs a centrifugal pump no top speed.
TEST(SpeedWindow, DensityCostsACentrifugalPumpNoTopSpeed) {
    Machine m = machine({36, 36});
    m.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
    m.pump.shutOffPressure = Sourced<Pressure>(bar(7.4));
    Job j = job();
    const auto water = *solved(m, nozzle(), j).high.speed;
    j.specificGravity = Sourced<double>(1.28);
    EXPECT_NEAR(*solved(m, nozzle(), j).high.speed / water, 1.0, 1e-12);
}

TEST(SpeedWindow, NoAllowedDropletBandIsEmptyAtEverySpeed) {
    Job j = job();
    j.droplets = {DropletCategory::UC};
    const auto w = solved(trailed28(), lowDrift03(), j);
    EXPECT_TRUE(w.empty);
    EXPECT_EQ(w.emptyWhy, Limit::DropletsNone);
    EXPECT_TRUE(contains(w.atUsual.past, Limit::DropletsNone));
    EXPECT_FALSE(w.holds(kmh(10)));
    EXPECT_FALSE(w.coversUsual);
}

TEST(SpeedWindow, CrossedEndsAreEmpty) {
    Machine m = machine();
    m.limits.pressureFloor = Sourced<Pressure>(bar(4));
    Nozzle n = nozzle();
    n.pressureMax = Sourced<Pressure>(bar(3));
    const auto w = solved(m, n, job());
    EXPECT_TRUE(w.empty);
    EXPECT_GT(*w.low.speed, *w.high.speed);
}

TEST(SpeedWindow, DropletTableThatStopsIsUnlisted) {
    Job j = job();
    j.droplets = {DropletCategory::VC, DropletCategory::C, DropletCategory::M};
    const auto w = solved(machine(), lowDrift03(), j);
    EXPECT_EQ(w.low.limit, Limit::NozzleMinimum);  // a tie at 1 bar: the order of limits settles it
    EXPECT_EQ(w.low.next.at(0).limit, Limit::DropletsUnlisted);
    EXPECT_EQ(w.high.limit, Limit::NozzleMaximum);
}

TEST(SpeedWindow, RangeOfRatesHoldsFromTheLeastToTheMost) {
    // Invented: 110 to 200 L/ha with a nozzle that gives 200 at 12 km/h on 4 bar and has 1 bar as
    // its least.
    Machine m = machine({24, 24, 24});
    Nozzle n = nozzle(lpm(2.0), bar(4));
    n.pressureMin = Sourced<Pressure>(bar(1));
    n.pressureMax = Sourced<Pressure>(bar(4));
    Job j = job(lha(150), kmh(10), kmh(12), kmh(12));
    j.rateLeast = Sourced<AreaRate>(lha(110));
    j.rateMost = Sourced<AreaRate>(lha(200));
    const auto w = solved(m, n, j);
    ASSERT_TRUE(w.allRates);
    EXPECT_NEAR(inKmh(w.allRates->low.speed), 10.909, 0.001);  // "110 L/ha only from 10.9 km/h up"
    EXPECT_NEAR(inKmh(w.allRates->high.speed), 12.0, 1e-9);
    EXPECT_TRUE(w.coversUsual);
    EXPECT_FALSE(w.coversBand);
}

TEST(SpeedWindow, PulsedNozzlesStandAtTheSetPressure) {
    Machine m = trailed28();
    m.checkValve = {};
    m.pulsed.pressure = Sourced<Pressure>(bar(3));
    m.pulsed.dutyMin = Sourced<double>(0.25);
    Nozzle n = lowDrift04();
    const auto model = WindowModel::make(m, n, job()).value();
    const auto w = model.window();
    EXPECT_EQ(w.low.limit, Limit::DutyMinimum);
    EXPECT_NEAR(inKmh(w.high.speed), 1.58 * 600 / (150 * 0.5), 1e-9);
    EXPECT_NEAR(inKmh(w.low.speed), 0.25 * 1.58 * 600 / (150 * 0.5), 1e-9);
    EXPECT_FALSE(w.floor);
    EXPECT_NEAR(in(model.at(kmh(6)).nozzlePressure, Unit::Bar), 3.0, 1e-12);
    EXPECT_FALSE(contains(w.notChecked, Limit::PressureFloor));
    n.pressureMin = Sourced<Pressure>(bar(3.5));
    EXPECT_EQ(solved(m, n, job()).emptyWhy, Limit::NozzleMinimum);
}

TEST(SpeedWindow, SectionsOffAndMeteredReturns) {
    Machine m = trailed28();
    m.meter.minimumFullBore = Sourced<Flow>(lpm(30));
    auto rows = solved(m, lowDrift03(), job()).sectionsOff;
    ASSERT_EQ(rows.size(), 7u);
    EXPECT_NEAR(in(rows.back().flow, Unit::LitrePerMinute), 70.0 * 6 / 56, 1e-9);
    EXPECT_TRUE(*rows.back().underMinimum);
    EXPECT_FALSE(*rows.front().underMinimum);
    m.sectionReturns = Sourced<SectionReturns>(SectionReturns::Metered);
    EXPECT_FALSE(*solved(m, lowDrift03(), job()).sectionsOff.back().underMinimum);
}

TEST(SpeedWindow, FloorAdviceWhenNoneExists) {
    Nozzle n = nozzle();
    n.pressureMin = Sourced<Pressure>(bar(2));
    const auto w = solved(machine(), n, job(lha(100), kmh(4), kmh(8), kmh(10)));
    ASSERT_TRUE(w.floor);
    EXPECT_FALSE(w.floor->recommended);
    EXPECT_GT(*w.floor->least, *w.floor->most);
}

TEST(SpeedWindow, RefusesWhatItCannotReckonWith) {
    const auto codeOf = [](const Machine& m, const Nozzle& n, const Job& j) {
        return speedWindow(m, n, j).problem().code;
    };
    Machine noSpacing = machine();
    noSpacing.spacing.reset();
    EXPECT_EQ(codeOf(noSpacing, nozzle(), job()), "spacing_missing");
    Job noRate = job();
    noRate.rate.reset();
    EXPECT_EQ(codeOf(machine(), nozzle(), noRate), "job_rate_missing");
    EXPECT_EQ(codeOf(machine(), nozzle(), job(lha(100), kmh(12), kmh(10), kmh(14))),
              "job_speeds_order");
    Nozzle noFlow = nozzle();
    noFlow.flow.reset();
    EXPECT_EQ(codeOf(machine(), noFlow, job()), "nozzle_flow_missing");
    Machine floor = machine();
    floor.limits = {Sourced<Pressure>(bar(3)), Sourced<Pressure>(bar(2)), {}};
    EXPECT_EQ(codeOf(floor, nozzle(), job()), "floor_over_ceiling");
}

/// Random plausible pairings, one seed.
class Random {
  public:
    double between(double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(m_engine);
    }
    int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(m_engine); }
    Machine randomMachine() {
        std::vector<int> sections;
        for (int i = whole(1, 9); i > 0; --i) sections.push_back(whole(3, 14));
        Machine m = machine(sections, metres(between(0.25, 0.8)));
        m.limits.pressureFloor = Sourced<Pressure>(bar(between(0.8, 2)));
        m.limits.pressureCeiling = Sourced<Pressure>(bar(between(4, 8)));
        m.losses.section = {Sourced<Pressure>(bar(between(0, 0.4))),
                            Sourced<Flow>(lpm(between(8, 25)))};
        if (whole(0, 1)) m.checkValve.openingPressure = Sourced<Pressure>(bar(between(0.2, 0.7)));
        return m;
    }
    Nozzle randomNozzle() {
        Nozzle n = nozzle(lpm(between(0.4, 4)));
        n.pressureMin = Sourced<Pressure>(bar(between(0.8, 2)));
        n.pressureMax = Sourced<Pressure>(bar(between(4, 8)));
        if (whole(0, 1)) n.exponent = Sourced<double>(between(0.42, 0.55));
        return n;
    }
    Job randomJob() {
        Job j = job(lha(between(60, 350)), kmh(between(4, 7)), kmh(between(7, 12)),
                    kmh(between(12, 20)));
        j.specificGravity = Sourced<double>(between(0.9, 1.4));
        return j;
    }

  private:
    std::mt19937 m_engine{20240917};
};

TEST(SpeedWindowProperties, RateTimesSpeedTimesWidthIsFlow) {
    Random random;
    for (int i = 0; i < 2000; ++i) {
        const auto model =
            WindowModel::make(random.randomMachine(), random.randomNozzle(), random.randomJob())
                .value();
        const Speed v = kmh(random.between(1, 30));
        const auto point = model.at(v);
        EXPECT_NEAR((point.rate * v * model.width()) / point.boomFlow, 1.0, 1e-12);
    }
}

TEST(SpeedWindowProperties, PressureAndFlowOfTheBoomAreInverse) {
    Random random;
    for (int i = 0; i < 2000; ++i) {
        const auto model =
            WindowModel::make(random.randomMachine(), random.randomNozzle(), random.randomJob())
                .value();
        const Pressure p = bar(random.between(1, 8));
        EXPECT_NEAR(model.sensorPressure(model.boomFlow(p)) / p, 1.0, 1e-9);
    }
}

TEST(SpeedWindowProperties, RaisingTheFloorNeverWidensTheWindow) {
    Random random;
    for (int i = 0; i < 1000; ++i) {
        Machine m = random.randomMachine();
        const Nozzle n = random.randomNozzle();
        const Job j = random.randomJob();
        const auto before = solved(m, n, j);
        m.limits.pressureFloor->value = 1.3 * m.limits.pressureFloor->value;
        const auto after = solved(m, n, j);
        EXPECT_GE(*after.low.speed, *before.low.speed);
        EXPECT_EQ(after.high.speed, before.high.speed);
    }
}

TEST(SpeedWindowProperties, HeavierMixLowersTheSpeedThatTheCeilingSets) {
    Random random;
    for (int i = 0; i < 500; ++i) {
        Machine m = random.randomMachine();
        m.checkValve = {};
        Nozzle n = random.randomNozzle();
        n.exponent.reset();
        Job j = random.randomJob();
        j.specificGravity = Sourced<double>(1.0);
        const auto water = *speedOf(solved(m, n, j), Limit::PressureCeiling);
        j.specificGravity = Sourced<double>(1.28);
        const auto heavy = *speedOf(solved(m, n, j), Limit::PressureCeiling);
        EXPECT_NEAR(heavy / water, 1 / std::sqrt(1.28), 1e-12);
    }
}

/// A range of rates: the floor must let the least rate through at the slow speed, and the
/// restrictor's band is that of all rates.
TEST(SpeedWindow, AdviceForARangeOfRatesLooksAtBothRates) {
    Job ranged = job(gpa(8), mph(10), mph(12), mph(14));
    const auto one = speedWindow(selfPropelled100(), lowDrift04(), ranged).value();
    ranged.rateLeast = Sourced<AreaRate>(gpa(6));
    ranged.rateMost = Sourced<AreaRate>(gpa(14));
    const auto all = speedWindow(selfPropelled100(), lowDrift04(), ranged).value();
    // No ball valve: pressure goes with the square of the rate.
    EXPECT_NEAR(*all.floor->most / *one.floor->most, 36.0 / 64.0, 1e-9);
    // 60 nozzles at 20 in, 8 gal/ac, 14 mph: 22.6 gal/min, under the changeover at 30; at 14 gal/ac
    // it is 39.6.
    EXPECT_EQ(one.restrictor->band, Band::Under);
    EXPECT_EQ(all.restrictor->band, Band::Straddles);
}

}  // namespace
}  // namespace bw
