// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/advice.h"
#include "core/window/window_ends.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/text/sentences.h"
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
std::string of(const Fact& fact, UnitSystem units = UnitSystem::Metric) {
    return words().of(fact, {units, '.'});
}
bool says(const Advice& advice, std::string_view code) {
    return std::any_of(advice.body.begin(), advice.body.end(),
                       [&](const auto& f) { return f.code == code; });
}

Job flagLeaf() {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = {DropletCategory::C, DropletCategory::M};
    return j;
}

std::optional<Advice> floorOf(const Machine& m, const Nozzle& n = lowDrift03()) {
    const auto model = WindowModel::make(m, n, flagLeaf()).value();
    return floorAdvice(model, model.window());
}

TEST(Advice, FloorIsRecommendedAgainstWhatIsSet) {
    const auto advice = floorOf(trailed28()).value();
    EXPECT_EQ(of(advice.title), "Floor: recommended 1.5 bar, set 1.6 bar");
    EXPECT_FALSE(advice.asksForWork);
    Machine m = trailed28();
    m.limits.pressureFloor->value = bar(3);
    EXPECT_TRUE(floorOf(m)->asksForWork);
    EXPECT_TRUE(says(*floorOf(m), "advice.floor_over_need"));
    m.limits.pressureFloor->value = bar(1);
    EXPECT_TRUE(says(*floorOf(m), "advice.floor_under_nozzle"));
    m.limits.pressureFloor.reset();
    EXPECT_EQ(of(floorOf(m)->title), "Floor: recommended 1.5 bar");
}

TEST(Advice, FloorWithoutANozzleMinimumOrWithoutRoomSaysSo) {
    Nozzle n = lowDrift03();
    n.pressureMin.reset();
    EXPECT_EQ(floorOf(trailed28(), n)->title.code, "advice.floor_unknown");
    n.pressureMin = Sourced<Pressure>(bar(4));
    EXPECT_EQ(floorOf(trailed28(), n)->title.code, "advice.floor_none");
    Machine pulsed = trailed28();
    pulsed.pulsed.pressure = Sourced<Pressure>(bar(3));
    EXPECT_FALSE(floorOf(pulsed));
}

TEST(Advice, RestrictorGivesTheReasonThatFitsTheMachine) {
    const Job j = job(gpa(12), mph(9), mph(11.5), mph(12.5));
    const auto advice = [&](Machine m) {
        const auto model = WindowModel::make(m, lowDrift04(), j).value();
        return restrictorAdvice(model, model.window());
    };
    EXPECT_FALSE(advice(trailed28()));
    Machine m = selfPropelled100();
    EXPECT_EQ(advice(m)->title.code, "advice.valve_narrowed");
    EXPECT_TRUE(says(*advice(m), "advice.valve_meter"));
    EXPECT_FALSE(advice(m)->asksForWork);
    EXPECT_THAT(of(advice(m)->body.front(), UnitSystem::Us), HasSubstr("reached at 12.4 mph"));
    m.control = Sourced<Control>(Control::Throttle);
    m.senses = Sourced<Senses>(Senses::Pressure);
    EXPECT_TRUE(says(*advice(m), "advice.valve_throttle"));
    EXPECT_FALSE(says(*advice(m), "advice.valve_meter"));
    m.senses = Sourced<Senses>(Senses::Flow);
    m.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    EXPECT_TRUE(advice(m)->asksForWork);
    EXPECT_TRUE(says(*advice(m), "advice.valve_stands_full_bore"));
    // The window that the other position gives is told with its numbers.
    const auto ends = windowEnds(selfPropelled100(), lowDrift04(), j).value();
    const auto stands = advice(m);
    const auto there = std::find_if(stands->body.begin(), stands->body.end(),
                                    [](const Fact& f) { return f.code == "advice.valve_there"; });
    ASSERT_NE(there, stands->body.end());
    EXPECT_EQ(there->arguments[0].value, ArgumentValue(anyQuantity(*ends.low)));
    EXPECT_EQ(there->arguments[1].value, ArgumentValue(anyQuantity(*ends.high)));
}

TEST(Advice, OutsideSaysRateAndDose) {
    const auto model = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    const auto out = outsideExamples(model, model.window(), UnitSystem::Metric);
    ASSERT_EQ(out.size(), 2U);
    // Source of 178 L/ha: an independent prototype of the same equations.
    EXPECT_EQ(of(out[0].title), "Outside: 178 L/ha at 5 km/h");
    EXPECT_EQ(of(out[0].body[0]), "Pinned on the floor.");
    EXPECT_EQ(of(out[0].body[1]),
              "This is 19 % more spray, and from the same tank 19 % more product on each hectare. "
              "The label's highest dose is the limit all the same.");
    EXPECT_EQ(of(out[1].body[0]), "Held at the ceiling.");
    EXPECT_THAT(of(out[1].body[1]), HasSubstr("less product."));
    EXPECT_LT(out[1].point.rateRatio, 1.0);
}

