// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QMimeData>
#include <QTimer>

#include "core/store/connection.h"
#include "core/store/demo_file.h"
#include "core/store/farm_file.h"
#include "tests/ui/shell/frame_fixture.h"
#include "ui/kit/messages.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::FrameTest;

class FrameFilesTest : public FrameTest {
  protected:
    QString path(const QString& name) const { return folder.filePath(name); }
    void makeFarm(const QString& name) {
        script.willChoose(path(name));
        press("Ctrl+N");
        ASSERT_EQ(window->session().path(), path(name));
    }
    QString write(const QString& name, const QByteArray& bytes) {
        QFile file(path(name));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        return path(name);
    }
    void drop(const QString& file) {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(file)});
        QDragEnterEvent enter(QPoint(20, 20), Qt::CopyAction, &data, Qt::LeftButton,
                              Qt::NoModifier);
        QApplication::sendEvent(window.get(), &enter);
        QDropEvent event(QPointF(20, 20), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(window.get(), &event);
    }
};

TEST_F(FrameFilesTest, NewFileGetsItsEndingAndIsRemembered) {
    script.willChoose(path(u"north"_s));
    press("Ctrl+N");
    EXPECT_EQ(window->session().path(), path(u"north.boomwright"_s));
    EXPECT_EQ(settings.recentFiles(), QStringList(path(u"north.boomwright"_s)));
    EXPECT_EQ(window->findChild<QLabel*>(u"status.file"_s)->text(), u"north.boomwright"_s);
}

TEST_F(FrameFilesTest, RecordsThatCannotBeReadAreNamedInTheWindow) {
    {
        auto demo = createDemoFarmFile(path(u"odd.boomwright"_s));
        ASSERT_TRUE(demo.isOk());
        ASSERT_TRUE(
            demo.value()->connection().run(u"UPDATE job SET droplets = '?' WHERE id = 2"_s).isOk());
    }
    script.willChoose(path(u"odd.boomwright"_s));
    press("Ctrl+O");
    EXPECT_EQ(window->session().season().jobs.size(), 11U);
    const QStringList told = window->notices().texts();
    ASSERT_EQ(told.size(), 1);
    EXPECT_TRUE(told[0].contains(u"Wheat rust, flag leaf"_s)) << told[0].toStdString();
}

TEST_F(FrameFilesTest, JunkIsRefusedWithWordsAndTheFileInHandStays) {
    makeFarm(u"north.boomwright"_s);
    const QString junk = write(u"junk.boomwright"_s, QByteArray(5000, 'x'));
    script.willChoose(junk);
    script.willTake(1);
    press("Ctrl+O");
    ASSERT_EQ(script.asked().size(), 1);
    const Question& told = script.asked().first();
    EXPECT_TRUE(told.title.contains(u"junk.boomwright"_s));
    EXPECT_FALSE(told.text.isEmpty());
    EXPECT_FALSE(told.text.contains(u'<')) << told.text.toStdString();
    EXPECT_TRUE(told.detail.contains(u"north.boomwright"_s));
    EXPECT_EQ(window->session().path(), path(u"north.boomwright"_s));
    QFile after(junk);
    ASSERT_TRUE(after.open(QIODevice::ReadOnly));
    EXPECT_EQ(after.readAll(), QByteArray(5000, 'x'));
}

TEST_F(FrameFilesTest, MissingAndEmptyFilesAreToldApart) {
    const QString empty = write(u"empty.boomwright"_s, {});
    script.willTake(1);
    drop(empty);
    script.willTake(1);
    drop(path(u"gone.boomwright"_s));
    ASSERT_EQ(script.asked().size(), 2);
    EXPECT_NE(script.asked()[0].text, script.asked()[1].text);
}

TEST_F(FrameFilesTest, AnotherFileCanBeChosenFromTheMessage) {
    makeFarm(u"north.boomwright"_s);
    makeFarm(u"south.boomwright"_s);
    const QString junk = write(u"junk.boomwright"_s, "x");
    script.willTake(0);
    script.willChoose(path(u"north.boomwright"_s));
    drop(junk);
    EXPECT_EQ(window->session().path(), path(u"north.boomwright"_s));
}

TEST_F(FrameFilesTest, DroppedFileOpensAndPagesStartAnew) {
    makeFarm(u"north.boomwright"_s);
    makeFarm(u"south.boomwright"_s);
    press("Ctrl+1");
    drop(path(u"north.boomwright"_s));
    EXPECT_EQ(window->session().path(), path(u"north.boomwright"_s));
    EXPECT_EQ(window->currentPageId(), u"machine"_s) << "the page in hand stays in hand";
    EXPECT_GE(page()->refreshes, 1);
}

