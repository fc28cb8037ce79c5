// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/boom_network.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

std::vector<std::string> split(const std::string& line, char mark) {
    std::vector<std::string> out;
    std::stringstream in(line);
    for (std::string cell; std::getline(in, cell, mark);) out.push_back(cell);
    return out;
}

struct ReferenceBoom {
    BoomPipe boom;
    NozzleLaw law{Flow{}, Pressure{}};
    Pressure feed;
    std::vector<double> pressuresPa;
};

/// EPANET's answers: tests/reference/epanet/make_booms.mjs says how they came about.
std::vector<ReferenceBoom> referenceBooms() {
    std::ifstream file(BW_SOURCE_DIR "/tests/reference/epanet/booms.csv");
    std::vector<ReferenceBoom> out;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.starts_with("id,")) continue;
        const auto c = split(line, ',');
        ReferenceBoom r;
        r.boom.nozzles = std::stoi(c.at(1));
        r.boom.spacing = Length::fromSi(std::stod(c.at(2)));
        r.boom.pipe.bore = Length::fromSi(std::stod(c.at(3)));
        r.boom.pipe.roughness = Length::fromSi(std::stod(c.at(4)));
        r.boom.pipe.viscosity = KinematicViscosity::fromSi(std::stod(c.at(5)));
        for (const auto& f : split(c.at(6), ' ')) r.boom.feeds.push_back(std::stoi(f));
        r.boom.ring = c.at(7) == "1";
        r.law = NozzleLaw(Flow::fromSi(std::stod(c.at(8))), bar(3), std::stod(c.at(9)));
        r.feed = Pressure::fromSi(std::stod(c.at(10)));
        for (const auto& p : split(c.at(11), ' ')) r.pressuresPa.push_back(std::stod(p));
        out.push_back(std::move(r));
    }
    return out;
}

/// Largest relative miss in nozzle pressure against EPANET over the booms whose weakest nozzle
/// still sprays.
double worstMiss(const std::vector<ReferenceBoom>& booms, int& compared) {
    double worst = 0.0;
    for (const auto& r : booms) {
        const auto solved = boomEvenness(r.boom, r.law, r.feed);
        EXPECT_TRUE(solved.isOk())
            << (solved ? "" : solved.problem().code) << " boom of " << r.boom.nozzles << ", feed "
            << r.feed.si() << " Pa, last pressures " << r.pressuresPa.front() << " and "
            << r.pressuresPa.back();
        if (!solved) continue;
        EXPECT_LT(solved->residual, 1e-9);
        ++compared;
        for (std::size_t i = 0; i < r.pressuresPa.size(); ++i) {
            if (r.pressuresPa[i] < 1.0) continue;  // starved: nothing sprays there in either
            worst =
                std::max(worst, std::abs(solved->nozzles[i].pressure.si() / r.pressuresPa[i] - 1));
        }
    }
    return worst;
}

TEST(BoomNetwork, AgreesWithEpanetToATenthOfAPercentAtEveryNozzle) {
    int compared = 0;
    const double worst = worstMiss(referenceBooms(), compared);
    RecordProperty("worst_relative_pressure_miss", std::to_string(worst));
    std::printf("[   INFO   ] %d booms against EPANET, worst nozzle pressure miss %.2g\n", compared,
                worst);
    EXPECT_GE(compared, 200);
    EXPECT_LT(worst, 1e-3);
}

TEST(BoomNetwork, AWidePipeIsEven) {
    BoomPipe b{48, metres(0.5), {.bore = metres(0.2)}, {24}, false};
    const auto e = boomEvenness(b, NozzleLaw(lpm(1.2), bar(3)), bar(3)).value();
    EXPECT_LT(e.drop, 1e-5);
    EXPECT_LT(e.cv, 1e-5);
    EXPECT_NEAR(in(e.nozzles.front().flow, Unit::LitrePerMinute), 1.2, 1e-4);
}

TEST(BoomNetwork, ASecondFeedAndARingMakeItMoreEven) {
    const NozzleLaw law(lpm(1.6), bar(3));
    BoomPipe one{72, metres(0.5), {.bore = metres(0.02)}, {36}, false};
    BoomPipe two = one;
    two.feeds = {18, 54};
    BoomPipe ring{72, metres(0.5), {.bore = metres(0.02)}, {1}, true};
    BoomPipe end = ring;
    end.ring = false;
    const auto cv = [&](const BoomPipe& b) { return boomEvenness(b, law, bar(3)).value().cv; };
    EXPECT_LT(cv(two), cv(one));
    EXPECT_LT(cv(ring), cv(end));
}

TEST(BoomNetwork, RefusesWhatIsNoBoom) {
    const NozzleLaw law(lpm(1.6), bar(3));
    const BoomPipe good{8, metres(0.5), {.bore = metres(0.02)}, {1}, false};
    const auto code = [&](BoomPipe b, Pressure p) {
        return boomEvenness(b, law, p).problem().code;
    };
    BoomPipe b = good;
    b.feeds = {9};
    EXPECT_EQ(code(b, bar(3)), "boom_feed_outside");
    b.feeds = {};
    EXPECT_EQ(code(b, bar(3)), "boom_needs_feed");
    b = good;
    b.pipe.bore = {};
    EXPECT_EQ(code(b, bar(3)), "boom_needs_bore");
    EXPECT_EQ(code(good, Pressure{}), "boom_needs_pressure");
}

TEST(BoomNetwork, FrictionFactorIsSmoothAtBothEndsOfTheTransition) {
    for (const double end : {2000.0, 4000.0}) {
        const auto before = frictionFactor(end - 1e-6, 1e-4);
        const auto after = frictionFactor(end + 1e-6, 1e-4);
        EXPECT_NEAR(before.factor, after.factor, 1e-9);
        EXPECT_NEAR(before.slope, after.slope, 1e-9);
    }
    // The slope is that of the factor.
    for (const double re : {500.0, 2500.0, 3500.0, 2e4, 1e5}) {
        const double step = re * 1e-6;
        const double rise =
            (frictionFactor(re + step, 1e-4).factor - frictionFactor(re - step, 1e-4).factor) /
            (2 * step);
        EXPECT_NEAR(frictionFactor(re, 1e-4).slope, rise, std::abs(rise) * 1e-4);
    }
}

/// Two nozzles in a ring: both ways are as long, so each carries half, and in laminar flow each
/// loses half of what the single pipe would at the same flow.
TEST(BoomNetwork, TwoNozzlesMakeARing) {
    BoomPipe pipe;
    pipe.nozzles = 2;
    pipe.spacing = metres(5);
    pipe.pipe.bore = metres(0.02);
    pipe.feeds = {1};
    const NozzleLaw law(lpm(1.2), bar(3));
    const double open = boomEvenness(pipe, law, bar(3)).value().drop;
    pipe.ring = true;
    const auto ring = boomEvenness(pipe, law, bar(3)).value();
    EXPECT_NEAR(ring.drop / open, 0.5, 1e-3);
    EXPECT_LT(ring.residual, 1e-9);
}

}  // namespace
}  // namespace bw
