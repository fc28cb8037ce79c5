// SPDX-License-Identifier: GPL-3.0-or-later
// The printed examples of extension sheets and standards (tests/reference/handbook), each reckoned
// by the core's own functions.
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>

#include "core/base/csv_text.h"
#include "tests/core/reference/handbook_quantities.h"

namespace bw::handbook {
namespace {

CsvTable readTable(const std::string& name) {
    std::ifstream file(std::string(BW_SOURCE_DIR) + "/tests/reference/handbook/" + name + ".csv",
                       std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return parseCsv(text.str());
}

struct Row {
    std::string id, quantity, inputs, unit, kind, follows, source;
    double expected = 0.0;
    double tolerance = 0.0;
};

std::vector<Row> readRows(const std::string& name) {
    const CsvTable table = readTable(name);
    std::vector<Row> rows;
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        const auto field = [&](const char* column) { return std::string(table.at(i, column)); };
        rows.push_back({field("id"), field("quantity"), field("inputs"), field("expected_unit"),
                        field("kind"), field("follows"), field("source"),
                        std::stod(field("expected")), std::stod(field("tolerance"))});
    }
    return rows;
}

/// Rounding in binary at the edge of a tolerance.
constexpr double kRounding = 1e-9;

/// "model +0.4%": the law is off the printed value by that much, to the printed figures.
bool isOffBy(const std::string& follows, double value, double expected) {
    const double percent = std::stod(follows.substr(6));
    return std::abs((value / expected - 1) * 100 - percent) < 0.06;
}

bool holds(const Row& row, double value) {
    if (!std::isfinite(value)) return false;
    const double apart = std::abs(value - row.expected);
    const bool isWithin = apart <= row.tolerance * (1 + kRounding);
    if (row.follows == "yes") return isWithin;
    if (row.follows == "no") return !isWithin;
    if (row.follows == "near") return !isWithin && apart <= 2 * row.tolerance;
    if (row.follows == "truncated")
        return value >= row.expected && value < row.expected + 2 * row.tolerance;
    if (row.follows.starts_with("model ")) return isOffBy(row.follows, value, row.expected);
    return false;
}

/// How many printed values stand behind the checks, by what vouches for them.
struct Tally {
    std::map<std::string, int> byKind;
    std::map<std::string, int> byFollowing;
};

void check(const std::string& name, Tally& tally) {
    const auto rows = readRows(name);
    ASSERT_FALSE(rows.empty()) << name;
    for (const auto& row : rows) {
        double value = std::nan("");
        ASSERT_NO_THROW(value = computed(row.quantity, Inputs(row.inputs), row.unit)) << row.id;
        EXPECT_TRUE(holds(row, value))
            << row.id << " " << row.quantity << " (" << row.inputs << "): printed " << row.expected
            << " " << row.unit << ", computed " << value << ", follows: " << row.follows << "\n  "
            << row.source;
        EXPECT_TRUE(row.kind == "published" || row.kind == "practice" || row.kind == "from memory")
            << row.id << ": " << row.kind;
        ++tally.byKind[row.kind];
        ++tally.byFollowing[row.follows.starts_with("model") ? "off by what the row says"
                                                             : row.follows];
    }
}

TEST(Handbook, PrintedExamplesAreMet) {
    Tally tally;
    for (const auto* name :
         {"h01_rate", "h02_pressure", "h03_density", "h04_speed", "h05_catch", "h06_loads",
          "h07_work", "h08_meter", "h09_pipes", "h10_field", "h11_height", "facts_of_trade"})
        check(name, tally);
    int all = 0;
    for (const auto& [kind, count] : tally.byKind) all += count;
    std::cout << "Handbook values: " << all << " checked, of these " << tally.byKind["published"]
              << " published, " << tally.byKind["practice"] << " common practice, "
              << tally.byKind["from memory"] << " from memory; " << tally.byFollowing["yes"]
              << " met, "
              << tally.byFollowing["off by what the row says"] + tally.byFollowing["near"] +
                     tally.byFollowing["truncated"]
              << " off as their row says, " << tally.byFollowing["no"]
              << " known misprints told apart\n";
}

// The judge itself: a wrong value, or an unknown word in `follows`, must not pass.
TEST(Handbook, TheJudgeTellsRightFromWrong) {
    Row row;
    row.expected = 20;
    row.tolerance = 0.5;
    row.follows = "yes";
    EXPECT_TRUE(holds(row, 20.5));
    EXPECT_FALSE(holds(row, 20.6));
    EXPECT_FALSE(holds(row, std::nan("")));
    row.follows = "no";
    EXPECT_FALSE(holds(row, 20.2));
    EXPECT_FALSE(holds(row, std::nan("")));
    row.follows = "near";
    EXPECT_FALSE(holds(row, 20.2));
    EXPECT_TRUE(holds(row, 20.7));
    EXPECT_FALSE(holds(row, 21.1));
    row.follows = "truncated";
    EXPECT_TRUE(holds(row, 20.9));
    EXPECT_FALSE(holds(row, 19.9));
    row.follows = "model +1.0%";
    EXPECT_TRUE(holds(row, 20.2));
    EXPECT_FALSE(holds(row, 20));
    row.follows = "";
    EXPECT_FALSE(holds(row, 20));
    EXPECT_THROW(computed("phase_of_the_moon", Inputs(""), "1"), std::out_of_range);
    EXPECT_THROW(computed("ground_speed", Inputs("course_ft=200"), "mph"), std::out_of_range);
    EXPECT_THROW(computed("ground_speed", Inputs("course_ft=200;time_s=45"), "psi"),
                 std::invalid_argument);
}

}  // namespace
}  // namespace bw::handbook
