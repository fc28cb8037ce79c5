// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/speed_window_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include "app/farm_files.h"
#include "app/page_list.h"
#include "core/store/farm_file.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/evidence.h"
#include "ui/kit/prompts.h"
#include "ui/kit/span_bar.h"
#include "ui/shell/main_window.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;
using testing::HasSubstr;
using testing::Not;

std::string plain(const QString& text) {
    return text.toStdString();
}

/// The program's window on a file, driven by keys and mouse on what is visible.
class SpeedWindowTest : public testing::Test {
  protected:
    void open(OpenedFarm farm) {
        window = std::make_unique<MainWindow>(FrameServices{files, settings, makePageList()},
                                              std::move(farm).value());
        window->resize(1280, 720);
        window->show();
        activate();
        QTest::keyClick(window.get(), Qt::Key_4, Qt::ControlModifier);
        ASSERT_EQ(window->currentPageId(), u"speed_window"_s);
        settle();
    }
    void openDemo() { open(files.openDemo()); }
    SpeedWindowTest()
        : settings(folder.filePath(u"settings.ini"_s)), files(folder.path(), settings) {
        usePrompts(&script);
    }
    ~SpeedWindowTest() override {
        window.reset();
        usePrompts(nullptr);
        EXPECT_EQ(script.unexpected(), 0);
    }

    /// What a window manager does when a list that dropped down has closed.
    void activate() {
        QApplication::setActiveWindow(window.get());
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    static void settle() {
        for (int i = 0; i < 4; ++i) QApplication::processEvents();
    }
    template <class W = QWidget>
    W* find(const char* name) const {
        W* found = window->findChild<W*>(QString::fromLatin1(name));
        EXPECT_TRUE(found) << name;
        return found;
    }
    /// A visible label's text.
    std::string label(const char* name) const {
        const auto* found = find<QLabel>(name);
        EXPECT_TRUE(found->isVisible()) << name;
        return plain(found->text());
    }
    /// Opens a combo box with the mouse and walks to the item that starts with `text` by keys.
    void choose(const char* name, const QString& text) {
        auto* box = find<QComboBox>(name);
        QTest::mouseClick(box, Qt::LeftButton);
        ASSERT_TRUE(QTest::qWaitFor([box] { return box->view()->isVisible(); }));
        QTest::keyClick(box->view(), Qt::Key_Home);
        for (int i = 0; i < box->count(); ++i) {
            if (box->view()->currentIndex().data().toString().startsWith(text)) break;
            QTest::keyClick(box->view(), Qt::Key_Down);
        }
        ASSERT_TRUE(box->view()->currentIndex().data().toString().startsWith(text)) << plain(text);
        QTest::keyClick(box->view(), Qt::Key_Return);
        settle();
        activate();
        ASSERT_TRUE(box->currentText().startsWith(text)) << plain(box->currentText());
    }
    /// The demo's flag-leaf job on the trailed machine with its low-drift 03.
    void chooseFlagLeaf() {
        openDemo();
        choose("speedWindow.header.machine", u"Demo trailed 28 m"_s);
        choose("speedWindow.header.job", u"Flag-leaf fungicide"_s);
        choose("speedWindow.header.nozzle", u"Demo low-drift fan 03"_s);
    }
    /// All that the evidence column says.
    std::string evidence() const {
        QStringList all;
        for (const auto* words : find("speedWindow.evidence")->findChildren<QLabel*>()) {
            QString text = words->text();
            text.replace(u"&#39;"_s, u"'"_s).replace(u"<br/>"_s, u" "_s);
            static const QRegularExpression tags(u"<[^>]*>"_s);
            all.append(text.remove(tags));
        }
        return plain(all.join(u'\n'));
    }
    std::string verdict() const {
        return plain(find<EvidenceColumn>("speedWindow.evidence")->verdict()->title());
    }
    ChartPanel* chart(const char* name = "speedWindow.chart.pressure") const {
        return find<ChartPanel>(name);
    }
    static QWidget* ground(ChartPanel* panel) {
        return panel->findChild<QAbstractScrollArea*>()->viewport();
    }
    static QPoint at(ChartPanel* panel, double x, double y) {
        return panel->map().point({x, y}).toPoint();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : window.get(),
                        key, modifiers);
        settle();
    }

