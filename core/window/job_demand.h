// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/result.h"
#include "core/model/job.h"

namespace bw {

/// A job's numbers with the defaults filled in.
struct JobDemand {
    AreaRate rate;
    AreaRate rateLeast;
    AreaRate rateMost;
    Speed slow, usual, fast;
    double specificGravity = 1.0;
};
/// Problems: job_rate_missing, job_usual_missing, job_not_positive, job_speeds_order,
/// job_rates_order.
Result<JobDemand> demandOf(const Job& job);

}  // namespace bw
