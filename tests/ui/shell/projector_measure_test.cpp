// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes and contrasts of the projector view, measured on the picture; and that no name is on it.
#include <QLabel>

#include "core/model/case_record.h"
#include "tests/ui/shell/projector_fixture.h"
#include "ui/kit/chart_panel.h"
#include "ui/undo/farm_session.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;
using test::ProjectorTest;
using test::SeenText;

// House rule of the projector view: at 720 lines read-outs and the sentence at least 40 px, labels
// at least 24 px, contrast at least 7 : 1 (WCAG 2.1, 1.4.6, enhanced contrast). A px of type is the
// em; half a pixel at each edge of a glyph is lost to the raster.
constexpr double kLabel = 24, kSentence = 40, kReadOut = 40, kContrast = 7.0;
constexpr double kRaster = 1.0;
// On the colours that ISO 10625 and the droplet classes prescribe black or white is as good as it
// gets.
constexpr double kOnCodes = 4.5;

bool isCodeColor(const QColor& ground) {
    for (const auto& [category, name] : ChoiceNames<DropletCategory>::names) {
        if (dropletColor(category).rgb() == ground.rgb()) return true;
    }
    for (const char* code : {"01", "015", "02", "025", "03", "035", "04", "05", "06", "08", "10"}) {
        const auto fill = nozzleColor(QString::fromLatin1(code));
        if (fill && fill->rgb() == ground.rgb()) return true;
    }
    return false;
}

class ProjectorMeasureTest : public ProjectorTest, public testing::WithParamInterface<QSize> {
  protected:
    void SetUp() override {
        showPage(4);
        key(Qt::Key_F11);
        window->resize(GetParam());
        settle();
        ASSERT_EQ(window->size(), GetParam());
        ASSERT_EQ(window->grab().size(), GetParam());
    }
    /// Every text that anything paints: type and contrast with what lies under it.
    void expectReadable(const char* what) {
        const QImage seen = picture();
        const auto texts = test::seenTexts(*window);
        EXPECT_GT(texts.size(), 5U) << what;
        for (const SeenText& text : texts) {
            const QRect box = text.box.toAlignedRect() & seen.rect();
            if (box.isEmpty()) continue;
            const QColor ground = test::groundOf(seen, box);
            const std::string which = what + std::string(": ") + text.text.toStdString();
            EXPECT_GE(text.em, kLabel) << which;
            EXPECT_GE(contrast(text.ink, ground), isCodeColor(ground) ? kOnCodes : kContrast)
                << which << " " << text.ink.name().toStdString() << " on "
                << ground.name().toStdString();
            EXPECT_TRUE(seen.rect().contains(text.box.center().toPoint())) << which;
        }
        expectLabelsMeasure(what, seen);
    }
    /// Labels by their glyphs on the picture.
    void expectLabelsMeasure(const char* what, const QImage& seen) {
        int measured = 0;
        for (const QLabel* label : window->findChildren<QLabel*>()) {
            const QRect box = test::placeOf(*label, *window);
            if (!label->isVisible() || label->text().isEmpty() || !seen.rect().contains(box) ||
                label->visibleRegion().boundingRect() != label->rect())
                continue;
            ++measured;
            const std::string which = what + std::string(": ") + label->text().toStdString();
            EXPECT_GE(test::emOnPicture(*label, seen, *window), kLabel - kRaster) << which;
            EXPECT_GE(test::inkOf(seen, box).contrast, kContrast) << which;
        }
        EXPECT_GT(measured, 0) << what;
    }
    double glyphs(const char* name) {
        const QImage seen = picture();
        const auto* found = find<QLabel>(name);
        EXPECT_TRUE(found) << name;
        return found ? test::inkOf(seen, test::placeOf(*found, *window)).glyphs : 0.0;
    }
};

TEST_P(ProjectorMeasureTest, SpeedWindowReadsFromTheBackRow) {
    for (const char* view : {"1", "2", "3"}) {
        type(view);
        expectReadable((std::string("view ") + view).c_str());
        const auto* verdict = find<QLabel>("speedWindow.wall.verdict");
        ASSERT_TRUE(verdict);
        EXPECT_GE(test::emOnPicture(*verdict, picture(), *window), kSentence - kRaster);
    }
    type("1");
    for (const char* figure :
         {"speedWindow.wall.speed", "speedWindow.wall.pressure", "speedWindow.wall.rate"}) {
        EXPECT_GE(glyphs(figure), kReadOut) << figure << ": its digits alone, without any air";
        RecordProperty(figure, static_cast<int>(glyphs(figure)));
    }
    for (const char* unit : {"speedWindow.wall.speedUnit", "speedWindow.wall.pressureUnit"})
        EXPECT_GE(glyphs(unit), 0.7 * kLabel) << unit << ": its capitals' height";
}

TEST_P(ProjectorMeasureTest, TicksOfTheChartReadFromTheBackRow) {
    type("1");
    const QImage seen = picture();
    const auto* chart = find<ChartPanel>("speedWindow.wall.pressureChart");
    ASSERT_TRUE(chart);
    const QRectF plot = chart->map().plot().translated(test::placeOf(*chart, *window).topLeft());
    // The row of figures under the axis, without the ends of its strokes.
    const QRect below(static_cast<int>(plot.left()) - 20, static_cast<int>(plot.bottom()) + 14,
                      static_cast<int>(plot.width()) + 20, 34);
    const auto ink = test::inkOf(seen, below);
    EXPECT_GE(ink.glyphs, 0.7 * kLabel) << "digits are seven tenths of an em";
    EXPECT_GE(ink.contrast, kContrast);
}

