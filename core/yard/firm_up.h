// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/window/window_ends.h"

namespace bw {

/// From where to where an end of the window can lie. Nothing: some of the values leave no limit on
/// that side.
struct EndSpread {
    std::optional<Speed> from;
    std::optional<Speed> to;
    bool operator==(const EndSpread&) const = default;
};

/// What one yard check would do for an answer that rests on assumed values.
struct FirmUp {
    std::string check;                ///< id, as in yardChecks()
    std::vector<std::string> values;  ///< assumed, with a range: what it would make measured
    /// Where the ends lie over all the ranges of those values together, all else as it is.
    EndSpread low;
    EndSpread high;
    bool canEmpty = false;  ///< some of those values leave no window, or none that can be reckoned
    /// By how much the answer's whole range (that of the low end and that of the high end, over all
    /// assumed ranges together) shrinks if the check finds the values assumed.
    Speed shrinks;
};

/// The yard checks of this machine that move the answer, the one that shrinks its range most first.
/// Where only some of the values leave the high end without a limit, it counts there as
/// `kNoLimitCounts` times the job's fastest speed, or as the highest limit if that is more. Of more
/// than eight ranges only the eight that move the window most are taken together. Empty without a
/// window, and where no check moves it by 0.5 % of its speed.
std::vector<FirmUp> firmUps(const Machine& machine, const Nozzle& nozzle, const Job& job);

/// The first of them: the one yard check to do next.
std::optional<FirmUp> firmUp(const Machine& machine, const Nozzle& nozzle, const Job& job);

inline constexpr double kNoLimitCounts = 2.0;

}  // namespace bw
