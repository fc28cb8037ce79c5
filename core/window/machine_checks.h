// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/base/problem.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// What only shows when machine, job and nozzle are seen together: a pressure floor over the
/// pressure that a job needs at its slow speed, a ceiling under what it needs at its fast speed; of
/// a range of rates the least is tried slow, the most fast.
/// A job is taken with its pinned nozzle, else with those aboard, else with the only one given; if
/// several could do it, a warning stands only where none of them escapes. `where` names the
/// machine's field. Jobs and nozzles that can't be reckoned with are passed over in silence: their
/// own checks speak of them.
std::vector<Problem> checkMachineForJobs(const Machine& machine, const std::vector<Job>& jobs,
                                         const std::vector<Nozzle>& nozzles);
/// How many of the jobs that looked at: those with a nozzle to run with that could be reckoned.
int reckonedJobs(const Machine& machine, const std::vector<Job>& jobs,
                 const std::vector<Nozzle>& nozzles);

}  // namespace bw
