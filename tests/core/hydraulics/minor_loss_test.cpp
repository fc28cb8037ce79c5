// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/minor_loss.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

const Pipe kPipe{.bore = metres(0.025)};

// Derived by hand: 60 L/min are 0.001 m³/s; over 4.9087 cm² 2.0372 m/s; 500·v² = 2075 Pa.
TEST(MinorLoss, OneVelocityHeadIsTheDynamicPressure) {
    EXPECT_NEAR(velocityPressure(kPipe, lpm(60)).si(), 2075.1, 0.1);
    EXPECT_NEAR((minorLoss(1.0, kPipe) * (lpm(60) * lpm(60))).si(), 2075.1, 0.1);
}

TEST(MinorLoss, FittingsAddUpAndGoWithTheSquareOfFlow) {
    const std::vector<Fitting> some{Fitting::ShortElbow, Fitting::ShortElbow, Fitting::TeeBranch};
    const auto one = runLoss(kPipe, metres(3), some, lpm(60));
    EXPECT_NEAR(one.fittings / velocityPressure(kPipe, lpm(60)), 0.9 + 0.9 + 1.8, 1e-12);
    const auto twice = runLoss(kPipe, metres(3), some, lpm(120));
    EXPECT_NEAR(twice.fittings / one.fittings, 4.0, 1e-12);
    EXPECT_LT(twice.friction / one.friction, 4.0);  // the friction factor falls
    EXPECT_EQ(runLoss(kPipe, metres(0), {}, lpm(60)).whole().si(), 0.0);
}

TEST(MinorLoss, TheEquivalentLengthLosesAsMuch) {
    for (const double flow : {1.0, 5.0, 60.0}) {  // laminar, between, turbulent
        const Length length = equivalentLength(2.5, kPipe, lpm(flow));
        const double asPipe = pipeLoss(kPipe, length, lpm(flow)).pressurePa;
        EXPECT_NEAR(asPipe / (2.5 * velocityPressure(kPipe, lpm(flow)).si()), 1.0, 1e-12) << flow;
    }
}

TEST(MinorLoss, EveryFittingHasACoefficientAndAName) {
    for (const auto& [fitting, name] : ChoiceNames<Fitting>::names) {
        EXPECT_GT(lossCoefficient(fitting), 0.0) << name;
        EXPECT_EQ(choiceFor<Fitting>(name), fitting);
    }
}

TEST(MinorLoss, RefusesWhatIsNoPipe) {
    const auto code = [](const Pipe& pipe, Length length, Flow flow) {
        const auto problem = runProblem(pipe, length, flow);
        return problem ? problem->code + " " + problem->where : std::string();
    };
    EXPECT_EQ(code(kPipe, metres(1), lpm(10)), "");
    EXPECT_EQ(code({.bore = metres(0)}, metres(1), lpm(10)), "run_not_positive bore");
    EXPECT_EQ(code(kPipe, metres(1), lpm(0)), "run_not_positive flow");
    EXPECT_EQ(code(kPipe, metres(-1), lpm(10)), "value_under_zero length");
    Pipe rough = kPipe;
    rough.roughness = metres(0.025);
    EXPECT_EQ(code(rough, metres(1), lpm(10)), "boom_too_rough roughness");
}

}  // namespace
}  // namespace bw
