// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/size_advice.h"

#include "core/hydraulics/nozzle_law.h"

namespace bw {

SizeAdvice sizesNearFlow(Flow flow, Pressure at) {
    SizeAdvice advice;
    for (const auto& size : nozzleSizes()) {
        const NozzleLaw law(size.metric, metricRating());
        const SizeChoice choice{size, law.pressure(flow)};
        if (law.flow(at) < flow * (1 - 1e-9)) {
            advice.smaller = choice;
        } else {
            advice.larger = choice;
            break;
        }
    }
    return advice;
}

}  // namespace bw
