// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/supply.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/text/sentences.h"
#include "core/window/advice.h"
#include "core/window/verdict.h"
#include "core/window/window_curve.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

const Job kJob = job(gpa(12), mph(9), mph(11.5), mph(12.5));

WindowModel modelOf(const Machine& m, const Job& j = kJob) {
    return WindowModel::make(m, lowDrift04(), j).value();
}

std::vector<Limit> openLimits(const Machine& m) {
    return modelOf(m).window().notChecked;
}

/// The sentence and the field for a limit that is not checked.
std::string told(const Machine& m, Limit limit) {
    const auto model = modelOf(m);
    for (const auto& gap : whatIsUnchecked(model, model.window())) {
        if (gap.limit == limit)
            return gap.field + ": " + Sentences::shipped().of(gap.what, NumberStyle{});
    }
    return {};
}

Machine whole() {
    Machine m = selfPropelled100();
    m.control = Sourced<Control>(Control::PumpSpeed);
    return m;
}

TEST(Supply, ACentrifugalPumpWithoutItsCurveIsNotChecked) {
    EXPECT_THAT(openLimits(whole()), Not(Contains(Limit::Pump)));
    Machine m = whole();
    m.pump.curve.reset();
    EXPECT_THAT(openLimits(m), Contains(Limit::Pump));
    EXPECT_THAT(told(m, Limit::Pump), HasSubstr("pump.curve: pump: how its pressure falls"));
    EXPECT_TRUE(pumpReach(modelOf(m), mph(5), mph(15), 8).empty());
    // The flat pump is an upper bound, and as such it still stops the window.
    EXPECT_GT(modelOf(m).limits().of(Limit::Pump), modelOf(whole()).limits().of(Limit::Pump));
    m.pump.curve = Sourced(std::vector<CurvePoint>());  // said to be flat
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::Pump)));
    EXPECT_TRUE(isPumpCurveKnown(trailed28()));
}

TEST(Supply, TheLeastFlowNeedsWhatSetsIt) {
    Machine m = whole();
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::ControlMinimum)));
    m.pump.leastSpeed.reset();
    EXPECT_THAT(openLimits(m), Contains(Limit::ControlMinimum));
    EXPECT_THAT(told(m, Limit::ControlMinimum), HasSubstr("pump.least_speed: "));
    m.control->value = Control::Throttle;
    EXPECT_THAT(openLimits(m), Contains(Limit::ControlMinimum));
    EXPECT_THAT(told(m, Limit::ControlMinimum), HasSubstr("control_valve.flow: "));
    m.controlValve.leastOpening = Sourced<double>(0.0);  // shuts fully, whatever its size
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::ControlMinimum)));
    m.controlValve.leastOpening->value = 0.1;
    EXPECT_THAT(openLimits(m), Contains(Limit::ControlMinimum));
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(5)), {}};
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::ControlMinimum)));
    m.control.reset();
    EXPECT_THAT(openLimits(m), Contains(Limit::ControlMinimum));
    EXPECT_THAT(told(m, Limit::ControlMinimum), HasSubstr("control: "));
    Machine byPass = trailed28();
    byPass.controlValve = {};
    EXPECT_THAT(openLimits(byPass), Contains(Limit::ControlMinimum));
}

TEST(Supply, AnUnknownHoleLeavesAllOpenThatHangsOnThePumpsPressure) {
    Machine m = whole();
    m.pump.reliefPressure = Sourced<Pressure>(psi(90));
    for (const Limit limit : {Limit::Pump, Limit::ReliefValve})
        EXPECT_THAT(openLimits(m), Not(Contains(limit)));
    m.restrictor.hole.reset();
    for (const Limit limit : {Limit::Pump, Limit::ReliefValve}) {
        EXPECT_THAT(openLimits(m), Contains(limit));
        EXPECT_THAT(told(m, limit), HasSubstr("restrictor.hole: "));
        EXPECT_THAT(told(m, limit), HasSubstr("narrowed: its hole is not known"));
    }
    m.restrictor.position->value = RestrictorPosition::FullBore;
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::Pump)));
    EXPECT_THAT(openLimits(m), Not(Contains(Limit::ReliefValve)));
}

