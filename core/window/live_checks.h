// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// How a check of a machine came out. Unknown never passes: it is `NotChecked`.
enum class CheckState { Asks, NotChecked, Fine };

/// One thing that is looked at while a machine is being entered, as a fact with words.
struct LiveCheck {
    CheckState state = CheckState::Fine;
    std::string
        topic;  ///< "width", "strainers", "pump", "suction", "floor", "ceiling", "field", "limit"
    std::string where;  ///< the field that could mend it; empty: none of the machine's
    Fact what;          ///< "check.…" or "problem.…"
};

/// What is looked at: width against nozzles and spacing, strainers along the flow, the fit of the
/// pump's law to its curve, a suction that cuts a displacement pump's flow (on water), floor and
/// ceiling against what the machine's jobs need at their slow and fast speeds. What asks for work
/// comes first, then what was not checked, then what is fine. Problems of single fields are
/// `checkMachine`'s and not repeated here.
std::vector<LiveCheck> liveChecks(const Machine& machine, const std::vector<Job>& jobs,
                                  const std::vector<Nozzle>& nozzles);

}  // namespace bw
