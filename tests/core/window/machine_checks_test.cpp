// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/machine_checks.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/text/sentences.h"
#include "core/window/size_advice.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

double argument(const Problem& problem, const std::string& name, Unit unit) {
    for (const auto& a : problem.arguments) {
        if (a.name == name) return toUnit(std::get<AnyQuantity>(a.value), unit);
    }
    return std::nan("");
}

// Fact of the trade (common practice, no source): a target of 5 gal/ac that can't come under 6 is a
// floor at 1.44 times the pressure that the job needs there.
TEST(MachineForJobs, FloorOverTheNeedAtTheSlowSpeedSaysWhatComesOut) {
    Machine m = machine({24, 24}, inches(20));
    m.units = UnitSystem::Us;
    const Nozzle n = nozzle(gpm(0.3), psi(40));
    const Job j = job(gpa(5), mph(10), mph(12), mph(15));
    // Need at 10 mph: 5 · 10 · 20 / 5940 = 0.1684 gal/min, so 40 · (0.1684 / 0.3)² = 12.6 psi.
    const double need = 40 * std::pow(5.0 * 10 * 20 / 5940 / 0.3, 2);
    m.limits.pressureFloor = Sourced<Pressure>(psi(1.44 * need));
    const auto problems = checkMachineForJobs(m, {j}, {n});
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].code, "floor_over_need");
    EXPECT_EQ(problems[0].where, "limits.pressure_floor");
    EXPECT_EQ(problems[0].severity, Severity::Warning);
    EXPECT_NEAR(argument(problems[0], "need", Unit::Psi), need, 1e-9);
    EXPECT_NEAR(argument(problems[0], "becomes", Unit::GallonUsPerAcre), 6, 1e-9);
    EXPECT_NEAR(argument(problems[0], "turning", Unit::MilePerHour), 12, 1e-9);
    const auto text = Sentences::shipped().of(problems[0], {UnitSystem::Us, '.'});
    EXPECT_EQ(text.find_first_of("{}<>"), std::string::npos) << text;
    EXPECT_NE(text.find("stays at 6 gal/ac instead of 5 gal/ac"), std::string::npos) << text;

    m.limits.pressureFloor = Sourced<Pressure>(psi(need));
    EXPECT_TRUE(checkMachineForJobs(m, {j}, {n}).empty());
}

// Pressure at 15 mph after 40 psi at 12 mph: 63 psi printed, 62.5 exact (Iowa State University
// Extension, Integrated Crop Management News 844).
TEST(MachineForJobs, CeilingUnderTheNeedAtTheFastSpeed) {
    Machine m = machine({24, 24}, inches(20));
    const Nozzle n = nozzle(gpm(0.3), psi(40));
    const AreaRate rate = gpm(0.3) / (mph(12) * inches(20));
    m.limits.pressureCeiling = Sourced<Pressure>(psi(60));
    const auto problems = checkMachineForJobs(m, {job(rate, mph(10), mph(12), mph(15))}, {n});
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].code, "ceiling_under_need");
    EXPECT_NEAR(argument(problems[0], "need", Unit::Psi), 62.5, 1e-9);
    const auto text = Sentences::shipped().of(problems[0], {UnitSystem::Us, '.'});
    EXPECT_EQ(text.find_first_of("{}<>"), std::string::npos) << text;
}

