// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_choice.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "core/season/set_matrix.h"
#include "core/season/set_words.h"

namespace bw {
namespace {

/// Where each step begins, of the whole (judged from timings; only for a bar on the screen).
constexpr double kMatrixDone = 0.5;
constexpr double kChoiceDone = 0.65;
constexpr double kNextDone = 0.8;
constexpr double kFewerDone = 0.9;
constexpr double kMoreDone = 0.95;

class Chooser {
  public:
    Chooser(const SetMatrix& matrix, const SetProgress& progress)
        : m_matrix(matrix), m_maker(matrix), m_progress(progress) {}

    /// False: stopped.
    bool run(SetChoice& out) {
        const CoverChoice chosen = solved(m_matrix.task(), kMatrixDone);
        out.end = chosen.end;
        if (chosen.end == SolveEnd::Optimal) {
            out.plan = m_maker.plan(chosen);
            addAlternatives(chosen, out);
        }
        if (m_isStopped) return false;
        for (std::size_t j = 0; j < m_matrix.jobs(); ++j) {
            if (!tell(kMoreDone)) return false;
            if (!isCoverable(j)) out.uncovered.push_back(uncovered(j));
        }
        addGaps(out);
        return true;
    }

  private:
    bool tell(double done) {
        if (m_progress && !m_progress(done)) m_isStopped = true;
        return !m_isStopped;
    }
    CoverChoice solved(const CoverTask& task, double done) {
        return chooseCover(task, [&] { return !tell(done); });
    }
    bool isCoverable(std::size_t j) const {
        for (std::size_t n = 0; n < m_matrix.nozzles(); ++n)
            if (mayRun(m_matrix.task(), j, n)) return true;
        return false;
    }

    void addAlternatives(const CoverChoice& chosen, SetChoice& out) {
        if (chosen.sets.empty()) return;
        const auto add = [&](AlternativeKind kind, const CoverChoice& choice) {
            if (choice.end == SolveEnd::Optimal)
                out.alternatives.push_back(m_maker.alternative(kind, choice, chosen));
        };
        CoverTask next = m_matrix.task();
        next.excluded.push_back(chosen.sets);
        next.most = chosen.sets.size();
        add(AlternativeKind::NextBest, solved(next, kChoiceDone));
        if (chosen.sets.size() > 1) {
            CoverTask fewer = m_matrix.task();
            fewer.most = chosen.sets.size() - 1;
            for (std::size_t j = 0; j < m_matrix.jobs(); ++j)
                fewer.leaving.push_back(m_matrix.weight(j));
            add(AlternativeKind::OneFewer, solved(fewer, kNextDone));
        }
        add(AlternativeKind::OneMore, oneMore(chosen));
    }

    /// One set more: for less money if that can be, else the set beside the chosen ones that gains
    /// most room.
    CoverChoice oneMore(const CoverChoice& chosen) {
        if (chosen.cost > 0) {
            CoverTask more = m_matrix.task();
            more.least = more.most = chosen.sets.size() + 1;
            CoverChoice cheaper = solved(more, kFewerDone);
            if (cheaper.end == SolveEnd::Optimal && cheaper.cost < chosen.cost * (1 - 1e-9))
                return cheaper;
        }
        CoverChoice best;
        std::tuple<double, double, double> most;
        for (std::size_t n = 0; n < m_matrix.nozzles(); ++n) {
            const CoverChoice wider = with(chosen, n);
            if (wider.end != SolveEnd::Optimal) continue;
            const std::tuple worth{*wider.room, gain(chosen, wider), -wider.cost};
            if (best.end == SolveEnd::Optimal && worth <= most) continue;
            most = worth;
            best = wider;
        }
        return best;
    }
    /// The choice and one more nozzle, fitted wherever a job would rather run with it; not optimal
    /// if none would.
    CoverChoice with(const CoverChoice& chosen, std::size_t n) const {
        const CoverTask& task = m_matrix.task();
        CoverChoice out = chosen;
        out.end = SolveEnd::Infeasible;
        out.room.reset();
        std::set<std::size_t> machines;
        for (std::size_t j = 0; j < task.jobs.size(); ++j) {
            if (!chosen.runs[j]) continue;
            const auto& job = task.jobs[j];
            const auto& positions = task.machines[job.machine].positions;
            const bool isFull = positions && chosen.fitted[job.machine].size() >= *positions;
            double room = *job.room[*chosen.runs[j]];
            if (!isFull && mayRun(task, j, n) && *job.room[n] > room + 1e-9) {
                room = *job.room[n];
                out.runs[j] = n;
                machines.insert(job.machine);
            }
            out.room = std::min(out.room.value_or(room), room);
        }
        if (machines.empty()) return out;
        out.end = SolveEnd::Optimal;
        out.sets.push_back(n);
        for (const std::size_t m : machines) {
            out.fitted[m].push_back(n);
            out.cost += task.machines[m].cost[n];
        }
        return out;
    }
    double gain(const CoverChoice& chosen, const CoverChoice& wider) const {
        double sum = 0.0;
        for (std::size_t j = 0; j < m_matrix.jobs(); ++j)
            if (wider.runs[j] != chosen.runs[j]) sum += m_matrix.weight(j);
        return sum;
    }

