// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/format.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "core/units/parse.h"

namespace bw {
namespace {

TEST(Format, SensibleDigitsForEachUnit) {
    EXPECT_EQ(formatNumber(62.5, Unit::Psi), "62.5");
    EXPECT_EQ(formatNumber(62.534, Unit::Psi), "62.5");
    EXPECT_EQ(formatNumber(40, Unit::Psi), "40");
    EXPECT_EQ(formatNumber(2.7654, Unit::Bar), "2.77");
    EXPECT_EQ(formatNumber(0.4, Unit::GallonUsPerMinute), "0.4");
    EXPECT_EQ(formatNumber(0.16835, Unit::GallonUsPerMinute), "0.168");
    EXPECT_EQ(formatNumber(1.1847, Unit::LitrePerMinute), "1.18");
    EXPECT_EQ(formatNumber(13.26, Unit::KilometrePerHour), "13.3");
    EXPECT_EQ(formatNumber(152.4, Unit::LitrePerHectare), "152");
    EXPECT_EQ(formatNumber(1234.6, Unit::Hectare), "1235");
    EXPECT_EQ(formatNumber(0, Unit::Bar), "0");
}

TEST(Format, RoundingOverAPowerOfTenKeepsNoStrayDigits) {
    EXPECT_EQ(formatNumber(9.996, Unit::Bar), "10");
    EXPECT_EQ(formatNumber(99.96, Unit::Psi), "100");
    EXPECT_EQ(formatNumber(-0.0001, Unit::Bar), "0");
    EXPECT_EQ(formatNumber(-2.5, Unit::Bar), "-2.5");
}

TEST(Format, DecimalMarkAndSymbol) {
    EXPECT_EQ(format(make<Pressure>(2.8, Unit::Bar), {UnitSystem::Metric, ','}), "2,8 bar");
    EXPECT_EQ(format(make<Pressure>(2.8, Unit::Bar), {UnitSystem::Us, '.'}), "40.6 psi");
    EXPECT_EQ(format(make<Speed>(10, Unit::MilePerHour), {UnitSystem::Uk, '.'}), "10 mph");
    EXPECT_EQ(format(make<AreaRate>(150, Unit::LitrePerHectare), {UnitSystem::Uk, '.'}),
              "150 L/ha");
    EXPECT_EQ(format(anyQuantity(0.25), NumberStyle{}), "0.25");
}

TEST(Format, SmallLengthsAreSaidInSmallUnits) {
    EXPECT_EQ(format(make<Length>(20, Unit::Inch), {UnitSystem::Us, '.'}), "20 in");
    EXPECT_EQ(format(make<Length>(100, Unit::Foot), {UnitSystem::Us, '.'}), "100 ft");
    EXPECT_EQ(format(make<Length>(0.5, Unit::Metre), {UnitSystem::Metric, '.'}), "0.5 m");
    EXPECT_EQ(format(make<Length>(13.7, Unit::Millimetre), {UnitSystem::Metric, '.'}), "13.7 mm");
    EXPECT_EQ(format(make<Length>(13.7, Unit::Millimetre), {UnitSystem::Uk, '.'}), "13.7 mm");
    EXPECT_EQ(format(Length{}, {UnitSystem::Metric, '.'}), "0 m");
}

TEST(Format, WhatIsNoNumberIsADash) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(formatNumber(nan, Unit::Bar), "—");
    EXPECT_EQ(formatFixed(std::numeric_limits<double>::infinity(), 2), "—");
    EXPECT_EQ(formatExact(nan), "—");
    EXPECT_EQ(format(Pressure::fromSi(nan), NumberStyle{}), "— bar");
}

TEST(Format, FixedAndExact) {
    EXPECT_EQ(formatFixed(1.005, 1), "1.0");
    EXPECT_EQ(formatFixed(2.5, 2, ','), "2,50");
    EXPECT_EQ(formatFixed(-0.001, 2), "0.00");
    EXPECT_EQ(formatExact(0.1), "0.1");
    EXPECT_EQ(formatExact(1234567.25), "1234567.25");
    EXPECT_EQ(formatExact(2.8, ','), "2,8");
    EXPECT_EQ(formatFixed(1e300, 1).size(), 303U);
}

/// A value shown exactly and read again is the same to 12 digits, in every unit and mark.
TEST(Format, ExactTextsReadBack) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> exponent(-6, 6);
    for (const auto& unit : units()) {
        for (int i = 0; i < 200; ++i) {
            const double number = std::pow(10.0, exponent(random));
            const bool isComma = i % 2 == 1;
            const std::string text =
                formatExact(number, isComma ? ',' : '.') + " " + std::string(unit.symbol);
            const auto read =
                parseQuantity(text, unit.dimension, unit.unit,
                              isComma ? DecimalMarks::OwnComma : DecimalMarks::OwnPoint);
            ASSERT_TRUE(read.isOk()) << text << ": " << read.problem().code;
            EXPECT_NEAR(read->number, number, 1e-11 * number) << text;
            EXPECT_EQ(read->unit, unit.unit) << text;
        }
    }
}

/// Three figures are never more than half a per cent off.
TEST(Format, ShownNumbersAreCloseToTheValue) {
    std::mt19937 random(8);
    std::uniform_real_distribution<double> value(1, 999);
    for (int i = 0; i < 5000; ++i) {
        const double number = value(random);
        EXPECT_NEAR(std::stod(formatNumber(number, Unit::Psi)), number, 0.005 * number + 0.05);
        EXPECT_NEAR(std::stod(formatNumber(number, Unit::Bar)), number, 0.005 * number);
    }
}

}  // namespace
}  // namespace bw
