// SPDX-License-Identifier: GPL-3.0-or-later
#include <QElapsedTimer>
#include <QListWidget>
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

TEST_F(SeasonTest, ABlockFromASpreadsheetGoesInButForItsBadCell) {
    click("Beet", "Job");
    paste(
        "Beet split\t200\t5.5\t6.5\n"
        "Wheat\t180\t7\tabout 9\n"
        "Rape\t120\t9\t11\n"
        "Peas\t150\t8\t10\n"
        "Oats\t140\t8\t9\n");
    const auto jobs = stored();
    ASSERT_EQ(jobs.size(), 6u) << "one was there, four are new";
    EXPECT_EQ(jobs[1].name, "Beet split");
    EXPECT_NEAR(lha(jobs[1].rate), 200, 1e-9);
    EXPECT_NEAR(kmh(jobs[1].fast), 11, 1e-9) << "not in the block";
    EXPECT_EQ(jobs[2].name, "Wheat");
    EXPECT_NEAR(kmh(jobs[2].slow), 7, 1e-9);
    EXPECT_FALSE(jobs[2].usual);
    EXPECT_EQ(jobs[5].name, "Oats");
    EXPECT_NEAR(kmh(jobs[5].usual), 9, 1e-9);
    ASSERT_EQ(notices().size(), 1);
    EXPECT_TRUE(notices()[0].contains(u"Pasted 5 × 4. Cells taken: 19. New jobs: 4."_s))
        << notices()[0].toStdString();
    EXPECT_TRUE(
        notices()[0].contains(u"Line 2, “Wheat”, usual speed: “about 9” is not a number"_s));
    click("Wheat", "Usual");
    EXPECT_TRUE(message().contains(u"“about 9” is not a number"_s)) << "marked at its cell";
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(stored().size(), 2u) << "one undo step";
    EXPECT_EQ(stored()[1].name, "Beet");
}

TEST_F(SeasonTest, AHeadingIsRecognisedWithItsUnitsAndOrder) {
    click(5, "Job");
    paste(
        "Area (ha)\tUsual, km/h\tJob\tMixer\tRate L/ha\n"
        "50\t16\tStubble\tx\t75\n");
    const auto jobs = stored(2);
    ASSERT_EQ(jobs.size(), 1u);
    EXPECT_EQ(jobs[0].name, "Stubble");
    EXPECT_NEAR(lha(jobs[0].rate), 75, 1e-9) << "in the unit of the heading, not the machine's";
    EXPECT_NEAR(kmh(jobs[0].usual), 16, 1e-9);
    EXPECT_NEAR(in(jobs[0].area->value, Unit::Hectare), 50, 1e-9);
    EXPECT_EQ(shown("Stubble", "Rate"), u"75 L/ha"_s);
    EXPECT_TRUE(notices().join(u' ').contains(u"Without a column here, left out: 1"_s));
}

TEST_F(SeasonTest, GroupMarksInABlockAreRefusedNotGuessed) {
    click("Cereals", "Area");
    paste("1,250\n1 250\n");
    EXPECT_NEAR(in(stored()[0].area->value, Unit::Hectare), 40, 1e-9);
    EXPECT_NEAR(in(stored()[1].area->value, Unit::Hectare), 40, 1e-9);
    EXPECT_TRUE(notices().join(u' ').contains(u"Not taken, each marked at its cell: 2"_s))
        << notices().join(u' ').toStdString();
    EXPECT_EQ(window->session().undoStack().count(), 0);
}

TEST_F(SeasonTest, OneValueFillsTheWholeSelection) {
    click("Cereals", "Slow");
    shiftClick(2, "Slow");
    paste("7.5");
    EXPECT_NEAR(kmh(stored()[0].slow), 7.5, 1e-9);
    EXPECT_NEAR(kmh(stored()[1].slow), 7.5, 1e-9);
    EXPECT_EQ(window->session().undoStack().count(), 1);
}

TEST_F(SeasonTest, CopiedCellsKeepTheirMeaningOnAMachineWithOtherUnits) {
    click("Cereals", "Job");
    shiftClick(1, "Usual");
    press(Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), u"Cereals\t150\t8\t10\n"_s)
        << "bare figures for a spreadsheet";
    click(5, "Job");
    press(Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(stored(2).size(), 1u);
    EXPECT_NEAR(lha(stored(2)[0].rate), 150, 1e-9);
    EXPECT_NEAR(kmh(stored(2)[0].usual), 10, 1e-9);
    click("Cereals", "Rate");
    press(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), u"Rate (L/ha)\n150\n"_s);
}

