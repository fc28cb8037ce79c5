// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/window/verdict.h"

namespace bw {

/// Place of a standing among others, the best first: covers, usual only, not checked, neither,
/// empty.
int rankOf(Standing standing);

/// The nozzles that come nearest to a job on a machine, best first, at most `most`: those whose
/// window covers the whole band, then those that hold the usual speed, then those that would but
/// for what is not known of them, then those whose pressure at the usual speed lies nearest the
/// middle of what floor and ceiling leave. Nozzles that need under 0.4 of the floor or over
/// twice the ceiling there are left out, and so is one whose window cannot be worked out.
std::vector<std::string> nearestNozzles(const Machine& machine, const Job& job,
                                        const std::vector<Nozzle>& from, std::size_t most = 6);

}  // namespace bw
