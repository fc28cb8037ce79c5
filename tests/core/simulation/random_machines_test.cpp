// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>

#include "core/hydraulics/rate_law.h"
#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/simulation/stability.h"
#include "tests/support/random_machines.h"

namespace bw {
namespace {

using namespace build;

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
