// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/machine_fields.h"

#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using build::bar;

TEST(MachineFields, KnowsEveryKeyAndItsKind) {
    const Machine machine;
    int fields = 0;
    visitFields(machine, [&](std::string_view key, const auto&) {
        ++fields;
        EXPECT_TRUE(fieldView(machine, key).has_value()) << key;
        EXPECT_FALSE(fieldView(machine, key)->isKnown) << key;
    });
    EXPECT_GT(fields, 50);
    EXPECT_FALSE(fieldView(machine, "nonsense").has_value());
    EXPECT_EQ(fieldView(machine, "spacing")->dimension, Dimension::Length);
    EXPECT_EQ(fieldView(machine, "body_positions")->kind, FieldKind::WholeNumber);
    EXPECT_EQ(fieldView(machine, "sections")->kind, FieldKind::Sections);
    EXPECT_EQ(fieldView(machine, "pump.curve")->kind, FieldKind::Curve);
    EXPECT_EQ(fieldView(machine, "restrictor.fitted")->choices,
              (std::vector<std::string>{"yes", "no"}));
    EXPECT_EQ(fieldView(machine, "senses")->choices,
              (std::vector<std::string>{"flow", "pressure", "both", "nothing"}));
}

TEST(MachineFields, SetsWhatFitsAndRefusesTheRest) {
    Machine m;
    EXPECT_TRUE(setField(m, "limits.pressure_floor", anyQuantity(bar(1.6)), "1.6 bar"));
    EXPECT_EQ(m.limits.pressureFloor->value, bar(1.6));
    EXPECT_EQ(m.limits.pressureFloor->typed, "1.6 bar");
    EXPECT_EQ(m.limits.pressureFloor->origin, Origin::Handbook);
    EXPECT_FALSE(setField(m, "limits.pressure_floor", anyQuantity(build::lpm(3))));
    EXPECT_FALSE(setField(m, "senses", anyQuantity(bar(1))));
    EXPECT_TRUE(setField(m, "senses", "both"));
    EXPECT_EQ(m.senses->value, Senses::Both);
    EXPECT_FALSE(setField(m, "senses", "smell"));
    EXPECT_EQ(m.senses->value, Senses::Both);
    EXPECT_TRUE(setField(m, "restrictor.fitted", "yes"));
    EXPECT_TRUE(m.restrictor.fitted->value);
    EXPECT_FALSE(setField(m, "spacing", "wide"));
}

TEST(MachineFields, FeedsAreNozzleNumbers) {
    Machine m;
    EXPECT_EQ(fieldView(m, "boom_pipe.feeds")->kind, FieldKind::NozzleNumbers);
    EXPECT_EQ(fieldView(m, "boom_pipe.bore")->dimension, Dimension::Length);
    setFeeds(m, {15, 46});
    EXPECT_TRUE(fieldView(m, "boom_pipe.feeds")->isKnown);
    EXPECT_EQ(m.boomPipe.feeds->value, (std::vector<int>{15, 46}));
    EXPECT_TRUE(setField(m, "boom_pipe.ring", "yes"));
    EXPECT_TRUE(m.boomPipe.ring->value);
    EXPECT_TRUE(clearField(m, "boom_pipe.feeds"));
    EXPECT_FALSE(m.boomPipe.feeds.has_value());
}

TEST(MachineFields, PositionsAreWhole) {
    Machine m;
    EXPECT_FALSE(setField(m, "body_positions", AnyQuantity{Dimension::None, 2.5}));
    EXPECT_FALSE(m.bodyPositions.has_value());
    EXPECT_TRUE(setField(m, "body_positions", AnyQuantity{Dimension::None, 4}));
    EXPECT_EQ(m.bodyPositions->value, 4);
}

TEST(MachineFields, ANewValueIsNeitherAssumedNorMeasured) {
    Machine m;
    setField(m, "limits.pressure_floor", anyQuantity(bar(2)));
    setFieldOrigin(m, "limits.pressure_floor", Origin::Assumed);
    setFieldRange(m, "limits.pressure_floor", anyQuantity(bar(1)), anyQuantity(bar(3)));
    EXPECT_EQ(fieldView(m, "limits.pressure_floor")->to, anyQuantity(bar(3)));
    setField(m, "limits.pressure_floor", anyQuantity(bar(1.5)));
    EXPECT_EQ(m.limits.pressureFloor->origin, Origin::Handbook);
    EXPECT_FALSE(m.limits.pressureFloor->from.has_value());
    setFieldOrigin(m, "limits.pressure_floor", Origin::Measured, "2026-03-12");
    setField(m, "limits.pressure_floor", anyQuantity(bar(1.5)), "1500 mbar");
    EXPECT_EQ(m.limits.pressureFloor->origin, Origin::Measured) << "the same value, written anew";
    EXPECT_EQ(m.limits.pressureFloor->date, "2026-03-12");
    setField(m, "limits.pressure_floor", anyQuantity(bar(1.6)));
    EXPECT_EQ(m.limits.pressureFloor->origin, Origin::Handbook);
    EXPECT_EQ(m.limits.pressureFloor->date, "");
}

TEST(MachineFields, OriginGoesWithADateOrARange) {
    Machine m = build::machine();
    EXPECT_TRUE(setFieldOrigin(m, "spacing", Origin::Measured, "2026-03-12"));
    EXPECT_EQ(fieldView(m, "spacing")->date, "2026-03-12");
    EXPECT_TRUE(setFieldOrigin(m, "spacing", Origin::Handbook, "2026-03-12"));
    EXPECT_EQ(fieldView(m, "spacing")->date, "");
    EXPECT_FALSE(setFieldOrigin(m, "tank", Origin::Measured, "2026-03-12"));
    EXPECT_TRUE(clearField(m, "spacing"));
    EXPECT_FALSE(m.spacing.has_value());
}

TEST(MachineFields, CountsOrigins) {
    Machine m = build::machine();
    setFieldOrigin(m, "spacing", Origin::Measured, "2026-03-12");
    setField(m, "senses", "flow");
    setFieldOrigin(m, "senses", Origin::Assumed);
    EXPECT_EQ(originCounts(m), (OriginCounts{1, 1, 1}));
}

TEST(MachineFields, AsksTenQuestions) {
    Machine m;
    EXPECT_EQ(tenQuestions(m).size(), 10U);
    for (const auto& question : tenQuestions(m)) {
        EXPECT_EQ(question.state, QuestionState::Open);
        for (const auto& key : question.keys)
            EXPECT_TRUE(key == "sets_aboard" || fieldView(m, key).has_value()) << key;
    }
    m.limits.pressureFloor = Sourced<Pressure>(bar(1.6));
    EXPECT_EQ(tenQuestions(m).back().state, QuestionState::Open) << "the ceiling is missing";
    m.limits.pressureCeiling = Sourced<Pressure>(bar(6), Origin::Assumed);
    EXPECT_EQ(tenQuestions(m).back().state, QuestionState::Assumed);
    setFieldOrigin(m, "limits.pressure_ceiling", Origin::Handbook);
    EXPECT_EQ(tenQuestions(m).back().state, QuestionState::Given);
    m.setsAboard.push_back({1, "Size 03 (metric record)"});
    EXPECT_EQ(tenQuestions(m)[4].state, QuestionState::Given);
}

}  // namespace
}  // namespace bw
