// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/season_words.h"

#include <utility>

namespace bw {
namespace {

Argument plainNumber(std::string name, int number) {
    return {std::move(name), std::to_string(number)};
}

void addLimits(Fact& fact, const std::vector<Limit>& limits) {
    for (const Limit limit : limits) fact.arguments.push_back({"limits", limitWord(limit)});
}

}  // namespace

Fact tallyFact(const MachineTally& tally, const std::string& machineName) {
    Fact fact{"season.tally",
              {{"machine", machineName},
               plainNumber("holding", tally.holding),
               plainNumber("jobs", tally.jobs)}};
    if (tally.jobs == 0) fact.code = "season.tally_none";
    if (tally.jobs == 1) fact.code = tally.holding == 1 ? "season.tally_one" : "season.tally_not";
    return fact;
}

std::optional<Fact> jobFact(const JobReckoning& reckoning, const Job& job) {
    const JobVerdict& verdict = reckoning.verdict;
    const PairVerdict* pair = verdict.bestPair();
    if (!pair || verdict.problem) return std::nullopt;
    Fact fact{{},
              {{"job", job.name},
               {"nozzle", verdict.nozzle},
               {"slow", anyQuantity(pair->slow)},
               {"usual", anyQuantity(pair->usual)},
               {"fast", anyQuantity(pair->fast)},
               {"limit", limitWord(pair->stop)}}};
    switch (verdict.standing) {
        case JobStanding::Holds:
            return std::nullopt;
        case JobStanding::UsualOnly:
            fact.code = "season.job_usual_only";
            break;
        case JobStanding::DoesNotHold:
            fact.code = verdict.isPinned ? "season.job_pinned_fails" : "season.job_none_holds";
            break;
        case JobStanding::NotChecked:
            fact.code = "season.job_not_checked";
            addLimits(fact, pair->nozzleGaps);
            break;
    }
    return fact;
}

std::optional<Fact> machineGapsFact(const MachineTally& tally) {
    if (tally.machineGaps.empty()) return std::nullopt;
    Fact fact{"season.machine_gaps", {}};
    addLimits(fact, tally.machineGaps);
    return fact;
}

std::optional<Fact> takenUncheckedFact(const MachineTally& tally) {
    if (tally.takenUnchecked.empty()) return std::nullopt;
    Fact fact{"season.taken_unchecked", {}};
    addLimits(fact, tally.takenUnchecked);
    return fact;
}

}  // namespace bw
