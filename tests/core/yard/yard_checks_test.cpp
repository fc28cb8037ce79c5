// SPDX-License-Identifier: GPL-3.0-or-later
// Sums of the yard checks. Machines and readings are invented; the sums are worked by hand.
#include <gtest/gtest.h>

#include <set>

#include "core/model/machine_fields.h"
#include "core/text/sentences.h"
#include "core/yard/profile_edits.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using build::bar;
using build::kmh;
using build::lpm;

PumpLineReadings pumpReadings() {
    return {gaugeReading(bar(7.4)), flowReading(lpm(210)), gaugeReading(bar(4.6))};
}
NozzleLossReadings lossReadings() {
    return {flowReading(lpm(80)),
            {bar(0.12), bar(0.01)},
            flowReading(lpm(130)),
            {bar(0.26), bar(0.01)}};
}
Volume litres(double x) {
    return make<Volume>(x, Unit::Litre);
}
Measured<Duration> seconds(double x) {
    return watchReading(Duration::fromSi(x));
}

// By hand: k = (7.4 - 4.6) / 210² = 6.349e-5 bar per (L/min)²; R = 3 / (72·1.6)² = 2.2605e-4;
// Q = √(7.4 / 2.8954e-4) = 159.87 L/min; p = 7.4 - k·Q² = 5.777 bar; at 150 L/ha on 36 m
// v = 600·159.87 / (150·36) = 17.76 km/h.
TEST(YardChecks, PumpLineGivesTheTopFlowOfAnySet) {
    const auto line = pumpLine(pumpReadings());
    ASSERT_TRUE(line.isOk());
    const double inBarPerFlowSquared = line->k / 1e5 * std::pow(lpm(1).si(), 2);
    EXPECT_NEAR(inBarPerFlowSquared, 6.349e-5, 1e-8);
    const auto top = topFlow(*line, 72, lpm(1.6), bar(3));
    EXPECT_NEAR(in(top.value, Unit::LitrePerMinute), 159.87, 0.01);
    EXPECT_NEAR(in(pressureOn(*line, top.value), Unit::Bar), 5.777, 0.001);
    EXPECT_GT(top.uncertainty.si(), 0);
    EXPECT_LT(top.uncertainty / top.value, 0.02);
}

TEST(YardChecks, PumpLineRefusesWhatCannotBe) {
    auto readings = pumpReadings();
    readings.pressure.value = bar(7.4);
    EXPECT_EQ(pumpLine(readings).problem().code, "yard_pressure_rises");
    readings.pressure.value = bar(7.3);
    EXPECT_EQ(pumpLine(readings)->shown.warnings.at(0).code, "yard_drop_small");
    readings.flow.value = Flow{};
    EXPECT_EQ(pumpLine(readings).problem().where, "flow");
}

// By hand: k = 0.14 / (130² - 80²) = 1.3333e-5; c0 = 0.12 - k·80² = 0.03467 bar.
TEST(YardChecks, NozzleLossPartsConstantAndSquare) {
    const auto loss = nozzleLoss(lossReadings());
    ASSERT_TRUE(loss.isOk());
    EXPECT_NEAR(loss->k / 1e5 * std::pow(lpm(1).si(), 2), 1.3333e-5, 1e-9);
    EXPECT_NEAR(in(loss->constant.value, Unit::Bar), 0.034667, 1e-6);
    EXPECT_EQ(loss->kind, ShutOffKind::Diaphragm);
}

TEST(YardChecks, NozzleLossRefusesWhatCannotBe) {
    auto readings = lossReadings();
    readings.highFlow.value = lpm(80);
    EXPECT_EQ(nozzleLoss(readings).problem().code, "yard_flow_not_larger");
    readings = lossReadings();
    readings.highLoss.value = bar(0.12);
    EXPECT_EQ(nozzleLoss(readings).problem().code, "yard_loss_falls");
    readings = lossReadings();
    readings.lowLoss.value = bar(0.55);
    readings.highLoss.value = bar(0.7);
    EXPECT_EQ(nozzleLoss(readings)->kind, ShutOffKind::Ball);
    readings.lowLoss = {bar(0.2), bar(0.05)};
    readings.highLoss = {bar(0.3), bar(0.05)};
    EXPECT_EQ(nozzleLoss(readings)->kind, std::nullopt);
}

