// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/base/problem.h"
#include "core/season/season_reckoning.h"

namespace bw {

/// "Demo trailed: 5 of 6 jobs have a nozzle that holds slow to fast", fact "season.tally…".
Fact tallyFact(const MachineTally& tally, const std::string& machineName);

/// What a job that does not hold slow to fast wants said: with which nozzle, and what stops it or
/// is not checked; fact "season.job_…". Nothing for one that holds, or that could not be reckoned
/// (its problem says why).
std::optional<Fact> jobFact(const JobReckoning& reckoning, const Job& job);

/// What of the machine was not checked for its jobs; nothing if all was.
std::optional<Fact> machineGapsFact(const MachineTally& tally);

/// What was not checked of the nozzles that come out best and that the user takes all the same.
std::optional<Fact> takenUncheckedFact(const MachineTally& tally);

}  // namespace bw
