// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/base/problem.h"
#include "core/simulation/rate_loop.h"

namespace bw {

/// Why the rate is what it is: a chain of facts built from the loop's state, to be read in order
/// (sentences "why.…"): first what holds the flow, then what the job needs, then what follows; then
/// what the sensors get wrong, what does not reach the nozzles, and what makes the loop restless.
/// Figures are those of the steady state at the loop's present speed, not of the moment's noise.
std::vector<Fact> whySo(const RateLoop& loop);

}  // namespace bw
