// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "core/model/choice.h"

namespace bw {

/// Where a cause sits, from tank to settings: headings for lists of faults.
enum class FaultPlace { Suction, Line, Boom, Sensing, Entered, Correcting };
template <>
struct ChoiceNames<FaultPlace> {
    static constexpr std::array<std::pair<FaultPlace, std::string_view>, 6> names{
        {{FaultPlace::Suction, "suction"},
         {FaultPlace::Line, "line"},
         {FaultPlace::Boom, "boom"},
         {FaultPlace::Sensing, "sensing"},
         {FaultPlace::Entered, "entered"},
         {FaultPlace::Correcting, "correcting"}}};
};

/// The place of an injectable cause (injectableCauses); nothing for others.
std::optional<FaultPlace> faultPlace(std::string_view cause);

}  // namespace bw
