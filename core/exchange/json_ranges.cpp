// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_ranges.h"

#include <algorithm>
#include <array>

namespace bw {
namespace {

struct Range {
    double least;
    double most;
};

/// In SI. Below `least` a number is as good as nothing and would only spoil the arithmetic.
Range rangeOf(Dimension dimension) {
    switch (dimension) {
        case Dimension::Length:
            return {1e-6, 1e3};
        case Dimension::Area:
            return {1e-3, 1e12};
        case Dimension::Duration:
            return {1e-6, 1e6};
        case Dimension::Speed:
            return {1e-4, 100};
        case Dimension::Pressure:
            return {1, 1e8};
        case Dimension::Volume:
            return {1e-9, 1e4};
        case Dimension::Flow:
            return {1e-12, 10};
        case Dimension::AreaRate:
            return {1e-11, 0.1};
        default:
            return {1e-9, 1e9};
    }
}

struct KeyRange {
    std::string_view key;
    Range range;
};
constexpr std::array kPlainNumbers{
    KeyRange{"control_valve.least_opening", {0, 1}},
    KeyRange{"pump.least_speed", {0, 1}},
    KeyRange{"restrictor.discharge_coefficient", {0.01, 1}},
    KeyRange{"meter.scale", {0.01, 100}},
    KeyRange{"meter.noise", {0, 10}},
    KeyRange{"meter.noise_below", {0, 10}},
    KeyRange{"pulsed.duty_min", {0, 1}},
    KeyRange{"pulsed.duty_max", {0.001, 1}},
    KeyRange{"loop.gain", {0, 1e3}},
    KeyRange{"loop.dead_band", {0, 1}},
    KeyRange{"loop.slew", {0, 1e3}},
    KeyRange{"loop.stiction", {0, 1}},
    KeyRange{"exponent", {0.05, 2}},
    KeyRange{"spray_angle", {0, 360}},
    KeyRange{"price", {0, 1e9}},
    KeyRange{"specific_gravity", {0.1, 10}},
    KeyRange{"drift_percent", {0, 100}},
    KeyRange{"percent", {0, 100}},
};

constexpr std::array<std::string_view, 15> kMayBeNothing{"losses.suction.pressure",
                                                         "losses.line.pressure",
                                                         "losses.plumbing.pressure",
                                                         "losses.section.pressure",
                                                         "check_valve.opening_pressure",
                                                         "agitation.flow",
                                                         "limits.pressure_floor",
                                                         "meter.minimum_full_bore",
                                                         "meter.minimum_narrowed",
                                                         "loop.dead_time",
                                                         "loop.hydraulic_lag",
                                                         "loop.meter_lag",
                                                         "pressure_min",
                                                         "area",
                                                         "tank"};

Range rangeFor(AnyQuantity quantity, std::string_view key) {
    if (quantity.dimension != Dimension::None) return rangeOf(quantity.dimension);
    for (const auto& [name, range] : kPlainNumbers) {
        if (name == key) return range;
    }
    return {1e-3, 1e6};
}

}  // namespace

void checkRange(AnyQuantity quantity, std::string_view key, const std::string& where,
                JsonIssues& issues) {
    const auto [least, most] = rangeFor(quantity, key);
    const bool nothingWillDo =
        std::find(kMayBeNothing.begin(), kMayBeNothing.end(), key) != kMayBeNothing.end();
    if (quantity.si == 0.0 && nothingWillDo) return;
    if (quantity.si >= least && quantity.si <= most) return;
    if (quantity.si <= 0.0)
        return issues.add(
            error(least > 0.0 && !nothingWillDo ? "json_not_positive" : "json_negative", where));
    if (quantity.dimension != Dimension::None) return issues.add(error("json_absurd", where));
    issues.add(error("json_out_of_range", where,
                     {{"least", AnyQuantity{Dimension::None, least}},
                      {"most", AnyQuantity{Dimension::None, most}}}));
}

}  // namespace bw