TEST_F(SeasonTest, FillDownTakesTheTopCells) {
    click("Cereals", "Slow");
    shiftClick(2, "Usual");
    press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_NEAR(kmh(stored()[1].slow), 8, 1e-9);
    EXPECT_NEAR(kmh(stored()[1].usual), 10, 1e-9);
    EXPECT_EQ(window->session().undoStack().undoText(), u"fill down"_s);
    click("Beet", "Rate");
    press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_NEAR(lha(stored()[1].rate), 150, 1e-9) << "a single cell takes what is above it";
    click("Cereals", "Rate");
    press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(window->session().undoStack().count(), 2) << "above the first job is no job";
}

TEST_F(SeasonTest, DeleteEmptiesCellsAndControlDeleteRemovesJobs) {
    click("Cereals", "Slow");
    shiftClick(2, "Slow");
    press(Qt::Key_Delete);
    EXPECT_FALSE(stored()[0].slow);
    EXPECT_FALSE(stored()[1].slow);
    EXPECT_EQ(window->session().undoStack().count(), 1);
    click("Cereals", "Job");
    press(Qt::Key_Delete, Qt::ControlModifier);
    ASSERT_EQ(stored().size(), 1u);
    EXPECT_EQ(stored()[0].name, "Beet");
    press(Qt::Key_Z, Qt::ControlModifier);
    ASSERT_EQ(stored().size(), 2u);
    EXPECT_EQ(stored()[0].name, "Cereals") << "back in its place";
}

TEST_F(SeasonTest, InsertAddsAJobBelowReadyToBeNamed) {
    click("Cereals", "Rate");
    press(Qt::Key_Insert);
    type("Rape");
    press(Qt::Key_Tab);
    type("120");
    press(Qt::Key_Return);
    ASSERT_EQ(stored().size(), 3u);
    EXPECT_EQ(stored()[1].name, "Rape");
    EXPECT_NEAR(lha(stored()[1].rate), 120, 1e-9);
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"season.jobs.add"_s), Qt::LeftButton);
    press(Qt::Key_Escape);
    EXPECT_EQ(stored().size(), 4u);
}

TEST_F(SeasonTest, DuplicateAndStripMakeASecondLine) {
    click("Cereals", "Rate");
    press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
    press(Qt::Key_Escape);
    EXPECT_EQ(stored()[1].name, "Cereals, copy");
    EXPECT_NEAR(lha(stored()[1].rate), 150, 1e-9);
    click("Beet", "Rate");
    press(Qt::Key_D, Qt::ControlModifier | Qt::AltModifier);
    type("90");
    press(Qt::Key_Return);
    ASSERT_EQ(stored().size(), 4u);
    EXPECT_EQ(stored()[3].name, "Beet, strip");
    EXPECT_NEAR(stored()[3].driftPercent->value, 90, 1e-9);
    EXPECT_FALSE(stored()[3].area) << "the strip's area is its own";
    EXPECT_EQ(shown("Beet, strip", "Verdict"), u"not checked"_s) << "no nozzle has a drift table";
}

