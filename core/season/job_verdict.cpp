// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/job_verdict.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/model/checks.h"
#include "core/window/candidates.h"

namespace bw {
namespace {

constexpr double kOff = 0.005;  ///< a rate within half a percent counts as right, as in doseFact

const WindowEnd& lowEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->low : w.low;
}
const WindowEnd& highEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->high : w.high;
}

/// What keeps the usual speed outside, or else the slow or the fast one. In a window whose ends
/// have crossed the usual speed lies past at least one of them.
Limit stopOf(const SpeedWindow& w, const JobDemand& demand) {
    if (w.coversBand) return Limit::None;
    if (w.emptyWhy != Limit::None) return w.emptyWhy;
    const WindowEnd& low = lowEnd(w);
    const WindowEnd& high = highEnd(w);
    const auto isUnder = [&](Speed speed) {
        return low.speed && speed.si() < low.speed->si() * (1 - 1e-9);
    };
    const auto isOver = [&](Speed speed) {
        return high.speed && speed.si() > high.speed->si() * (1 + 1e-9);
    };
    if (isUnder(demand.usual)) return low.limit;
    if (isOver(demand.usual)) return high.limit;
    return isUnder(demand.slow) ? low.limit : high.limit;
}

std::optional<OffRate> offRate(const SpeedWindow& w) {
    for (const OperatingPoint* point : {&w.atUsual, &w.atSlow, &w.atFast}) {
        if (std::abs(point->rateRatio - 1) > kOff)
            return OffRate{point->speed, point->rate, point->rateRatio};
    }
    return std::nullopt;
}

std::vector<Limit> machineGaps(const SpeedWindow& w, const std::vector<Limit>& ofNozzle) {
    std::vector<Limit> out;
    std::copy_if(w.notChecked.begin(), w.notChecked.end(), std::back_inserter(out),
                 [&](Limit limit) {
                     return std::find(ofNozzle.begin(), ofNozzle.end(), limit) == ofNozzle.end();
                 });
    return out;
}

PairVerdict pairOf(const WindowModel& model) {
    const SpeedWindow window = model.window();
    const JobDemand& demand = model.demand();
    PairVerdict pair;
    pair.standing = standingOf(window, model.nozzle());
    pair.ends = endsOf(window);
    pair.lowLimit = lowEnd(window).limit;
    pair.highLimit = highEnd(window).limit;
    pair.stop = stopOf(window, demand);
    pair.slow = demand.slow;
    pair.usual = demand.usual;
    pair.fast = demand.fast;
    pair.roomToSpare = window.roomToSpare;
    if (hasRestrictor(model.machine())) pair.position = model.position();
    pair.nozzleGaps = nozzleGaps(window);
    pair.machineGaps = machineGaps(window, pair.nozzleGaps);
    pair.off = offRate(window);
    return pair;
}

JobStanding jobStanding(const PairVerdict& pair) {
    switch (pair.standing) {
        case Standing::Covers:
            return JobStanding::Holds;
        case Standing::UsualOnly:
            return JobStanding::UsualOnly;
        case Standing::NotChecked:
            return JobStanding::NotChecked;
        case Standing::Neither:
        case Standing::Empty:
            break;
    }
    return JobStanding::DoesNotHold;
}

std::optional<std::size_t> indexNamed(const std::vector<Nozzle>& nozzles, const std::string& name) {
    const auto it = std::find_if(nozzles.begin(), nozzles.end(),
                                 [&](const Nozzle& n) { return n.name == name; });
    if (it == nozzles.end()) return std::nullopt;
    return static_cast<std::size_t>(it - nozzles.begin());
}

std::optional<std::size_t> bestOf(const std::vector<PairVerdict>& pairs) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        if (!best || servesBetter(pairs[i], pairs[*best])) best = i;
    }
    return best;
}

/// Puts the pinned nozzle in, from wherever it is; false if there is none of that name.
bool pin(JobVerdict& verdict, const Machine& machine, const Job& job,
         const std::vector<Nozzle>& nozzles, const std::vector<Nozzle>& elsewhere) {
    verdict.isPinned = true;
    verdict.nozzle = job.pinnedNozzle;
    verdict.best = indexNamed(nozzles, job.pinnedNozzle);
    if (verdict.best) return true;
    const auto other = indexNamed(elsewhere, job.pinnedNozzle);
    if (other) verdict.elsewhere = pairVerdict(machine, elsewhere[*other], job);
    return other.has_value();
}

}  // namespace

Result<WindowModel> modelInBetterPosition(const Machine& machine, const Nozzle& nozzle,
                                          const Job& job) {
    auto model = WindowModel::make(machine, nozzle, job);
    if (!model || !hasRestrictor(machine)) return model;
    const auto advice = model->window().restrictor;
    if (!advice || advice->position == model->position()) return model;
    Machine moved = machine;
    moved.restrictor.position = Sourced<RestrictorPosition>(advice->position);
    return WindowModel::make(moved, nozzle, job);
}

bool PairVerdict::isTakenUnchecked() const {
    return !nozzleGaps.empty() && (standing == Standing::Covers || standing == Standing::UsualOnly);
}

PairVerdict pairVerdict(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto model = modelInBetterPosition(machine, nozzle, job);
    if (model) return pairOf(*model);
    PairVerdict pair;
    pair.problem = model.problem();
    return pair;
}

const PairVerdict* JobVerdict::bestPair() const {
    if (elsewhere) return &*elsewhere;
    return best && *best < pairs.size() ? &pairs[*best] : nullptr;
}

bool servesBetter(const PairVerdict& a, const PairVerdict& b) {
    if (a.problem.has_value() != b.problem.has_value()) return b.problem.has_value();
    if (rankOf(a.standing) != rankOf(b.standing)) return rankOf(a.standing) < rankOf(b.standing);
    if (a.roomToSpare && b.roomToSpare) return *a.roomToSpare > *b.roomToSpare;
    return a.roomToSpare && !b.roomToSpare;
}

JobVerdict jobVerdict(const Machine& machine, const Job& job, const std::vector<Nozzle>& nozzles,
                      const std::vector<Nozzle>& elsewhere) {
    JobVerdict verdict;
    const auto problems = checkJob(job);
    if (const Problem* problem = firstError(problems)) {
        PairVerdict none;
        none.problem = *problem;
        verdict.pairs.assign(nozzles.size(), none);
        verdict.problem = *problem;
        return verdict;
    }
    for (const auto& nozzle : nozzles) verdict.pairs.push_back(pairVerdict(machine, nozzle, job));
    if (!job.pinnedNozzle.empty()) {
        if (!pin(verdict, machine, job, nozzles, elsewhere))
            verdict.problem =
                error("pinned_nozzle_unknown", "pinned_nozzle", {{"nozzle", job.pinnedNozzle}});
    } else if ((verdict.best = bestOf(verdict.pairs))) {
        verdict.nozzle = nozzles[*verdict.best].name;
    } else {
        verdict.problem = warning("no_nozzle_yet");
    }
    if (const PairVerdict* pair = verdict.bestPair()) {
        verdict.standing = jobStanding(*pair);
        verdict.problem = pair->problem;
    }
    return verdict;
}

}  // namespace bw
