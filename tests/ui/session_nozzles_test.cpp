// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>

#include "core/store/demo_file.h"
#include "ui/undo/farm_session.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

TEST(SessionNozzles, ManyReplacedAndAddedAreOneStep) {
    auto file = demoFarmFileInMemory();
    ASSERT_TRUE(file.isOk());
    FarmSession session(std::move(file).value());
    const std::string old = "Demo low-drift fan 04";
    const auto all = session.season().nozzles;
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const auto& stored) { return stored.nozzle.name == old; });
    ASSERT_NE(found, all.end());
    Nozzle changed = found->nozzle, fresh;
    changed.name = "a name that a replaced one does not take";
    changed.price = Sourced<double>(7.5);
    fresh.name = "fresh";
    ASSERT_TRUE(session.takeNozzles({{found->id, changed}, {0, fresh}}, u"import"_s).isOk());
    EXPECT_EQ(session.undoStack().count(), 1);
    EXPECT_EQ(session.season().nozzles.size(), all.size() + 1);
    EXPECT_EQ(session.nozzle(found->id)->name, old);
    EXPECT_EQ(session.nozzle(found->id)->price, Sourced<double>(7.5));
    EXPECT_TRUE(session.nozzleNamed("fresh"));
    session.undoStack().undo();
    EXPECT_EQ(session.season().nozzles, all);
    const auto stored = session.file().read();
    ASSERT_TRUE(stored.isOk());
    EXPECT_EQ(stored->season.nozzles, all);
}

TEST(SessionNozzles, OneThatIsGoneOrNamedTwiceTakesNone) {
    auto file = demoFarmFileInMemory();
    ASSERT_TRUE(file.isOk());
    FarmSession session(std::move(file).value());
    const auto before = session.season().nozzles;
    Nozzle fresh;
    fresh.name = "fresh";
    const auto gone = session.takeNozzles({{0, fresh}, {100000, fresh}}, u"x"_s);
    ASSERT_FALSE(gone.isOk());
    EXPECT_EQ(gone.problem().code, "record_gone");
    fresh.name = before.front().nozzle.name;
    const auto taken = session.takeNozzles({{0, fresh}}, u"x"_s);
    ASSERT_FALSE(taken.isOk());
    EXPECT_EQ(taken.problem().code, "nozzle_name_taken");
    EXPECT_EQ(session.season().nozzles, before);
    EXPECT_EQ(session.undoStack().count(), 0);
}

}  // namespace
}  // namespace bw
