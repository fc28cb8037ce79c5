// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/stability.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/simulation/simulate.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using namespace build;

/// The linear loop: nothing but dead time, lags and gain.
LoopSetup linear(const LoopCase& c) {
    LoopSetup s = c.setup();
    s.meter.noise = s.meter.speedNoise = s.meter.noiseBelow = 0;
    s.control.deadBand = s.control.stiction = 0;
    s.control.slew = 100;
    s.floor.reset();
    s.ceiling.reset();
    return s;
}

/// Starts at rest on the target, then looks whether a small knock grows; halves the bracket.
double boundary(LoopSetup setup) {
    const double slope = stability(setup, setup.usual)->flowPerStroke;
    const double guess = stability(setup, setup.usual)->gainAtLimit / slope;
    double low = 0.8 * guess;
    double high = 1.25 * guess;
    for (int i = 0; i < 9; ++i) {
        setup.control.gain = 0.5 * (low + high);
        RateLoop loop(setup, 1);
        LoopSetup calm = setup;  // come to rest with a quiet gain first
        calm.control.gain = 0.2 * guess;
        loop.change(calm);
        for (int k = 0; k < 10000; ++k) loop.step();
        loop.change(setup);
        loop.setTarget(1.001 * setup.target);
        double early = 0;
        double late = 0;
        for (int k = 0; k < 5000; ++k) {
            const auto& s = loop.step();
            const double off = std::abs(s.shown / s.target - 1);
            if (k >= 500 && k < 1500) early = std::max(early, off);
            if (k >= 4000) late = std::max(late, off);
        }
        (late > early ? high : low) = setup.control.gain;
    }
    return 0.5 * (low + high) * slope;
}

// Source: linear theory of a loop with dead time (worked out in DEVELOPERS.md, "The loop"). The
// step adds half of itself to a bare dead time; each of the two lags takes the step's new value and
// so gives half a step back. Compared with θ + dt/2 the boundary is within 3 % where θ is not short
// against the step; with θ − dt/2 it is within 1 % throughout.
TEST(Stability, BoundaryWithinThreePercentOfLinearTheory) {
    for (const LoopCase& c : {lowRate100(), highRate100(), trailedCase()}) {
        LoopSetup s = linear(c);
        for (const double dead : {0.2, 0.4, 0.5, 1.0}) {
            s.control.deadTime = Duration::fromSi(dead);
            const double found = boundary(s);
            if (dead >= 0.4) {
                EXPECT_NEAR(found / stability(s, s.usual)->gainAtLimit, 1.0, 0.03) << dead;
            }
            const Duration exact = Duration::fromSi(dead - RateLoop::kStep / 2);
            const auto theory = gainLimit(exact, s.control.hydraulicLag, s.control.meterLag);
            EXPECT_NEAR(found / theory.gain, 1.0, 0.01) << dead;
        }
    }
}

TEST(Stability, DeadTimeAloneSwingsWithFourTimesIt) {
    const auto limit = gainLimit(Duration::fromSi(0.7), Duration{}, Duration{});
    EXPECT_NEAR(limit.gain, std::numbers::pi / 1.4, 1e-9);
    EXPECT_NEAR(limit.period.si(), 2.8, 1e-9);
    LoopSetup s = linear(lowRate100());
    s.control.deadTime = Duration::fromSi(0.5);
    s.control.hydraulicLag = s.control.meterLag = Duration{};
    const auto at = *stability(s, s.usual);
    EXPECT_NEAR(boundary(s) / at.gainAtLimit, 1.0, 0.03);
    s.control.gain = 1.03 * at.gainAtLimit / at.flowPerStroke;
    s.control.slew = 0.05;
    SimulationWish wish;
    wish.length = Duration::fromSi(90);
    const auto run = simulate(s, wish);
    ASSERT_TRUE(run.reading.period);
    EXPECT_NEAR(run.reading.period->si() / (4 * 0.51), 1.0, 0.03);
}

/// Where closed forms are known, the slope found on the circuit meets them.
TEST(Stability, SlopeMeetsTheClosedForms) {
    const LoopSetup pump = lowRate100().setup();
    const auto at = *stability(pump, pump.usual);
    EXPECT_NEAR(at.flowPerStroke * at.control, 1.0, 1e-6);  // homogeneous, pump speed: 1/u
    LoopCase c = trailedCase();
    c.machine.checkValve = {};
    const LoopSetup bypass = c.setup();
    const auto by = *stability(bypass, bypass.usual);
    const auto state = Circuit(bypass.parts).atControl(by.control);
    EXPECT_NEAR(by.flowPerStroke * (1 - by.control), state.bypass / state.pump, 1e-6);
    LoopCase t = highRate100();
    t.machine.control = Sourced<Control>(Control::Throttle);
    t.machine.controlValve = {Sourced<Flow>(gpm(80)), Sourced<Pressure>(psi(5)), {}};
    const LoopSetup throttle = t.setup();
    const auto th = *stability(throttle, throttle.usual);
    const auto s = Circuit(throttle.parts).atControl(th.control);
    const Pressure shutOff = throttle.parts.pump->shutOff;
    // φ: the valve's share of the drop that goes with the boom's own flow, times the pump's curve.
    const double share = s.valveLoss / s.pumpOutlet;
    const double curve = 1 - (1 - s.pumpOutlet / shutOff) * (s.metered / s.pump);
    EXPECT_NEAR(th.flowPerStroke * th.control / (share * curve), 1.0, 0.02);
}

TEST(Stability, DemoMachinesAreCalmAndTenfoldGainIsNot) {
    for (const LoopCase& c : {lowRate100(), highRate100(), trailedCase()}) {
        LoopSetup s = c.setup();
        EXPECT_TRUE(stability(s, s.usual)->isStable());
        s.control.gain *= 10;
        EXPECT_FALSE(stability(s, s.usual)->isStable());
    }
}

}  // namespace
}  // namespace bw
