// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>

#include "core/hydraulics/rate_law.h"
#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/simulation/stability.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using namespace build;

double between(Generator& g, double low, double high) {
    return low + (high - low) * g.uniform();
}

void givePump(Generator& g, Machine& m, Flow need, Pressure pressure) {
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

void giveLosses(Generator& g, Machine& m, Flow need, Pressure pressure, double sectionPart) {
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
std::optional<LoopCase> candidate(Generator& g) {
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

std::vector<LoopCase> tenMachines() {
    Generator g(20260101);
    std::vector<LoopCase> out;
    for (int tries = 0; out.size() < 10 && tries < 500; ++tries)
        if (auto c = candidate(g)) out.push_back(*c);
    return out;
}

/// What our own fault table says of a fault at a severity where its three columns do not leave it
/// to the pump's reserve.
struct Listed {
    const char* cause;
    double severity;
    TraceVerdict verdict;
};
constexpr auto kHigh = TraceVerdict::StuckHigh;
constexpr auto kLow = TraceVerdict::StuckLow;
constexpr auto kFine = TraceVerdict::OnRate;
constexpr auto kHunts = TraceVerdict::Hunting;
const std::vector<Listed> kListed{{"suction_strainer", 0.95, kLow},
                                  {"suction_hose", 0.95, kLow},
                                  {"line_strainer", 0.95, kLow},
                                  {"section_strainer", 0.95, kFine},
                                  {"hose_kinked", 0.85, kLow},
                                  {"nozzle_strainers", 0.4, kLow},
                                  {"nozzle_small", 0.4, kLow},
                                  {"nozzle_large", 1, kHigh},
                                  {"nozzles_worn", 0.2, kFine},
                                  {"one_nozzle_blocked", 1, kFine},
                                  {"one_nozzle_worn", 0.3, kFine},
                                  {"section_shut", 1, kFine},
                                  {"restrictor_position", 1, kLow},
                                  {"floor_high", 0.5, kHigh},
                                  {"ceiling_low", 0.4, kLow},
                                  {"pump_worn", 0.5, kLow},
                                  {"pump_drive", 0.35, kLow},
                                  {"agitation_open", 1, kLow},
                                  {"bypass_passing", 1, kLow},
                                  {"return_open", 0.15, kFine},
                                  {"section_leak", 0.6, kFine},
                                  {"meter_high", 0.1, kFine},
                                  {"meter_low", 0.1, kFine},
                                  {"meter_fouled", 0.1, kFine},
                                  {"meter_part_full", 0.5, kHunts},
                                  {"suction_air", 0.4, kHunts},
                                  {"foam", 0.4, kHunts},
                                  {"gain_high", 1, kHunts},
                                  {"gain_low", 0.5, kFine},
                                  {"actuator_slow", 0.5, kFine},
                                  {"actuator_stiff", 0.8, kHunts},
                                  {"actuator_reversed", 1, kLow},
                                  {"dead_band_small", 1, kFine},
                                  {"dead_band_large", 0.2, kFine},
                                  {"speed_noisy", 0.4, kHunts},
                                  {"speed_high", 0.1, kFine},
                                  {"speed_low", 0.1, kFine},
                                  {"width_large", 0.1, kFine},
                                  {"width_small", 0.1, kFine},
                                  {"density_ignored", 0.3, kFine},
                                  {"sensor_high", 0.2, kFine},
                                  {"sensor_low", 0.6, kHigh},
                                  {"checks_drip", 1, kFine}};

/// Shown over target once at rest, from the circuit's exact solutions alone: no loop, no curve.
double steadyShown(const LoopSetup& s) {
    const double wish = s.target.si() * s.usual.si() * s.meter.speedScale * s.widthOn().si() *
                        s.meter.widthScale / s.meter.scale;
    const Circuit circuit(s.running());
    const auto meteredAt = [&](Pressure reading) {  // branch behind the meter included
        const Pressure p = reading / s.meter.sensorScale;
        return s.parts.boom.flowAt(p).si() + s.parts.manifoldLeak.conductance *
                                                 std::sqrt(p.si() / s.parts.boom.specificGravity());
    };
    const double most = circuit.atControl(1).metered.si();
    const double least = circuit.atControl(0).metered.si();
    double flow = wish;
    if (s.floor) flow = std::max(flow, meteredAt(*s.floor));
    if (s.ceiling) flow = std::min(flow, meteredAt(*s.ceiling));
    return std::clamp(flow, least, most) / wish;
}

/// A reversed actuator runs to the stop on the side where it started (half stroke), so there the
/// machine's own working point says which way; for all others the table does.
TraceVerdict listedVerdict(const Listed& fault, const LoopSetup& s) {
    if (std::string(fault.cause) != "actuator_reversed") return fault.verdict;
    const auto control = workingControl(s, s.usual);
    return control && *control < 0.5 ? kHigh : kLow;
}

/// Why a fault that the table lists as felt is not felt on this machine, proved without the trace
/// of the verdict; empty if there is no such proof.
std::string whyNotFelt(const Listed& fault, const LoopSetup& s, const Simulation& run) {
    const double shown = steadyShown(s);
    if (fault.verdict == kHigh || fault.verdict == kLow) {
        if (std::string(fault.cause) == "restrictor_position" && !s.restrictor.isFitted)
            return "none fitted";
        if (std::abs(shown - 1) < 0.03) return "the line still reaches the flow";
    }
    const std::string cause = fault.cause;
    if (cause == "gain_high" && stability(s, s.usual) && stability(s, s.usual)->isStable())
        return "the loop stays under its limit";
    if (cause == "actuator_stiff") {
        const double rest = run.trace[run.trace.size() / 3].actuator;
        for (std::size_t i = run.trace.size() / 3; i < run.trace.size(); ++i)
            if (run.trace[i].actuator != rest) return {};
        return "the actuator happens to rest inside the dead band";
    }
    return {};
}

TEST(RandomMachines, TenPlausibleOnesHoldTheRateWhenHealthy) {
    const auto machines = tenMachines();
    ASSERT_EQ(machines.size(), 10U);
    std::map<Control, int> kinds;
    for (const auto& c : machines) {
        const LoopSetup s = c.setup();
        ++kinds[s.parts.control];
        EXPECT_EQ(simulate(s).reading.verdict, kFine);
        EXPECT_NEAR(steadyShown(s), 1.0, 1e-9);
    }
    EXPECT_EQ(kinds.size(), 3U);
}

TEST(RandomMachines, EveryFaultGivesTheTablesVerdictOrIsProvedNotFelt) {
    std::map<std::string, int> notFelt;
    for (const auto& c : tenMachines()) {
        for (const Listed& fault : kListed) {
            LoopSetup s = c.setup();
            ASSERT_TRUE(applyFault(s, {fault.cause, fault.severity}).isOk());
            SimulationWish wish;
            wish.length = Duration::fromSi(150);
            const Simulation run = simulate(s, wish);
            if (run.reading.verdict == listedVerdict(fault, s)) continue;
            const std::string why = whyNotFelt(fault, s, run);
            const bool isProved = !why.empty() && run.reading.verdict == kFine;
            EXPECT_TRUE(isProved) << fault.cause << " " << fault.severity << ": mean "
                                  << run.reading.shown.mean << " spread "
                                  << run.reading.shown.spread << " "
                                  << choiceName(run.reading.verdict) << ", at rest "
                                  << steadyShown(s) << " control " << choiceName(s.parts.control);
            if (isProved) ++notFelt[std::string(fault.cause) + ": " + why];
        }
    }
    for (const auto& [what, times] : notFelt)
        std::cout << "    not felt on " << times << " of 10 machines: " << what << "\n";
}

/// All causes that can be put in are in the list above.
TEST(RandomMachines, TheListIsWhole) {
    for (const auto& cause : injectableCauses())
        EXPECT_EQ(std::count_if(kListed.begin(), kListed.end(),
                                [&](const Listed& l) { return cause == l.cause; }),
                  1)
            << cause;
}

}  // namespace
}  // namespace bw
