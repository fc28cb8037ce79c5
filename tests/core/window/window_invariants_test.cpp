// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for every pairing, pulsed or not, over one rate or a range, by rating or table.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/window/verdict.h"
#include "core/window/window_curve.h"
#include "core/window/window_ends.h"
#include "tests/support/random_pairings.h"

namespace bw {
namespace {

using namespace build;

constexpr int kCases = 1500;
constexpr double kSlack = 1 + 1e-9;

double highOf(const WindowEnds& ends) {
    return ends.high ? ends.high->si() : HUGE_VAL;
}

bool isNarrower(const WindowEnds& now, const WindowEnds& before) {
    return now.low->si() * kSlack >= before.low->si() && highOf(now) <= highOf(before) * kSlack &&
           (now.empty || !before.empty);
}

TEST(WindowInvariants, ThePairingsAreOfAllKinds) {
    RandomPairings random(200);
    int pulsed = 0, ranged = 0, tables = 0, metered = 0, open = 0, covers = 0;
    int controls[3] = {0, 0, 0};
    for (int i = 0; i < kCases; ++i) {
        const Case c = random.wide();
        const auto w = c.window();
        pulsed += c.machine.pulsed.pressure.has_value();
        ranged += c.job.rateLeast.has_value();
        tables += c.nozzle.table.has_value();
        metered += c.machine.sectionReturns->value == SectionReturns::Metered;
        ++controls[static_cast<int>(c.machine.control->value)];
        open += !w.empty;
        covers += w.coversBand;
    }
    for (const int n :
         {pulsed, ranged, tables, metered, open, controls[0], controls[1], controls[2]})
        EXPECT_GT(n, kCases / 5);
    EXPECT_GT(covers, 100);
}

TEST(WindowInvariants, RaisingTheFloorNeverWidens) {
    RandomPairings random(201);
    int moved = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.wide();
        const auto before = endsOf(c.window());
        auto& floor = c.machine.limits.pressureFloor->value;
        floor = std::min(random.between(1.01, 3) * floor,
                         0.99 * c.machine.limits.pressureCeiling->value);
        const auto after = endsOf(c.window());
        EXPECT_TRUE(isNarrower(after, before)) << i;
        moved += after.low->si() > before.low->si() * kSlack;
        if (c.machine.pulsed.pressure) {
            EXPECT_EQ(after, before) << i;
        }
    }
    EXPECT_GT(moved, kCases / 10);
}

TEST(WindowInvariants, ALargerLossOnTheWayNeverRaisesTheTopSpeed) {
    RandomPairings random(202);
    int lowered = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.wide();
        const auto before = endsOf(c.window());
        Losses& l = c.machine.losses;
        Loss* const losses[] = {&l.suction, &l.line, &l.plumbing, &l.section};
        Loss& grown = *losses[i % 4];
        grown.pressure->value = random.between(1.2, 20) * grown.pressure->value;
        const auto after = endsOf(c.window());
        EXPECT_LE(highOf(after), highOf(before) * kSlack) << i;
        lowered += highOf(after) < highOf(before) * (1 - 1e-6);
    }
    EXPECT_GT(lowered, kCases / 20);
}

/// Takes a datum away; the limit that must then be named, or None where it does not bear on this
/// pairing.
struct Taken {
    const char* what;
    Limit (*take)(Case& c);
};

Limit supply(const Case& c, Limit limit) {
    return c.machine.pump.kind ? limit : Limit::None;
}
bool isPulsed(const Case& c) {
    return c.machine.pulsed.pressure.has_value();
}
bool isCentrifugal(const Case& c) {
    return c.machine.pump.kind->value == PumpKind::Centrifugal;
}
Control controlOf(const Case& c) {
    return c.machine.control->value;
}

