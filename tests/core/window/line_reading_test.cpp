// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/line_reading.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/text/sentences.h"
#include "core/window/advice.h"
#include "core/window/verdict.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;
using testing::HasSubstr;

WindowModel modelOf(const Machine& m, const Nozzle& n, const Job& j) {
    return WindowModel::make(m, n, j).value();
}
WindowModel selfPropelled(double gallons = 8, double fastMph = 15) {
    return modelOf(selfPropelled100(), lowDrift04(),
                   job(gpa(gallons), mph(10), mph(12), mph(fastMph)));
}

std::string said(const WindowModel& model, const LineReading& line, UnitSystem units) {
    static const Sentences words = Sentences::shipped();
    std::string out;
    for (const auto& fact : lineFacts(model, line)) out += words.of(fact, {units, '.'}) + " ";
    return out;
}

TEST(LineReading, PressuresAddUpFromThePumpToTheNozzle) {
    for (const auto& model : {selfPropelled(), modelOf(trailed28(), lowDrift03(), job())}) {
        for (const double kilometres : {9.0, 12.0, 16.0}) {
            const LineReading line = lineAt(model, kmh(kilometres));
            ASSERT_TRUE(line.pumpOutlet && line.restrictorLoss);
            const Pressure before = *line.pumpOutlet - line.valveLoss.value_or(Pressure{}) -
                                    line.lineLoss - line.plumbingLoss - *line.restrictorLoss;
            EXPECT_NEAR(before.si(), line.sensor.si(), 1e-6 * line.sensor.si());
            const Flow out = line.boom + *line.agitation + line.bypass.value_or(Flow{}) +
                             line.relief.value_or(Flow{});
            EXPECT_NEAR(out.si(), line.pump->si(), 1e-9 * line.pump->si());
            EXPECT_GT(line.sensor, line.nozzle);
        }
    }
}

TEST(LineReading, SaysWhereThePressureGoesAndHowTheControlStands) {
    const auto model = selfPropelled();
    const auto text = said(model, lineAt(model, mph(14)), UnitSystem::Us);
    EXPECT_THAT(text, HasSubstr("the narrowed restrictor valve takes most"));
    EXPECT_THAT(text, HasSubstr("The pump turns at "));
    const auto trailed = modelOf(trailed28(), lowDrift03(), job());
    EXPECT_THAT(said(trailed, lineAt(trailed, kmh(10)), UnitSystem::Metric),
                HasSubstr("goes back to the tank through the by-pass."));
    const auto hungry = selfPropelled(20, 24);
    EXPECT_THAT(said(hungry, lineAt(hungry, mph(24)), UnitSystem::Us),
                HasSubstr("The flow is held here by the pump."));
    EXPECT_THAT(said(trailed, lineAt(trailed, kmh(3)), UnitSystem::Metric),
                HasSubstr("The flow is held here by the pressure floor."));
}

/// The circuit, the verdict and the words at a speed agree where a by-pass has the whole pump flow
/// pass a suction that is too tight for it.
TEST(LineReading, ASuctionThatCutsThePumpIsSaidByCircuitVerdictAndPoint) {
    Machine m = trailed28();
    m.pump.ratedFlow = Sourced<Flow>(lpm(250));
    m.losses.suction = {Sourced<Pressure>(bar(0.1)), Sourced<Flow>(lpm(100))};
    m.controlValve.flow->value = lpm(400);
    const auto model = modelOf(m, lowDrift03(), job(lha(150), kmh(8), kmh(10), kmh(12)));
    const auto line = lineAt(model, kmh(10));
    EXPECT_NEAR(in(*line.pump, Unit::LitrePerMinute), 100 * std::sqrt(6.0), 0.01);
    EXPECT_NEAR(in(*line.suctionLoss, Unit::Bar), 0.6, 1e-6);
    const auto words = said(model, line, UnitSystem::Metric);
    EXPECT_THAT(words, HasSubstr("The suction loses all of the 0.6 bar"));
    EXPECT_THAT(words, HasSubstr("245 L/min of 250 L/min"));
    EXPECT_THAT(words, HasSubstr("the suction before it loses 0.6 bar"));
    const auto sentences = Sentences::shipped();
    const NumberStyle style;
    EXPECT_THAT(sentenceOf(verdictOf(model, model.window()), sentences, style),
                HasSubstr("245 L/min of 250 L/min"));
    EXPECT_EQ(pointFact(model, model.at(kmh(10))).code, "point.on_rate_cut");
    EXPECT_THAT(sentences.of(pointFact(model, model.at(kmh(10))), style), HasSubstr("245 L/min"));
    const auto wide = modelOf(trailed28(), lowDrift03(), job(lha(150), kmh(8), kmh(10), kmh(12)));
    EXPECT_EQ(pointFact(wide, wide.at(kmh(10))).code, "point.on_rate");
}