TEST(MachineForJobs, ARangeOfRatesIsTriedAtItsEnds) {
    Machine m = machine({24, 24}, inches(20));
    const Nozzle n = nozzle(gpm(0.3), psi(40));
    Job j = job(gpa(10), mph(10), mph(12), mph(15));
    // 10 gal/ac needs 50.4 psi at 10 mph and 113 psi at 15 mph; flow goes with rate, pressure with
    // its square.
    const auto need = [](double rate, double speed) {
        return 40 * std::pow(rate * speed * 20 / 5940 / 0.3, 2);
    };
    m.limits.pressureFloor = Sourced<Pressure>(psi(0.9 * need(10, 10)));
    m.limits.pressureCeiling = Sourced<Pressure>(psi(1.1 * need(10, 15)));
    EXPECT_TRUE(checkMachineForJobs(m, {j}, {n}).empty());
    j.rateLeast = Sourced<AreaRate>(gpa(9));
    j.rateMost = Sourced<AreaRate>(gpa(11));
    const auto problems = checkMachineForJobs(m, {j}, {n});
    ASSERT_EQ(problems.size(), 2U);
    EXPECT_EQ(problems[0].code, "floor_over_need");
    EXPECT_NEAR(argument(problems[0], "need", Unit::Psi), need(9, 10), 1e-9);
    EXPECT_NEAR(argument(problems[0], "rate", Unit::GallonUsPerAcre), 9, 1e-9);
    EXPECT_NEAR(argument(problems[0], "becomes", Unit::GallonUsPerAcre), 10 * std::sqrt(0.9), 1e-9);
    EXPECT_EQ(problems[1].code, "ceiling_under_need");
    EXPECT_NEAR(argument(problems[1], "need", Unit::Psi), need(11, 15), 1e-9);
    EXPECT_NEAR(argument(problems[1], "becomes", Unit::GallonUsPerAcre), 10 * std::sqrt(1.1), 1e-9);
    j.rateLeast = Sourced<AreaRate>(gpa(12));  // over the rate itself: the job's own check speaks
    EXPECT_EQ(reckonedJobs(m, {j}, {n}), 0);
}

TEST(MachineForJobs, ASmallerSetAboardEscapesTheFloor) {
    Machine m = machine({24, 24}, inches(20));
    m.limits.pressureFloor = Sourced<Pressure>(psi(20));
    Nozzle small = nozzle(gpm(0.2), psi(40));
    small.name = "small";
    Nozzle large = nozzle(gpm(0.4), psi(40));
    large.name = "large";
    Job j = job(gpa(5), mph(10), mph(12), mph(15));
    m.setsAboard = {{1, "large"}, {2, "small"}};
    EXPECT_TRUE(checkMachineForJobs(m, {j}, {small, large}).empty());
    j.pinnedNozzle = "large";
    EXPECT_EQ(checkMachineForJobs(m, {j}, {small, large}).size(), 1U);
    m.pulsed.pressure = Sourced<Pressure>(psi(40));
    EXPECT_TRUE(checkMachineForJobs(m, {j}, {small, large}).empty());
}

TEST(MachineForJobs, FindsBuiltInSizesAboardAndPassesOverWhatItCannotReckon) {
    Machine m = machine({24, 24}, inches(20));
    m.limits.pressureFloor = Sourced<Pressure>(psi(30));
    m.setsAboard = {{1, "Size 04 (US record)"}, {2, "no such nozzle"}};
    EXPECT_EQ(checkMachineForJobs(m, {job(gpa(5), mph(10), mph(12), mph(15)), Job{}}, {}).size(),
              1U);
    m.spacing.reset();
    EXPECT_TRUE(checkMachineForJobs(m, {job()}, {}).empty());
}

TEST(SizeAdvice, NamesTheSizesOnEitherSideWithTheirPressures) {
    // 1.4 L/min at 3 bar lies between 03 (1.2) and 035 (1.4, which gives it exactly).
    const auto exact = sizesNearFlow(lpm(1.4), bar(3));
    EXPECT_EQ(exact.smaller->size.code, "03");
    EXPECT_EQ(exact.larger->size.code, "035");
    EXPECT_NEAR(in(exact.larger->pressure, Unit::Bar), 3, 1e-9);
    const auto between = sizesNearFlow(lpm(1.5), bar(3));
    EXPECT_EQ(between.smaller->size.code, "035");
    EXPECT_EQ(between.larger->size.code, "04");
    EXPECT_NEAR(in(between.smaller->pressure, Unit::Bar), 3 * std::pow(1.5 / 1.4, 2), 1e-9);
    EXPECT_LT(between.larger->pressure, bar(3));
    EXPECT_GT(between.smaller->pressure, bar(3));
}

TEST(SizeAdvice, HasAnEndOnEitherSide) {
    EXPECT_FALSE(sizesNearFlow(lpm(0.01), bar(3)).smaller.has_value());
    EXPECT_FALSE(sizesNearFlow(lpm(90), bar(3)).larger.has_value());
}

}  // namespace
}  // namespace bw