    QTemporaryDir folder;
    Settings settings;
    FarmFiles files;
    ScriptedPrompts script;
    std::unique_ptr<MainWindow> window;
};

// Figures: the independent prototype of the same equations gave 6.9 and 13.3 km/h for 150 L/ha. The
// demo job runs from 140 to 160 L/ha: 6.9·150/140 = 7.4, 13.3·150/160 = 12.5.
TEST_F(SpeedWindowTest, MachineJobAndNozzleChosenByMouseAndKeysGiveTheVerdict) {
    chooseFlagLeaf();
    EXPECT_EQ(verdict(), "Holds 140 to 160 L/ha from 7.4 to 12.5 km/h");
    const auto said = evidence();
    EXPECT_THAT(said, HasSubstr("The job's 8 to 12 km/h lies inside."));
    EXPECT_THAT(said, HasSubstr("droplets too coarse: VC, under 1.6 bar at the nozzle"));
    EXPECT_THAT(said, HasSubstr("the nozzle's highest pressure, 6 bar"));
    EXPECT_THAT(said, HasSubstr("Nothing left open."));
    EXPECT_THAT(said, HasSubstr("Floor: recommended 1.5 bar, set 1.6 bar"));
    EXPECT_THAT(said, HasSubstr("Outside: 178 L/ha at 5 km/h"));
    EXPECT_THAT(said, HasSubstr("19 % more product on each hectare. The label's highest dose"));
    EXPECT_THAT(said, Not(HasSubstr("Restrictor valve")));  // none fitted on this machine
    EXPECT_EQ(plain(find<SpanBar>("speedWindow.span")->span().lowFigure), "7.4");
    EXPECT_THAT(plain(find("speedWindow.caution")->accessibleName()),
                HasSubstr("not a safe driving speed"));
}

TEST_F(SpeedWindowTest, TheCursorIsDraggedByMouseAndMovedByKeysWithoutNewWindows) {
    chooseFlagLeaf();
    EXPECT_EQ(label("speedWindow.cursor.speed"), "10");
    EXPECT_EQ(label("speedWindow.cursor.sensor"), "3.82");
    EXPECT_EQ(label("speedWindow.cursor.boom"), "70");  // 150 L/ha · 10 km/h · 28 m / 600
    ChartPanel* panel = chart();
    const auto* curves = panel->data().curves.data();
    const auto* row = find("speedWindow.evidence")->findChildren<QLabel*>().last();
    QTest::mousePress(ground(panel), Qt::LeftButton, {}, at(panel, 10, 3));
    QTest::mouseMove(ground(panel), at(panel, 8, 3));
    QTest::mouseMove(ground(panel), at(panel, 5, 3));
    QTest::mouseRelease(ground(panel), Qt::LeftButton, {}, at(panel, 5, 3));
    settle();
    EXPECT_EQ(label("speedWindow.cursor.speed"), "5");
    EXPECT_EQ(label("speedWindow.cursor.sensor"), "1.6");  // pinned on the floor
    EXPECT_EQ(label("speedWindow.cursor.rate"), "178");
    EXPECT_THAT(label("speedWindow.cursor.words"), HasSubstr("This is 19 % more spray"));
    EXPECT_TRUE(chart()->hasFocus() || ground(panel)->parentWidget()->hasFocus());
    press(Qt::Key_Right);
    EXPECT_EQ(label("speedWindow.cursor.speed"), "5.1");
    press(Qt::Key_Left);
    press(Qt::Key_Left);
    EXPECT_EQ(label("speedWindow.cursor.speed"), "4.9");
    press(Qt::Key_End);
    EXPECT_THAT(label("speedWindow.cursor.words"), HasSubstr("less product"));
    EXPECT_EQ(panel->data().curves.data(), curves);
    EXPECT_EQ(find("speedWindow.evidence")->findChildren<QLabel*>().last(), row);
}

