// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/fault.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string_view>

namespace bw {
namespace {

using Change = void (*)(LoopSetup&, double);
struct Row {
    std::string_view cause;
    Change change;
};

constexpr double kLeastOpen = 1e-6;  // wholly blocked: a millionth stays, so that numbers do

double open(double x) {
    return std::max(1 - x, kLeastOpen);
}
void block(SquareLoss& loss, double x) {
    loss = loss / (open(x) * open(x));
}

void rebuild(LoopSetup& s, std::vector<BoomSection> sections, double gravity) {
    const BoomLine& boom = s.parts.boom;
    s.parts.boom = BoomLine(std::move(sections), boom.law(), boom.valveLoss(), gravity);
}
template <class F>
void changeSections(LoopSetup& s, F&& f) {
    auto sections = s.parts.boom.sections();
    f(sections);
    rebuild(s, std::move(sections), s.parts.boom.specificGravity());
}
template <class F>
void changeFirst(LoopSetup& s, F&& f) {
    changeSections(s, [&](std::vector<BoomSection>& all) { f(all.front()); });
}
void scaleNozzles(LoopSetup& s, double factor) {
    changeSections(s, [&](std::vector<BoomSection>& all) {
        for (auto& section : all) section.openNozzles *= factor;
    });
}
void scaleOneNozzle(LoopSetup& s, double added) {
    changeFirst(s, [&](BoomSection& b) { b.openNozzles = std::max(0.0, b.openNozzles + added); });
}

/// Another opening beside those there, passing `flow` of the liquid at `pressure`.
void addBranch(LoopSetup& s, Opening& to, Flow flow, Pressure pressure) {
    to.conductance += openingFor(flow, pressure / s.entered.specificGravity()).conductance;
}
void addAtOutlet(LoopSetup& s, double x) {
    addBranch(s, s.parts.outletLeak, 2 * x * s.need.flow, s.need.pump);
}
double firstShare(const LoopSetup& s) {
    return s.parts.boom.sections().front().nozzles / static_cast<double>(s.parts.boom.nozzles());
}

void nozzlesLess(LoopSetup& s, double x) {
    scaleNozzles(s, open(x));
}
void nozzlesMore(LoopSetup& s, double x) {
    scaleNozzles(s, 1 + x);
}
void otherPosition(LoopSetup& s, double) {
    s.setRestrictor(s.restrictor.position == RestrictorPosition::Narrowed
                        ? RestrictorPosition::FullBore
                        : RestrictorPosition::Narrowed);
}

constexpr std::array kRows{
    Row{"suction_strainer", [](LoopSetup& s, double x) { block(s.parts.suction, x); }},
    Row{"suction_hose", [](LoopSetup& s, double x) { block(s.parts.suction, x); }},
    Row{"line_strainer", [](LoopSetup& s, double x) { block(s.parts.line, x); }},
    Row{"section_strainer",
        [](LoopSetup& s, double x) { changeFirst(s, [&](BoomSection& b) { block(b.loss, x); }); }},
    Row{"hose_kinked", [](LoopSetup& s, double x) { block(s.parts.plumbing, x); }},
    Row{"nozzle_strainers", nozzlesLess},
    Row{"nozzle_small", nozzlesLess},
    Row{"nozzle_large", nozzlesMore},
    Row{"nozzles_worn", nozzlesMore},
    Row{"one_nozzle_blocked", [](LoopSetup& s, double x) { scaleOneNozzle(s, -x); }},
    Row{"one_nozzle_worn", [](LoopSetup& s, double x) { scaleOneNozzle(s, x); }},
    Row{"section_shut",
        [](LoopSetup& s, double) { changeFirst(s, [](BoomSection& b) { b.isOpen = false; }); }},
    Row{"restrictor_position", otherPosition},
    Row{"floor_high", [](LoopSetup& s, double x) { s.floor = (1 + x) * s.need.sensor; }},
    Row{"ceiling_low", [](LoopSetup& s, double x) { s.ceiling = (1 - x) * s.need.sensor; }},
    Row{"pump_worn", [](LoopSetup& s, double x) { s.parts.pump->health *= open(x); }},
    Row{"pump_drive",
        [](LoopSetup& s, double x) {
            s.parts.pump->topSpeed = std::min(s.parts.pump->topSpeed, open(x));
        }},
    Row{"agitation_open", addAtOutlet},
    Row{"bypass_passing", addAtOutlet},
    Row{"return_open",
        [](LoopSetup& s, double x) {
            addBranch(s, s.parts.manifoldLeak, x * s.need.flow, s.need.sensor);
        }},
    Row{"section_leak",
        [](LoopSetup& s, double x) {
            addBranch(s, s.parts.manifoldLeak, x * firstShare(s) * s.need.flow, s.need.sensor);
        }},
    Row{"meter_high", [](LoopSetup& s, double x) { s.meter.scale *= 1 + x; }},
    Row{"meter_low", [](LoopSetup& s, double x) { s.meter.scale *= 1 - x; }},
    Row{"meter_fouled",
        [](LoopSetup& s, double x) {
            s.meter.scale *= 1 - x;
            s.meter.noiseAdded += 0.1 * x;
        }},
    Row{"meter_part_full",
        [](LoopSetup& s, double x) {
            s.meter.minimumByFault = std::max(s.meter.minimumByFault, (1 + x) * s.need.flow);
        }},
    Row{"suction_air",
        [](LoopSetup& s, double x) {
            s.meter.noiseAdded += 0.4 * x;
            s.parts.pump->health *= 1 - 0.5 * x;
        }},
    Row{"foam",
        [](LoopSetup& s, double x) {
            s.meter.noiseAdded += 0.4 * x;
            s.parts.pump->health *= 1 - 0.1 * x;
        }},
    Row{"gain_high", [](LoopSetup& s, double x) { s.control.gain *= 1 + 9 * x; }},
    Row{"gain_low", [](LoopSetup& s, double x) { s.control.gain *= 1 - x; }},
    Row{"actuator_slow",
        [](LoopSetup& s, double x) {
            s.control.gain *= 1 - x;
            s.control.slew *= 1 - x;
        }},
    Row{"actuator_stiff",
        [](LoopSetup& s, double x) { s.control.stiction = std::max(s.control.stiction, 0.2 * x); }},
    Row{"actuator_reversed", [](LoopSetup& s, double) { s.control.isReversed = true; }},
    Row{"dead_band_small", [](LoopSetup& s, double x) { s.control.deadBand *= 1 - x; }},
    Row{"dead_band_large", [](LoopSetup& s, double x) { s.control.deadBand += 0.2 * x; }},
    Row{"speed_noisy", [](LoopSetup& s, double x) { s.meter.speedNoise += 0.2 * x; }},
    Row{"speed_high", [](LoopSetup& s, double x) { s.meter.speedScale *= 1 + x; }},
    Row{"speed_low", [](LoopSetup& s, double x) { s.meter.speedScale *= 1 - x; }},
    Row{"width_large", [](LoopSetup& s, double x) { s.meter.widthScale *= 1 + x; }},
    Row{"width_small", [](LoopSetup& s, double x) { s.meter.widthScale *= 1 - x; }},
    Row{"density_ignored",
        [](LoopSetup& s, double x) {
            const BoomLine& b = s.parts.boom;
            rebuild(s, b.sections(), b.specificGravity() * (1 + x));
        }},
    Row{"sensor_high", [](LoopSetup& s, double x) { s.meter.sensorScale *= 1 + x; }},
    Row{"sensor_low", [](LoopSetup& s, double x) { s.meter.sensorScale *= 1 - x; }},
    Row{"checks_drip", [](LoopSetup&, double) {}},  // nothing while spraying
};

const Row* rowFor(std::string_view cause) {
    const auto found = std::find_if(kRows.begin(), kRows.end(),
                                    [&](const Row& row) { return row.cause == cause; });
    return found == kRows.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<std::string>& injectableCauses() {
    static const std::vector<std::string> kIds = [] {
        std::vector<std::string> ids;
        for (const Row& row : kRows) ids.emplace_back(row.cause);
        return ids;
    }();
    return kIds;
}

bool isInjectable(std::string_view cause) {
    return rowFor(cause) != nullptr;
}

Outcome applyFault(LoopSetup& setup, const Fault& fault) {
    const Row* row = rowFor(fault.cause);
    if (!row) return error("fault_unknown", "cause", {{"cause", fault.cause}});
    if (!(fault.severity >= 0) || !(fault.severity <= 1))
        return error("fault_severity", "severity", {{"cause", fault.cause}});
    row->change(setup, fault.severity);
    return Done{};
}

Outcome applyFaults(LoopSetup& setup, const std::vector<Fault>& faults) {
    for (std::size_t i = 0; i < faults.size(); ++i) {
        const std::string where = "faults[" + std::to_string(i) + "]";
        for (std::size_t before = 0; before < i; ++before)
            if (faults[before].cause == faults[i].cause)
                return error("fault_twice", where + ".cause", {{"cause", faults[i].cause}});
        const auto done = applyFault(setup, faults[i]);
        if (done) continue;
        Problem problem = done.problem();
        problem.where = where + "." + problem.where;
        return problem;
    }
    return Done{};
}

}  // namespace bw
