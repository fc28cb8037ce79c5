// SPDX-License-Identifier: GPL-3.0-or-later
// A check on a simulated machine gets its parameters back within the uncertainty that it states:
// twice the standard uncertainty is to hold the truth in 95 % of 1,000 tries (93 to 97.5 % for
// chance and for what is not a straight line). All machines are invented.
#include <gtest/gtest.h>

#include <random>

#include "core/hydraulics/circuit.h"
#include "core/yard/meter_check.h"
#include "core/yard/profile_edits.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using build::bar;
using build::lpm;

constexpr int kTries = 1000;

class Hand {
  public:
    explicit Hand(unsigned seed) : m_random(seed) {}
    template <class T>
    Measured<T> read(T truth, T error) {
        return {truth + error * m_normal(m_random), error};
    }

  private:
    std::mt19937 m_random;
    std::normal_distribution<double> m_normal;
};

/// Part of the tries in which `tryOnce` says that the truth was held.
template <class F>
double heldPart(F&& tryOnce) {
    Hand hand(20260314);
    int held = 0;
    for (int i = 0; i < kTries; ++i) held += tryOnce(hand) ? 1 : 0;
    return held / double(kTries);
}

template <class T>
bool holds(const Measured<T>& m, T truth) {
    return std::abs((m.value - truth) / m.uncertainty) <= 2;
}

void expectAsStated(double held) {
    EXPECT_GE(held, 0.93);
    EXPECT_LE(held, 0.975);
}

struct Boom {
    NozzleLaw law{lpm(1.6), bar(3)};
    NozzleLaw big{lpm(2.4), bar(3)};
    Machine machine = build::machine({24, 24, 24});
    Boom() {
        machine.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
        machine.pump.shutOffPressure = Sourced<Pressure>(bar(7.4));
        machine.pump.curve =
            Sourced<std::vector<CurvePoint>>(std::vector<CurvePoint>{{lpm(250), bar(5)}});
        machine.losses.plumbing = {Sourced<Pressure>(bar(0.4)), Sourced<Flow>(lpm(150))};
    }
    CircuitState full(const NozzleLaw& nozzles) const {
        const auto parts = circuitParts(machine, nozzles, 1.0, RestrictorPosition::FullBore);
        return Circuit(parts.value()).atControl(1.0);
    }
};

// The machine's own line, from two readings with the big nozzles, against the whole circuit with
// the small ones.
TEST(YardRecovery, PumpLineForeseesTheTopFlowOfAnotherSet) {
    const Boom boom;
    const CircuitState big = boom.full(boom.big);
    const CircuitState usual = boom.full(boom.law);
    ASSERT_NE(big.status, SolveStatus::NotReached);
    expectAsStated(heldPart([&](Hand& hand) {
        const auto line =
            pumpLine({hand.read(bar(7.4), bar(0.05)), hand.read(big.metered, big.metered * 0.01),
                      hand.read(big.sensor, bar(0.05))});
        return line && holds(topFlow(*line, 72, lpm(1.6), bar(3)), usual.sprayed);
    }));
}

/// What the check reads on a machine, without errors; and what the machine gives with its results.
void expectThePointComesBack(const Boom& boom) {
    const CircuitState read = boom.full(boom.big);
    const auto line = pumpLine(
        {{bar(7.4), bar(0.05)}, {read.metered, read.metered * 0.01}, {read.sensor, bar(0.05)}});
    ASSERT_TRUE(line.isOk());
    Boom after = boom;
    ASSERT_TRUE(applyEdits(after.machine, profileEdits(*line, after.machine), "2026-03-14"));
    const CircuitState again = after.full(boom.big);
    EXPECT_NEAR(again.sensor / read.sensor, 1, 1e-6);
    EXPECT_NEAR(again.metered / read.metered, 1, 1e-6);
    const double other = after.full(boom.law).metered / boom.full(boom.law).metered;
    // The line is a fit: what agitation takes changes a little with the pressure.
    EXPECT_NEAR(other, 1, 0.02) << "the line holds for other nozzles too";
}

