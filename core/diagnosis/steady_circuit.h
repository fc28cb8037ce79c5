// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/diagnosis/predictor.h"
#include "core/simulation/loop_setup.h"

namespace bw {

/// What else is known of a fault than the numbers of the setup.
struct SteadyWish {
    Speed speed;             ///< true, over the ground
    double oneNozzle = 1.0;  ///< flow of the faulty nozzle over its neighbours'
    double restsAt = 1.0;    ///< sensed flow over target where the loop comes to rest
    std::optional<bool>
        atStop{};  ///< the control has run away: true to the most, false to the least
};

/// What is seen at steady speed once the loop has come to rest, from the same circuit, limits and
/// sensors as the running loop, solved for its rest and not run in time. Whether it swings is said
/// by the loop's linear theory (core/simulation/stability.h and the noise let through it); near a
/// border between two words `shown` stays empty. The first section is the weak one.
Scenario steadyCircuit(const LoopSetup& setup, const SteadyWish& wish);

/// Standard deviation of the shown rate, as a part of it, that meter and speed noise bring through
/// the loop: ∫ S(ω)|H(ω)|² dω with the first-order noise of the running loop. `strokeGain` is
/// ∂lnQ/∂u at the working point, 0 where the control does not act; nothing if the loop is unstable.
std::optional<double> noiseSpread(const LoopSetup& setup, Flow metered, double strokeGain);

}  // namespace bw
