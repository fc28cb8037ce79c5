// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_cover.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <set>

namespace bw {
namespace {

constexpr double kNone = -std::numeric_limits<double>::infinity();
constexpr double kOpen = std::numeric_limits<double>::infinity();

/// The programme. Variables: for each nozzle (chosen), for each machine and nozzle (fitted), for
/// each place of a machine in the order of its spares and nozzle (that much is paid), for each job
/// (left out).
class Cover {
  public:
    explicit Cover(const CoverTask& task)
        : m_task(task), m_nozzles(task.spares.size()), m_machines(task.machines.size()) {
        m_sharesSpares =
            std::any_of(task.machines.begin(), task.machines.end(),
                        [](const CoverMachine& machine) { return !machine.spares.empty(); });
        for (std::size_t n = 0; n < m_nozzles; ++n) m_order.push_back(bySpares(n));
    }

    int chosen(std::size_t nozzle) const { return static_cast<int>(nozzle); }
    int fitted(std::size_t machine, std::size_t nozzle) const {
        return static_cast<int>(m_nozzles * (machine + 1) + nozzle);
    }
    int paid(std::size_t place, std::size_t nozzle) const {
        return static_cast<int>(m_nozzles * (m_machines + 1 + place) + nozzle);
    }
    int leftOut(std::size_t job) const {
        return static_cast<int>(m_nozzles * (m_machines + 1 + places()) + job);
    }
    std::size_t variables() const {
        return m_nozzles * (m_machines + 1 + places()) + m_task.leaving.size();
    }

    std::vector<double> countCosts() const {
        std::vector<double> costs(variables(), 0.0);
        std::fill_n(costs.begin(), m_nozzles, 1.0);
        return costs;
    }
    std::vector<double> leavingCosts() const {
        std::vector<double> costs(variables(), 0.0);
        for (std::size_t j = 0; j < m_task.leaving.size(); ++j)
            costs[static_cast<std::size_t>(leftOut(j))] = m_task.leaving[j];
        return costs;
    }
    std::vector<double> moneyCosts() const {
        std::vector<double> costs(m_task.spares);
        for (const auto& m : m_task.machines)
            costs.insert(costs.end(), m.cost.begin(), m.cost.end());
        costs.resize(variables(), 0.0);
        for (std::size_t place = 0; place < places(); ++place) {
            for (std::size_t n = 0; n < m_nozzles; ++n) {
                const double less = place > 0 ? spareCost(m_order[n][place - 1], n) : 0.0;
                costs[static_cast<std::size_t>(paid(place, n))] =
                    spareCost(m_order[n][place], n) - less;
            }
        }
        return costs;
    }
    BinaryRow sumRow(const std::vector<double>& costs, double low, double high) const {
        BinaryRow row{{}, low, high};
        for (std::size_t i = 0; i < costs.size(); ++i)
            if (costs[i] != 0) row.terms.emplace_back(static_cast<int>(i), costs[i]);
        return row;
    }

    /// Each job that can be covered has a nozzle with at least this room to spare, or is left out.
    std::vector<BinaryRow> rows(double leastRoom) const {
        std::vector<BinaryRow> out;
        for (std::size_t j = 0; j < m_task.jobs.size(); ++j) {
            BinaryRow row{{}, 1, kOpen};
            bool isCoverable = false;
            for (std::size_t n = 0; n < m_nozzles; ++n) {
                if (!mayRun(m_task, j, n)) continue;
                isCoverable = true;
                if (*m_task.jobs[j].room[n] >= leastRoom)
                    row.terms.emplace_back(fitted(m_task.jobs[j].machine, n), 1.0);
            }
            if (!m_task.leaving.empty()) row.terms.emplace_back(leftOut(j), 1.0);
            if (isCoverable) out.push_back(std::move(row));
        }
        addLinks(out);
        addExclusions(out);
        return out;
    }

