// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/nozzle_sizes.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace bw {
namespace {

/// The code rule of ISO 10625 (from memory): digits / 10 are US gal/min at 40 psi, "015" is 0.15.
double gallonsOfCode(const std::string& code) {
    return std::stod(code) * std::pow(10.0, -(static_cast<double>(code.size()) - 1));
}

TEST(NozzleSizes, CodesAreTheirFlowInTenthsOfAGallon) {
    ASSERT_EQ(nozzleSizes().size(), 16U);
    for (const auto& size : nozzleSizes()) {
        EXPECT_NEAR(in(size.us, Unit::GallonUsPerMinute), gallonsOfCode(size.code), 1e-12)
            << size.code;
    }
}

TEST(NozzleSizes, TheTwoRecordsOfASizeDifferByAboutOnePointThreePercent) {
    for (const auto& size : nozzleSizes()) {
        const double scaled = (size.us * std::sqrt(metricRating() / usRating())) / size.metric;
        // The three smallest are printed to one or two figures of L/min only.
        EXPECT_NEAR(scaled, 1 / 1.0133,
                    size.metric < make<Flow>(0.35, Unit::LitrePerMinute) ? 0.025 : 0.001)
            << size.code;
    }
}

TEST(NozzleSizes, EveryRowHasColourAndSource) {
    std::set<std::string> colours;
    for (const auto& size : nozzleSizes()) {
        EXPECT_FALSE(size.source.empty()) << size.code;
        EXPECT_TRUE(colours.insert(size.colour).second) << size.colour << " twice";
    }
}

TEST(NozzleSizes, FindsByCode) {
    const auto size = nozzleSize("04");
    ASSERT_TRUE(size.has_value());
    EXPECT_EQ(size->colour, "red");
    EXPECT_NEAR(in(size->metric, Unit::LitrePerMinute), 1.6, 1e-12);
    EXPECT_FALSE(nozzleSize("4").has_value());
    EXPECT_FALSE(nozzleSize("").has_value());
}

TEST(BuiltInNozzles, EachSizeHasAMetricAndAUsRecordAsPrinted) {
    ASSERT_EQ(builtInNozzles().size(), 2 * nozzleSizes().size());
    std::set<std::string> names;
    for (const auto& nozzle : builtInNozzles()) EXPECT_TRUE(names.insert(nozzle.name).second);
    const auto& metric =
        *std::find_if(builtInNozzles().begin(), builtInNozzles().end(),
                      [](const auto& n) { return n.name == "Size 04 (metric record)"; });
    const auto& us = *std::find_if(builtInNozzles().begin(), builtInNozzles().end(),
                                   [](const auto& n) { return n.name == "Size 04 (US record)"; });
    EXPECT_EQ(metric.flow->typed, "1.60 L/min");
    EXPECT_EQ(metric.at->typed, "3 bar");
    EXPECT_EQ(us.flow->typed, "0.40 gal/min");
    EXPECT_EQ(us.at->typed, "40 psi");
    EXPECT_NEAR(in(us.flow->value, Unit::GallonUsPerMinute), 0.4, 1e-12);
    EXPECT_NEAR(in(us.at->value, Unit::Psi), 40, 1e-12);
}

TEST(BuiltInNozzles, SayNothingOfRangeDropletsOrDrift) {
    for (const auto& nozzle : builtInNozzles()) {
        EXPECT_TRUE(nozzle.isBuiltIn);
        EXPECT_FALSE(nozzle.isDemo);
        EXPECT_FALSE(nozzle.acceptUnchecked);
        EXPECT_FALSE(nozzle.pressureMin || nozzle.pressureMax || nozzle.droplets || nozzle.drift);
        EXPECT_EQ(nozzle.flow->origin, Origin::Handbook);
        EXPECT_FALSE(nozzle.notes.empty());
    }
}

}  // namespace
}  // namespace bw
