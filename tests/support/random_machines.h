// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <optional>
#include <vector>

#include "core/hydraulics/rate_law.h"
#include "core/simulation/noise.h"
#include "core/simulation/stability.h"
#include "tests/support/loop_machines.h"

/// Ten machines drawn from one seed, every control and pump kind among them. All invented.
namespace bw::build {

inline double between(Generator& g, double low, double high) {
    return low + (high - low) * g.uniform();
}

inline void givePump(Generator& g, Machine& m, Flow need, Pressure pressure) {
    const int kind = static_cast<int>(3 * g.uniform());
    m.pump.suctionAvailable = Sourced<Pressure>(bar(0.6));
    if (kind == 2) {  // positive displacement with a by-pass
        const Flow rated = between(g, 1.5, 2.2) * need;
        m.control = Sourced<Control>(Control::Bypass);
        m.pump.kind = Sourced<PumpKind>(PumpKind::PositiveDisplacement);
        m.pump.ratedFlow = Sourced<Flow>(rated);
        m.pump.reliefPressure = Sourced<Pressure>(between(g, 4.0, 5.0) * pressure);
        m.controlValve = {Sourced<Flow>(rated), Sourced<Pressure>(0.6 * pressure), {}};
        return;
    }
    const Pressure shutOff = between(g, 2.6, 3.4) * pressure;
    m.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
    m.pump.shutOffPressure = Sourced<Pressure>(shutOff);
    m.pump.curve = Sourced<std::vector<CurvePoint>>({{between(g, 1.8, 2.4) * need, 0.7 * shutOff}});
    m.pump.leastSpeed = Sourced<double>(0.25);
    if (kind == 0) return;
    m.control = Sourced<Control>(Control::Throttle);
    m.controlValve = {
        Sourced<Flow>(between(g, 1.6, 2.4) * need), Sourced<Pressure>(0.4 * pressure), {}};
}

inline void giveLosses(Generator& g, Machine& m, Flow need, Pressure pressure, double sectionPart) {
    const auto loss = [&](double low, double high, Flow at) {
        return Loss{Sourced<Pressure>(between(g, low, high) * pressure), Sourced<Flow>(at)};
    };
    m.losses.suction = {Sourced<Pressure>(bar(between(g, 0.03, 0.09))), Sourced<Flow>(need)};
    m.losses.line = loss(0.02, 0.06, need);
    m.losses.plumbing = loss(0.08, 0.2, need);
    m.losses.section = loss(0.03, 0.08, sectionPart * need);
    m.agitation = {Sourced<Flow>(between(g, 0.05, 0.2) * need), Sourced<Pressure>(1.3 * pressure)};
}

/// A plausible machine with a job in the middle of its window and a calm loop. All invented.
inline std::optional<LoopCase> candidate(Generator& g) {
    std::vector<int> sections;
    for (int i = 0; i < 3 + static_cast<int>(7 * g.uniform()); ++i)
        sections.push_back(6 + static_cast<int>(7 * g.uniform()));
    LoopCase c{machine(sections), nozzle(), {}};
    const Speed v = kmh(between(g, 7, 18));
    c.job = job(lha(between(g, 80, 250)), 0.8 * v, v, 1.2 * v);
    const Pressure pressure = bar(between(g, 1.8, 3.5));
    const Flow each = neededFlow(c.job.rate->value, v, metres(0.5));
    c.nozzle = nozzle(each * std::sqrt(bar(3) / pressure), bar(3));
    const int n = nozzleCount(c.machine);
    const Flow need = static_cast<double>(n) * each;
    givePump(g, c.machine, need, pressure);
    giveLosses(g, c.machine, need, pressure, static_cast<double>(sections.front()) / n);
    c.machine.limits.pressureFloor = Sourced<Pressure>(0.45 * pressure);
    c.machine.limits.pressureCeiling = Sourced<Pressure>(2.6 * pressure);
    c.machine.meter.minimumFullBore = Sourced<Flow>(between(g, 0.15, 0.35) * need);
    if (g.uniform() < 0.5) {
        c.machine.restrictor.fitted = Sourced<bool>(true);
        c.machine.restrictor.changeoverFlow = Sourced<Flow>(0.8 * need);
        const double hole = std::sqrt(need.si() / 0.62 / std::sqrt(2 * 0.6e5 / 1000) * 4 / 3.1416);
        c.machine.restrictor.hole = Sourced<Length>(metres(hole));
    }
    c.machine.loop = loopSettings(0.1, between(g, 0.1, 0.2), between(g, 0.3, 0.8),
                                  between(g, 0.2, 0.5), between(g, 0.4, 0.9), 0.003);
    const auto setup = LoopSetup::make(c.machine, c.nozzle, c.job);
    const auto at = setup ? stability(*setup, setup->usual) : std::nullopt;
    if (!at || at->control < 0.1 || at->control > 0.85) return std::nullopt;
    c.machine.loop.gain =
        Sourced<double>(between(g, 0.3, 0.45) * at->gainAtLimit / at->flowPerStroke);
    return c;
}

inline std::vector<LoopCase> tenMachines() {
    Generator g(20260101);
    std::vector<LoopCase> out;
    for (int tries = 0; out.size() < 10 && tries < 500; ++tries)
        if (auto c = candidate(g)) out.push_back(*c);
    return out;
}

}  // namespace bw::build
