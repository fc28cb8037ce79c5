// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/machine.h"

namespace bw {

/// One condition on a machine's profile, as data: `is` holds only where the field is known and one
/// of these choices; `isNot` holds unless it is known and one of these, so that what nobody knows
/// is not left out; `isKnown` asks for a known (or an unknown) field.
struct ProfileCondition {
    std::string key;  ///< as in visitFields
    std::vector<std::string> is;
    std::vector<std::string> isNot;
    std::optional<bool> isKnown;

    bool holds(const Machine& machine) const;
};

bool allHold(const std::vector<ProfileCondition>& conditions, const Machine& machine);

}  // namespace bw
