// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/live_checks.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/hydraulics/parts.h"
#include "core/model/checks.h"
#include "core/units/format.h"
#include "core/window/machine_checks.h"
#include "core/window/mesh_advice.h"
#include "core/window/supply.h"

namespace bw {
namespace {

Fact factOf(const Problem& problem) {
    return {"problem." + problem.code, problem.arguments};
}

LiveCheck fine(std::string topic, std::string where, Fact what) {
    return {CheckState::Fine, std::move(topic), std::move(where), std::move(what)};
}
LiveCheck notChecked(std::string topic, std::string where, std::string code) {
    return {CheckState::NotChecked, std::move(topic), std::move(where), {std::move(code), {}}};
}

LiveCheck widthCheck(const Machine& m) {
    if (!m.spacing || nozzleCount(m) <= 0)
        return notChecked("width", m.spacing ? "sections" : "spacing", "check.width_no_sum");
    const std::vector<Argument> sum{{"nozzles", std::to_string(nozzleCount(m))},
                                    {"spacing", anyQuantity(m.spacing->value)},
                                    {"sum", anyQuantity(sprayedWidth(m))}};
    if (!m.width) return {CheckState::NotChecked, "width", "width", {"check.width_not_given", sum}};
    for (const auto& problem : checkMachine(m)) {
        if (problem.code == "width_mismatch")
            return {CheckState::Asks, "width", "width", factOf(problem)};
    }
    return fine("width", "width", {"check.width_agrees", sum});
}

LiveCheck strainerCheck(const Machine& m) {
    std::string list;
    int known = 0;
    for (const auto* mesh : {&m.strainers.suctionMesh, &m.strainers.lineMesh,
                             &m.strainers.sectionMesh, &m.strainers.nozzleMesh}) {
        if (!*mesh) continue;
        list += (known++ ? ", " : "") + formatExact((*mesh)->value);
    }
    if (known < 2)
        return notChecked("strainers", "strainers.suction.mesh", "check.strainers_not_given");
    for (const auto& problem : checkMachine(m)) {
        if (problem.code == "strainer_coarser_downstream")
            return {CheckState::Asks, "strainers", problem.where, factOf(problem)};
    }
    return fine("strainers", "strainers.suction.mesh", {"check.strainers_finer", {{"list", list}}});
}

/// The sets aboard whose nozzles ask for a finer strainer than the last one.
void checkMesh(std::vector<LiveCheck>& list, const Machine& m, const std::vector<Nozzle>& nozzles) {
    std::vector<Nozzle> aboard;
    std::copy_if(nozzles.begin(), nozzles.end(), std::back_inserter(aboard), [&](const auto& n) {
        return std::any_of(m.setsAboard.begin(), m.setsAboard.end(),
                           [&](const SetAboard& set) { return set.nozzle == n.name; });
    });
    for (auto& fact : coarseStrainers(m, aboard))
        list.push_back({CheckState::Asks, "strainers", "strainers.nozzle.mesh", std::move(fact)});
}

/// How well the pump's law meets the points of its curve: a miss over 3 % of the pressure at no
/// flow is worth asking about (judgement).
std::optional<LiveCheck> pumpFitCheck(const Machine& m) {
    constexpr double kMostMiss = 0.03;
    const Pump& p = m.pump;
    if (valueOr(p.kind, PumpKind::PositiveDisplacement) != PumpKind::Centrifugal) return {};
    if (!p.shutOffPressure || !p.curve || p.curve->value.empty()) return {};
    const auto fit = fitPump(p.shutOffPressure->value, p.curve->value);
    if (!fit) return {};
    const bool isNear = fit->largestMiss.si() <= kMostMiss * p.shutOffPressure->value.si();
    return LiveCheck{isNear ? CheckState::Fine : CheckState::Asks,
                     "pump",
                     "pump.curve",
                     {isNear ? "check.pump_fits" : "check.pump_fits_badly",
                      {{"miss", anyQuantity(fit->largestMiss)},
                       {"points", std::to_string(p.curve->value.size())}}}};
}

struct Side {
    const char* topic;
    const char* where;
    const char* problem;
    const char* notGiven;
    const char* fine;
    Known<Pressure> limit;
};

void checkSide(std::vector<LiveCheck>& list, const Side& side, int reckoned,
               const std::vector<Problem>& problems) {
    if (!side.limit) {
        list.push_back(notChecked(side.topic, side.where, side.notGiven));
        return;
    }
    bool asks = false;
    for (const auto& problem : problems) {
        if (problem.code != side.problem) continue;
        list.push_back({CheckState::Asks, side.topic, side.where, factOf(problem)});
        asks = true;
    }
    if (asks || reckoned == 0) return;
    list.push_back(
        fine(side.topic, side.where,
             {side.fine,
              {{"limit", anyQuantity(side.limit->value)}, {"jobs", std::to_string(reckoned)}}}));
}

void checkJobs(std::vector<LiveCheck>& list, const Machine& machine, const std::vector<Job>& jobs,
               const std::vector<Nozzle>& nozzles) {
    if (machine.pulsed.pressure) return;
    const int reckoned = reckonedJobs(machine, jobs, nozzles);
    const auto problems = checkMachineForJobs(machine, jobs, nozzles);
    checkSide(list,
              {"floor", "limits.pressure_floor", "floor_over_need", "check.floor_not_given",
               "check.floor_fine", machine.limits.pressureFloor},
              reckoned, problems);
    checkSide(list,
              {"ceiling", "limits.pressure_ceiling", "ceiling_under_need",
               "check.ceiling_not_given", "check.ceiling_fine", machine.limits.pressureCeiling},
              reckoned, problems);
    const auto left = static_cast<int>(jobs.size()) - reckoned;
    if (jobs.empty()) {
        list.push_back(notChecked("jobs", {}, "check.no_jobs"));
    } else if (left > 0) {
        list.push_back({CheckState::NotChecked,
                        "jobs",
                        {},
                        {"check.jobs_left", {{"jobs", std::to_string(left)}}}});
    }
}

}  // namespace

std::vector<LiveCheck> liveChecks(const Machine& machine, const std::vector<Job>& jobs,
                                  const std::vector<Nozzle>& nozzles) {
    std::vector<LiveCheck> list;
    checkJobs(list, machine, jobs, nozzles);
    list.push_back(strainerCheck(machine));
    checkMesh(list, machine, nozzles);
    list.push_back(widthCheck(machine));
    if (auto fit = pumpFitCheck(machine)) list.push_back(std::move(*fit));
    if (auto cut = suctionFact("check.suction_cut", machine, 1.0))
        list.push_back({CheckState::Asks, "suction", "losses.suction.pressure", std::move(*cut)});
    std::stable_sort(list.begin(), list.end(),
                     [](const LiveCheck& a, const LiveCheck& b) { return a.state < b.state; });
    return list;
}

}  // namespace bw
