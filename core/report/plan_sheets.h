// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/report/report_context.h"
#include "core/report/sheet.h"
#include "core/season/job_verdict.h"
#include "core/window/speed_window.h"

namespace bw {

/// A job as it is planned: with its pinned nozzle, else the one that serves it best, the restrictor
/// valve where that serves it better.
struct PlannedJob {
    Job job;
    std::optional<WindowModel> model;
    std::optional<Problem> problem;  ///< why there is no model
};
/// As jobVerdict; nozzles that only a pinned job may name come in `elsewhere`.
PlannedJob plannedJob(const Machine& machine, const Job& job, const std::vector<Nozzle>& nozzles,
                      const std::vector<Nozzle>& elsewhere = {});

/// The card for the cab of one job with the nozzle and valve position of the model: rate, set,
/// speed window with the figures for driving by hand under it, what it rests on and what was not
/// checked, cautions. One page.
Sheet cabCard(const WindowModel& model, const ReportContext& context);

/// The cards of all jobs of a machine, one a page. A job that cannot be reckoned has a page that
/// says why.
Sheet cabCards(const Machine& machine, const std::vector<PlannedJob>& jobs,
               const ReportContext& context);

/// All jobs of a machine, one row each.
Sheet machineOverview(const Machine& machine, const std::vector<PlannedJob>& jobs,
                      const ReportContext& context);

/// The word of a standing, "holds slow to fast".
std::string standingWord(Standing standing, const ReportContext& context);

}  // namespace bw
