// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>

#include "core/base/csv_text.h"
#include "core/units/unit.h"

namespace bw {
namespace {

/// Rounding of a chain of products in double precision, ours and that of GNU units.
constexpr double kRounding = 1e-14;

CsvTable reference() {
    std::ifstream file(BW_SOURCE_DIR "/tests/reference/unit_conversions.csv", std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return parseCsv(text.str());
}

const UnitInfo* unitOf(std::string_view symbol) {
    for (const auto& unit : units()) {
        if (unit.symbol == symbol) return &unit;
    }
    return nullptr;
}

std::string siOf(Dimension dimension) {
    switch (dimension) {
        case Dimension::None:
            return "1";
        case Dimension::Length:
            return "m";
        case Dimension::Area:
            return "m^2";
        case Dimension::Duration:
            return "s";
        case Dimension::Speed:
            return "m/s";
        case Dimension::Pressure:
            return "Pa";
        case Dimension::Volume:
            return "m^3";
        case Dimension::Flow:
            return "m^3/s";
        case Dimension::AreaRate:
            return "m";
        case Dimension::Mass:
            return "kg";
        case Dimension::Density:
            return "kg/m^3";
        case Dimension::MassRate:
            return "kg/m^2";
        case Dimension::KinematicViscosity:
            return "m^2/s";
    }
    return {};
}

TEST(Conversions, EveryUnitIsTheSizeThatGnuUnitsSays) {
    const CsvTable table = reference();
    std::set<std::string_view> checked;
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const UnitInfo* unit = unitOf(table.at(row, "symbol"));
        ASSERT_NE(unit, nullptr) << table.at(row, "symbol");
        const double expected = std::stod(std::string(table.at(row, "in_si")));
        EXPECT_NEAR(unit->inSi, expected, kRounding * expected) << unit->symbol;
        EXPECT_EQ(siOf(unit->dimension), table.at(row, "si")) << unit->symbol;
        checked.insert(unit->symbol);
    }
    for (const auto& unit : units())
        EXPECT_TRUE(checked.count(unit.symbol))
            << unit.symbol << " is not in the reference; run make_unit_conversions.sh";
    std::cout << checked.size() << " units against " << table.at(0, "source") << "\n";
}

std::string outputOf(const std::string& command) {
    std::string out;
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) return out;
    std::array<char, 256> buffer{};
    while (fgets(buffer.data(), static_cast<int>(buffer.size()), pipe)) out += buffer.data();
    return pclose(pipe) == 0 ? out : std::string();
}

TEST(Conversions, TheInstalledGnuUnitsAgrees) {
    if (outputOf("units --version 2>/dev/null").empty())
        GTEST_SKIP() << "GNU units is not installed";
    const CsvTable table = reference();
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const auto expression = std::string(table.at(row, "gnu_expression"));
        const auto answer = outputOf("units -o '%.17g' --terse '" + expression + "' '" +
                                     std::string(table.at(row, "si")) + "'");
        ASSERT_FALSE(answer.empty()) << expression;
        const UnitInfo* unit = unitOf(table.at(row, "symbol"));
        ASSERT_NE(unit, nullptr);
        EXPECT_NEAR(unit->inSi, std::stod(answer), kRounding * unit->inSi) << unit->symbol;
    }
}

TEST(Units, TableIsInTheOrderOfItsEnum) {
    for (std::size_t i = 0; i < units().size(); ++i)
        EXPECT_EQ(static_cast<std::size_t>(units()[i].unit), i) << units()[i].symbol;
}

TEST(Units, EverySymbolAndSpellingNamesItsUnitAlone) {
    std::set<std::string> seen;
    for (const auto& unit : units()) {
        if (unit.unit == Unit::None) continue;
        EXPECT_EQ(unitFor(unit.symbol), unit.unit) << unit.symbol;
        std::istringstream spellings{std::string(unit.spellings)};
        for (std::string spelling; spellings >> spelling;) {
            EXPECT_TRUE(seen.insert(spelling).second) << spelling << " names two units";
            EXPECT_EQ(unitFor(spelling), unit.unit) << spelling;
        }
    }
    EXPECT_FALSE(unitFor("").has_value());
    EXPECT_FALSE(unitFor("gal").has_value());
    EXPECT_FALSE(unitFor("lph").has_value());
}

TEST(Units, EverySystemShowsEveryDimensionInAUnitOfIt) {
    for (const auto system : {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk}) {
        EXPECT_EQ(unitSystemFor(name(system)), system);
        for (const auto& unit : units())
            EXPECT_EQ(info(displayUnit(system, unit.dimension)).dimension, unit.dimension)
                << unit.symbol;
    }
    EXPECT_EQ(displayUnit(UnitSystem::Uk, Dimension::Speed), Unit::MilePerHour);
    EXPECT_EQ(displayUnit(UnitSystem::Uk, Dimension::AreaRate), Unit::LitrePerHectare);
    EXPECT_FALSE(unitSystemFor("imperial").has_value());
}

// 5940 and 600, the constants of the trade, follow from the units (University of Florida IFAS WG013
// and many others print 5940; 600 is exact in metric units).
TEST(Units, TheConstantsOfTheTradeFollow) {
    const Flow us = make<AreaRate>(1, Unit::GallonUsPerAcre) * make<Speed>(1, Unit::MilePerHour) *
                    make<Length>(1, Unit::Inch);
    EXPECT_NEAR(1 / in(us, Unit::GallonUsPerMinute), 5940, 1e-8);
    const Flow metric = make<AreaRate>(1, Unit::LitrePerHectare) *
                        make<Speed>(1, Unit::KilometrePerHour) * make<Length>(1, Unit::Metre);
    EXPECT_NEAR(1 / in(metric, Unit::LitrePerMinute), 600, 1e-9);
}

}  // namespace
}  // namespace bw
