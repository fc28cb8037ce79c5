// SPDX-License-Identifier: GPL-3.0-or-later
// The machine page as a person uses it: keys and mouse on what can be seen.
#include <QDate>
#include <QMenu>

#include "core/units/unit.h"
#include "tests/support/builders.h"
#include "tests/ui/machine_fixture.h"
#include "ui/kit/circuit_view.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::MachinePageTest;

constexpr const char* kFloor = "machine.limits.pressure_floor";
constexpr const char* kCeiling = "machine.limits.pressure_ceiling";
constexpr const char* kSections = "machine.boom.sections";

class NewMachine : public MachinePageTest {
  protected:
    void SetUp() override { start(false); }
};

class DemoMachine : public MachinePageTest {
  protected:
    void SetUp() override { start(true); }
    /// The invented trailed machine, in metric units.
    void takeTrailed() {
        choose("machine.header.machine", "Demo trailed");
        ASSERT_EQ(stored().units, UnitSystem::Metric) << stored().name;
    }
    void takeSelfPropelled() {
        choose("machine.header.machine", "Demo self");
        ASSERT_EQ(stored().units, UnitSystem::Us) << stored().name;
    }
};

TEST_F(NewMachine, FromNothingToAUsableMachineByKeys) {
    EXPECT_TRUE(isSeen("machine.new.trailed"));
    key(Qt::Key_2);
    ASSERT_EQ(window().session().season().machines.size(), 1U);
    EXPECT_EQ(stored().machineClass->value, MachineClass::Trailed);
    EXPECT_EQ(stored().pump.kind->origin, Origin::Assumed);
    EXPECT_EQ(focusName(), u"machine.name.name"_s);
    EXPECT_TRUE(shown("machine.questions.words").startsWith(u"Ten questions: 0 given"_s));

    QTest::keyClicks(QApplication::focusWidget(), u"Invented trailed 28 m"_s);
    const auto tabTo = [&](const char* name) {
        for (int i = 0; i < 40 && focusName() != QLatin1String(name); ++i) key(Qt::Key_Tab);
        EXPECT_EQ(focusName(), QLatin1String(name));
    };
    const auto enter = [&](const char* name, const char* text) {
        tabTo(name);
        QTest::keyClicks(QApplication::focusWidget(), QLatin1String(text));
        key(Qt::Key_Return);
    };
    const auto take = [&](const char* name, const char* start) {
        tabTo(name);
        auto* box = qobject_cast<QComboBox*>(QApplication::focusWidget());
        ASSERT_NE(box, nullptr);
        pick(*box, start);
    };
    enter("machine.boom.width", "28");
    enter("machine.boom.spacing", "0.5");
    enter(kSections, "6, 9, 9, 8, 9, 9, 6");
    take("machine.boom.set1", "Size 03 (m");
    take("machine.check_valve.kind", "dia");
    take("machine.senses.senses", "flow");
    take("machine.senses.control", "by-");
    take("machine.pump.kind", "dia");
    enter(kFloor, "1.6");
    enter(kCeiling, "7");
    take("machine.restrictor.fitted", "none");

    const Machine& m = stored();
    EXPECT_EQ(m.name, "Invented trailed 28 m");
    EXPECT_EQ(m.width->value, build::metres(28));
    EXPECT_EQ(nozzleCount(m), 56);
    EXPECT_EQ(m.setsAboard, (std::vector<SetAboard>{{1, "Size 03 (metric record)"}}));
    EXPECT_EQ(m.limits.pressureFloor->value, build::bar(1.6));
    EXPECT_EQ(m.limits.pressureCeiling->typed, "7 bar");
    EXPECT_TRUE(textOf("machine.evidence.checks").contains(u"agrees with the width"_s));
    EXPECT_EQ(tenQuestions(m).back().state, QuestionState::Given);
}

TEST_F(NewMachine, ByMouseAndAnswersThatAreNotKnown) {
    click("machine.new.other");
    EXPECT_FALSE(stored().machineClass.has_value());
    click("machine.boom.spacing");
    key(Qt::Key_F4);
    EXPECT_EQ(stored().spacing->origin, Origin::Assumed);
    EXPECT_EQ(shown("machine.boom.spacing"), u"0.5 m"_s);
    EXPECT_EQ(shown("machine.boom.spacing.origin"), u"Nozzle spacing: assumed"_s);
    click(kFloor);
    click("machine.aid.unknown");
    EXPECT_FALSE(stored().limits.pressureFloor.has_value());
    EXPECT_TRUE(textOf("machine.evidence.checks").contains(u"Pressure floor: not checked"_s));
}