TEST(Supply, AdviceToNarrowSaysThatTheHoleIsNotKnown) {
    Machine m = whole();
    const Job slow = job(gpa(8), mph(9), mph(10), mph(11));
    const auto said = [&] {
        const auto model = WindowModel::make(m, lowDrift04(), slow).value();
        const auto advice = restrictorAdvice(model, model.window());
        std::string all;
        for (const auto& fact : advice->body)
            all += Sentences::shipped().of(fact, NumberStyle{}) + "\n";
        return all;
    };
    EXPECT_THAT(said(), Not(HasSubstr("hole is not known")));
    m.restrictor.hole.reset();
    EXPECT_THAT(said(), HasSubstr("narrowed hole takes is not known"));
}

/// A floor that the pump can't reach: the machine has the last word, on the line and in the band
/// of all rates alike.
TEST(Supply, TheBandOfRatesIsHeldLikeTheLine) {
    Machine m = whole();
    m.limits.pressureFloor->value = psi(80);
    m.restrictor.position->value = RestrictorPosition::Narrowed;
    Job j = kJob;
    j.rateLeast = Sourced<AreaRate>(gpa(10));
    j.rateMost = Sourced<AreaRate>(gpa(14));
    const auto model = modelOf(m, j);
    ASSERT_GT(model.limits().of(Limit::PressureFloor), model.limits().of(Limit::Pump));
    const Pressure pump = model.sensorPressure(*model.limits().of(Limit::Pump));
    for (const auto& point : rateBand(model, mph(6), mph(16), 5)) {
        EXPECT_NEAR(point.atLeast / pump, 1.0, 1e-9);
        EXPECT_NEAR(point.atMost / pump, 1.0, 1e-9);
        EXPECT_NEAR(model.at(point.speed).sensorPressure / pump, 1.0, 1e-9);
    }
}

/// A ceiling under what the control lets through at least: it cannot be kept.
TEST(Supply, TheCeilingGivesWayToTheLeastFlowOnLineAndBandAlike) {
    Machine m = whole();
    m.limits.pressureFloor->value = psi(5);
    m.limits.pressureCeiling->value = psi(10);
    m.pump.leastSpeed->value = 0.7;
    Job j = kJob;
    j.rateLeast = Sourced<AreaRate>(gpa(10));
    const auto model = modelOf(m, j);
    const Flow least = *model.limits().of(Limit::ControlMinimum);
    ASSERT_GT(least, *model.limits().of(Limit::PressureCeiling));
    for (const auto& point : rateBand(model, mph(2), mph(16), 5)) {
        EXPECT_NEAR(point.atLeast / model.sensorPressure(least), 1.0, 1e-9);
        EXPECT_NEAR(model.at(point.speed).boomFlow / least, 1.0, 1e-12);
    }
}

/// The meter must see the least rate too: 60 nozzles at 20 in, 12 gal/ac and 11.5 mph are 27.9
/// gal/min (by hand), 10 gal/ac 23.2; 40 nozzles on pass 15.5 of that.
TEST(Supply, SectionsOffLooksAtTheLeastRate) {
    Machine m = machine({20, 20, 20}, inches(20));
    m.meter.minimumFullBore = Sourced<Flow>(gpm(16));
    Job j = kJob;
    const auto one = modelOf(m, j).window().sectionsOff;
    EXPECT_NEAR(in(one[1].flow, Unit::GallonUsPerMinute), 18.6, 0.05);
    EXPECT_FALSE(*one[1].underMinimum);
    j.rateLeast = Sourced<AreaRate>(gpa(10));
    const auto model = modelOf(m, j);
    const auto all = model.window().sectionsOff;
    EXPECT_NEAR(in(all[1].flow, Unit::GallonUsPerMinute), 15.5, 0.05);
    EXPECT_TRUE(*all[1].underMinimum);
    const auto facts = sectionFacts(model, model.window());
    ASSERT_EQ(facts.size(), 2U);
    EXPECT_THAT(Sentences::shipped().of(facts[1], {UnitSystem::Us, '.'}), HasSubstr("10 gal/ac"));
    EXPECT_EQ(sectionFacts(modelOf(m), modelOf(m).window()).size(), 1U);
}

}  // namespace
}  // namespace bw
