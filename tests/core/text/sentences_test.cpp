// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sentences.h"

#include <gtest/gtest.h>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Sentences words(const char* json) {
    Sentences s;
    EXPECT_TRUE(s.add(json));
    return s;
}

TEST(Sentences, FillsQuantitiesInTheReadersUnits) {
    const auto s = words(R"({"a": "from {low#} to {high}"})");
    const std::vector<Argument> arguments{{"low", anyQuantity(kmh(6.9))},
                                          {"high", anyQuantity(kmh(13.3))}};
    EXPECT_EQ(s.fill("a", arguments, {UnitSystem::Metric, '.'}), "from 6.9 to 13.3 km/h");
    EXPECT_EQ(s.fill("a", arguments, {UnitSystem::Metric, ','}), "from 6,9 to 13,3 km/h");
    EXPECT_EQ(s.fill("a", arguments, {UnitSystem::Us, '.'}), "from 4.3 to 8.3 mph");
}

TEST(Sentences, ArgumentsOfOneNameMakeAList) {
    const auto s = words(R"({"a": "{x|or}.", "b": "{x}", "list.or": "or", "word": "pump"})");
    const Argument c{"x", std::string("C")};
    const Argument m{"x", std::string("M")};
    const Argument word{"x", CodeText{"word"}};
    EXPECT_EQ(s.fill("a", {c}, {}), "C.");
    EXPECT_EQ(s.fill("a", {c, m}, {}), "C or M.");
    EXPECT_EQ(s.fill("a", {c, m, word}, {}), "C, M or pump.");
    EXPECT_EQ(s.fill("b", {c, m}, {}), "C, M");
}

TEST(Sentences, AnUnknownCodeOrGapStaysVisible) {
    const auto s = words(R"({"a": "{gone#} {gone|or} {"})");
    EXPECT_EQ(s.fill("a", {}, {}), "{gone#} {gone|or} {");
    EXPECT_EQ(s.fill("b", {}, {}), "<b>");
}

}  // namespace
}  // namespace bw
