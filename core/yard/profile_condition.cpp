// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/profile_condition.h"

#include <algorithm>

#include "core/model/machine_fields.h"

namespace bw {

bool ProfileCondition::holds(const Machine& machine) const {
    const auto view = fieldView(machine, key);
    if (!view) return false;
    const auto isOneOf = [&](const std::vector<std::string>& words) {
        return view->isKnown && std::find(words.begin(), words.end(), view->choice) != words.end();
    };
    if (isKnown && *isKnown != view->isKnown) return false;
    if (!is.empty() && !isOneOf(is)) return false;
    return !isOneOf(isNot);
}

bool allHold(const std::vector<ProfileCondition>& conditions, const Machine& machine) {
    return std::all_of(conditions.begin(), conditions.end(),
                       [&](const ProfileCondition& one) { return one.holds(machine); });
}

}  // namespace bw
