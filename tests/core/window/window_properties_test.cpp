// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/window/verdict.h"
#include "tests/support/random_pairings.h"

namespace bw {
namespace {

using namespace build;

constexpr int kCases = 600;
constexpr double kSlack = 1 + 1e-9;  // a root's accuracy

/// The least boom flow that the supply side allows.
double supplyMost(const WindowModel& model) {
    double most = HUGE_VAL;
    for (const Limit limit : {Limit::Pump, Limit::ReliefValve, Limit::Suction}) {
        if (const auto flow = model.limits().of(limit)) most = std::min(most, flow->si());
    }
    return most;
}

TEST(WindowProperties, RaisingTheFloorNeverWidens) {
    RandomPairings random(101);
    for (int i = 0; i < kCases; ++i) {
        Case c = random.next();
        const auto before = c.window();
        c.machine.limits.pressureFloor->value =
            random.between(1.01, 2) * c.machine.limits.pressureFloor->value;
        const auto after = c.window();
        EXPECT_GE(after.low.speed->si() * kSlack, before.low.speed->si()) << i;
        EXPECT_LE(after.high.speed->si(), before.high.speed->si() * kSlack) << i;
        EXPECT_TRUE(after.empty || !before.empty) << i;
    }
}

TEST(WindowProperties, ALargerLossNeverRaisesWhatTheSupplyAllows) {
    RandomPairings random(102);
    int lowered = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.next();
        const double before = supplyMost(c.model());
        Losses& l = c.machine.losses;
        Loss* const losses[] = {&l.suction, &l.line, &l.plumbing, &l.section};
        Loss& grown = *losses[i % 4];
        grown.pressure->value = random.between(1.2, 4) * grown.pressure->value;
        const double after = supplyMost(c.model());
        EXPECT_LE(after, before * kSlack) << i;
        lowered += after < before * (1 - 1e-6);
    }
    EXPECT_GT(lowered, kCases / 4);
}

TEST(WindowProperties, MoreAgitationOrNarrowingNeverRaisesThePumpLimit) {
    RandomPairings random(103);
    int lowered = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.next();
        c.machine.restrictor.fitted = Sourced<bool>(true);
        c.machine.restrictor.hole = Sourced<Length>(metres(0.015));
        c.machine.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
        const auto before = c.model().limits().of(Limit::Pump);
        ASSERT_TRUE(before) << i;
        if (i % 2)
            c.machine.agitation.flow->value =
                random.between(1.1, 3) * c.machine.agitation.flow->value;
        else
            c.machine.restrictor.position->value = RestrictorPosition::Narrowed;
        const auto after = c.model().limits().of(Limit::Pump);
        ASSERT_TRUE(after) << i;
        EXPECT_LE(after->si(), before->si() * kSlack) << i;
        lowered += after->si() < before->si() * (1 - 1e-6);
    }
    EXPECT_GT(lowered, kCases / 2);
}

Limit dropped(Case& c, int which) {
    auto& limits = c.machine.limits;
    switch (which) {
        case 0:
            return limits.pressureFloor.reset(), Limit::PressureFloor;
        case 1:
            return limits.pressureCeiling.reset(), Limit::PressureCeiling;
        case 2:
            return limits.topSpeed.reset(), Limit::TopSpeed;
        case 3:
            return c.machine.pump = {}, Limit::Pump;
        case 4:
            return c.machine.meter = {}, Limit::Meter;
        case 5:
            return c.nozzle.pressureMin.reset(), Limit::NozzleMinimum;
        case 6:
            return c.nozzle.pressureMax.reset(), Limit::NozzleMaximum;
        default:
            return c.nozzle.droplets.reset(), Limit::Droplets;
    }
}

