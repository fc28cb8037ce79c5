// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/units/unit.h"

namespace bw {

/// What is usual for a field, and what is possible at all. Ends are judgement or common practice,
/// as `source` says; they catch slips of the finger and prove nothing.
struct UsualRange {
    std::string key;
    std::optional<AnyQuantity> from;  ///< usual; nothing if no range is usual (a price)
    std::optional<AnyQuantity> to;
    AnyQuantity possibleFrom;
    AnyQuantity possibleTo;
    std::string source;
};

/// The range of a field: "machine." and a key of `visitFields` ("machine.limits.pressure_floor"),
/// "nozzle.flow", "job.rate"; "machine.nozzles" is for the whole boom. Null if the field has none.
const UsualRange* usualRange(std::string_view key);

}  // namespace bw
