// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/machine_checks.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "core/model/nozzle_sizes.h"
#include "core/window/speed_window.h"

namespace bw {
namespace {

/// A nozzle that the job could run with, and the pressures it would need: the least rate of the job
/// at its slow speed, the most at its fast one.
struct Candidate {
    WindowModel least;
    WindowModel most;
    std::string nozzle;
    Pressure atSlow;
    Pressure atFast;
};

const Nozzle* named(const std::string& name, const std::vector<Nozzle>& nozzles) {
    const auto hasName = [&](const Nozzle& n) { return n.name == name; };
    const auto own = std::find_if(nozzles.begin(), nozzles.end(), hasName);
    if (own != nozzles.end()) return &*own;
    const auto& sizes = builtInNozzles();
    const auto builtIn = std::find_if(sizes.begin(), sizes.end(), hasName);
    return builtIn == sizes.end() ? nullptr : &*builtIn;
}

std::vector<const Nozzle*> nozzlesFor(const Machine& machine, const Job& job,
                                      const std::vector<Nozzle>& nozzles) {
    std::vector<const Nozzle*> out;
    const auto add = [&](const std::string& name) {
        if (const Nozzle* nozzle = named(name, nozzles)) out.push_back(nozzle);
    };
    if (!job.pinnedNozzle.empty()) {
        add(job.pinnedNozzle);
    } else if (!machine.setsAboard.empty()) {
        for (const auto& set : machine.setsAboard) add(set.nozzle);
    } else if (nozzles.size() == 1) {
        out.push_back(&nozzles.front());
    }
    return out;
}

/// The job at one rate out of its range.
Job atRate(Job job, const Known<AreaRate>& rate) {
    if (rate) job.rate = rate;
    job.rateLeast.reset();
    job.rateMost.reset();
    return job;
}

std::optional<Candidate> candidateOf(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto model = WindowModel::make(machine, nozzle, job);  // also for the order of the rates
    if (!model) return std::nullopt;
    auto least = WindowModel::make(machine, nozzle, atRate(job, job.rateLeast));
    auto most = WindowModel::make(machine, nozzle, atRate(job, job.rateMost));
    if (!least || !most) return std::nullopt;
    const Pressure atSlow = least->neededSensorPressure(least->demand().slow);
    const Pressure atFast = most->neededSensorPressure(most->demand().fast);
    return Candidate{std::move(least).value(), std::move(most).value(), nozzle.name, atSlow,
                     atFast};
}

std::vector<Candidate> candidates(const Machine& machine, const Job& job,
                                  const std::vector<Nozzle>& nozzles) {
    std::vector<Candidate> out;
    for (const Nozzle* nozzle : nozzlesFor(machine, job, nozzles)) {
        if (auto candidate = candidateOf(machine, *nozzle, job))
            out.push_back(std::move(*candidate));
    }
    return out;
}

Problem clash(const char* code, const char* where, const Job& job, const std::string& nozzle,
              const WindowModel& model, Speed speed, Pressure limit) {
    return warning(code, where,
                   {{"job", job.name},
                    {"nozzle", nozzle},
                    {"speed", anyQuantity(speed)},
                    {"need", anyQuantity(model.neededSensorPressure(speed))},
                    {"limit", anyQuantity(limit)},
                    {"turning", anyQuantity(model.speedAt(limit))},
                    {"rate", anyQuantity(model.demand().rate)},
                    {"becomes", anyQuantity(model.at(speed).rate)}});
}

void checkOne(std::vector<Problem>& problems, const Machine& machine, const Job& job,
              const std::vector<Candidate>& all) {
    if (all.empty()) return;
    const auto& floor = machine.limits.pressureFloor;
    const auto& ceiling = machine.limits.pressureCeiling;
    // The smallest nozzle escapes the floor most easily, the largest the ceiling.
    const auto& smallest = *std::max_element(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.atSlow < b.atSlow; });
    const auto& largest = *std::min_element(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.atFast < b.atFast; });
    if (floor && smallest.atSlow < floor->value * (1 - 1e-9)) {
        problems.push_back(clash("floor_over_need", "limits.pressure_floor", job, smallest.nozzle,
                                 smallest.least, smallest.least.demand().slow, floor->value));
    }
    if (ceiling && largest.atFast > ceiling->value * (1 + 1e-9)) {
        problems.push_back(clash("ceiling_under_need", "limits.pressure_ceiling", job,
                                 largest.nozzle, largest.most, largest.most.demand().fast,
                                 ceiling->value));
    }
}

}  // namespace

std::vector<Problem> checkMachineForJobs(const Machine& machine, const std::vector<Job>& jobs,
                                         const std::vector<Nozzle>& nozzles) {
    std::vector<Problem> problems;
    // Pulsed nozzles hold their pressure; floor and ceiling do not act.
    if (machine.pulsed.pressure) return problems;
    for (const auto& job : jobs)
        checkOne(problems, machine, job, candidates(machine, job, nozzles));
    return problems;
}

int reckonedJobs(const Machine& machine, const std::vector<Job>& jobs,
                 const std::vector<Nozzle>& nozzles) {
    return static_cast<int>(std::count_if(jobs.begin(), jobs.end(), [&](const Job& job) {
        return !candidates(machine, job, nozzles).empty();
    }));
}

}  // namespace bw