TEST_F(DemoMachine, SectionLossNotKnownIsAssumedFromTheNozzlesAboard) {
    takeTrailed();
    click("machine.parts.header");
    click("machine.losses.section.pressure");
    key(Qt::Key_F4);
    EXPECT_EQ(stored().losses.section.pressure->origin, Origin::Assumed);
    EXPECT_TRUE(stored().losses.section.pressure->to.has_value());
    EXPECT_EQ(stored().losses.section.at->origin, Origin::Assumed);
}

TEST_F(NewMachine, CustomerIsAddedAndTaken) {
    key(Qt::Key_2);
    script.willChoose(u"Invented Farm"_s);
    click("machine.name.addCustomer");
    ASSERT_EQ(window().session().customers().size(), 1U);
    EXPECT_EQ(window().session().season().machines[0].customer,
              window().session().customers()[0].id);
    EXPECT_EQ(shown("machine.name.customer"), u"Invented Farm"_s);
    choose("machine.name.customer", "own");
    EXPECT_EQ(window().session().season().machines[0].customer, 0);
}

TEST_F(NewMachine, SectionsInEveryFormAndRefused) {
    key(Qt::Key_2);
    write(kSections, "5 x 12");
    EXPECT_EQ(stored().sections->value, std::vector<int>(5, 12));
    EXPECT_EQ(shown(kSections), u"5 \u00d7 12"_s);
    write(kSections, "13 nozzles in 4 sections");
    EXPECT_TRUE(rowText(kSections).contains(u"13 nozzles in 4 sections?"_s));
    EXPECT_TRUE(rowText(kSections).contains(u"Kept until mended: 5 \u00d7 12."_s));
    EXPECT_EQ(stored().sections->value, std::vector<int>(5, 12));
    key(Qt::Key_Escape);
    EXPECT_EQ(shown(kSections), u"5 \u00d7 12"_s);
    EXPECT_FALSE(rowText(kSections).contains(u"Kept"_s));
}

TEST_F(DemoMachine, LettersAreRefusedAtTheFieldAndTheOldValueKept) {
    takeTrailed();
    const auto before = stored();
    write(kFloor, "low");
    EXPECT_TRUE(rowText(kFloor).contains(u"\u201clow\u201d is not a number"_s))
        << rowText(kFloor).toStdString();
    EXPECT_TRUE(rowText(kFloor).contains(u"Kept until mended: 1.6 bar."_s))
        << rowText(kFloor).toStdString();
    EXPECT_EQ(stored(), before);
    key(Qt::Key_Escape);
    EXPECT_EQ(shown(kFloor), u"1.6 bar"_s);
    EXPECT_FALSE(rowText(kFloor).contains(u"not a number"_s));
}

TEST_F(DemoMachine, ATextThatWasNeverTakenIsNotCarriedToAnotherMachine) {
    takeTrailed();
    write(kFloor, "low");
    takeSelfPropelled();
    EXPECT_EQ(shown(kFloor), u"18 psi"_s);
    EXPECT_FALSE(rowText(kFloor).contains(u"not a number"_s));
    write(kFloor, "100");
    EXPECT_TRUE(rowText(kFloor).contains(u"Kept until mended"_s));
    takeTrailed();
    EXPECT_EQ(shown(kFloor), u"1.6 bar"_s);
    EXPECT_EQ(stored().limits.pressureFloor->value, build::bar(1.6));
}

TEST_F(NewMachine, TheStartPageLeadsToTheFirstQuestion) {
    key(Qt::Key_0, Qt::ControlModifier);
    click("start.first.machine");
    EXPECT_EQ(window().currentPageId(), u"machine"_s);
    EXPECT_TRUE(isSeen("machine.new.mounted"));
    click("machine.new.mounted");
    EXPECT_EQ(stored().machineClass->value, MachineClass::Mounted);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(window().session().season().machines.empty());
    EXPECT_TRUE(isSeen("machine.new.mounted")) << "and the question stands again";
}

TEST_F(DemoMachine, NegativeIsRefused) {
    takeTrailed();
    const auto before = stored();
    write("machine.boom.spacing", "-0.5");
    EXPECT_TRUE(rowText("machine.boom.spacing").contains(u"Under zero"_s));
    EXPECT_EQ(stored(), before);
}

TEST_F(DemoMachine, BarInAPsiFieldIsUnderstood) {
    takeSelfPropelled();
    write(kFloor, "2,8 bar");
    EXPECT_EQ(stored().limits.pressureFloor->value, build::bar(2.8));
    EXPECT_EQ(stored().limits.pressureFloor->typed, "2,8 bar");
    // 2.8 bar / 0.0689475729 bar a psi (exact by definition of pound, inch and kilogram) = 40.61
    EXPECT_EQ(shown(kFloor), u"2.8 bar = 40.6 psi"_s);
}

