// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/circuit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Circuit circuitOf(const Machine& m, const Nozzle& n, double gravity = 1.0,
                  RestrictorPosition position = RestrictorPosition::FullBore) {
    return Circuit(circuitParts(m, nozzleLaw(n).value(), gravity, position).value());
}

double psiOf(Pressure p) {
    return in(p, Unit::Psi);
}
double gpmOf(Flow q) {
    return in(q, Unit::GallonUsPerMinute);
}

// Source: an independent prototype of the same equations on the invented machine, healthy at 17
// gal/ac and 13 mph with the 08: 44.6 gal/min, sensor 36, pump 45 psi, pump speed 74 %, suction 0.9
// psi, a nozzle 0.75 gal/min.
TEST(Circuit, AgreesWithThePrototypeAtAWorkingPoint) {
    const Circuit circuit = circuitOf(selfPropelled100(), airFan08());
    const Flow wish = gpa(17) * mph(13) * (60.0 * inches(20));
    const auto s = circuit.atFlow(wish);
    EXPECT_EQ(s.limitedBy, CircuitLimit::None);
    EXPECT_NEAR(gpmOf(s.sprayed), 44.6, 0.05);
    EXPECT_NEAR(psiOf(s.sensor), 36.4, 0.06);
    EXPECT_NEAR(psiOf(s.pumpOutlet), 45.2, 0.06);
    EXPECT_NEAR(gpmOf(s.pump), 58.7, 0.06);
    EXPECT_NEAR(*s.control, 0.74, 0.006);
    EXPECT_NEAR(psiOf(s.suctionLoss), 0.9, 0.06);
}

/// What the pump can feed meets what the boom needs just where the first of the pump's limits
/// stands, falls with flow, and shrinks with agitation and a narrowed restrictor.
TEST(Circuit, TheMostThatCanBeFedMeetsTheNeedAtTheLimit) {
    for (const Machine& m : {selfPropelled100(), trailed28()}) {
        const Circuit circuit = circuitOf(m, airFan08());
        Flow end = *circuit.mostByPump();
        for (const auto& other : {circuit.mostByRelief(), circuit.mostBySuction()}) {
            if (other) end = std::min(end, *other);
        }
        const Pressure fed = *circuit.mostSensorPressure(end);
        EXPECT_NEAR(fed / circuit.parts().boom.sensorAt(end), 1.0, 1e-6);
        Pressure last = *circuit.mostSensorPressure(Flow{});
        for (double part = 0.1; part < 1.6; part += 0.1) {
            const Pressure now = *circuit.mostSensorPressure(part * end);
            EXPECT_LE(now, last);
            last = now;
        }
        Machine stirred = m;
        stirred.agitation.flow->value = 2.0 * stirred.agitation.flow->value;
        EXPECT_LT(*circuitOf(stirred, airFan08()).mostSensorPressure(end), fed);
    }
    const Circuit narrowed =
        circuitOf(selfPropelled100(), airFan08(), 1.0, RestrictorPosition::Narrowed);
    EXPECT_LT(*narrowed.mostSensorPressure(gpm(40)),
              *circuitOf(selfPropelled100(), airFan08()).mostSensorPressure(gpm(40)));
    Machine pumpless = selfPropelled100();
    pumpless.pump = {};
    EXPECT_FALSE(circuitOf(pumpless, airFan08()).mostSensorPressure(gpm(40)));
}

// Same source: restrictor left narrowed on that job reaches 93 % and 98 psi at the pump.
TEST(Circuit, NarrowedRestrictorOnAHighFlowFallsShort) {
    const Circuit circuit =
        circuitOf(selfPropelled100(), airFan08(), 1.0, RestrictorPosition::Narrowed);
    const Flow wish = gpa(17) * mph(13) * (60.0 * inches(20));
    const auto s = circuit.atFlow(wish);
    EXPECT_EQ(s.limitedBy, CircuitLimit::Pump);
    EXPECT_NEAR(s.sprayed / wish, 0.93, 0.005);
    EXPECT_NEAR(psiOf(s.pumpOutlet), 98, 0.6);
    EXPECT_NEAR(psiOf(s.sensor), 31, 0.6);
}