/// The floor is tried by dragging its grip, written when it is let go, and one step to undo.
TEST_F(SpeedWindowTest, TheFloorIsDraggedOnTheChartAndMovedByKeys) {
    chooseFlagLeaf();
    const auto floor = [this] {
        const auto& session = window->session();
        return in(session.machine(session.currentMachine())->limits.pressureFloor->value,
                  Unit::Bar);
    };
    ASSERT_DOUBLE_EQ(floor(), 1.6);
    auto* panel = chart();
    const auto level = [&](double y) {
        return QPoint(int(panel->map().plot().left()), at(panel, 8, y).y());
    };
    QTest::mousePress(ground(panel), Qt::LeftButton, {}, level(1.6));
    QTest::mouseMove(ground(panel), level(3.5));
    settle();
    EXPECT_DOUBLE_EQ(floor(), 1.6) << "only tried";
    EXPECT_TRUE(QTest::qWaitFor([this] {
        return evidence().find("the controller's pressure floor, 3.") != std::string::npos;
    }));
    QTest::mouseRelease(ground(panel), Qt::LeftButton, {}, level(3.5));
    settle();
    EXPECT_NEAR(floor(), 3.5, 0.11);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(floor(), 1.6);
    auto* view = panel->findChild<QAbstractScrollArea*>();
    QTest::mouseClick(ground(panel), Qt::LeftButton, {}, at(panel, 9, 5));
    QTest::keyClick(view, Qt::Key_Up);
    QTest::keyClick(view, Qt::Key_Up);
    EXPECT_DOUBLE_EQ(floor(), 1.6);
    QTest::keyClick(view, Qt::Key_Escape);
    EXPECT_THAT(evidence(), HasSubstr("Floor: recommended 1.5 bar, set 1.6 bar"));
    QTest::keyClick(view, Qt::Key_Down);
    QTest::keyClick(view, Qt::Key_Return);
    settle();
    EXPECT_NEAR(floor(), 1.5, 1e-9);
}

/// In the small window, where the page is full to the brim, the chart stands still under the hand:
/// the floor follows the mouse and is assumed afterwards, however it was known before.
TEST_F(SpeedWindowTest, NothingMovesUnderTheHandInTheSmallWindow) {
    openDemo();
    choose("speedWindow.header.job", u"Stubble weeds"_s);
    choose("speedWindow.header.nozzle", u"Demo low-drift fan 04"_s);
    const auto& session = window->session();
    const auto floor = [&session] {
        return session.machine(session.currentMachine())->limits.pressureFloor.value();
    };
    ASSERT_EQ(floor().origin, Origin::Measured);
    auto* panel = chart();
    const int height = ground(panel)->height();
    const int caution = find("speedWindow.caution")->height();
    const int strip = find("speedWindow.cursor")->height();
    const double from = in(floor().value, Unit::Psi);
    const int left = int(panel->map().plot().left()), start = at(panel, 14, from).y();
    QTest::mousePress(ground(panel), Qt::LeftButton, {}, {left, start});
    const QSignalSpy moves(panel, &ChartPanel::levelMoved);
    double before = from;
    for (int up = 4; up <= 40; up += 4) {
        const double meant = panel->map().valueY(start - up);
        QTest::mouseMove(ground(panel), {left, start - up});
        settle();
        const double tried = moves.isEmpty() ? from : moves.last().first().toDouble();
        EXPECT_GE(tried, before) << up;
        EXPECT_NEAR(tried, meant, 0.51) << up;
        EXPECT_EQ(ground(panel)->height(), height) << up;
        EXPECT_EQ(find("speedWindow.caution")->height(), caution) << up;
        before = tried;
    }
    QTest::mouseRelease(ground(panel), Qt::LeftButton, {}, {left, start - 40});
    settle();
    EXPECT_GT(before, from + 5);
    EXPECT_NEAR(in(floor().value, Unit::Psi), before, 1e-9);
    EXPECT_TRUE(floor().origin == Origin::Assumed && floor().date.empty());
    for (const double speed : {14.0, 22.0, 6.0, 14.0}) {
        QTest::mousePress(ground(panel), Qt::LeftButton, {}, at(panel, speed, 50));
        QTest::mouseRelease(ground(panel), Qt::LeftButton, {}, at(panel, speed, 50));
        settle();
        EXPECT_EQ(ground(panel)->height(), height) << speed;
        EXPECT_EQ(find("speedWindow.cursor")->height(), strip) << speed;
    }
}

