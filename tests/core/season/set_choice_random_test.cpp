// SPDX-License-Identifier: GPL-3.0-or-later
// The whole way from profiles to chosen sets, against trying everything on the speed windows.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <tuple>

#include "tests/support/season_builders.h"

namespace bw {
namespace {

using namespace build;

bool isIn(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// Room to spare if the window with the valve where it stands covers the job for sure.
std::optional<double> roomAsItStands(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto window = speedWindow(machine, nozzle, job);
    if (!window || !window->coversBand) return {};
    for (const Limit limit : window->notChecked) {
        const bool isNozzles = limit == Limit::NozzleMinimum || limit == Limit::NozzleMaximum ||
                               limit == Limit::Droplets || limit == Limit::DriftClass;
        if (isNozzles && !nozzle.acceptUnchecked) return {};
    }
    return window->roomToSpare;
}

/// In the better position; where both cover, narrowed if the usual speed is under the crossing.
std::optional<double> roomOf(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    if (!machine.restrictor.fitted) return roomAsItStands(machine, nozzle, job);
    Machine full = machine, narrowed = machine;
    full.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    narrowed.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::Narrowed);
    const auto atFull = roomAsItStands(full, nozzle, job);
    const auto atNarrowed = roomAsItStands(narrowed, nozzle, job);
    if (!atFull || !atNarrowed) return atFull ? atFull : atNarrowed;
    const Speed crossing =
        machine.restrictor.changeoverFlow->value / (job.rate->value * sprayedWidth(machine));
    return job.usual->value < crossing ? atNarrowed : atFull;
}

/// A season as plain tables: what runs, what it costs.
struct Tables {
    std::vector<std::size_t> machineOf;
    std::vector<std::vector<std::optional<double>>> room;  ///< a job a row
    std::vector<std::vector<double>> cost, spares;         ///< a machine a row

