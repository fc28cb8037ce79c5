// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/model/nozzle_sizes.h"

namespace bw {

/// A size of the standard for a wanted flow, with the nozzle pressure at which it gives that flow.
struct SizeChoice {
    NozzleSize size;
    Pressure pressure;
};
struct SizeAdvice {
    std::optional<SizeChoice> smaller;  ///< the next size that gives less than the flow there
    std::optional<SizeChoice> larger;   ///< the next size that gives it, or more
};

/// The sizes on either side of a flow of one nozzle (> 0) at a nozzle pressure (> 0), on water, by
/// the square-root law and the metric records. Empty where no size of the standard lies on a side.
SizeAdvice sizesNearFlow(Flow flow, Pressure at);

}  // namespace bw
