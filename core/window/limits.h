// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/model/choice.h"
#include "core/units/quantity.h"

namespace bw {

/// What can stop a speed window. The order settles ties (low side first, then high side).
/// `Droplets` and `Meter` stand for several limits at once in "not checked" lists.
enum class Limit {
    None,
    // low side
    PressureFloor,
    NozzleMinimum,
    DropletsTooCoarse,
    DropletsUnlisted,
    DriftClass,
    MeterMinimum,
    ControlMinimum,
    DutyMinimum,
    // high side
    PressureCeiling,
    NozzleMaximum,
    DropletsTooFine,
    Pump,
    ReliefValve,
    Suction,
    MeterMaximum,
    DutyMaximum,
    TopSpeed,
    // a whole window empty
    DropletsNone,
    DriftNone,
    // only in lists of what was not checked
    Droplets,
    Meter,
};
template <>
struct ChoiceNames<Limit> {
    static constexpr std::array<std::pair<Limit, std::string_view>, 22> names{
        {{Limit::None, "none"},
         {Limit::PressureFloor, "pressure_floor"},
         {Limit::NozzleMinimum, "nozzle_minimum"},
         {Limit::DropletsTooCoarse, "droplets_too_coarse"},
         {Limit::DropletsUnlisted, "droplets_unlisted"},
         {Limit::DriftClass, "drift_class"},
         {Limit::MeterMinimum, "meter_minimum"},
         {Limit::ControlMinimum, "control_minimum"},
         {Limit::DutyMinimum, "duty_minimum"},
         {Limit::PressureCeiling, "pressure_ceiling"},
         {Limit::NozzleMaximum, "nozzle_maximum"},
         {Limit::DropletsTooFine, "droplets_too_fine"},
         {Limit::Pump, "pump"},
         {Limit::ReliefValve, "relief_valve"},
         {Limit::Suction, "suction"},
         {Limit::MeterMaximum, "meter_maximum"},
         {Limit::DutyMaximum, "duty_maximum"},
         {Limit::TopSpeed, "top_speed"},
         {Limit::DropletsNone, "droplets_none"},
         {Limit::DriftNone, "drift_none"},
         {Limit::Droplets, "droplets"},
         {Limit::Meter, "meter"}}};
};

enum class Side { Low, High };

/// Place of a limit in the order that settles ties, which is also the order of lists: the low side
/// first. Two kinds of limit can stand on either side.
constexpr int rankOf(Limit limit, Side side) {
    const int place = 10 * static_cast<int>(limit);
    if (side == Side::Low) return place;
    const int afterTooFine = 10 * static_cast<int>(Limit::DropletsTooFine);
    if (limit == Limit::DropletsUnlisted) return afterTooFine + 1;
    if (limit == Limit::DriftClass) return afterTooFine + 2;
    return place;
}

/// One limit of a job with a nozzle set: the boom flow at which it is met, and the speed there.
struct SpeedLimit {
    Limit limit = Limit::None;
    Side side = Side::Low;
    Flow flow;  ///< whole boom
    Speed speed;
    bool pins = false;  ///< past it the flow stays at `flow` and the rate changes
    bool operator==(const SpeedLimit&) const = default;
};

}  // namespace bw
