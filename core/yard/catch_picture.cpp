// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/catch_picture.h"

#include <cmath>

namespace bw {

CatchPicture catchPicture(const CatchSummary& summary, std::optional<Flow> newNozzle,
                          const CatchLimits& limits) {
    CatchPicture out;
    out.isOfNew = newNozzle.has_value();
    out.base = newNozzle.value_or(summary.mean.value);
    out.mean = summary.mean.value / out.base;
    out.low = out.mean * (1 - limits.ofMean);
    out.high = out.mean * (1 + limits.ofMean);
    if (out.isOfNew && 1 + limits.ofNew < out.high) {
        out.high = 1 + limits.ofNew;
        out.highIsOfNew = true;
    }
    for (const auto& nozzle : summary.nozzles) out.nozzles.push_back(nozzle.flow.value / out.base);
    for (const auto& section : summary.sections) out.sections.push_back(section.mean / out.base);
    return out;
}

Duration leastCatchTime(Flow largest, Flow mean, double limit, const ReadingErrors& errors) {
    // Twice the uncertainty of the flow, from what the jug and the watch read, is the limit.
    const double jug = errors.jug.si();
    const double watch = (largest * errors.watch).si();
    return Duration::fromSi(2 * std::hypot(jug, watch) / (limit * mean.si()));
}

}  // namespace bw
