// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/fault_place.h"

#include <algorithm>
#include <array>

namespace bw {
namespace {

constexpr std::array<std::pair<std::string_view, FaultPlace>, 43> kPlaces{{
    {"suction_strainer", FaultPlace::Suction},
    {"suction_hose", FaultPlace::Suction},
    {"suction_air", FaultPlace::Suction},
    {"foam", FaultPlace::Suction},
    {"pump_worn", FaultPlace::Suction},
    {"pump_drive", FaultPlace::Suction},
    {"agitation_open", FaultPlace::Suction},
    {"bypass_passing", FaultPlace::Suction},
    {"line_strainer", FaultPlace::Line},
    {"hose_kinked", FaultPlace::Line},
    {"restrictor_position", FaultPlace::Line},
    {"return_open", FaultPlace::Line},
    {"section_strainer", FaultPlace::Boom},
    {"section_shut", FaultPlace::Boom},
    {"section_leak", FaultPlace::Boom},
    {"nozzle_strainers", FaultPlace::Boom},
    {"one_nozzle_blocked", FaultPlace::Boom},
    {"one_nozzle_worn", FaultPlace::Boom},
    {"nozzles_worn", FaultPlace::Boom},
    {"nozzle_small", FaultPlace::Boom},
    {"nozzle_large", FaultPlace::Boom},
    {"checks_drip", FaultPlace::Boom},
    {"meter_high", FaultPlace::Sensing},
    {"meter_low", FaultPlace::Sensing},
    {"meter_fouled", FaultPlace::Sensing},
    {"meter_part_full", FaultPlace::Sensing},
    {"speed_noisy", FaultPlace::Sensing},
    {"speed_high", FaultPlace::Sensing},
    {"speed_low", FaultPlace::Sensing},
    {"sensor_high", FaultPlace::Sensing},
    {"sensor_low", FaultPlace::Sensing},
    {"floor_high", FaultPlace::Entered},
    {"ceiling_low", FaultPlace::Entered},
    {"width_large", FaultPlace::Entered},
    {"width_small", FaultPlace::Entered},
    {"density_ignored", FaultPlace::Entered},
    {"gain_high", FaultPlace::Correcting},
    {"gain_low", FaultPlace::Correcting},
    {"dead_band_small", FaultPlace::Correcting},
    {"dead_band_large", FaultPlace::Correcting},
    {"actuator_stiff", FaultPlace::Correcting},
    {"actuator_slow", FaultPlace::Correcting},
    {"actuator_reversed", FaultPlace::Correcting},
}};

}  // namespace

std::optional<FaultPlace> faultPlace(std::string_view cause) {
    const auto found = std::find_if(kPlaces.begin(), kPlaces.end(),
                                    [&](const auto& place) { return place.first == cause; });
    return found == kPlaces.end() ? std::nullopt : std::optional(found->second);
}

}  // namespace bw
