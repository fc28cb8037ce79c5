// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/window/speed_window.h"

namespace bw {

/// Both ends of a window (those of all rates, if the job has a range of them).
struct WindowEnds {
    std::optional<Speed> low;   ///< 0: no low limit
    std::optional<Speed> high;  ///< nothing: no high limit
    bool empty = false;
    bool operator==(const WindowEnds&) const = default;
    bool holds(Speed speed) const;
};
WindowEnds endsOf(const SpeedWindow& window);

/// The ends alone, for whoever asks thousands of pairings: no advice, no points, nothing copied.
/// The same as endsOf(speedWindow(…)), and the same problems.
Result<WindowEnds> windowEnds(const Machine& machine, const Nozzle& nozzle, const Job& job);

}  // namespace bw
