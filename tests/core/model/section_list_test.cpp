// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/section_list.h"

#include <gtest/gtest.h>

#include "core/text/sentences.h"

namespace bw {
namespace {

using Sections = std::vector<int>;

Sections read(const char* text) {
    const auto sections = parseSections(text);
    EXPECT_TRUE(sections.isOk()) << text << ": "
                                 << (sections.isOk() ? "" : sections.problem().code);
    return sections.isOk() ? *sections : Sections{};
}

std::string refusal(const std::string& text) {
    const auto sections = parseSections(text);
    return sections.isOk() ? "taken: " + sectionsText(*sections) : sections.problem().code;
}

TEST(SectionList, ReadsListsAsPeopleWriteThem) {
    const Sections demo{10, 14, 12, 14, 10};
    EXPECT_EQ(read("10, 14, 12, 14, 10"), demo);
    EXPECT_EQ(read("10,14,12,14,10"), demo);
    EXPECT_EQ(read("10 14 12 14 10"), demo);
    EXPECT_EQ(read(" 10; 14 ;12; 14; 10 "), demo);
    EXPECT_EQ(read("10 + 14 + 12 + 14 + 10"), demo);
    EXPECT_EQ(read("12"), Sections{12});
}

TEST(SectionList, ReadsRepeats) {
    const Sections alike(5, 12);
    EXPECT_EQ(read("5 x 12"), alike);
    EXPECT_EQ(read("5x12"), alike);
    EXPECT_EQ(read("5 X 12"), alike);
    EXPECT_EQ(read("5 * 12"), alike);
    EXPECT_EQ(read("5 \u00d7 12"), alike);
    EXPECT_EQ(read("5 sections x 12 nozzles"), alike);
    EXPECT_EQ(read("2 x 10, 14, 2 x 9"), (Sections{10, 10, 14, 9, 9}));
}

TEST(SectionList, ReadsACountInSections) {
    EXPECT_EQ(read("60 in 5"), Sections(5, 12));
    EXPECT_EQ(read("60 nozzles in 5 sections"), Sections(5, 12));
    EXPECT_EQ(read("60/5"), Sections(5, 12));
}

TEST(SectionList, RefusesWhatItCannotRead) {
    EXPECT_EQ(refusal("ten, twelve"), "section_list_unread");
    EXPECT_EQ(refusal("10, , 12"), "section_list_unread");
    EXPECT_EQ(refusal("10, 12,"), "section_list_unread");
    EXPECT_EQ(refusal(""), "section_list_unread");
    EXPECT_EQ(refusal("5 x"), "section_list_unread");
    EXPECT_EQ(refusal("10 - 12"), "section_list_unread");
    EXPECT_EQ(refusal("10, 12a"), "section_list_unread");
    EXPECT_EQ(refusal("-10, 12"), "section_list_negative");
    EXPECT_EQ(refusal("10.5, 12"), "section_list_fraction");
    EXPECT_EQ(refusal("10, 0, 12"), "section_list_zero");
    EXPECT_EQ(refusal("0 x 12"), "section_list_zero");
    EXPECT_EQ(refusal("12 in 0"), "section_list_zero");
    EXPECT_EQ(refusal("3 nozzles in 4 sections"), "section_list_zero");
    EXPECT_EQ(refusal("1001"), "section_list_many");
    EXPECT_EQ(refusal("999999999999 x 999999999999"), "section_list_many");
    EXPECT_EQ(refusal("2000 x 1"), "section_list_many");
    EXPECT_EQ(refusal("5 in 99999999"), "section_list_many");
}

TEST(SectionList, AsksWhenNozzlesDoNotGoIntoTheSections) {
    const auto read = parseSections("13 nozzles in 4 sections");
    ASSERT_FALSE(read.isOk());
    EXPECT_EQ(Sentences::shipped().of(read.problem(), {}),
              "13 nozzles in 4 sections? They don't go in evenly. One figure a section, for "
              "instance 4, 3, 3, 3.");
}

TEST(SectionList, WritesShortly) {
    EXPECT_EQ(sectionsText({10, 14, 12, 14, 10}), "10, 14, 12, 14, 10");
    EXPECT_EQ(sectionsText({12, 12, 12, 12, 12}), "5 \u00d7 12");
    EXPECT_EQ(sectionsText({12, 12}), "12, 12");
    EXPECT_EQ(sectionsText({}), "");
}

TEST(SectionList, ReadsWhatItWrites) {
    for (const Sections& sections :
         {Sections{10, 14, 12, 14, 10}, Sections(13, 6), Sections{7}, Sections{8, 8}})
        EXPECT_EQ(read(sectionsText(sections).c_str()), sections);
}

TEST(SectionList, ReadsNozzleNumbers) {
    for (const char* text : {"15, 46", "15 46", "46 and 15", "nozzles 15; 46"}) {
        const auto read = parseNozzleNumbers(text);
        ASSERT_TRUE(read.isOk()) << text;
        EXPECT_EQ(*read, (Sections{15, 46})) << text;
    }
    for (const char* text : {"", "middle", "0, 5", "-5", "1.5", ", 5"})
        EXPECT_EQ(parseNozzleNumbers(text).problem().code, "nozzle_numbers_unread") << text;
    EXPECT_EQ(parseNozzleNumbers("5, 5").problem().code, "nozzle_numbers_twice");
    EXPECT_EQ(nozzleNumbersText({15, 46}), "15, 46");
}

}  // namespace
}  // namespace bw
