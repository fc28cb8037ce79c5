// SPDX-License-Identifier: GPL-3.0-or-later
// Which yard check to do next. Machines, nozzles and ranges are invented.
#include "core/yard/firm_up.h"

#include <gtest/gtest.h>

#include <functional>
#include <random>

#include "core/model/machine_fields.h"
#include "core/yard/yard_book.h"
#include "core/yard/yard_sum.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

/// Marks a field as assumed, between parts of its value.
void assume(Machine& m, const char* key, double from, double to) {
    const auto view = fieldView(m, key);
    ASSERT_TRUE(view && view->isKnown) << key;
    ASSERT_TRUE(setFieldOrigin(m, key, Origin::Assumed));
    ASSERT_TRUE(setFieldRange(m, key, {view->dimension, view->value.si * from},
                              {view->dimension, view->value.si * to}));
}

/// A trailed machine whose pump limits the fast end: pump, agitation and section loss assumed.
Machine trailed(double pump = 0.15, double loss = 1.0, double agitation = 0.2) {
    Machine m = trailed28();
    m.senses = Sourced<Senses>(Senses::Flow);
    m.pump.ratedFlow = Sourced<Flow>(lpm(115));
    m.limits.pressureCeiling.reset();
    m.limits.topSpeed.reset();
    assume(m, "pump.rated_flow", 1 - pump, 1 + pump);
    assume(m, "losses.section.pressure", 1 - loss, 1 + loss);
    assume(m, "agitation.flow", 1 - agitation, 1 + agitation);
    return m;
}
Nozzle plain() {
    Nozzle n = nozzle(lpm(1.6));
    n.pressureMin = Sourced<Pressure>(bar(1));
    n.pressureMax = Sourced<Pressure>(bar(8));
    return n;
}

double sizeOf(const FirmUp& up) {
    return (*up.low.to - *up.low.from).si() + (*up.high.to - *up.high.from).si();
}
const FirmUp* named(const std::vector<FirmUp>& all, const char* check) {
    for (const auto& one : all) {
        if (one.check == check) return &one;
    }
    return nullptr;
}

TEST(FirmUp, NamesTheCheckOfTheWidestRange) {
    const auto all = firmUps(trailed(), plain(), job());
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].check, "Y1d");
    EXPECT_EQ(all[0].values, std::vector<std::string>{"machine.pump.rated_flow"});
    EXPECT_GT(all[0].shrinks, all[1].shrinks);
    EXPECT_EQ(firmUp(trailed(0.001, 1.0, 0.01), plain(), job())->check, "Y2");
    EXPECT_EQ(firmUp(trailed(0.001, 0.01, 0.5), plain(), job())->check, "Y8");
}

TEST(FirmUp, AWiderRangeMovesTheAnswerFurther) {
    double before = 0.0;
    for (const double width : {0.02, 0.05, 0.1, 0.2}) {
        const auto all = firmUps(trailed(width), plain(), job());
        const auto* up = named(all, "Y1d");
        ASSERT_NE(up, nullptr);
        EXPECT_GT(sizeOf(*up), before);
        before = sizeOf(*up);
    }
}

TEST(FirmUp, TheMovesAreTheWindowAtTheEndsOfTheRange) {
    const Machine m = trailed();
    const auto all = firmUps(m, plain(), job());
    const auto* up = named(all, "Y8");
    ASSERT_NE(up, nullptr);
    const auto highAt = [&](Flow agitation) {
        Machine other = m;
        other.agitation.flow->value = agitation;
        return *windowEnds(other, plain(), job())->high;
    };
    EXPECT_EQ(*up->high.to, highAt(*m.agitation.flow->from));
    EXPECT_EQ(*up->high.from, highAt(*m.agitation.flow->to));
}

TEST(FirmUp, WhatIsMeasuredLeavesTheList) {
    Machine m = trailed();
    const YardReadings readings{{"flow", {{anyQuantity(lpm(80))}, {}}},
                                {"pressure", {{anyQuantity(bar(4))}, {}}}};
    const auto answer = yardSum("Y1d", readings, m);
    ASSERT_TRUE(answer.isOk());
    ASSERT_TRUE(applyEdits(m, answer->edits, "2026-03-14"));
    const auto all = firmUps(m, plain(), job());
    EXPECT_EQ(named(all, "Y1d"), nullptr);
    EXPECT_NE(named(all, "Y2"), nullptr);
    for (const auto* key : {"losses.section.pressure", "agitation.flow"})
        setFieldOrigin(m, key, Origin::Measured, "2026-03-14");
    EXPECT_FALSE(firmUp(m, plain(), job()).has_value());
}

