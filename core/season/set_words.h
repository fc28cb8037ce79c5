// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/season/set_choice.h"

namespace bw {

/// Why a job is not covered, "sets.why_…" or the problem that stands in the way. `nearest` (may be
/// null) is the pairing with the allowed nozzle that comes nearest; `barred`: nozzles that would
/// cover it.
Fact whyUncovered(const Job& job, const JobVerdict& verdict, const std::string& nozzle,
                  const PairVerdict* nearest, const std::vector<std::string>& barred);

/// "With Demo fan 04: drive at least 9.2 km/h.", facts "sets.change_…".
Fact changeFact(const PlanChange& change);

/// What a job would do with the sets of another plan: "Wheat (120 ha) runs at 12 instead of
/// 14 km/h, 0.5 h more.", facts "sets.job_…". Nothing if nothing changes but the nozzle.
std::optional<Fact> jobChangeFact(const JobChange& change, const std::string& jobName);

/// What an alternative comes to in one sentence, "sets.next_best…", "sets.one_fewer…",
/// "sets.one_more…", and its money, "sets.money_…".
std::vector<Fact> alternativeFacts(const SetAlternative& alternative);

}  // namespace bw
