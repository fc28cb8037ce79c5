// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/job_verdict.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

// All machines, nozzles and jobs are invented. Figures by hand from two lines of arithmetic that
// every handbook has: nozzle flow = rate × speed × spacing / 600 (L/min, L/ha, km/h, m), and flow
// goes with the square root of pressure.

Nozzle ranged(const std::string& name, double flow, double least = 1, double most = 6) {
    Nozzle n = nozzle(lpm(flow));
    n.name = name;
    n.pressureMin = Sourced<Pressure>(bar(least));
    n.pressureMax = Sourced<Pressure>(bar(most));
    return n;
}

Nozzle withDroplets(Nozzle n) {
    n.droplets = Sourced<std::vector<DropletBand>>({{bar(1), bar(6), DropletCategory::C}});
    return n;
}

Job asking(std::vector<DropletCategory> droplets) {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = std::move(droplets);
    return j;
}

TEST(PairVerdict, TakesTheWindowOfTheNozzleRange) {
    // 1.2 L/min at 3 bar: 1 bar gives 0.6928, 6 bar 1.6971 L/min; at 150 L/ha on 0.5 m one km/h
    // needs 0.125 L/min: 5.543 to 13.576 km/h. Room: (13.576 - 10) / 10.
    const auto pair = pairVerdict(machine(), ranged("a", 1.2), job());
    EXPECT_EQ(pair.standing, Standing::Covers);
    EXPECT_NEAR(in(pair.ends.low.value(), Unit::KilometrePerHour), 5.543, 0.001);
    EXPECT_NEAR(in(pair.ends.high.value(), Unit::KilometrePerHour), 13.576, 0.001);
    EXPECT_NEAR(pair.roomToSpare.value(), 0.3576, 0.0001);
    EXPECT_EQ(pair.stop, Limit::None);
    EXPECT_EQ(pair.lowLimit, Limit::NozzleMinimum);
    EXPECT_EQ(pair.highLimit, Limit::NozzleMaximum);
    EXPECT_FALSE(pair.position);
    EXPECT_FALSE(pair.off);
}

TEST(PairVerdict, NamesWhatKeepsTheUsualSpeedOutBeforeTheOthers) {
    // 0.8 L/min at 3 bar ends at 6 bar with 1.131 L/min = 9.05 km/h: under the usual 10.
    const auto small = pairVerdict(machine(), ranged("small", 0.8), job());
    EXPECT_EQ(small.standing, Standing::Neither);
    EXPECT_EQ(small.stop, Limit::NozzleMaximum);
    // 2.0 L/min begins at 1 bar with 1.155 L/min = 9.24 km/h: over the slow 8, under the usual 10.
    const auto big = pairVerdict(machine(), ranged("big", 2.0), job());
    EXPECT_EQ(big.standing, Standing::UsualOnly);
    EXPECT_EQ(big.stop, Limit::NozzleMinimum);
}

TEST(PairVerdict, UnknownNeverPasses) {
    const Job coarse = asking({DropletCategory::C});
    Nozzle bare = ranged("no droplet table", 1.2);
    auto pair = pairVerdict(machine(), bare, coarse);
    EXPECT_EQ(pair.standing, Standing::NotChecked);
    EXPECT_THAT(pair.nozzleGaps, ElementsAre(Limit::Droplets));
    EXPECT_FALSE(pair.isTakenUnchecked());
    bare.acceptUnchecked = true;
    pair = pairVerdict(machine(), bare, coarse);
    EXPECT_EQ(pair.standing, Standing::Covers);
    EXPECT_TRUE(pair.isTakenUnchecked());
}

TEST(PairVerdict, EachGapOfTheNozzleIsAGap) {
    Nozzle n = ranged("a", 1.2);
    n.pressureMin.reset();
    EXPECT_THAT(pairVerdict(machine(), n, job()).nozzleGaps, ElementsAre(Limit::NozzleMinimum));
    n = ranged("a", 1.2);
    n.pressureMax.reset();
    EXPECT_THAT(pairVerdict(machine(), n, job()).nozzleGaps, ElementsAre(Limit::NozzleMaximum));
    n = ranged("a", 1.2);
    Job strip = job();
    strip.driftPercent = Sourced<double>(90);
    const auto pair = pairVerdict(machine(), n, strip);
    EXPECT_THAT(pair.nozzleGaps, ElementsAre(Limit::DriftClass));
    EXPECT_EQ(pair.standing, Standing::NotChecked);
}

