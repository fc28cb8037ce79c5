// SPDX-License-Identifier: GPL-3.0-or-later
// The yard checks, by keys and clicks on the demo season; readings are invented but where a source
// is named.
#include <QRegularExpression>
#include <algorithm>

#include "tests/ui/pages/yard_checks_fixture.h"

namespace bw::test {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST_F(YardChecksTest, PumpLineFromTypedReadingsIntoTheProfileAndBack) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    const Machine before = machine();
    takeCheck(u"Pump line"_s);
    EXPECT_EQ(label("yard.check.title"), "Pump line");
    EXPECT_THAT(caution("yard.check.cautions"), HasSubstr("a few seconds only"));
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("Not read yet"));
    EXPECT_FALSE(find(u"yard.check.write"_s)->isEnabled());
    // The example of the requirement: 7.4 bar shut in, 4.6 bar at 210 L/min; typed in foreign
    // units.
    enter("7.4 bar");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("Still to read: Flow, all sections on"));
    enter("210 L/min");
    enter("4.6 bar");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("40.6 psi used up on the way"));
    const std::string sum = words("yard.check.evidence");
    EXPECT_THAT(sum, HasSubstr("What would be written"));
    EXPECT_THAT(sum, HasSubstr("Pressure shut in:"));
    EXPECT_THAT(sum, HasSubstr("→ 107 psi"));
    // Enter in the last field leads to the key; nothing is written before it is pressed.
    EXPECT_EQ(machine(), before);
    ASSERT_EQ(QApplication::focusWidget(), find(u"yard.check.write"_s));
    key(Qt::Key_Space);
    const auto written = machine().pump.shutOffPressure;
    ASSERT_TRUE(written);
    EXPECT_NEAR(written->value.si(), 7.4e5, 1);
    EXPECT_EQ(written->origin, Origin::Measured);
    EXPECT_FALSE(written->date.empty());
    EXPECT_THAT(words("yard.check.evidence"), HasSubstr("In the profile as measured"));
    EXPECT_EQ(session().undoStack().undoText().toStdString(), "pump line, measured");
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(machine(), before);
    EXPECT_TRUE(find(u"yard.check.write"_s));
    // The readings stay, as typed, with what was written.
    const auto records = storedRecords();
    const auto& record = records.back().record;
    EXPECT_EQ(record.check, "Y1");
    ASSERT_EQ(record.readings.size(), 3U);
    EXPECT_EQ(record.readings[0].typed, "7.4 bar");
    EXPECT_FALSE(record.finished.empty());
    EXPECT_THAT(record.writtenFields, testing::Contains("pump.shutoff_pressure"));
}

TEST_F(YardChecksTest, RefusedReadingsSayWhyAtTheirPlaceAndNothingIsLost) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    takeCheck(u"Pump line"_s);
    enter("100 psi");
    enter("55");
    enter("about 60");
    EXPECT_THAT(words("yard.check.pressure"), HasSubstr("about 60"));
    EXPECT_EQ(textOf("yard.check.pressure.line"), "about 60");
    // The list and back by Enter: still there.
    key(Qt::Key_F8);
    key(Qt::Key_Return);
    EXPECT_EQ(textOf("yard.check.pressure.line"), "about 60");
    ASSERT_EQ(QApplication::focusWidget(), find(u"yard.check.pressure.line"_s));
    // A pressure that rises with the flow: said at that reading.
    key(Qt::Key_A, Qt::ControlModifier);
    enter("120");
    EXPECT_THAT(words("yard.check.pressure"), HasSubstr("is not under 100 psi without flow"));
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("These readings do not fit"));
    EXPECT_FALSE(find(u"yard.check.write"_s)->isEnabled());
    // Another check and back: all of it is still there, the list says that it was begun.
    takeCheck(u"Speed over a measured course"_s);
    EXPECT_THAT(line(u"Pump line"_s)->data(Qt::AccessibleTextRole).toString().toStdString(),
                HasSubstr("begun"));
    takeCheck(u"Pump line"_s);
    EXPECT_EQ(textOf("yard.check.shutoff_pressure.line"), "100");
    EXPECT_EQ(textOf("yard.check.pressure.line"), "120");
    // One that cannot be read is named when it is left.
    write("yard.check.pressure.line", "many");
    takeCheck(u"Speed over a measured course"_s);
    const auto* notices = window->findChild<NoticeBar*>();
    ASSERT_TRUE(notices);
    EXPECT_THAT(notices->texts().join(u' ').toStdString(), HasSubstr("“many” could not be read"));
    takeCheck(u"Pump line"_s);
    EXPECT_EQ(textOf("yard.check.pressure.line"), "120");
    write("yard.check.pressure.line", "60");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("40 psi used up"));
    // Start again throws the readings away, and undo brings them back.
    click("yard.check.again");
    EXPECT_EQ(textOf("yard.check.pressure.line"), "");
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(textOf("yard.check.pressure.line"), "60");
}

