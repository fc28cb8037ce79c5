// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/simulation/rate_loop.h"
#include "core/simulation/trace.h"

namespace bw {

/// Ground speed over time: straight between knots, the last one kept, or the whole repeated.
class Drive {
  public:
    static Drive steady(Speed speed);
    /// Holds `from` until `start`, changes evenly over `lasting` (> 0), then holds `to`.
    static Drive ramp(Speed from, Speed to, Duration start, Duration lasting);
    /// Field and headland in turn, for ever: `field` s at the field speed, then so long at the
    /// headland speed (> 0) that `share` (0 to under 1) of the distance at the two speeds is
    /// headland; braking and speeding up take 3 s each.
    static Drive stopGo(Speed fieldSpeed, Speed headlandSpeed, Duration field, double share);
    /// Speeds that change within a second at their times (rising, over 1 s apart).
    static Drive steps(Speed first, const std::vector<std::pair<Duration, Speed>>& changes);

    /// At a time ≥ 0.
    Speed at(Duration time) const;
    /// Nothing: it does not repeat.
    std::optional<Duration> repeats() const { return m_repeats; }

  private:
    struct Knot {
        double time;
        double speed;
        double change;  ///< of speed, to the next knot
    };
    explicit Drive(const std::vector<std::pair<Duration, Speed>>& knots);
    std::vector<Knot> m_knots;
    std::optional<Duration> m_repeats;
};

struct SimulationWish {
    Duration length = Duration::fromSi(120);  ///< over 0
    std::uint64_t seed = 1;
    std::optional<Drive> drive;  ///< nothing: steady at the usual speed
    bool keepTrace = true;
};

/// A run, read over its last two thirds.
struct Simulation {
    std::vector<LoopSample> trace;  ///< each step; empty unless kept
    TraceReading reading;           ///< of the shown rate
    Spread real;                    ///< sprayed on the ground, as parts of the target
    Pressure sensor;                ///< mean, true
    Pressure sensorReading;         ///< mean
    Flow shownFlow;                 ///< mean
    LoopSample last;
};

Simulation simulate(const LoopSetup& setup, const SimulationWish& wish = {});

}  // namespace bw
