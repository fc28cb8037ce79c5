// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/base/problem.h"
#include "core/model/season.h"

namespace bw {

/// Every consistency problem at once, each tied to its field. Errors keep the program from
/// reckoning with the value; warnings and notes are shown beside it. An empty list: nothing found.
/// Codes have sentences "problem.<code>" in resources/text.
std::vector<Problem> checkMachine(const Machine& machine);
std::vector<Problem> checkNozzle(const Nozzle& nozzle);
std::vector<Problem> checkJob(const Job& job);

/// What keeps a nozzle's flow table from being fitted: nozzle_table_too_short (fewer than two
/// pressures), nozzle_table_not_rising (one for each `row`). A pressure may stand in several rows,
/// as when it was caught more than once; flows at a higher one must lie over the mean before it.
std::vector<Problem> checkFlowTable(const std::vector<FlowPoint>& rows);

/// The first error of a list, if any.
const Problem* firstError(const std::vector<Problem>& problems);

}  // namespace bw
