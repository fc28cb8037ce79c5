// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/field.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

// Derived by hand from the geometry of a circle: 36 m boom of 72 nozzles, radius 30 m, 150 L/ha.
// The last nozzles stand at 17.75 m: 150 / (1 − 17.75/30) = 367, 150 / (1 + 17.75/30) = 94.2.
TEST(Field, TurnAtThePole) {
    const auto [inner, outer] = turnEnds(72, metres(0.5), metres(30), kmh(12), lha(150));
    EXPECT_NEAR(in(*inner.rate, Unit::LitrePerHectare), 150 / (1 - 17.75 / 30), 1e-9);
    EXPECT_NEAR(in(*outer.rate, Unit::LitrePerHectare), 150 / (1 + 17.75 / 30), 1e-9);
    EXPECT_NEAR(in(outer.speed, Unit::KilometrePerHour), 12 * (1 + 17.75 / 30), 1e-9);
}

TEST(Field, InnerEndStandsStillOrBacksUp) {
    const auto still = turnEnds(72, metres(0.5), metres(17.75), kmh(12), lha(150)).first;
    EXPECT_TRUE(still.standsStill());
    EXPECT_FALSE(still.rate);
    const auto back = turnEnds(72, metres(0.5), metres(10), kmh(12), lha(150)).first;
    EXPECT_TRUE(back.backsUp());
    EXPECT_GT(*back.rate, AreaRate{});
}

TEST(Field, MeanOverTheSweptAreaStays) {
    // From R = W/2 on: liquid of each nozzle over the ground it sweeps, summed.
    for (const double radius : {18.0, 25.0, 60.0}) {
        double liquid = 0.0;
        double ground = 0.0;
        for (const auto& p : turnAlong(72, metres(0.5), metres(radius), kmh(12), lha(150))) {
            liquid += p.rate->si() * std::abs(p.speed.si());
            ground += std::abs(p.speed.si());
        }
        EXPECT_NEAR(liquid / ground / lha(150).si(), 1.0, 1e-9) << radius;
    }
}

// Derived by hand: 36 m on 10 % is 1.79 m of height from the middle to each end, 0.1755 bar: at 3
// bar ±2.9 % of flow, at 1.5 bar ±5.9 %.
TEST(Field, CrossSlope) {
    const auto m = machine({36, 36});
    const BoomLine line({36, 36}, NozzleLaw(lpm(1.2), bar(3)), {}, {}, 1.0);
    const auto spread = [&](Pressure p) {
        const auto points = slopeAlong(line, metres(0.5), line.flowAt(p), 10);
        double sum = 0.0;
        for (const auto& x : points) sum += x.flow.si();
        EXPECT_NEAR(sum / line.flowAt(p).si(), 1.0, 1e-9);
        return (points.front().flow - points.back().flow) /
               (points.front().flow + points.back().flow);
    };
    EXPECT_NEAR(spread(bar(3)), 0.029, 0.001);
    EXPECT_NEAR(spread(bar(1.5)), 0.058, 0.002);
    EXPECT_EQ(nozzleCount(m), 72);
}

}  // namespace
}  // namespace bw
