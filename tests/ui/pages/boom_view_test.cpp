// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/boom_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractScrollArea>
#include <QApplication>
#include <QClipboard>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "core/store/farm_file.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/prompts.h"
#include "ui/shell/main_window.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;
using testing::HasSubstr;
using testing::Not;

/// The fourth view of the speed window on the demo file: the first machine is a 60-nozzle boom fed
/// at nozzles 15 and 46.
class BoomViewTest : public testing::Test {
  protected:
    BoomViewTest() : settings(folder.filePath(u"settings.ini"_s)), files(folder.path(), settings) {
        usePrompts(&script);
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(files.openDemo()).value());
        window->resize(1280, 720);
        window->show();
        QApplication::setActiveWindow(window.get());
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
        press(Qt::Key_4, Qt::ControlModifier);
        press(Qt::Key_4, Qt::AltModifier);
    }
    ~BoomViewTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }
    static void settle() {
        for (int i = 0; i < 4; ++i) QApplication::processEvents();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : window.get(),
                        key, modifiers);
        settle();
    }
    template <class W = QWidget>
    W* find(const char* name) const {
        W* found = window->findChild<W*>(QString::fromLatin1(name));
        EXPECT_TRUE(found && found->isVisible()) << name;
        return found;
    }
    std::string label(const char* name) const { return find<QLabel>(name)->text().toStdString(); }
    void click(const char* name) {
        QTest::mouseClick(find(name), Qt::LeftButton);
        settle();
    }
    void type(const char* name, const QString& text) {
        auto* line = find<QLineEdit>(name);
        QTest::mouseClick(line, Qt::LeftButton);
        line->selectAll();
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
        settle();
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

TEST_F(BoomViewTest, EvennessAndTheNozzleInHandByKeysAndMouse) {
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("the pressure drops by"));
    EXPECT_THAT(label("speedWindow.boom.text"), HasSubstr("spread between nozzles (CV)"));
    auto* chart = find<ChartPanel>("speedWindow.boom.chart");
    EXPECT_EQ(chart->data().curves.at(0).points.size(), 60U);
    QWidget* ground = chart->findChild<QAbstractScrollArea*>()->viewport();
    QTest::mouseClick(ground, Qt::LeftButton, {}, chart->map().point({15, 100}).toPoint());
    settle();
    EXPECT_THAT(label("speedWindow.boom.reading"), HasSubstr("Nozzle 15, section 2:"));
    EXPECT_THAT(label("speedWindow.boom.reading"), HasSubstr("100.0 %"));  // a feed
    press(Qt::Key_Right);
    EXPECT_THAT(label("speedWindow.boom.reading"), HasSubstr("Nozzle 16, section 2:"));
    press(Qt::Key_End);
    EXPECT_THAT(label("speedWindow.boom.reading"), HasSubstr("Nozzle 60, section 5:"));
}

TEST_F(BoomViewTest, ATurnSaysWhatTheEndsGet) {
    click("speedWindow.boom.turn");
    type("speedWindow.boom.radius", u"100 ft"_s);
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("In a turn of 100 ft"));
    EXPECT_THAT(label("speedWindow.boom.text"), HasSubstr("The mean over the ground swept stays"));
    EXPECT_THAT(label("speedWindow.boom.text"), HasSubstr("more product on each acre"));
    EXPECT_THAT(label("speedWindow.boom.text"), HasSubstr("less product"));
    type("speedWindow.boom.radius", u"30 ft"_s);
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("run backward"));
    EXPECT_THAT(label("speedWindow.boom.title"), Not(HasSubstr("inf")));
    click("speedWindow.boom.radius3");
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("In a turn of 200 ft"));
}

TEST_F(BoomViewTest, ASlopeAndItsTable) {
    click("speedWindow.boom.slope");
    type("speedWindow.boom.slopeField", u"15"_s);
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("Across a slope of 15 %"));
    click("speedWindow.tools.table");
    auto* table = find<QTableView>("speedWindow.boom.table");
    ASSERT_EQ(table->model()->rowCount(), 60);
    const auto part = [&](int row) { return table->model()->index(row, 5).data().toDouble(); };
    EXPECT_GT(part(0), 100.0);  // the lower end
    EXPECT_LT(part(59), 100.0);
    press(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    const auto copied = QApplication::clipboard()->text().toStdString();
    EXPECT_THAT(copied, HasSubstr("Across a slope of 15 %"));
    EXPECT_THAT(copied, HasSubstr("\t"));
}

TEST_F(BoomViewTest, TheSpeedTypedHereIsThatOfThePage) {
    type("speedWindow.boom.speed", u"12 mph"_s);
    press(Qt::Key_1, Qt::AltModifier);
    EXPECT_EQ(label("speedWindow.cursor.speed"), "12");
}

TEST_F(BoomViewTest, AnUnknownPipeIsNotCheckedAndLeadsToTheMachine) {
    press(Qt::Key_1, Qt::ControlModifier);
    auto* line = find<QLineEdit>("machine.boom_pipe.feeds");
    line->selectAll();
    QTest::keyClick(line, Qt::Key_Delete);
    QTest::keyClick(line, Qt::Key_Return);
    press(Qt::Key_4, Qt::ControlModifier);
    EXPECT_THAT(label("speedWindow.boom.title"),
                HasSubstr("Not checked: how even the boom sprays. Where the boom pipe is fed"));
    click("speedWindow.boom.mend");
    ASSERT_EQ(window->currentPageId(), u"machine"_s);
    type("machine.boom_pipe.feeds", u"15 and 46"_s);
    press(Qt::Key_4, Qt::ControlModifier);
    EXPECT_THAT(label("speedWindow.boom.title"), HasSubstr("the pressure drops by"));
}

}  // namespace
}  // namespace bw::test
