// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/season_reckoning.h"

#include <algorithm>
#include <set>

namespace bw {
namespace {

const StoredMachine* machineOf(const SeasonInputs& inputs, RecordId id) {
    const auto it = std::find_if(inputs.machines.begin(), inputs.machines.end(),
                                 [&](const auto& m) { return m.id == id; });
    return it == inputs.machines.end() ? nullptr : &*it;
}

const StoredJob* jobOf(const SeasonInputs& inputs, RecordId id) {
    const auto it = std::find_if(inputs.jobs.begin(), inputs.jobs.end(),
                                 [&](const auto& j) { return j.id == id; });
    return it == inputs.jobs.end() ? nullptr : &*it;
}

bool hasSameNozzles(const SeasonInputs& a, const SeasonInputs& b) {
    return a.nozzles == b.nozzles && a.elsewhere == b.elsewhere;
}

/// Finds the verdicts of before that still hold.
class Earlier {
  public:
    Earlier(const SeasonInputs& inputs, const SeasonReckoning* before)
        : m_inputs(inputs),
          m_before(before && hasSameNozzles(before->inputs, inputs) ? before : nullptr) {}

    /// Nothing if anything that the verdict rests on has changed.
    const JobReckoning* of(const StoredJob& job) const {
        const JobReckoning* old = m_before ? m_before->of(job.id) : nullptr;
        if (!old || old->machine != job.machine) return nullptr;
        const StoredJob* oldJob = jobOf(m_before->inputs, job.id);
        const StoredMachine* oldMachine = machineOf(m_before->inputs, job.machine);
        const StoredMachine* machine = machineOf(m_inputs, job.machine);
        const bool same = oldJob && oldJob->job == job.job && oldMachine && machine &&
                          oldMachine->machine == machine->machine;
        return same ? old : nullptr;
    }

  private:
    const SeasonInputs& m_inputs;
    const SeasonReckoning* m_before;
};

NozzleShare& shareOf(MachineTally& tally, const std::string& nozzle) {
    for (auto& share : tally.shares) {
        if (share.nozzle == nozzle) return share;
    }
    tally.shares.push_back({nozzle, {}, {}});
    return tally.shares.back();
}

void count(MachineTally& tally, JobStanding standing) {
    ++tally.jobs;
    switch (standing) {
        case JobStanding::Holds:
            ++tally.holding;
            break;
        case JobStanding::UsualOnly:
            ++tally.usualOnly;
            break;
        case JobStanding::DoesNotHold:
            ++tally.notHolding;
            break;
        case JobStanding::NotChecked:
            ++tally.notChecked;
            break;
    }
}

}  // namespace

const JobReckoning* SeasonReckoning::of(RecordId job) const {
    const auto it =
        std::find_if(jobs.begin(), jobs.end(), [&](const auto& j) { return j.job == job; });
    return it == jobs.end() ? nullptr : &*it;
}

std::size_t pairsToReckon(const SeasonInputs& inputs, const SeasonReckoning* before) {
    const Earlier earlier(inputs, before);
    const auto changed = std::count_if(inputs.jobs.begin(), inputs.jobs.end(),
                                       [&](const auto& j) { return !earlier.of(j); });
    return static_cast<std::size_t>(changed) * inputs.nozzles.size();
}

std::optional<SeasonReckoning> reckonSeason(SeasonInputs inputs, const SeasonReckoning* before,
                                            const std::function<bool()>& isCancelled) {
    SeasonReckoning season;
    const Earlier earlier(inputs, before);
    for (const auto& job : inputs.jobs) {
        if (isCancelled && isCancelled()) return std::nullopt;
        if (const JobReckoning* old = earlier.of(job)) {
            season.jobs.push_back(*old);
        } else if (const StoredMachine* machine = machineOf(inputs, job.machine)) {
            season.jobs.push_back(
                {job.id, job.machine,
                 jobVerdict(machine->machine, job.job, inputs.nozzles, inputs.elsewhere)});
        }
    }
    season.inputs = std::move(inputs);
    return season;
}

MachineTally tallyOf(const SeasonReckoning& season, RecordId machine) {
    MachineTally tally;
    tally.machine = machine;
    std::set<Limit> machineGaps, taken;
    for (const auto& reckoning : season.jobs) {
        if (reckoning.machine != machine) continue;
        const StoredJob* stored = jobOf(season.inputs, reckoning.job);
        const Area area = stored ? valueOr(stored->job.area, Area{}) : Area{};
        tally.area += area;
        if (!stored || !stored->job.area) ++tally.withoutArea;
        const JobVerdict& verdict = reckoning.verdict;
        count(tally, verdict.standing);
        const PairVerdict* best = verdict.bestPair();
        if (!best) continue;
        machineGaps.insert(best->machineGaps.begin(), best->machineGaps.end());
        if (best->isTakenUnchecked())
            taken.insert(best->nozzleGaps.begin(), best->nozzleGaps.end());
        if (verdict.standing != JobStanding::Holds) continue;
        NozzleShare& share = shareOf(tally, verdict.nozzle);
        share.jobs.push_back(reckoning.job);
        share.area += area;
    }
    std::stable_sort(tally.shares.begin(), tally.shares.end(),
                     [](const auto& a, const auto& b) { return a.area > b.area; });
    tally.machineGaps.assign(machineGaps.begin(), machineGaps.end());
    tally.takenUnchecked.assign(taken.begin(), taken.end());
    return tally;
}

}  // namespace bw