    Tables(const SeasonInputs& in, const SetWishes& wishes) {
        for (const auto& stored : in.jobs) {
            machineOf.push_back(static_cast<std::size_t>(stored.machine - 1));
            room.emplace_back();
            for (Nozzle nozzle : in.nozzles) {
                const std::string& pin = stored.job.pinnedNozzle;
                nozzle.acceptUnchecked |= isIn(wishes.acceptUnchecked, nozzle.name);
                const bool isOut =
                    isIn(wishes.barred, nozzle.name) || (!pin.empty() && pin != nozzle.name);
                room.back().push_back(
                    isOut ? std::nullopt
                          : roomOf(in.machines[machineOf.back()].machine, nozzle, stored.job));
            }
        }
        for (const auto& machine : in.machines) {
            cost.emplace_back();
            spares.emplace_back();
            for (const auto& nozzle : in.nozzles) {
                bool isOwned = false;
                for (const auto& set : wishes.owned)
                    isOwned |= set.machine == machine.id && set.nozzle == nozzle.name;
                const double each = isOwned ? 0 : nozzle.price->value;
                const int count = nozzleCount(machine.machine);
                cost.back().push_back(count * each);
                spares.back().push_back(std::ceil(wishes.spares * count - 1e-9) * each);
            }
        }
    }
    bool isCoverable(std::size_t j) const {
        return std::any_of(room[j].begin(), room[j].end(), [](auto r) { return r.has_value(); });
    }
};

using Worth = std::tuple<std::size_t, double, double>;  ///< sets, cost, minus the least room

std::optional<Worth> worth(const Tables& t, const std::vector<unsigned>& fitted) {
    std::size_t sets = 0;
    double cost = 0, least = 1e9;
    for (std::size_t j = 0; j < t.room.size(); ++j) {
        if (!t.isCoverable(j)) continue;
        double most = -1;
        for (std::size_t n = 0; n < t.room[j].size(); ++n)
            if ((fitted[t.machineOf[j]] >> n & 1) && t.room[j][n])
                most = std::max(most, *t.room[j][n]);
        if (most < 0) return {};
        least = std::min(least, most);
    }
    for (std::size_t n = 0; n < t.cost[0].size(); ++n) {
        double spares = 0;
        bool isUsed = false;
        for (std::size_t m = 0; m < fitted.size(); ++m) {
            if (!(fitted[m] >> n & 1)) continue;
            isUsed = true;
            cost += t.cost[m][n];
            spares = std::max(spares, t.spares[m][n]);
        }
        cost += spares;
        sets += isUsed;
    }
    return Worth{sets, cost, -least};
}

bool isBetter(const Worth& a, const Worth& b) {
    if (std::get<0>(a) != std::get<0>(b)) return std::get<0>(a) < std::get<0>(b);
    if (std::abs(std::get<1>(a) - std::get<1>(b)) > 1e-6) return std::get<1>(a) < std::get<1>(b);
    return std::get<2>(a) < std::get<2>(b);
}

Worth byTryingAll(const Tables& t) {
    const unsigned some = 1U << t.cost[0].size();
    std::optional<Worth> best;
    for (unsigned a = 0; a < some; ++a) {
        for (unsigned b = 0; b < (t.cost.size() > 1 ? some : 1U); ++b) {
            const auto one = worth(t, t.cost.size() > 1 ? std::vector{a, b} : std::vector{a});
            if (one && (!best || isBetter(*one, *best))) best = one;
        }
    }
    return best.value();
}

/// Sets that come of taking the nozzle that serves most of the jobs left, again and again.
std::size_t widestFirst(const Tables& t) {
    std::vector<bool> isDone(t.room.size());
    for (std::size_t sets = 0;; ++sets) {
        std::size_t best = 0, most = 0;
        for (std::size_t n = 0; n < t.cost[0].size(); ++n) {
            std::size_t serves = 0;
            for (std::size_t j = 0; j < t.room.size(); ++j) serves += !isDone[j] && t.room[j][n];
            if (serves > most) most = serves, best = n;
        }
        if (most == 0) return sets;
        for (std::size_t j = 0; j < t.room.size(); ++j)
            if (t.room[j][best]) isDone[j] = true;
    }
}

/// What the answer says of itself holds by the tables.
void expectTrue(const SetChoice& choice, const Tables& t, const SeasonInputs& in) {
    std::size_t uncovered = 0;
    for (std::size_t j = 0; j < t.room.size(); ++j) uncovered += !t.isCoverable(j);
    EXPECT_EQ(choice.uncovered.size(), uncovered);
    EXPECT_EQ(choice.plan.runs.size(), t.room.size() - uncovered);
    for (const auto& run : choice.plan.runs) {
        for (std::size_t j = 0; j < in.jobs.size(); ++j) {
            if (in.jobs[j].id != run.job) continue;
            for (std::size_t n = 0; n < in.nozzles.size(); ++n) {
                if (in.nozzles[n].name != run.nozzle) continue;
                EXPECT_TRUE(t.room[j][n]) << run.nozzle;
            }
        }
    }
    for (const auto& set : choice.plan.sets) {
        EXPECT_FALSE(set.jobs.empty()) << set.nozzle;
        EXPECT_FALSE(set.forcedBy.empty()) << set.nozzle;
    }
}

TEST(SetChoiceRandom, WholeWayAgreesWithTryingAllAndBeatsWidestFirst) {
    constexpr int kSeasons = 4500;
    RandomSeasons random(7, 0.08);
    int worse = 0, several = 0, uncovered = 0, jobs = 0;
    for (int i = 0; i < kSeasons; ++i) {
        // Two machines make four times the trials for each nozzle.
        const SeasonInputs in = i % 3 == 0 ? random.season(6, 12, 2) : random.season(12, 30, 1);
        const SetWishes wishes = random.wishes(in);
        const Tables tables(in, wishes);
        const Worth expected = byTryingAll(tables);
        const SetChoice choice = chooseSets(in, wishes);
        ASSERT_EQ(choice.end, SolveEnd::Optimal) << i;
        ASSERT_EQ(choice.plan.sets.size(), std::get<0>(expected)) << i;
        ASSERT_NEAR(choice.plan.price.value(), std::get<1>(expected), 1e-6) << i;
        ASSERT_NEAR(choice.plan.room.value_or(1e9), -std::get<2>(expected), 1e-9) << i;
        expectTrue(choice, tables, in);
        ASSERT_FALSE(HasFailure()) << i;
        worse += widestFirst(tables) > choice.plan.sets.size();
        several += choice.plan.sets.size() > 1;
        uncovered += static_cast<int>(choice.uncovered.size());
        jobs += static_cast<int>(in.jobs.size());
    }
    std::cout << kSeasons << " seasons: " << several
              << " need several sets, widest first takes more in " << worse << "; " << uncovered
              << " of " << jobs << " jobs not covered\n";
    EXPECT_GE(worse, 100);
    EXPECT_GT(several, kSeasons / 2);
    EXPECT_GT(uncovered, 1000);
}

bool doesWith(const PlanChange& change, Machine machine, Job job,
              const std::vector<Nozzle>& nozzles) {
    applyChange(change, machine, job);
    for (const auto& nozzle : nozzles) {
        const bool isMeant = change.nozzle.empty() || change.nozzle == nozzle.name;
        if (isMeant && roomOf(machine, nozzle, job)) return true;
    }
    return false;
}

/// A change of the same kind and direction, `part` as large.
PlanChange smaller(const PlanChange& change, double from, double part) {
    PlanChange out = change;
    out.nozzle.clear();  // with any nozzle
    out.value->si = from + part * (change.value->si - from);
    return out;
}

/// Where a value stands before the change.
double valueBefore(const PlanChange& change, const Machine& machine, const Job& job) {
    const bool isLeast = change.bound == ChangeBound::Least;
    switch (change.what) {
        case ChangeKind::Speed:
            return isLeast ? job.slow->value.si() : job.fast->value.si();
        case ChangeKind::Floor:
            return machine.limits.pressureFloor->value.si();
        default:
            if (change.bound == ChangeBound::Exactly) return job.rate->value.si();
            return isLeast ? job.rateLeast->value.si() : job.rateMost->value.si();
    }
}

TEST(SetChoiceRandom, ChangesThatDoReallyDoAndSmallerOnesDoNot) {
    RandomSeasons random(11);
    std::array<int, 5> kinds{};
    for (int i = 0; i < 600; ++i) {
        const Machine machine = random.machine();
        const Job job = random.job();
        std::vector<Nozzle> nozzles;
        std::vector<const Nozzle*> pointers;
        for (int n = 0; n < 4; ++n) nozzles.push_back(random.nozzle("nozzle " + std::to_string(n)));
        bool isCovered = false;
        for (const auto& nozzle : nozzles) {
            pointers.push_back(&nozzle);
            isCovered |= roomOf(machine, nozzle, job).has_value();
        }
        if (isCovered) continue;
        double before = 0;
        for (const auto& change : changesThatDo(machine, job, pointers)) {
            ++kinds[static_cast<std::size_t>(change.what)];
            EXPECT_TRUE(doesWith(change, machine, job, nozzles)) << i;
            EXPECT_GE(change.size, before) << i;
            before = change.size;
            if (!change.value || change.to || change.what == ChangeKind::Drift) continue;
            const double from = valueBefore(change, machine, job);
            EXPECT_NEAR(std::abs(change.value->si / from - 1), change.size, 1e-9) << i;
            for (const double part : {0.999, 0.95, 0.8, 0.5, 0.1, -0.1, -0.5, -0.95, -0.999}) {
                if (part < 0 && change.what != ChangeKind::Rate) continue;
                EXPECT_FALSE(doesWith(smaller(change, from, part), machine, job, nozzles))
                    << i << " " << choiceName(change.what) << " " << part;
            }
        }
        for (const auto& change : changesThatDo(machine, job, pointers, UnitSystem::Metric))
            EXPECT_TRUE(doesWith(change, machine, job, nozzles)) << i;
    }
    for (const int count : kinds) EXPECT_GT(count, 5);
}

}  // namespace
}  // namespace bw
