// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/band_text.h"

#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

std::vector<DropletBand> read(std::string_view text, std::optional<Pressure> start = bar(1),
                              BandStyle style = {}) {
    const auto bands = parseDropletBands(text, start, style);
    EXPECT_TRUE(bands.isOk()) << text << ": " << (bands ? "" : bands.problem().code);
    return bands ? *bands : std::vector<DropletBand>{};
}
std::string codeOf(std::string_view text, std::optional<Pressure> start = bar(1)) {
    const auto bands = parseDropletBands(text, start, {});
    return bands ? "" : bands.problem().code;
}

void expectBand(const DropletBand& b, DropletCategory c, double from, double to) {
    EXPECT_EQ(b.category, c);
    EXPECT_NEAR(in(b.from, Unit::Bar), from, 1e-12);
    EXPECT_NEAR(in(b.to, Unit::Bar), to, 1e-12);
}

TEST(BandText, AsPeopleSayIt) {
    for (const auto text :
         {"VC up to 1.6, C up to 3, M up to 6", "vc to 1,6, c to 3, m to 6", "VC 1.6 C 3 M 6",
          "VC 1-1.6; C 1.6-3; M 3-6", "1-1.6 VC, 1.6-3 C, 3-6 M",
          "VC up to 160 kPa, C up to 3 bar, M up to 6", "VC 1\u20131.6\nC 3\nM 6"}) {
        const auto bands = read(text);
        ASSERT_EQ(bands.size(), 3u) << text;
        expectBand(bands[0], DropletCategory::VC, 1, 1.6);
        expectBand(bands[1], DropletCategory::C, 1.6, 3);
        expectBand(bands[2], DropletCategory::M, 3, 6);
    }
    EXPECT_TRUE(read("").empty());
}

TEST(BandText, SaysWhatIsWrong) {
    EXPECT_EQ(codeOf("VX up to 2"), "band_category_unknown");
    EXPECT_EQ(codeOf("M"), "band_pressure_missing");
    EXPECT_EQ(codeOf("M up to 2", std::nullopt), "band_start_missing");
    EXPECT_EQ(codeOf("M up to 2, C up to 1.5"), "band_ends_early");
    EXPECT_EQ(codeOf("M 1-2, C 1.5-3"), "band_overlap");
    EXPECT_EQ(codeOf("M up to 1,250"), "number_group_mark");
    EXPECT_EQ(codeOf("up to 2"), "band_category_missing");
    EXPECT_EQ(codeOf("M up to 2 mph"), "unit_wrong_kind");
}

TEST(BandText, GoesRoundAndKeepsGaps) {
    const std::vector<DropletBand> bands = {{bar(1), bar(1.6), DropletCategory::VC},
                                            {bar(2), bar(3.05), DropletCategory::M}};
    const auto text = dropletBandText(bands, Unit::Bar, '.');
    EXPECT_EQ(text, "VC 1-1.6, M 2-3.05");
    const auto again = read(text);
    ASSERT_EQ(again.size(), 2u);
    expectBand(again[1], DropletCategory::M, 2, 3.05);
    EXPECT_EQ(read(dropletBandText(bands, Unit::Bar, ','), std::nullopt,
                   {Unit::Bar, Unit::LitrePerMinute, DecimalMarks::OwnComma})
                  .size(),
              2u);
}

TEST(BandText, DriftBands) {
    const auto bands = parseDriftBands("90 % up to 2, 75 % up to 3.5", bar(1), {});
    ASSERT_TRUE(bands.isOk());
    ASSERT_EQ(bands->size(), 2u);
    EXPECT_EQ((*bands)[0].percent, 90);
    EXPECT_NEAR(in((*bands)[1].to, Unit::Bar), 3.5, 1e-12);
    EXPECT_EQ(driftBandText(*bands, Unit::Bar, '.'), "90 % 1-2, 75 % 2-3.5");
    EXPECT_EQ(parseDriftBands("120 % up to 2", bar(1), {}).problem().code, "band_percent_range");
}

TEST(BandText, FlowTables) {
    const auto rows =
        parseFlowTable("bar\tL/min\n0.8\t1.30\n1.5\t1.74\n2.5 bar 2.20 L/min\n4, 2.73", {});
    ASSERT_TRUE(rows.isOk()) << rows.problem().code;
    ASSERT_EQ(rows->size(), 4u);
    EXPECT_NEAR(in((*rows)[2].flow, Unit::LitrePerMinute), 2.2, 1e-12);
    EXPECT_NEAR(in((*rows)[3].flow, Unit::LitrePerMinute), 2.73, 1e-12);
    EXPECT_EQ(flowTableText(*rows, Unit::Bar, Unit::LitrePerMinute, '.'),
              "0.8 1.3; 1.5 1.74; 2.5 2.2; 4 2.73");
    EXPECT_EQ(parseFlowTable("1 2 3", {}).problem().code, "table_row_cells");
}

}  // namespace
}  // namespace bw