TEST_F(SpeedWindowTest, TheThreeViewsShowTheSameModel) {
    chooseFlagLeaf();
    press(Qt::Key_2, Qt::AltModifier);
    ChartPanel* rate = chart("speedWindow.chart.rate");
    ASSERT_TRUE(rate->isVisible());
    QTest::mouseClick(ground(rate), Qt::LeftButton, {}, at(rate, 5, 100));
    settle();
    EXPECT_EQ(label("speedWindow.cursor.rate"), "178");
    press(Qt::Key_3, Qt::AltModifier);
    auto* table = find<QTableView>("speedWindow.table");
    ASSERT_TRUE(table->isVisible());
    const auto cell = [&](int row, int column) {
        return plain(table->model()->index(row, column).data().toString());
    };
    int usual = -1, five = -1;
    for (int r = 0; r < table->model()->rowCount(); ++r) {
        if (cell(r, 0).starts_with("usual")) usual = r;
        if (cell(r, 0) == "5") five = r;
    }
    std::string rows;
    for (int r = 0; r < table->model()->rowCount(); ++r) rows += cell(r, 0) + "|";
    ASSERT_TRUE(usual >= 0 && five >= 0) << rows;
    EXPECT_EQ(cell(usual, 1), "3.82");  // by hand, and what the sensor shows
    EXPECT_EQ(cell(usual, 2), "3.82");
    EXPECT_EQ(cell(five, 1), "1.25");  // would be needed; the floor holds it at 1.6
    EXPECT_EQ(cell(five, 2), "1.6");
    EXPECT_EQ(cell(five, 6), "178");
    EXPECT_THAT(cell(five, 8), HasSubstr("119 %, past the pressure floor"));
    EXPECT_EQ(table->currentIndex().row(), five);  // the cursor went along
    press(Qt::Key_Down);
    EXPECT_EQ(label("speedWindow.cursor.speed"), cell(five + 1, 0));
    press(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_THAT(plain(QApplication::clipboard()->text()), HasSubstr("119 %, past the pressure"));
    press(Qt::Key_1, Qt::AltModifier);
    EXPECT_TRUE(chart()->isVisible());
}

TEST_F(SpeedWindowTest, ACandidateIsTakenInAndPutBackByKeysAndKeptInTheFile) {
    chooseFlagLeaf();
    auto* box = find<QComboBox>("speedWindow.header.nozzle");
    const QString size = u"Size 025 (metric record)"_s;
    EXPECT_LT(box->findText(size), 0);
    press(Qt::Key_Insert);
    auto* search = find<QLineEdit>("speedWindow.candidates.find");
    ASSERT_TRUE(search->isVisible());
    QTest::keyClicks(search, u"size 025 (m"_s);
    QTest::keyClick(search, Qt::Key_Return);
    settle();
    EXPECT_GE(box->findText(size), 0);
    EXPECT_THAT(evidence(), HasSubstr("Size 025 (metric record):"));
    EXPECT_THAT(evidence(), HasSubstr("so it counts as fitting no job yet"));
    EXPECT_THAT(plain(window->session().file().setting(u"speed_window.candidates"_s)),
                HasSubstr("Size 025 (metric record)"));
    QTest::keyClick(search, Qt::Key_Return);
    settle();
    EXPECT_LT(box->findText(size), 0);
    QTest::keyClick(search, Qt::Key_Return);
    QTest::keyClick(search, Qt::Key_Escape);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !search->isVisible(); }));
    activate();
    choose("speedWindow.header.nozzle", size);
    EXPECT_THAT(verdict(), HasSubstr("Would hold"));
    EXPECT_THAT(evidence(), HasSubstr("droplets"));
    EXPECT_THAT(evidence(), HasSubstr("So it counts as fitting no job yet."));
}

TEST_F(SpeedWindowTest, ASecondMachineSpeaksItsOwnUnitsAndShowsItsRestrictorValve) {
    openDemo();
    choose("speedWindow.header.job", u"Wheat rust, flag leaf"_s);
    choose("speedWindow.header.nozzle", u"Demo low-drift fan 04"_s);
    EXPECT_EQ(verdict(), "Holds 12 gal/ac from 8 to 12.8 mph");
    EXPECT_THAT(evidence(), HasSubstr("Restrictor valve: narrowed"));
    EXPECT_THAT(evidence(), HasSubstr("reached at 12.4 mph"));
    EXPECT_EQ(label("speedWindow.cursor.sensorUnit"), "psi");
    EXPECT_EQ(window->session().nozzle(window->session().currentNozzle())->name,
              "Demo low-drift fan 04");
}

