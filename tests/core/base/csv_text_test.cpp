// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/csv_text.h"

#include <gtest/gtest.h>

namespace bw {
namespace {

TEST(CsvText, ReadsHeaderAndRows) {
    const auto table = parseCsv("code,flow\n03,1.2\n04,1.6\n");
    ASSERT_EQ(table.rows.size(), 2U);
    EXPECT_EQ(table.at(1, "code"), "04");
    EXPECT_EQ(table.at(0, "flow"), "1.2");
}

TEST(CsvText, KeepsCommasQuotesAndLineEndsInsideQuotes) {
    const auto table = parseCsv("a,b\n\"x, \"\"y\"\"\nz\",2\n");
    ASSERT_EQ(table.rows.size(), 1U);
    EXPECT_EQ(table.at(0, "a"), "x, \"y\"\nz");
    EXPECT_EQ(table.at(0, "b"), "2");
}

TEST(CsvText, SkipsCommentsAndEmptyLinesAndTakesWindowsLineEnds) {
    const auto table = parseCsv("# source: a standard\r\na,b\r\n\r\n# more\r\n1,\r\n");
    ASSERT_EQ(table.header, (std::vector<std::string>{"a", "b"}));
    ASSERT_EQ(table.rows.size(), 1U);
    EXPECT_EQ(table.rows[0], (std::vector<std::string>{"1", ""}));
}

TEST(CsvText, MissingColumnRowAndFieldAreEmpty) {
    const auto table = parseCsv("a,b\n1\n");
    EXPECT_EQ(table.at(0, "b"), "");
    EXPECT_EQ(table.at(0, "c"), "");
    EXPECT_EQ(table.at(9, "a"), "");
    EXPECT_FALSE(table.column("c").has_value());
}

TEST(CsvText, UnfinishedTextsEnd) {
    EXPECT_TRUE(parseCsv("").header.empty());
    EXPECT_EQ(parseCsv("a\n\"open").at(0, "a"), "open");
    EXPECT_EQ(parseCsv("a,b\n1,2").at(0, "b"), "2");
}

// RFC 4180 (2005), section 2, rules 1 and 4 to 7.
TEST(CsvText, IsWrittenByTheStandard) {
    EXPECT_EQ(csvText({{"a", "b"}, {"1", ""}}), "a,b\r\n1,\r\n");
    EXPECT_EQ(csvText({{"x, y", "say \"no\"", "two\nlines"}}),
              "\"x, y\",\"say \"\"no\"\"\",\"two\nlines\"\r\n");
}

TEST(CsvText, WhatIsWrittenIsReadBack) {
    const std::vector<std::string> row{"plain", "with, comma", "\"quoted\"", "line\r\nend", ""};
    const auto table = parseCsv(csvText({{"a", "b", "c", "d", "e"}, row}));
    ASSERT_EQ(table.rows.size(), 1U);
    EXPECT_EQ(table.rows[0], row);
}

}  // namespace
}  // namespace bw
