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

/// The first error of a list, if any.
const Problem* firstError(const std::vector<Problem>& problems);

}  // namespace bw