const Taken kTaken[] = {
    {"floor",
     [](Case& c) {
         c.machine.limits.pressureFloor.reset();
         return isPulsed(c) ? Limit::None : Limit::PressureFloor;
     }},
    {"ceiling",
     [](Case& c) {
         c.machine.limits.pressureCeiling.reset();
         return isPulsed(c) ? Limit::None : Limit::PressureCeiling;
     }},
    {"top speed", [](Case& c) { return c.machine.limits.topSpeed.reset(), Limit::TopSpeed; }},
    {"pump", [](Case& c) { return c.machine.pump = {}, Limit::Pump; }},
    {"pump's law",
     [](Case& c) {
         c.machine.pump.curve.reset();
         if (!isCentrifugal(c)) c.machine.pump.ratedFlow.reset();
         return Limit::Pump;
     }},
    {"relief valve",
     [](Case& c) {
         // A throttle with a displacement pump is refused without one.
         if (isCentrifugal(c) || controlOf(c) == Control::Throttle) return Limit::None;
         return c.machine.pump.reliefPressure.reset(), Limit::ReliefValve;
     }},
    {"suction loss",
     [](Case& c) { return c.machine.losses.suction = {}, supply(c, Limit::Suction); }},
    {"how the rate is changed",
     [](Case& c) {
         if (isPulsed(c)) return Limit::None;
         return c.machine.control.reset(), Limit::ControlMinimum;
     }},
    {"least of the control",
     [](Case& c) {
         if (isPulsed(c)) return Limit::None;  // and what an open valve takes counts as a loss
         c.machine.pump.leastSpeed.reset();
         c.machine.controlValve = {};
         return Limit::ControlMinimum;
     }},
    {"hole",
     [](Case& c) {
         const Restrictor& r = c.machine.restrictor;
         const bool narrowed = r.fitted->value && r.position->value == RestrictorPosition::Narrowed;
         c.machine.restrictor.hole.reset();
         return narrowed ? Limit::Pump : Limit::None;
     }},
    {"meter's most",
     [](Case& c) {
         c.machine.meter.maximum.reset();
         return hasMeter(c.machine) ? Limit::Meter : Limit::None;
     }},
    {"meter's least",
     [](Case& c) {
         c.machine.meter.minimumFullBore.reset();
         c.machine.restrictor.changeoverFlow.reset();
         return hasMeter(c.machine) ? Limit::Meter : Limit::None;
     }},
    {"lowest pressure", [](Case& c) { return c.nozzle.pressureMin.reset(), Limit::NozzleMinimum; }},
    {"highest pressure",
     [](Case& c) { return c.nozzle.pressureMax.reset(), Limit::NozzleMaximum; }},
    {"droplet table",
     [](Case& c) {
         c.nozzle.droplets.reset();
         return c.job.droplets.empty() ? Limit::None : Limit::Droplets;
     }},
    {"drift table",
     [](Case& c) {
         c.nozzle.drift.reset();
         return c.job.driftPercent ? Limit::DriftClass : Limit::None;
     }},
};

bool has(const std::vector<Limit>& list, Limit limit) {
    return std::find(list.begin(), list.end(), limit) != list.end();
}

TEST(WindowInvariants, WhatIsUnknownNeverPasses) {
    RandomPairings random(203);
    int widened = 0;
    int cases = 0;
    for (int i = 0; i < kCases; ++i) {
        const Case whole = random.wide();
        const auto before = whole.window();
        for (int k = 0; k < 4; ++k) {
            const Taken& taken = kTaken[(i + 5 * k) % std::size(kTaken)];
            Case c = whole;
            const Limit limit = taken.take(c);
            const auto after = c.window();
            ++cases;
            if (limit != Limit::None) {
                EXPECT_EQ(std::count(after.notChecked.begin(), after.notChecked.end(), limit), 1)
                    << i << " " << taken.what;
            }
            for (const Limit was : before.notChecked)
                EXPECT_TRUE(has(after.notChecked, was) || !c.machine.pump.kind)
                    << i << " " << taken.what;
            const bool nowCovers = standingOf(after, c.nozzle) == Standing::Covers &&
                                   standingOf(before, whole.nozzle) != Standing::Covers;
            const bool isTold = after.notChecked.size() > before.notChecked.size();
            EXPECT_TRUE(!nowCovers || isTold) << i << " " << taken.what;
            widened += nowCovers;
        }
    }
    EXPECT_GT(widened, kCases / 100);  // it does happen, and then it is told
    EXPECT_EQ(cases, 4 * kCases);
}

/// The innermost pinning limits, as speeds.
struct Pins {
    const SpeedLimit* low = nullptr;
    const SpeedLimit* high = nullptr;
};
Pins pinsOf(const SpeedWindow& w) {
    Pins pins;
    for (const auto& l : w.limits) {
        if (!l.pins) continue;
        if (l.side == Side::Low && (!pins.low || l.speed > pins.low->speed)) pins.low = &l;
        if (l.side == Side::High && (!pins.high || l.speed < pins.high->speed)) pins.high = &l;
    }
    return pins;
}

void expectOnRate(const WindowModel& model, double speed, int i) {
    const auto point = model.at(Speed::fromSi(speed));
    EXPECT_EQ(point.verdict, PointVerdict::OnRate) << i;
    EXPECT_NEAR(point.rateRatio, 1.0, 1e-12) << i;
    EXPECT_TRUE(point.past.empty()) << i;
}

