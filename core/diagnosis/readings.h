// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "core/model/choice.h"
#include "core/units/unit.h"

namespace bw {

/// What can be read off a display, a gauge or a jug. The names are those of checks that take a
/// number.
enum class Reading {
    SensorPressure,   ///< as the display shows it
    GaugePressure,    ///< a true gauge at the boom sensor
    PumpPressure,     ///< at the pump outlet
    SuctionVacuum,    ///< under atmosphere, ahead of the pump
    ControlPosition,  ///< part of the stroke, 0 to 1; more gives more flow
    ShownFlow,        ///< whole boom, as the display shows it
    ShownRate,
    CatchGood,  ///< one nozzle's flow, away from the weak place
    CatchWeak,  ///< one nozzle's flow in the weak section, or anywhere if there is none
    RightFrom   ///< speed at which the rate comes right
};
inline constexpr std::size_t kReadings = 10;

template <>
struct ChoiceNames<Reading> {
    static constexpr std::array<std::pair<Reading, std::string_view>, kReadings> names{
        {{Reading::SensorPressure, "sensor_pressure"},
         {Reading::GaugePressure, "gauge_pressure"},
         {Reading::PumpPressure, "pump_pressure"},
         {Reading::SuctionVacuum, "suction_vacuum"},
         {Reading::ControlPosition, "control_position"},
         {Reading::ShownFlow, "shown_flow"},
         {Reading::ShownRate, "shown_rate"},
         {Reading::CatchGood, "catch_good"},
         {Reading::CatchWeak, "catch_weak"},
         {Reading::RightFrom, "right_from"}}};
};

Dimension dimensionOf(Reading reading);
/// Standard error of a reading of about this size, both in SI: what gauge, meter or jug may be out
/// and what the prediction leaves away (pipe loss, mean nozzle). Judgement; inspection allows a
/// gauge 10 % (from memory), a one-minute catch is good to about 2.5 %.
double readingError(Reading reading, double size);

}  // namespace bw