TEST(LineReading, SaysNothingOfWhatHangsOnAnUnknownPart) {
    Machine m = selfPropelled100();
    m.restrictor.hole.reset();
    const auto holeless = modelOf(m, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    const auto line = lineAt(holeless, mph(12));
    EXPECT_FALSE(line.pumpOutlet || line.restrictorLoss || line.agitation);
    EXPECT_THAT(said(holeless, line, UnitSystem::Us), HasSubstr("its hole is not known"));
    m.pump = {};
    const auto pumpless = modelOf(m, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    EXPECT_THAT(said(pumpless, lineAt(pumpless, mph(12)), UnitSystem::Us),
                HasSubstr("The pump is not known"));
}

/// The flat pump that bounds the window tells nothing of how fast it turns or what a valve takes.
TEST(LineReading, SaysNothingOfHowAPumpWithoutItsCurveIsSet) {
    Machine m = selfPropelled100();
    m.control = Sourced<Control>(Control::PumpSpeed);
    m.controlValve = {Sourced<Flow>(gpm(60)), Sourced<Pressure>(psi(5)), {}};
    m.pump.curve.reset();
    const Job j = job(gpa(8), mph(10), mph(12), mph(14));
    const auto bySpeed = modelOf(m, lowDrift04(), j);
    const auto line = lineAt(bySpeed, mph(12));
    EXPECT_FALSE(line.speed || line.control);
    EXPECT_TRUE(line.pumpOutlet && line.pump);  // that hangs on what lies behind the pump alone
    EXPECT_THAT(said(bySpeed, line, UnitSystem::Us), HasSubstr("falls with flow is not known"));
    m.control->value = Control::Throttle;
    const auto throttled = lineAt(modelOf(m, lowDrift04(), j), mph(12));
    EXPECT_FALSE(throttled.pumpOutlet || throttled.valveLoss || throttled.agitation);
    m.control->value = Control::Bypass;
    const auto byPassed = lineAt(modelOf(m, lowDrift04(), j), mph(12));
    EXPECT_FALSE(byPassed.bypass || byPassed.pump);
    EXPECT_TRUE(byPassed.pumpOutlet);
    m.pump.curve = Sourced(std::vector<CurvePoint>{{gpm(40), psi(112)}});
    EXPECT_TRUE(lineAt(modelOf(m, lowDrift04(), j), mph(12)).bypass);
}

TEST(LineReading, PulsedNozzlesAreWalkedBackFromTheSetPressure) {
    Machine m = selfPropelled100();
    m.pulsed.pressure = Sourced<Pressure>(psi(40));
    const auto model = modelOf(m, lowDrift04(), job(gpa(8), mph(10), mph(12), mph(14)));
    const auto slow = lineAt(model, mph(10));
    const auto fast = lineAt(model, mph(14));
    EXPECT_NEAR(in(slow.nozzle, Unit::Psi), 40, 1e-9);
    EXPECT_GT(*fast.pumpOutlet, *slow.pumpOutlet);  // more flow, more loss on the way
    EXPECT_FALSE(slow.control || slow.pump);
}

}  // namespace
}  // namespace bw
