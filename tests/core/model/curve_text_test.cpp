// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/curve_text.h"

#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

std::string refusal(const char* text) {
    const auto curve = parseCurve(text, UnitSystem::Metric);
    return curve.isOk() ? "taken" : curve.problem().code;
}

TEST(CurveText, ReadsPointsInAnyUnits) {
    const auto us = parseCurve("40 gal/min at 112 psi; 80 at 90", UnitSystem::Us);
    ASSERT_TRUE(us.isOk());
    EXPECT_EQ(*us, (std::vector<CurvePoint>{{gpm(40), psi(112)}, {gpm(80), psi(90)}}));
    const auto metric = parseCurve("150 at 7.5", UnitSystem::Metric);
    ASSERT_TRUE(metric.isOk());
    EXPECT_EQ(*metric, (std::vector<CurvePoint>{{lpm(150), bar(7.5)}}));
    const auto comma = parseCurve("150 at 7,5", UnitSystem::Metric, DecimalMarks::OwnComma);
    ASSERT_TRUE(comma.isOk());
    EXPECT_EQ(*comma, *metric);
}

TEST(CurveText, RefusesWhatIsNoPoint) {
    EXPECT_EQ(refusal("150"), "curve_text_unread");
    EXPECT_EQ(refusal("150 at 7 at 6"), "curve_text_unread");
    EXPECT_EQ(refusal("150 at 7;"), "curve_text_unread");
    EXPECT_EQ(refusal("150 at"), "number_missing");
    EXPECT_EQ(refusal("much at 7"), "number_letters");
    EXPECT_EQ(refusal("150 psi at 7"), "unit_wrong_kind");
}

TEST(CurveText, WritesInTheReadersUnits) {
    const std::vector<CurvePoint> curve{{gpm(40), psi(112)}, {gpm(80), psi(90)}};
    EXPECT_EQ(curveText(curve, {UnitSystem::Us, '.'}), "40 at 112; 80 at 90");
    EXPECT_EQ(curveText({{lpm(150), bar(7.5)}}, {UnitSystem::Metric, ','}), "150 at 7,5");
    EXPECT_EQ(curveText({}, {}), "");
}

}  // namespace
}  // namespace bw
