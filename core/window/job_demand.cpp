// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/job_demand.h"

#include <cmath>

namespace bw {
namespace {

template <class Q>
bool isPositive(Q q) {
    return q.si() > 0 && std::isfinite(q.si());
}

std::optional<Problem> demandProblem(const JobDemand& d) {
    if (!isPositive(d.rate)) return error("job_not_positive", "rate");
    if (!isPositive(d.rateLeast)) return error("job_not_positive", "rate_least");
    if (!isPositive(d.rateMost)) return error("job_not_positive", "rate_most");
    if (!isPositive(d.slow)) return error("job_not_positive", "slow");
    if (!isPositive(d.usual)) return error("job_not_positive", "usual");
    if (!isPositive(d.fast)) return error("job_not_positive", "fast");
    if (!(d.specificGravity > 0) || !std::isfinite(d.specificGravity))
        return error("job_not_positive", "specific_gravity");
    if (d.slow > d.usual)
        return error("job_speeds_order", "slow",
                     {{"slow", anyQuantity(d.slow)}, {"usual", anyQuantity(d.usual)}});
    if (d.usual > d.fast)
        return error("job_speeds_order_fast", "fast",
                     {{"fast", anyQuantity(d.fast)}, {"usual", anyQuantity(d.usual)}});
    if (d.rateLeast > d.rate)
        return error("job_rates_order", "rate_least",
                     {{"least", anyQuantity(d.rateLeast)}, {"rate", anyQuantity(d.rate)}});
    if (d.rate > d.rateMost)
        return error("job_rates_order_most", "rate_most",
                     {{"most", anyQuantity(d.rateMost)}, {"rate", anyQuantity(d.rate)}});
    return std::nullopt;
}

}  // namespace

Result<JobDemand> demandOf(const Job& job) {
    if (!job.rate) return error("job_rate_missing", "rate");
    if (!job.usual) return error("job_usual_missing", "usual");
    JobDemand d;
    d.rate = job.rate->value;
    d.rateLeast = valueOr(job.rateLeast, d.rate);
    d.rateMost = valueOr(job.rateMost, d.rate);
    d.usual = job.usual->value;
    d.slow = valueOr(job.slow, d.usual);
    d.fast = valueOr(job.fast, d.usual);
    d.specificGravity = valueOr(job.specificGravity, 1.0);
    if (const auto problem = demandProblem(d)) return *problem;
    return d;
}

}  // namespace bw
