// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/nozzle_csv.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::ElementsAre;
using testing::IsEmpty;

/// Nozzles as a person may enter them (invented): sound, with odd names and any origin.
class SoundNozzles {
  public:
    explicit SoundNozzles(unsigned seed) : m_random(seed) {}

    Nozzle nozzle(int number) {
        Nozzle n;
        n.name =
            "Demo " + std::to_string(number) + pick({"", ", blue", " \"long\"", "; b", "\u00fc"});
        n.family = pick({"", "Demo family", "#7"});
        n.sizeCode = pick({"", "03"});
        n.notes = pick({"", "two\nlines, \"quoted\"", "=1+1"});
        n.acceptUnchecked = coin();
        n.isDemo = coin();
        if (coin()) {
            give(n.flow, lpm(between(1.1, 1.3)));
            give(n.at, coin() ? bar(3) : psi(43.5));
            if (coin()) give(n.exponent, between(0.45, 0.55));
        } else {
            give(n.table, std::vector<FlowPoint>{{bar(between(1, 1.5)), lpm(between(0.6, 0.8))},
                                                 {psi(between(30, 40)), gpm(between(0.25, 0.3))},
                                                 {bar(5), lpm(between(1.4, 1.6))}});
        }
        if (coin()) give(n.kind, coin() ? NozzleKind::Fan : NozzleKind::Stream);
        if (coin()) give(n.pressureMin, bar(between(0.8, 1.2)));
        if (coin()) give(n.pressureMax, psi(between(70, 100)));
        const Pressure middle = bar(between(1.5, 3));
        if (coin())
            give(n.droplets, std::vector<DropletBand>{{bar(1), middle, DropletCategory::VC},
                                                      {middle, bar(6), DropletCategory::M}});
        if (coin()) give(n.drift, std::vector<DriftBand>{{bar(1), middle, between(50, 95)}});
        if (coin()) give(n.sprayAngle, between(80, 120));
        if (coin()) give(n.price, between(1, 30));
        if (coin()) give(n.passage, make<Length>(between(0.5, 2), Unit::Millimetre));
        if (coin()) give(n.material, NozzleMaterial::Ceramic);
        return n;
    }

  private:
    bool coin() { return m_random() % 2 == 0; }
    double between(double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(m_random);
    }
    std::string pick(const std::vector<std::string>& from) {
        return from[m_random() % from.size()];
    }
    template <class T>
    void give(Known<T>& field, T value) {
        field = Sourced<T>(value, static_cast<Origin>(m_random() % 3));
        if (coin()) field->date = "2031-04-05";
        if constexpr (requires { value.si(); } || std::is_same_v<T, double>) {
            if (coin()) field->from = value * between(0.8, 1);
            if (coin()) field->to = value * between(1, 1.2);
        }
    }
    std::mt19937 m_random;
};

/// A value that nobody typed is typed once it has stood in a table.
Nozzle untyped(Nozzle nozzle) {
    visitFields(nozzle, [](std::string_view, auto& field) {
        if (field) field->typed.clear();
    });
    return nozzle;
}

TEST(NozzleCsv, ExportImportsIdentically) {
    SoundNozzles sound(5);
    for (int round = 0; round < 300; ++round) {
        std::vector<Nozzle> nozzles;
        for (int i = 0; i < 5; ++i) nozzles.push_back(sound.nozzle(i));
        const auto units = static_cast<UnitSystem>(round % 3);
        const std::string text = nozzleCsv(nozzles, units);
        const CsvPreview preview = previewNozzles(text, UnitSystem::Us);
        ASSERT_FALSE(preview.problem) << text;
        ASSERT_EQ(preview.rows.size(), nozzles.size()) << text;
        for (std::size_t i = 0; i < nozzles.size(); ++i) {
            ASSERT_THAT(preview.rows[i].problems, IsEmpty())
                << text << preview.rows[i].problems[0].column << " "
                << preview.rows[i].problems[0].problem.code;
            ASSERT_TRUE(untyped(preview.rows[i].nozzle) == untyped(nozzles[i])) << text;
        }
        // What came in goes out as it was, and comes in with all that was typed.
        const std::string again = nozzleCsv(preview.nozzles(), units);
        EXPECT_TRUE(previewNozzles(again, units).nozzles() == preview.nozzles());
    }
}