TEST(Advice, TheJobsOwnSpeedIsTheExampleWhereItLiesOutside) {
    Job j = flagLeaf();
    j.slow = Sourced<Speed>(kmh(5.5));
    const auto model = WindowModel::make(trailed28(), lowDrift03(), j).value();
    const auto out = outsideExamples(model, model.window(), UnitSystem::Metric);
    ASSERT_FALSE(out.empty());
    EXPECT_NEAR(in(out[0].point.speed, Unit::KilometrePerHour), 5.5, 1e-12);
}

TEST(Advice, DoseFollowsTheRateWithinItsWords) {
    EXPECT_FALSE(doseFact(1.004, UnitSystem::Us));
    EXPECT_EQ(of(*doseFact(1.29, UnitSystem::Us)).substr(0, 27), "This is 29 % more spray, an");
    EXPECT_THAT(of(*doseFact(1.29, UnitSystem::Us)), HasSubstr("on each acre"));
    EXPECT_THAT(of(*doseFact(0.911, UnitSystem::Metric)), HasSubstr("8.9 % less product"));
}

TEST(Advice, LeftAtThePressureOfTheUsualSpeedTheRateGoesWithOneOverSpeed) {
    const auto model = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    const auto facts = leftAtUsual(model, UnitSystem::Metric);
    ASSERT_EQ(facts.size(), 4U);
    EXPECT_THAT(of(facts[0]), HasSubstr("8 km/h gets 188 L/ha"));   // 150·10/8 = 187.5
    EXPECT_THAT(of(facts[2]), HasSubstr("12 km/h gets 125 L/ha"));  // 150·10/12
}

TEST(Advice, PointSaysWhatIsPast) {
    const auto model = WindowModel::make(trailed28(), lowDrift03(), flagLeaf()).value();
    EXPECT_EQ(of(pointFact(model.at(kmh(10)))), "On rate, inside every limit that was checked.");
    EXPECT_EQ(of(pointFact(model.at(kmh(6.5)))), "On rate, but past droplets too coarse.");
    EXPECT_EQ(of(pointFact(model.at(kmh(5)))),
              "119 % of the planned rate: past the pressure floor, the nozzle's lowest pressure "
              "and droplets too coarse.");
    EXPECT_EQ(of(shortPointFact(model.at(kmh(10)))), "on rate");
    EXPECT_EQ(of(shortPointFact(model.at(kmh(6.5)))), "on rate, past droplets too coarse");
    EXPECT_THAT(of(shortPointFact(model.at(kmh(5)))), HasSubstr("119 %, past the pressure floor"));
}

TEST(Advice, EveryCodeHasItsWords) {
    Machine ball = selfPropelled100();
    ball.control = Sourced<Control>(Control::Bypass);
    Machine pulsed = selfPropelled100();
    pulsed.pulsed.pressure = Sourced<Pressure>(bar(3));
    for (const auto& m : {trailed28(), selfPropelled100(), ball, pulsed, machine()}) {
        for (const auto& n : {lowDrift03(), nozzle()}) {
            const auto model = WindowModel::make(m, n, flagLeaf()).value();
            const auto w = model.window();
            std::string all;
            for (const auto& advice : {floorAdvice(model, w), restrictorAdvice(model, w)}) {
                if (!advice) continue;
                all += of(advice->title);
                for (const auto& f : advice->body) all += of(f);
            }
            for (const auto& o : outsideExamples(model, w, UnitSystem::Us)) {
                all += of(o.title);
                for (const auto& f : o.body) all += of(f);
            }
            EXPECT_THAT(all, Not(HasSubstr("<")));
            EXPECT_THAT(all, Not(HasSubstr("{")));
        }
    }
}

/// By hand: 8 gal/ac, 12 mph, 20 in: 0.323 gal/min a nozzle; sections 10, 14, 12, 14, 10; the last
/// first. Narrowed, the meter's lowest is 7 gal/min: 60, 50, 36, 24 nozzles pass it, 10 give 3.2.
TEST(Advice, SaysFromHowManySectionsOnTheMeterSeesTooLittle) {
    const auto said = [](const Machine& m) {
        const auto model =
            WindowModel::make(m, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14))).value();
        std::string out;
        for (const auto& fact : sectionFacts(model, model.window()))
            out += Sentences::shipped().of(fact, {UnitSystem::Us, '.'});
        return out;
    };
    Machine m = selfPropelled100();
    EXPECT_EQ(said(m),
              "With one section on the meter sees too little at the usual speed: 3.23 gal/min, its "
              "lowest is 7 gal/min. The figure is unsure there and may hunt.");
    m.meter.minimumNarrowed = Sourced<Flow>(gpm(10));
    EXPECT_NE(said(m).find("With 2 sections on or fewer"), std::string::npos);
    m.meter.minimumNarrowed = Sourced<Flow>(gpm(3));
    EXPECT_NE(said(m).find("Down to one section"), std::string::npos);
    m.sectionReturns = Sourced<SectionReturns>(SectionReturns::Metered);
    EXPECT_NE(said(m).find("whole flow"), std::string::npos);
    m.senses = Sourced<Senses>(Senses::Pressure);
    EXPECT_EQ(said(m), "");
}

}  // namespace
}  // namespace bw
