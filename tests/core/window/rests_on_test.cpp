// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/rests_on.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/text/sentences.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Job flagLeaf() {
    Job j = job(lha(150), kmh(8), kmh(10), kmh(12));
    j.droplets = {DropletCategory::C, DropletCategory::M};
    return j;
}

const RestsOn* find(const std::vector<RestsOn>& items, const std::string& where) {
    const auto it =
        std::find_if(items.begin(), items.end(), [&](const auto& i) { return i.where == where; });
    return it == items.end() ? nullptr : &*it;
}

TEST(RestsOn, NamesTheValuesThatBindFirstAndLeavesOutWhatIsNotUsed) {
    const auto items = restsOn(trailed28(), lowDrift03(), flagLeaf());
    ASSERT_GE(items.size(), 3U);
    EXPECT_EQ(items[0].where, "nozzle.pressure_max");
    EXPECT_EQ(items[1].where, "nozzle.droplets");
    EXPECT_TRUE(items[0].binds && items[1].binds && !items[2].binds);
    EXPECT_NE(find(items, "machine.pump.rated_flow"), nullptr);
    EXPECT_EQ(find(items, "machine.loop.gain"), nullptr);
    EXPECT_EQ(find(items, "nozzle.drift"), nullptr);
    Job noWish = flagLeaf();
    noWish.droplets.clear();
    EXPECT_EQ(find(restsOn(trailed28(), lowDrift03(), noWish), "nozzle.droplets"), nullptr);
}

TEST(RestsOn, AnAssumedValueIsSolvedAtBothEndsOfItsRange) {
    Machine m = trailed28();
    m.limits.pressureFloor->origin = Origin::Assumed;
    m.limits.pressureFloor->from = bar(1.6);
    m.limits.pressureFloor->to = bar(2.5);
    const auto items = restsOn(m, lowDrift03(), flagLeaf());
    ASSERT_FALSE(items.empty());
    const RestsOn& first = items.front();
    EXPECT_EQ(first.where, "machine.limits.pressure_floor");
    ASSERT_TRUE(first.move);
    const auto at = [&](Pressure floor) {
        Machine other = trailed28();
        other.limits.pressureFloor->value = floor;
        return endsOf(speedWindow(other, lowDrift03(), flagLeaf()).value());
    };
    EXPECT_EQ(first.move->atFrom, at(bar(1.6)));
    EXPECT_EQ(first.move->atTo, at(bar(2.5)));
    EXPECT_GT(first.move->atTo.low->si(), first.move->atFrom.low->si());
    EXPECT_EQ(moveFact(*first.move).code, "rests.moves_low");
}

TEST(RestsOn, AnAssumedValueWithoutARangeHasNoMoveAndOneThatMovesNothingSaysSo) {
    Machine m = trailed28();
    m.meter.maximum->origin = Origin::Assumed;
    EXPECT_FALSE(find(restsOn(m, lowDrift03(), flagLeaf()), "machine.meter.maximum")->move);
    m.meter.maximum->from = lpm(180);
    m.meter.maximum->to = lpm(220);
    const auto items = restsOn(m, lowDrift03(), flagLeaf());
    const auto* item = find(items, "machine.meter.maximum");
    ASSERT_TRUE(item && item->move);
    EXPECT_EQ(moveFact(*item->move).code, "rests.moves_none");
    m.meter.maximum->from = lpm(30);  // under the low end's flow: no speed is left there
    const auto again = restsOn(m, lowDrift03(), flagLeaf());
    EXPECT_EQ(moveFact(*find(again, "machine.meter.maximum")->move).code, "rests.empty_one");
}

TEST(RestsOn, AWornSetMovesBothEndsUpByItsWear) {
    Machine m = machine();  // no section loss, no ball valve: flow limits go with the nozzle's flow
    m.limits.pressureFloor = Sourced<Pressure>(bar(1.5));
    m.limits.pressureCeiling = Sourced<Pressure>(bar(5));
    const auto items = restsOn(m, nozzle(), job());
    const auto plain = endsOf(speedWindow(m, nozzle(), job()).value());
    const auto* flow = find(items, "nozzle.flow");
    ASSERT_TRUE(flow && flow->worn);
    EXPECT_NEAR(flow->worn->low->si(), 1.1 * plain.low->si(), 1e-9);
    EXPECT_NEAR(flow->worn->high->si(), 1.1 * plain.high->si(), 1e-9);
    Nozzle caught = nozzle();
    caught.flow->origin = Origin::Measured;
    EXPECT_FALSE(find(restsOn(m, caught, job()), "nozzle.flow")->worn);
}

