// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/unit.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace bw {
namespace {

// Exact by definition (international yard and pound agreement of 1959; US gallon 231 in³;
// imperial gallon 4.54609 L, UK Units of Measurement Regulations 1995; standard gravity 9.80665).
constexpr double kInch = 0.0254;
constexpr double kFoot = 12 * kInch;
constexpr double kMile = 5280 * kFoot;
constexpr double kPound = 0.45359237;
constexpr double kGravity = 9.80665;
constexpr double kGallonUs = 231 * kInch * kInch * kInch;
constexpr double kGallonImperial = 4.54609e-3;
constexpr double kFluidOunceUs = kGallonUs / 128;
constexpr double kAcre = 43560 * kFoot * kFoot;
constexpr double kPsi = kPound * kGravity / (kInch * kInch);

using D = Dimension;
constexpr std::array kUnits = {
    UnitInfo{Unit::None, D::None, "", 1.0, ""},
    UnitInfo{Unit::Percent, D::None, "%", 0.01, "% percent pct"},
    UnitInfo{Unit::Metre, D::Length, "m", 1.0, "m metre metres meter meters"},
    UnitInfo{Unit::Centimetre, D::Length, "cm", 0.01, "cm"},
    UnitInfo{Unit::Millimetre, D::Length, "mm", 0.001, "mm"},
    UnitInfo{Unit::Micrometre, D::Length, "µm", 1e-6, "µm um micron microns"},
    UnitInfo{Unit::Inch, D::Length, "in", kInch, "in inch inches \""},
    UnitInfo{Unit::Foot, D::Length, "ft", kFoot, "ft foot feet '"},
    UnitInfo{Unit::SquareMetre, D::Area, "m²", 1.0, "m² m2"},
    UnitInfo{Unit::Hectare, D::Area, "ha", 1e4, "ha hectare hectares"},
    UnitInfo{Unit::Acre, D::Area, "ac", kAcre, "ac acre acres"},
    UnitInfo{Unit::Second, D::Duration, "s", 1.0, "s sec second seconds"},
    UnitInfo{Unit::Minute, D::Duration, "min", 60.0, "min minute minutes"},
    UnitInfo{Unit::Hour, D::Duration, "h", 3600.0, "h hr hour hours"},
    UnitInfo{Unit::MetrePerSecond, D::Speed, "m/s", 1.0, "m/s"},
    UnitInfo{Unit::KilometrePerHour, D::Speed, "km/h", 1.0 / 3.6, "km/h kmh kph km/hr"},
    UnitInfo{Unit::MilePerHour, D::Speed, "mph", kMile / 3600, "mph mi/h mile/h miles/h"},
    UnitInfo{Unit::Pascal, D::Pressure, "Pa", 1.0, "pa"},
    UnitInfo{Unit::Kilopascal, D::Pressure, "kPa", 1e3, "kpa"},
    UnitInfo{Unit::Bar, D::Pressure, "bar", 1e5, "bar bars"},
    UnitInfo{Unit::Psi, D::Pressure, "psi", kPsi, "psi psig lb/in2 lb/in²"},
    UnitInfo{Unit::CubicMetre, D::Volume, "m³", 1.0, "m³ m3"},
    UnitInfo{Unit::Litre, D::Volume, "L", 1e-3, "l litre litres liter liters"},
    UnitInfo{Unit::Millilitre, D::Volume, "mL", 1e-6, "ml"},
    UnitInfo{Unit::GallonUs, D::Volume, "US gal", kGallonUs, "usgal gal(us) galus"},
    UnitInfo{Unit::FluidOunceUs, D::Volume, "fl oz", kFluidOunceUs, "floz fl.oz fl.oz. usfloz"},
    UnitInfo{Unit::GallonImperial, D::Volume, "imp gal", kGallonImperial, "impgal ukgal gal(imp)"},
    UnitInfo{Unit::CubicMetrePerSecond, D::Flow, "m³/s", 1.0, "m³/s m3/s"},
    UnitInfo{Unit::LitrePerMinute, D::Flow, "L/min", 1e-3 / 60, "l/min lpm l/minute"},
    UnitInfo{Unit::GallonUsPerMinute, D::Flow, "gal/min", kGallonUs / 60,
             "gal/min gpm usgal/min usgpm"},
    UnitInfo{Unit::GallonImperialPerMinute, D::Flow, "imp gal/min", kGallonImperial / 60,
             "impgal/min ukgal/min"},
    UnitInfo{Unit::MillilitrePerMinute, D::Flow, "mL/min", 1e-6 / 60, "ml/min"},
    UnitInfo{Unit::FluidOunceUsPerMinute, D::Flow, "fl oz/min", kFluidOunceUs / 60,
             "floz/min fl.oz/min"},
    UnitInfo{Unit::LitrePerHectare, D::AreaRate, "L/ha", 1e-3 / 1e4, "l/ha lha lph"},
    UnitInfo{Unit::GallonUsPerAcre, D::AreaRate, "gal/ac", kGallonUs / kAcre,
             "gal/ac gpa gal/acre usgal/ac usgal/acre gallons/acre"},
    UnitInfo{Unit::GallonImperialPerAcre, D::AreaRate, "imp gal/ac", kGallonImperial / kAcre,
             "impgal/ac impgal/acre ukgal/ac"},
    UnitInfo{Unit::Kilogram, D::Mass, "kg", 1.0, "kg"},
    UnitInfo{Unit::Tonne, D::Mass, "t", 1e3, "t tonne tonnes"},
    UnitInfo{Unit::Pound, D::Mass, "lb", kPound, "lb lbs pound pounds"},
    UnitInfo{Unit::KilogramPerLitre, D::Density, "kg/L", 1e3, "kg/l"},
    UnitInfo{Unit::KilogramPerCubicMetre, D::Density, "kg/m³", 1.0, "kg/m³ kg/m3"},
    UnitInfo{Unit::PoundPerGallonUs, D::Density, "lb/gal", kPound / kGallonUs,
             "lb/gal lb/usgal lbs/gal"},
    UnitInfo{Unit::KilogramPerHectare, D::MassRate, "kg/ha", 1e-4, "kg/ha"},
    UnitInfo{Unit::PoundPerAcre, D::MassRate, "lb/ac", kPound / kAcre, "lb/ac lb/acre lbs/ac"},
    UnitInfo{Unit::SquareMillimetrePerSecond, D::KinematicViscosity, "mm²/s", 1e-6,
             "mm²/s mm2/s cst"},
};

std::string folded(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == ' ' || c == '\t') continue;
        out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return out;
}

