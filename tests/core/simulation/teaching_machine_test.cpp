// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/teaching_machine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/machine_fields.h"
#include "core/simulation/simulate.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using testing::Contains;
using testing::IsEmpty;
using testing::Not;

TEST(TeachingMachine, AMachineThatIsKnownStaysAsItIs) {
    const build::LoopCase c = build::trailedCase();
    const auto taught = teachingMachine(c.machine, c.nozzle, c.job);
    EXPECT_TRUE(taught.machine.pump == c.machine.pump);
    EXPECT_TRUE(taught.machine.controlValve == c.machine.controlValve);
    EXPECT_TRUE(taught.machine.loop == c.machine.loop);
    EXPECT_THAT(taught.assumed, Not(Contains("pump.kind")));
}

/// Whatever holds the rate and whatever pump: what is assumed can run the job.
TEST(TeachingMachine, WhatIsAssumedRunsTheJobOnItsRate) {
    for (const Control control : {Control::PumpSpeed, Control::Bypass, Control::Throttle}) {
        for (const PumpKind kind : {PumpKind::PositiveDisplacement, PumpKind::Centrifugal}) {
            build::LoopCase c = build::trailedCase();
            c.machine.control = Sourced<Control>(control);
            c.machine.pump = {};
            c.machine.pump.kind = Sourced<PumpKind>(kind);
            c.machine.controlValve = {};
            c.machine.loop = {};
            ASSERT_FALSE(LoopSetup::make(c.machine, c.nozzle, c.job).isOk());
            const auto taught = teachingMachine(c.machine, c.nozzle, c.job);
            const auto setup = LoopSetup::make(taught.machine, c.nozzle, c.job);
            ASSERT_TRUE(setup.isOk()) << setup.problem().code;
            const auto run = simulate(*setup, {Duration::fromSi(90), 1, {}, false});
            EXPECT_EQ(run.reading.verdict, TraceVerdict::OnRate)
                << choiceName(control) << ' ' << choiceName(kind) << ' ' << run.reading.shown.mean
                << " ± " << run.reading.shown.spread;
            for (const auto& key : taught.assumed) {
                const auto view = fieldView(taught.machine, key);
                ASSERT_TRUE(view && view->isKnown) << key;
                EXPECT_EQ(view->origin, Origin::Assumed) << key;
            }
        }
    }
}

TEST(TeachingMachine, NothingIsSizedForAJobWithoutRateOrAMachineWithoutSections) {
    build::LoopCase c = build::trailedCase();
    c.machine.pump = {};
    c.job.rate.reset();
    EXPECT_FALSE(teachingMachine(c.machine, c.nozzle, c.job).machine.pump.ratedFlow);
    c = build::trailedCase();
    c.machine.pump = {};
    c.machine.sections.reset();
    EXPECT_FALSE(teachingMachine(c.machine, c.nozzle, c.job).machine.pump.ratedFlow);
}

}  // namespace
}  // namespace bw
