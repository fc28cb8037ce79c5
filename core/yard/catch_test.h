// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/yard/measured.h"

namespace bw {

/// Limits of a catch test and what they are a part of. Published advice differs: 5 % of the mean
/// (Alberta agriculture ministry, Agdex 606-1), 10 % of the mean or of a new nozzle (extension
/// sheets of several states); so both are settings.
struct CatchLimits {
    double ofMean = 0.05;
    double ofNew = 0.10;
};

/// One nozzle: its flow, and the flow after cleaning if it was caught again.
struct CatchEntry {
    int nozzle = 1;  ///< from 1, left to right
    Measured<Flow> caught;
    std::optional<Measured<Flow>> again;
};
/// Flow with its uncertainty from what the jug and the watch read. Volume and time > 0.
Measured<Flow> caughtFlow(Volume volume, Duration time, const ReadingErrors& errors = {});

enum class CatchVerdict { Good, CleanAndCatchAgain, Replace };
struct CaughtNozzle {
    int nozzle = 1;
    int section = 0;      ///< from 0; -1: beyond the sections given
    Measured<Flow> flow;  ///< the last one caught
    double ofMean = 0.0;  ///< part, 1: as the mean
    std::optional<double> ofNew;
    CatchVerdict verdict = CatchVerdict::Good;
};
struct CaughtSection {
    int section = 0;
    Flow mean;
    int count = 0;
};
struct CatchSummary {
    std::vector<CaughtNozzle> nozzles;  ///< by number
    std::vector<CaughtSection> sections;
    Measured<Flow> mean;
    std::optional<double> meanOfNew;
    std::optional<double> cv;  ///< spread between nozzles (sample), part; needs two
    bool replaceSet = false;   ///< two or more too high, or the mean too high
    std::vector<Problem> warnings;
};
/// Sorts out a catch test. `sections`: nozzles of each section, left to right (may be empty);
/// `newNozzle`: flow of a new one at the pressure of the test, if known. Low against the mean:
/// clean and catch again, still low: replace; high against the mean or a new one: replace.
/// Problems: yard_no_runs, yard_not_positive (limits too), yard_nozzle_twice. Warning:
/// yard_catch_coarse (jug and watch, k = 2, cannot tell the limit of the mean).
Result<CatchSummary> catchSummary(std::vector<CatchEntry> entries, const std::vector<int>& sections,
                                  std::optional<Flow> newNozzle, const CatchLimits& limits = {});

/// Which nozzles to catch: all; every `step`-th from the first; one section (from 0).
std::vector<int> everyNozzle(int count, int step = 1);
std::vector<int> sectionNozzles(const std::vector<int>& sections, int section);

}  // namespace bw
