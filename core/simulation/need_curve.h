// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/simulation/rate_loop.h"

namespace bw {

/// What a loop's target asks for at a speed, limits left out.
struct NeedPoint {
    Speed speed;
    Pressure needed;              ///< at the boom sensor
    std::optional<Pressure> fed;  ///< the most that the pump can hold there at that flow; nothing:
                                  ///< without bound, or not known
};

/// Pressure against speed for the setup as it stands (target, sections, faults): `points` (≥ 2)
/// speeds evenly from `from` to `to`. Empty with all sections off.
std::vector<NeedPoint> needCurve(const LoopSetup& setup, Speed from, Speed to, int points);

/// What each section sprays in a state, as a part of what the target needs there. Zero where a
/// section is off or shut, and everywhere while standing.
std::vector<double> sectionShares(const LoopSetup& setup, const LoopSample& sample);

}  // namespace bw
