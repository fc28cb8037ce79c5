// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/units/quantity.h"

namespace bw {

/// What kind of quantity a unit measures. `None` is a plain number.
enum class Dimension {
    None,
    Length,
    Area,
    Duration,
    Speed,
    Pressure,
    Volume,
    Flow,
    AreaRate,
    Mass,
    Density,
    MassRate,
    KinematicViscosity,
};

/// Maps a quantity type to its Dimension at compile time.
template <class Q>
struct DimensionOf;
template <>
struct DimensionOf<double> {
    static constexpr auto value = Dimension::None;
};
template <>
struct DimensionOf<Length> {
    static constexpr auto value = Dimension::Length;
};
template <>
struct DimensionOf<Area> {
    static constexpr auto value = Dimension::Area;
};
template <>
struct DimensionOf<Duration> {
    static constexpr auto value = Dimension::Duration;
};
template <>
struct DimensionOf<Speed> {
    static constexpr auto value = Dimension::Speed;
};
template <>
struct DimensionOf<Pressure> {
    static constexpr auto value = Dimension::Pressure;
};
template <>
struct DimensionOf<Volume> {
    static constexpr auto value = Dimension::Volume;
};
template <>
struct DimensionOf<Flow> {
    static constexpr auto value = Dimension::Flow;
};
template <>
struct DimensionOf<AreaRate> {
    static constexpr auto value = Dimension::AreaRate;
};
template <>
struct DimensionOf<Mass> {
    static constexpr auto value = Dimension::Mass;
};
template <>
struct DimensionOf<Density> {
    static constexpr auto value = Dimension::Density;
};
template <>
struct DimensionOf<MassRate> {
    static constexpr auto value = Dimension::MassRate;
};
template <>
struct DimensionOf<KinematicViscosity> {
    static constexpr auto value = Dimension::KinematicViscosity;
};
template <class Q>
inline constexpr Dimension kDimensionOf = DimensionOf<Q>::value;

/// A quantity whose dimension is known only at run time, in SI units. The edge of the typed world:
/// parser, formatter, file and problem arguments use it; the engines never do.
struct AnyQuantity {
    Dimension dimension = Dimension::None;
    double si = 0.0;
    bool operator==(const AnyQuantity&) const = default;
};
template <class Q>
constexpr AnyQuantity anyQuantity(Q q) {
    if constexpr (std::is_same_v<Q, double>)
        return {Dimension::None, q};
    else
        return {kDimensionOf<Q>, q.si()};
}

enum class Unit {
    None,
    Percent,
    Metre,
    Centimetre,
    Millimetre,
    Micrometre,
    Inch,
    Foot,
    SquareMetre,
    Hectare,
    Acre,
    Second,
    Minute,
    Hour,
    MetrePerSecond,
    KilometrePerHour,
    MilePerHour,
    Pascal,
    Kilopascal,
    Bar,
    Psi,
    CubicMetre,
    Litre,
    Millilitre,
    GallonUs,
    FluidOunceUs,
    GallonImperial,
    CubicMetrePerSecond,
    LitrePerMinute,
    GallonUsPerMinute,
    GallonImperialPerMinute,
    MillilitrePerMinute,
    FluidOunceUsPerMinute,
    LitrePerHectare,
    GallonUsPerAcre,
    GallonImperialPerAcre,
    Kilogram,
    Tonne,
    Pound,
    KilogramPerLitre,
    KilogramPerCubicMetre,
    PoundPerGallonUs,
    KilogramPerHectare,
    PoundPerAcre,
    SquareMillimetrePerSecond,
};

/// One unit: its symbol as shown, other spellings that people type, and its exact size in SI.
struct UnitInfo {
    Unit unit;
    Dimension dimension;
    std::string_view symbol;
    double inSi;                 ///< one of this unit in SI
    std::string_view spellings;  ///< space-separated, lower case; matched without case
};

/// Every known unit. Sizes are exact by definition of the inch, pound and gallon.
std::span<const UnitInfo> units();
const UnitInfo& info(Unit unit);
/// The unit for a symbol or spelling, without case; nothing if unknown. "gal" alone names no unit:
/// US and imperial gallons differ by a fifth.
std::optional<Unit> unitFor(std::string_view spelling);

/// Which units a machine or a printed sheet shows. `Uk` is metric with mph.
enum class UnitSystem { Metric, Us, Uk };
/// "metric", "us", "uk".
std::string_view name(UnitSystem system);
std::optional<UnitSystem> unitSystemFor(std::string_view name);
/// The unit in which a system shows a dimension (pressure: bar or psi, flow: L/min or gal/min …).
Unit displayUnit(UnitSystem system, Dimension dimension);
/// As `displayUnit`, for small lengths such as nozzle spacing and holes (m → m, US → in).
Unit smallLengthUnit(UnitSystem system);

constexpr double toUnit(double si, const UnitInfo& u) {
    return si / u.inSi;
}
double toUnit(AnyQuantity q, Unit unit);
template <class Q>
double in(Q q, Unit unit) {
    return q.si() / info(unit).inSi;
}
template <class Q>
Q make(double number, Unit unit) {
    return Q::fromSi(number * info(unit).inSi);
}

}  // namespace bw