void expectPinned(const WindowModel& model, const SpeedLimit& pin, double part, int i) {
    const auto point = model.at(part * pin.speed);
    EXPECT_NEAR(point.rateRatio * part, 1.0, 1e-12) << i;
    EXPECT_TRUE(has(point.past, pin.limit)) << i;
    EXPECT_EQ(point.verdict, part < 1 ? PointVerdict::StuckHigh : PointVerdict::StuckLow) << i;
}

TEST(WindowInvariants, InsideIsOnRateAndPastAPinTheRateIsThatOfTheFlowHeld) {
    RandomPairings random(204);
    int inside = 0, pinned = 0;
    for (int i = 0; i < kCases; ++i) {
        const Case c = random.wide();
        const auto model = c.model();
        const auto w = model.window();
        if (!w.empty && w.high.speed && w.high.speed->si() > 1.001 * w.low.speed->si()) {
            ++inside;
            if (w.low.speed->si() > 0) expectOnRate(model, 1.000001 * w.low.speed->si(), i);
            expectOnRate(model, 0.999999 * w.high.speed->si(), i);
        }
        const Pins pins = pinsOf(w);
        if (pins.low && pins.high && pins.low->speed > 0.999 * pins.high->speed) continue;
        ++pinned;
        for (const double part : {0.3, 0.999999}) {
            if (pins.low && pins.low->speed.si() > 0) expectPinned(model, *pins.low, part, i);
        }
        for (const double part : {1.000001, 2.5}) {
            if (pins.high) expectPinned(model, *pins.high, part, i);
        }
    }
    EXPECT_GT(inside, kCases / 3);
    EXPECT_GT(pinned, kCases / 2);
}

/// The same sprayer in another measure: every flow, pressure and length times its own factor.
Case scaled(Case c, double flow, double pressure, double speed) {
    const auto times = [](auto& known, double factor) {
        if (known) known->value = factor * known->value;
    };
    const auto size = [&](auto& f, auto& p) { times(f, flow), times(p, pressure); };
    Machine& m = c.machine;
    for (auto* loss : {&m.losses.suction, &m.losses.line, &m.losses.plumbing, &m.losses.section})
        size(loss->at, loss->pressure);
    size(m.pump.ratedFlow, m.pump.shutOffPressure);
    times(m.pump.reliefPressure, pressure);
    times(m.pump.suctionAvailable, pressure);
    for (auto& point : m.pump.curve->value) {
        point.flow = flow * point.flow;
        point.pressure = pressure * point.pressure;
    }
    size(m.controlValve.flow, m.controlValve.at);
    size(m.agitation.flow, m.agitation.at);
    size(m.meter.minimumFullBore, m.limits.pressureFloor);
    size(m.meter.maximum, m.limits.pressureCeiling);
    size(m.restrictor.changeoverFlow, m.checkValve.openingPressure);
    times(m.pulsed.pressure, pressure);
    times(m.restrictor.hole, std::sqrt(flow) / std::pow(pressure, 0.25));
    times(m.limits.topSpeed, speed);
    size(c.nozzle.flow, c.nozzle.at);
    times(c.nozzle.pressureMin, pressure);
    times(c.nozzle.pressureMax, pressure);
    if (c.nozzle.table) {
        for (auto& row : c.nozzle.table->value) row = {pressure * row.pressure, flow * row.flow};
    }
    for (auto& b : c.nozzle.droplets->value) b = {pressure * b.from, pressure * b.to, b.category};
    if (c.nozzle.drift) {
        for (auto& b : c.nozzle.drift->value) b = {pressure * b.from, pressure * b.to, b.percent};
    }
    for (auto* rate : {&c.job.rate, &c.job.rateLeast, &c.job.rateMost}) times(*rate, flow / speed);
    for (auto* v : {&c.job.slow, &c.job.usual, &c.job.fast}) times(*v, speed);
    return c;
}