  private:
    std::size_t places() const { return m_sharesSpares ? m_machines : 0; }
    double spareCost(std::size_t machine, std::size_t nozzle) const {
        const auto& spares = m_task.machines[machine].spares;
        return spares.empty() ? 0.0 : spares[nozzle];
    }
    std::vector<std::size_t> bySpares(std::size_t nozzle) const {
        std::vector<std::size_t> order(m_machines);
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return spareCost(a, nozzle) < spareCost(b, nozzle);
        });
        return order;
    }

    /// A nozzle is chosen exactly if it is fitted somewhere; what a machine's spares cost over
    /// those before it in the order is paid if it or a later one has the nozzle fitted.
    void addLinks(std::vector<BinaryRow>& out) const {
        for (std::size_t n = 0; n < m_nozzles; ++n) {
            BinaryRow somewhere{{{chosen(n), -1.0}}, 0, kOpen};
            for (std::size_t m = 0; m < m_machines; ++m) {
                out.push_back({{{chosen(n), 1.0}, {fitted(m, n), -1.0}}, 0, kOpen});
                somewhere.terms.emplace_back(fitted(m, n), 1.0);
            }
            if (m_task.least) out.push_back(std::move(somewhere));
            for (std::size_t place = 0; place < places(); ++place)
                for (std::size_t later = place; later < places(); ++later)
                    out.push_back(
                        {{{paid(place, n), 1.0}, {fitted(m_order[n][later], n), -1.0}}, 0, kOpen});
        }
        for (std::size_t m = 0; m < m_machines; ++m) addPositions(m, out);
    }
    void addPositions(std::size_t machine, std::vector<BinaryRow>& out) const {
        const auto& positions = m_task.machines[machine].positions;
        if (!positions) return;
        BinaryRow aboard{{}, 0, static_cast<double>(*positions)};
        for (std::size_t n = 0; n < m_nozzles; ++n)
            aboard.terms.emplace_back(fitted(machine, n), 1.0);
        out.push_back(std::move(aboard));
    }
    void addExclusions(std::vector<BinaryRow>& out) const {
        for (const auto& sets : m_task.excluded) {
            BinaryRow row{{}, 0, static_cast<double>(sets.size()) - 1};
            for (const std::size_t n : sets) row.terms.emplace_back(chosen(n), 1.0);
            out.push_back(std::move(row));
        }
    }

    const CoverTask& m_task;
    std::size_t m_nozzles;
    std::size_t m_machines;
    bool m_sharesSpares = false;
    std::vector<std::vector<std::size_t>> m_order;  ///< machines by their spares, one list a nozzle
};

double sumOf(const std::vector<double>& costs, const std::vector<bool>& values) {
    double sum = 0.0;
    for (std::size_t i = 0; i < costs.size(); ++i)
        if (values[i]) sum += costs[i];
    return sum;
}

/// Rooms that the smallest one could be: over that of a choice in hand, and under none of the best
/// that any job can have.
std::vector<double> roomsAbove(const CoverTask& task, const CoverChoice& inHand) {
    double top = kOpen;
    std::set<double> rooms;
    for (std::size_t j = 0; j < task.jobs.size(); ++j) {
        double best = kNone;
        for (std::size_t n = 0; n < task.spares.size(); ++n) {
            if (!mayRun(task, j, n)) continue;
            rooms.insert(*task.jobs[j].room[n]);
            best = std::max(best, *task.jobs[j].room[n]);
        }
        if (best != kNone && task.leaving.empty()) top = std::min(top, best);
    }
    std::vector<double> out;
    std::copy_if(rooms.begin(), rooms.end(), std::back_inserter(out),
                 [&](double room) { return room > inHand.room.value_or(kOpen) && room <= top; });
    return out;
}

/// The choice that the variables stand for; each job takes the fitted nozzle with most room.
CoverChoice read(const CoverTask& task, const Cover& cover, const std::vector<bool>& values) {
    CoverChoice choice;
    choice.end = SolveEnd::Optimal;
    choice.cost = sumOf(cover.moneyCosts(), values);
    choice.fitted.resize(task.machines.size());
    for (std::size_t n = 0; n < task.spares.size(); ++n) {
        if (values[n]) choice.sets.push_back(n);
        for (std::size_t m = 0; m < task.machines.size(); ++m)
            if (values[static_cast<std::size_t>(cover.fitted(m, n))]) choice.fitted[m].push_back(n);
    }
    for (std::size_t j = 0; j < task.jobs.size(); ++j) {
        const auto& job = task.jobs[j];
        std::optional<std::size_t> best;
        for (const std::size_t n : choice.fitted[job.machine])
            if (mayRun(task, j, n) && (!best || *job.room[n] > *job.room[*best])) best = n;
        choice.runs.push_back(best);
        if (best) choice.room = std::min(choice.room.value_or(kOpen), *job.room[*best]);
    }
    return choice;
}

