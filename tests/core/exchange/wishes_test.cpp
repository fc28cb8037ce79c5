// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/exchange/json_wishes.h"

namespace bw {
namespace {

TEST(WishesJson, ComeBackEqual) {
    SetWishes wishes;
    wishes.owned = {{3, "Demo \"fan\" 03"}, {4, ""}};
    wishes.barred = {"A", "B"};
    wishes.acceptUnchecked = {"C"};
    wishes.spares = 0.07;
    wishes.isAllAboard = true;
    wishes.fieldEfficiency = 0.65;
    const auto read = wishesFromJson(toJson(wishes));
    ASSERT_TRUE(read.isOk());
    EXPECT_EQ(read->owned, wishes.owned);
    EXPECT_EQ(read->barred, wishes.barred);
    EXPECT_EQ(read->acceptUnchecked, wishes.acceptUnchecked);
    EXPECT_EQ(read->spares, 0.07);
    EXPECT_TRUE(read->isAllAboard);
    EXPECT_EQ(read->fieldEfficiency, 0.65);
    EXPECT_FALSE(wishesFromJson(toJson(SetWishes{}))->fieldEfficiency);
}

TEST(WishesJson, OddTextIsRefusedWithItsPlace) {
    EXPECT_EQ(wishesFromJson(R"({"owned": [{"nozzle": "A"}]})").problem().where,
              "wishes.owned[0].machine");
    EXPECT_EQ(wishesFromJson(R"({"bared": []})").problem().code, "json_unknown_key");
}

}  // namespace
}  // namespace bw