TEST_F(YardChecksTest, TheMetersConventionIsAskedAndCorrectsEitherWay) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    takeCheck(u"Flow meter against a known volume"_s);
    write("yard.check.shown.1.line", "210 L");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("Still to read: Known volume, no. 1"));
    enter("200 L");
    enter("210 L");
    enter("200 L");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("Meter shows 5 % too much"));
    write("yard.check.number.line", "600");
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("Still to read: How the number counts"));
    click("yard.check.convention.pulses_per");
    EXPECT_THAT(words("yard.check.evidence"), HasSubstr("600 times 1.05 is 630"));
    click("yard.check.convention.per_pulse");
    EXPECT_THAT(words("yard.check.evidence"), HasSubstr("600 divided by 1.05 is 571"));
    EXPECT_THAT(named("yard.check.verdict"), HasSubstr("New number: 571.43"));
    // Not yet in the controller: the profile keeps how much the meter shows too much.
    EXPECT_THAT(words("yard.check.evidence"), HasSubstr("→ 1.050"));
    click("yard.check.entered.yes");
    EXPECT_THAT(words("yard.check.evidence"), HasSubstr("1.000, now measured"));
    click("yard.check.write");
    ASSERT_TRUE(machine().meter.scale);
    EXPECT_DOUBLE_EQ(machine().meter.scale->value, 1.0);
    EXPECT_EQ(machine().meter.scale->origin, Origin::Measured);
}

TEST_F(YardChecksTest, AChecksPlaceIsTheMachineThatItFits) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    auto* other = line(u"Flow left for the boom"_s);
    ASSERT_TRUE(other);
    EXPECT_FALSE(other->flags() & Qt::ItemIsEnabled);
    EXPECT_THAT(other->data(Qt::AccessibleTextRole).toString().toStdString(),
                HasSubstr("Only where pump is diaphragm or piston; here: centrifugal."));
    const std::string before = label("yard.catch.title");
    auto* list = find<QListWidget>(u"yard.list"_s);
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualItemRect(other).center());
    settle();
    EXPECT_EQ(label("yard.catch.title"), before);
    takeMachine(u"Demo trailed 28 m"_s);
    EXPECT_TRUE(line(u"Flow left for the boom"_s)->flags() & Qt::ItemIsEnabled);
    EXPECT_FALSE(line(u"Pump line"_s)->flags() & Qt::ItemIsEnabled);
}

TEST_F(YardChecksTest, TheListIsWalkedByKeys) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    key(Qt::Key_1, Qt::ControlModifier);
    key(Qt::Key_7, Qt::ControlModifier);
    settle();
    ASSERT_EQ(QApplication::focusWidget(), find(u"yard.list"_s));
    key(Qt::Key_Home);
    EXPECT_TRUE(find(u"yard.catch.title"_s));
    key(Qt::Key_Down);
    EXPECT_TRUE(find(u"yard.checklist.title"_s));
    key(Qt::Key_Down);
    EXPECT_EQ(label("yard.check.title"), "Pump line");
    key(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), find(u"yard.check.shutoff_pressure.line"_s));
    key(Qt::Key_F8);
    EXPECT_EQ(QApplication::focusWidget(), find(u"yard.list"_s));
    // The one that does not fit is passed over.
    key(Qt::Key_End);
    EXPECT_EQ(label("yard.check.title"), "Gauge against a tested gauge");
}

TEST_F(YardChecksTest, WhatFirmsTheJobUpMostIsMarked) {
    openYard();
    takeMachine(u"Demo trailed 28 m"_s);
    const auto isMarked = [this] {
        auto* list = find<QListWidget>(u"yard.list"_s);
        for (int i = 0; list && i < list->count(); ++i) {
            const QString text = list->item(i)->data(Qt::AccessibleTextRole).toString();
            if (text.contains(u"firms up the job in hand most"_s)) return true;
        }
        return false;
    };
    EXPECT_TRUE(QTest::qWaitFor(isMarked, 60000));
}

