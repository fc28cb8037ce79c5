// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_cover.h"

#include <cmath>
#include <iostream>
#include <random>
#include <tuple>

namespace bw {
namespace {

using Choice = std::tuple<std::size_t, double, double>;  ///< sets, cost, minus the room

CoverTask randomTask(std::mt19937& random) {
    const auto upTo = [&](std::size_t n) { return std::size_t(random() % n); };
    CoverTask task;
    const std::size_t nozzles = 3 + upTo(5), jobs = 3 + upTo(10), machines = 1 + upTo(2);
    for (std::size_t n = 0; n < nozzles; ++n) {
        task.spares.push_back(double(upTo(3)));
        task.barred.push_back(upTo(12) == 0);
    }
    for (std::size_t m = 0; m < machines; ++m) {
        CoverMachine machine;
        for (std::size_t n = 0; n < nozzles; ++n) machine.cost.push_back(double(upTo(5)));
        if (upTo(4) == 0) machine.positions = 1 + upTo(3);
        task.machines.push_back(machine);
    }
    for (std::size_t j = 0; j < jobs; ++j) {
        CoverJob job{upTo(machines), {}, {}};
        for (std::size_t n = 0; n < nozzles; ++n)
            job.room.push_back(upTo(5) < 2 ? std::optional(double(upTo(20)) / 20) : std::nullopt);
        if (upTo(15) == 0) job.pin = upTo(nozzles);
        task.jobs.push_back(job);
    }
    return task;
}

bool isCoverable(const CoverTask& task, std::size_t job) {
    for (std::size_t n = 0; n < task.spares.size(); ++n)
        if (mayRun(task, job, n)) return true;
    return false;
}

/// Worth of fitting these nozzles (a bit each) to each machine; nothing if a job is left out.
std::optional<Choice> worth(const CoverTask& task, const std::vector<unsigned>& fitted) {
    unsigned all = 0;
    double cost = 0, least = 1e9;
    for (std::size_t m = 0; m < fitted.size(); ++m) {
        std::size_t aboard = 0;
        for (std::size_t n = 0; n < task.spares.size(); ++n) {
            if (!(fitted[m] >> n & 1)) continue;
            ++aboard;
            cost += task.machines[m].cost[n];
        }
        if (task.machines[m].positions && aboard > *task.machines[m].positions) return {};
        all |= fitted[m];
    }
    for (std::size_t j = 0; j < task.jobs.size(); ++j) {
        if (!isCoverable(task, j)) continue;
        double room = -1;
        for (std::size_t n = 0; n < task.spares.size(); ++n)
            if ((fitted[task.jobs[j].machine] >> n & 1) && mayRun(task, j, n))
                room = std::max(room, *task.jobs[j].room[n]);
        if (room < 0) return {};
        least = std::min(least, room);
    }
    std::size_t sets = 0;
    for (std::size_t n = 0; n < task.spares.size(); ++n)
        if (all >> n & 1) cost += task.spares[n], ++sets;
    return Choice{sets, cost, -least};
}

std::optional<Choice> byTryingAll(const CoverTask& task) {
    std::optional<Choice> best;
    const unsigned some = 1U << task.spares.size();
    const unsigned second = task.machines.size() > 1 ? some : 1;
    for (unsigned a = 0; a < some; ++a) {
        for (unsigned b = 0; b < second; ++b) {
            auto fitted = task.machines.size() > 1 ? std::vector{a, b} : std::vector{a};
            const auto w = worth(task, fitted);
            if (w && (!best || *w < *best)) best = w;
        }
    }
    return best;
}

/// Sets that come of taking the nozzle that serves most of the jobs left, again and again.
std::size_t widestFirst(const CoverTask& task) {
    std::vector<bool> done(task.jobs.size());
    for (std::size_t j = 0; j < done.size(); ++j) done[j] = !isCoverable(task, j);
    for (std::size_t sets = 0;; ++sets) {
        std::size_t best = 0, most = 0;
        for (std::size_t n = 0; n < task.spares.size(); ++n) {
            std::size_t serves = 0;
            for (std::size_t j = 0; j < done.size(); ++j) serves += !done[j] && mayRun(task, j, n);
            if (serves > most) most = serves, best = n;
        }
        if (most == 0) return sets;
        for (std::size_t j = 0; j < done.size(); ++j)
            if (mayRun(task, j, best)) done[j] = true;
    }
}

TEST(SetCover, AgreesWithTryingAllAndBeatsWidestFirst) {
    std::mt19937 random(20);
    int worse = 0, infeasible = 0;
    for (int i = 0; i < 4000; ++i) {
        const CoverTask task = randomTask(random);
        const auto expected = byTryingAll(task);
        const CoverChoice choice = chooseCover(task);
        ASSERT_EQ(choice.end, expected ? SolveEnd::Optimal : SolveEnd::Infeasible) << i;
        infeasible += !expected;
        if (!expected) continue;
        ASSERT_EQ(choice.sets.size(), std::get<0>(*expected)) << i;
        ASSERT_NEAR(choice.cost, std::get<1>(*expected), 1e-9) << i;
        ASSERT_NEAR(choice.room.value_or(1e9), -std::get<2>(*expected), 1e-12) << i;
        worse += widestFirst(task) > choice.sets.size();
    }
    std::cout << worse << " of 4000 with more sets by widest first, " << infeasible
              << " without a choice\n";
    EXPECT_GE(worse, 100);
    EXPECT_GT(infeasible, 0);
}

TEST(SetCover, CancelIsAnEndOfItsOwn) {
    std::mt19937 random(1);
    EXPECT_EQ(chooseCover(randomTask(random), [] { return true; }).end, SolveEnd::Cancelled);
}

}  // namespace
}  // namespace bw
