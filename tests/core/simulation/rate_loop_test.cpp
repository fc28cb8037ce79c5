// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/rate_loop.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/simulation/why.h"
#include "core/text/sentences.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using namespace build;

/// Worst miss of the curve against the circuit's own solution, as a part of the full flow.
double worstMiss(const LoopSetup& setup, double from) {
    const LoopCurves curves = LoopCurves::of(setup);
    const Circuit circuit(setup.running());
    const double full = circuit.atControl(1).metered.si();
    double worst = 0;
    for (double u = from; u <= 1; u += 0.000737) {
        const double exact = circuit.atControl(u).metered.si();
        worst = std::max(worst, std::abs(curves.metered.at(u) - exact) / full);
    }
    return worst;
}

TEST(LoopCurves, StandOnTheCircuitToOneInAMillion) {
    for (const LoopCase& c : {lowRate100(), highRate100(), trailedCase()}) {
        for (const char* cause : {"checks_drip", "suction_strainer", "line_strainer", "pump_worn",
                                  "return_open", "agitation_open"}) {
            LoopSetup s = c.setup();
            ASSERT_TRUE(applyFault(s, {cause, 0.6}).isOk());
            EXPECT_LT(worstMiss(s, 0.0), 1e-6) << cause;
        }
    }
    LoopCase ball = lowRate100();
    ball.machine.checkValve.openingPressure = Sourced<Pressure>(bar(0.5));
    EXPECT_LT(worstMiss(ball.setup(), 0.4), 1e-6);  // away from the opening pressure
    EXPECT_LT(worstMiss(ball.setup(), 0.0), 2e-2);  // at it
}

TEST(LoopCurves, ManifoldPressureAndSprayedFlowStandOnTheBoom) {
    LoopSetup s = trailedCase().setup();
    ASSERT_TRUE(applyFault(s, {"return_open", 0.3}).isOk());
    const LoopCurves curves = LoopCurves::of(s);
    const Circuit circuit(s.running());
    for (const double u : {0.2, 0.4, 0.6, 0.8}) {
        const auto state = circuit.atControl(u);
        const double root = curves.rootPressure.at(state.metered.si());
        EXPECT_NEAR(root * root / state.sensor.si(), 1.0, 1e-5);
        EXPECT_NEAR(curves.sprayed.at(state.metered.si()) / state.sprayed.si(), 1.0, 1e-5);
    }
}

TEST(RateLoop, DeadTimeActsAfterJustSoManySteps) {
    LoopSetup s = lowRate100().setup();
    s.control.stiction = 0;
    s.control.deadTime = Duration::fromSi(0.1);
    RateLoop loop(s);
    for (int i = 0; i < 5; ++i) EXPECT_EQ(loop.step().actuator, 0.5) << i;
    EXPECT_NE(loop.step().actuator, 0.5);
}

/// Levers moved in mid-run lead to the rest that a fresh run with them finds.
TEST(RateLoop, LeversInMidRunLeadToTheSameRest) {
    LoopSetup quiet = lowRate100().setup();
    quiet.meter.noise = quiet.meter.speedNoise = quiet.meter.noiseBelow = 0;
    quiet.control.stiction = 0;
    quiet.control.deadBand = 0;
    const auto rest = [](RateLoop& loop) {
        for (int i = 0; i < 6000; ++i) loop.step();
        return loop.sample().sensor.si();
    };
    std::vector<LoopSetup> levers(5, quiet);
    levers[0].isOn.back() = false;
    levers[1].setRestrictor(RestrictorPosition::FullBore);
    levers[2].floor = 1.3 * quiet.need.sensor;
    levers[3].control.gain *= 0.5;
    levers[4].control.deadTime = Duration::fromSi(0.9);
    for (const LoopSetup& lever : levers) {
        RateLoop loop(quiet, 1);
        rest(loop);
        loop.change(lever);
        RateLoop fresh(lever, 1);
        EXPECT_NEAR(rest(loop) / rest(fresh), 1.0, 1e-6);
    }
}