TEST(PairVerdict, MachineGapsAreSaidAndHinderNothing) {
    const auto pair = pairVerdict(machine(), ranged("a", 1.2), job());
    EXPECT_EQ(pair.standing, Standing::Covers);
    EXPECT_THAT(pair.machineGaps, Contains(Limit::Pump));
    EXPECT_THAT(pair.machineGaps, Contains(Limit::Meter));
    EXPECT_THAT(pair.nozzleGaps, IsEmpty());
}

TEST(PairVerdict, AKnownLimitThatFailsIsNotHiddenByAGap) {
    Nozzle small = ranged("small", 0.8);
    const auto pair = pairVerdict(machine(), small, asking({DropletCategory::C}));
    EXPECT_EQ(pair.standing, Standing::Neither);
}

TEST(PairVerdict, TellsTheRateWhereItIsPinned) {
    Machine m = machine();
    m.limits.pressureFloor = Sourced<Pressure>(bar(3));
    // Floor 3 bar holds 1.2 L/min = 9.6 km/h at 150 L/ha. At the slow 8 the rate is 150 × 9.6 / 8
    // = 180 L/ha, a fifth more.
    const auto pair = pairVerdict(m, ranged("a", 1.2), job());
    EXPECT_EQ(pair.standing, Standing::UsualOnly);
    EXPECT_EQ(pair.stop, Limit::PressureFloor);
    ASSERT_TRUE(pair.off);
    EXPECT_NEAR(pair.off->ratio, 1.2, 1e-9);
    EXPECT_NEAR(in(pair.off->speed, Unit::KilometrePerHour), 8, 1e-9);
    EXPECT_NEAR(in(pair.off->rate, Unit::LitrePerHectare), 180, 1e-6);
}

TEST(PairVerdict, AJobWithOneSpeedStandsOrFallsWithIt) {
    Job one = job(lha(150));
    one.slow.reset();
    one.fast.reset();
    EXPECT_EQ(pairVerdict(machine(), ranged("big", 2.0), one).standing, Standing::Covers);
}

TEST(PairVerdict, ARangeOfRatesMustHoldAtBothEnds) {
    Job map = job(lha(150), kmh(10), kmh(10), kmh(10));
    map.rateLeast = Sourced<AreaRate>(lha(80));
    map.rateMost = Sourced<AreaRate>(lha(180));
    // Least 80 L/ha: 1 bar (0.6928 L/min) is reached at 10.39 km/h, over the job's 10.
    const auto pair = pairVerdict(machine(), ranged("a", 1.2), map);
    EXPECT_EQ(pair.standing, Standing::Neither);
    EXPECT_NEAR(in(pair.ends.low.value(), Unit::KilometrePerHour), 10.392, 0.001);
    EXPECT_EQ(pair.stop, Limit::NozzleMinimum);
}

TEST(PairVerdict, MovesTheRestrictorValveToTheBetterPosition) {
    Machine m = selfPropelled100();
    // At 8 gal/ac and 11 mph the 100 ft boom takes 60 × 8 × 11 × 20 / 5940 = 17.8 gal/min, under
    // the changeover flow of 30: at full bore the meter would be unsure.
    m.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    Nozzle n = nozzle(gpm(0.4), psi(40));
    n.pressureMin = Sourced<Pressure>(psi(15));
    n.pressureMax = Sourced<Pressure>(psi(90));
    const Job slow = job(gpa(8), mph(11), mph(12), mph(13));
    EXPECT_FALSE(speedWindow(m, n, slow)->coversBand);
    const auto pair = pairVerdict(m, n, slow);
    EXPECT_EQ(pair.standing, Standing::Covers);
    EXPECT_EQ(pair.position, RestrictorPosition::Narrowed);
}

TEST(PairVerdict, WithoutAChangeoverFlowTheValveStaysWhereItIs) {
    Machine m = machine();
    m.restrictor.fitted = Sourced<bool>(true);
    m.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::Narrowed);
    EXPECT_EQ(pairVerdict(m, ranged("a", 1.2), job()).position, RestrictorPosition::Narrowed);
}

TEST(JobVerdict, TakesTheCoveringNozzleWithMostRoom) {
    // 1.2: room 35.8 % (above). 1.4: 6.47 to 15.84 km/h, room 35.3 %. 2.0 holds the usual only.
    const auto v =
        jobVerdict(machine(), job(), {ranged("big", 2), ranged("b", 1.4), ranged("a", 1.2)});
    EXPECT_EQ(v.standing, JobStanding::Holds);
    EXPECT_EQ(v.best, 2u);
    EXPECT_FALSE(v.isPinned);
    EXPECT_EQ(v.pairs.size(), 3u);
}

