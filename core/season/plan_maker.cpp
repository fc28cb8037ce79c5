// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/season/set_matrix.h"
#include "core/season/work_rate.h"

namespace bw {
namespace {

using Fitted = std::vector<std::vector<std::size_t>>;

bool has(const std::vector<std::size_t>& list, std::size_t n) {
    return std::find(list.begin(), list.end(), n) != list.end();
}

/// The speed nearest to the usual one that a window holds; nothing if it holds none for sure, or
/// none that is not over the job's own fast one.
std::optional<Speed> heldSpeed(const PairVerdict& pair, const Job& job) {
    if (pair.problem || pair.ends.empty || pair.standing == Standing::NotChecked ||
        pair.standing == Standing::Empty)
        return std::nullopt;
    if (pair.ends.holds(pair.usual)) return pair.usual;
    if (!pair.ends.low || pair.usual >= *pair.ends.low) return pair.ends.high;
    if (job.fast && *pair.ends.low > job.fast->value) return std::nullopt;
    return pair.ends.low;
}

double distance(const JobRun& run) {
    return run.speed ? std::abs(*run.speed / run.usual - 1)
                     : std::numeric_limits<double>::infinity();
}

/// Covering before not; then the speed nearest the usual one; then more room.
bool isBetter(const JobRun& a, const JobRun& b) {
    const bool aCovers = a.standing == Standing::Covers, bCovers = b.standing == Standing::Covers;
    if (aCovers != bCovers) return aCovers;
    if (distance(a) != distance(b)) return distance(a) < distance(b);
    return a.room.value_or(-1) > b.room.value_or(-1);
}

bool isSame(const JobRun& a, const JobRun& b) {
    return a.nozzle == b.nozzle && a.speed == b.speed;
}

}  // namespace

std::optional<Duration> JobChange::moreTime() const {
    if (!before.time || !after.time) return std::nullopt;
    return *after.time - *before.time;
}

JobRun PlanMaker::runWith(std::size_t j, std::size_t n) const {
    const PairVerdict& pair = *m_matrix.pair(j, n);
    const Machine& machine = m_matrix.machine(m_matrix.task().jobs[j].machine).machine;
    JobRun run;
    run.nozzle = m_matrix.nozzle(n).name;
    run.standing = pair.standing;
    run.room = pair.roomToSpare;
    run.position = pair.position;
    run.usual = pair.usual;
    run.speed = heldSpeed(pair, m_matrix.job(j).job);
    run.low = pair.ends.low;
    run.high = pair.ends.high;
    run.area = m_matrix.area(j);
    const double efficiency = m_matrix.wishes().fieldEfficiency.value_or(1.0);
    if (run.area && run.speed && efficiency > 0)
        run.time = timeFor(*run.area, fieldCapacity(sprayedWidth(machine), *run.speed, efficiency));
    return run;
}

JobRun PlanMaker::runOf(std::size_t j, const std::vector<std::size_t>& fitted) const {
    JobRun best;
    best.usual = valueOr(m_matrix.job(j).job.usual, Speed{});
    best.area = m_matrix.area(j);
    for (const std::size_t n : fitted) {
        if (!m_matrix.isAllowed(j, n)) continue;
        JobRun run = runWith(j, n);
        if (run.speed && (best.nozzle.empty() || isBetter(run, best))) best = std::move(run);
    }
    best.job = m_matrix.job(j).id;
    best.machine = m_matrix.job(j).machine;
    return best;
}

std::optional<std::size_t> PlanMaker::covering(std::size_t j,
                                               const std::vector<std::size_t>& fitted) const {
    const CoverTask& task = m_matrix.task();
    std::optional<std::size_t> best;
    for (const std::size_t n : fitted)
        if (mayRun(task, j, n) && (!best || *task.jobs[j].room[n] > *task.jobs[j].room[*best]))
            best = n;
    return best;
}

Fitted PlanMaker::used(const CoverChoice& choice) const {
    const CoverTask& task = m_matrix.task();
    Fitted fitted = choice.fitted;
    Fitted out(fitted.size());
    for (std::size_t m = 0; m < fitted.size(); ++m) {
        if (task.machines[m].positions) continue;
        for (const std::size_t n : choice.sets)
            if (m_matrix.isOwned(m, n) && !has(fitted[m], n)) fitted[m].push_back(n);
    }
    for (std::size_t j = 0; j < task.jobs.size(); ++j) {
        const std::size_t m = task.jobs[j].machine;
        const auto n = covering(j, fitted[m]);
        if (n && !has(out[m], *n)) out[m].push_back(*n);
    }
    for (auto& list : out) std::sort(list.begin(), list.end());
    return out;
}

FittedSet PlanMaker::fittedSet(std::size_t m, std::size_t n, const Fitted& fitted) const {
    const Machine& machine = m_matrix.machine(m).machine;
    FittedSet out;
    out.machine = m_matrix.machine(m).id;
    out.nozzles = nozzleCount(machine);
    out.isOwned = m_matrix.isOwned(m, n);
    out.spares = m_matrix.spares(m, n);
    const auto price = bare(m_matrix.nozzle(n).price);
    if (out.isOwned)
        out.price = 0.0;
    else if (price)
        out.price = out.nozzles * *price;
    for (std::size_t j = 0; j < m_matrix.jobs(); ++j)
        if (m_matrix.task().jobs[j].machine == m && covering(j, fitted[m]) == n)
            out.jobs.push_back(m_matrix.job(j).id);
    return out;
}

void PlanMaker::addJob(ChosenSet& set, std::size_t j, std::size_t n,
                       const std::vector<std::size_t>& fitted) const {
    const RecordId id = m_matrix.job(j).id;
    set.jobs.push_back(id);
    set.area += m_matrix.area(j).value_or(Area{});
    std::vector<std::size_t> others;
    std::copy_if(fitted.begin(), fitted.end(), std::back_inserter(others),
                 [&](std::size_t other) { return other != n; });
    set.without.push_back({runOf(j, {n}), runOf(j, others)});
    if (covering(j, others)) return;
    set.forcedBy.push_back(id);
    std::vector<std::size_t> all;
    for (std::size_t other = 0; other < m_matrix.nozzles(); ++other)
        if (other != n) all.push_back(other);
    if (!covering(j, all)) set.onlyWith.push_back(id);
}

ChosenSet PlanMaker::set(std::size_t n, const Fitted& fitted) const {
    ChosenSet out;
    out.nozzle = m_matrix.nozzle(n).name;
    for (std::size_t m = 0; m < fitted.size(); ++m) {
        if (!has(fitted[m], n)) continue;
        out.machines.push_back(fittedSet(m, n, fitted));
        const FittedSet& one = out.machines.back();
        out.spares = std::max(out.spares, one.spares);
        if (!one.isOwned) out.toBuy += one.nozzles;
    }
    out.toBuy += out.spares;
    const auto price = bare(m_matrix.nozzle(n).price);
    if (out.toBuy == 0)
        out.price = 0.0;
    else if (price)
        out.price = out.toBuy * *price;
    for (std::size_t j = 0; j < m_matrix.jobs(); ++j) {
        const auto& aboard = fitted[m_matrix.task().jobs[j].machine];
        if (covering(j, aboard) == n) addJob(out, j, n, aboard);
    }
    return out;
}

SetPlan PlanMaker::plan(const CoverChoice& choice) const {
    const Fitted fitted = used(choice);
    SetPlan out;
    out.price = 0.0;
    for (const std::size_t n : choice.sets) {
        const bool isUsed = std::any_of(fitted.begin(), fitted.end(),
                                        [&](const auto& list) { return has(list, n); });
        if (!isUsed) continue;
        out.sets.push_back(set(n, fitted));
        const auto& price = out.sets.back().price;
        if (!price) out.unpriced.push_back(out.sets.back().nozzle);
        out.price = out.price && price ? std::optional(*out.price + *price) : std::nullopt;
    }
    for (std::size_t j = 0; j < m_matrix.jobs(); ++j) {
        const auto n = covering(j, fitted[m_matrix.task().jobs[j].machine]);
        if (!n) continue;
        out.runs.push_back(runOf(j, {*n}));
        const double room = *m_matrix.task().jobs[j].room[*n];
        out.room = std::min(out.room.value_or(room), room);
    }
    return out;
}

SetAlternative PlanMaker::alternative(AlternativeKind kind, const CoverChoice& choice,
                                      const CoverChoice& chosen) const {
    const Fitted fitted = used(choice), before = used(chosen);
    SetAlternative out;
    out.kind = kind;
    out.plan = plan(choice);
    const SetPlan main = plan(chosen);
    if (main.price && out.plan.price) out.morePrice = *out.plan.price - *main.price;
    for (std::size_t j = 0; j < m_matrix.jobs(); ++j) {
        const std::size_t m = m_matrix.task().jobs[j].machine;
        const auto was = covering(j, before[m]), is = covering(j, fitted[m]);
        if (!was) continue;
        JobChange change{runOf(j, {*was}), is ? runOf(j, {*is}) : runOf(j, fitted[m])};
        const Area area = m_matrix.area(j).value_or(Area{});
        const double gain = change.after.room.value_or(0) - change.before.room.value_or(0);
        if (!is) {
            out.leftArea += area;
            ++out.leftJobs;
        } else if (gain > 1e-9) {
            out.roomierArea += area;
            ++out.roomierJobs;
        }
        if (const auto more = change.moreTime())
            out.moreTime = out.moreTime.value_or(Duration{}) + *more;
        if (!isSame(change.before, change.after)) out.changes.push_back(std::move(change));
    }
    return out;
}

}  // namespace bw