TEST(NozzleCsv, ATypedTextIsKept) {
    Nozzle n = nozzle(gpm(0.4), psi(40));
    n.flow->typed = "0.40 gal/min";
    n.at->typed = "40 psi";
    const auto back = previewNozzles(nozzleCsv({n}, UnitSystem::Metric), UnitSystem::Metric);
    EXPECT_TRUE(back.nozzles().at(0) == n);
}

TEST(NozzleCsv, HeadingsOfTheTrade) {
    const auto columns = guessColumns(
        {"Part number", "Flow rate (L/min)", "@ 3 bar", "Min. pressure", "Pressure max [bar]",
         "Spray quality", "Price (EUR)", "Colour", "gal/min at 40 psi", "pressure_min"});
    EXPECT_EQ(columns[0].meaning, NozzleColumn::Name);
    EXPECT_EQ(columns[1].meaning, NozzleColumn::Flow);
    EXPECT_EQ(columns[1].unit, Unit::LitrePerMinute);
    EXPECT_EQ(columns[2].meaning, NozzleColumn::FlowAt);
    EXPECT_NEAR(columns[2].at->si(), 3e5, 1e-6);
    EXPECT_EQ(columns[3].meaning, NozzleColumn::PressureMin);
    EXPECT_EQ(columns[4].meaning, NozzleColumn::PressureMax);
    EXPECT_EQ(columns[4].unit, Unit::Bar);
    EXPECT_EQ(columns[5].meaning, NozzleColumn::Droplets);
    EXPECT_EQ(columns[6].meaning, NozzleColumn::Price);
    EXPECT_FALSE(columns[7].meaning);
    EXPECT_EQ(columns[8].meaning, NozzleColumn::FlowAt);
    EXPECT_EQ(columns[8].unit, Unit::GallonUsPerMinute);
    EXPECT_FALSE(columns[9].meaning);  // the lowest pressure is taken
}

TEST(NozzleCsv, SemicolonsDecimalCommasAndUnitsInHeadings) {
    const CsvPreview preview = previewNozzles(
        "\xEF\xBB\xBFNozzle;Flow (L/min);At (bar);Min pressure (bar);Max pressure "
        "(bar);Droplets;Price\r\n"
        "Blue;1,18;3;1;6;VC bis;4,50\r\n"
        "Red;1,58;43,5 psi;1,5;6;VC 1,5-2; \r\n",
        UnitSystem::Us);
    ASSERT_FALSE(preview.problem);
    ASSERT_EQ(preview.rows.size(), 2U);
    EXPECT_FALSE(preview.rows[0].isGood());
    EXPECT_EQ(preview.rows[0].row, 1);
    EXPECT_EQ(preview.rows[0].problems.at(0).column, "Droplets");
    EXPECT_EQ(preview.rows[0].problems.at(0).problem.code, "band_category_unknown");
    ASSERT_EQ(preview.good(), 1);
    const Nozzle red = preview.nozzles().at(0);
    EXPECT_NEAR(in(red.flow->value, Unit::LitrePerMinute), 1.58, 1e-12);
    EXPECT_EQ(red.flow->typed, "1,58 L/min");
    EXPECT_NEAR(in(red.at->value, Unit::Psi), 43.5, 1e-9);
    EXPECT_EQ(red.droplets->value.size(), 1U);
    EXPECT_EQ(preview.rows[1].shown.at(1), "1.58 L/min");
    EXPECT_EQ(preview.rows[1].shown.at(2), "43.5 psi");
}

TEST(NozzleCsv, FlowsAtPressuresAreATable) {
    const CsvPreview preview = previewNozzles(
        "name,L/min at 2 bar,L/min at 1 bar,L/min at 4 bar\nA,0.98,0.69,1.39\n"
        "B,1.2,,\n",
        UnitSystem::Metric);
    ASSERT_EQ(preview.good(), 2);
    const auto nozzles = preview.nozzles();
    ASSERT_EQ(nozzles[0].table->value.size(), 3U);
    EXPECT_NEAR(in(nozzles[0].table->value[0].pressure, Unit::Bar), 1, 1e-12);
    EXPECT_FALSE(nozzles[1].table);
    EXPECT_NEAR(in(nozzles[1].at->value, Unit::Bar), 2, 1e-12);
}

