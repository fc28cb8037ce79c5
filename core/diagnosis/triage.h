// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/case_numbers.h"

namespace bw {

/// What sums alone say: the need, where flow and pressure stand to each other (they fit within 8 %
/// of flow: a gauge 10 % out is 5 % of flow, a meter a few per cent; judgement), and what an
/// off-target rate does to the dose. Codes "finder.sum.…", "finder.dose.…"; a dose fact names its
/// caution (C16, C17) as `caution`.
std::vector<Fact> triage(const CaseNumbers& numbers, std::optional<Symptom> symptom);

/// For pulsed nozzles, which the finder does not cover yet: the on-time share (duty) that the job
/// asks for, where the numbers are known. Codes "finder.pulsed.…".
std::vector<Fact> pulsedSums(const CaseRecord& record);

/// The ways out that a cause names by code ("finder.out.…"), with the numbers of this case. A way
/// that does not exist here is left out: a floor under the nozzle's lowest pressure, a speed over
/// the job's fastest or the machine's top speed, a size that the standard does not have.
std::vector<Fact> waysOut(const std::vector<std::string>& codes, const CaseNumbers& numbers,
                          const CaseRecord& record);
/// Every code that `waysOut` can fill.
std::vector<std::string> knownWaysOut();

}  // namespace bw
