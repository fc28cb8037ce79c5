// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/mesh_advice.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/text/sentences.h"
#include "core/window/live_checks.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Length micrometres(double x) {
    return make<Length>(x, Unit::Micrometre);
}
std::string words(const Fact& fact) {
    static const Sentences kSentences = Sentences::shipped();
    return kSentences.of(fact, {});
}

// Openings of test sieves: ASTM E11 / ISO 565, from memory.
TEST(MeshAdvice, OpeningsAndPassages) {
    EXPECT_NEAR(meshOpening(50).value().si(), 300e-6, 1e-12);
    EXPECT_NEAR(meshOpening(55).value().si(), 300e-6, 1e-12);  // none between: the coarser one
    EXPECT_FALSE(meshOpening(4));
    EXPECT_EQ(meshFor(micrometres(301)), 50);
    EXPECT_EQ(meshFor(micrometres(300)), 60);
    EXPECT_FALSE(meshFor(micrometres(10)));
}

// Sizes 015 and below 100 mesh, from 02 on 50: common practice, no source.
TEST(MeshAdvice, Sizes) {
    EXPECT_EQ(meshForSize("015"), 100);
    EXPECT_EQ(meshForSize("02"), 50);
    EXPECT_EQ(meshForSize("08"), 50);
    EXPECT_FALSE(meshForSize(""));
}

TEST(MeshAdvice, GoesByTheSize) {
    Nozzle n = nozzle();
    EXPECT_FALSE(meshAdvice(n));
    n.sizeCode = "015";
    EXPECT_EQ(meshAdvice(n)->code, "mesh.by_size");
}

TEST(MeshAdvice, APassageCountsWhereItAsksForFiner) {
    Nozzle n = nozzle();
    n.passage = Sourced<Length>(micrometres(500));
    EXPECT_EQ(meshAdvice(n)->code, "mesh.by_passage");
    EXPECT_EQ(words(*meshAdvice(n)),
              "Its smallest passage is 0.5 mm: the last strainer before it should be 40 mesh or "
              "finer (openings of test sieves, from memory; strainers differ).");
    n.sizeCode = "03";  // whose 50 mesh is finer than the passage asks for
    EXPECT_EQ(meshAdvice(n)->code, "mesh.by_size");
    n.passage = Sourced<Length>(micrometres(200));
    EXPECT_EQ(meshAdvice(n)->code, "mesh.by_passage");
    Machine m = machine();
    m.strainers.nozzleMesh = Sourced<double>(50);
    n.name = "Demo small";
    ASSERT_EQ(coarseStrainers(m, {n}).size(), 1U);
    EXPECT_EQ(words(coarseStrainers(m, {n})[0]),
              "Demo small has a passage of 0.2 mm and asks for 80 mesh or finer; the last strainer "
              "before it has 50 mesh (openings from memory).");
}

TEST(MeshAdvice, AStrainerTooCoarseForASetAboardIsAsked) {
    Machine m = machine();
    m.strainers.nozzleMesh = Sourced<double>(50);
    Nozzle n = nozzle();
    n.name = "Demo small";
    n.sizeCode = "015";
    EXPECT_EQ(coarseStrainers(m, {n}).size(), 1U);
    EXPECT_EQ(words(coarseStrainers(m, {n})[0]),
              "Demo small: for size 015, 100 mesh or finer is common practice; the last strainer "
              "before it has 50 mesh.");
    const auto asked = [&] {
        int count = 0;
        for (const auto& check : liveChecks(m, {}, {n}))
            count += check.what.code == "mesh.too_coarse_size";
        return count;
    };
    EXPECT_EQ(asked(), 0);  // not aboard
    m.setsAboard = {{1, "Demo small"}};
    EXPECT_EQ(asked(), 1);
    m.strainers.nozzleMesh = Sourced<double>(100);
    EXPECT_EQ(asked(), 0);
}

}  // namespace
}  // namespace bw
