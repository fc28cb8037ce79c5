// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/diagnosis/call.h"
#include "core/diagnosis/next_check.h"

namespace bw {

/// What speaks for or against a cause: its readings with the number that it would give and that
/// another cause would give, then the answers that weigh, then what the machine's description says.
/// Codes "finder.why.…".
std::vector<Fact> reasonsFor(const Hypothesis& cause, const Evidence& evidence);

/// Why a check comes now, codes "finder.next.…", with what healthy and the leading causes would
/// read.
NextCheck describeNext(const Candidate& candidate, const Evidence& evidence,
                       const Scenario& healthy);

}  // namespace bw