bool listed(std::string_view spellings, std::string_view word) {
    while (!spellings.empty()) {
        const auto end = spellings.find(' ');
        if (spellings.substr(0, end) == word) return true;
        if (end == std::string_view::npos) break;
        spellings.remove_prefix(end + 1);
    }
    return false;
}

}  // namespace

std::span<const UnitInfo> units() {
    return kUnits;
}

const UnitInfo& info(Unit unit) {
    return kUnits[static_cast<std::size_t>(unit)];
}

std::optional<Unit> unitFor(std::string_view spelling) {
    const std::string word = folded(spelling);
    if (word.empty()) return std::nullopt;
    for (const auto& u : kUnits) {
        if (listed(u.spellings, word)) return u.unit;
    }
    return std::nullopt;
}

std::string_view name(UnitSystem system) {
    switch (system) {
        case UnitSystem::Metric:
            return "metric";
        case UnitSystem::Us:
            return "us";
        case UnitSystem::Uk:
            return "uk";
    }
    return "metric";
}

std::optional<UnitSystem> unitSystemFor(std::string_view text) {
    for (const auto s : {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk}) {
        if (name(s) == text) return s;
    }
    return std::nullopt;
}

Unit displayUnit(UnitSystem system, Dimension dimension) {
    const bool us = system == UnitSystem::Us;
    switch (dimension) {
        case Dimension::None:
            return Unit::None;
        case Dimension::Length:
            return us ? Unit::Foot : Unit::Metre;
        case Dimension::Area:
            return us ? Unit::Acre : Unit::Hectare;
        case Dimension::Duration:
            return Unit::Second;
        case Dimension::Speed:
            return system == UnitSystem::Metric ? Unit::KilometrePerHour : Unit::MilePerHour;
        case Dimension::Pressure:
            return us ? Unit::Psi : Unit::Bar;
        case Dimension::Volume:
            return us ? Unit::GallonUs : Unit::Litre;
        case Dimension::Flow:
            return us ? Unit::GallonUsPerMinute : Unit::LitrePerMinute;
        case Dimension::AreaRate:
            return us ? Unit::GallonUsPerAcre : Unit::LitrePerHectare;
        case Dimension::Mass:
            return us ? Unit::Pound : Unit::Kilogram;
        case Dimension::Density:
            return us ? Unit::PoundPerGallonUs : Unit::KilogramPerLitre;
        case Dimension::MassRate:
            return us ? Unit::PoundPerAcre : Unit::KilogramPerHectare;
        case Dimension::KinematicViscosity:
            return Unit::SquareMillimetrePerSecond;
    }
    return Unit::None;
}

Unit smallLengthUnit(UnitSystem system) {
    return system == UnitSystem::Us ? Unit::Inch : Unit::Metre;
}

double toUnit(AnyQuantity q, Unit unit) {
    return q.si / info(unit).inSi;
}

}  // namespace bw