TEST_P(ProjectorMeasureTest, EveryOtherPageReadsFromTheBackRow) {
    for (const int page : {0, 1, 2, 3}) {
        showPage(page);
        expectReadable((std::string("page ") + std::to_string(page)).c_str());
    }
}

TEST_P(ProjectorMeasureTest, CallReadsFromTheBackRow) {
    key(Qt::Key_F9);
    const char* answers[] = {"1", "1", "2", "1", "1", "1", "1"};
    for (const char* answer : answers) {
        expectReadable(("call " + label("finder.card.question")).c_str());
        EXPECT_GE(test::emOnPicture(*find<QLabel>("finder.card.question"), picture(), *window),
                  kSentence - kRaster);
        type(answer);
    }
    expectReadable("numbers");
    for (int i = 0; i < 6; ++i) key(Qt::Key_Return);
    expectReadable("check");
    key(Qt::Key_B);
    expectReadable("bars");
}

INSTANTIATE_TEST_SUITE_P(Sizes, ProjectorMeasureTest,
                         testing::Values(QSize(1280, 720), QSize(1024, 768)), [](const auto& size) {
                             return std::to_string(size.param.width()) + "x" +
                                    std::to_string(size.param.height());
                         });

/// Names of customers and their places, of who took a call, and notes, wherever the file has them
/// (all invented).
class NoNamesTest : public ProjectorTest {
  protected:
    void SetUp() override {
        FarmSession& session = window->session();
        Customer customer;
        customer.name = "Quendelhof Brandt";
        customer.place = "Quendelbach";
        customer.phone = "0555 Quendel";
        customer.notes = "Quendel pays late";
        const auto id = session.addCustomer(customer, u"customer"_s);
        ASSERT_TRUE(id);
        const auto machines = session.season().machines;
        for (const auto& stored : machines) {
            Machine machine = stored.machine;
            machine.notes = "Quendel's dents";
            ASSERT_TRUE(session.editMachine(stored.id, machine, u"notes"_s));
            ASSERT_TRUE(session.setMachineCustomer(stored.id, id.value(), u"customer"_s));
        }
        const auto cases = session.cases();
        for (const auto& stored : cases) {
            CaseRecord record = stored.record;
            record.notes = "Quendel was cross";
            record.who = "Quendel junior";
            record.customerId = id.value();
            ASSERT_TRUE(session.saveCase(stored.id, record));
        }
    }
    void expectNoName(const std::string& where) {
        settle();
        const QString seen = test::allText(*window) + window->windowTitle();
        EXPECT_FALSE(seen.contains(u"uendel"_s, Qt::CaseInsensitive))
            << where << ": " << seen.toStdString();
        EXPECT_GT(seen.size(), 40) << where;
        for (const QLabel* label : window->findChildren<QLabel*>())
            EXPECT_FALSE(label->isVisible() && label->text().contains(u"uendel"_s)) << where;
    }
};

TEST_F(NoNamesTest, ProbeSeesNamesAtTheDesk) {
    showPage(1);
    EXPECT_TRUE(test::allText(*window).contains(u"Quendelhof"_s))
        << "else the others prove nothing";
}

TEST_F(NoNamesTest, NoneOnTheWall) {
    key(Qt::Key_F11);
    for (const int page : {0, 1, 2, 3, 4, 6}) {
        showPage(page);
        expectNoName("page " + std::to_string(page));
    }
    showPage(4);
    for (const char* view : {"1", "2", "3"}) {
        type(view);
        expectNoName(std::string("speed window ") + view);
    }
    key(Qt::Key_F1, Qt::ControlModifier);
    const auto dialogs = window->findChildren<QWidget*>(u"help.keys"_s);
    ASSERT_EQ(dialogs.size(), 1);
    EXPECT_FALSE(test::allText(*dialogs.front()).contains(u"uendel"_s));
}

TEST_F(NoNamesTest, MachinesAndJobsGoByNumbersInACall) {
    FarmSession& session = window->session();
    Machine machine = session.season().machines.front().machine;
    machine.name = "Quendel's own";
    ASSERT_TRUE(session.editMachine(session.season().machines.front().id, machine, u"name"_s));
    for (const auto& stored : session.jobsOf(session.season().machines.front().id)) {
        Job job = stored.job;
        job.name = "Quendel's field";
        ASSERT_TRUE(session.editJob(stored.id, job, u"name"_s));
    }
    key(Qt::Key_F11);
    showPage(4);
    expectNoName("speed window");
    key(Qt::Key_F9);
    for (const char* answer : {"1", "1", "2", "1", "1", "1", "1"}) {
        expectNoName("call " + label("finder.card.question"));
        type(answer);
    }
    expectNoName("numbers");
    for (int i = 0; i < 6; ++i) key(Qt::Key_Return);
    expectNoName("check");
}

/// A case that is done, with its notes.
TEST_F(NoNamesTest, NotesOfACaseStayAtTheDesk) {
    showPage(6);
    key(Qt::Key_Return);
    for (int i = 0; i < 5 && !find("finder.end.title"); ++i) key(Qt::Key_Down), key(Qt::Key_Return);
    ASSERT_TRUE(find("finder.end.title"));
    key(Qt::Key_F11);
    ASSERT_TRUE(find("finder.end.title"));
    expectNoName("end of a case");
}

}  // namespace
}  // namespace bw
