// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets for the yard; all readings are invented.
#include "core/report/yard_sheets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/report/report_fixture.h"

namespace bw::test {
namespace {

using testing::HasSubstr;
using testing::Not;

YardRecord catchRecord() {
    YardRecord record;
    record.kind = YardKind::CatchTest;
    record.check = "Y7";
    record.started = "2026-03-05T08:00:00";
    CatchTest& test = record.catchTest;
    test.set = "Low-drift 04 (invented)";
    test.pressure = Sourced<Pressure>(Pressure::fromSi(3e5));
    test.newFlow = Sourced<Flow>(make<Flow>(1.58, Unit::LitrePerMinute));
    test.time = Duration::fromSi(30);
    test.sections = {3, 3};
    return record;
}

void caught(YardRecord& record, int nozzle, double millilitres, bool isAgain = false) {
    record.catchTest.catches.push_back(
        {nozzle, isAgain, Volume::fromSi(millilitres * 1e-6), Duration::fromSi(30), ""});
}

TEST(YardSheets, ACatchTestSaysWhatToDoAndNamesTheOffOnes) {
    YardRecord record = catchRecord();
    for (int nozzle = 1; nozzle <= 6; ++nozzle)
        caught(record, nozzle, nozzle == 2 ? 890 : nozzle == 5 ? 700 : 800);
    const Sheet sheet = catchSheet(record, namedTrailed(), context());
    const std::string text = joined(sheet);
    EXPECT_THAT(text, HasSubstr("1 to replace, 1 to clean and catch again"));
    EXPECT_THAT(text, HasSubstr("clean water only"));
    EXPECT_THAT(text, HasSubstr("Not a spray record"));
    const auto* bars = firstOf<SheetBarChart>(sheet.blocks);
    ASSERT_TRUE(bars);
    ASSERT_EQ(bars->bars.size(), 6U);
    EXPECT_EQ(bars->bars[1].letter, "R");
    EXPECT_TRUE(bars->bars[1].isOff);
    EXPECT_EQ(bars->bars[4].letter, "C");
    // 800 mL in 30 s are 1.6 L/min against 1.58 new.
    EXPECT_NEAR(*bars->bars[0].value, (1.6 / 1.58 - 1) * 100, 1e-6);
    ASSERT_EQ(bars->groups.size(), 2U);
    EXPECT_EQ(bars->groups[0].bars, 3);
    const auto* table = firstOf<SheetTable>(sheet.blocks);
    ASSERT_TRUE(table);
    ASSERT_EQ(table->rows.size(), 2U);
    EXPECT_EQ(table->rows[1].cells[0], "5");
    EXPECT_EQ(table->rows[1].cells[1], "700");
    const auto& last = std::get<SheetTable>(sheet.blocks.back().content);
    EXPECT_EQ(last.rows.size(), 2U) << "all six nozzles, four across";
    EXPECT_THAT(joined(sheet), HasSubstr("+12.7 % R")) << "890 mL in 30 s: 1.78 of 1.58 L/min";
    EXPECT_THAT(joined(sheet), HasSubstr("C"));
    caught(record, 5, 795, true);
    EXPECT_THAT(joined(catchSheet(record, namedTrailed(), context())),
                HasSubstr("1 to replace, 0 to clean"));
}

TEST(YardSheets, ATestNotBegunIsAListToFillIn) {
    YardRecord record = catchRecord();
    record.catchTest.scope = CatchScope::Section;
    record.catchTest.section = 1;
    const Sheet sheet = catchSheet(record, namedTrailed(), context());
    EXPECT_FALSE(firstOf<SheetBarChart>(sheet.blocks));
    const auto* table = firstOf<SheetTable>(sheet.blocks);
    ASSERT_TRUE(table);
    // Three nozzles, side by side, each with room for what is caught and caught again.
    ASSERT_EQ(table->rows.size(), 1U);
    EXPECT_EQ(table->rows[0].cells,
              (std::vector<std::string>{"4", "", "", "5", "", "", "6", "", ""}));
    EXPECT_THAT(joined(sheet), HasSubstr("790 mL"));
}

TEST(YardSheets, AChecklistStandsUnderItsCautionsWithTicksAndNotes) {
    const auto parts = checklistFor(namedTrailed());
    ASSERT_FALSE(parts.empty());
    const auto& part = parts.front();
    YardRecord record;
    record.ticks = {{part.items[1].id, "2026-03-05", "two seals missing"}};
    const Sheet sheet = checklistSheet(part, record, namedTrailed(), context());
    std::size_t ticks = 0;
    std::vector<std::string> boxed;
    for (const auto& block : sheet.blocks) {
        if (const auto* box = std::get_if<SheetCautions>(&block.content)) {
            boxed.clear();
            for (const auto& item : box->items) boxed.push_back(item.id);
        }
        const auto* list = std::get_if<SheetTicks>(&block.content);
        if (!list) continue;
        for (const auto& tick : list->items) {
            EXPECT_EQ(tick.text, part.items[ticks].text);
            if (!part.items[ticks].cautions.empty()) {
                EXPECT_EQ(boxed, part.items[ticks].cautions);
            }
            ++ticks;
        }
    }
    EXPECT_EQ(ticks, part.items.size());
    EXPECT_THAT(joined(sheet), HasSubstr("two seals missing"));
    EXPECT_THAT(joined(sheet), HasSubstr("2026-03-05"));
}

TEST(YardSheets, ACheckHasRoomForItsReadingsOrTheirSum) {
    const YardCheckText* check = yardCheck("Y6");
    ASSERT_TRUE(check);
    YardRecord record;
    Sheet sheet = checkSheet(*check, record, namedTrailed(), context());
    EXPECT_TRUE(firstOf<SheetBlanks>(sheet.blocks));
    EXPECT_THAT(joined(sheet), Not(HasSubstr("The sum")));
    record.readings = {{"course", 1, anyQuantity(Length::fromSi(100)), "100 m"},
                       {"times", 1, anyQuantity(Duration::fromSi(36)), "36 s"},
                       {"times", 2, anyQuantity(Duration::fromSi(36)), "36 s"},
                       {"shown", 1, anyQuantity(make<Speed>(10.5, Unit::KilometrePerHour)), ""},
                       {"number", 1, anyQuantity(600.0), "600"}};
    record.choices = {{"convention", "pulses_per"}};
    sheet = checkSheet(*check, record, namedTrailed(), context());
    EXPECT_THAT(joined(sheet), HasSubstr("36 s, 36 s"));
    EXPECT_THAT(joined(sheet), HasSubstr("2 runs: 10 km/h"));
    // 10.5 shown at a true 10: 5 % more pulses for a distance.
    EXPECT_THAT(joined(sheet), HasSubstr("630"));
}

}  // namespace
}  // namespace bw::test
