// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_choice.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/season/set_words.h"
#include "core/text/sentences.h"
#include "tests/support/season_builders.h"

namespace bw {
namespace {

using namespace build;
using testing::ElementsAre;
using testing::IsEmpty;

// Figures by hand: one km/h at 150 L/ha on 0.5 m needs 0.125 L/min a nozzle; flow goes with the
// square root of pressure, so 1 to 6 bar is 0.577 to 1.414 times the flow at 3 bar.

Machine wide(double metresWide = 36) {
    return machine({static_cast<int>(metresWide * 2)}, metres(0.5));
}
Job at(double rate, double slow, double usual, double fast) {
    return job(lha(rate), kmh(slow), kmh(usual), kmh(fast));
}

/// "small" 1.06066 L/min: 0.612 to 1.5 L/min, so up to 12 km/h at 150 L/ha. "big" 2 L/min: 1.155
/// to 2.828 L/min.
SeasonInputs smallAndBig() {
    return season(
        {priced(ranged("small", 1.06066), 5), priced(ranged("big", 2), 8)}, {wide()},
        {{named(at(150, 14, 14, 14), "Barley", 120), named(at(100, 8, 9, 10), "Oats", 40)}});
}

const ChosenSet* setNamed(const SetPlan& plan, const std::string& name) {
    for (const auto& set : plan.sets)
        if (set.nozzle == name) return &set;
    return nullptr;
}
std::string words(const Fact& fact) {
    static const Sentences kSentences = Sentences::shipped();
    return kSentences.of(fact, {});
}
std::vector<std::string> names(const SetPlan& plan) {
    std::vector<std::string> out;
    for (const auto& set : plan.sets) out.push_back(set.nozzle);
    return out;
}

TEST(SetChoice, TellsWhatASetIsWorth) {
    const SetChoice choice = chooseSets(smallAndBig());
    ASSERT_EQ(choice.end, SolveEnd::Optimal);
    EXPECT_THAT(names(choice.plan), ElementsAre("small", "big"));
    EXPECT_NEAR(choice.plan.price.value(), 72 * 13, 1e-9);
    const ChosenSet* big = setNamed(choice.plan, "big");
    ASSERT_TRUE(big);
    EXPECT_THAT(big->forcedBy, ElementsAre(100));
    EXPECT_THAT(big->onlyWith, ElementsAre(100));
    // 120 ha on 36 m: 2.381 h at 14, 2.778 h at 12 km/h.
    ASSERT_EQ(big->without.size(), 1U);
    EXPECT_NEAR(big->without[0].moreTime().value().si() / 3600, 0.3968, 0.0005);
    EXPECT_EQ(words(jobChangeFact(big->without[0], "Barley").value()),
              "Barley (120 ha) runs at 12 km/h, not 14 km/h, with small: 0.4 h more.");
}

TEST(SetChoice, HoursCountTheFieldEfficiency) {
    SetWishes wishes;
    wishes.fieldEfficiency = 0.5;
    const SetChoice choice = chooseSets(smallAndBig(), wishes);
    EXPECT_NEAR(choice.plan.runs.at(0).time.value().si() / 3600, 2 * 2.38095, 0.0001);
}

TEST(SetChoice, OneFewerLeavesOutTheLeastHectares) {
    const SetChoice choice = chooseSets(smallAndBig());
    ASSERT_EQ(choice.alternatives.size(), 1U);  // two sets there are, both are taken
    const SetAlternative& fewer = choice.alternatives[0];
    EXPECT_EQ(fewer.kind, AlternativeKind::OneFewer);
    EXPECT_THAT(names(fewer.plan), ElementsAre("big"));
    EXPECT_NEAR(in(fewer.leftArea, Unit::Hectare), 40, 1e-9);
    EXPECT_NEAR(fewer.morePrice.value(), -72 * 5, 1e-9);
    EXPECT_EQ(words(alternativeFacts(fewer)[0]),
              "One set fewer: big. 40 ha would no longer be held slow to fast.");
    EXPECT_EQ(words(alternativeFacts(fewer)[1]), "It costs 360.00 less.");
}

TEST(SetChoice, OneMoreSavesMoneyOrGainsRoom) {
    // "one" holds both jobs; "left" and "right" are owned and hold one each.
    SeasonInputs in = season({priced(ranged("one", 1.6), 10), priced(ranged("left", 1.1), 1),
                              priced(ranged("right", 2), 1)},
                             {wide()}, {{at(150, 8, 9, 10), at(150, 14, 15, 16)}});
    SetChoice choice = chooseSets(in);
    EXPECT_THAT(names(choice.plan), ElementsAre("one"));
    SetWishes wishes;
    wishes.owned = {{1, "left"}, {1, "right"}};
    choice = chooseSets(in, wishes);
    EXPECT_THAT(names(choice.plan), ElementsAre("one"));
    const SetAlternative& more = choice.alternatives.back();
    EXPECT_EQ(more.kind, AlternativeKind::OneMore);
    EXPECT_THAT(names(more.plan), ElementsAre("left", "right"));
    EXPECT_NEAR(more.morePrice.value(), -720, 1e-9);
    // Bought, they would save nothing: then the most room counts.
    in.nozzles[1].price = in.nozzles[2].price = Sourced<double>(20);
    const SetChoice dear = chooseSets(in);
    EXPECT_EQ(dear.alternatives.back().kind, AlternativeKind::OneMore);
    EXPECT_GT(dear.alternatives.back().plan.room.value(), dear.plan.room.value());
    EXPECT_GT(dear.alternatives.back().roomierJobs, 0);
}

TEST(SetChoice, NextBestHasAsManySets) {
    const SeasonInputs in =
        season({priced(ranged("dear", 1.2), 9), priced(ranged("cheap", 1.25), 3)}, {wide()},
               {{at(150, 8, 10, 12)}});
    const SetChoice choice = chooseSets(in);
    EXPECT_THAT(names(choice.plan), ElementsAre("cheap"));
    ASSERT_FALSE(choice.alternatives.empty());
    EXPECT_EQ(choice.alternatives[0].kind, AlternativeKind::NextBest);
    EXPECT_THAT(names(choice.alternatives[0].plan), ElementsAre("dear"));
    EXPECT_NEAR(choice.alternatives[0].morePrice.value(), 72 * 6, 1e-9);
}

TEST(SetChoice, PinnedJobsAndBarredNozzles) {
    SeasonInputs in = season({ranged("a", 1.2), ranged("b", 1.25)}, {wide()},
                             {{at(150, 8, 10, 12), at(150, 8, 10, 12)}});
    in.jobs[1].job.pinnedNozzle = "b";
    EXPECT_THAT(names(chooseSets(in).plan), ElementsAre("b"));
    SetWishes wishes;
    wishes.barred = {"b"};
    const SetChoice choice = chooseSets(in, wishes);
    EXPECT_THAT(names(choice.plan), ElementsAre("a"));
    ASSERT_EQ(choice.uncovered.size(), 1U);
    EXPECT_EQ(choice.uncovered[0].job, 101);
    EXPECT_EQ(words(choice.uncovered[0].why),
              "Only nozzles that you ruled out hold it slow to fast: b.");
    EXPECT_THAT(choice.uncovered[0].changes, IsEmpty());
}

TEST(SetChoice, ANozzlePinnedFromElsewhereServesThatJobAlone) {
    SeasonInputs in =
        season({ranged("a", 1.2)}, {wide()}, {{at(150, 8, 10, 12), at(250, 13, 14, 15)}});
    in.elsewhere = {ranged("record", 4)};
    EXPECT_EQ(chooseSets(in).uncovered.size(), 1U);
    in.jobs[1].job.pinnedNozzle = "record";
    const SetChoice choice = chooseSets(in);
    EXPECT_THAT(names(choice.plan), ElementsAre("a", "record"));
    EXPECT_THAT(setNamed(choice.plan, "record")->jobs, ElementsAre(101));
}

TEST(SetChoice, UnknownNeverPasses) {
    SeasonInputs in = season({ranged("a", 1.2)}, {wide()}, {{at(150, 8, 10, 12)}});
    in.jobs[0].job.droplets = {DropletCategory::C};
    SetChoice choice = chooseSets(in);
    EXPECT_THAT(choice.plan.sets, IsEmpty());
    ASSERT_EQ(choice.uncovered.size(), 1U);
    EXPECT_EQ(words(choice.uncovered[0].why),
              "a may hold it, but this is not known of it: droplets.");
    EXPECT_THAT(choice.uncovered[0].changes, IsEmpty());
    SetWishes wishes;
    wishes.acceptUnchecked = {"a"};
    choice = chooseSets(in, wishes);
    EXPECT_THAT(names(choice.plan), ElementsAre("a"));
    EXPECT_THAT(choice.takenUnchecked, ElementsAre(Limit::Droplets));
    EXPECT_THAT(choice.machineGaps, testing::Contains(Limit::Pump));
}

TEST(SetChoice, SaysWhyNotAndTheSmallestChange) {
    // "a" reaches 1.697 L/min = 13.576 km/h; the job's fast 14 is 3 % over, its usual 12 inside.
    const SeasonInputs in = season({ranged("a", 1.2)}, {wide()}, {{at(150, 10, 12, 14)}});
    SetWishes wishes;
    wishes.roundIn = UnitSystem::Metric;
    const SetChoice choice = chooseSets(in, wishes);
    ASSERT_EQ(choice.uncovered.size(), 1U);
    const UncoveredJob& job = choice.uncovered[0];
    EXPECT_THAT(job.usualOnly, ElementsAre("a"));
    EXPECT_EQ(job.limit, Limit::NozzleMaximum);
    EXPECT_EQ(words(job.why),
              "a holds the usual 12 km/h, not all of 10 to 14 km/h. What stops it: "
              "the nozzle's highest pressure.");
    ASSERT_EQ(job.changes.size(), 2U);
    // By 1 - 13.576 / 14 = 3.03 %, speed or rate; stepped to 13.5 km/h and 145 L/ha.
    EXPECT_EQ(words(changeFact(job.changes[0])), "With a, driving at most 13.5 km/h would do.");
    EXPECT_EQ(words(changeFact(job.changes[1])),
              "With a, a rate of 145 L/ha would do, if the label has it.");
    EXPECT_NEAR(job.changes[0].size, 1 - 13.5764 / 14, 0.0001);
}

TEST(SetChoice, MachinesShareSparesOfANozzle) {
    const SeasonInputs in = season({priced(ranged("a", 1.2), 10)}, {wide(36), wide(24)},
                                   {{at(150, 8, 10, 12)}, {at(150, 8, 10, 12)}});
    SetWishes wishes;
    wishes.spares = 0.05;  // 3.6 and 2.4 nozzles: 4 and 3, of which 4 do for both
    wishes.owned = {{2, "a"}};
    SetChoice choice = chooseSets(in, wishes);
    EXPECT_EQ(choice.plan.sets.at(0).toBuy, 76);
    EXPECT_NEAR(choice.plan.price.value(), 760, 1e-9);
    wishes.owned.clear();
    choice = chooseSets(in, wishes);
    EXPECT_EQ(choice.plan.sets.at(0).toBuy, 72 + 48 + 4);
    EXPECT_EQ(choice.plan.sets.at(0).machines.size(), 2U);
}

TEST(SetChoice, APriceThatIsNotKnownIsNotFree) {
    const SeasonInputs in = season({ranged("no price", 1.2), priced(ranged("priced", 1.22), 50)},
                                   {wide()}, {{at(150, 8, 10, 11)}});
    SetWishes wishes;
    wishes.barred = {"priced"};
    const SetChoice choice = chooseSets(in, wishes);
    EXPECT_FALSE(choice.plan.price);
    EXPECT_THAT(choice.plan.unpriced, ElementsAre("no price"));
}

TEST(SetChoice, BodiesMayNotCarryAllSets) {
    SeasonInputs in = smallAndBig();
    in.machines[0].machine.bodyPositions = Sourced<int>(1);
    SetWishes wishes;
    EXPECT_EQ(chooseSets(in, wishes).end, SolveEnd::Optimal);
    wishes.isAllAboard = true;
    EXPECT_EQ(chooseSets(in, wishes).end, SolveEnd::Infeasible);
    in.machines[0].machine.bodyPositions = Sourced<int>(2);
    EXPECT_EQ(chooseSets(in, wishes).end, SolveEnd::Optimal);
}

TEST(SetChoice, TellsHowFarItIsAndStops) {
    double last = 0;
    const auto whole = chooseSets(smallAndBig(), {}, [&](double done) {
        EXPECT_GE(done, last);
        last = done;
        return true;
    });
    EXPECT_EQ(last, 1.0);
    for (const double until : {0.0, 0.5, 0.65, 0.9}) {
        const auto stopped =
            chooseSets(smallAndBig(), {}, [&](double done) { return done < until; });
        EXPECT_EQ(stopped.end, SolveEnd::Cancelled) << until;
        EXPECT_THAT(stopped.plan.sets, IsEmpty());
    }
}

TEST(SetChoice, EmptySeasons) {
    EXPECT_EQ(chooseSets({}).end, SolveEnd::Optimal);
    const SetChoice none = chooseSets(season({}, {wide()}, {{at(150, 8, 10, 12)}}));
    EXPECT_EQ(none.end, SolveEnd::Optimal);
    ASSERT_EQ(none.uncovered.size(), 1U);
    EXPECT_EQ(none.uncovered[0].why.code, "problem.no_nozzle_yet");
}

TEST(SetChoice, SetsAboardAreOwned) {
    Machine m = wide();
    m.setsAboard = {{1, "a"}, {2, ""}};
    EXPECT_THAT(setsAboard({{7, 0, m}}), ElementsAre(OwnedSet{7, "a"}));
}

}  // namespace
}  // namespace bw
