// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QMimeData>

#include "tests/ui/season_fixture.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::SeasonTest;

double kmh(const Known<Speed>& speed) {
    return in(speed.value().value, Unit::KilometrePerHour);
}
double lha(const Known<AreaRate>& rate) {
    return in(rate.value().value, Unit::LitrePerHectare);
}

TEST_F(SeasonTest, ShowsMachinesWithTheirUnitsJobsAndVerdicts) {
    EXPECT_EQ(names(), (QStringList{u"Trailed"_s, u"Cereals"_s, u"Beet"_s, u"New job: type here"_s,
                                    u"Self-propelled"_s, u"New job: type here"_s}));
    EXPECT_TRUE(table->model()
                    ->index(0, 0)
                    .data(Qt::UserRole)
                    .toString()
                    .contains(u"24 nozzles · L/ha, km/h, ha"_s));
    EXPECT_TRUE(
        table->model()->index(4, 0).data(Qt::UserRole).toString().contains(u"gal/ac, mph, ac"_s));
    EXPECT_EQ(shown("Cereals", "Rate"), u"150"_s);
    EXPECT_EQ(shown("Cereals", "Verdict"), u"holds"_s);
    EXPECT_EQ(shown(3, "Area"), u"80"_s) << "the machine's total";
    EXPECT_TRUE(table->isColumnHidden(column("Least"))) << "no job has a range of rates";
    EXPECT_TRUE(table->hasFocus()) << "the keyboard is in the table at once";
}

TEST_F(SeasonTest, ModelsKeepTheRulesOfModels) {
    // Failures come as Qt warnings, which fail the test.
    const QAbstractItemModelTester jobs(table->model(),
                                        QAbstractItemModelTester::FailureReportingMode::Warning);
    const QAbstractItemModelTester cells(matrix->model(),
                                         QAbstractItemModelTester::FailureReportingMode::Warning);
    typeInto("Cereals", "Usual", "9");
    click("Beet", "Job");
    press(Qt::Key_Insert);
    press(Qt::Key_Return);
    press(Qt::Key_Up);
    press(Qt::Key_Up, Qt::AltModifier);
    press(Qt::Key_Delete, Qt::ControlModifier);
    press(Qt::Key_Z, Qt::ControlModifier);
    QTest::keyClicks(window->findChild<QLineEdit*>(u"season.shown.filter"_s), u"beet"_s);
    QTest::keyClick(window->findChild<QLineEdit*>(u"season.shown.filter"_s), Qt::Key_Escape);
    EXPECT_EQ(names().size(), 7);
}

TEST_F(SeasonTest, AMachinesFirstJobIsTypedOnItsEmptyLine) {
    click(5, "Job");
    type("Soybean");
    press(Qt::Key_Tab);
    type("17");
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    type("13");
    press(Qt::Key_Return);
    const auto jobs = stored(2);
    ASSERT_EQ(jobs.size(), 1u);
    EXPECT_EQ(jobs[0].name, "Soybean");
    EXPECT_NEAR(in(jobs[0].rate->value, Unit::GallonUsPerAcre), 17, 1e-9) << "its machine's unit";
    EXPECT_NEAR(in(jobs[0].usual->value, Unit::MilePerHour), 13, 1e-9);
    EXPECT_EQ(shown("Soybean", "Rate"), u"17"_s);
    EXPECT_EQ(table->currentIndex().row(), row(u"Soybean"_s) + 1) << "Enter goes down";
}

TEST_F(SeasonTest, AJobLineWithoutItsRateIsNotCheckedAndSaysWhy) {
    click(3, "Job");
    type("Maize");
    press(Qt::Key_Return);
    EXPECT_EQ(shown("Maize", "Verdict"), u"not checked"_s);
    click("Maize", "Rate");
    EXPECT_TRUE(message().contains(u"The spray rate is missing."_s)) << message().toStdString();
}

TEST_F(SeasonTest, AnyUnitIsUnderstoodAndShownAsTyped) {
    typeInto("Cereals", "Usual", "6 mph");
    EXPECT_EQ(shown("Cereals", "Usual"), u"6 mph"_s);
    EXPECT_NEAR(kmh(stored()[0].usual), 6 * 1.609344, 1e-9) << "the international mile, 1959";
    EXPECT_EQ(stored()[0].usual->typed, "6 mph");
    typeInto("Cereals", "Area", "100 ac");
    EXPECT_EQ(shown("Cereals", "Area"), u"100 ac"_s);
    typeInto("Cereals", "Usual", "10,5");
    EXPECT_EQ(shown("Cereals", "Usual"), u"10.5"_s);
    EXPECT_EQ(stored()[0].usual->typed, "10,5 km/h");
}

