// SPDX-License-Identifier: GPL-3.0-or-later
// Catch tests as they are noted down; all catches are invented.
#include <gtest/gtest.h>

#include "core/exchange/json_yard.h"
#include "core/yard/catch_record.h"

namespace bw {
namespace {

NotedCatch caught(int nozzle, double millilitres, bool isAgain = false) {
    return {nozzle, isAgain, Volume::fromSi(millilitres * 1e-6), Duration::fromSi(30), ""};
}

CatchTest testOf(CatchScope scope) {
    CatchTest out;
    out.sections = {3, 7, 4};
    out.scope = scope;
    out.section = 1;
    return out;
}

TEST(CatchRecord, TheScopeSaysWhichNozzlesComeNext) {
    CatchTest test = testOf(CatchScope::EverySixth);
    EXPECT_EQ(nozzlesToCatch(test), (std::vector<int>{1, 7, 13}));
    EXPECT_EQ(nextToCatch(test), 1);
    test.catches = {caught(1, 800), caught(13, 800)};
    EXPECT_EQ(nextToCatch(test), 7);
    test.catches.push_back(caught(7, 800));
    EXPECT_EQ(nextToCatch(test), std::nullopt);
    EXPECT_EQ(nozzlesToCatch(testOf(CatchScope::Section)),
              (std::vector<int>{4, 5, 6, 7, 8, 9, 10}));
    EXPECT_EQ(nozzlesToCatch(testOf(CatchScope::All)).size(), 14U);
    EXPECT_TRUE(nozzlesToCatch(CatchTest{}).empty());
}

TEST(CatchRecord, ACatchAfterCleaningCountsAndCanBeTakenBack) {
    CatchTest test = testOf(CatchScope::All);
    test.catches = {caught(1, 800), caught(2, 800), caught(3, 650), caught(3, 800, true)};
    auto summary = summaryOf(test);
    ASSERT_TRUE(summary.isOk());
    EXPECT_EQ(summary->nozzles[2].verdict, CatchVerdict::Good);
    test.catches.pop_back();
    summary = summaryOf(test);
    ASSERT_TRUE(summary.isOk());
    EXPECT_EQ(summary->nozzles[2].verdict, CatchVerdict::CleanAndCatchAgain);
    // The first catch deleted instead: the second stands for it.
    test.catches[2] = caught(3, 800, true);
    EXPECT_EQ(summaryOf(test)->nozzles[2].verdict, CatchVerdict::Good);
}

TEST(CatchRecord, ANozzleTypedTwiceCountsAsTypedLast) {
    CatchTest test = testOf(CatchScope::All);
    test.catches = {caught(1, 500), caught(2, 800), caught(1, 800)};
    const auto summary = summaryOf(test);
    ASSERT_TRUE(summary.isOk());
    ASSERT_EQ(summary->nozzles.size(), 2U);
    EXPECT_NEAR(summary->nozzles[0].ofMean, 1.0, 1e-12);
}

TEST(CatchRecord, NothingCaughtIsSaid) {
    EXPECT_EQ(summaryOf(CatchTest{}).problem().code, "yard_no_runs");
}

TEST(YardRecordJson, ABadKeyOrWordIsNamedWithItsPlace) {
    const auto code = [](const char* text) {
        const auto read = yardRecordFromJson(text);
        return read ? std::string() : read.problem().code + " " + read.problem().where;
    };
    EXPECT_EQ(code(R"({"kind": "catch_test", "catch_test": {"scope": "few"}})"),
              "json_not_a_choice yard.catch_test.scope");
    EXPECT_EQ(code(R"({"readings": [{"id": "a", "value": "3 bra"}]})"),
              "unit_unknown yard.readings[0].value");
    EXPECT_EQ(code(R"({"reading": []})"), "json_unknown_key yard.reading");
    EXPECT_EQ(code(R"({"readings": [{"id": "a"}]})"), "json_missing yard.readings[0].value");
    EXPECT_EQ(code(R"({"units": "roman"})"), "json_not_a_choice yard.units");
}

}  // namespace
}  // namespace bw
