// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/simulation/fault.h"
#include "tests/support/cvode_loop.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using namespace build;

#ifdef BW_HAS_CVODE

struct Worst {
    double flow = 0;
    double shown = 0;
};

/// The widest gap between our trace and CVODE's, as a part of the target (as rates are shown),
/// looked at each 0.1 s.
Worst widestGap(const LoopSetup& setup, const Drive& drive) {
    RateLoop loop(setup);
    CvodeLoop judge(setup, drive, 1e-8);
    Worst worst;
    for (int i = 1; i <= 6000; ++i) {
        loop.setSpeed(drive.at(loop.sample().time));
        loop.step();
        if (i % 5 != 0) continue;
        EXPECT_TRUE(judge.to(i * RateLoop::kStep));
        const LoopSample& s = loop.sample();
        const double target = s.targetFlow.si();
        worst.flow = std::max(worst.flow, std::abs(s.metered.si() - judge.flow()) / target);
        worst.shown =
            std::max(worst.shown, std::abs(s.shownFlow.si() - judge.shownFlow()) / target);
    }
    return worst;
}

std::vector<Drive> drives(Speed v) {
    return {Drive::steady(v),
            Drive::ramp(0.85 * v, 1.15 * v, Duration::fromSi(40), Duration::fromSi(30)),
            Drive::stopGo(v, 0.6 * v, Duration::fromSi(25), 0.2)};
}

// Source: SUNDIALS CVODE 6 (BDF, relative tolerance 1e-8) on the same differential equation.
TEST(Cvode, WholeTracesAgreeWithinHalfAPercent) {
    for (const LoopCase& c : {lowRate100(), highRate100(), trailedCase()}) {
        for (const double deadBand : {0.0, 0.02}) {
            LoopSetup setup = smoothed(c.setup());
            setup.control.deadBand = deadBand;
            for (const Drive& drive : drives(setup.usual)) {
                const Worst worst = widestGap(setup, drive);
                EXPECT_LT(worst.flow, 0.005);
                EXPECT_LT(worst.shown, 0.005);
            }
        }
    }
}

/// The same with parts of the line out of order, on floor, relief valve and pump.
TEST(Cvode, TracesWithFaultsAgreeToo) {
    const std::vector<Fault> faults{{"floor_high", 0.3},     {"ceiling_low", 0.2},
                                    {"line_strainer", 0.95}, {"return_open", 0.15},
                                    {"meter_high", 0.1},     {"nozzles_worn", 0.2}};
    for (const LoopCase& c : {lowRate100(), trailedCase()}) {
        for (const Fault& fault : faults) {
            LoopSetup setup = smoothed(c.setup());
            ASSERT_TRUE(applyFault(setup, fault).isOk());
            const Worst worst = widestGap(setup, drives(setup.usual)[1]);
            EXPECT_LT(worst.flow, 0.005) << fault.cause;
            EXPECT_LT(worst.shown, 0.005) << fault.cause;
        }
    }
}

#else

TEST(Cvode, WholeTracesAgreeWithinHalfAPercent) {
    GTEST_SKIP() << "SUNDIALS (libsundials-dev) was not found at configure time: the rate loop was "
                    "not compared with CVODE.";
}

#endif

}  // namespace
}  // namespace bw
