// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/model/yard_record.h"
#include "core/yard/wear_trend.h"

namespace bw {

/// The catch tests of one nozzle set on one machine, and the line through them.
struct WearHistory {
    RecordId machineId = 0;
    std::string machineName;  ///< as in the last test
    std::string set;
    double limit = 0.10;            ///< part over new, as set in the last test
    std::vector<WearTest> tests;    ///< by date; those that say how far from new
    std::vector<RecordId> records;  ///< of each test
    int leftOut = 0;                ///< finished tests that do not say how far from new
    Result<WearTrend> trend{error("yard_no_runs", "tests")};  ///< problems: as wearTrend
};

/// One history for each machine and named set that has a finished catch test, by machine and set.
/// A machine that is gone is known by its name. Tests that are not finished do not count.
std::vector<WearHistory> wearHistories(const std::vector<StoredYardRecord>& records);

}  // namespace bw