/// What the sums take where the profile says nothing is named as the program's, and binds like any.
TEST(RestsOn, ValuesOfTheProgramAreNamedWhereTheProfileSaysNothing) {
    Machine pulsed = selfPropelled100();
    pulsed.pulsed = {Sourced<Pressure>(psi(45)), {}, {}};
    pulsed.senses = Sourced<Senses>(Senses::Pressure);  // no meter whose lowest flow comes first
    const auto items = restsOn(pulsed, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    for (const char* key : {"machine.pulsed.duty_min", "machine.pulsed.duty_max"}) {
        const auto* item = find(items, key);
        ASSERT_TRUE(item) << key;
        EXPECT_TRUE(item->isProgram && item->origin == Origin::Assumed && !item->hasRange) << key;
    }
    EXPECT_DOUBLE_EQ(find(items, "machine.pulsed.duty_min")->value->si, 0.2);
    EXPECT_TRUE(find(items, "machine.pulsed.duty_min")->binds);
    pulsed.pulsed.dutyMin = Sourced<double>(0.2);
    const auto given = restsOn(pulsed, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    EXPECT_FALSE(find(given, "machine.pulsed.duty_min")->isProgram);

    Machine m = trailed28();
    EXPECT_FALSE(
        find(restsOn(m, lowDrift03(), flagLeaf()), "machine.pump.suction_available")->isProgram);
    m.pump.suctionAvailable.reset();
    const auto open = restsOn(m, lowDrift03(), flagLeaf());
    ASSERT_TRUE(find(open, "machine.pump.suction_available"));
    EXPECT_TRUE(find(open, "machine.pump.suction_available")->isProgram);
    m.losses.suction = {};
    EXPECT_FALSE(find(restsOn(m, lowDrift03(), flagLeaf()), "machine.pump.suction_available"))
        << "nothing is reckoned with it";

    Machine narrowed = selfPropelled100();
    narrowed.meter.minimumNarrowed.reset();
    narrowed.restrictor.dischargeCoefficient.reset();
    const auto by = restsOn(narrowed, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    ASSERT_TRUE(find(by, "machine.meter.minimum_narrowed"));
    EXPECT_DOUBLE_EQ(find(by, "machine.meter.minimum_narrowed")->value->si,
                     0.25 * narrowed.restrictor.changeoverFlow->value.si());
    ASSERT_TRUE(find(by, "machine.restrictor.discharge_coefficient"));
    EXPECT_DOUBLE_EQ(find(by, "machine.restrictor.discharge_coefficient")->value->si, 0.62);
}

TEST(RestsOn, EveryValueHasItsWords) {
    const auto words = Sentences::shipped();
    Machine pulsed = selfPropelled100();
    pulsed.pulsed = {Sourced<Pressure>(bar(3)), Sourced<double>(0.2), Sourced<double>(1.0)};
    Job rates = flagLeaf();
    rates.rateLeast = Sourced<AreaRate>(lha(120));
    rates.driftPercent = Sourced<double>(50);
    rates.specificGravity = Sourced<double>(1.28);
    Nozzle n = lowDrift03();
    n.drift = Sourced<std::vector<DriftBand>>({{bar(1), bar(6), 75}});
    n.exponent = Sourced<double>(0.49);
    int seen = 0;
    for (const auto& m : {trailed28(), selfPropelled100(), pulsed}) {
        for (const auto& item : restsOn(m, n, rates)) {
            EXPECT_TRUE(words.has("rests." + item.where)) << item.where;
            ++seen;
        }
    }
    EXPECT_GT(seen, 40);
}

/// Without a figure of its own the meter's lowest flow is the changeover flow: that value binds.
TEST(RestsOn, TheChangeoverFlowBindsWhereItStandsForTheMeter) {
    Machine m = selfPropelled100();
    m.meter.minimumFullBore.reset();
    m.restrictor.position->value = RestrictorPosition::FullBore;
    m.limits.pressureFloor->value = psi(5);
    Nozzle n = airFan08();
    n.pressureMin->value = bar(0.1);
    const Job j = job(gpa(17), mph(9), mph(11), mph(12));
    ASSERT_EQ(speedWindow(m, n, j)->low.limit, Limit::MeterMinimum);
    const auto items = restsOn(m, n, j);
    const auto* changeover = find(items, "machine.restrictor.changeover_flow");
    ASSERT_NE(changeover, nullptr);
    EXPECT_TRUE(changeover->binds);
    EXPECT_EQ(find(items, "machine.meter.minimum_narrowed"), nullptr);
}

TEST(RestsOn, NamesWhatALimitIsMadeOfAndNothingElse) {
    Machine m = selfPropelled100();  // centrifugal, with a relief valve fitted
    m.pump.reliefPressure = Sourced<Pressure>(psi(60));
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(5)), {}};
    m.control = Sourced<Control>(Control::PumpSpeed);
    Job j = job(gpa(17), mph(9), mph(11), mph(12));
    j.driftPercent = Sourced<double>(50);
    Nozzle n = airFan08();
    n.drift = Sourced<std::vector<DriftBand>>({{bar(1), bar(7), 75}});
    const auto items = restsOn(m, n, j);
    EXPECT_NE(find(items, "machine.pump.relief_pressure"), nullptr);
    EXPECT_NE(find(items, "machine.pump.least_speed"), nullptr);
    EXPECT_NE(find(items, "job.drift_percent"), nullptr);
    EXPECT_EQ(find(items, "machine.control_valve.flow"), nullptr);  // a pump's speed needs no valve
    m.control->value = Control::Bypass;
    const auto byPass = restsOn(m, n, j);
    EXPECT_NE(find(byPass, "machine.control_valve.flow"), nullptr);
    EXPECT_EQ(find(byPass, "machine.pump.least_speed"), nullptr);
    m.pulsed.pressure = Sourced<Pressure>(psi(40));
    EXPECT_EQ(find(restsOn(m, n, j), "machine.control_valve.flow"), nullptr);
}

}  // namespace
}  // namespace bw
