// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/window/speed_window.h"

namespace bw {

/// The job reaches past one end of its window. Floor too high, nozzle too big and driving too
/// slowly are one finding (likewise nozzle too small and driving too fast); each way out alone
/// would bring the job's speed on that side inside, and was solved again to make sure. A ceiling
/// is never raised to reach a rate, a floor never put under the nozzle's lowest pressure.
struct WaysOut {
    Side side = Side::Low;
    Limit limit = Limit::None;        ///< what stops that end
    std::optional<Pressure> floor;    ///< low side: floor at most this
    std::optional<Speed> speed;       ///< drive at least (low) or at most (high) this
    std::optional<AreaRate> rate;     ///< at least (low) or at most (high) this
    std::optional<std::string> size;  ///< code of the nearest size of ISO 10625 that serves, with
                                      ///< the range and tables of the nozzle in hand
    bool floorUnchecked = false;      ///< the nozzle's lowest pressure is not known
    std::vector<Fact> facts() const;  ///< one a way, "ways.…"
    Fact title() const;
};

/// For each end that the job reaches past, low side first. Rounded in `units`, to the safe side.
std::vector<WaysOut> waysOut(const WindowModel& model, const SpeedWindow& window, UnitSystem units);

}  // namespace bw