TEST_F(SeasonTest, LettersAreRefusedAtTheCellAndNothingIsLost) {
    typeInto("Cereals", "Usual", "fast");
    click("Cereals", "Usual");
    EXPECT_TRUE(message().contains(u"“fast” is not a number"_s)) << message().toStdString();
    EXPECT_TRUE(message().contains(u"Kept: 10."_s)) << message().toStdString();
    EXPECT_EQ(shown("Cereals", "Usual"), u"10"_s);
    EXPECT_NEAR(kmh(stored()[0].usual), 10, 1e-9);
    EXPECT_EQ(window->session().undoStack().count(), 0);
    // F2 brings back what was typed, to be mended.
    press(Qt::Key_F2);
    auto* field = window->findChild<QLineEdit*>(u"season.table.editor"_s);
    ASSERT_TRUE(field);
    EXPECT_EQ(field->text(), u"fast"_s);
    press(Qt::Key_Escape);
    EXPECT_TRUE(message().contains(u"is not a number"_s)) << "Esc leaves the field";
    press(Qt::Key_Escape);
    EXPECT_FALSE(message().contains(u"is not a number"_s)) << "Esc again lets the text go";
    type("11");
    press(Qt::Key_Return);
    click("Cereals", "Usual");
    EXPECT_FALSE(message().contains(u"is not a number"_s));
    EXPECT_NEAR(kmh(stored()[0].usual), 11, 1e-9);
}

TEST_F(SeasonTest, AbsurdNegativeAndGroupedFiguresAreRefused) {
    for (const char* bad : {"-3", "0", "90000", "1,250", "12 bar", "3 gal"}) {
        typeInto("Cereals", "Rate", bad);
        click("Cereals", "Rate");
        EXPECT_TRUE(message().contains(u"Kept: 150."_s)) << bad << ": " << message().toStdString();
        EXPECT_NEAR(lha(stored()[0].rate), 150, 1e-9) << bad;
    }
}

TEST_F(SeasonTest, ASlowSpeedOverTheUsualOneIsSaidAndBarsTheVerdict) {
    typeInto("Cereals", "Slow", "11");
    EXPECT_EQ(shown("Cereals", "Verdict"), u"not checked"_s);
    click("Cereals", "Slow");
    EXPECT_TRUE(message().contains(u"The slow speed, 11 km/h, is over the usual speed, 10 km/h."_s))
        << message().toStdString();
    typeInto("Cereals", "Usual", "11.5");
    EXPECT_EQ(shown("Cereals", "Verdict"), u"holds"_s) << "the other cell was mended";
}

TEST_F(SeasonTest, EachEditIsOneStepWithItsNameAndCanBeTakenBack) {
    typeInto("Cereals", "Usual", "9.5");
    EXPECT_EQ(window->session().undoStack().undoText(), u"usual speed 9.5"_s);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(shown("Cereals", "Usual"), u"10"_s);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(shown("Cereals", "Usual"), u"9.5"_s);
}

TEST_F(SeasonTest, DropletsAreTypedOrPicked) {
    typeInto("Cereals", "Drops", "vc, C");
    EXPECT_EQ(shown("Cereals", "Drops"), u"C, VC"_s);
    click("Cereals", "Drops");
    press(Qt::Key_F2);
    auto* medium = window->findChild<QAbstractButton*>(u"season.droplets.M"_s);
    ASSERT_TRUE(medium && medium->isVisible());
    QTest::mouseClick(medium, Qt::LeftButton);
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"season.droplets.VC"_s), Qt::LeftButton);
    press(Qt::Key_Return);
    EXPECT_EQ(shown("Cereals", "Drops"), u"M, C"_s);
    EXPECT_EQ(stored()[0].droplets, (std::vector{DropletCategory::M, DropletCategory::C}));
    typeInto("Cereals", "Drops", "Q");
    click("Cereals", "Drops");
    EXPECT_TRUE(message().contains(u"“Q” is no droplet class"_s)) << message().toStdString();
    EXPECT_EQ(shown("Cereals", "Drops"), u"M, C"_s);
}

TEST_F(SeasonTest, APinnedNozzleIsTheOneTheVerdictSpeaksOf) {
    // Small 02 gives 1.131 L/min at its highest pressure = 9.05 km/h: not the usual 10.
    typeInto("Cereals", "Nozzle", "small 02");
    EXPECT_EQ(shown("Cereals", "Nozzle"), u"Small 02"_s);
    EXPECT_EQ(shown("Cereals", "Verdict"), u"does not hold"_s);
    typeInto("Cereals", "Nozzle", "nothing of the kind");
    click("Cereals", "Nozzle");
    EXPECT_TRUE(message().contains(u"No nozzle here is called"_s)) << message().toStdString();
    EXPECT_EQ(stored()[0].pinnedNozzle, "Small 02");
    press(Qt::Key_Delete);
    EXPECT_EQ(stored()[0].pinnedNozzle, "");
    EXPECT_EQ(shown("Cereals", "Verdict"), u"holds"_s);
}

