// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/main_window.h"

#include <QDialog>
#include <QLabel>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>

#include "tests/ui/shell/frame_fixture.h"
#include "ui/kit/messages.h"
#include "ui/shell/rail.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::CountingPage;
using test::FrameTest;

QString textOf(const QWidget& window, const QString& name) {
    const auto* label = window.findChild<QLabel*>(name);
    return label && !label->isHidden() ? label->text() : QString();
}

TEST_F(FrameTest, KeysWalkThePages) {
    EXPECT_EQ(window->currentPageId(), u"start"_s);
    press("Ctrl+3");
    EXPECT_EQ(window->currentPageId(), u"season"_s);
    EXPECT_EQ(textOf(*window, u"header.title"_s), u"SEASON"_s);
    EXPECT_EQ(textOf(*window, u"status.hint"_s), u"hint of season"_s);
    press("Ctrl+1");
    EXPECT_EQ(window->currentPageId(), u"machine"_s);
    press("Ctrl+5");
    EXPECT_EQ(window->currentPageId(), u"machine"_s) << "a page that is not there has no key";
}

TEST_F(FrameTest, RailIsWalkedByArrowsAndTheMouse) {
    auto* item = window->findChild<QAbstractButton*>(u"rail.machine"_s);
    QTest::mouseClick(item, Qt::LeftButton);
    EXPECT_EQ(window->currentPageId(), u"machine"_s);
    item->setFocus();
    QTest::keyClick(item, Qt::Key_Down);
    EXPECT_EQ(window->currentPageId(), u"season"_s);
    EXPECT_FALSE(window->findChild<QAbstractButton*>(u"rail.cause_effect"_s))
        << "absent, not stubbed";
}

TEST_F(FrameTest, NewCallKeyReachesTheFinderFromAnywhere) {
    press("F9");
    ASSERT_EQ(window->currentPageId(), u"fault_finder"_s);
    EXPECT_EQ(page()->calls, 1);
    QTest::mouseClick(window->findChild<QAbstractButton*>(u"frame.newCall"_s), Qt::LeftButton);
    EXPECT_EQ(page()->calls, 2);
}

TEST_F(FrameTest, PageKeysWorkOnlyWhileThePageIsInFront) {
    press("Ctrl+1");
    CountingPage* machine = page();
    press("Ins");
    EXPECT_EQ(machine->acts, 1);
    press("Ctrl+3");
    press("Ins");
    EXPECT_EQ(machine->acts, 1);
    EXPECT_EQ(page()->acts, 1);
}

TEST_F(FrameTest, HiddenPagesRecomputeOnlyWhenShown) {
    press("Ctrl+1");
    CountingPage* machine = page();
    const int before = machine->refreshes;
    press("Ctrl+3");
    Q_EMIT window->session().seasonChanged();
    EXPECT_EQ(machine->refreshes, before);
    press("Ctrl+1");
    EXPECT_EQ(machine->refreshes, before + 1);
    Q_EMIT window->session().seasonChanged();
    EXPECT_EQ(machine->refreshes, before + 2);
}

TEST_F(FrameTest, NoTwoCommandsShareAKeyOnAnyPage) {
    for (const QString& id : window->pageIds()) {
        window->showPage(id);
        EXPECT_EQ(keyConflicts(window->commands()), QStringList()) << id.toStdString();
    }
    QAction one, two;
    one.setShortcut(QKeySequence(u"F9"_s));
    two.setShortcut(QKeySequence(u"F9"_s));
    EXPECT_EQ(keyConflicts({&one, &two}).size(), 1) << "the check itself sees one";
}

TEST_F(FrameTest, EveryCommandHasWordsAndStandsInAMenuOnce) {
    QStringList seen;
    for (const QAction* top : window->menuBar()->actions()) {
        for (const QAction* action : top->menu()->actions()) {
            if (!action->objectName().isEmpty()) seen.append(action->objectName());
        }
    }
    for (const QAction* action : window->actions().all()) {
        EXPECT_FALSE(action->text().isEmpty());
        EXPECT_EQ(seen.count(action->objectName()), 1) << action->objectName().toStdString();
    }
}