// Same source: line strainer 92 % blocked 64 %, pump 106 psi; suction strainer 80 % blocked 65 %,
// vacuum 9 psi; pump worn 50 % 95 %; drive 35 % slow 88 %.
TEST(Circuit, AgreesWithThePrototypeUnderFaults) {
    const Flow wish = gpa(17) * mph(13) * (60.0 * inches(20));
    const CircuitParts healthy = circuitOf(selfPropelled100(), airFan08()).parts();
    CircuitParts line = healthy;
    line.line = line.line / (0.08 * 0.08);
    EXPECT_NEAR(Circuit(line).atFlow(wish).sprayed / wish, 0.64, 0.005);
    EXPECT_NEAR(psiOf(Circuit(line).atFlow(wish).pumpOutlet), 106, 0.6);
    CircuitParts suction = healthy;
    suction.suction = suction.suction / (0.2 * 0.2);
    EXPECT_NEAR(Circuit(suction).atFlow(wish).sprayed / wish, 0.65, 0.005);
    EXPECT_NEAR(psiOf(Circuit(suction).atFlow(wish).suctionLoss), 9.0, 0.05);
    EXPECT_EQ(Circuit(suction).atFlow(wish).limitedBy, CircuitLimit::Suction);
    CircuitParts worn = healthy;
    worn.pump->health = 0.5;
    EXPECT_NEAR(Circuit(worn).atFlow(wish).sprayed / wish, 0.955, 0.006);
    CircuitParts drive = healthy;
    drive.pump->topSpeed = 0.65;
    EXPECT_NEAR(Circuit(drive).atFlow(wish).sprayed / wish, 0.877, 0.006);
    EXPECT_NEAR(psiOf(Circuit(drive).atFlow(wish).pumpOutlet), 35, 0.6);
}

TEST(Circuit, PumpWithoutCurvePointsIsFlat) {
    EXPECT_EQ(fitPump(bar(7), {}).value().droop.si(), 0.0);
    EXPECT_EQ(fitPump(bar(7), {{lpm(100), bar(8)}}).problem().code, "pump_curve_rising");
    const auto fit = fitPump(psi(122), {{gpm(40), psi(112)}, {gpm(80), psi(83)}}).value();
    EXPECT_LT(psiOf(fit.largestMiss), 1.0);
}

TEST(Circuit, ThrottleOnADisplacementPumpNeedsARelief) {
    Machine m = trailed28();
    m.control = Sourced<Control>(Control::Throttle);
    m.pump.reliefPressure.reset();
    EXPECT_EQ(circuitParts(m, nozzleLaw(lowDrift03()).value(), 1.0, RestrictorPosition::FullBore)
                  .problem()
                  .code,
              "relief_missing_with_throttle");
}

/// Random plausible machines, one seed.
class Random {
  public:
    explicit Random(unsigned seed) : m_engine(seed) {}
    double between(double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(m_engine);
    }
    int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(m_engine); }

    CircuitParts parts(bool homogeneous) {
        std::vector<int> sections;
        for (int i = whole(2, 9); i > 0; --i) sections.push_back(whole(4, 14));
        Machine m = machine(sections);
        const double size =
            std::max(1.0, nozzleCount(m) * 1.6);  // L/min, about what the boom takes
        m.control = Sourced<Control>(static_cast<Control>(whole(0, 2)));
        m.pump.kind =
            Sourced<PumpKind>(whole(0, 1) ? PumpKind::Centrifugal : PumpKind::PositiveDisplacement);
        m.pump.shutOffPressure = Sourced<Pressure>(bar(between(5, 9)));
        m.pump.curve = Sourced<std::vector<CurvePoint>>({{lpm(size), bar(between(3, 5))}});
        m.pump.ratedFlow = Sourced<Flow>(lpm(size * between(1, 2.5)));
        m.pump.reliefPressure = Sourced<Pressure>(bar(between(6, 14)));
        m.controlValve = {Sourced<Flow>(lpm(size * between(0.8, 2))),
                          Sourced<Pressure>(bar(between(0.5, 2))),
                          {}};
        m.losses.suction = loss(size);
        m.losses.line = loss(size);
        m.losses.plumbing = loss(size);
        m.losses.section = loss(size / static_cast<double>(sections.size()));
        m.agitation = {Sourced<Flow>(lpm(size * between(0, 0.4))),
                       Sourced<Pressure>(bar(between(2, 6)))};
        Nozzle n = nozzle(lpm(between(0.8, 2.4)));
        if (!homogeneous) {
            n.exponent = Sourced<double>(between(0.44, 0.53));
            m.checkValve.openingPressure = Sourced<Pressure>(bar(between(0.1, 0.6)));
        }
        CircuitParts out =
            circuitParts(m, nozzleLaw(n).value(), between(0.9, 1.35), RestrictorPosition::FullBore)
                .value();
        if (whole(0, 1)) out.manifoldLeak = openingFor(lpm(size * between(0.01, 0.3)), bar(3));
        if (whole(0, 1)) out.pump->health = between(0.4, 1);
        return out;
    }

  private:
    Loss loss(double size) {
        return {Sourced<Pressure>(bar(between(0.02, 0.5))), Sourced<Flow>(lpm(size))};
    }
    std::mt19937 m_engine;
};

