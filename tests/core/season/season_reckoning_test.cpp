// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/season_reckoning.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::Contains;
using testing::ElementsAre;

Area ha(double x) {
    return make<Area>(x, Unit::Hectare);
}

Nozzle own(const std::string& name, double flow) {
    Nozzle n = nozzle(lpm(flow));
    n.name = name;
    n.pressureMin = Sourced<Pressure>(bar(1));
    n.pressureMax = Sourced<Pressure>(bar(6));
    return n;
}

Job named(const std::string& name, AreaRate rate, std::optional<double> hectares) {
    Job j = job(rate);
    j.name = name;
    if (hectares) j.area = Sourced<Area>(ha(*hectares));
    return j;
}

/// Invented. Nozzle flow wanted at 8, 10 and 12 km/h on 0.5 m: 150 L/ha 1.0 to 1.5 L/min, within
/// the 1.2 alone of the two (0.69 to 1.70; the 2.4 begins at 1.39); 300 L/ha 2.0 to 3.0, within
/// the 2.4 alone (up to 3.39); 600 L/ha 4 to 6: neither.
SeasonInputs season() {
    SeasonInputs in;
    in.machines = {{1, 0, machine()}, {2, 0, machine({10, 10})}};
    in.jobs = {{11, 1, 0, named("a", lha(150), 40)},
               {12, 1, 1, named("b", lha(300), 60)},
               {13, 1, 2, named("c", lha(600), 5)},
               {14, 1, 3, named("d", lha(160), std::nullopt)},
               {21, 2, 0, named("e", lha(150), 7)}};
    in.nozzles = {own("1.2", 1.2), own("2.4", 2.4)};
    return in;
}

TEST(SeasonReckoning, ReckonsEveryJobWithEveryNozzle) {
    const auto s = reckonSeason(season()).value();
    ASSERT_EQ(s.jobs.size(), 5u);
    EXPECT_EQ(s.of(11)->verdict.standing, JobStanding::Holds);
    EXPECT_EQ(s.of(11)->verdict.best, 0u);
    EXPECT_EQ(s.of(12)->verdict.best, 1u);
    EXPECT_EQ(s.of(13)->verdict.standing, JobStanding::DoesNotHold);
    EXPECT_EQ(s.of(21)->verdict.pairs.size(), 2u);
    EXPECT_EQ(s.of(99), nullptr);
}

TEST(SeasonReckoning, CountsAMachineWithoutChoosingSets) {
    const auto s = reckonSeason(season()).value();
    const auto tally = tallyOf(s, 1);
    EXPECT_EQ(tally.jobs, 4);
    EXPECT_EQ(tally.holding, 3);
    EXPECT_EQ(tally.notHolding, 1);
    EXPECT_EQ(tally.usualOnly + tally.notChecked, 0);
    EXPECT_NEAR(in(tally.area, Unit::Hectare), 105, 1e-9);
    EXPECT_EQ(tally.withoutArea, 1);
    ASSERT_EQ(tally.shares.size(), 2u);
    EXPECT_EQ(tally.shares[0].nozzle, "2.4");
    EXPECT_THAT(tally.shares[0].jobs, ElementsAre(12));
    EXPECT_THAT(tally.shares[1].jobs, ElementsAre(11, 14));
    EXPECT_NEAR(in(tally.shares[1].area, Unit::Hectare), 40, 1e-9);
    EXPECT_THAT(tally.machineGaps, Contains(Limit::Pump));
    EXPECT_TRUE(tally.takenUnchecked.empty());
    EXPECT_EQ(tallyOf(s, 2).jobs, 1);
}

TEST(SeasonReckoning, CountsWhatIsTakenUnchecked) {
    SeasonInputs in = season();
    for (auto& nozzle : in.nozzles) nozzle.pressureMax.reset();
    auto tally = tallyOf(reckonSeason(in).value(), 1);
    EXPECT_EQ(tally.holding, 0);
    EXPECT_GT(tally.notChecked, 0);
    EXPECT_TRUE(tally.takenUnchecked.empty()) << "not taken, so not holding";
    for (auto& nozzle : in.nozzles) nozzle.acceptUnchecked = true;
    tally = tallyOf(reckonSeason(in).value(), 1);
    EXPECT_GT(tally.holding, 0);
    EXPECT_THAT(tally.takenUnchecked, ElementsAre(Limit::NozzleMaximum));
}

TEST(SeasonReckoning, ReckonsAgainOnlyWhatHasChanged) {
    const auto first = reckonSeason(season()).value();
    SeasonInputs in = season();
    EXPECT_EQ(pairsToReckon(in, nullptr), 10u);
    EXPECT_EQ(pairsToReckon(in, &first), 0u);
    in.jobs[0].job.rate = Sourced<AreaRate>(lha(300));
    EXPECT_EQ(pairsToReckon(in, &first), 2u);
    const auto second = reckonSeason(in, &first).value();
    EXPECT_EQ(second.of(11)->verdict.best, 1u);
    EXPECT_EQ(second.of(12)->verdict.best, 1u);
    in.machines[0].machine.limits.pressureFloor = Sourced<Pressure>(bar(2));
    EXPECT_EQ(pairsToReckon(in, &second), 8u);
    in.nozzles[0].pressureMax = Sourced<Pressure>(bar(3));
    EXPECT_EQ(pairsToReckon(in, &second), 10u);
}

TEST(SeasonReckoning, AJobMovedToAnotherMachineIsReckonedAgain) {
    const auto first = reckonSeason(season()).value();
    SeasonInputs in = season();
    in.jobs[0].machine = 2;
    EXPECT_EQ(pairsToReckon(in, &first), 2u);
    in.jobs[0].machine = 77;
    EXPECT_EQ(reckonSeason(in, &first)->of(11), nullptr);
}

TEST(SeasonReckoning, StopsWhenCancelled) {
    int asked = 0;
    EXPECT_FALSE(reckonSeason(season(), nullptr, [&] { return ++asked == 3; }));
    EXPECT_EQ(asked, 3);
}

TEST(SeasonReckoning, HoldsTwoHundredJobsWithFiftyNozzles) {
    SeasonInputs in;
    in.machines = {{1, 0, selfPropelled100()}};
    for (int i = 0; i < 200; ++i)
        in.jobs.push_back({i + 1, 1, i, job(gpa(8 + 0.05 * i), mph(9), mph(10), mph(12))});
    for (int i = 0; i < 50; ++i) in.nozzles.push_back(own(std::to_string(i), 0.8 + 0.05 * i));
    const auto s = reckonSeason(in).value();
    EXPECT_EQ(s.jobs.size(), 200u);
    EXPECT_EQ(s.jobs.back().verdict.pairs.size(), 50u);
    EXPECT_EQ(tallyOf(s, 1).jobs, 200);
}

}  // namespace
}  // namespace bw
