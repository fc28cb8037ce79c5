// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_painter.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QFile>
#include <QImage>
#include <QPainter>
#include <QTemporaryDir>
#include <csignal>

#include "core/exchange/demo_season.h"
#include "core/report/plan_sheets.h"
#include "core/report/yard_sheets.h"
#include "tests/ui/print/pdf_tools.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_layout.h"

namespace bw::test {
namespace {

using namespace Qt::StringLiterals;
using testing::HasSubstr;

constexpr const char* kLongName =
    "Kräutermischung für die Nacherntebehandlung mit außergewöhnlich langem Namen "
    "Donaudampfschifffahrtsgesellschaftskapitänspatentinhaberverzeichnis żółć Ångström naïve";

ReportContext contextOf(const Machine& machine) {
    return {shippedSentences(), {machine.units, '.'}, "25 Nov 2026", "test.boomwright"};
}

/// Sheets of the demo season's machines.
struct DemoSheets {
    DemoSheets() : demo(demoSeason().value()) {
        for (const auto& stored : demo.season.nozzles) nozzles.push_back(stored.nozzle);
    }
    std::vector<PlannedJob> jobsOf(const StoredMachine& machine) const {
        std::vector<PlannedJob> out;
        for (const auto& stored : demo.season.jobs) {
            if (stored.machine == machine.id)
                out.push_back(plannedJob(machine.machine, stored.job, nozzles));
        }
        return out;
    }
    DemoSeason demo;
    std::vector<Nozzle> nozzles;
};

class SheetPdf : public testing::Test {
  protected:
    void SetUp() override {
        if (!hasPdfTools()) GTEST_SKIP() << "poppler-utils are not installed";
    }
    QString save(const Sheet& sheet, const PageChoice& page) {
        const QString path = folder.filePath(u"sheet.pdf"_s);
        const auto saved = savePdf(sheet, path, page);
        EXPECT_TRUE(saved.isOk());
        return path;
    }
    void expectHolds(const QString& path, const std::string& words) {
        if (words.empty()) return;
        EXPECT_TRUE(packed(paintedTextOf(path)).contains(packed(qs(words))))
            << words << "\n in \n"
            << paintedTextOf(path).toStdString();
    }
    void expectFontsEmbedded(const QString& path) {
        int count = 0;
        EXPECT_EQ(fontsNotEmbedded(path, &count), QStringList());
        EXPECT_GE(count, 2);  // plain and bold
    }
    QTemporaryDir folder;
    DemoSheets sheets;
};

std::vector<PageChoice> everyPage() {
    std::vector<PageChoice> out;
    for (const Paper paper : kPapers) {
        for (const bool isLandscape : {false, true}) out.push_back({paper, isLandscape});
    }
    return out;
}

TEST_F(SheetPdf, AWholeCatchTestStandsOnOnePage) {
    const auto& yard = sheets.demo.yard;
    const auto whole = std::find_if(yard.begin(), yard.end(), [](const auto& stored) {
        return stored.record.catchTest.scope == CatchScope::All;
    });
    ASSERT_NE(whole, yard.end());
    const Machine& machine = sheets.demo.season.machines[1].machine;
    YardRecord blank = whole->record;
    blank.catchTest.catches.clear();
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        const QString path = save(catchSheet(whole->record, machine, contextOf(machine)), {paper});
        EXPECT_EQ(pdfInfo(path, u"Pages"_s), u"1"_s);
        expectHolds(path, "2 to replace");
        expectHolds(path, "+12.0 % R");
        expectHolds(path, "Not a spray record");
        EXPECT_EQ(
            pdfInfo(save(catchSheet(blank, machine, contextOf(machine)), {paper}), u"Pages"_s),
            u"1"_s);
    }
}

TEST_F(SheetPdf, CabCardsHoldEveryFigureOnOnePageAJob) {
    for (const auto& stored : sheets.demo.season.machines) {
        const auto jobs = sheets.jobsOf(stored);
        ASSERT_FALSE(jobs.empty());
        const ReportContext context = contextOf(stored.machine);
        const Sheet sheet = cabCards(stored.machine, jobs, context);
        for (const auto& page : everyPage()) {
            SCOPED_TRACE(paperKey(page.paper).toStdString() + (page.isLandscape ? " across" : ""));
            const QString path = save(sheet, page);
            EXPECT_EQ(pdfInfo(path, u"Pages"_s).toInt(), static_cast<int>(jobs.size()));
            const QString text = packed(textOf(path));
            for (const auto& block : sheet.blocks) {
                const auto* scale = std::get_if<SheetScale>(&block.content);
                if (!scale) continue;
                for (const auto& column : scale->columns) {
                    for (const auto& figure : column.figures)
                        EXPECT_TRUE(text.contains(packed(qs(figure)))) << figure;
                }
            }
            const QString painted = packed(paintedTextOf(path));
            for (const auto& job : jobs) {
                EXPECT_TRUE(painted.contains(packed(qs(job.job.name)))) << job.job.name;
                ASSERT_TRUE(job.model);
                EXPECT_TRUE(painted.contains(packed(qs(job.model->nozzle().name))));
            }
            expectFontsEmbedded(path);
        }
    }
}

TEST_F(SheetPdf, ASingleCardHoldsEveryTextOfIts) {
    const auto& machine = sheets.demo.season.machines.back();
    const auto jobs = sheets.jobsOf(machine);
    const ReportContext context = contextOf(machine.machine);
    for (const auto& job : jobs) {
        ASSERT_TRUE(job.model);
        const Sheet sheet = cabCard(*job.model, context);
        const QString path = save(sheet, {Paper::A5, true});
        for (const auto& block : sheet.blocks) {
            if (const auto* box = std::get_if<SheetCautions>(&block.content)) {
                for (const auto& item : box->items) expectHolds(path, item.text);
            }
            if (const auto* facts = std::get_if<SheetFacts>(&block.content)) {
                for (const auto& fact : facts->facts) {
                    for (const auto& words : {fact.label, fact.value, fact.note})
                        expectHolds(path, words);
                }
            }
        }
        expectHolds(path, sheet.title);
        expectHolds(path, "25 Nov 2026");
        expectHolds(path, "Not a spray record");
        expectHolds(path, "1 of 1");
    }
}

TEST_F(SheetPdf, LongNamesWrapAndNothingOfThemIsLost) {
    auto machine = sheets.demo.season.machines.back().machine;
    machine.name = kLongName;
    Job job = sheets.demo.season.jobs.back().job;
    job.name = kLongName;
    Nozzle nozzle = sheets.nozzles.at(1);
    nozzle.name = kLongName;
    const auto planned = plannedJob(machine, job, {nozzle});
    ASSERT_TRUE(planned.model);
    const ReportContext context = contextOf(machine);
    for (const auto& page : everyPage()) {
        SCOPED_TRACE(paperKey(page.paper).toStdString() + (page.isLandscape ? " across" : ""));
        for (const Sheet& sheet :
             {cabCard(*planned.model, context), machineOverview(machine, {planned}, context)}) {
            const QString path = save(sheet, page);
            expectHolds(path, kLongName);
            expectFontsEmbedded(path);
        }
    }
}

TEST_F(SheetPdf, PagesHaveTheSizeAskedFor) {
    Sheet sheet;
    sheet.title = "T";
    sheet.add(SheetParagraph{"one line", SheetText::Body});
    const std::vector<std::tuple<PageChoice, double, double>> sizes{
        {{Paper::A4, false}, 595.28, 841.89},   {{Paper::A4, true}, 841.89, 595.28},
        {{Paper::Letter, false}, 612, 792},     {{Paper::Letter, true}, 792, 612},
        {{Paper::A5, false}, 419.53, 595.28},   {{Paper::A5, true}, 595.28, 419.53},
        {{Paper::HalfLetter, false}, 396, 612}, {{Paper::HalfLetter, true}, 612, 396}};
    for (const auto& [page, width, height] : sizes) {
        const QString size = pdfInfo(save(sheet, page), u"Page size"_s);
        EXPECT_NEAR(size.section(u' ', 0, 0).toDouble(), width, 1.0) << size.toStdString();
        EXPECT_NEAR(size.section(u' ', 2, 2).toDouble(), height, 1.0) << size.toStdString();
    }
}

/// A long table, under a heading that follows enough text to stand at a page's foot.
Sheet longSheet(int rows, int lines) {
    Sheet sheet;
    sheet.title = "Long";
    for (int i = 0; i < lines; ++i)
        sheet.add(SheetParagraph{"line " + std::to_string(i), SheetText::Body});
    sheet.add(SheetHeading{"Heading of the table"});
    SheetTable table;
    table.columns = {{"Nozzle number", true, 1}, {"Remark", false, 1}};
    for (int i = 1; i <= rows; ++i)
        table.rows.push_back(
            {{"no" + std::to_string(i), "row" + std::to_string(i) + "end"}, false});
    sheet.add(std::move(table));
    return sheet;
}

QStringList pagesOf(const QString& path) {
    QStringList pages = textOf(path).split(u'\f');
    if (!pages.isEmpty() && pages.last().trimmed().isEmpty()) pages.removeLast();
    return pages;
}

TEST_F(SheetPdf, TableHeadsComeAgainAndEveryRowIsThereOnce) {
    const QString path = save(longSheet(150, 3), {Paper::A5, false});
    const QStringList pages = pagesOf(path);
    ASSERT_GT(pages.size(), 2);
    EXPECT_EQ(pages.size(), pdfInfo(path, u"Pages"_s).toInt());
    for (int i = 0; i < pages.size(); ++i) {
        EXPECT_TRUE(pages[i].contains(u"Remark"_s)) << i;
        EXPECT_TRUE(pages[i].contains(u"%1 of %2"_s.arg(i + 1).arg(pages.size())));
    }
    const QString text = textOf(path);
    for (int i = 1; i <= 150; ++i) EXPECT_EQ(text.count(u"row%1end"_s.arg(i)), 1) << i;
}

TEST_F(SheetPdf, NoHeadingStandsAloneAtTheFootOfAPage) {
    for (int lines = 20; lines < 60; ++lines) {
        const SheetLayout layout(longSheet(5, lines), pageLayoutOf({Paper::A5, false}));
        ASSERT_GE(layout.pageCount(), 1);
        const QString path = save(longSheet(5, lines), {Paper::A5, false});
        for (const QString& page : pagesOf(path)) {
            if (page.contains(u"Heading of the table"_s)) {
                EXPECT_TRUE(page.contains(u"row1end"_s)) << lines;
            }
        }
    }
}

TEST_F(SheetPdf, AParagraphLongerThanAPageRunsOnAndIsWhole) {
    std::string text;
    for (int i = 0; i < 1500; ++i) text += "word" + std::to_string(i) + " ";
    Sheet sheet;
    sheet.add(SheetParagraph{text, SheetText::Body});
    sheet.add(SheetCautions{{{"C1", "Lead:", text}}});
    const QString path = save(sheet, {Paper::A5, true});
    EXPECT_GT(pdfInfo(path, u"Pages"_s).toInt(), 2);
    EXPECT_EQ(textOf(path).count(QRegularExpression(u"\\bword1499\\b"_s)), 2);
    EXPECT_EQ(textOf(path).count(QRegularExpression(u"\\bword700\\b"_s)), 2);
}

TEST_F(SheetPdf, EveryKindOfBlockIsPaintedWithItsWords) {
    Sheet sheet;
    sheet.title = "Kinds";
    SheetBarChart bars;
    bars.axis = "percent of new";
    bars.from = 80;
    bars.to = 120;
    bars.ticks = {80, 100, 120};
    bars.tickTexts = {"80", "100", "120"};
    for (int i = 1; i <= 24; ++i)
        bars.bars.push_back(
            {std::to_string(i), 100.0 + (i % 5) * 3, i % 7 == 0 ? "R" : "", i % 7 == 0});
    bars.bars[3].value.reset();
    bars.limits = {{110, "limit 10 %"}};
    bars.groups = {{"section 1", 12}, {"section 2", 12}};
    sheet.add(bars);
    sheet.add(
        SheetTicks{{{"tick me", "with care", "", true}, {"ticked", "", "3 Mar 2026", false}}});
    sheet.add(SheetBlanks{"write here", 3});
    sheet.add(SheetFacts{{{"small label", "small value", "note", {}}}, false});
    sheet.add(SheetSpace{2});
    for (const auto& page : everyPage()) {
        const QString path = save(sheet, page);
        for (const char* words : {"percent of new", "limit 10 %", "section 1", "section 2",
                                  "tick me", "3 Mar 2026", "write here", "small value"})
            expectHolds(path, words);
        EXPECT_EQ(textOf(path).count(QRegularExpression(u"\\bR\\b"_s)), 3);
    }
}

TEST_F(SheetPdf, ChartsAreVectors) {
    const auto& machine = sheets.demo.season.machines.front();
    const auto jobs = sheets.jobsOf(machine);
    const QString path = save(cabCards(machine.machine, jobs, contextOf(machine.machine)), {});
    // The list of images has two lines of head and no image.
    EXPECT_LE(outputOf(u"pdfimages"_s, {u"-list"_s, path}).split(u'\n', Qt::SkipEmptyParts).size(),
              2);
}

TEST_F(SheetPdf, NothingStandsOutsideTheMargins) {
    const auto& machine = sheets.demo.season.machines.front();
    const Sheet sheet =
        cabCards(machine.machine, sheets.jobsOf(machine), contextOf(machine.machine));
    for (const auto& choice : everyPage()) {
        const SheetLayout layout(sheet, pageLayoutOf(choice));
        constexpr double kScale = 0.08;
        QImage image((layout.pageSize() * kScale).toSize(), QImage::Format_Grayscale8);
        image.fill(255);
        QPainter painter(&image);
        painter.scale(kScale, kScale);
        layout.paint(painter, 0);
        painter.end();
        const int margin = static_cast<int>(kDotsPerInch * 7.0 / 25.4 * kScale);
        int ink = 0;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                const bool isOut = x < margin || y < margin || x >= image.width() - margin ||
                                   y >= image.height() - margin;
                if (isOut && image.constScanLine(y)[x] < 200) ++ink;
            }
        }
        EXPECT_EQ(ink, 0) << paperKey(choice.paper).toStdString() << choice.isLandscape;
    }
}

