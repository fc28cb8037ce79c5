// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/trace_ring.h"

#include <gtest/gtest.h>

#include "core/simulation/simulate.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

Duration seconds(double s) {
    return Duration::fromSi(s);
}

TEST(TraceRing, KeepsTheNewestInOrderOnceItIsFull) {
    TraceRing ring(3);
    LoopSample sample;
    for (int i = 1; i <= 5; ++i) {
        sample.time = seconds(i);
        ring.push(sample);
    }
    ASSERT_EQ(ring.size(), 3U);
    EXPECT_EQ(ring.at(0).time, 3.0);
    EXPECT_EQ(ring.newest().time, 5.0);
    EXPECT_EQ(ring.firstFrom(seconds(0)), 0U);
    EXPECT_EQ(ring.firstFrom(seconds(3.5)), 1U);
    EXPECT_EQ(ring.firstFrom(seconds(6)), 3U);
}

/// The same samples as the whole-run reader takes, so the same numbers.
TEST(TraceRing, ReadsAsTheWholeRunIsRead) {
    const LoopSetup setup = build::lowRate100().setup();
    const Simulation run = simulate(setup, {seconds(60), 3, {}, true});
    TraceRing ring(4000);
    for (const auto& sample : run.trace) ring.push(sample);
    const auto read = ring.reading(run.trace.front().time, seconds(60), setup.profileDeadBand);
    ASSERT_TRUE(read);
    EXPECT_NEAR(read->shown.shown.mean, run.reading.shown.mean, 1e-4);
    EXPECT_NEAR(read->shown.shown.spread, run.reading.shown.spread, 1e-4);
    EXPECT_EQ(read->shown.verdict, run.reading.verdict);
    EXPECT_NEAR(read->real.mean, run.real.mean, 1e-4);
    EXPECT_NEAR(read->length.si(), 40.0, 0.1);
}

TEST(TraceRing, SaysNothingBeforeThereIsEnoughToRead) {
    const LoopSetup setup = build::lowRate100().setup();
    const Simulation run = simulate(setup, {seconds(30), 1, {}, true});
    TraceRing ring(4000);
    for (const auto& sample : run.trace) ring.push(sample);
    EXPECT_FALSE(ring.reading(seconds(25), seconds(60), 0.02));
    EXPECT_TRUE(ring.reading(seconds(10), seconds(60), 0.02));
    EXPECT_FALSE(TraceRing(10).reading(seconds(0), seconds(60), 0.02));
}

TEST(TraceRing, LeavesOutWhatStands) {
    TraceRing ring(2000);
    LoopSample sample;
    sample.target = AreaRate::fromSi(1e-5);
    for (int i = 0; i < 1500; ++i) {
        sample.time = seconds(0.02 * i);
        sample.isSpraying = i % 2 == 0;
        sample.shown = sample.isSpraying ? sample.target * 1.1 : AreaRate{};
        ring.push(sample);
    }
    const auto read = ring.reading(seconds(0), seconds(60), 0.02);
    ASSERT_TRUE(read);
    EXPECT_NEAR(read->shown.shown.mean, 1.1, 1e-9);
    EXPECT_EQ(read->shown.verdict, TraceVerdict::StuckHigh);
}

}  // namespace
}  // namespace bw
