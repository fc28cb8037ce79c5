// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/season_words.h"

#include <gtest/gtest.h>

#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

const NumberStyle kMetric{UnitSystem::Metric, '.'};

std::string said(const Fact& fact, const NumberStyle& style = kMetric) {
    static const Sentences words = Sentences::shipped();
    return words.of(fact, style);
}

// Invented, as in job_verdict_test.cpp: at 150 L/ha on 0.5 m the 1.2 holds 8 to 12 km/h, the 2.0
// the usual 10 alone, the 0.8 nothing of it.
Nozzle ranged(const std::string& name, double flow) {
    Nozzle n = nozzle(lpm(flow));
    n.name = name;
    n.pressureMin = Sourced<Pressure>(bar(1));
    n.pressureMax = Sourced<Pressure>(bar(6));
    return n;
}

JobReckoning reckoned(const Job& j, const std::vector<Nozzle>& nozzles) {
    return {1, 1, jobVerdict(machine(), j, nozzles)};
}

Job beet() {
    Job j = job();
    j.name = "Beet";
    return j;
}

TEST(SeasonWords, CountAMachinesJobs) {
    MachineTally tally;
    tally.jobs = 6;
    tally.holding = 5;
    EXPECT_EQ(said(tallyFact(tally, "Trailed")),
              "Trailed: 5 of 6 jobs have a nozzle that holds slow to fast");
    tally.jobs = tally.holding = 1;
    EXPECT_EQ(said(tallyFact(tally, "T")), "T: its one job has a nozzle that holds slow to fast");
    tally.holding = 0;
    EXPECT_EQ(said(tallyFact(tally, "T")),
              "T: its one job has no nozzle yet that holds slow to fast");
    tally.jobs = 0;
    EXPECT_EQ(said(tallyFact(tally, "T")), "T: no jobs yet");
}

TEST(SeasonWords, SayWhatStopsAJob) {
    EXPECT_FALSE(jobFact(reckoned(beet(), {ranged("fits", 1.2)}), beet()));
    EXPECT_EQ(said(jobFact(reckoned(beet(), {ranged("big", 2)}), beet()).value()),
              "Beet: big holds the usual 10 km/h, not all of 8 to 12 km/h. What stops it: the "
              "nozzle's lowest pressure.");
    EXPECT_EQ(said(jobFact(reckoned(beet(), {ranged("small", 0.8)}), beet()).value()),
              "Beet: none of your nozzles holds the usual 10 km/h. Nearest is small; what stops "
              "it: the nozzle's highest pressure.");
    Job pinned = beet();
    pinned.pinnedNozzle = "small";
    EXPECT_EQ(said(jobFact(reckoned(pinned, {ranged("small", 0.8)}), pinned).value()),
              "Beet: small does not hold the usual 10 km/h. What stops it: the nozzle's highest "
              "pressure.");
}

TEST(SeasonWords, SayWhatIsNotKnownOfANozzle) {
    Job j = beet();
    j.droplets = {DropletCategory::C};
    j.driftPercent = Sourced<double>(75);
    EXPECT_EQ(said(jobFact(reckoned(j, {ranged("new", 1.2)}), j).value()),
              "Beet: new may hold it, but this is not known of it: drift class and droplets.");
    EXPECT_FALSE(jobFact(reckoned(j, {}), j)) << "its problem speaks";
}

TEST(SeasonWords, SayWhatOfTheMachineIsNotChecked) {
    MachineTally tally;
    EXPECT_FALSE(machineGapsFact(tally));
    tally.machineGaps = {Limit::Pump, Limit::Suction};
    EXPECT_EQ(said(machineGapsFact(tally).value()),
              "Not checked here, and counted against no job: the pump and the suction side.");
    EXPECT_FALSE(takenUncheckedFact(tally));
    tally.takenUnchecked = {Limit::NozzleMaximum};
    EXPECT_EQ(said(takenUncheckedFact(tally).value()),
              "Taken by you without being checked, of nozzles that come out best: the nozzle's "
              "highest pressure.");
}

}  // namespace
}  // namespace bw
