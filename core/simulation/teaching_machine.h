// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// A machine with what the running loop needs and the profile does not know, for showing cause and
/// effect. It is not written anywhere.
struct TeachingMachine {
    Machine machine;
    std::vector<std::string>
        assumed;  ///< keys (as in visitFields) that were filled, marked assumed
};

/// Fills start values, and a pump and control valve that are sized for the job: judgement, none of
/// it a claim about the machine. What is known stays. A machine without sections or spacing, and a
/// job without rate or speed, stay short of what is needed.
TeachingMachine teachingMachine(const Machine& machine, const Nozzle& nozzle, const Job& job);

}  // namespace bw