TEST_F(FrameTest, FigureBeingTypedIsCommittedBeforeThePageGoes) {
    press("Ctrl+1");
    CountingPage* machine = page();
    int commits = 0;
    QObject::connect(machine->field, &QuantityEdit::committed, machine, [&commits] { ++commits; });
    QTest::mouseClick(machine->field->line(), Qt::LeftButton);
    QTest::keyClicks(machine->field->line(), u"12"_s);
    QTest::keyClick(machine->field->line(), Qt::Key_3, Qt::ControlModifier);
    EXPECT_EQ(window->currentPageId(), u"season"_s);
    EXPECT_EQ(commits, 1);
}

TEST_F(FrameTest, RailFoldsByKeyAndStaysSo) {
    auto* rail = window->findChild<Rail*>();
    window->resize(1280, 720);
    ASSERT_FALSE(rail->isFolded());
    press("Ctrl+B");
    EXPECT_TRUE(rail->isFolded());
    EXPECT_LT(rail->width(), 60);
    press("Ctrl+B");
    EXPECT_FALSE(rail->isFolded());
    window->resize(1000, 700);
    EXPECT_TRUE(QTest::qWaitFor([rail] { return rail->isFolded(); })) << "narrow windows fold too";
}

TEST_F(FrameTest, LookChangesWithoutRestart) {
    press("Ctrl+1");
    const int before = page()->refreshes;
    window->actions().find(u"view.dark"_s)->trigger();
    EXPECT_EQ(theme().look(), Look::Dark);
    EXPECT_GT(page()->refreshes, before);
    EXPECT_EQ(settings.theme(), ThemeChoice::Dark);
    window->actions().find(u"view.light"_s)->trigger();
    EXPECT_EQ(theme().look(), Look::Light);
}

TEST_F(FrameTest, NoticesStayUntilDismissed) {
    window->notify(u"First"_s);
    window->notify(u"Second"_s, true);
    EXPECT_EQ(window->notices().texts(), QStringList({u"Second"_s, u"First"_s}));
    press("Ctrl+3");
    EXPECT_EQ(window->notices().texts().size(), 2);
    auto* dismiss = window->notices().findChild<QAbstractButton*>();
    QTest::mouseClick(dismiss, Qt::LeftButton);
    EXPECT_EQ(window->notices().texts().size(), 1);
}

TEST_F(FrameTest, KeysAndAboutOpenAndSayWhatTheyMust) {
    press("Ctrl+F1");
    auto* keys = window->findChild<QDialog*>(u"help.keys"_s);
    ASSERT_TRUE(keys);
    EXPECT_TRUE(keys->isVisible());
    keys->accept();
    window->actions().find(u"help.about"_s)->trigger();
    auto* about = window->findChild<QDialog*>(u"help.about"_s);
    ASSERT_TRUE(about);
    QString words;
    for (const auto* label : about->findChildren<QLabel*>()) words += label->text();
    EXPECT_TRUE(words.contains(u"version 3 or later"_s));
    EXPECT_TRUE(words.contains(u"permits nothing"_s));
    EXPECT_TRUE(words.contains(u"first-aid"_s)) << words.toStdString();
    about->accept();
}

TEST_F(FrameTest, WindowIsPutBackOntoAScreenThatExists) {
    window->setGeometry(-9000, -9000, 1100, 700);
    window->close();
    MainWindow again(FrameServices{files, settings, pages()}, files.openUnkept().value());
    const QRect screen = QGuiApplication::primaryScreen()->availableGeometry();
    EXPECT_TRUE(screen.intersects(again.geometry()));
}

}  // namespace
}  // namespace bw
