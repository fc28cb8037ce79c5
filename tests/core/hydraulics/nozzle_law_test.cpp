// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/nozzle_law.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Nozzle withTable(std::vector<FlowPoint> rows) {
    Nozzle n;
    n.table = Sourced<std::vector<FlowPoint>>(std::move(rows));
    return n;
}

// All rows count alike: two catches at one pressure pull the line to their geometric mean.
TEST(NozzleLawOfTable, APressureCaughtTwiceIsFittedAsTwoRows) {
    const double mean = std::sqrt(0.98 * 1.04);
    const auto law =
        nozzleLaw(withTable({{bar(1), lpm(0.98)}, {bar(1), lpm(1.04)}, {bar(4), lpm(2 * mean)}}));
    ASSERT_TRUE(law.isOk());
    EXPECT_NEAR(law->exponent(), 0.5, 1e-12);
    EXPECT_NEAR(toUnit(anyQuantity(law->flow(bar(2.25))), Unit::LitrePerMinute), 1.5 * mean, 1e-12);
    ASSERT_TRUE(law->fit().has_value());
    EXPECT_NEAR(law->fit()->largestMiss, 1.04 / mean - 1, 1e-12);
    EXPECT_EQ(law->fit()->from, bar(1));
    EXPECT_EQ(law->fit()->to, bar(4));
}

TEST(NozzleLawOfTable, OnePressureAloneGivesNoLaw) {
    const auto law = nozzleLaw(withTable({{bar(2), lpm(1)}, {bar(2), lpm(1.1)}}));
    ASSERT_FALSE(law.isOk());
    EXPECT_EQ(law.problem().code, "nozzle_table_too_short");
    EXPECT_EQ(law.problem().where, "table");
    EXPECT_FALSE(nozzleLaw(withTable({})).isOk());
}

TEST(NozzleLawOfTable, TheFirstRowThatDoesNotFitIsNamed) {
    const auto law = nozzleLaw(
        withTable({{bar(1), lpm(1)}, {bar(2), lpm(0.9)}, {bar(3), lpm(0.8)}, {bar(4), lpm(2)}}));
    ASSERT_FALSE(law.isOk());
    EXPECT_EQ(law.problem().code, "nozzle_table_not_rising");
    EXPECT_EQ(std::get<std::string>(law.problem().arguments.front().value), "2");
}

}  // namespace
}  // namespace bw
