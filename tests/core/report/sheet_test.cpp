// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace bw {
namespace {

using testing::ElementsAre;

TEST(SheetCsv, QuotesWhatNeedsQuotes) {
    SheetTable table;
    table.columns = {{"Job", false, 1}, {"Rate, L/ha", true, 1}};
    table.rows = {{{"Beet \"split\"", "150"}, false}, {{"two\nlines", "1,5"}, true}};
    EXPECT_EQ(toCsv(table),
              "Job,\"Rate, L/ha\"\r\n\"Beet \"\"split\"\"\",150\r\n\"two\nlines\",\"1,5\"\r\n");
    EXPECT_EQ(toCsv(table, ';'),
              "Job;Rate, L/ha\r\n\"Beet \"\"split\"\"\";150\r\n\"two\nlines\";1,5\r\n");
}

TEST(SheetCsv, KeepsFormulasAsTextAndNumbersAsNumbers) {
    SheetTable table;
    table.columns = {{"a", false, 1}};
    table.rows = {{{"=1+1"}, false}, {{"@SUM(A1)"}, false}, {{"-12.5"}, false}, {{"-A1"}, false}};
    EXPECT_EQ(toCsv(table), "a\r\n'=1+1\r\n'@SUM(A1)\r\n-12.5\r\n'-A1\r\n");
}

TEST(SheetCsv, ShortRowsGetEmptyFields) {
    SheetTable table;
    table.columns = {{"a", false, 1}, {"b", false, 1}};
    table.rows = {{{"x"}, false}};
    EXPECT_EQ(toCsv(table), "a,b\r\nx,\r\n");
}

TEST(SheetTexts, ComeInReadingOrderFromEveryDepth) {
    Sheet sheet;
    sheet.title = "T";
    sheet.footer = "F";
    sheet.add(SheetBanner{"B", "", "V", ""});
    sheet.add(SheetSideBySide{{{{SheetHeading{"left"}}, {SheetTicks{{{"tick", "", "", false}}}}},
                               {{SheetCautions{{{"C1", "Lead:", "text"}}}}}}});
    EXPECT_THAT(textsOf(sheet), ElementsAre("T", "B", "V", "left", "tick", "Lead:", "text", "F"));
}

}  // namespace
}  // namespace bw
