// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/model/machine.h"
#include "core/yard/profile_edits.h"
#include "core/yard/yard_checks.h"

namespace bw {

/// What was read for one reading of a check: one number, or one for each run; or a choice's word.
struct YardEntry {
    std::vector<AnyQuantity> numbers;
    std::string choice;
};
/// By the reading's id, as in the check's data; what was not read is left out.
using YardReadings = std::map<std::string, YardEntry, std::less<>>;

/// The sum of a check in words, and what it would write into the profile.
struct YardAnswer {
    YardSum shown;
    std::vector<ProfileEdit> edits;
};

/// Works out any yard check by its id ("Y1" ... "gauge"), from readings as typed. The same sums as
/// pumpLine(), nozzleLoss() and so on, with the usual reading errors unless others are given.
/// Problems: those of the sums, `where` being a reading's id; yard_reading_missing; yard_no_check.
Result<YardAnswer> yardSum(std::string_view check, const YardReadings& readings,
                           const Machine& machine, const ReadingErrors& errors = {});

/// The ids that the sum of a check takes, in its own order; empty if there is no such check.
std::vector<std::string> yardReadingIds(std::string_view check);

}  // namespace bw
