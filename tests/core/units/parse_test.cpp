// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/parse.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace bw {
namespace {

std::string codeOf(std::string_view text, Dimension dimension, std::optional<Unit> bare,
                   DecimalMarks marks) {
    const auto read = parseQuantity(text, dimension, bare, marks);
    return read ? "" : read.problem().code;
}

struct Read {
    const char* text;
    Dimension dimension;
    Unit bare;
    double number;
    Unit unit;
};

TEST(ParseQuantity, ReadsWhatPeopleType) {
    using D = Dimension;
    using U = Unit;
    const std::vector<Read> cases{
        {"40 psi", D::Pressure, U::Bar, 40, U::Psi},
        {"2,8 bar", D::Pressure, U::Bar, 2.8, U::Bar},
        {"15mph", D::Speed, U::KilometrePerHour, 15, U::MilePerHour},
        {"7 1/2 gal/ac", D::AreaRate, U::LitrePerHectare, 7.5, U::GallonUsPerAcre},
        {"150", D::AreaRate, U::LitrePerHectare, 150, U::LitrePerHectare},
        {"2.8", D::Pressure, U::Bar, 2.8, U::Bar},
        {"  3 BAR ", D::Pressure, U::Psi, 3, U::Bar},
        {"12 km / h", D::Speed, U::MilePerHour, 12, U::KilometrePerHour},
        {"0,5m", D::Length, U::Inch, 0.5, U::Metre},
        {"20\"", D::Length, U::Metre, 20, U::Inch},
        {"100'", D::Length, U::Metre, 100, U::Foot},
        {"1/2 in", D::Length, U::Metre, 0.5, U::Inch},
        {"7½ gpa", D::AreaRate, U::LitrePerHectare, 7.5, U::GallonUsPerAcre},
        {"¾ in", D::Length, U::Metre, 0.75, U::Inch},
        {"100 US gal", D::Volume, U::Litre, 100, U::GallonUs},
        {"100 imp gal", D::Volume, U::Litre, 100, U::GallonImperial},
        {"20 fl oz", D::Volume, U::Litre, 20, U::FluidOunceUs},
        {"-0.5 bar", D::Pressure, U::Bar, -0.5, U::Bar},
        {"\u22120.5 bar", D::Pressure, U::Bar, -0.5, U::Bar},
        {"+3", D::Pressure, U::Bar, 3, U::Bar},
        {".5 bar", D::Pressure, U::Bar, 0.5, U::Bar},
        {"5. bar", D::Pressure, U::Bar, 5, U::Bar},
        {"1e-3 m", D::Length, U::Metre, 0.001, U::Metre},
        {"2e3mL", D::Volume, U::Litre, 2000, U::Millilitre},
        {"40\u00a0psi", D::Pressure, U::Bar, 40, U::Psi},
        {"3\u202fbar", D::Pressure, U::Psi, 3, U::Bar},
        {"10 μm", D::Length, U::Metre, 10, U::Micrometre},
        {"1 mm²/s", D::KinematicViscosity, U::SquareMillimetrePerSecond, 1,
         U::SquareMillimetrePerSecond},
        {"10.65 lb/gal", D::Density, U::KilogramPerLitre, 10.65, U::PoundPerGallonUs},
        {"30 %", D::None, U::None, 30, U::Percent},
        {"0.3", D::None, U::None, 0.3, U::None},
        {"0", D::Pressure, U::Bar, 0, U::Bar},
    };
    for (const auto& c : cases) {
        const auto read = parseQuantity(c.text, c.dimension, c.bare);
        ASSERT_TRUE(read.isOk()) << c.text << ": " << read.problem().code;
        EXPECT_EQ(read->unit, c.unit) << c.text;
        EXPECT_DOUBLE_EQ(read->number, c.number) << c.text;
        EXPECT_EQ(read->quantity.dimension, c.dimension) << c.text;
        EXPECT_DOUBLE_EQ(read->quantity.si, c.number * info(c.unit).inSi) << c.text;
    }
}

TEST(ParseQuantity, SaysWhetherTheUnitWasTyped) {
    EXPECT_TRUE(parseQuantity("3 bar", Dimension::Pressure, Unit::Psi)->unitWasTyped);
    EXPECT_FALSE(parseQuantity("3", Dimension::Pressure, Unit::Psi)->unitWasTyped);
}

TEST(ParseQuantity, TypedFormGivesTheQuantity) {
    const auto read = parse<Speed>("15mph");
    ASSERT_TRUE(read.isOk());
    EXPECT_DOUBLE_EQ(read->si(), 15 * 0.44704);
    EXPECT_EQ(parse<Speed>("15").problem().code, "unit_missing");
    EXPECT_EQ(parse<Speed>("15 bar").problem().code, "unit_wrong_kind");
}

struct Refused {
    const char* text;
    const char* code;
    DecimalMarks marks = DecimalMarks::OwnPoint;
};

TEST(ParseQuantity, RefusesWhatItWouldHaveToGuess) {
    constexpr auto comma = DecimalMarks::OwnComma;
    constexpr auto json = DecimalMarks::PointOnly;
    const std::vector<Refused> cases{
        {"", "number_missing"},
        {"   ", "number_missing"},
        {"bar", "number_letters"},
        {"abc", "number_letters"},
        {"1,250 bar", "number_group_mark"},
        {"1.250", "number_group_mark", comma},
        {"1,250.5", "number_group_mark"},
        {"1.250,5", "number_group_mark", comma},
        {"1 250", "number_group_mark"},
        {"1 250 bar", "number_group_mark"},
        {"1'250 bar", "number_group_mark"},
        {"1\u2019250 bar", "number_group_mark"},
        {"1.250.000", "number_group_mark"},
        {"12,500", "number_group_mark"},
        {"2,8 bar", "number_decimal_comma", json},
        {"2,8", "number_decimal_comma", json},
        {"3 gal", "unit_gallon_which"},
        {"3 Gallons", "unit_gallon_which"},
        {"3 furlong", "unit_unknown"},
        {"3 lph", "unit_unknown"},
        {"3 mph", "unit_wrong_kind"},
        {"3 L/ha", "unit_wrong_kind"},
        {"1e999 bar", "number_not_finite"},
        {"1e308 bar", "number_not_finite"},
        {"nan", "number_letters"},
        {"inf", "number_letters"},
        {"0x10", "unit_unknown"},
        {"3..5", "number_group_mark"},
        {"--3", "number_letters"},
        {"+-3", "number_letters"},
        {"3-5 bar", "number_letters"},
        {"1/0 bar", "number_letters"},
        {"7 3/2 bar", "number_letters"},
        {"7.5 1/2 bar", "number_letters"},
        {"7 1/ bar", "number_letters"},
        {"-", "number_letters"},
        {".", "number_letters"},
        {"3 bar 4", "unit_unknown"},
        {"3 bar bar", "unit_unknown"},
        {"１２", "number_letters"},
    };
    for (const auto& c : cases)
        EXPECT_EQ(codeOf(c.text, Dimension::Pressure, Unit::Bar, c.marks), c.code) << c.text;
}

TEST(ParseQuantity, OwnMarkIsNeverAGroupMark) {
    EXPECT_DOUBLE_EQ(*parseNumber("1.250", DecimalMarks::OwnPoint), 1.25);
    EXPECT_DOUBLE_EQ(*parseNumber("1,250", DecimalMarks::OwnComma), 1.25);
    EXPECT_DOUBLE_EQ(*parseNumber("1.250", DecimalMarks::PointOnly), 1.25);
    // The other mark is taken where it can only be a decimal one.
    EXPECT_DOUBLE_EQ(*parseNumber("12.5", DecimalMarks::OwnComma), 12.5);
    EXPECT_DOUBLE_EQ(*parseNumber("12,5", DecimalMarks::OwnPoint), 12.5);
    EXPECT_DOUBLE_EQ(*parseNumber("0,125", DecimalMarks::OwnPoint), 0.125);
    EXPECT_DOUBLE_EQ(*parseNumber("1234,567", DecimalMarks::OwnPoint), 1234.567);
    EXPECT_DOUBLE_EQ(*parseNumber("1,2500", DecimalMarks::OwnPoint), 1.25);
}

TEST(ParseQuantity, FractionsKeepTheirSign) {
    EXPECT_DOUBLE_EQ(*parseNumber("-7 1/2"), -7.5);
    EXPECT_DOUBLE_EQ(*parseNumber("-0 1/2"), -0.5);
    EXPECT_DOUBLE_EQ(*parseNumber("-1/2"), -0.5);
    EXPECT_DOUBLE_EQ(*parseNumber("+1/2"), 0.5);
    EXPECT_DOUBLE_EQ(*parseNumber("3/2"), 1.5);
}

TEST(ParseQuantity, ProblemsNameWhatWasTyped) {
    const auto read = parseQuantity("3 mph", Dimension::Pressure, Unit::Bar);
    ASSERT_FALSE(read.isOk());
    const auto& arguments = read.problem().arguments;
    EXPECT_EQ(arguments[0], (Argument{"typed", std::string("3 mph")}));
    EXPECT_EQ(arguments[1], (Argument{"unit", std::string("mph")}));
    EXPECT_EQ(arguments[2], (Argument{"example", std::string("bar")}));
}

/// Whatever is typed is read or refused; what is read is finite, and no refusal is without a code.
TEST(ParseQuantity, AnyTextIsReadOrRefused) {
    std::mt19937 random(4711);
    const std::string alphabet = "0123456789.,'-+/ eE%\"barpsimhgalLckt\t\xc2\xbd\xe2\x88\x92\xff";
    std::uniform_int_distribution<std::size_t> letter(0, alphabet.size() - 1);
    std::uniform_int_distribution<int> length(0, 12);
    std::uniform_int_distribution<int> pick(0, 2);
    int readCount = 0;
    for (int i = 0; i < 200000; ++i) {
        std::string text;
        for (int n = length(random); n > 0; --n) text += alphabet[letter(random)];
        const auto marks = static_cast<DecimalMarks>(pick(random));
        const auto read = parseQuantity(text, Dimension::Pressure, Unit::Bar, marks);
        if (!read) {
            EXPECT_FALSE(read.problem().code.empty());
            continue;
        }
        ++readCount;
        ASSERT_TRUE(std::isfinite(read->quantity.si)) << text;
        ASSERT_EQ(read->quantity.dimension, Dimension::Pressure) << text;
    }
    EXPECT_GT(readCount, 1000);
}

/// Any number written with a point or a comma as the reader's own mark comes back.
TEST(ParseQuantity, ReadsBackAnyNumberInTheReadersOwnMark) {
    std::mt19937 random(42);
    std::uniform_real_distribution<double> value(-1e6, 1e6);
    for (int i = 0; i < 20000; ++i) {
        const double number = value(random);
        std::string text = std::to_string(number);
        EXPECT_DOUBLE_EQ(*parseNumber(text, DecimalMarks::OwnPoint), std::stod(text));
        std::string comma = text;
        comma[comma.find('.')] = ',';
        EXPECT_DOUBLE_EQ(*parseNumber(comma, DecimalMarks::OwnComma), std::stod(text));
    }
}

}  // namespace
}  // namespace bw
