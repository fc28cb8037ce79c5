// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_cover.h"

#include <algorithm>
#include <limits>
#include <set>

namespace bw {
namespace {

constexpr double kNone = -std::numeric_limits<double>::infinity();
constexpr double kOpen = std::numeric_limits<double>::infinity();

/// The programme: a variable for each nozzle (chosen), then for each machine and nozzle (fitted).
class Cover {
  public:
    explicit Cover(const CoverTask& task) : m_task(task), m_nozzles(task.spares.size()) {}

    int chosen(std::size_t nozzle) const { return static_cast<int>(nozzle); }
    int fitted(std::size_t machine, std::size_t nozzle) const {
        return static_cast<int>(m_nozzles * (machine + 1) + nozzle);
    }
    std::size_t variables() const { return m_nozzles * (m_task.machines.size() + 1); }

    std::vector<double> countCosts() const {
        std::vector<double> costs(variables(), 0.0);
        std::fill_n(costs.begin(), m_nozzles, 1.0);
        return costs;
    }
    std::vector<double> moneyCosts() const {
        std::vector<double> costs(m_task.spares);
        for (const auto& m : m_task.machines)
            costs.insert(costs.end(), m.cost.begin(), m.cost.end());
        return costs;
    }
    BinaryRow sumRow(const std::vector<double>& costs, double low, double high) const {
        BinaryRow row{{}, low, high};
        for (std::size_t i = 0; i < costs.size(); ++i)
            if (costs[i] != 0) row.terms.emplace_back(static_cast<int>(i), costs[i]);
        return row;
    }

    /// Each job that can be covered has a nozzle with at least this room to spare.
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
            if (isCoverable) out.push_back(std::move(row));
        }
        addLinks(out);
        return out;
    }

  private:
    void addLinks(std::vector<BinaryRow>& out) const {
        for (std::size_t m = 0; m < m_task.machines.size(); ++m) {
            BinaryRow aboard{{}, 0, kOpen};
            for (std::size_t n = 0; n < m_nozzles; ++n) {
                out.push_back({{{chosen(n), 1.0}, {fitted(m, n), -1.0}}, 0, kOpen});
                aboard.terms.emplace_back(fitted(m, n), 1.0);
            }
            const auto& positions = m_task.machines[m].positions;
            if (!positions) continue;
            aboard.high = static_cast<double>(*positions);
            out.push_back(std::move(aboard));
        }
    }
    const CoverTask& m_task;
    std::size_t m_nozzles;
};

double sumOf(const std::vector<double>& costs, const std::vector<bool>& values) {
    double sum = 0.0;
    for (std::size_t i = 0; i < costs.size(); ++i)
        if (values[i]) sum += costs[i];
    return sum;
}

std::vector<double> distinctRooms(const CoverTask& task) {
    std::set<double> rooms;
    for (std::size_t j = 0; j < task.jobs.size(); ++j)
        for (std::size_t n = 0; n < task.spares.size(); ++n)
            if (mayRun(task, j, n)) rooms.insert(*task.jobs[j].room[n]);
    return {rooms.begin(), rooms.end()};
}

/// The choice that the variables stand for; each job takes the fitted nozzle with most room.
CoverChoice read(const CoverTask& task, const Cover& cover, const std::vector<bool>& values) {
    CoverChoice choice;
    choice.end = SolveEnd::Optimal;
    choice.cost = sumOf(cover.moneyCosts(), values);
    for (std::size_t n = 0; n < task.spares.size(); ++n)
        if (values[n]) choice.sets.push_back(n);
    for (std::size_t j = 0; j < task.jobs.size(); ++j) {
        const auto& job = task.jobs[j];
        std::optional<std::size_t> best;
        for (std::size_t n : choice.sets) {
            if (!values[static_cast<std::size_t>(cover.fitted(job.machine, n))]) continue;
            if (mayRun(task, j, n) && (!best || *job.room[n] > *job.room[*best])) best = n;
        }
        choice.runs.push_back(best);
        if (best) choice.room = std::min(choice.room.value_or(kOpen), *job.room[*best]);
    }
    return choice;
}

}  // namespace

bool mayRun(const CoverTask& task, std::size_t job, std::size_t nozzle) {
    const CoverJob& j = task.jobs[job];
    if (task.barred[nozzle] || (j.pin && *j.pin != nozzle)) return false;
    return j.room[nozzle].has_value();
}

CoverChoice chooseCover(const CoverTask& task, const std::function<bool()>& isCancelled,
                        const BinarySolver& solver) {
    const Cover cover(task);
    const auto counts = cover.countCosts();
    const auto money = cover.moneyCosts();
    std::vector<BinaryRow> bounds;
    if (task.least) bounds.push_back(cover.sumRow(counts, double(*task.least), kOpen));
    const auto solve = [&](const std::vector<double>& costs, double room) {
        BinaryProgram program{costs, cover.rows(room)};
        program.rows.insert(program.rows.end(), bounds.begin(), bounds.end());
        return solver(program, isCancelled);
    };
    BinaryAnswer best = solve(counts, kNone);
    if (best.end != SolveEnd::Optimal) return {best.end, {}, {}, 0.0, {}};
    const double sets = sumOf(counts, best.values);
    bounds.push_back(cover.sumRow(counts, sets, sets));
    best = solve(money, kNone);
    if (best.end != SolveEnd::Optimal) return {best.end, {}, {}, 0.0, {}};
    const double cost = sumOf(money, best.values);
    bounds.push_back(cover.sumRow(money, 0.0, cost + 1e-9 * std::max(1.0, cost)));
    const auto rooms = distinctRooms(task);
    std::size_t good = 0, bad = rooms.size();  // rooms[good] can be had, rooms[bad] cannot
    while (good + 1 < bad) {
        const std::size_t middle = (good + bad) / 2;
        BinaryAnswer next = solve(counts, rooms[middle]);
        if (next.end == SolveEnd::Optimal)
            best = std::move(next);
        else if (next.end != SolveEnd::Infeasible)
            return {next.end, {}, {}, 0.0, {}};
        (next.end == SolveEnd::Optimal ? good : bad) = middle;
    }
    return read(task, cover, best.values);
}

}  // namespace bw
