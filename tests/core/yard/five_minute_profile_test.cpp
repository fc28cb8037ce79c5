// SPDX-License-Identifier: GPL-3.0-or-later
// Class and ten questions make a machine that answers, and says what the answer rests on. All
// machines, nozzles and jobs are invented.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/model/checks.h"
#include "core/model/machine_fields.h"
#include "core/model/start_values.h"
#include "core/window/rests_on.h"
#include "core/window/speed_window.h"
#include "core/yard/firm_up.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

struct Case {
    MachineClass machineClass;
    UnitSystem units;
    ShutOffKind shutOff;
    bool hasRestrictor;
};

std::vector<Case> everyCase() {
    std::vector<Case> out;
    for (const auto& [machineClass, word] : ChoiceNames<MachineClass>::names) {
        for (const auto units : {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk}) {
            for (const auto& [kind, kindWord] : ChoiceNames<ShutOffKind>::names) {
                for (const bool hasRestrictor : {false, true})
                    out.push_back({machineClass, units, kind, hasRestrictor});
            }
        }
    }
    return out;
}

/// What a person answers, and nothing else.
Machine answered(const Case& c) {
    Machine m;
    m.name = "Stranger (invented)";
    m.units = c.units;
    takeClass(m, c.machineClass);
    m.width = Sourced<Length>(build::metres(36));
    m.spacing = Sourced<Length>(build::metres(0.5));
    m.sections = Sourced<std::vector<int>>({12, 12, 12, 12, 12, 12});
    setField(m, "senses", "flow");
    setField(m, "control", c.machineClass == MachineClass::SelfPropelled ? "pump_speed" : "bypass");
    setField(
        m, "pump.kind",
        c.machineClass == MachineClass::SelfPropelled ? "centrifugal" : "positive_displacement");
    setField(m, "restrictor.fitted", c.hasRestrictor ? "yes" : "no");
    setField(m, "check_valve.kind", choiceName(c.shutOff));
    m.setsAboard = {{1, "Size 04 (invented)"}};
    m.limits.pressureFloor = Sourced<Pressure>(build::bar(1.5));
    m.limits.pressureCeiling = Sourced<Pressure>(build::bar(5));
    return m;
}

bool isReferenceFlow(const std::string& where) {
    return where == "machine.losses.section.at";  // the range is in the pressure lost at that flow
}

TEST(FiveMinuteProfile, TenQuestionsGiveAnAnswerThatSaysWhatItRestsOn) {
    for (const auto& c : everyCase()) {
        SCOPED_TRACE(std::string(choiceName(c.machineClass)) + " " +
                     std::string(choiceName(c.shutOff)));
        Machine m = answered(c);
        const Nozzle nozzle = build::nozzle(build::lpm(1.6));
        const Job job = build::job();
        EXPECT_FALSE(completeProfile(m, {nozzle}).empty());
        for (const auto& question : tenQuestions(m))
            EXPECT_EQ(question.state, QuestionState::Given) << question.keys.front();
        EXPECT_EQ(firstError(checkMachine(m)), nullptr);
        const auto model = WindowModel::make(m, nozzle, job);
        ASSERT_TRUE(model.isOk()) << model.problem().code;
        EXPECT_FALSE(model->window().empty);
        const auto items = restsOn(m, nozzle, job);
        int assumed = 0;
        for (const auto& item : items) {
            if (item.origin != Origin::Assumed) continue;
            ++assumed;
            EXPECT_TRUE(item.hasRange || !item.value || isReferenceFlow(item.where)) << item.where;
        }
        EXPECT_GE(assumed, 1);
        const auto up = firmUp(m, nozzle, job);
        // The low end of a pulsed machine may not depend on what is lost: its pressure is held.
        if (c.machineClass != MachineClass::Pulsed) {
            ASSERT_TRUE(up.has_value());
            EXPECT_EQ(up->check, "Y2");
        }
    }
}

// "I don't know" wherever it can be said: sections and the set aboard are all that is left.
TEST(FiveMinuteProfile, NotKnowingIsNoDeadEnd) {
    for (const auto& c : everyCase()) {
        SCOPED_TRACE(std::string(choiceName(c.machineClass)));
        Machine m;
        m.units = c.units;
        takeClass(m, c.machineClass);
        m.sections = Sourced<std::vector<int>>({12, 12, 12, 12, 12, 12});
        for (const auto& question : tenQuestions(m)) {
            for (const auto& key : question.keys) {
                if (key != "sets_aboard" && key != "sections") takeStartValue(m, key);
            }
        }
        const Nozzle nozzle = build::nozzle(build::lpm(1.6));
        completeProfile(m, {nozzle});
        EXPECT_EQ(firstError(checkMachine(m)), nullptr);
        const auto ends = windowEnds(m, nozzle, build::job());
        ASSERT_TRUE(ends.isOk()) << ends.problem().code;
        EXPECT_FALSE(ends->empty);
        EXPECT_TRUE(ends->high.has_value()) << "a top pressure is assumed";
        const auto items = restsOn(m, nozzle, build::job());
        EXPECT_TRUE(std::any_of(items.begin(), items.end(), [](const RestsOn& item) {
            return item.where == "machine.spacing" && item.move;
        }));
    }
}

