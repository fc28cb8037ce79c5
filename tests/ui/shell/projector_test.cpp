// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDialog>
#include <QPlainTextEdit>
#include <QStandardItemModel>
#include <QTableView>
#include <QTextBrowser>

#include "core/store/farm_file.h"
#include "tests/ui/shell/projector_fixture.h"
#include "ui/shell/trainer_window.h"
#include "ui/undo/farm_session.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::ProjectorTest;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

TEST_F(ProjectorTest, F11PutsThePageOnTheWallAndEscTakesItOff) {
    showPage(4);
    ASSERT_TRUE(find("frame.newCall"));
    key(Qt::Key_F11);
    EXPECT_TRUE(find("projector.stage"));
    EXPECT_FALSE(window->menuBar()->isVisible());
    EXPECT_FALSE(find("status.file"));
    EXPECT_FALSE(find("rail.machine"));
    EXPECT_EQ(window->windowTitle(), u"Boomwright"_s) << "the title bar may be on the wall";
    EXPECT_EQ(window->currentPageId(), u"speed_window"_s);
    key(Qt::Key_Escape);
    EXPECT_FALSE(find("projector.stage"));
    EXPECT_TRUE(window->menuBar()->isVisible());
    EXPECT_TRUE(find("status.file"));
    key(Qt::Key_F11);
    EXPECT_TRUE(window->isProjector());
    key(Qt::Key_F11);
    EXPECT_FALSE(window->isProjector());
}

/// All that the desk's page shows is, after the wall, as it was: type, look, units, sizes.
TEST_F(ProjectorTest, TheDeskIsLeftAsItWas) {
    for (const int page : {0, 1, 2, 3, 4, 6}) {
        showPage(page);
        const QImage before = picture();
        key(Qt::Key_F11);
        key(Qt::Key_U);
        ASSERT_NE(picture(), before);
        key(Qt::Key_Escape);
        const QImage after = picture();
        EXPECT_EQ(after, before) << "page " << page;
        if (after == before) continue;
        before.save(u"desk_before_%1.png"_s.arg(page));
        after.save(u"desk_after_%1.png"_s.arg(page));
    }
}

TEST_F(ProjectorTest, PagesCanBeChangedOnTheWallAndStandRightAtTheDesk) {
    showPage(4);
    key(Qt::Key_F11);
    showPage(6);  // made while the wall is on
    EXPECT_TRUE(find("finder.wall.noCall"));
    key(Qt::Key_Escape);
    const QImage made = picture();
    const QString path = window->session().path();
    window.reset();
    open(files.open(path));
    showPage(6);
    EXPECT_EQ(picture(), made) << "as if made at the desk";
}

TEST_F(ProjectorTest, FileCommandsWaitForTheDesk) {
    EXPECT_TRUE(window->actions().find(u"file.open"_s)->isEnabled());
    key(Qt::Key_F11);
    EXPECT_FALSE(window->actions().find(u"file.open"_s)->isEnabled());
    EXPECT_FALSE(window->actions().find(u"file.leaveDemo"_s)->isEnabled());
    key(Qt::Key_O, Qt::ControlModifier);  // would ask for a file: the script would complain
    key(Qt::Key_Escape);
    EXPECT_TRUE(window->actions().find(u"file.open"_s)->isEnabled());
    EXPECT_TRUE(window->actions().find(u"file.leaveDemo"_s)->isEnabled());
}

TEST_F(ProjectorTest, UnitKeyChangesTheWallAlone) {
    showPage(4);
    const Machine before = *window->session().machine(window->session().currentMachine());
    const int steps = window->session().undoStack().count();
    key(Qt::Key_F11);
    ASSERT_EQ(label("speedWindow.wall.speedUnit"), "mph")
        << "the demo's first machine is of the US";
    const auto foot = [&] { return find("projector.keys")->accessibleName().toStdString(); };
    EXPECT_THAT(foot(), HasSubstr("units: US (mph, psi, gal/ac)"));
    key(Qt::Key_U);
    EXPECT_EQ(label("speedWindow.wall.speedUnit"), "mph");
    EXPECT_EQ(label("speedWindow.wall.pressureUnit"), "bar");
    EXPECT_THAT(label("speedWindow.wall.verdict"), HasSubstr("L/ha"));
    EXPECT_THAT(foot(), HasSubstr("units: UK (mph, bar, L/ha)"));
    key(Qt::Key_U);
    EXPECT_EQ(label("speedWindow.wall.speedUnit"), "km/h");
    EXPECT_EQ(label("speedWindow.wall.rateUnit"), "L/ha");
    EXPECT_THAT(foot(), HasSubstr("units: metric (km/h, bar, L/ha)"));
    key(Qt::Key_Escape);
    EXPECT_EQ(*window->session().machine(window->session().currentMachine()), before);
    EXPECT_EQ(window->session().undoStack().count(), steps);
    EXPECT_EQ(label("speedWindow.cursor.speedUnit"), "mph");
    const QString path = window->session().path();
    const RecordId machine = window->session().currentMachine();
    window.reset();
    open(files.open(path));
    EXPECT_EQ(window->session().machine(machine)->units, before.units) << "nor in the file";
}

