// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/start_values.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/model/checks.h"
#include "core/model/machine_fields.h"
#include "core/model/usual_ranges.h"
#include "core/units/parse.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using build::bar;
using build::psi;

AnyQuantity read(const std::string& text, const FieldView& view) {
    const auto out = parseQuantity(text, view.dimension, Unit::None, DecimalMarks::PointOnly);
    EXPECT_TRUE(out.isOk()) << text;
    return out.isOk() ? out->quantity : AnyQuantity{};
}

TEST(StartValues, EveryRowIsReadAndLiesInItsRange) {
    ASSERT_GE(startValues().size(), 25U);
    for (const auto& start : startValues()) {
        SCOPED_TRACE(start.key);
        const auto view = fieldView(Machine{}, start.key);
        ASSERT_TRUE(view.has_value());
        EXPECT_FALSE(start.source.empty());
        if (view->kind == FieldKind::Choice) {
            EXPECT_EQ(std::count(view->choices.begin(), view->choices.end(), start.value), 1);
            continue;
        }
        const auto from = read(start.from, *view);
        const auto to = read(start.to, *view);
        EXPECT_LT(from.si, to.si);
        if (start.use == StartUse::Range) {
            EXPECT_TRUE(start.value.empty());
            continue;
        }
        const auto value = read(start.value, *view);
        EXPECT_LE(from.si, value.si);
        EXPECT_LE(value.si, to.si);
        const auto* range = usualRange("machine." + start.key);
        ASSERT_NE(range, nullptr);
        EXPECT_GE(from.si, range->possibleFrom.si);
        EXPECT_LE(to.si, range->possibleTo.si);
    }
}

/// The table of start values by class, as judged: pump, control, what senses the rate, restrictor.
TEST(StartValues, AClassFillsWhatIsUnknown) {
    Machine m;
    EXPECT_EQ(takeClass(m, MachineClass::Trailed).size(), 6U);
    EXPECT_EQ(m.machineClass->value, MachineClass::Trailed);
    EXPECT_EQ(m.pump.kind->value, PumpKind::PositiveDisplacement);
    EXPECT_EQ(m.control->value, Control::Bypass);
    EXPECT_EQ(m.senses->value, Senses::Flow);
    EXPECT_FALSE(m.restrictor.fitted->value);
    EXPECT_EQ(m.sectionReturns->value, SectionReturns::None);
    EXPECT_EQ(m.checkValve.kind->value, ShutOffKind::Diaphragm);
    EXPECT_EQ(originCounts(m), (OriginCounts{0, 1, 6}));
}

TEST(StartValues, WhatIsAskedStaysOpen) {
    Machine mounted;
    takeClass(mounted, MachineClass::Mounted);
    EXPECT_FALSE(mounted.senses.has_value());
    EXPECT_FALSE(mounted.sectionReturns.has_value());
    Machine selfPropelled;
    takeClass(selfPropelled, MachineClass::SelfPropelled);
    EXPECT_FALSE(selfPropelled.restrictor.fitted.has_value());
    EXPECT_EQ(selfPropelled.pump.kind->value, PumpKind::Centrifugal);
    Machine pulsed;
    takeClass(pulsed, MachineClass::Pulsed);
    EXPECT_FALSE(pulsed.control.has_value());
    EXPECT_FALSE(pulsed.pump.kind.has_value());
}

TEST(StartValues, AnotherClassReplacesAssumptionsAndNothingElse) {
    Machine m;
    m.control = Sourced<Control>(Control::Throttle, Origin::Measured);
    takeClass(m, MachineClass::Trailed);
    setField(m, "pump.kind", "positive_displacement");
    takeClass(m, MachineClass::SelfPropelled);
    EXPECT_EQ(m.control->value, Control::Throttle);
    EXPECT_EQ(m.pump.kind->value, PumpKind::PositiveDisplacement) << "given by a person";
    EXPECT_EQ(m.senses->value, Senses::Both);
    EXPECT_FALSE(m.restrictor.fitted.has_value()) << "assumed for the class before";
}

