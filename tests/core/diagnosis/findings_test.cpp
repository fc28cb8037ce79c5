// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/findings.h"

#include <gtest/gtest.h>

#include "core/text/sentences.h"
#include "tests/core/diagnosis/case_builders.h"

namespace bw {
namespace {

using namespace bw::build;

TEST(Findings, AGroupIsOneLineAndAllAddToOne) {
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    const auto state = reasoned(record);
    const auto findings = findingsOf(state, Knowledge::shipped());
    double sum = 0;
    bool hasGroup = false;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        sum += findings[i].probability;
        if (i > 0) {
            EXPECT_LE(findings[i].probability, findings[i - 1].probability);
        }
        hasGroup = hasGroup || findings[i].causes.size() > 1;
        EXPECT_NE(findings[i].name.empty(), !findings[i].isSomethingElse) << findings[i].id;
        EXPECT_NEAR(findings[i].probability, probability(state, findings[i].id), 1e-12);
    }
    EXPECT_NEAR(sum, 1.0, 1e-9);
    EXPECT_TRUE(hasGroup);
}

// Borders of the words: judgement of this program.
TEST(Findings, WordsByShare) {
    EXPECT_EQ(likeliness(0.31), Likeliness::Likely);
    EXPECT_EQ(likeliness(0.29), Likeliness::Possible);
    EXPECT_EQ(likeliness(0.09), Likeliness::LessLikely);
    EXPECT_EQ(likeliness(0.01), Likeliness::NoLonger);
}

TEST(Findings, OutlookNamesWhatAnAnswerWouldFavour) {
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    const auto now = reasoned(record);
    const Observation dirty = said("suction_strainer", "dirty");
    const auto outlook = outlookOf(record, Knowledge::shipped(), now, dirty);
    ASSERT_FALSE(outlook.gains.empty());
    EXPECT_EQ(outlook.gains.front().causes.front(), "suction_strainer");
    EXPECT_TRUE(record.observations.empty());
    const auto idle =
        outlookOf(record, Knowledge::shipped(), now, said("suction_strainer", "cant_tell"));
    EXPECT_TRUE(idle.gains.empty());
}

TEST(Findings, AnObservationTakesThePlaceOfItsCheck) {
    CaseRecord record;
    observe(record, said("onset", "sudden"));
    observe(record, said("speed_range", "fast_end"));
    observe(record, said("onset", "gradual"));
    ASSERT_EQ(record.observations.size(), 2u);
    EXPECT_EQ(record.observations[0].answer, "gradual");
}

TEST(Findings, WhenDoneTheNextBestCheckIsStillOffered) {
    auto record = highFlowCase();
    record.symptom = Symptom::StuckLow;
    record.observations = {said("strainers", "main"), said("pump_pressure", "far_above"),
                           said("onset", "gradual"), said("valve_positions", "right"),
                           said("suction_vacuum", "low")};
    const auto state = reasoned(record);
    ASSERT_TRUE(state.done);
    EXPECT_FALSE(state.next);
    ASSERT_TRUE(state.further);
    EXPECT_TRUE(Knowledge::shipped().check(state.further->check));
}

TEST(Findings, CallersNozzlesFromTheirNumberOrFromWidthAndSpacing) {
    Machine machine;
    machine.width = Sourced<Length>(make<Length>(100, Unit::Foot));
    machine.spacing = Sourced<Length>(make<Length>(20, Unit::Inch));
    takeNozzleCount(machine, std::nullopt);
    EXPECT_EQ(nozzleCount(machine), 60);
    takeNozzleCount(machine, 54);
    EXPECT_EQ(nozzleCount(machine), 54);
    machine.spacing.reset();
    takeNozzleCount(machine, std::nullopt);
    EXPECT_EQ(nozzleCount(machine), 0) << "nothing is assumed";
}

// 8 gal/ac × 14 mph × 20 in ÷ 5,940 = 0.377 gal/min a nozzle (definition of the units); a nozzle
// of 0.4 gal/min at 40 psi gives that at 94.3 % of the time when pulsed at 40 psi.
TEST(PulsedSums, DutyByTheSums) {
    auto record = usCase(gpa(8), mph(14), nozzle(make<Flow>(0.4, Unit::GallonUsPerMinute)));
    record.nozzle.at = Sourced<Pressure>(make<Pressure>(40, Unit::Psi));
    record.machine.machineClass = Sourced<MachineClass>(MachineClass::Pulsed);
    record.machine.losses = {};
    record.machine.pulsed.pressure = Sourced<Pressure>(make<Pressure>(40, Unit::Psi));
    record.machine.pulsed.dutyMin = Sourced<double>(0.25);
    record.machine.pulsed.dutyMax = Sourced<double>(0.9);
    const auto state = reasoned(record);
    EXPECT_TRUE(state.notCovered);
    ASSERT_EQ(state.sums.size(), 1u);
    EXPECT_EQ(state.sums[0].code, "finder.pulsed.duty_over");
    const NumberStyle us{UnitSystem::Us, '.'};
    const std::string text = Sentences::shipped().of(state.sums[0], us);
    EXPECT_NE(text.find("94.3 %"), std::string::npos) << text;
    record.job = {};
    EXPECT_EQ(reasoned(record).sums[0].code, "finder.pulsed.no_numbers");
}

TEST(FinderTexts, EveryCheckHasAShortName) {
    const auto words = Sentences::shipped();
    for (const auto& check : Knowledge::shipped().checks)
        EXPECT_TRUE(words.has("finder.check." + check.id)) << check.id;
}

}  // namespace
}  // namespace bw