TEST_F(YardChecksTest, AWholeCatchTestByNumberAndEnter) {
    openYard();
    takeMachine(u"Demo trailed 28 m"_s);
    takeCheck(u"Catch test"_s);
    EXPECT_THAT(caution("yard.catch.setup.cautions"), HasSubstr("clean water only"));
    EXPECT_THAT(words("yard.catch.evidence"), HasSubstr("Agdex 606-1"));
    enter("3 bar");
    // A new 04 gives 1.58 L/min at 3 bar (ISO 10625, metric record).
    EXPECT_THAT(label("yard.catch.newFlow"), HasSubstr("790 mL in 30 s"));
    click("yard.catch.start");
    EXPECT_THAT(caution("yard.catch.cautions"), HasSubstr("clean water only"));
    EXPECT_EQ(label("yard.catch.nozzle"), "1");
    for (int nozzle = 1; nozzle <= 20; ++nozzle) {
        ASSERT_EQ(label("yard.catch.nozzle"), std::to_string(nozzle));
        enter(nozzle == 17 ? "890" : "800");
    }
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("1 to replace"));
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("20 of 56 caught"));
    // Typed wrong: not read, said at the field, the nozzle stays.
    enter("8oo");
    EXPECT_FALSE(label("yard.catch.problem").empty());
    EXPECT_EQ(label("yard.catch.nozzle"), "21");
    key(Qt::Key_Escape);
    // Undo last: the nozzle is in hand again.
    enter("80");
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("clean and catch again"));
    key(Qt::Key_Backspace, Qt::ControlModifier);
    EXPECT_EQ(label("yard.catch.nozzle"), "21");
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("20 of 56 caught"));
    // Away and back: it goes on where it was.
    key(Qt::Key_1, Qt::ControlModifier);
    ASSERT_EQ(window->currentPageId(), u"machine"_s);
    key(Qt::Key_7, Qt::ControlModifier);
    settle();
    EXPECT_EQ(label("yard.catch.nozzle"), "21");
    find(u"yard.catch.entry"_s)->setFocus();
    for (int nozzle = 21; nozzle <= 56; ++nozzle) enter(nozzle == 29 ? "740" : "800");
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("1 to replace, 1 to clean and catch again"));
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("56 of 56 caught"));
    EXPECT_THAT(words("yard.catch.evidence"), HasSubstr("Highest, nozzle 17: +12.7 % of new"));
    // The table names the same.
    click("yard.catch.table.button");
    const auto* table = find<QTableView>(u"yard.catch.table"_s);
    ASSERT_TRUE(table);
    EXPECT_EQ(table->model()->index(16, 6).data().toString().toStdString(), "replace");
    EXPECT_EQ(table->model()->index(28, 6).data().toString().toStdString(),
              "low: clean, catch again");
    EXPECT_EQ(table->model()->index(28, 2).data().toString().toStdString(), "740");
    // The low one after cleaning.
    click("yard.catch.catchAgain");
    EXPECT_EQ(label("yard.catch.nozzle"), "29");
    EXPECT_TRUE(find<QAbstractButton>(u"yard.catch.again.cleaned"_s)->isChecked());
    enter("795");
    EXPECT_THAT(named("yard.catch.verdict"), HasSubstr("1 to replace"));
    EXPECT_THAT(named("yard.catch.verdict"), Not(HasSubstr("to clean")));
    EXPECT_EQ(table->model()->index(28, 2).data().toString().toStdString(), "740, then 795");
    click("yard.catch.finish");
    EXPECT_THAT(label("yard.catch.note"), HasSubstr("Finished"));
    const auto records = storedRecords();
    const auto& record = records.back().record;
    EXPECT_FALSE(record.finished.empty());
    ASSERT_EQ(record.catchTest.catches.size(), 57U);
    EXPECT_TRUE(record.catchTest.catches.back().isAgain);
    EXPECT_EQ(record.catchTest.catches.back().typed, "795 mL");
    ASSERT_TRUE(record.catchTest.newFlow);
    EXPECT_NEAR(record.catchTest.newFlow->value.si() * 6e4, 1.58, 1e-9);
}