TEST(WindowProperties, WhatIsDroppedIsNamedAndANozzleGapNeverCovers) {
    RandomPairings random(104);
    int covered = 0;
    for (int i = 0; i < 8 * kCases; ++i) {
        Case c = random.next();
        c.job.droplets = {DropletCategory::C, DropletCategory::M};
        covered += standingOf(c.window(), c.nozzle) == Standing::Covers;
        const Limit limit = dropped(c, i % 8);
        const auto w = c.window();
        EXPECT_EQ(std::count(w.notChecked.begin(), w.notChecked.end(), limit), 1) << i;
        if (i % 8 >= 5) {
            EXPECT_NE(standingOf(w, c.nozzle), Standing::Covers) << i;
        }
    }
    EXPECT_GT(covered, 100);
}

TEST(WindowProperties, AHeavierMixLowersTheCeilingsFlowAndSparesACentrifugalPump) {
    RandomPairings random(105);
    for (int i = 0; i < kCases; ++i) {
        Case c = random.next(true);
        c.machine.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
        const auto water = c.model().limits();
        const double sg = random.between(1.02, 1.4);
        c.job.specificGravity = Sourced<double>(sg);
        const auto heavy = c.model().limits();
        EXPECT_NEAR(*heavy.of(Limit::PressureCeiling) / *water.of(Limit::PressureCeiling),
                    1 / std::sqrt(sg), 1e-12)
            << i;
        EXPECT_NEAR(*heavy.of(Limit::Pump) / *water.of(Limit::Pump), 1.0, 1e-9) << i;
    }
}

TEST(WindowProperties, EveryPointKeepsItsFlowAndEachSideOfAPinIsTold) {
    RandomPairings random(106);
    int open = 0;
    for (int i = 0; i < kCases; ++i) {
        const auto model = random.next().model();
        const auto w = model.window();
        double low = 0;
        double high = HUGE_VAL;
        for (const auto& l : w.limits) {
            if (!l.pins) continue;
            (l.side == Side::Low ? low : high) =
                l.side == Side::Low ? std::max(low, l.speed.si()) : std::min(high, l.speed.si());
        }
        for (const double v : {0.5 * low, 0.999 * low, 1.001 * low, 0.999 * high, 1.001 * high}) {
            const auto p = model.at(Speed::fromSi(v));
            EXPECT_NEAR(p.rate * p.speed * model.width() / p.boomFlow, 1.0, 1e-9) << i;
            EXPECT_TRUE(std::isfinite(p.sensorPressure.si() + p.nozzlePressure.si())) << i;
            if (low * 1.01 > high) continue;
            ++open;
            const bool inside = v > low && v < high;
            EXPECT_EQ(std::abs(p.rateRatio - 1) < 1e-9, inside) << i << " at " << v;
        }
    }
    EXPECT_GT(open, kCases);
}

TEST(WindowProperties, ExtremeInputGivesFiniteNumbers) {
    RandomPairings random(107);
    const auto power = [&](double least, double most) {
        return std::pow(10.0, random.between(least, most));
    };
    int made = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.next(i % 2 == 0);
        c.nozzle.flow->value = power(-2, 2) * c.nozzle.flow->value;
        c.job.rate->value = power(-2, 2) * c.job.rate->value;
        c.job.specificGravity = Sourced<double>(random.between(0.7, 2));
        c.machine.losses.section.pressure->value = power(-4, 2) * bar(0.1);
        c.machine.losses.suction.pressure->value = power(-4, 2) * bar(0.1);
        c.machine.agitation.flow->value = power(-3, 1) * c.machine.agitation.flow->value;
        const auto model = WindowModel::make(c.machine, c.nozzle, c.job);
        if (!model) continue;
        ++made;
        const auto w = model->window();
        for (const auto& l : w.limits)
            EXPECT_TRUE(std::isfinite(l.flow.si()) && std::isfinite(l.speed.si())) << i;
        for (const auto& p : {w.atSlow, w.atUsual, w.atFast}) {
            EXPECT_TRUE(std::isfinite(p.boomFlow.si() + p.nozzlePressure.si() +
                                      p.sensorPressure.si() + p.rate.si() + p.rateRatio))
                << i;
        }
    }
    EXPECT_GT(made, 500);
}

}  // namespace
}  // namespace bw