TEST(FiveMinuteProfile, WhatIsKnownStays) {
    Machine m = answered({MachineClass::Trailed, UnitSystem::Metric, ShutOffKind::Ball, false});
    m.checkValve.openingPressure = Sourced<Pressure>(build::bar(0.4), Origin::Measured);
    m.losses.section = {Sourced<Pressure>(build::bar(0.2)), Sourced<Flow>(build::lpm(16))};
    m.agitation = {Sourced<Flow>(build::lpm(60)), Sourced<Pressure>(build::bar(4))};
    const Machine before = m;
    EXPECT_TRUE(completeProfile(m, {build::nozzle()}).empty());
    EXPECT_EQ(m, before);
}

// By hand: 5 % of 3 bar is 0.15 bar, for the wider of the two holes, at its flow in a section.
TEST(FiveMinuteProfile, TheLargestNozzleAboardCarriesTheLoss) {
    Machine m = answered({MachineClass::Trailed, UnitSystem::Metric, ShutOffKind::Ball, false});
    m.tank = Sourced<Volume>(make<Volume>(4000, Unit::Litre));
    const auto small = build::nozzle(build::lpm(1.2));
    const auto large = build::nozzle(build::lpm(2.0));
    const auto filled = completeProfile(m, {small, large, Nozzle{}});
    EXPECT_NEAR(in(m.losses.section.at->value, Unit::LitrePerMinute), 24, 1e-9);
    EXPECT_NEAR(in(m.losses.section.pressure->value, Unit::Bar), 0.15, 1e-12);
    EXPECT_EQ(filled, (std::vector<std::string>{"check_valve.opening_pressure", "agitation.flow",
                                                "agitation.at", "losses.section.pressure",
                                                "losses.section.at"}));
    EXPECT_EQ(m.agitation.at->typed, "3 bar");
}

TEST(FiveMinuteProfile, APulsedMachineIsReckonedAsOne) {
    Machine m = answered({MachineClass::Pulsed, UnitSystem::Us, ShutOffKind::Diaphragm, false});
    completeProfile(m, {build::nozzle()});
    EXPECT_EQ(m.pulsed.pressure->value, build::psi(45));
    EXPECT_EQ(m.pulsed.pressure->origin, Origin::Assumed);
    EXPECT_EQ(m.pulsed.dutyMin->value, 0.25);
    const auto ends = windowEnds(m, build::nozzle(), build::job());
    ASSERT_TRUE(ends.isOk());
    EXPECT_NEAR(ends->low->si() / ends->high->si(), 0.25, 1e-6) << "the on-time share sets both";
}

// A plate of 280 L/min: 238 now, 196 to 280.
TEST(FiveMinuteProfile, ThePlateOfThePumpIsMarkedDown) {
    Machine m = answered({MachineClass::Trailed, UnitSystem::Metric, ShutOffKind::Ball, false});
    assumePumpFlow(m, build::lpm(280));
    EXPECT_NEAR(in(m.pump.ratedFlow->value, Unit::LitrePerMinute), 238, 1e-9);
    EXPECT_NEAR(in(*m.pump.ratedFlow->from, Unit::LitrePerMinute), 196, 1e-9);
    EXPECT_EQ(m.pump.ratedFlow->to, build::lpm(280));
    EXPECT_EQ(m.pump.ratedFlow->origin, Origin::Assumed);
    m.limits.pressureCeiling.reset();
    m.tank = Sourced<Volume>(make<Volume>(4000, Unit::Litre));
    const auto nozzle = build::nozzle(build::lpm(3.2));
    completeProfile(m, {nozzle});
    EXPECT_EQ(firmUp(m, nozzle, build::job(build::lha(300)))->check, "Y1d");
}

TEST(FiveMinuteProfile, TheSlowSpeedIsAssumedOnlyWhereThereIsNone) {
    Job job = build::job();
    EXPECT_FALSE(assumeSlowSpeed(job));
    job.slow.reset();
    EXPECT_TRUE(assumeSlowSpeed(job));
    EXPECT_NEAR(in(job.slow->value, Unit::KilometrePerHour), 6, 1e-9);
    EXPECT_NEAR(in(*job.slow->from, Unit::KilometrePerHour), 4, 1e-9);
    EXPECT_EQ(job.slow->origin, Origin::Assumed);
    Job none;
    EXPECT_FALSE(assumeSlowSpeed(none));
}

}  // namespace
}  // namespace bw