TEST(CircuitProperties, ClosedFormAndRootAgree) {
    Random random(11);
    double worst = 0.0;
    for (int i = 0; i < 3000; ++i) {
        const Circuit circuit(random.parts(true));
        const double u = random.between(0.05, 1);
        const auto closed = circuit.atControl(u);
        const auto root = circuit.atControlByRoot(u);
        ASSERT_EQ(closed.status, SolveStatus::Closed);
        ASSERT_EQ(root.status, SolveStatus::Root);
        worst = std::max(worst, std::abs(root.sprayed / closed.sprayed - 1));
        EXPECT_EQ(closed.limitedBy, root.limitedBy);
    }
    EXPECT_LT(worst, 1e-9);
}

TEST(CircuitProperties, EveryStateBalances) {
    Random random(12);
    for (int i = 0; i < 3000; ++i) {
        const Circuit circuit(random.parts(i % 2 == 0));
        const auto s = circuit.atControl(random.between(0, 1));
        const auto b = balance(circuit.parts(), s);
        EXPECT_LT(b.flowMiss, 1e-9) << i;
        EXPECT_LT(b.pressureMiss, 1e-9) << i;
    }
}

TEST(CircuitProperties, MoreControlNeverGivesLessAndAWishIsMet) {
    Random random(13);
    for (int i = 0; i < 1000; ++i) {
        const Circuit circuit(random.parts(i % 2 == 0));
        const Flow low = circuit.atControl(0.3).sprayed;
        const Flow high = circuit.atControl(0.8).sprayed;
        EXPECT_GE(high.si(), low.si() * (1 - 1e-12));
        const Flow least = circuit.least().value();
        const Flow most = circuit.atControl(1.0).sprayed;
        const Flow wish = least + random.between(0.02, 0.98) * (most - least);
        if (!(wish.si() > 0)) continue;
        const auto s = circuit.atFlow(wish);
        EXPECT_EQ(s.limitedBy == CircuitLimit::Pump || s.limitedBy == CircuitLimit::ControlMinimum,
                  false);
        EXPECT_NEAR(s.sprayed / wish, 1.0, 1e-6) << i;
    }
}

TEST(CircuitProperties, MostIsTheLeastOfTheParts) {
    Random random(14);
    for (int i = 0; i < 1000; ++i) {
        const Circuit circuit(random.parts(i % 2 == 0));
        double most = circuit.mostByPump().value().si();
        if (const auto q = circuit.mostByRelief()) most = std::min(most, q->si());
        if (const auto q = circuit.mostBySuction()) most = std::min(most, q->si());
        EXPECT_NEAR(circuit.atControl(1.0).sprayed.si() / most, 1.0, 1e-9) << i;
    }
}

TEST(CircuitProperties, DensityDropsOutOfACentrifugalWindow) {
    Random random(15);
    for (int i = 0; i < 200; ++i) {
        CircuitParts water = random.parts(true);
        if (water.pump->kind != PumpKind::Centrifugal) continue;
        water.pump->relief.reset();
        water.suction = {};
        CircuitParts heavy(BoomLine(water.boom.sections(), water.boom.law(), {}, 1.3));
        heavy.control = water.control, heavy.pump = water.pump, heavy.line = water.line,
        heavy.plumbing = water.plumbing;
        heavy.agitation = water.agitation, heavy.manifoldLeak = water.manifoldLeak,
        heavy.valve = water.valve;
        CircuitParts light = heavy;
        light.boom = BoomLine(water.boom.sections(), water.boom.law(), {}, 1.0);
        EXPECT_NEAR(*Circuit(heavy).mostByPump() / *Circuit(light).mostByPump(), 1.0, 1e-12);
    }
}

