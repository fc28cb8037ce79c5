// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/diagnosis/next_check.h"
#include "tests/core/diagnosis/case_builders.h"

namespace bw {
namespace {

using namespace build;

/// Everything that reasoning works on, for asking single checks.
struct Workings {
    CaseNumbers numbers;
    std::shared_ptr<const Predictor> predictor;
    Evidence evidence;
    explicit Workings(const CaseRecord& record)
        : numbers(record),
          predictor(predictorFor(record, numbers)),
          evidence(Knowledge::shipped(), *predictor,
                   sortObservations(record, Knowledge::shipped(), numbers, *predictor),
                   record.symptom) {}
};

const Check& check(std::string_view id) {
    return *Knowledge::shipped().check(id);
}

std::vector<CaseRecord> manyCases() {
    std::vector<CaseRecord> out;
    for (auto base : {lowFlowCase(), highFlowCase()}) {
        for (const auto& [symptom, name] : ChoiceNames<Symptom>::names) {
            base.symptom = symptom;
            for (const auto* tank : {"", "water", "product"}) {
                base.tank = tank;
                for (const auto* company : {"", "alone", "second_person"}) {
                    base.company = company;
                    out.push_back(base);
                }
            }
        }
    }
    return out;
}

TEST(SafetyOrder, NothingOpensTheLineWhileASafeCheckStillTells) {
    int opened = 0;
    for (auto record : manyCases()) {
        // Walk the case on "can't tell": the whole order of asking comes by.
        for (auto state = reasoned(record); state.next; state = reasoned(record)) {
            const Check& next = check(state.next->check);
            if (next.place == CheckPlace::LineOpened) {
                ++opened;
                const Workings w(record);
                for (const auto& other : Knowledge::shipped().checks) {
                    const auto standing = checkStanding(other, record);
                    if (standing.barred || other.place == CheckPlace::LineOpened ||
                        w.evidence.given().asked.contains(other.id) ||
                        !machineHas(other.needs, w.numbers))
                        continue;
                    if (!other.onlyFor.empty() &&
                        std::find(other.onlyFor.begin(), other.onlyFor.end(), *record.symptom) ==
                            other.onlyFor.end())
                        continue;
                    EXPECT_LT(expectedBits(other, w.evidence), kTellsBits)
                        << next.id << " was asked before " << other.id;
                }
            }
            record.observations.push_back(said(next.id, "cant_tell"));
        }
        if (opened > 24) break;  // enough; each is a whole comparison
    }
    EXPECT_GT(opened, 20);
}

TEST(SafetyOrder, OpeningWaitsHoweverMuchItWouldTell) {
    // Opening the suction strainer is made free and certain: it still waits.
    Knowledge keen = Knowledge::shipped();
    for (auto& c : keen.checks) {
        if (c.id != "suction_strainer") continue;
        c.minutes = 1;
        c.likelihoods["suction_strainer"] = {{"clean", 0.0001}, {"dirty", 1000.0}};
    }
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    const auto state = reason(record, keen);
    ASSERT_TRUE(state.next);
    EXPECT_NE(state.next->check, "suction_strainer");
    EXPECT_NE(keen.check(state.next->check)->place, CheckPlace::LineOpened);
}

TEST(SafetyOrder, DisplaysBeforeLeavingTheCab) {
    for (const auto& record : manyCases()) {
        const auto state = reasoned(record);
        if (!state.next) continue;
        const auto place = check(state.next->check).place;
        EXPECT_TRUE(place == CheckPlace::CabWorking || place == CheckPlace::CabParked)
            << state.next->check;
    }
}

TEST(SafetyOrder, ProductInTheTankDefersTestsOnWaterAndCountsRinsing) {
    CaseRecord record;
    record.company = "second_person";
    record.tank = "water";
    const auto onWater = checkStanding(check("catch_good"), record);
    EXPECT_EQ(onWater.step, SafetyStep::OnFootOnWater);
    EXPECT_EQ(onWater.minutes, check("catch_good").minutes);
    for (const auto* tank : {"product", ""}) {
        record.tank = tank;
        const auto deferred = checkStanding(check("catch_good"), record);
        EXPECT_EQ(deferred.step, SafetyStep::Deferred);
        EXPECT_EQ(deferred.minutes, check("catch_good").minutes + kRinseMinutes);
        EXPECT_FALSE(deferred.barred);
    }
    record.tank = "rinsed";
    EXPECT_EQ(checkStanding(check("catch_good"), record).minutes, check("catch_good").minutes);
    EXPECT_EQ(checkStanding(check("valve_positions"), record).step, SafetyStep::OnFoot);
}

TEST(SafetyOrder, AloneBarsWhatTakesTwo) {
    auto record = highFlowCase();
    record.symptom = Symptom::UnevenBoom;
    record.company = "alone";
    const auto barred = reasoned(record).barredChecks;
    for (const auto& c : Knowledge::shipped().checks) {
        const bool listed = std::find(barred.begin(), barred.end(), c.id) != barred.end();
        EXPECT_EQ(listed, c.people > 1) << c.id;
    }
}

TEST(SafetyOrder, OnTheRoadNobodyLeavesTheCab) {
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    record.place = "road";
    for (auto state = reasoned(record); state.next; state = reasoned(record)) {
        const auto& next = check(state.next->check);
        EXPECT_TRUE(next.place == CheckPlace::CabWorking || next.place == CheckPlace::CabParked);
        EXPECT_FALSE(next.needsWater) << next.id;
        record.observations.push_back(said(next.id, "cant_tell"));
    }
}

TEST(SafetyOrder, TheRoadBarsEveryCheckOnFoot) {
    CaseRecord record;
    record.place = "road";
    record.company = "second_person";
    record.tank = "water";
    for (const auto& c : Knowledge::shipped().checks) {
        if (c.place == CheckPlace::CabWorking || c.place == CheckPlace::CabParked) continue;
        EXPECT_TRUE(checkStanding(c, record).barred) << c.id;
    }
}

}  // namespace
}  // namespace bw