    UncoveredJob uncovered(std::size_t j) const {
        UncoveredJob out;
        const StoredJob& stored = m_matrix.job(j);
        out.job = stored.id;
        out.machine = stored.machine;
        std::vector<const Nozzle*> nozzles;
        std::optional<std::size_t> nearest;
        for (std::size_t n = 0; n < m_matrix.nozzles(); ++n) {
            if (!m_matrix.isAllowed(j, n)) continue;
            const PairVerdict* pair = m_matrix.pair(j, n);
            nozzles.push_back(&m_matrix.nozzle(n));
            if (pair->standing == Standing::UsualOnly)
                out.usualOnly.push_back(nozzles.back()->name);
            if (!nearest || servesBetter(*pair, *m_matrix.pair(j, *nearest))) nearest = n;
        }
        if (nearest) {
            out.nozzle = m_matrix.nozzle(*nearest).name;
            out.limit = m_matrix.pair(j, *nearest)->stop;
        }
        out.why = whyUncovered(stored.job, m_matrix.verdict(j), out.nozzle,
                               nearest ? m_matrix.pair(j, *nearest) : nullptr, barredThatCover(j));
        const Machine& machine = m_matrix.machine(m_matrix.task().jobs[j].machine).machine;
        if (!m_matrix.verdict(j).problem)
            out.changes = changesThatDo(machine, stored.job, nozzles, m_matrix.wishes().roundIn);
        return out;
    }
    std::vector<std::string> barredThatCover(std::size_t j) const {
        std::vector<std::string> out;
        const auto& pinned = m_matrix.job(j).job.pinnedNozzle;
        for (std::size_t n = 0; n < m_matrix.nozzles(); ++n) {
            const PairVerdict* pair = m_matrix.pair(j, n);
            if (!m_matrix.task().barred[n] || !pair) continue;
            const bool isFree = pinned.empty() || pinned == m_matrix.nozzle(n).name;
            if (isFree && pair->standing == Standing::Covers)
                out.push_back(m_matrix.nozzle(n).name);
        }
        return out;
    }

    void addGaps(SetChoice& out) const {
        std::set<Limit> ofMachine, taken;
        for (std::size_t j = 0; j < m_matrix.jobs(); ++j) {
            for (std::size_t n = 0; n < m_matrix.nozzles(); ++n)
                if (const PairVerdict* pair = m_matrix.pair(j, n))
                    ofMachine.insert(pair->machineGaps.begin(), pair->machineGaps.end());
            for (const auto& run : out.plan.runs) {
                if (run.job != m_matrix.job(j).id) continue;
                for (std::size_t n = 0; n < m_matrix.nozzles(); ++n) {
                    const PairVerdict* pair = m_matrix.pair(j, n);
                    if (pair && m_matrix.nozzle(n).name == run.nozzle)
                        taken.insert(pair->nozzleGaps.begin(), pair->nozzleGaps.end());
                }
            }
        }
        out.machineGaps.assign(ofMachine.begin(), ofMachine.end());
        out.takenUnchecked.assign(taken.begin(), taken.end());
    }

    const SetMatrix& m_matrix;
    PlanMaker m_maker;
    const SetProgress& m_progress;
    bool m_isStopped = false;
};

void accept(std::vector<Nozzle>& nozzles, const std::vector<std::string>& names) {
    for (auto& nozzle : nozzles)
        if (std::find(names.begin(), names.end(), nozzle.name) != names.end())
            nozzle.acceptUnchecked = true;
}

}  // namespace

std::vector<OwnedSet> setsAboard(const std::vector<StoredMachine>& machines) {
    std::vector<OwnedSet> out;
    for (const auto& stored : machines)
        for (const auto& aboard : stored.machine.setsAboard)
            if (!aboard.nozzle.empty()) out.push_back({stored.id, aboard.nozzle});
    return out;
}

SetChoice chooseSets(SeasonInputs inputs, const SetWishes& wishes, const SetProgress& progress,
                     const SeasonReckoning* before) {
    accept(inputs.nozzles, wishes.acceptUnchecked);
    accept(inputs.elsewhere, wishes.acceptUnchecked);
    SetChoice out;
    out.end = SolveEnd::Cancelled;
    double row = 0.0;
    const double rows = std::max(1.0, static_cast<double>(inputs.jobs.size()));
    auto season = reckonSeason(std::move(inputs), before,
                               [&] { return progress && !progress(kMatrixDone * row++ / rows); });
    if (!season) return out;
    out.season = std::move(*season);
    const SetMatrix matrix(out.season, wishes);
    if (!Chooser(matrix, progress).run(out)) {
        SetChoice stopped;
        stopped.end = SolveEnd::Cancelled;
        return stopped;
    }
    if (progress) progress(1.0);
    return out;
}

}  // namespace bw