TEST_F(FrameFilesTest, CopyIsSavedAndCanBeOpened) {
    makeFarm(u"north.boomwright"_s);
    script.willChoose(path(u"copy"_s));
    script.willTake(1);
    press("Ctrl+Shift+S");
    EXPECT_TRUE(QFile::exists(path(u"copy.boomwright"_s)));
    EXPECT_EQ(window->session().path(), path(u"north.boomwright"_s));
}

TEST_F(FrameFilesTest, BackupIsTakenBackAsAFileOfItsOwn) {
    // A file just made has nothing to lose yet; opened again, its first edit makes the day's copy.
    makeFarm(u"north.boomwright"_s);
    makeFarm(u"south.boomwright"_s);
    drop(path(u"north.boomwright"_s));
    Machine machine;
    machine.name = "First";
    ASSERT_TRUE(window->session().addMachine(machine, u"new machine"_s).isOk());
    ASSERT_EQ(window->session().file().backups().size(), 1);
    EXPECT_TRUE(window->findChild<QLabel*>(u"status.undo"_s)->text().contains(u"new machine"_s));
    bool wasShown = false;
    QTimer::singleShot(0, window.get(), [&wasShown] {
        auto* dialog = QApplication::activeModalWidget();
        ASSERT_TRUE(dialog);
        auto* list = dialog->findChild<QListWidget*>(u"backups.list"_s);
        wasShown = list && list->count() == 1;
        QTest::mouseClick(dialog->findChild<QAbstractButton*>(u"backups.take"_s), Qt::LeftButton);
    });
    window->actions().find(u"file.backups"_s)->trigger();
    EXPECT_TRUE(wasShown) << "made before the first edit of the day";
    EXPECT_EQ(window->session().path(), path(u"north restored.boomwright"_s));
    EXPECT_TRUE(window->session().season().machines.empty()) << "as it was before that edit";
    drop(path(u"north.boomwright"_s));
    EXPECT_EQ(window->session().season().machines.size(), 1u) << "the file itself stayed";
}

TEST_F(FrameFilesTest, UndoAndRedoByKeyFromTheFrame) {
    Machine machine;
    machine.name = "First";
    ASSERT_TRUE(window->session().addMachine(machine, u"new machine"_s).isOk());
    press("Ctrl+Z");
    EXPECT_TRUE(window->session().season().machines.empty());
    EXPECT_TRUE(window->findChild<QLabel*>(u"status.undo"_s)->isHidden());
    press("Ctrl+Y");
    EXPECT_EQ(window->session().season().machines.size(), 1u);
    press("Ctrl+Z");
    press("Ctrl+Shift+Z");
    EXPECT_EQ(window->session().season().machines.size(), 1u);
}

TEST_F(FrameFilesTest, DemoIsAThrowAwayCopyAndCanBeLeft) {
    makeFarm(u"north.boomwright"_s);
    press("Ctrl+0");
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"start.first.demo"_s), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([this] { return files.isThrowAway(window->session().path()); }));
    EXPECT_FALSE(window->session().season().machines.empty());
    EXPECT_EQ(window->findChild<QLabel*>(u"status.demo"_s)->text(), u"Demo data"_s);
    EXPECT_EQ(settings.recentFiles(), QStringList(path(u"north.boomwright"_s)));
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"start.demo.leave"_s), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return window->session().path() == path(u"north.boomwright"_s); }));
}

TEST_F(FrameFilesTest, FirstStartLeadsToTheMachine) {
    auto* begin = window->findChild<QAbstractButton*>(u"start.first.machine"_s);
    ASSERT_TRUE(begin->isVisible());
    QTest::mouseClick(begin, Qt::LeftButton);
    EXPECT_EQ(window->currentPageId(), u"machine"_s);
}

TEST_F(FrameFilesTest, StartPagePromisesOnlyWhatThereIs) {
    EXPECT_TRUE(window->findChild<QAbstractButton*>(u"start.season.first"_s));
    EXPECT_FALSE(window->findChild<QAbstractButton*>(u"start.nozzles"_s));
    EXPECT_FALSE(window->findChild<QAbstractButton*>(u"start.speed_window"_s));
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"start.call.new.first"_s),
                      Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->currentPageId() == u"fault_finder"_s; }));
    EXPECT_EQ(page()->calls, 1);
}

}  // namespace
}  // namespace bw