TEST(NozzleCsv, AFlowWhosePressureIsNotSaidIsRefused) {
    std::vector<CsvColumn> columns = guessColumns({"name", "flow a", "flow b"});
    columns[1].meaning = columns[2].meaning = NozzleColumn::FlowAt;
    columns[1].at = make<Pressure>(2, Unit::Bar);
    columns[2].at.reset();
    const CsvPreview preview = previewNozzles("name,flow a,flow b\nA,0.98,1.39\n", columns, {});
    ASSERT_EQ(preview.rows.size(), 1U);
    ASSERT_FALSE(preview.rows[0].isGood());
    EXPECT_EQ(preview.rows[0].problems[0].problem.code, "csv_flow_without_pressure");
}

TEST(NozzleCsv, BadRowsSayWhyAndLetTheRestIn) {
    const CsvPreview preview = previewNozzles(
        "name,flow,at,pressure_min,pressure_max,kind\n"
        "good,1.2,3,1,6,flat fan\n"
        ",1.2,3,1,6,fan\n"
        "good,1.2,3,1,6,fan\n"
        "letters,abc,3,1,6,fan\n"
        "crossed,1.2,3,6,1,fan\n"
        "shape,1.2,3,1,6,cone-ish\n"
        "split,1,2,3,1,6,fan\n"
        "unit,1.2 bar,3,1,6,fan\n"
        "# not a comment,1.2,3,1,6,fan\n"
        ",,,,,\n",
        UnitSystem::Metric);
    ASSERT_FALSE(preview.problem);
    std::vector<std::string> codes;
    const Sentences sentences = Sentences::shipped();
    for (const auto& row : preview.rows) {
        codes.push_back(row.isGood() ? "" : row.problems[0].problem.code);
        for (const auto& problem : row.problems)
            EXPECT_EQ(sentences.of(problem.problem, {}).find('<'), std::string::npos);
    }
    EXPECT_THAT(codes, ElementsAre("", "csv_name_missing", "csv_name_twice", "number_letters",
                                   "nozzle_range_crossed", "csv_word_unknown", "csv_too_many_cells",
                                   "unit_wrong_kind", ""));
    EXPECT_EQ(preview.rows[4].problems[0].column, "pressure_min");
    EXPECT_EQ(preview.good(), 2);
}

TEST(NozzleCsv, TablesThatCannotBeRead) {
    EXPECT_EQ(previewNozzles("", UnitSystem::Metric).problem->code, "csv_empty");
    EXPECT_EQ(previewNozzles("name,flow\n", UnitSystem::Metric).problem->code, "csv_empty");
    EXPECT_EQ(previewNozzles("flow,at\n1,3\n", UnitSystem::Metric).problem->code,
              "csv_no_name_column");
    EXPECT_EQ(previewNozzles("name,at\nA,3\n", UnitSystem::Metric).problem->code,
              "csv_no_flow_column");
    auto columns = guessColumns({"name", "flow", "at"});
    columns[2].meaning = NozzleColumn::Flow;
    EXPECT_EQ(previewNozzles("name,flow,at\nA,1,3\n", columns, {}).problem->code,
              "csv_column_twice");
}

TEST(NozzleCsv, APersonsMatchingCounts) {
    auto columns = guessColumns({"what", "how much", "pressure"});
    EXPECT_FALSE(columns[0].meaning);
    columns[0].meaning = NozzleColumn::Name;
    columns[1].meaning = NozzleColumn::Flow;
    columns[1].unit = Unit::GallonUsPerMinute;
    const CsvPreview preview =
        previewNozzles("what,how much,pressure\nA,0.4,40 psi\n", columns, {});
    ASSERT_EQ(preview.good(), 1);
    EXPECT_NEAR(in(preview.nozzles()[0].flow->value, Unit::GallonUsPerMinute), 0.4, 1e-12);
}

}  // namespace
}  // namespace bw
