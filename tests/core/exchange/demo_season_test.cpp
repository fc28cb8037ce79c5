// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo_season.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>

#include "core/base/resource.h"
#include "core/diagnosis/call.h"
#include "core/model/checks.h"
#include "core/season/job_verdict.h"

namespace bw {
namespace {

const DemoSeason& demo() {
    static const DemoSeason season = [] {
        const auto read = demoSeason();
        EXPECT_TRUE(read.isOk()) << read.problem().code << " at " << read.problem().where;
        return *read;
    }();
    return season;
}

template <class Record>
void countOrigins(const Record& record, std::map<Origin, int>& counts) {
    visitFields(record, [&](const char*, const auto& field) {
        if (field) ++counts[field->origin];
    });
}

void expectNoErrors(const std::vector<Problem>& problems, const std::string& of) {
    for (const auto& problem : problems) {
        EXPECT_EQ(problem.severity, Severity::Note)
            << of << ": " << problem.code << " at " << problem.where;
    }
}

TEST(DemoSeason, HoldsWhatItPromises) {
    EXPECT_EQ(demo().season.machines.size(), 2U);
    EXPECT_EQ(demo().season.jobs.size(), 12U);
    EXPECT_EQ(demo().season.nozzles.size(), 8U);
    EXPECT_EQ(demo().customers.size(), 2U);
    EXPECT_EQ(demo().cases.size(), 3U);
}

TEST(DemoSeason, EveryRecordIsMarkedAsInvented) {
    for (const auto& r : demo().season.machines) EXPECT_TRUE(r.machine.isDemo);
    for (const auto& r : demo().season.jobs) EXPECT_TRUE(r.job.isDemo);
    for (const auto& r : demo().season.nozzles) EXPECT_TRUE(r.nozzle.isDemo && !r.nozzle.isBuiltIn);
    for (const auto& r : demo().customers) EXPECT_TRUE(r.customer.isDemo);
    for (const auto& r : demo().cases) {
        EXPECT_TRUE(r.record.isDemo && r.record.machine.isDemo && r.record.nozzle.isDemo &&
                    r.record.job.isDemo);
    }
}

TEST(DemoSeason, MachinesShowAllThreeOrigins) {
    for (const auto& stored : demo().season.machines) {
        std::map<Origin, int> counts;
        countOrigins(stored.machine, counts);
        EXPECT_GE(counts[Origin::Measured], 8) << stored.machine.name;
        EXPECT_GE(counts[Origin::Handbook], 8) << stored.machine.name;
        EXPECT_GE(counts[Origin::Assumed], 8) << stored.machine.name;
        visitFields(stored.machine, [&](const char* key, const auto& field) {
            if (!field) return;
            EXPECT_EQ(field->origin == Origin::Measured, !field->date.empty()) << key;
            EXPECT_EQ(field->origin == Origin::Assumed, field->from && field->to) << key;
        });
    }
}

TEST(DemoSeason, PassesItsOwnChecks) {
    for (const auto& r : demo().season.machines)
        expectNoErrors(checkMachine(r.machine), r.machine.name);
    for (const auto& r : demo().season.nozzles)
        expectNoErrors(checkNozzle(r.nozzle), r.nozzle.name);
    for (const auto& r : demo().season.jobs) expectNoErrors(checkJob(r.job), r.job.name);
}

TEST(DemoSeason, NamesOfNozzlesLeadSomewhere) {
    const auto isThere = [](const std::string& name) {
        const auto& all = demo().season.nozzles;
        return std::any_of(all.begin(), all.end(),
                           [&](const auto& n) { return n.nozzle.name == name; });
    };
    for (const auto& r : demo().season.machines) {
        for (const auto& set : r.machine.setsAboard) EXPECT_TRUE(isThere(set.nozzle)) << set.nozzle;
    }
    for (const auto& r : demo().season.jobs) {
        EXPECT_TRUE(r.job.pinnedNozzle.empty() || isThere(r.job.pinnedNozzle)) << r.job.name;
    }
}

TEST(DemoSeason, TheFinderAgreesWithEachPastCase) {
    for (const auto& stored : demo().cases) {
        const auto state = reason(stored.record, Knowledge::shipped());
        ASSERT_FALSE(state.standing.empty());
        const CauseStanding& first = state.standing.front();
        std::string all;
        for (const auto& c : state.standing) {
            if (c.probability > 0.02)
                all += c.cause + " " + std::to_string(c.probability) + " " + c.group + "\n";
        }
        EXPECT_EQ(first.cause, stored.record.causeFound) << all;
        EXPECT_TRUE(state.conflicts.empty());
        EXPECT_NE(Knowledge::shipped().cause(stored.record.causeFound), nullptr);
        for (const auto& seen : stored.record.observations) {
            const Check* check = Knowledge::shipped().check(seen.check);
            ASSERT_NE(check, nullptr) << seen.check;
            const auto& answers = check->answers;
            EXPECT_TRUE(seen.reading ||
                        std::any_of(answers.begin(), answers.end(),
                                    [&](const Answer& a) { return a.id == seen.answer; }))
                << seen.check << " " << seen.answer;
        }
    }
}

/// One job is meant to be short of a nozzle, so that the season page has something to say.
TEST(DemoSeason, EveryJobButOneHasANozzle) {
    for (const auto& stored : demo().season.jobs) {
        const auto& machine =
            demo().season.machines[static_cast<std::size_t>(stored.machine - 1)].machine;
        std::map<Standing, int> counts;
        for (const auto& n : demo().season.nozzles) {
            ++counts[pairVerdict(machine, n.nozzle, stored.job).standing];
        }
        const bool isShort = stored.job.name == "Desiccant, potatoes";
        EXPECT_EQ(counts[Standing::Covers] > 0, !isShort) << stored.job.name;
        EXPECT_GT(counts[Standing::Covers] + counts[Standing::UsualOnly], 0);
    }
}

TEST(DemoSeason, RefusesWhatItDoesNotKnow) {
    const auto codeOf = [](std::string_view text) {
        const auto read = demoSeasonFromJson(text);
        return read ? std::string() : read.problem().code + " " + read.problem().where;
    };
    EXPECT_EQ(codeOf("{}"), "");
    EXPECT_EQ(codeOf(R"({"machines": []})"), "json_unknown_key machines");
    EXPECT_EQ(codeOf(R"({"cases": [{"machine": "none", "case": {}}]})"),
              "demo_name_unknown cases[0].machine");
    EXPECT_EQ(codeOf(R"({"cases": [{}]})"), "json_missing cases[0].case");
    EXPECT_EQ(codeOf(R"({"fleet": [{"jobs": []}]})"), "json_missing fleet[0].machine");
    EXPECT_EQ(codeOf(R"({"cases": [{"case": {}, "as_it_was": {"limits": {"flor": 1}}}]})"),
              "json_unknown_key cases[0].as_it_was.limits.flor");
}

}  // namespace
}  // namespace bw
