// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/reference/handbook_quantities.h"

#include <sstream>

#include "core/hydraulics/liquid.h"
#include "core/hydraulics/nozzle_law.h"
#include "core/hydraulics/rate_law.h"
#include "core/model/boom_layout.h"
#include "core/model/checks.h"
#include "core/model/nozzle_sizes.h"
#include "core/season/fertiliser.h"
#include "core/season/rate_cost.h"
#include "core/window/speed_window.h"
#include "core/yard/catch_flow.h"
#include "core/yard/catch_test.h"
#include "core/yard/course_speed.h"
#include "core/yard/meter_check.h"
#include "tests/core/reference/handbook_makers.h"
#include "tests/support/builders.h"

namespace bw::handbook {
namespace {

template <class Q>
AnyQuantity any(Q q) {
    return anyQuantity(q);
}

constexpr Length kFoot = Length::fromSi(0.3048);
Length inch() {
    return make<Length>(1, Unit::Inch);
}
Speed mph() {
    return make<Speed>(1, Unit::MilePerHour);
}

/// The size of nozzle plays no part where two states of one nozzle are compared.
const Flow kSomeFlow = make<Flow>(1, Unit::LitrePerMinute);
const Pressure kSomePressure = make<Pressure>(3, Unit::Bar);
const Length kSomeWidth = make<Length>(0.5, Unit::Metre);

NozzleLaw lawThrough(const Inputs& in) {
    return {in.get<Flow>("flow1"), in.get<Pressure>("pressure1")};
}

double pressureRatio(double flowRatio) {
    const NozzleLaw law(kSomeFlow, kSomePressure);
    return law.pressure(kSomeFlow * flowRatio) / kSomePressure;
}

/// Pressure after a change of speed at the same rate.
Pressure pressureAtSpeed(const Inputs& in) {
    const AreaRate rate = sprayRate(kSomeFlow, in.get<Speed>("speed1"), kSomeWidth);
    const NozzleLaw law(kSomeFlow, in.get<Pressure>("pressure1"));
    return law.pressure(neededFlow(rate, in.get<Speed>("speed2"), kSomeWidth));
}

/// Rate at another speed with the flow unchanged.
AreaRate rateAtSpeed(AreaRate rate, Speed before, Speed after) {
    return sprayRate(neededFlow(rate, before, kSomeWidth), after, kSomeWidth);
}

double overApplication(double partSlower) {
    const AreaRate before = AreaRate::fromSi(1);
    const Speed speed = mph();
    return rateAtSpeed(before, speed, speed * (1 - partSlower)) / before - 1;
}

double spacingError(const Inputs& in) {
    const AreaRate believed = sprayRate(kSomeFlow, mph(), in.get<Length>("assumed_spacing"));
    return believed / sprayRate(kSomeFlow, mph(), in.get<Length>("true_spacing")) - 1;
}

double gravity(const Inputs& in) {
    return specificGravity(in.get<Density>("weight"), in.get<Density>("water"));
}

const NozzleSize size(const Inputs& in) {
    return nozzleSize(in.text("size_code")).value();
}

AreaRate waterRate(const Inputs& in) {
    const auto rate = in.get<AreaRate>("rate");
    if (!in.has("conversion_factor"))
        return waterEquivalentRate(rate, specificGravity(in.get<Density>("weight")));
    const double factor = in.number("conversion_factor");
    return waterEquivalentRate(rate, factor * factor);
}

/// 0: narrowed is advised, 1: full bore, for a boom of 10 in spacing whose whole band is one speed.
double changeoverSide(const Inputs& in) {
    const Length spacing = make<Length>(10, Unit::Inch);
    Machine machine = build::machine({nozzlesAcross(in.get<Length>("width"), spacing)}, spacing);
    machine.restrictor.fitted = Sourced<bool>(true);
    machine.restrictor.changeoverFlow = Sourced<Flow>(in.get<Flow>("changeover"));
    const auto speed = in.get<Speed>("speed");
    const Job job = build::job(in.get<AreaRate>("rate"), speed, speed, speed);
    const auto window = speedWindow(machine, build::nozzle(), job);
    return window.value().restrictor.value().position == RestrictorPosition::FullBore ? 1 : 0;
}

/// What comes out at a speed that needs less pressure than the floor.
AreaRate rateOnHighFloor(const Inputs& in) {
    Machine machine = build::machine();
    const Job job = build::job(in.get<AreaRate>("rate"));
    const Speed speed = job.usual->value;
    const auto free = WindowModel::make(machine, build::nozzle(), job);
    machine.limits.pressureFloor =
        Sourced<Pressure>(free.value().neededSensorPressure(speed) * in.number("floor_over_need"));
    return WindowModel::make(machine, build::nozzle(), job).value().at(speed).rate;
}

double strainerWarnings(const Inputs& in) {
    Machine machine = build::machine();
    machine.strainers.lineMesh = Sourced<double>(in.number("line_mesh"));
    machine.strainers.sectionMesh = Sourced<double>(in.number("boom_mesh"));
    return static_cast<double>(checkMachine(machine).size());
}

/// The constant of "rate = constant · flow / (speed · width)" in US units.
double rateConstant(Length widthUnit) {
    const AreaRate rate = sprayRate(make<Flow>(1, Unit::GallonUsPerMinute), mph(), widthUnit);
    return in(rate, Unit::GallonUsPerAcre);
}

const std::map<std::string, Maker>& rateMakers() {
    static const std::map<std::string, Maker> makers{
        {"numerator_check",
         [](const Inputs& i) {
             const bool isUs = i.has("nozzle_flow_gal_min");
             const Flow product =
                 isUs ? neededFlow(make<AreaRate>(1, Unit::GallonUsPerAcre), mph(), inch())
                      : neededFlow(make<AreaRate>(1, Unit::LitrePerHectare),
                                   make<Speed>(1, Unit::KilometrePerHour),
                                   make<Length>(1, Unit::Metre));
             return any(i.get<Flow>("nozzle_flow") / product);
         }},
        {"denominator_check",
         [](const Inputs& i) {
             const auto unit =
                 make<Speed>(1, Unit::KilometrePerHour) * make<Length>(1, Unit::Metre);
             return any((i.get<Speed>("speed") * i.get<Length>("spacing")) / unit);
         }},
        {"application_rate",
         [](const Inputs& i) {
             return any(sprayRate(i.get<Flow>("nozzle_flow"), i.get<Speed>("speed"),
                                  i.get<Length>("spacing")));
         }},
        {"application_rate_width_form",
         [](const Inputs& i) {
             return any(
                 sprayRate(i.get<Flow>("flow"), i.get<Speed>("speed"), i.get<Length>("width")));
         }},
        {"required_nozzle_flow",
         [](const Inputs& i) {
             return any(neededFlow(i.get<AreaRate>("rate"), i.get<Speed>("speed"),
                                   i.get<Length>("spacing")));
         }},
        {"nozzle_flow_from_catch",
         [](const Inputs& i) {
             return any(catchFlow(i.get<Volume>("catch"), i.get<Duration>("time")));
         }},
        {"catch_to_flow",
         [](const Inputs& i) {
             return any(catchFlow(i.get<Volume>("catch"), i.get<Duration>("time")));
         }},
        {"width_conversion", [](const Inputs& i) { return any(i.get<Length>("width")); }},
        {"constant_inches_form", [](const Inputs&) { return any(rateConstant(inch())); }},
        {"constant_feet_form", [](const Inputs&) { return any(rateConstant(kFoot)); }},
        {"speed_effect_on_rate",
         [](const Inputs& i) {
             return any(rateAtSpeed(i.get<AreaRate>("rate"), i.get<Speed>("speed1"),
                                    i.get<Speed>("speed2")));
         }},
        {"rate_error_from_wrong_spacing", [](const Inputs& i) { return any(spacingError(i)); }},
        {"overapplication_from_slowing",
         [](const Inputs& i) {
             return any(overApplication(i.number("speed_reduction_pct") / 100));
         }},
        {"whole_boom_flow",
         [](const Inputs& i) { return any(i.number("nozzles") * i.get<Flow>("nozzle_flow")); }},
        {"nozzle_count",
         [](const Inputs& i) {
             return any(static_cast<double>(
                 nozzlesAcross(i.get<Length>("boom"), i.get<Length>("spacing"))));
         }},
        {"cost_of_overapplication_farm",
         [](const Inputs& i) {
             return any(costOfRateError(i.number("cost_usd_ac"), make<Area>(1, Unit::Acre),
                                        i.number("error_pct") / 100, i.get<Area>("area")));
         }},
    };
    return makers;
}

const std::map<std::string, Maker>& unitMakers() {
    static const std::map<std::string, Maker> makers{
        {"ml_per_gal", [](const Inputs&) { return any(make<Volume>(1, Unit::GallonUs)); }},
        {"gallon_to_litre", [](const Inputs&) { return any(make<Volume>(1, Unit::GallonUs)); }},
        {"imperial_gal_ac_to_l_ha",
         [](const Inputs&) { return any(make<AreaRate>(1, Unit::GallonImperialPerAcre)); }},
        {"us_gal_ac_to_l_ha",
         [](const Inputs&) { return any(make<AreaRate>(1, Unit::GallonUsPerAcre)); }},
        {"acre_to_hectare", [](const Inputs&) { return any(make<Area>(1, Unit::Acre)); }},
        {"water_mass_per_gallon",
         [](const Inputs&) { return any(waterDensity() * make<Volume>(1, Unit::GallonUs)); }},
        {"mile_per_hour_to_ft_min",
         [](const Inputs&) {
             return any(
                 courseTime(mph() * make<Duration>(1, Unit::Minute), kFoot / Duration::fromSi(1)) /
                 Duration::fromSi(1));
         }},
    };
    return makers;
}

const std::map<std::string, Maker>& pressureMakers() {
    static const std::map<std::string, Maker> makers{
        {"pressure_factor_for_flow_factor",
         [](const Inputs& i) { return any(pressureRatio(i.number("flow_ratio"))); }},
        {"pressure_ratio",
         [](const Inputs& i) { return any(pressureRatio(i.number("speed_ratio"))); }},
        {"pressure_increase_pct",
         [](const Inputs& i) {
             return any(pressureRatio(1 + i.number("speed_increase_pct") / 100) - 1);
         }},
        {"pressure_for_speed_change", [](const Inputs& i) { return any(pressureAtSpeed(i)); }},
        {"flow_at_second_pressure",
         [](const Inputs& i) { return any(lawThrough(i).flow(i.get<Pressure>("pressure2"))); }},
        {"nominal_flow_at_3_bar", [](const Inputs& i) { return any(size(i).metric); }},
        {"us_size_code_meaning",
         [](const Inputs& i) {
             return any(NozzleLaw(size(i).us, usRating()).flow(i.get<Pressure>("pressure")));
         }},
        {"flow_02_nozzle_at_275_kPa",
         [](const Inputs&) {
             return any(NozzleLaw(nozzleSize("02")->us, usRating())
                            .flow(make<Pressure>(275, Unit::Kilopascal)));
         }},
    };
    return makers;
}

const std::map<std::string, Maker>& otherMakers() {
    static const std::map<std::string, Maker> makers{
        {"specific_gravity", [](const Inputs& i) { return any(gravity(i)); }},
        {"density_conversion_factor",
         [](const Inputs& i) { return any(densityFactor(gravity(i))); }},
        {"water_equivalent_rate", [](const Inputs& i) { return any(waterRate(i)); }},
        {"nitrogen_per_gallon",
         [](const Inputs& i) {
             return any(nutrientContent(i.get<Density>("weight"), i.number("n_fraction")));
         }},
        {"solution_per_acre",
         [](const Inputs& i) {
             return any(solutionRate(i.get<MassRate>("n_rate"), i.get<Density>("n")));
         }},
        {"nitrogen_per_acre",
         [](const Inputs& i) {
             return any(nutrientRate(i.get<AreaRate>("rate"), i.get<Density>("n")));
         }},
        {"time_over_course",
         [](const Inputs& i) {
             return any(courseTime(i.get<Length>("course"), i.get<Speed>("speed")));
         }},
        {"ground_speed",
         [](const Inputs& i) {
             return any(courseSpeed(i.get<Length>("course"), i.get<Duration>("time")));
         }},
        {"speed_constant_200_ft",
         [](const Inputs& i) {
             return any(courseSpeed(i.get<Length>("course"), Duration::fromSi(1)));
         }},
        {"speed_constant_metric",
         [](const Inputs&) { return any(courseSpeed(Length::fromSi(1), Duration::fromSi(1))); }},
        {"speed_formula_ft",
         [](const Inputs&) {
             return any(in(courseSpeed(kFoot, Duration::fromSi(1)), Unit::MilePerHour));
         }},
    };
    return makers;
}

double shownOverTrue(const Inputs& in, const char* shown, const char* known) {
    return in.number(shown) / in.number(known);
}

/// The plot on which ounces caught equal gallons an acre, whatever its width.
Area ounceArea() {
    return ounceCourse(kFoot) * kFoot;
}

/// The most that a nozzle may give against a new one before the catch test says "replace".
Flow highestGoodCatch(const Inputs& in) {
    const Flow fresh = in.get<Flow>("mean");
    const CatchLimits limits{10.0, in.number("tolerance_pct") / 100};
    Flow good = fresh;
    Flow high = fresh * 2.0;
    for (int i = 0; i < 50; ++i) {
        const Flow middle = (good + high) / 2.0;
        const auto summary = catchSummary({{1, {middle, Flow{}}, {}}}, {}, fresh, limits);
        const bool isGood = summary->nozzles.at(0).verdict == CatchVerdict::Good;
        (isGood ? good : high) = middle;
    }
    return good;
}

const std::map<std::string, Maker>& yardMakers() {
    static const std::map<std::string, Maker> makers{
        {"ounce_course_length",
         [](const Inputs& i) {
             return any(ounceCourse(i.get<Length>(i.has("band_in") ? "band" : "spacing")));
         }},
        {"ounce_course_length_pints",
         [](const Inputs& i) {
             return any(ounceCourse(i.get<Length>("swath")) * i.number("multiplier"));
         }},
        {"plot_area_1_128_ac", [](const Inputs&) { return any(ounceArea() / (kFoot * kFoot)); }},
        {"catch_equals_rate",
         [](const Inputs& i) { return any(rateFromPlot(i.get<Volume>("catch"), ounceArea())); }},
        {"square_plot_catch",
         [](const Inputs& i) {
             const auto side = i.get<Length>("side");
             return any(rateFromPlot(i.get<Volume>("catch"), side * side));
         }},
        {"plot_area_to_acres",
         [](const Inputs& i) { return any(i.get<Length>("side1") * i.get<Length>("side2")); }},
        {"rate_from_plot",
         [](const Inputs& i) {
             return any(rateFromPlot(make<Volume>(i.number("volume_gal"), Unit::GallonUs),
                                     i.get<Area>("area")));
         }},
        {"accept_band_high", [](const Inputs& i) { return any(highestGoodCatch(i)); }},
        {"tolerance_vs_average", [](const Inputs&) { return any(CatchLimits{}.ofMean); }},
        {"tolerance_vs_rated", [](const Inputs&) { return any(CatchLimits{}.ofNew); }},
        {"in_use_nozzle_flow_limit", [](const Inputs&) { return any(CatchLimits{}.ofNew); }},
        {"pulses_check",
         [](const Inputs& i) {
             const double corrected =
                 correctedNumber(i.number("cal_pulses_per_gal"), PulseConvention::PulsesPer,
                                 i.number("indicated_gal") / 100);
             return any(corrected * 100);  // counted for 100 gal, whatever the number says
         }},
        {"plot_length_1_128_ac",
         [](const Inputs& i) { return any(ounceCourse(i.get<Length>("boom"))); }},
        {"new_cal_pulses_per_volume",
         [](const Inputs& i) {
             return any(correctedNumber(i.number("old_cal_pulses_per_gal"),
                                        PulseConvention::PulsesPer,
                                        shownOverTrue(i, "indicated_gal", "actual_gal")));
         }},
        {"new_cal_volume_per_pulse",
         [](const Inputs& i) {
             return any(correctedNumber(i.number("old_cal_ml_per_pulse"), PulseConvention::PerPulse,
                                        shownOverTrue(i, "indicated_l", "actual_l")));
         }},
        {"rate_error_from_meter_error",
         [](const Inputs& i) {
             return any(rateErrorFrom(shownOverTrue(i, "indicated_gal", "actual_gal")));
         }},
    };
    return makers;
}

const std::map<std::string, Maker>& tradeMakers() {
    static const std::map<std::string, Maker> makers{
        {"changeover_side", [](const Inputs& i) { return any(changeoverSide(i)); }},
        {"rate_on_high_floor", [](const Inputs& i) { return any(rateOnHighFloor(i)); }},
        {"strainer_warnings", [](const Inputs& i) { return any(strainerWarnings(i)); }},
    };
    return makers;
}

/// Units as the tables write them.
Unit unitOf(const std::string& text) {
    static const std::map<std::string, Unit> names{{"1", Unit::None},
                                                   {"gal_min_x_5940", Unit::None},
                                                   {"K (velocity heads)", Unit::None},
                                                   {"nozzles", Unit::None},
                                                   {"USD", Unit::None},
                                                   {"pulses/gal", Unit::None},
                                                   {"mL/pulse", Unit::None},
                                                   {"pulses", Unit::None},
                                                   {"sq ft", Unit::None},
                                                   {"ft/min", Unit::None},
                                                   {"ft/s", Unit::None},
                                                   {"0.001 ft", Unit::None},
                                                   {"ft head per 100 ft", Unit::Foot},
                                                   {"gal/ac of band", Unit::GallonUsPerAcre},
                                                   {"%", Unit::Percent},
                                                   {"gal", Unit::GallonUs},
                                                   {"loads", Unit::None},
                                                   {"ac/h", Unit::Acre},
                                                   {"ac/day", Unit::Acre},
                                                   {"gal/min", Unit::GallonUsPerMinute},
                                                   {"mL/gal", Unit::Millilitre},
                                                   {"lb N/gal", Unit::PoundPerGallonUs},
                                                   {"lb N/ac", Unit::PoundPerAcre},
                                                   {"mph s", Unit::MilePerHour},
                                                   {"km/h per m/s", Unit::KilometrePerHour}};
    const auto found = names.find(text);
    return found != names.end() ? found->second : unitFor(text).value();
}

}  // namespace

Inputs::Inputs(std::string_view text) {
    std::istringstream parts{std::string(text)};
    for (std::string part; std::getline(parts, part, ';');) {
        const auto equals = part.find('=');
        if (equals != std::string::npos) m_values[part.substr(0, equals)] = part.substr(equals + 1);
    }
}

double Inputs::number(const std::string& key) const {
    return std::stod(m_values.at(key));
}
std::string Inputs::text(const std::string& key) const {
    return m_values.at(key);
}

const std::map<std::string, Unit>& Inputs::suffixes() {
    static const std::map<std::string, Unit> all{{"gal_min", Unit::GallonUsPerMinute},
                                                 {"l_min", Unit::LitrePerMinute},
                                                 {"mph", Unit::MilePerHour},
                                                 {"km_h", Unit::KilometrePerHour},
                                                 {"in", Unit::Inch},
                                                 {"ft", Unit::Foot},
                                                 {"m", Unit::Metre},
                                                 {"cm", Unit::Centimetre},
                                                 {"m_s", Unit::MetrePerSecond},
                                                 {"psi", Unit::Psi},
                                                 {"gal_ac", Unit::GallonUsPerAcre},
                                                 {"l_ha", Unit::LitrePerHectare},
                                                 {"fl_oz", Unit::FluidOunceUs},
                                                 {"s", Unit::Second},
                                                 {"ac", Unit::Acre},
                                                 {"ha", Unit::Hectare},
                                                 {"gal", Unit::GallonUs},
                                                 {"l", Unit::Litre},
                                                 {"lb_gal", Unit::PoundPerGallonUs},
                                                 {"lb_ac", Unit::PoundPerAcre}};
    return all;
}

double computed(const std::string& quantity, const Inputs& inputs, const std::string& unit) {
    for (const auto* makers :
         {&rateMakers(), &unitMakers(), &pressureMakers(), &otherMakers(), &yardMakers(),
          &tradeMakers(), &pipeMakers(), &fieldMakers(), &loadMakers()}) {
        const auto found = makers->find(quantity);
        if (found == makers->end()) continue;
        const AnyQuantity value = found->second(inputs);
        const Unit shown = unitOf(unit);
        if (info(shown).dimension != value.dimension)
            throw std::invalid_argument(quantity + " is not in " + unit);
        return toUnit(value, shown);
    }
    throw std::out_of_range("nobody computes " + quantity);
}

}  // namespace bw::handbook