/// A pump whose pressure does not fall holds it whatever the by-pass takes: nothing to set.
TEST(Circuit, ABypassCannotSetTheFlowOfAFlatPump) {
    Machine m = selfPropelled100();
    m.control = Sourced<Control>(Control::Bypass);
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(30)), {}};
    m.pump.curve.reset();
    m.losses.suction = {};
    const Circuit circuit = circuitOf(m, airFan08());
    const Flow only = circuit.atControl(1).sprayed;
    EXPECT_NEAR(*circuit.least() / only, 1.0, 1e-12);
    const auto same = circuit.atFlow(only);
    EXPECT_EQ(*same.control, 1.0);
    EXPECT_NEAR(same.sprayed / only, 1.0, 1e-12);
    EXPECT_EQ(circuit.atFlow(0.5 * only).limitedBy, CircuitLimit::ControlMinimum);
    EXPECT_EQ(circuit.atFlow(2.0 * only).limitedBy, CircuitLimit::Pump);
}

/// Shut throttle, wide agitation, hard suction: the branch gets no more than the suction side can
/// give, and the pressure at the outlet is what drives that through.
TEST(Circuit, AShutThrottleLeavesTheSuctionSideItsLimit) {
    Machine m = selfPropelled100();
    m.control = Sourced<Control>(Control::Throttle);
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(5)), {}};
    m.losses.suction = {Sourced<Pressure>(psi(9)), Sourced<Flow>(gpm(10))};  // 10 gal/min at most
    const Circuit circuit = circuitOf(m, airFan08());
    const auto shut = circuit.atControl(0);
    EXPECT_NEAR(gpmOf(shut.pump), 10, 1e-9);
    EXPECT_NEAR(gpmOf(shut.agitation), 10, 1e-9);
    EXPECT_NEAR(psiOf(shut.suctionLoss), 9, 1e-9);
    EXPECT_NEAR(psiOf(shut.pumpOutlet), 45 * (10.0 / 14) * (10.0 / 14), 1e-9);
    EXPECT_EQ(shut.limitedBy, CircuitLimit::Suction);
    EXPECT_LT(balance(circuit.parts(), shut).flowMiss, 1e-9);
    // The nearly shut one is its neighbour.
    const auto nearly = circuit.atControl(1e-6);
    EXPECT_NEAR(nearly.pumpOutlet / shut.pumpOutlet, 1.0, 1e-4);
}

TEST(Circuit, AReliefValveTakesTheRestOfAShutInCentrifugalPump) {
    Machine m = selfPropelled100();
    m.control = Sourced<Control>(Control::Throttle);
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(5)), {}};
    m.pump.reliefPressure = Sourced<Pressure>(psi(100));
    const Circuit circuit = circuitOf(m, airFan08());
    const auto shut = circuit.atControl(0);
    EXPECT_EQ(shut.limitedBy, CircuitLimit::ReliefValve);
    EXPECT_NEAR(psiOf(shut.pumpOutlet), 100, 1e-9);
    const auto nearly = circuit.atControl(1e-6);
    EXPECT_NEAR(nearly.relief / shut.relief, 1.0, 1e-4);
    EXPECT_NEAR((shut.agitation + shut.relief) / shut.pump, 1.0, 1e-12);
}

TEST(Circuit, ABoomWithEverySectionShutPassesNothingWhateverItsLaw) {
    for (const double exponent : {0.5, 0.46}) {
        const NozzleLaw law(lpm(1.2), bar(3), exponent);
        const BoomLine shut({{8, 8, SquareLoss{}, false}, {9, 9, SquareLoss{}, false}}, law,
                            Pressure{}, 1.0);
        EXPECT_EQ(shut.flowAt(bar(3)).si(), 0.0);
        EXPECT_FALSE(shut.sensorAt(lpm(10)).isFinite()) << exponent;
    }
}

}  // namespace
}  // namespace bw