TEST_F(SheetPdf, AFolderThatIsNotThereIsAProblemWithPathAndReason) {
    const QString path = folder.filePath(u"nowhere/sheet.pdf"_s);
    const auto saved = savePdf(longSheet(3, 3), path, {});
    ASSERT_FALSE(saved.isOk());
    EXPECT_EQ(saved.problem().code, "print_not_written");
    const std::string words = shippedSentences().of(saved.problem(), {});
    EXPECT_THAT(words, HasSubstr("nowhere/sheet.pdf"));
    EXPECT_EQ(words.find('{'), std::string::npos);
}

TEST_F(SheetPdf, AFailureHalfWayLeavesTheOldFile) {
    const QString path = folder.filePath(u"old.pdf"_s);
    QFile old(path);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("what stood here before");
    old.close();
    // No file may grow over a few kB: the disk is full, so to say.
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const auto oldSignal = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &small);
    const auto saved = savePdf(longSheet(200, 100), path, {});
    setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, oldSignal);
    ASSERT_FALSE(saved.isOk());
    EXPECT_EQ(saved.problem().code, "print_not_written");
    ASSERT_TRUE(old.open(QIODevice::ReadOnly));
    EXPECT_EQ(old.readAll(), "what stood here before");
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files), QStringList{u"old.pdf"_s});
}

TEST_F(SheetPdf, CsvHoldsTheTable) {
    const QString path = folder.filePath(u"table.csv"_s);
    EXPECT_TRUE(hasTable(longSheet(2, 1)));
    ASSERT_TRUE(saveCsv(longSheet(2, 1), path, ';').isOk());
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "Nozzle number;Remark\r\nno1;row1end\r\nno2;row2end\r\n");
}

}  // namespace
}  // namespace bw::test
