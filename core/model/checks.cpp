// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/checks.h"

#include <algorithm>

#include "core/model/field_checks.h"

namespace bw {
namespace {

void checkSpeeds(ProblemList& list, const Job& job) {
    const auto over = [&](const Known<Speed>& slower, const Known<Speed>& faster, Problem problem) {
        list.addIf(slower && faster && slower->value > faster->value, std::move(problem));
    };
    const auto value = [](const Known<Speed>& speed) {
        return anyQuantity(bare(speed).value_or(Speed{}));
    };
    over(job.slow, job.usual,
         error("job_speeds_order", "slow",
               {{"slow", value(job.slow)}, {"usual", value(job.usual)}}));
    over(job.usual, job.fast,
         error("job_speeds_order_fast", "fast",
               {{"fast", value(job.fast)}, {"usual", value(job.usual)}}));
    if (!job.usual)
        over(job.slow, job.fast,
             error("job_slow_over_fast", "slow",
                   {{"slow", value(job.slow)}, {"fast", value(job.fast)}}));
}

void checkRates(ProblemList& list, const Job& job) {
    const auto value = [](const Known<AreaRate>& rate) {
        return anyQuantity(bare(rate).value_or(AreaRate{}));
    };
    if (job.rateLeast && job.rate && job.rateLeast->value > job.rate->value) {
        list.add(error("job_rates_order", "rate_least",
                       {{"least", value(job.rateLeast)}, {"rate", value(job.rate)}}));
    }
    if (job.rateMost && job.rate && job.rate->value > job.rateMost->value) {
        list.add(error("job_rates_order_most", "rate_most",
                       {{"most", value(job.rateMost)}, {"rate", value(job.rate)}}));
    }
}

}  // namespace

std::vector<Problem> checkJob(const Job& job) {
    ProblemList list;
    list.addIf(job.name.find_first_not_of(" \t") == std::string::npos,
               warning("name_missing", "name"));
    list.addIf(!job.rate, error("job_rate_missing", "rate"));
    list.addIf(!job.usual, error("job_usual_missing", "usual"));
    visitFields(
        job, [&](std::string_view key, const auto& field) { checkField(list, "job", key, field); });
    checkSpeeds(list, job);
    checkRates(list, job);
    return list.take();
}

const Problem* firstError(const std::vector<Problem>& problems) {
    const auto found = std::find_if(problems.begin(), problems.end(),
                                    [](const auto& p) { return p.severity == Severity::Error; });
    return found == problems.end() ? nullptr : &*found;
}

}  // namespace bw