TEST_F(DemoMachine, WidthThatDoesNotMatchIsTold) {
    takeTrailed();
    write("machine.boom.width", "36");
    EXPECT_TRUE(
        rowText("machine.boom.width").contains(u"56 nozzles at 0.5 m make 28 m, not 36 m"_s))
        << rowText("machine.boom.width").toStdString();
    EXPECT_TRUE(textOf("machine.evidence.checks").contains(u"make 28 m, not 36 m"_s));
    EXPECT_EQ(in(stored().width->value, Unit::Metre), 36) << "a warning: the value is taken";
    write("machine.boom.width", "28");
    EXPECT_FALSE(rowText("machine.boom.width").contains(u"not 36 m"_s));
}

TEST_F(DemoMachine, FloorOverCeilingWaitsUntilTheCeilingIsRaised) {
    takeTrailed();
    const int steps = window().session().undoStack().index();
    write(kFloor, "8");
    EXPECT_TRUE(rowText(kFloor).contains(u"Kept until mended: 1.6 bar."_s))
        << rowText(kFloor).toStdString();
    EXPECT_EQ(stored().limits.pressureFloor->value, build::bar(1.6));
    EXPECT_EQ(window().session().undoStack().index(), steps);
    write(kCeiling, "10");
    EXPECT_EQ(stored().limits.pressureCeiling->value, build::bar(10));
    EXPECT_EQ(stored().limits.pressureFloor->value, build::bar(8)) << "it waited, and is taken now";
    EXPECT_FALSE(rowText(kFloor).contains(u"Kept"_s));
    EXPECT_EQ(window().session().undoStack().index(), steps + 2);
}

TEST_F(DemoMachine, FloorOverTheNeedOfAJobIsCheckedWithCautions) {
    takeTrailed();
    write(kFloor, "5");
    const QString checks = textOf("machine.evidence.checks");
    EXPECT_TRUE(checks.contains(u"under the pressure floor of 5 bar"_s)) << checks.toStdString();
    EXPECT_TRUE(textOf("machine.evidence.scroll").contains(u"strips may be left"_s));
    EXPECT_TRUE(shown("machine.circuit.note").contains(u"more product"_s))
        << "a rate error is a dose error";
    key(Qt::Key_Tab);
    EXPECT_TRUE(rowText(kFloor).contains(u"unusual"_s)) << "still told when the field is left";
}

TEST_F(DemoMachine, OriginIsSetToMeasuredByKeysWithItsDate) {
    window().session().setClock([] { return QDate(2031, 4, 5).startOfDay(); });
    takeTrailed();
    click(kFloor);
    key(Qt::Key_F2);
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    QTest::keyClick(menu, Qt::Key_M);
    comeBack(window());
    EXPECT_EQ(stored().limits.pressureFloor->origin, Origin::Measured);
    EXPECT_EQ(stored().limits.pressureFloor->date, "2031-04-05");
    EXPECT_TRUE(
        shown("machine.limits.pressure_floor.origin").startsWith(u"Pressure floor: measured"_s));
    write("machine.aid.date", "2026-03-12");
    EXPECT_EQ(stored().limits.pressureFloor->date, "2026-03-12");
    write("machine.aid.date", "in March");
    EXPECT_TRUE(shown("machine.aid.dateProblem").contains(u"is no date"_s));
    EXPECT_EQ(stored().limits.pressureFloor->date, "2026-03-12");
}

TEST_F(DemoMachine, OriginIsSetByMouse) {
    takeTrailed();
    click("machine.boom.spacing.origin");
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    QAction* assumed = menu->findChild<QAction*>(u"origin.assumed"_s);
    QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(assumed).center());
    EXPECT_EQ(stored().spacing->origin, Origin::Assumed);
}

TEST_F(DemoMachine, UndoAndRedoByKeysRestore) {
    takeTrailed();
    const auto before = stored();
    write(kFloor, "1.8");
    EXPECT_EQ(window().session().undoStack().undoText(), u"pressure floor 1.8 bar"_s);
    write(kSections, "7 x 8");
    const auto after = stored();
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(stored().sections, before.sections);
    EXPECT_EQ(stored().limits.pressureFloor->value, build::bar(1.8));
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(stored(), before);
    EXPECT_EQ(shown(kFloor), u"1.6 bar"_s);
    key(Qt::Key_Y, Qt::ControlModifier);
    key(Qt::Key_Y, Qt::ControlModifier);
    EXPECT_EQ(stored(), after);
    EXPECT_EQ(shown(kSections), u"7 \u00d7 8"_s);
}