TEST(FirmUp, NothingWithoutAWindowOrWithoutRanges) {
    EXPECT_FALSE(firmUp(trailed28(), plain(), job()).has_value());
    EXPECT_FALSE(firmUp(Machine{}, plain(), job()).has_value());
    Machine m = trailed();
    for (const auto* key : {"pump.rated_flow", "losses.section.pressure", "agitation.flow"})
        setFieldOrigin(m, key, Origin::Handbook);
    assume(m, "limits.pressure_floor", 0.8, 1.2);
    EXPECT_FALSE(firmUp(m, plain(), job()).has_value()) << "no check tells a floor";
}

TEST(FirmUp, ANozzleThatIsAssumedAsksForACatch) {
    Nozzle n = plain();
    n.flow->origin = Origin::Assumed;
    n.flow->from = lpm(1.5);
    n.flow->to = lpm(1.8);
    Machine m = trailed(0.001, 0.01, 0.01);
    EXPECT_EQ(firmUp(m, n, job())->check, "Y7");
    EXPECT_EQ(checkForValue(m, "nozzle.flow"), "Y7");
    EXPECT_EQ(checkForValue(m, "job.rate"), "");
}

/// The whole range of the answer over three values of each range, by plain nested trial.
double rangeOf(const Machine& machine, const std::vector<std::string>& keys) {
    double low[2] = {1e9, -1e9};
    double high[2] = {1e9, -1e9};
    const std::function<void(Machine, std::size_t)> go = [&](Machine m, std::size_t i) {
        if (i == keys.size()) {
            const auto ends = windowEnds(m, plain(), job());
            ASSERT_TRUE(ends.isOk());
            low[0] = std::min(low[0], ends->low->si());
            low[1] = std::max(low[1], ends->low->si());
            high[0] = std::min(high[0], ends->high->si());
            high[1] = std::max(high[1], ends->high->si());
            return;
        }
        const auto view = *fieldView(machine, keys[i]);
        for (const auto value : {*view.from, view.value, *view.to}) {
            Machine next = m;
            setField(next, keys[i], value);
            go(next, i + 1);
        }
    };
    go(machine, 0);
    return low[1] - low[0] + high[1] - high[0];
}

// By brute force over the checks: do each (finding what is assumed), see what range is left.
TEST(FirmUp, NoOtherCheckShrinksTheAnswerMore) {
    std::mt19937 random(20260314);
    std::uniform_real_distribution<double> part(0.01, 0.5);
    const std::vector<std::string> keys{"pump.rated_flow", "losses.section.pressure",
                                        "agitation.flow", "check_valve.opening_pressure"};
    std::set<std::string> seen;
    for (int i = 0; i < 60; ++i) {
        Machine m = trailed(part(random) * 0.5, part(random), part(random));
        m.checkValve.kind = Sourced<ShutOffKind>(ShutOffKind::Ball);
        const double opening = part(random);
        assume(m, "check_valve.opening_pressure", 1 - opening, 1 + opening);
        const double whole = rangeOf(m, keys);
        double best = -1;
        std::string bestCheck;
        for (const auto& check : yardChecks()) {
            auto left = keys;
            std::erase_if(left, [&](const auto& k) { return check.firmsUp("machine." + k); });
            if (left.size() == keys.size() || !applies(check, m)) continue;
            const double shrinks = whole - rangeOf(m, left);
            if (shrinks > best + 1e-9) {
                best = shrinks;
                bestCheck = check.id;
            }
        }
        const auto up = firmUp(m, plain(), job());
        ASSERT_TRUE(up.has_value());
        EXPECT_NEAR(up->shrinks.si(), best, 1e-6 + 1e-3 * best);
        EXPECT_EQ(up->check, bestCheck);
        seen.insert(up->check);
    }
    EXPECT_GE(seen.size(), 2U) << "the choice must have varied";
}

TEST(FirmUp, AnEndWithoutALimitIsSaidSo) {
    Machine m = machine();
    m.limits.pressureFloor = Sourced<Pressure>(bar(1.5));
    m.losses.section = {Sourced<Pressure>(bar(0.15)), Sourced<Flow>(lpm(9.6))};
    assume(m, "losses.section.pressure", 0, 2);
    const auto up = firmUp(m, nozzle(), job());
    ASSERT_TRUE(up.has_value());
    EXPECT_EQ(up->check, "Y2");
    EXPECT_FALSE(up->high.from || up->high.to);
    EXPECT_LT(*up->low.from, *up->low.to);
}

}  // namespace
}  // namespace bw