TEST(RateLoop, StandingStillRestsAndStaysFinite) {
    RateLoop loop(lowRate100().setup());
    for (int i = 0; i < 500; ++i) loop.step();
    const double command = loop.sample().command;
    loop.setSpeed(Speed{});
    for (int i = 0; i < 500; ++i) loop.step();
    EXPECT_EQ(loop.sample().command, command);
    EXPECT_FALSE(loop.sample().isSpraying);
    EXPECT_EQ(loop.sample().shown.si(), 0.0);
    LoopSetup off = lowRate100().setup();
    off.isOn.assign(off.isOn.size(), false);
    loop.change(off);
    loop.setSpeed(off.usual);
    EXPECT_FALSE(loop.step().isSpraying);
    EXPECT_TRUE(loop.sample().sensor.isFinite());
}

TEST(RateLoop, RefusesWhatItDoesNotCover) {
    const auto code = [](const LoopCase& c) {
        return LoopSetup::make(c.machine, c.nozzle, c.job).problem().code;
    };
    LoopCase c = trailedCase();
    c.machine.controlValve = {};
    EXPECT_EQ(code(c), "loop_needs_control_valve");
    c = lowRate100();
    c.machine.pump = {};
    EXPECT_EQ(code(c), "loop_needs_pump");
    c = lowRate100();
    c.machine.pulsed.pressure = Sourced<Pressure>(bar(3));
    EXPECT_EQ(code(c), "loop_not_pulsed");
    c = lowRate100();
    c.machine.loop.deadTime = Sourced<Duration>(Duration::fromSi(1e9));
    EXPECT_EQ(code(c), "loop_setting_bad");
}

TEST(Drive, HeadlandHasItsShareOfTheDistance) {
    const Drive d = Drive::stopGo(kmh(12), kmh(6), Duration::fromSi(40), 0.25);
    double field = 0;
    double headland = 0;
    for (double t = 0; t < d.repeats()->si(); t += 0.01) {
        const Speed v = d.at(Duration::fromSi(t));
        if (v == kmh(12)) field += v.si();
        if (v == kmh(6)) headland += v.si();
    }
    EXPECT_NEAR(headland / (headland + field), 0.25, 0.001);
    EXPECT_EQ(d.at(*d.repeats() + Duration::fromSi(1)), kmh(12));
}

std::string chain(LoopSetup setup, const std::vector<Fault>& faults) {
    static const Sentences kWords = Sentences::shipped();
    EXPECT_TRUE(applyFaults(setup, faults).isOk());
    RateLoop loop(setup);
    for (int i = 0; i < 3000; ++i) loop.step();
    std::string out;
    for (const Fact& fact : whySo(loop))
        out += (out.empty() ? "" : " ") + kWords.of(fact, {UnitSystem::Metric, '.'});
    EXPECT_EQ(out.find('<'), std::string::npos) << out;
    EXPECT_EQ(out.find('{'), std::string::npos) << out;
    return out;
}

TEST(Why, TheChainSaysWhatTheStateHolds) {
    const LoopSetup trailed = trailedCase().setup();
    const std::string floor = chain(trailed, {{"floor_high", 0.4}});
    EXPECT_NE(floor.find("The floor holds 5.3"), std::string::npos) << floor;
    EXPECT_NE(floor.find("The job needs 3.8"), std::string::npos) << floor;
    EXPECT_NE(floor.find("at 10 km/h. So the nozzles give 1.2"), std::string::npos) << floor;
    EXPECT_NE(chain(trailed, {}).find("No limit stands in the way"), std::string::npos);
    EXPECT_NE(chain(trailed, {{"ceiling_low", 0.3}}).find("The ceiling holds"), std::string::npos);
    EXPECT_NE(chain(trailed, {{"meter_high", 0.1}}).find("shows 1.1 times"), std::string::npos);
    EXPECT_NE(chain(trailed, {{"gain_high", 1}}).find("swings by itself"), std::string::npos);
    EXPECT_NE(chain(trailed, {{"section_shut", 1}}).find("Section 1 gets nothing"),
              std::string::npos);
    EXPECT_NE(chain(trailed, {{"return_open", 0.2}}).find("never reaches a nozzle"),
              std::string::npos);
    const std::string starved = chain(trailed, {{"suction_strainer", 0.9}});
    EXPECT_NE(starved.find("the suction side"), std::string::npos) << starved;
    const std::string reach = chain(trailed, {{"floor_high", 1.0}, {"pump_drive", 0.2}});
    EXPECT_NE(reach.find("which is more than the machine can hold. So the nozzles give 1."),
              std::string::npos)
        << reach;
    for (const auto& cause : injectableCauses()) chain(trailed, {{cause, 0.7}});
}

}  // namespace
}  // namespace bw