TEST_F(SeasonTest, ANozzleWithoutADropletTableFitsNoJobThatAsksForDroplets) {
    typeInto("Cereals", "Nozzle", "Untested 03");
    EXPECT_EQ(shown("Cereals", "Verdict"), u"holds"_s) << "no droplets asked";
    typeInto("Cereals", "Drops", "C");
    EXPECT_EQ(shown("Cereals", "Verdict"), u"not checked"_s);
    EXPECT_EQ(matrix->model()->index(row(u"Cereals"_s), 2).data().toString(), u"not checked"_s);
    EXPECT_TRUE(footTexts().filter(u"Untested 03 may hold it, but this is not known"_s).size() == 1)
        << footTexts().join(u'\n').toStdString();
}

TEST_F(SeasonTest, TheMatrixSaysWhatStopsAndHowMuchIsToSpare) {
    const int cereals = row(u"Cereals"_s);
    // Small 02: the nozzle's highest pressure stops it. Fit 03: 5.54 to 13.58 km/h, 36 % up.
    EXPECT_EQ(matrix->model()->index(cereals, 0).data().toString(), u"nozzle"_s);
    EXPECT_EQ(matrix->model()->index(cereals, 1).data().toString(), u"36 %"_s);
    EXPECT_EQ(matrix->model()->headerData(1, Qt::Horizontal).toString(), u"Fit 03"_s);
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"season.shown.matrix"_s),
                      Qt::LeftButton);
    EXPECT_FALSE(matrix->isVisible());
    press(Qt::Key_M, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(matrix->isVisible());
}

TEST_F(SeasonTest, EnterOnAVerdictOpensTheSpeedWindowWithJobAndNozzleInHand) {
    click("Beet", "Area");
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    press(Qt::Key_Return);
    EXPECT_EQ(window->currentPageId(), u"speed_window"_s);
    EXPECT_EQ(window->session().currentJob(), 2);
    EXPECT_EQ(window->session().nozzle(window->session().currentNozzle())->name, "Fit 03");
}

TEST_F(SeasonTest, ACellOfTheMatrixOpensItsOwnNozzle) {
    click("Cereals", "Verdict");
    press(Qt::Key_Right);
    EXPECT_TRUE(matrix->hasFocus());
    EXPECT_TRUE(message().contains(u"Cereals with Small 02"_s)) << message().toStdString();
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    press(Qt::Key_Return);
    EXPECT_EQ(window->currentPageId(), u"speed_window"_s);
    EXPECT_EQ(window->session().currentNozzle(), 3);
    press(Qt::Key_3, Qt::ControlModifier);
    const QRect cell = matrix->visualRect(matrix->model()->index(row(u"Beet"_s), 0));
    QTest::mouseClick(matrix->viewport(), Qt::LeftButton, {}, cell.center());
    QTest::mouseDClick(matrix->viewport(), Qt::LeftButton, {}, cell.center());
    EXPECT_EQ(window->currentPageId(), u"speed_window"_s);
    EXPECT_EQ(window->session().currentJob(), 2);
    EXPECT_EQ(window->session().currentNozzle(), 1);
}

TEST_F(SeasonTest, TheFootCountsAndTellsTheDoseWhereAJobIsOff) {
    EXPECT_TRUE(
        footTexts().contains(u"Trailed: 2 of 2 jobs have a nozzle that holds slow to fast"_s))
        << footTexts().join(u'\n').toStdString();
    EXPECT_EQ(footTexts().filter(u"Not checked here, and counted against no job"_s).size(), 1);
    // 400 L/ha at 10 km/h needs 3.33 L/min: no nozzle gives that.
    typeInto("Cereals", "Rate", "400");
    EXPECT_TRUE(
        footTexts().contains(u"Trailed: 1 of 2 jobs have a nozzle that holds slow to fast"_s));
    EXPECT_EQ(footTexts().filter(u"Cereals: none of your nozzles holds the usual 10 km/h"_s).size(),
              1);
    const auto* caution = window->findChild<CautionBox*>(u"season.caution"_s);
    ASSERT_TRUE(caution && caution->isVisible());
    EXPECT_TRUE(caution->text().contains(u"the program does not know the label"_s));
    EXPECT_TRUE(caution->text().contains(u"knows nothing of wind"_s));
}

TEST_F(SeasonTest, TheShownMachineAndTheFilterNarrowTheTable) {
    auto* filter = window->findChild<QLineEdit*>(u"season.shown.filter"_s);
    press(Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(filter->hasFocus());
    QTest::keyClicks(filter, u"BEE"_s);
    EXPECT_EQ(names(), (QStringList{u"Trailed"_s, u"Beet"_s}));
    QTest::keyClick(filter, Qt::Key_Return);
    EXPECT_TRUE(table->hasFocus());
    filter->setFocus();
    QTest::keyClick(filter, Qt::Key_Escape);
    EXPECT_EQ(names().size(), 6);
    auto* shownMachine = window->findChild<QComboBox*>(u"season.shown.machine"_s);
    shownMachine->setFocus();
    QTest::keyClick(shownMachine, Qt::Key_Down);
    QTest::keyClick(shownMachine, Qt::Key_Down);
    EXPECT_EQ(names(), (QStringList{u"Self-propelled"_s, u"New job: type here"_s}));
}

}  // namespace
}  // namespace bw
