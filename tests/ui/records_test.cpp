// SPDX-License-Identifier: GPL-3.0-or-later
// The Records page by keys and mouse. Demo season and what is added to it are invented.
#include "core/base/csv_text.h"
#include "core/yard/catch_record.h"
#include "tests/ui/records_fixture.h"

namespace bw::test {
namespace {

using testing::HasSubstr;

TEST_F(RecordsTest, EverythingThatWasDoneNewestFirst) {
    ASSERT_EQ(rows(kTable), 8);
    EXPECT_THAT(row(kTable, 0), HasSubstr("2026-05-06|Demo self-propelled 100 ft|Case: stuck"));
    EXPECT_THAT(row(kTable, 0), HasSubstr("not proved yet"));
    EXPECT_THAT(row(kTable, 2), HasSubstr("Flow meter against a known volume|The meter shows 1.2"));
    EXPECT_THAT(row(kTable, 2), HasSubstr("too much"));
    EXPECT_THAT(row(kTable, 4), HasSubstr("2026-03-02|Demo trailed 28 m|Spring start|2 of "));
    EXPECT_THAT(row(kTable, 4), HasSubstr("|open"));
    EXPECT_EQ(label("records.list.notSprayRecord"), "Not a spray record.");
    EXPECT_EQ(label("records.list.count"), "Records: 8");
}

TEST_F(RecordsTest, SearchLooksThroughCustomerSetCauseNotesAndDate) {
    const std::pair<const char*, int> searches[] = {
        {"\"demo farm b\"", 6},       // a customer: the trailed machine's records and its case
        {"\"low-drift fan 04\"", 4},  // a set: three tests, a case with that nozzle
        {"line strainer", 1},         // the cause found, in words
        {"yard scale", 1},            // a note
        {"drip at section", 1},       // a tick's note
        {"2025", 2},                  // a date
        {"catch 2024", 1},            // each word
        {"nothing like this", 0},
    };
    for (const auto& [text, count] : searches) {
        search(text);
        EXPECT_EQ(rows(kTable), count) << text;
        key(Qt::Key_Escape);
        EXPECT_EQ(rows(kTable), 8) << "Esc takes the search back";
    }
    search("nothing like this");
    EXPECT_EQ(label("records.detail.title"), "No record fits what is asked for.");
    EXPECT_FALSE(find("records.detail.remove"));
    EXPECT_EQ(label("records.list.count"), "Records shown: 0 of 8");
}

TEST_F(RecordsTest, NarrowedByMachineYearAndKind) {
    pick("records.filter.kind", u"Catch tests"_s);
    EXPECT_EQ(rows(kTable), 3);
    pick("records.filter.year", u"2026"_s);
    EXPECT_EQ(rows(kTable), 1);
    pick("records.filter.kind", u"all kinds"_s);
    EXPECT_EQ(rows(kTable), 5);
    pick("records.filter.machine", u"Demo trailed 28 m"_s);
    EXPECT_EQ(rows(kTable), 4);
    pick("records.filter.kind", u"Meter and speed checks"_s);
    EXPECT_EQ(rows(kTable), 1);
    EXPECT_THAT(row(kTable, 0), HasSubstr("2026-03-09"));
}

TEST_F(RecordsTest, AHeadSorts) {
    auto* header = find<QTableView>(kTable)->horizontalHeader();
    QTest::mouseClick(header->viewport(), Qt::LeftButton, {},
                      QPoint(header->sectionViewportPosition(0) + 10, header->height() / 2));
    settle();
    EXPECT_THAT(row(kTable, 0), HasSubstr("2024-03-19"));
    EXPECT_THAT(row(kTable, 7), HasSubstr("2026-05-06"));
}

TEST_F(RecordsTest, ACatchTestWithItsBars) {
    pick("records.filter.kind", u"Catch tests"_s);
    const auto& yard = session().yardRecords();
    const auto newest = std::find_if(yard.begin(), yard.end(), [](const auto& stored) {
        return stored.record.started.starts_with("2026-03-05");
    });
    ASSERT_NE(newest, yard.end());
    const auto summary = summaryOf(newest->record.catchTest);
    ASSERT_TRUE(summary.isOk() && summary->meanOfNew && summary->cv);
    clickRow(kTable, 0);
    const auto* bars = find<ChartPanel>("records.detail.bars");
    ASSERT_TRUE(bars);
    ASSERT_EQ(bars->data().curves.front().points.size(), summary->nozzles.size());
    for (std::size_t i = 0; i < summary->nozzles.size(); ++i) {
        const QPointF bar = bars->data().curves.front().points[i];
        EXPECT_EQ(bar.x(), summary->nozzles[i].nozzle);
        EXPECT_NEAR(bar.y(), (*summary->nozzles[i].ofNew - 1) * 100, 1e-9);
    }
    const std::string verdict = said("records.detail.verdict");
    EXPECT_THAT(verdict, HasSubstr("of a new one"));
    EXPECT_THAT(verdict, HasSubstr("(CV)"));
    for (const auto& nozzle : summary->nozzles) {
        if (nozzle.verdict == CatchVerdict::Good) continue;
        EXPECT_THAT(said("records.detail.list"),
                    HasSubstr("Nozzle " + std::to_string(nozzle.nozzle)));
    }
}

TEST_F(RecordsTest, ACheckAListAndACaseInHandByArrowKeys) {
    search("meter");
    key(Qt::Key_Down);  // into the table
    EXPECT_THAT(said("records.detail.list"), HasSubstr("405 L"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("400 L"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("405 L shown for 400 L"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("Weighed on the yard scale"));
    EXPECT_FALSE(find("records.detail.bars"));
    search("spring start");
    EXPECT_THAT(said("records.detail.list"), HasSubstr("drip at section four"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("Not ticked"));
    search("farm b line strainer");
    EXPECT_THAT(label("records.detail.about"), HasSubstr("Demo farm B"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("34 min"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("stuck low"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("How it began"));
    EXPECT_THAT(said("records.detail.list"), HasSubstr("flakes from the tank wall"));
}

TEST_F(RecordsTest, RemovedByKeyAndBroughtBack) {
    pick("records.filter.kind", u"Catch tests"_s);
    clickRow(kTable, 1);
    const std::string before = row(kTable, 1);
    key(Qt::Key_Delete);
    ASSERT_EQ(rows(kTable), 2);
    EXPECT_EQ(session().yardRecords().size(), 4U);
    EXPECT_EQ(find<QTableView>(kTable)->currentIndex().row(), 1) << "the next took its place";
    key(Qt::Key_Z, Qt::ControlModifier);
    ASSERT_EQ(rows(kTable), 3);
    EXPECT_EQ(row(kTable, 1), before);
    pick("records.filter.kind", u"Cases"_s);
    clickRow(kTable, 0);
    click("records.detail.remove");
    EXPECT_EQ(session().cases().size(), 2U);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().cases().size(), 3U);
}

TEST_F(RecordsTest, ACaseOpensInTheFaultFinder) {
    search("strainer stuck low");
    key(Qt::Key_Return);
    key(Qt::Key_Return);
    EXPECT_EQ(window->currentPageId(), u"fault_finder"_s);
    const auto* title = find<QLabel>("finder.end.title");
    ASSERT_TRUE(title) << "a finished case opens at its end";
}

TEST_F(RecordsTest, TheWearOfASetWithItsDateAndWhyThereIsNone) {
    key(Qt::Key_2, Qt::AltModifier);
    ASSERT_EQ(rows("records.wear.table"), 1);
    EXPECT_THAT(row("records.wear.table", 0), HasSubstr("Demo low-drift fan 04|3|2026-03-05"));
    const std::string verdict = said("records.wear.verdict");
    EXPECT_THAT(verdict, HasSubstr("By this trend the limit of 10 % over new"));
    EXPECT_THAT(verdict, HasSubstr("estimate"));
    const auto* chart = find<ChartPanel>("records.wear.chart");
    ASSERT_TRUE(chart);
    ASSERT_EQ(chart->data().curves.size(), 2U) << "tests and the line";
    EXPECT_EQ(chart->data().curves[0].points.size(), 3U);
    EXPECT_LT(chart->data().curves[1].points.front().y(),
              chart->data().curves[1].points.back().y());

    // With all but one test gone the reason stands where the date stood.
    key(Qt::Key_1, Qt::AltModifier);
    pick("records.filter.kind", u"Catch tests"_s);
    clickRow(kTable, 0);
    key(Qt::Key_Delete);
    key(Qt::Key_Delete);
    key(Qt::Key_2, Qt::AltModifier);
    EXPECT_THAT(said("records.wear.verdict"), HasSubstr("two dates or more"));
    EXPECT_EQ(find<ChartPanel>("records.wear.chart")->data().curves.size(), 1U);
    EXPECT_THAT(row("records.wear.table", 0), HasSubstr("one date only"));
}

TEST_F(RecordsTest, ACustomerIsAddedEditedAndDeleted) {
    key(Qt::Key_3, Qt::AltModifier);
    ASSERT_EQ(rows("records.customers.table"), 2);
    key(Qt::Key_Insert);
    ASSERT_EQ(QApplication::focusWidget()->objectName(), u"records.customers.name"_s);
    type("Invented farm C");
    key(Qt::Key_Tab);
    type("Nowhere");
    key(Qt::Key_Tab);
    type("000 111");
    key(Qt::Key_Tab);
    type("Rings at noon (invented)");
    key(Qt::Key_Tab);
    ASSERT_EQ(session().customers().size(), 3U);
    const Customer& customer = session().customers().back().customer;
    EXPECT_EQ(customer.name, "Invented farm C");
    EXPECT_EQ(customer.place, "Nowhere");
    EXPECT_EQ(customer.phone, "000 111");
    EXPECT_EQ(customer.notes, "Rings at noon (invented)");
    EXPECT_EQ(row("records.customers.table", 2), "Invented farm C|Nowhere|0|0");
    click("records.customers.remove");
    EXPECT_EQ(session().customers().size(), 2U);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().customers().size(), 3U);
}

TEST_F(RecordsTest, ADeletedCustomersCasesStayWithoutTheName) {
    search("\"demo farm b\"");
    EXPECT_EQ(rows(kTable), 6);
    key(Qt::Key_3, Qt::AltModifier);
    clickRow("records.customers.table", 1);
    EXPECT_EQ(label("records.customers.title"), "Demo farm B (invented)");
    EXPECT_THAT(said("records.customers.belongings"), HasSubstr("Demo trailed 28 m"));
    click("records.customers.remove");
    key(Qt::Key_1, Qt::AltModifier);
    EXPECT_EQ(rows(kTable), 0) << "the search for the name finds nothing now";
    search("");
    key(Qt::Key_Escape);
    EXPECT_EQ(rows(kTable), 8) << "all records are still there";
}

TEST_F(RecordsTest, TheTableAsCsvWithAndWithoutNames) {
    const QString path = folder.filePath(u"out"_s);
    const auto saved = [&](int answer) {
        script.willTake(answer);
        script.willChoose(path);
        click("records.tools.save");
        QFile file(path + u".csv"_s);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    };
    const QByteArray without = saved(0);
    EXPECT_FALSE(without.contains("Demo farm"));
    EXPECT_FALSE(without.contains("yard scale"));
    const QByteArray with = saved(1);
    EXPECT_TRUE(with.startsWith("\xEF\xBB\xBF"));
    const auto table = parseCsv(with.mid(3).toStdString());
    ASSERT_EQ(table.rows.size(), 8U);
    EXPECT_EQ(table.at(2, "Date"), "2026-03-09");
    EXPECT_EQ(table.at(2, "Customer"), "Demo farm B");
    EXPECT_EQ(table.at(2, "Notes"), "Invented. Weighed on the yard scale.");
    EXPECT_EQ(std::string(table.at(2, "Outcome")),
              find<QTableView>(kTable)->model()->index(2, 3).data().toString().toStdString());
    key(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    const QString copied = QGuiApplication::clipboard()->text();
    EXPECT_TRUE(copied.startsWith(u"Date\tMachine\tWhat\tOutcome\tState\n2026-05-06\t"_s));
    EXPECT_EQ(copied.count(u'\n'), 9);
}

TEST_F(RecordsTest, AnEmptyFileSaysWhatComesFirst) {
    window.reset();
    auto empty = files.create(folder.filePath(u"empty.boomwright"_s));
    ASSERT_TRUE(empty.isOk());
    show(std::move(empty).value());
    EXPECT_THAT(said("records.empty"), HasSubstr("This is not a spray record."));
    EXPECT_FALSE(find(kTable));
    EXPECT_FALSE(find<QAbstractButton>("records.tools.save")->isEnabled());
    key(Qt::Key_3, Qt::AltModifier);
    EXPECT_THAT(label("records.customers.none"), HasSubstr("No customer yet."));
    key(Qt::Key_2, Qt::AltModifier);
    EXPECT_THAT(said("records.wear.verdict"), HasSubstr("two dates or more"));
}

}  // namespace
}  // namespace bw::test