TEST(YardChecks, OtherSums) {
    const auto steady = steadyFlow({lpm(40), lpm(36), RestrictorPosition::Narrowed});
    EXPECT_EQ(steady->minimum, lpm(40));
    EXPECT_EQ(steadyFlow({lpm(36), lpm(36)}).problem().code, "yard_steady_not_larger");
    EXPECT_EQ(steadyFlow({lpm(36), lpm(20)})->shown.warnings.at(0).code, "yard_steps_wide");
    EXPECT_EQ(recovery({seconds(9), 2, std::nullopt}).problem().code, "yard_swing_missing");
    EXPECT_NEAR(recovery({seconds(9), 2, seconds(6)})->delay->value.si(), 1.5, 1e-12);
    EXPECT_FALSE(recovery({seconds(9), 0, std::nullopt})->delay);
    const auto agitation =
        agitationFlow({flowReading(lpm(138)), flowReading(lpm(238)), gaugeReading(bar(3))});
    EXPECT_NEAR(in(agitation->flow.value, Unit::LitrePerMinute), 100, 1e-9);
    // By hand: √(1.38² + 2.38²) = 2.751 L/min.
    EXPECT_NEAR(in(agitation->flow.uncertainty, Unit::LitrePerMinute), 2.751, 0.001);
    const auto falls =
        agitationFlow({flowReading(lpm(138)), flowReading(lpm(138)), gaugeReading(bar(3))});
    EXPECT_EQ(falls.problem().code, "yard_agitation_falls");
    // By hand: scale (4.2 - 2.1) / (4 - 2) = 1.05; at no pressure 2.1 - 1.05·2 = 0.
    const auto gauge =
        gaugeCheck({gaugeReading(bar(0)), gaugeReading(bar(2.1)), gaugeReading(bar(2)),
                    gaugeReading(bar(4.2)), gaugeReading(bar(4))});
    EXPECT_NEAR(gauge->scale.value, 1.05, 1e-12);
    EXPECT_NEAR(gauge->offset.value.si(), 0, 1e-6);
}

// By hand: 210 shown for 200: 1.05; 700 pulses/gal become 735, 5.4 mL/pulse become 5.143; -4.76 %.
TEST(YardChecks, MeterNumberBothConventions) {
    const std::vector<MeterRun> runs{{tankReading(litres(210)), tankReading(litres(200))}};
    const auto pulses = meterCheck(runs, 700, PulseConvention::PulsesPer);
    EXPECT_NEAR(pulses->number->value, 735, 1e-9);
    EXPECT_NEAR(pulses->rateError.value, -0.047619, 1e-6);
    const auto volume = meterCheck(runs, 5.4, PulseConvention::PerPulse);
    EXPECT_NEAR(volume->number->value, 5.142857, 1e-6);
    EXPECT_TRUE(pulses->shown.warnings.empty());
    EXPECT_EQ(meterCheck({}, 700, PulseConvention::PulsesPer).problem().code, "yard_no_runs");
}

TEST(YardChecks, MeterRunsThatDisagreeAreNamed) {
    std::vector<MeterRun> runs{{tankReading(litres(210)), tankReading(litres(200))},
                               {tankReading(litres(220)), tankReading(litres(200))}};
    EXPECT_EQ(meterCheck(runs, {}, PulseConvention::PulsesPer)->shown.warnings.at(0).code,
              "yard_runs_disagree");
    runs = {{tankReading(litres(105)), tankReading(litres(100))}};
    EXPECT_EQ(meterCheck(runs, {}, PulseConvention::PulsesPer)->shown.warnings.at(0).code,
              "yard_volume_small");
}

TEST(YardChecks, JugMethodCountsTheSample) {
    const std::vector<Measured<Flow>> caught{{lpm(1.0), lpm(0.01)}, {lpm(1.2), lpm(0.01)}};
    const auto check =
        jugMethod({lpm(84), lpm(0.1)}, caught, 72, std::nullopt, PulseConvention::PulsesPer);
    EXPECT_NEAR(check->shownOverTrue.value, 84 / (1.1 * 72), 1e-12);
    // Two of 72 that differ by 18 %: the mean is unsure by 9 %.
    EXPECT_GT(check->shownOverTrue.uncertainty, 0.08);
}