TEST_F(ProjectorTest, SpeedWindowIsDrivenByKeys) {
    showPage(4);
    key(Qt::Key_F11);
    EXPECT_TRUE(find("speedWindow.wall.pressureChart"));
    const std::string speed = label("speedWindow.wall.speed");
    const std::string pressure = label("speedWindow.wall.pressure");
    for (int i = 0; i < 12; ++i) key(Qt::Key_Right);
    EXPECT_NE(label("speedWindow.wall.speed"), speed);
    EXPECT_NE(label("speedWindow.wall.pressure"), pressure);
    const std::string faster = label("speedWindow.wall.speed");
    key(Qt::Key_2);
    EXPECT_TRUE(find("speedWindow.wall.rateChart"));
    EXPECT_FALSE(find("speedWindow.wall.pressureChart"));
    key(Qt::Key_3);
    EXPECT_TRUE(find("speedWindow.wall.stops"));
    EXPECT_FALSE(find("speedWindow.wall.speed")) << "one idea";
    const std::string verdict = label("speedWindow.wall.verdict");
    key(Qt::Key_J);
    EXPECT_NE(label("speedWindow.wall.verdict"), verdict) << "another job";
    key(Qt::Key_1);
    const std::string nozzle = label("speedWindow.wall.verdict");
    key(Qt::Key_N);
    EXPECT_NE(label("speedWindow.wall.verdict"), nozzle) << "another nozzle";
}

TEST_F(ProjectorTest, CursorOfTheWallIsThatOfTheDesk) {
    showPage(4);
    const std::string before = label("speedWindow.cursor.speed");
    key(Qt::Key_F11);
    EXPECT_EQ(label("speedWindow.wall.speed"), before);
    for (int i = 0; i < 5; ++i) key(Qt::Key_Left);
    const std::string slower = label("speedWindow.wall.speed");
    EXPECT_NE(slower, before);
    key(Qt::Key_Escape);
    EXPECT_EQ(label("speedWindow.cursor.speed"), slower);
}

TEST_F(ProjectorTest, CautionsStandOnTheWall) {
    showPage(4);
    key(Qt::Key_F11);
    const auto caution = [&] {
        const auto* box = find("speedWindow.wall.caution");
        return box ? box->accessibleName().toStdString() : std::string();
    };
    EXPECT_THAT(caution(), HasSubstr("not a safe driving speed"));
    EXPECT_THAT(caution(), Not(HasSubstr("finer drops drift")));
    for (int i = 0; i < 200; ++i) QTest::keyClick(window->focusWidget(), Qt::Key_Right);
    settle();
    EXPECT_THAT(caution(), HasSubstr("finer drops drift")) << "past the high end";
    key(Qt::Key_3);
    EXPECT_THAT(caution(), HasSubstr("finer drops drift"));
    EXPECT_THAT(caution(), HasSubstr("the fan narrows"));
}

TEST_F(ProjectorTest, CallIsTakenOnTheWallAndGoesOnAtTheDesk) {
    key(Qt::Key_F11);
    key(Qt::Key_F9);
    ASSERT_EQ(window->currentPageId(), u"fault_finder"_s);
    EXPECT_EQ(label("finder.card.question"), "What does the caller say?");
    type("1");
    EXPECT_EQ(label("finder.card.question"), "What is in the tank?");
    EXPECT_TRUE(find("finder.card.caution")) << "before the answers, on the wall too";
    type("1");
    key(Qt::Key_Backspace);
    EXPECT_EQ(label("finder.card.question"), "What is in the tank?") << "taken back";
    type("12111");  // water, two people, yard; machine, job
    EXPECT_EQ(label("finder.card.question"), "Which nozzle is on?");
    type("1");
    ASSERT_TRUE(find("finder.numbers.speed"));
    for (int i = 0; i < 6; ++i) key(Qt::Key_Return);
    const std::string question = label("finder.card.question");
    EXPECT_THAT(label("finder.card.lead"), HasSubstr("Check 1"));
    EXPECT_FALSE(find("finder.wall.bars")) << "the question has all the room";
    key(Qt::Key_B);
    EXPECT_TRUE(find("finder.wall.bars"));
    EXPECT_FALSE(find("finder.card.question")) << "the bars alone";
    key(Qt::Key_B);
    key(Qt::Key_Escape);
    EXPECT_EQ(label("finder.card.question"), question);
}

