// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/window_ends.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

/// The short way and the long way to the ends agree on thousands of pairings, empty ones and
/// ranges of rates among them.
TEST(WindowEnds, AreThoseOfTheWholeWindow) {
    std::mt19937 seed(7);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    int empty = 0;
    int open = 0;
    for (int i = 0; i < 4000; ++i) {
        Machine m = i % 2 ? selfPropelled100() : trailed28();
        if (part(seed) < 0.3) m.pump = {};
        if (part(seed) < 0.2) m.limits.topSpeed.reset();
        if (part(seed) < 0.1) m.pulsed.pressure = Sourced<Pressure>(bar(1 + 5 * part(seed)));
        const bool isBare = part(seed) < 0.1;
        if (isBare) m = machine();
        Nozzle n = isBare ? nozzle() : i % 3 ? lowDrift04() : airFan08();
        n.flow->value = (0.3 + 2 * part(seed)) * n.flow->value;
        Job j = job(lha(60 + 250 * part(seed)), kmh(6), kmh(9), kmh(6 + 10 * (0.4 + part(seed))));
        if (!isBare && part(seed) < 0.5) j.droplets = {DropletCategory::C};
        if (part(seed) < 0.3) j.rateMost = Sourced<AreaRate>(1.2 * j.rate->value);
        if (part(seed) < 0.3) j.specificGravity = Sourced<double>(1.28);
        const auto whole = speedWindow(m, n, j);
        const auto ends = windowEnds(m, n, j);
        ASSERT_EQ(whole.isOk(), ends.isOk());
        if (!ends) continue;
        EXPECT_EQ(*ends, endsOf(*whole)) << i;
        EXPECT_EQ(ends->holds(kmh(9)), whole->coversUsual) << i;
        empty += ends->empty;
        open += !ends->high;
    }
    EXPECT_GT(empty, 100);
    EXPECT_GT(open, 50);
}

TEST(WindowEnds, TellTheSameProblem) {
    Machine m = trailed28();
    m.spacing.reset();
    EXPECT_EQ(windowEnds(m, lowDrift03(), job()).problem().code,
              speedWindow(m, lowDrift03(), job()).problem().code);
}

}  // namespace
}  // namespace bw