TEST_F(DemoMachine, OtherUnitsKeepWhatIsStored) {
    takeTrailed();
    write(kFloor, "1.6");
    const auto before = stored();
    choose("machine.header.units", "US");
    EXPECT_EQ(stored().units, UnitSystem::Us);
    EXPECT_EQ(stored().limits, before.limits);
    EXPECT_EQ(stored().width, before.width);
    EXPECT_EQ(shown(kFloor), u"1.6 bar = 23.2 psi"_s);
    choose("machine.header.units", "metric");
    EXPECT_EQ(stored(), before);
}

TEST_F(DemoMachine, RestrictorIsHiddenUnlessFitted) {
    takeSelfPropelled();
    ASSERT_TRUE(stored().restrictor.fitted->value);
    EXPECT_TRUE(isSeen("machine.restrictor.changeover_flow"));
    takeTrailed();
    EXPECT_FALSE(isSeen("machine.restrictor.changeover_flow"));
    EXPECT_FALSE(isSeen("machine.meter.minimum_narrowed"));
    choose("machine.restrictor.fitted", "fitted");
    EXPECT_TRUE(isSeen("machine.restrictor.changeover_flow"));
}

TEST_F(DemoMachine, WhereToFindItByKey) {
    takeTrailed();
    click("machine.boom.spacing");
    EXPECT_FALSE(isSeen("machine.aid.where"));
    key(Qt::Key_F1);
    EXPECT_TRUE(shown("machine.aid.where").contains(u"Tape along the boom"_s));
    key(Qt::Key_Tab);
    EXPECT_TRUE(shown("machine.aid.where").contains(u"Walk the boom"_s));
    key(Qt::Key_F1);
    EXPECT_FALSE(isSeen("machine.aid.where"));
}

TEST_F(DemoMachine, APartOfTheCircuitTakesItsFieldInHand) {
    takeTrailed();
    auto* view = qobject_cast<CircuitView*>(seen("machine.circuit.view"));
    ASSERT_NE(view, nullptr);
    QTest::mouseClick(view, Qt::LeftButton, {}, view->partRect(u"sensor"_s).center().toPoint());
    EXPECT_EQ(focusName(), QLatin1String(kFloor));
    QTest::mouseClick(view, Qt::LeftButton, {}, view->partRect(u"line"_s).center().toPoint());
    EXPECT_EQ(focusName(), u"machine.strainers.line.mesh"_s);
    EXPECT_TRUE(view->partRect(u"restrictor"_s).isEmpty()) << "not fitted, not drawn";
}

TEST_F(DemoMachine, TheCircuitSaysWhereThePressureGoes) {
    EXPECT_TRUE(shown("machine.circuit.note").contains(u"restrictor valve takes most"_s))
        << shown("machine.circuit.note").toStdString();
    takeTrailed();
    EXPECT_TRUE(shown("machine.circuit.note").contains(u"through the by-pass"_s));
    auto* view = seen("machine.circuit.view");
    const QString said = view->accessibleDescription();
    EXPECT_TRUE(said.contains(u"Line strainer \u2212"_s)) << said.toStdString();
    EXPECT_TRUE(said.contains(u"Pump"_s));
}

TEST_F(DemoMachine, DuplicateAndDeleteWithUndo) {
    takeTrailed();
    const auto before = window().session().season();
    click("machine.header.duplicate");
    EXPECT_EQ(window().session().season().machines.size(), before.machines.size() + 1);
    EXPECT_TRUE(shown("machine.header.machine").endsWith(u", copy"_s));
    click("machine.header.delete");
    EXPECT_EQ(window().session().season(), before);
    takeTrailed();
    click("machine.header.delete");
    EXPECT_EQ(window().session().season().machines.size(), before.machines.size() - 1);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window().session().season(), before) << "its jobs came back with it";
}

TEST_F(DemoMachine, ClassFillsWhatIsUnknownAndIsOneStep) {
    takeTrailed();
    click("machine.header.new");
    click("machine.new.back");
    takeTrailed();
    click("machine.header.new");
    key(Qt::Key_5);
    choose("machine.header.class", "Self");
    EXPECT_EQ(stored().control->value, Control::PumpSpeed);
    EXPECT_EQ(shown("machine.senses.control.origin"), u"Rate changed by: assumed"_s);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(stored().control.has_value());
}

}  // namespace
}  // namespace bw