CoverChoice ended(SolveEnd end) {
    CoverChoice choice;
    choice.end = end;
    return choice;
}

/// Solves stage by stage, what is settled standing as a row of the next.
class Stages {
  public:
    Stages(const CoverTask& task, const std::function<bool()>& isCancelled,
           const BinarySolver& solver)
        : m_task(task), m_cover(task), m_isCancelled(isCancelled), m_solver(solver) {
        if (!task.least && !task.most) return;
        const double most = task.most ? static_cast<double>(*task.most) : kOpen;
        m_bounds.push_back(
            m_cover.sumRow(m_cover.countCosts(), double(task.least.value_or(0)), most));
    }

    CoverChoice run() {
        SolveEnd end = SolveEnd::Optimal;
        if (!m_task.leaving.empty()) end = settle(m_cover.leavingCosts(), 0.0);
        if (end == SolveEnd::Optimal) end = settle(m_cover.countCosts(), 0.0);
        if (end == SolveEnd::Optimal) end = settle(m_cover.moneyCosts(), 1e-9);
        return end == SolveEnd::Optimal ? widened() : ended(end);
    }

  private:
    BinaryAnswer solved(const std::vector<double>& costs, double room) const {
        BinaryProgram program{costs, m_cover.rows(room)};
        program.rows.insert(program.rows.end(), m_bounds.begin(), m_bounds.end());
        return m_solver(program, m_isCancelled);
    }

    SolveEnd settle(const std::vector<double>& costs, double slack) {
        const bool isFree =
            std::all_of(costs.begin(), costs.end(), [](double cost) { return cost == 0; });
        if (isFree && !m_best.empty()) return SolveEnd::Optimal;
        BinaryAnswer answer = solved(costs, kNone);
        if (answer.end != SolveEnd::Optimal) return answer.end;
        m_best = std::move(answer.values);
        const double sum = sumOf(costs, m_best);
        m_bounds.push_back(m_cover.sumRow(costs, 0.0, sum + slack * std::max(1.0, sum)));
        return SolveEnd::Optimal;
    }

    /// The largest smallest room: halving among the rooms there are.
    CoverChoice widened() const {
        CoverChoice best = read(m_task, m_cover, m_best);
        auto rooms = roomsAbove(m_task, best);
        std::size_t good = 0, bad = rooms.size() + 1;  // room `good - 1` can be had, `bad - 1` not
        while (good + 1 < bad) {
            const std::size_t middle = (good + bad) / 2;
            const BinaryAnswer next = solved(m_cover.countCosts(), rooms[middle - 1]);
            if (next.end == SolveEnd::Optimal) {
                best = read(m_task, m_cover, next.values);
                good = middle;
            } else if (next.end == SolveEnd::Infeasible) {
                bad = middle;
            } else {
                return ended(next.end);
            }
        }
        return best;
    }

    const CoverTask& m_task;
    Cover m_cover;
    const std::function<bool()>& m_isCancelled;
    const BinarySolver& m_solver;
    std::vector<BinaryRow> m_bounds;
    std::vector<bool> m_best;
};

}  // namespace

bool mayRun(const CoverTask& task, std::size_t job, std::size_t nozzle) {
    const CoverJob& j = task.jobs[job];
    if (task.barred[nozzle] || (j.pin && *j.pin != nozzle)) return false;
    return j.room[nozzle].has_value();
}

CoverChoice chooseCover(const CoverTask& task, const std::function<bool()>& isCancelled,
                        const BinarySolver& solver) {
    return Stages(task, isCancelled, solver).run();
}

}  // namespace bw
