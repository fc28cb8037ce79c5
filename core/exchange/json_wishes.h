// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/season/set_choice.h"

namespace bw {

/// What the user wishes of the choice of sets, as the farm file keeps it. `owned` holds only sets
/// beside those aboard. Problems as in json.h.
Result<SetWishes> wishesFromJson(std::string_view text);
std::string toJson(const SetWishes& wishes);

}  // namespace bw