// By hand: 200 m in 36 + 36.4 s: 2.7624 m/s = 9.945 km/h.
TEST(YardChecks, CourseBothWays) {
    CourseReadings r;
    r.course = {Length::fromSi(100), Length::fromSi(0.1)};
    r.times = {seconds(36), seconds(36.4)};
    r.shown = Measured<Speed>{kmh(10.2), kmh(0.05)};
    r.number = 1000.0;
    const auto course = courseCheck(r);
    EXPECT_NEAR(in(course->speed.value, Unit::KilometrePerHour), 9.9448, 0.0001);
    EXPECT_NEAR(course->number->value, 1000 * 10.2 / 9.94475, 0.01);
    EXPECT_TRUE(course->shown.warnings.empty());
    r.times.pop_back();
    EXPECT_EQ(courseCheck(r)->shown.warnings.at(0).code, "yard_one_way");
}

TEST(ProfileEdits, AreMarkedMeasuredAndTakenAtOnce) {
    Machine machine = build::machine();
    machine.losses.line.pressure = Sourced<Pressure>(bar(0.2), Origin::Assumed);
    machine.losses.line.at = Sourced<Flow>(lpm(100), Origin::Assumed);
    ASSERT_TRUE(
        applyEdits(machine, profileEdits(*pumpLine(pumpReadings()), machine), "2026-03-14"));
    const auto view = fieldView(machine, "pump.shutoff_pressure");
    EXPECT_EQ(view->origin, Origin::Measured);
    EXPECT_EQ(view->date, "2026-03-14");
    EXPECT_EQ(machine.pump.curve->value.at(0).flow, lpm(210));
    EXPECT_FALSE(machine.losses.line.pressure);
    const Machine before = machine;
    EXPECT_FALSE(applyEdits(machine, {{"tank", std::string("blue")}}, "2026-03-14"));
    EXPECT_EQ(machine, before);
}

TEST(ProfileEdits, SectionLossIsThatOfOneSection) {
    Machine machine = build::machine({8, 8, 10});
    ASSERT_TRUE(applyEdits(machine, profileEdits(*nozzleLoss(lossReadings()), machine), ""));
    // By hand: k·130² = 0.22533 bar at 130·10/26 = 50 L/min.
    EXPECT_NEAR(in(machine.losses.section.pressure->value, Unit::Bar), 0.22533, 1e-5);
    EXPECT_NEAR(in(machine.losses.section.at->value, Unit::LitrePerMinute), 50, 1e-9);
}

TEST(ProfileEdits, DiaphragmPumpGetsWhatIsLeftAndWhatStirs) {
    Machine machine = build::machine();
    machine.agitation.flow = Sourced<Flow>(lpm(100));
    machine.agitation.at = Sourced<Pressure>(bar(4));
    const auto left = pumpLeft({flowReading(lpm(138)), gaugeReading(bar(1))});
    ASSERT_TRUE(applyEdits(machine, profileEdits(*left, machine), ""));
    EXPECT_NEAR(in(machine.pump.ratedFlow->value, Unit::LitrePerMinute), 188, 1e-9);
}

TEST(ProfileEdits, EveryKeyIsNamedByTheCheckThatFirmsItUp) {
    Machine machine;
    EXPECT_EQ(checkFor(machine, "losses.line.pressure"), "") << "the pump is not known";
    machine.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
    EXPECT_EQ(checkFor(machine, "losses.line.pressure"), "Y1");
    EXPECT_EQ(checkFor(machine, "agitation.flow"), "Y1") << "inside the pump line";
    machine.pump.kind = Sourced<PumpKind>(PumpKind::PositiveDisplacement);
    EXPECT_EQ(checkFor(machine, "losses.line.pressure"), "");
    EXPECT_EQ(checkFor(machine, "pump.rated_flow"), "Y1d");
    EXPECT_EQ(checkFor(machine, "agitation.flow"), "Y8");
    EXPECT_EQ(checkFor(machine, "losses.section.at"), "Y2");
    EXPECT_EQ(checkFor(machine, "restrictor.changeover_flow"), "Y3");
    EXPECT_EQ(checkFor(machine, "loop.dead_time"), "Y4");
    EXPECT_EQ(checkFor(machine, "meter.scale"), "Y5");
    EXPECT_EQ(checkFor(machine, "width"), "");
}

TEST(YardChecks, SumsHaveWordsWithoutGaps) {
    const Sentences words = Sentences::shipped();
    const auto line = pumpLine(pumpReadings());
    const auto loss = nozzleLoss(lossReadings());
    auto facts = line->shown.sum;
    facts.insert(facts.end(), loss->shown.sum.begin(), loss->shown.sum.end());
    for (const auto& fact : facts) {
        const std::string text = words.of(fact, {});
        EXPECT_EQ(text.find_first_of("<{"), std::string::npos) << text;
    }
}

}  // namespace
}  // namespace bw