TEST(YardRecovery, TheMachineWithItsLineGivesThePointThatWasRead) {
    Boom boom;
    boom.machine.losses.suction = {Sourced<Pressure>(bar(0.1)), Sourced<Flow>(lpm(150))};
    boom.machine.losses.line = {Sourced<Pressure>(bar(0.2)), Sourced<Flow>(lpm(150))};
    boom.machine.agitation = {Sourced<Flow>(lpm(40)), Sourced<Pressure>(bar(4))};
    expectThePointComesBack(boom);
}

// The throttle lies inside the readings too, and stays in the profile: it must not count twice.
TEST(YardRecovery, AThrottleCountsOnce) {
    Boom boom;
    boom.machine.control = Sourced<Control>(Control::Throttle);
    boom.machine.controlValve = {Sourced<Flow>(lpm(170)), Sourced<Pressure>(bar(1.2)), {}};
    ASSERT_LT(boom.full(boom.law).metered, Boom().full(boom.law).metered * 0.98);
    expectThePointComesBack(boom);
    // A valve said to be far smaller than the readings allow is not believed.
    const auto line = pumpLine({{bar(7.4), bar(0.05)}, {lpm(210), lpm(2)}, {bar(4.6), bar(0.05)}});
    boom.machine.controlValve.flow = Sourced<Flow>(lpm(60));
    ASSERT_TRUE(applyEdits(boom.machine, profileEdits(*line, boom.machine), "2026-03-14"));
    EXPECT_FALSE(boom.machine.controlValve.flow.has_value());
    EXPECT_EQ(boom.machine.pump.curve->value.at(0).pressure, bar(4.6));
}

TEST(YardRecovery, NozzleLossGivesItsConstantBack) {
    const double k = bar(0.225).si() / std::pow(lpm(130).si(), 2);
    const auto lossAt = [&](Flow q) { return bar(0.5) + Pressure::fromSi(k * q.si() * q.si()); };
    expectAsStated(heldPart([&](Hand& hand) {
        const auto loss =
            nozzleLoss({hand.read(lpm(80), lpm(0.8)), hand.read(lossAt(lpm(80)), bar(0.01)),
                        hand.read(lpm(130), lpm(1.3)), hand.read(lossAt(lpm(130)), bar(0.01))});
        return loss && holds(loss->constant, bar(0.5));
    }));
}

TEST(YardRecovery, MeterFactorComesBack) {
    const Volume tank = make<Volume>(300, Unit::Litre);
    expectAsStated(heldPart([&](Hand& hand) {
        const auto check =
            meterCheck({{hand.read(tank * 1.08, tank * 0.002), hand.read(tank, tank * 0.005)},
                        {hand.read(tank * 1.08, tank * 0.002), hand.read(tank, tank * 0.005)}},
                       700, PulseConvention::PulsesPer);
        return check && holds(*check->number, 756.0);
    }));
}

TEST(YardRecovery, SpeedAndAgitationComeBack) {
    expectAsStated(heldPart([](Hand& hand) {
        CourseReadings r;
        r.course = hand.read(Length::fromSi(100), Length::fromSi(0.1));
        r.times = {hand.read(Duration::fromSi(36), Duration::fromSi(0.3)),
                   hand.read(Duration::fromSi(35), Duration::fromSi(0.3))};
        const auto check = courseCheck(r);
        return check && holds(check->speed, Speed::fromSi(200 / 71.0));
    }));
    expectAsStated(heldPart([](Hand& hand) {
        const auto check =
            agitationFlow({hand.read(lpm(138), lpm(1.4)), hand.read(lpm(238), lpm(2.4)),
                           hand.read(bar(3), bar(0.05))});
        return check && holds(check->flow, lpm(100));
    }));
}

}  // namespace
}  // namespace bw
