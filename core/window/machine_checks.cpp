// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/machine_checks.h"

#include <algorithm>
#include <string>

#include "core/model/nozzle_sizes.h"
#include "core/window/speed_window.h"

namespace bw {
namespace {

/// A nozzle that the job could run with, and the pressures it would need.
struct Candidate {
    WindowModel model;
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

std::vector<Candidate> candidates(const Machine& machine, const Job& job,
                                  const std::vector<Nozzle>& nozzles) {
    std::vector<Candidate> out;
    for (const Nozzle* nozzle : nozzlesFor(machine, job, nozzles)) {
        auto model = WindowModel::make(machine, *nozzle, job);
        if (!model) continue;
        const JobDemand& demand = model->demand();
        const Pressure atSlow = model->neededSensorPressure(demand.slow);
        const Pressure atFast = model->neededSensorPressure(demand.fast);
        out.push_back({std::move(model).value(), nozzle->name, atSlow, atFast});
    }
    return out;
}

Problem clash(const char* code, const char* where, const Job& job, const Candidate& candidate,
              Speed speed, Pressure limit) {
    const Speed turning = candidate.model.speedAt(limit);
    return warning(code, where,
                   {{"job", job.name},
                    {"nozzle", candidate.nozzle},
                    {"speed", anyQuantity(speed)},
                    {"need", anyQuantity(candidate.model.neededSensorPressure(speed))},
                    {"limit", anyQuantity(limit)},
                    {"turning", anyQuantity(turning)},
                    {"rate", anyQuantity(candidate.model.demand().rate)},
                    {"becomes", anyQuantity(candidate.model.at(speed).rate)}});
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
        problems.push_back(clash("floor_over_need", "limits.pressure_floor", job, smallest,
                                 smallest.model.demand().slow, floor->value));
    }
    if (ceiling && largest.atFast > ceiling->value * (1 + 1e-9)) {
        problems.push_back(clash("ceiling_under_need", "limits.pressure_ceiling", job, largest,
                                 largest.model.demand().fast, ceiling->value));
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