TEST_F(SpeedWindowTest, WithoutAMachineThePageSaysWhatComesFirst) {
    open(files.openUnkept());
    EXPECT_THAT(label("speedWindow.empty.text"), HasSubstr("needs a machine first"));
    EXPECT_TRUE(find("speedWindow.empty.demo")->isVisible());
    EXPECT_FALSE(chart()->isVisible());
    QTest::mouseClick(find("speedWindow.empty.demo"), Qt::LeftButton);
    EXPECT_TRUE(QTest::qWaitFor([&] { return !window->session().season().machines.empty(); }));
}

/// A season of one machine and one job, changed before it is opened.
class SpeedWindowOfTest : public SpeedWindowTest {
  protected:
    void openWith(const std::function<void(Machine&, Job&)>& change, bool withNozzle = true) {
        auto demo = files.openDemo();
        const Season season = demo.value()->season();
        Machine machine = season.machines.back().machine;
        Job job = season.jobs.back().job;
        for (const auto& stored : season.jobs) {
            if (stored.job.name == "Flag-leaf fungicide") job = stored.job;
        }
        job.rateLeast.reset();
        job.rateMost.reset();
        change(machine, job);
        auto farm = files.openUnkept();
        const auto id = farm.value()->addMachine(machine, u"machine"_s);
        ASSERT_TRUE(id.isOk());
        ASSERT_TRUE(farm.value()->addJob(*id, job, 0, u"job"_s).isOk());
        for (const auto& stored : season.nozzles) {
            if (withNozzle && stored.nozzle.name == "Demo low-drift fan 03") {
                ASSERT_TRUE(farm.value()->addNozzle(stored.nozzle, u"nozzle"_s).isOk());
            }
        }
        open(std::move(farm));
    }
};

TEST_F(SpeedWindowOfTest, AJobThatCannotBeReckonedIsNamedWithTheWayToMendIt) {
    openWith([](Machine&, Job& job) { job.rate.reset(); });
    EXPECT_THAT(label("speedWindow.empty.text"),
                HasSubstr("Flag-leaf fungicide: The spray rate is missing."));
    EXPECT_TRUE(find("speedWindow.empty.act")->isVisible());
}

TEST_F(SpeedWindowOfTest, FloorTooHighShowsTheWaysOutAndTheirCautions) {
    openWith([](Machine& machine, Job&) {
        machine.limits.pressureFloor->value = make<Pressure>(3, Unit::Bar);
    });
    EXPECT_THAT(evidence(), HasSubstr("Floor too high, nozzle too big, too slow: one finding"));
    EXPECT_THAT(evidence(), HasSubstr("Set the floor at most at 2.5 bar."));
    EXPECT_THAT(evidence(), HasSubstr("Drive at least 8.7 km/h."));
    EXPECT_THAT(evidence(), HasSubstr("size 025"));
    EXPECT_THAT(evidence(), HasSubstr("A rate of at least 164 L/ha"));
    EXPECT_THAT(plain(find("speedWindow.caution")->accessibleName()),
                HasSubstr("Write the old values down."));
}

TEST_F(SpeedWindowOfTest, WithoutOwnNozzlesTheNearestSizesStandIn) {
    openWith([](Machine&, Job&) {}, false);
    auto* box = find<QComboBox>("speedWindow.header.nozzle");
    ASSERT_GT(box->count(), 0);
    EXPECT_THAT(plain(box->currentText()), HasSubstr("metric record"));
    EXPECT_THAT(evidence(), HasSubstr("So it counts as fitting no job yet."));
}

