// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_words.h"

#include <cmath>
#include <utility>

#include "core/season/season_words.h"
#include "core/units/format.h"

namespace bw {
namespace {

template <class Q>
Argument arg(std::string name, Q q) {
    return {std::move(name), anyQuantity(q)};
}

Argument hours(std::string name, Duration time) {
    return {std::move(name), formatFixed(in(time, Unit::Hour), 1) + " h"};
}

Fact pairFact(const Job& job, const std::string& nozzle, const PairVerdict& pair) {
    Fact fact{"sets.why_none_holds",
              {{"nozzle", nozzle},
               arg("slow", pair.slow),
               arg("usual", pair.usual),
               arg("fast", pair.fast),
               {"limit", limitWord(pair.stop)}}};
    if (pair.standing == Standing::UsualOnly) {
        fact.code = "sets.why_usual_only";
    } else if (pair.standing == Standing::NotChecked) {
        fact.code = "sets.why_not_checked";
        for (const Limit limit : pair.nozzleGaps)
            fact.arguments.push_back({"limits", limitWord(limit)});
    } else if (!job.pinnedNozzle.empty()) {
        fact.code = "sets.why_pinned_fails";
    }
    return fact;
}

/// What the jobs lose or gain, for the end of an alternative's code.
std::vector<Argument> tallyArguments(const SetAlternative& alternative) {
    std::vector<Argument> out{{"left", std::to_string(alternative.leftJobs)},
                              arg("left_area", alternative.leftArea),
                              {"roomier", std::to_string(alternative.roomierJobs)},
                              arg("roomier_area", alternative.roomierArea),
                              {"percent", formatFixed(100 * alternative.plan.room.value_or(0), 0)},
                              {"count", std::to_string(alternative.plan.sets.size())},
                              hours("time", alternative.moreTime.value_or(Duration{}))};
    for (const auto& set : alternative.plan.sets) out.push_back({"sets", set.nozzle});
    return out;
}

std::optional<Fact> moneyFact(const SetAlternative& alternative) {
    if (!alternative.morePrice) return Fact{"sets.money_unknown", {}};
    const double more = *alternative.morePrice;
    const std::vector<Argument> sum{{"money", formatFixed(std::abs(more), 2)}};
    if (std::abs(more) < 0.005) return Fact{"sets.money_same", {}};
    return Fact{more > 0 ? "sets.money_more" : "sets.money_less", sum};
}

}  // namespace

Fact whyUncovered(const Job& job, const JobVerdict& verdict, const std::string& nozzle,
                  const PairVerdict* nearest, const std::vector<std::string>& barred) {
    if (!barred.empty()) {
        Fact fact{"sets.why_barred", {}};
        for (const auto& name : barred) fact.arguments.push_back({"nozzles", name});
        return fact;
    }
    const auto& problem = nearest ? nearest->problem : verdict.problem;
    if (problem) return {"problem." + problem->code, problem->arguments};
    if (!nearest) return {"sets.why_none_left", {}};
    return pairFact(job, nozzle, *nearest);
}

Fact changeFact(const PlanChange& change) {
    Fact fact{"sets.change_" + std::string(choiceName(change.what)), {{"nozzle", change.nozzle}}};
    if (change.what == ChangeKind::Speed || change.what == ChangeKind::Rate)
        fact.code += "_" + std::string(choiceName(change.bound));
    if (change.value) fact.arguments.push_back({"value", *change.value});
    if (change.to) fact.arguments.push_back({"to", *change.to});
    for (const auto category : change.droplets)
        fact.arguments.push_back({"droplets", std::string(choiceName(category))});
    return fact;
}

std::optional<Fact> jobChangeFact(const JobChange& change, const std::string& jobName) {
    const JobRun& before = change.before;
    const JobRun& after = change.after;
    Fact fact{"sets.job_left",
              {{"job", jobName}, {"nozzle", after.nozzle}, arg("usual", before.usual)}};
    if (after.speed) {
        fact.arguments.push_back(arg("after", *after.speed));
        const bool isSame = std::abs(*after.speed / before.usual - 1) < 1e-9;
        if (isSame && after.standing == Standing::Covers) return std::nullopt;
        fact.code = isSame ? "sets.job_usual_only" : "sets.job_speed";
    }
    if (before.area) {
        fact.arguments.push_back(arg("area", *before.area));
        fact.code += "_area";
    }
    const auto more = change.moreTime();
    if (more && fact.code == "sets.job_speed_area") {
        fact.code += more->si() >= 0 ? "_more" : "_less";
        fact.arguments.push_back(hours("time", Duration::fromSi(std::abs(more->si()))));
    }
    return fact;
}

std::vector<Fact> alternativeFacts(const SetAlternative& alternative) {
    Fact fact{"sets." + std::string(choiceName(alternative.kind)), tallyArguments(alternative)};
    if (alternative.kind == AlternativeKind::OneFewer)
        fact.code += alternative.leftArea.si() > 0 ? "_area" : "_jobs";
    if (alternative.kind == AlternativeKind::OneMore && alternative.roomierJobs > 0)
        fact.code += alternative.roomierArea.si() > 0 ? "_area" : "_jobs";
    std::vector<Fact> out{std::move(fact)};
    if (auto money = moneyFact(alternative)) out.push_back(std::move(*money));
    return out;
}

}  // namespace bw