TEST_F(ProjectorTest, HelpListsTheKeys) {
    showPage(4);
    key(Qt::Key_F11);
    const auto listed = [&] {
        QStringList all;
        auto* dialog = window->findChild<QDialog*>(u"help.keys"_s);
        EXPECT_TRUE(dialog && dialog->isVisible());
        if (!dialog) return std::string();
        const auto* model = dialog->findChild<QTableView*>()->model();
        for (int row = 0; row < model->rowCount(); ++row)
            all.append(model->index(row, 0).data().toString() + u'=' +
                       model->index(row, 1).data().toString());
        return all.join(u'\n').toStdString();
    };
    key(Qt::Key_F1, Qt::ControlModifier);
    const std::string keys = listed();
    for (const char* expected :
         {"F11=Projector view", "Esc=Leave the projector view",
          "U=Units on the wall: metric, US, UK", "F12=Notes and truth", "1=Pressure against speed",
          "2=Rate against speed", "3=What stops it", "J=Next job", "N=Next nozzle"})
        EXPECT_THAT(keys, HasSubstr(expected));
    const auto* dialog = window->findChild<QDialog*>(u"help.keys"_s);
    EXPECT_LE(dialog->height(), window->height()) << "in large type it still fits";
    QTest::keyClick(window->findChild<QDialog*>(u"help.keys"_s), Qt::Key_Escape);
    settle();
    activate();
    EXPECT_TRUE(window->isProjector()) << "Esc closed the list alone";
}

class TrainerTest : public ProjectorTest {
  protected:
    TrainerWindow* trainer() const { return window->trainerWindow(); }
    QPlainTextEdit* notes() const { return trainer()->findChild<QPlainTextEdit*>(); }
    std::string truth() const {
        return trainer()->findChild<QTextBrowser*>()->toPlainText().toStdString();
    }
};

TEST_F(TrainerTest, NotesAreKeptByPage) {
    showPage(4);
    key(Qt::Key_F12);
    ASSERT_TRUE(trainer() && trainer()->isVisible());
    QTest::keyClicks(notes(), u"Ask who drives faster at the headland."_s);
    activate();
    showPage(6);
    EXPECT_EQ(notes()->toPlainText(), QString());
    showPage(4);
    EXPECT_EQ(notes()->toPlainText(), u"Ask who drives faster at the headland."_s);
    const QString path = window->session().path();
    window.reset();
    open(files.open(path));
    showPage(4);
    key(Qt::Key_F12);
    EXPECT_EQ(notes()->toPlainText(), u"Ask who drives faster at the headland."_s);
    key(Qt::Key_F12);
    EXPECT_FALSE(trainer()->isVisible());
}

TEST_F(TrainerTest, TruthOfTheSpeedWindowIsWhatItStandsOn) {
    showPage(4);
    key(Qt::Key_F12);
    EXPECT_THAT(truth(), HasSubstr("Not checked"));
    EXPECT_THAT(truth(), HasSubstr("Rests on"));
    EXPECT_THAT(truth(), HasSubstr("mph"));
    activate();
    showPage(1);
    EXPECT_THAT(truth(), StartsWith("Nothing behind this page"));
}

/// The only screen is on the wall: notes wait until the wall is off.
TEST_F(TrainerTest, NotesStayOffTheWall) {
    ASSERT_EQ(QGuiApplication::screens().size(), 1);
    showPage(4);
    key(Qt::Key_F12);
    ASSERT_TRUE(trainer()->isVisible());
    activate();
    key(Qt::Key_F11);
    EXPECT_FALSE(trainer()->isVisible());
    key(Qt::Key_Escape);
    EXPECT_TRUE(trainer()->isVisible());
    EXPECT_EQ(trainer()->findChild<QPlainTextEdit*>()->font().pointSizeF(),
              QApplication::font().pointSizeF());
}

TEST(ScreenForNotes, IsAnotherThanTheScenes) {
    auto* one = reinterpret_cast<QScreen*>(0x10);
    auto* two = reinterpret_cast<QScreen*>(0x20);
    EXPECT_EQ(screenForNotes({one, two}, one), two);
    EXPECT_EQ(screenForNotes({one, two}, two), one);
    EXPECT_EQ(screenForNotes({one}, one), nullptr);
}

}  // namespace
}  // namespace bw