TEST(JobVerdict, SpeaksOfThePinnedNozzleEvenIfAnotherIsBetter) {
    Job j = job();
    j.pinnedNozzle = "big";
    const auto v = jobVerdict(machine(), j, {ranged("a", 1.2), ranged("big", 2)});
    EXPECT_EQ(v.standing, JobStanding::UsualOnly);
    EXPECT_EQ(v.best, 1u);
    EXPECT_TRUE(v.isPinned);
}

TEST(JobVerdict, APinnedNozzleFromElsewhereSpeaksButDoesNotCompete) {
    const std::vector<Nozzle> own{ranged("small", 0.8)}, sizes{ranged("size", 1.2)};
    Job j = job();
    EXPECT_EQ(jobVerdict(machine(), j, own, sizes).standing, JobStanding::DoesNotHold);
    j.pinnedNozzle = "size";
    const auto v = jobVerdict(machine(), j, own, sizes);
    EXPECT_EQ(v.standing, JobStanding::Holds);
    EXPECT_EQ(v.nozzle, "size");
    EXPECT_FALSE(v.best);
    EXPECT_TRUE(v.isPinned);
    EXPECT_EQ(v.pairs.size(), 1u);
}

TEST(JobVerdict, AnUncheckedNozzleNeverBeatsOneThatIsKnownToHoldTheUsualSpeed) {
    const Job coarse = asking({DropletCategory::C});
    const std::vector<Nozzle> both{ranged("untested", 1.2), withDroplets(ranged("big", 2))};
    auto v = jobVerdict(machine(), coarse, both);
    EXPECT_EQ(v.standing, JobStanding::UsualOnly);
    EXPECT_EQ(v.best, 1u);
    v = jobVerdict(machine(), coarse, {both[0], withDroplets(ranged("small", 0.8))});
    EXPECT_EQ(v.standing, JobStanding::NotChecked);
    EXPECT_EQ(v.best, 0u);
    v = jobVerdict(machine(), coarse, {withDroplets(ranged("small", 0.8))});
    EXPECT_EQ(v.standing, JobStanding::DoesNotHold);
    EXPECT_EQ(v.bestPair()->stop, Limit::NozzleMaximum);
}

TEST(JobVerdict, SaysWhyNothingCanBeReckoned) {
    const std::vector<Nozzle> one{ranged("a", 1.2)};
    const auto codeOf = [](const JobVerdict& v) {
        EXPECT_EQ(v.standing, JobStanding::NotChecked);
        return v.problem ? v.problem->code : std::string();
    };
    EXPECT_EQ(codeOf(jobVerdict(machine(), job(), {})), "no_nozzle_yet");
    Job j = job();
    j.pinnedNozzle = "gone";
    EXPECT_EQ(codeOf(jobVerdict(machine(), j, one)), "pinned_nozzle_unknown");
    j = job();
    j.rate.reset();
    EXPECT_EQ(codeOf(jobVerdict(machine(), j, one)), "job_rate_missing");
    EXPECT_EQ(codeOf(jobVerdict(machine(), job(lha(150), kmh(12), kmh(10), kmh(14)), one)),
              "job_speeds_order");
    EXPECT_EQ(codeOf(jobVerdict(Machine{}, job(), one)), "spacing_missing");
    Nozzle flowless = one[0];
    flowless.flow.reset();
    EXPECT_EQ(codeOf(jobVerdict(machine(), job(), {flowless})), "nozzle_flow_missing");
}

TEST(JobVerdict, ANozzleThatCannotBeReckonedNeverComesOutBest) {
    Nozzle flowless = ranged("no flow", 1.2);
    flowless.flow.reset();
    const auto v = jobVerdict(machine(), job(), {flowless, ranged("small", 0.8)});
    EXPECT_EQ(v.best, 1u);
    EXPECT_EQ(v.standing, JobStanding::DoesNotHold);
}

TEST(JobVerdict, EveryStandingLimitAndProblemHasWords) {
    const auto words = Sentences::shipped();
    for (const auto& [standing, name] : ChoiceNames<JobStanding>::names)
        EXPECT_TRUE(words.has("season." + std::string(name))) << name;
    for (const auto& [limit, name] : ChoiceNames<Limit>::names)
        EXPECT_TRUE(words.has("cell." + std::string(name))) << name;
    for (const char* code : {"no_nozzle_yet", "pinned_nozzle_unknown"})
        EXPECT_TRUE(words.has("problem." + std::string(code))) << code;
}

}  // namespace
}  // namespace bw