void expectScaled(const SpeedWindow& now, const SpeedWindow& was, double factor, int i) {
    ASSERT_EQ(now.limits.size(), was.limits.size()) << i;
    for (std::size_t k = 0; k < was.limits.size(); ++k) {
        EXPECT_EQ(now.limits[k].limit, was.limits[k].limit) << i;
        if (was.limits[k].speed.si() <= 0) continue;
        EXPECT_NEAR(now.limits[k].speed / was.limits[k].speed, factor, 1e-8 * factor)
            << i << " " << choiceName(was.limits[k].limit);
    }
    EXPECT_EQ(now.empty, was.empty) << i;
    EXPECT_EQ(now.coversBand, was.coversBand) << i;
    EXPECT_EQ(now.notChecked, was.notChecked) << i;
    EXPECT_NEAR(now.atUsual.rateRatio, was.atUsual.rateRatio, 1e-8) << i;
    EXPECT_EQ(now.restrictor.has_value(), was.restrictor.has_value()) << i;
    if (was.restrictor) {
        EXPECT_EQ(now.restrictor->position, was.restrictor->position) << i;
        EXPECT_EQ(now.restrictor->band, was.restrictor->band) << i;
    }
}

TEST(WindowInvariants, ASprayerOfAnotherMeasureHasTheSameWindow) {
    RandomPairings random(205);
    for (int i = 0; i < kCases; ++i) {
        const Case c = random.wide();
        const double flow = i % 3 == 0 ? random.between(0.3, 4) : 1.0;
        const double pressure = i % 3 == 1 ? random.between(0.3, 4) : 1.0;
        const double speed = i % 3 == 2 ? random.between(0.3, 4) : 1.0;
        expectScaled(scaled(c, flow, pressure, speed).window(), c.window(), speed, i);
    }
}

TEST(WindowInvariants, ARangeOfRatesIsGoodForBothItsEnds) {
    RandomPairings random(206);
    int seen = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = random.wide();
        if (!c.job.rateLeast) continue;
        c.job.droplets.clear();  // which bands are used hangs on the usual rate
        c.job.driftPercent.reset();
        ++seen;
        const auto model = c.model();
        const auto w = model.window();
        Case least = c;
        least.job.rate = c.job.rateLeast;
        Case most = c;
        most.job.rate = c.job.rateMost;
        for (Case* one : {&least, &most}) one->job.rateLeast.reset(), one->job.rateMost.reset();
        const auto atLeast = least.model();
        const auto atMost = most.model();
        EXPECT_NEAR(w.allRates->low.speed->si(), atLeast.window().low.speed->si(), 1e-9) << i;
        EXPECT_NEAR(highOf(endsOf(w)), atMost.window().high.speed->si(), 1e-9) << i;
        EXPECT_TRUE(isNarrower(endsOf(w), {w.low.speed, w.high.speed, w.empty})) << i;
        for (const auto& point : rateBand(model, kmh(2), kmh(40), 9)) {
            EXPECT_NEAR(point.atLeast / atLeast.at(point.speed).sensorPressure, 1.0, 1e-9) << i;
            EXPECT_NEAR(point.atMost / atMost.at(point.speed).sensorPressure, 1.0, 1e-9) << i;
        }
    }
    EXPECT_GT(seen, kCases / 3);
}

TEST(WindowInvariants, SectionsOffSendLessPastTheMeterUnlessTheirFlowComesBack) {
    RandomPairings random(207);
    int metered = 0;
    for (int i = 0; i < kCases; ++i) {
        const Case c = random.wide();
        const auto w = c.window();
        const int all = nozzleCount(c.machine);
        const bool returns = c.machine.sectionReturns->value == SectionReturns::Metered;
        metered += returns;
        ASSERT_EQ(w.sectionsOff.size(), c.machine.sections->value.size()) << i;
        const auto& first = w.sectionsOff.front();
        bool wasUnder = false;
        for (const auto& row : w.sectionsOff) {
            const double share = returns ? 1.0 : static_cast<double>(row.nozzlesOn) / all;
            EXPECT_NEAR(row.flow / first.flow, share, 1e-12) << i;
            EXPECT_TRUE(!wasUnder || row.underMinimum.value()) << i;
            wasUnder = row.underMinimum.value_or(false);
        }
    }
    EXPECT_GT(metered, kCases / 3);
}

TEST(WindowInvariants, TheEndsAloneAreThoseOfTheWholeWindow) {
    RandomPairings random(208);
    for (int i = 0; i < kCases; ++i) {
        const Case c = random.wide();
        const auto ends = windowEnds(c.machine, c.nozzle, c.job).value();
        const auto whole = endsOf(c.window());
        EXPECT_EQ(ends.empty, whole.empty) << i;
        EXPECT_NEAR(ends.low->si(), whole.low->si(), 1e-12) << i;
        EXPECT_EQ(ends.high.has_value(), whole.high.has_value()) << i;
        EXPECT_NEAR(highOf(ends), highOf(whole), 1e-12) << i;
    }
}

}  // namespace
}  // namespace bw