TEST(StartValues, AnAssumptionOfTheUsersOwnStaysToo) {
    Machine m;
    takeClass(m, MachineClass::Trailed);
    setField(m, "senses", "pressure");
    setFieldOrigin(m, "senses", Origin::Assumed);
    takeClass(m, MachineClass::SelfPropelled);
    EXPECT_EQ(m.senses->value, Senses::Pressure);
}

TEST(StartValues, NotKnownTakesAStartValueInTheMachinesUnits) {
    Machine m;
    EXPECT_TRUE(takeStartValue(m, "limits.pressure_ceiling"));
    EXPECT_EQ(m.limits.pressureCeiling->value, bar(6));
    EXPECT_EQ(m.limits.pressureCeiling->origin, Origin::Assumed);
    EXPECT_EQ(m.limits.pressureCeiling->from, bar(5));
    m.units = UnitSystem::Us;
    EXPECT_TRUE(takeStartValue(m, "limits.pressure_ceiling"));
    EXPECT_EQ(m.limits.pressureCeiling->value, psi(90));
    EXPECT_EQ(m.limits.pressureCeiling->typed, "90 psi");
    EXPECT_TRUE(takeStartValue(m, "spacing"));
    EXPECT_EQ(m.spacing->typed, "20 in");
}

TEST(StartValues, WithoutOneAFieldBecomesUnknown) {
    Machine m = build::machine();
    m.limits.pressureFloor = Sourced<Pressure>(bar(1.6));
    EXPECT_FALSE(takeStartValue(m, "limits.pressure_floor"));
    EXPECT_FALSE(m.limits.pressureFloor.has_value());
    EXPECT_FALSE(takeStartValue(m, "loop.dead_time")) << "only where the machine is reckoned";
    m.machineClass = Sourced<MachineClass>(MachineClass::Trailed);
    EXPECT_FALSE(takeStartValue(m, "width")) << "a range alone";
}

/// 2 to 3 % of the tank a minute; 4,000 L: 80 to 120 L/min, worked by hand.
TEST(StartValues, AgitationIsAssumedFromTheTank) {
    Machine m;
    EXPECT_FALSE(takeStartValue(m, "agitation.flow"));
    m.tank = Sourced<Volume>(make<Volume>(4000, Unit::Litre));
    EXPECT_TRUE(takeStartValue(m, "agitation.flow"));
    EXPECT_NEAR(in(m.agitation.flow->value, Unit::LitrePerMinute), 100, 1e-9);
    EXPECT_NEAR(in(*m.agitation.flow->from, Unit::LitrePerMinute), 80, 1e-9);
    EXPECT_NEAR(in(*m.agitation.flow->to, Unit::LitrePerMinute), 120, 1e-9);
}

/// 5 % of 3 bar, 0 to 10 %, at the flow of the 9-nozzle section: worked by hand.
TEST(StartValues, SectionLossIsAssumedFromTheNozzleAboard) {
    Machine m;
    const Nozzle nozzle = build::nozzle(build::lpm(1.2), bar(3));
    EXPECT_FALSE(assumeSectionLoss(m, nozzle));
    m = build::machine({6, 9, 8});
    EXPECT_FALSE(assumeSectionLoss(m, Nozzle{}));
    EXPECT_FALSE(m.losses.section.pressure.has_value());
    EXPECT_TRUE(assumeSectionLoss(m, nozzle));
    EXPECT_NEAR(in(m.losses.section.pressure->value, Unit::Bar), 0.15, 1e-12);
    EXPECT_NEAR(in(*m.losses.section.pressure->to, Unit::Bar), 0.30, 1e-12);
    EXPECT_NEAR(in(m.losses.section.at->value, Unit::LitrePerMinute), 10.8, 1e-9);
    EXPECT_EQ(m.losses.section.at->origin, Origin::Assumed);
}

TEST(StartValues, NoClassMakesAMachineThatTheChecksRefuse) {
    for (const auto& [machineClass, word] : ChoiceNames<MachineClass>::names) {
        Machine m = build::machine();
        takeClass(m, machineClass);
        for (const auto& start : startValues()) takeStartValue(m, start.key);
        m.spacing = Sourced<Length>(build::metres(0.5));
        const auto problems = checkMachine(m);
        EXPECT_EQ(firstError(problems), nullptr) << word;
    }
}

}  // namespace
}  // namespace bw