TEST_F(YardChecksTest, EverySixthFromTheRightEndInFluidOunces) {
    openYard();
    takeMachine(u"Demo self-propelled 100 ft"_s);
    takeCheck(u"Catch test"_s);
    click("yard.catch.scope.1");
    click("yard.catch.direction.1");
    write("yard.catch.time.line", "5");
    write("yard.catch.pressure.line", "40");
    // 0.4 gal/min is about 25 mL/s: 10 mL of the jug and 0.3 s of the watch are 2 % in 40 s, not
    // in 5.
    EXPECT_THAT(label("yard.catch.tooShort"), HasSubstr("catch for"));
    click("yard.catch.start");
    EXPECT_EQ(label("yard.catch.nozzle"), "55");
    enter("4.3");
    EXPECT_EQ(label("yard.catch.nozzle"), "49");
    EXPECT_THAT(label("yard.catch.last"), HasSubstr("nozzle 55, 4.3 fl oz"));
    enter("126 mL");
    EXPECT_EQ(label("yard.catch.nozzle"), "43");
    EXPECT_THAT(words("yard.catch.evidence"), HasSubstr("It takes"));
    // Skip, and a nozzle of one's own choice.
    key(Qt::Key_Slash);
    EXPECT_EQ(label("yard.catch.nozzle"), "37");
    write("yard.catch.jump.line", "2");
    EXPECT_EQ(label("yard.catch.nozzle"), "2");
    EXPECT_EQ(QApplication::focusWidget(), find(u"yard.catch.entry"_s));
    write("yard.catch.jump.line", "99");
    EXPECT_THAT(label("yard.catch.problem"), HasSubstr("no nozzle 99"));
}

TEST_F(YardChecksTest, WhatIsInHandIsOfferedForPrint) {
    openYard();
    takeMachine(u"Demo trailed 28 m"_s);
    takeCheck(u"Catch test"_s);
    const auto offer = [this]() -> QString {
        settle();
        for (auto* top : QApplication::topLevelWidgets()) {
            auto* box = top->isVisible() ? top->findChild<QComboBox*>(u"print.sheet"_s) : nullptr;
            if (!box) continue;
            const QString name = box->itemText(0);
            QTest::mouseClick(top->findChild<QAbstractButton*>(u"print.close"_s), Qt::LeftButton);
            settle();
            QApplication::setActiveWindow(window.get());
            return name;
        }
        return {};
    };
    click("yard.header.print");
    EXPECT_EQ(offer().toStdString(), "Catch test");
    takeCheck(u"Pre-season checklist"_s);
    key(Qt::Key_P, Qt::ControlModifier);
    EXPECT_EQ(offer().toStdString(), "Autumn lay-up");
    takeCheck(u"Lowest steady flow"_s);
    key(Qt::Key_P, Qt::ControlModifier);
    EXPECT_EQ(offer().toStdString(), "Lowest steady flow");
}

TEST_F(YardChecksTest, TheWatchEndsWithAWord) {
    openYard();
    takeMachine(u"Demo trailed 28 m"_s);
    takeCheck(u"Catch test"_s);
    write("yard.catch.time.line", "1");
    click("yard.catch.start");
    EXPECT_EQ(named("yard.catch.watch"), "Stop-watch, 1 s");
    key(Qt::Key_Space);
    EXPECT_EQ(named("yard.catch.watch"), "Stop-watch, running");
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return named("yard.catch.watch") == "Stop-watch: time is over"; }, 5000));
    EXPECT_EQ(QApplication::focusWidget(), find(u"yard.catch.entry"_s));
}

TEST_F(YardChecksTest, ATickOfTheChecklistStays) {
    openYard();
    takeMachine(u"Demo trailed 28 m"_s);
    takeCheck(u"Pre-season checklist"_s);
    EXPECT_THAT(named("yard.checklist.verdict"), HasSubstr("0 of"));
    EXPECT_THAT(caution("yard.checklist.strainers_clean.cautions"), HasSubstr("Stop first."));
    click("yard.checklist.strainers_clean.tick");
    EXPECT_THAT(label("yard.checklist.strainers_clean.day"), HasSubstr("done "));
    write("yard.checklist.nozzles_out.note", "two seals missing");
    EXPECT_THAT(named("yard.checklist.verdict"), HasSubstr("1 of"));
    key(Qt::Key_1, Qt::ControlModifier);
    key(Qt::Key_7, Qt::ControlModifier);
    settle();
    EXPECT_THAT(label("yard.checklist.strainers_clean.day"), HasSubstr("done "));
    EXPECT_EQ(textOf("yard.checklist.nozzles_out.note"), "two seals missing");
    const auto records = storedRecords();
    const auto& record = records.back().record;
    EXPECT_EQ(record.kind, YardKind::Checklist);
    ASSERT_EQ(record.ticks.size(), 2U);
    EXPECT_EQ(record.ticks[0].item, "strainers_clean");
    EXPECT_EQ(record.ticks[0].date.size(), 10U);
    EXPECT_EQ(record.ticks[1].note, "two seals missing");
    EXPECT_TRUE(record.ticks[1].date.empty());
}

}  // namespace
}  // namespace bw::test
