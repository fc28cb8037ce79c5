// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/base/problem.h"
#include "core/model/nozzle.h"

namespace bw {

/// What a nozzle's data say and what they leave open: "nozzle.law", "nozzle.law_power",
/// "nozzle.fit", "nozzle.span", "mesh.…" and "nozzle.not_checked_…". Gaps come last. Nothing but
/// the gaps where no flow is known.
std::vector<Fact> nozzleFacts(const Nozzle& nozzle);

}  // namespace bw