TEST_F(SpeedWindowOfTest, PutBackAllCandidatesAndThePageAsksForOne) {
    openWith([](Machine&, Job&) {});
    press(Qt::Key_Insert);
    auto* list = find<QListWidget>("speedWindow.candidates.list");
    ASSERT_TRUE(list->isVisible());
    ASSERT_EQ(list->item(0)->checkState(), Qt::Checked);
    QTest::keyClick(find("speedWindow.candidates.find"), Qt::Key_Return);
    QTest::keyClick(find("speedWindow.candidates.find"), Qt::Key_Escape);
    settle();
    EXPECT_THAT(label("speedWindow.empty.text"), HasSubstr("Take one in"));
    QTest::mouseClick(find("speedWindow.empty.act"), Qt::LeftButton);
    settle();
    EXPECT_TRUE(find("speedWindow.candidates.find")->isVisible());
    QTest::keyClick(find("speedWindow.candidates.find"), Qt::Key_Escape);
}

TEST_F(SpeedWindowOfTest, ByHandTheTableOfPressuresStandsBeside) {
    openWith([](Machine& machine, Job&) { machine.senses = Sourced<Senses>(Senses::Nothing); });
    EXPECT_THAT(evidence(), HasSubstr("Set by hand, at the boom sensor"));
    EXPECT_THAT(evidence(), HasSubstr("2.59 bar at 8 km/h"));
    EXPECT_THAT(evidence(), HasSubstr("5.32 bar at 12 km/h"));
    EXPECT_THAT(evidence(), HasSubstr("8 km/h gets 188 L/ha"));  // 150 · 10 / 8
}

TEST_F(SpeedWindowOfTest, PulsedNozzlesShowTheirDutyLimitsAndAFlatPressure) {
    openWith([](Machine& machine, Job&) {
        machine.pulsed.pressure = Sourced<Pressure>(make<Pressure>(3, Unit::Bar));
    });
    EXPECT_THAT(evidence(), HasSubstr("Pulsed: the nozzles stand at 3 bar at every speed"));
    EXPECT_THAT(evidence(), HasSubstr("the greatest on-time share"));
    EXPECT_THAT(evidence(), Not(HasSubstr("Floor: recommended")));
    EXPECT_EQ(label("speedWindow.cursor.nozzle"), "3");
    EXPECT_FALSE(label("speedWindow.cursor.onTime").empty());
    // The first view is the share against speed; at twice the speed it is twice as long.
    auto* duty = chart("speedWindow.chart.duty");
    ASSERT_TRUE(duty->isVisible());
    EXPECT_FALSE(chart()->isVisible());
    EXPECT_EQ(find<QAbstractButton>("speedWindow.view.pressure")->text(), u"On-time"_s);
    const auto shareAt = [&](double speed) {
        QTest::mouseClick(ground(duty), Qt::LeftButton, {}, at(duty, speed, 50));
        settle();
        return std::stod(label("speedWindow.cursor.onTime"));
    };
    EXPECT_NEAR(shareAt(7.0), 2 * shareAt(3.5), 1.1);
}

/// Colours of a picture, coarsened.
int coloursOf(const QImage& image) {
    QSet<QRgb> seen;
    for (int y = 0; y < image.height(); y += 2) {
        for (int x = 0; x < image.width(); x += 2) seen.insert(image.pixel(x, y) & 0xF0F0F0);
    }
    return static_cast<int>(seen.size());
}
bool shows(const QImage& image, const QColor& wanted) {
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor c = image.pixelColor(x, y);
            if (std::abs(c.red() - wanted.red()) + std::abs(c.green() - wanted.green()) +
                    std::abs(c.blue() - wanted.blue()) <
                9)
                return true;
        }
    }
    return false;
}

TEST_F(SpeedWindowTest, LightAndDarkPicturesHoldRibbonLimitsAndCursor) {
    chooseFlagLeaf();
    for (const ThemeChoice choice : {ThemeChoice::Light, ThemeChoice::Dark}) {
        theme().setChoice(choice);
        settle();
        const QImage picture = chart()->grab().toImage();
        EXPECT_GT(coloursOf(picture), 20);
        for (const auto category : {DropletCategory::C, DropletCategory::M, DropletCategory::VC})
            EXPECT_TRUE(shows(picture, dropletColor(category))) << choiceName(category);
        EXPECT_TRUE(shows(picture, color(Role::Focus)));
        EXPECT_TRUE(shows(picture, color(Role::LimitTint)));
    }
    theme().setChoice(ThemeChoice::Light);
}

}  // namespace
}  // namespace bw::test
