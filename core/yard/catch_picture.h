// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/yard/catch_test.h"

namespace bw {

/// What a picture of a catch test shows, all as parts of its base (1: as the base): of a new
/// nozzle's flow where that is known, else of the mean.
struct CatchPicture {
    bool isOfNew = false;
    Flow base;
    double mean = 1.0;
    double low = 0.95;   ///< under it: clean and catch again
    double high = 1.05;  ///< over it: replace; the nearer of the two limits
    bool highIsOfNew = false;
    std::vector<double> nozzles;   ///< in the order of the summary's nozzles
    std::vector<double> sections;  ///< in the order of the summary's sections
};
CatchPicture catchPicture(const CatchSummary& summary, std::optional<Flow> newNozzle,
                          const CatchLimits& limits = {});

/// The least time of each catch with which jug and watch (k = 2) can tell the limit of the mean,
/// for a nozzle of flow `largest` in a set of mean flow `mean` (both > 0), limit > 0.
Duration leastCatchTime(Flow largest, Flow mean, double limit, const ReadingErrors& errors = {});

}  // namespace bw