TEST_F(SeasonTest, JobsMoveUpAndDown) {
    click("Beet", "Job");
    press(Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(names().mid(1, 2), (QStringList{u"Beet"_s, u"Cereals"_s}));
    press(Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(names().mid(1, 2), (QStringList{u"Beet"_s, u"Cereals"_s})) << "at the top";
    press(Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(names().mid(1, 2), (QStringList{u"Cereals"_s, u"Beet"_s}));
    EXPECT_EQ(window->session().undoStack().count(), 2);
}

TEST_F(SeasonTest, ARangeOfRatesHasItsColumnsAndItsVerdict) {
    press(Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_FALSE(table->isColumnHidden(column("Least")));
    typeInto("Cereals", "Least", "80");
    typeInto("Cereals", "Most", "180");
    // 80 L/ha reaches the nozzle's lowest pressure at 10.4 km/h only: over the usual 10.
    EXPECT_EQ(shown("Cereals", "Verdict"), u"does not hold"_s);
    typeInto("Cereals", "Least", "160");
    click("Cereals", "Least");
    EXPECT_TRUE(message().contains(u"The least rate, 160 L/ha, is over the usual rate"_s))
        << message().toStdString();
}

TEST_F(SeasonTest, ANozzleIsPickedFromTheListBelowTheCell) {
    click("Cereals", "Nozzle");
    press(Qt::Key_F2);
    auto* list = window->findChild<QListWidget*>(u"season.nozzle.list"_s);
    ASSERT_TRUE(list && list->isVisible());
    const QRect item = list->visualItemRect(list->item(0));
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, item.center());
    QCoreApplication::processEvents();
    EXPECT_EQ(stored()[0].pinnedNozzle, "Small 02");
    click("Beet", "Nozzle");
    type("fit");
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    EXPECT_EQ(stored()[1].pinnedNozzle, "Fit 03");
}

TEST_F(SeasonTest, TheJobInHandFollowsTheCellAndTheTableFollowsTheJobInHand) {
    click("Beet", "Rate");
    EXPECT_EQ(window->session().currentJob(), 2);
    press(Qt::Key_4, Qt::ControlModifier);
    window->session().setCurrentJob(1);  // as another page does
    press(Qt::Key_3, Qt::ControlModifier);
    EXPECT_EQ(table->currentIndex().row(), row(u"Cereals"_s));
}

/// No machine yet.
class EmptySeasonTest : public SeasonTest {
  protected:
    std::vector<RecordChange> records() const override { return {}; }
};

TEST_F(EmptySeasonTest, SaysWhatComesFirstAndLeadsThere) {
    auto* season = window->findChild<QWidget*>(u"season"_s);
    const auto buttons = season->findChildren<QAbstractButton*>();
    QAbstractButton* begin = nullptr;
    for (auto* button : buttons) {
        if (button->text() == u"Begin with my machine"_s && button->isVisible()) begin = button;
    }
    ASSERT_TRUE(begin);
    EXPECT_FALSE(table->isVisible());
    QTest::mouseClick(begin, Qt::LeftButton);
    EXPECT_EQ(window->currentPageId(), u"machine"_s);
}

/// 200 jobs × 50 nozzles.
class BigSeasonTest : public SeasonTest {
  protected:
    std::vector<RecordChange> records() const override {
        Machine machine = build::machine();
        machine.name = "Trailed";
        std::vector<RecordChange> out{added(StoredMachine{1, 0, machine})};
        for (int i = 0; i < 50; ++i) {
            Nozzle n = own("", "own", "03", 0.6 + 0.05 * i);
            n.name = "Nozzle " + std::to_string(i);
            out.push_back(added(StoredNozzle{i + 1, n}));
        }
        for (int i = 0; i < 200; ++i) {
            Job j = job("", 100 + i, 8, 10, 12);
            j.name = "Job " + std::to_string(i);
            out.push_back(added(StoredJob{i + 1, 1, i, j}));
        }
        return out;
    }
};

TEST_F(BigSeasonTest, StaysAnsweringWhileItIsReckoned) {
    EXPECT_EQ(shown("Job 0", "Verdict"), u"reckoning"_s) << "shown at once";
    typeInto("Job 1", "Usual", "9");
    EXPECT_NEAR(kmh(stored()[1].usual), 9, 1e-9) << "an edit while it is reckoned";
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return shown("Job 199", "Verdict") != u"reckoning"_s; }, 20000));
    EXPECT_EQ(shown("Job 1", "Verdict"), u"holds"_s);
    // From here on only what changes is reckoned again, at once.
    QElapsedTimer clock;
    clock.start();
    typeInto("Job 2", "Rate", "2000");
    EXPECT_EQ(shown("Job 2", "Verdict"), u"does not hold"_s);
    EXPECT_LT(clock.elapsed(), 2000) << "a debug build on a busy computer";
}

TEST_F(BigSeasonTest, AWindowClosedWhileReckoningClosesAtOnce) {
    EXPECT_EQ(shown("Job 0", "Verdict"), u"reckoning"_s);
    QElapsedTimer clock;
    clock.start();
    window.reset();
    EXPECT_LT(clock.elapsed(), 2000);
}

}  // namespace
}  // namespace bw
