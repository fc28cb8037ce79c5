// SPDX-License-Identifier: GPL-3.0-or-later
// The yard checks as data: whole, answerable, and with their cautions.
#include "core/yard/yard_book.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "core/base/resource.h"
#include "core/model/machine_fields.h"
#include "core/model/start_values.h"
#include "core/text/sentences.h"
#include "core/yard/yard_sum.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using Json = nlohmann::json;

bool carries(const YardCheckText& check, const char* caution) {
    return std::count(check.cautions.begin(), check.cautions.end(), caution) > 0;
}

std::set<std::string> idsFor(const Machine& machine) {
    std::set<std::string> out;
    for (const auto& check : yardChecks()) {
        if (applies(check, machine)) out.insert(check.id);
    }
    return out;
}

/// Readings that every sum accepts. Invented.
YardReadings goodReadings(const YardCheckText& check) {
    const auto one = [](auto q) { return YardEntry{{anyQuantity(q)}, {}}; };
    const auto volume = [](double x) { return make<Volume>(x, Unit::Litre); };
    YardReadings all{{"shutoff_pressure", one(build::bar(7.4))},
                     {"flow", one(build::lpm(80))},
                     {"pressure", one(build::bar(4.6))},
                     {"low_flow", one(build::lpm(80))},
                     {"low_loss", one(build::bar(0.1))},
                     {"high_flow", one(build::lpm(130))},
                     {"high_loss", one(build::bar(0.4))},
                     {"steady", one(build::lpm(20))},
                     {"wanders", one(build::lpm(17))},
                     {"position", {{}, "narrowed"}},
                     {"settled", one(Duration::fromSi(8))},
                     {"swings", one(2.0)},
                     {"swing", one(Duration::fromSi(5))},
                     {"shown", one(volume(210))},
                     {"known", one(volume(200))},
                     {"number", one(700.0)},
                     {"convention", {{}, "per_pulse"}},
                     {"entered", {{}, "no"}},
                     {"caught", {{anyQuantity(volume(1.1)), anyQuantity(volume(1.2))}, {}}},
                     {"time", one(Duration::fromSi(60))},
                     {"nozzles", one(72.0)},
                     {"course", one(build::metres(100))},
                     {"times", one(Duration::fromSi(36))},
                     {"new_flow", one(build::lpm(1.1))},
                     {"open", one(build::lpm(100))},
                     {"shut", one(build::lpm(160))},
                     {"rest", one(build::bar(0))},
                     {"shown_low", one(build::bar(2))},
                     {"true_low", one(build::bar(1.9))},
                     {"shown_high", one(build::bar(4))},
                     {"true_high", one(build::bar(3.9))}};
    if (check.id == "Y6") all["shown"] = one(build::kmh(10));
    YardReadings out;
    for (const auto& reading : check.readings) out[reading.id] = all.at(reading.id);
    return out;
}

TEST(YardBook, HoldsTheChecks) {
    std::vector<std::string> ids;
    for (const auto& check : yardChecks()) ids.push_back(check.id);
    EXPECT_EQ(ids, (std::vector<std::string>{"Y1", "Y1d", "Y2", "Y3", "Y4", "Y5", "Y5j", "Y6", "Y7",
                                             "Y8", "gauge"}));
    EXPECT_EQ(yardCheck("Y9"), nullptr);
}

TEST(YardBook, EveryCheckCarriesTheCautionsOfItsPlace) {
    for (const auto& check : yardChecks()) {
        SCOPED_TRACE(check.id);
        EXPECT_TRUE(carries(check, "C3")) << "what is in the tank";
        EXPECT_TRUE(carries(check, "C5")) << "the boom";
        EXPECT_TRUE(carries(check, "C22")) << "rinse water";
        if (check.place == CheckPlace::LineOpened) {
            ASSERT_GE(check.cautions.size(), 2U);
            EXPECT_EQ(check.cautions[0], "C1") << "first, before the steps";
            EXPECT_EQ(check.cautions[1], "C2");
        }
        if (check.place == CheckPlace::OnFootOnWater || check.place == CheckPlace::LineOpened) {
            EXPECT_TRUE(carries(check, "C4"));
        }
        if (check.place == CheckPlace::CabWorking || check.place == CheckPlace::CabParked) {
            EXPECT_TRUE(carries(check, "C7"));
        }
        if (check.people > 1) {
            EXPECT_TRUE(carries(check, "C6"));
        }
    }
    EXPECT_TRUE(carries(*yardCheck("Y1"), "C9"));
    EXPECT_TRUE(carries(*yardCheck("Y1d"), "C10"));
    EXPECT_TRUE(carries(*yardCheck("Y4"), "C23"));
    EXPECT_TRUE(carries(*yardCheck("Y8"), "C29"));
}

TEST(YardBook, TheSumKnowsEveryReadingAndNoOther) {
    for (const auto& check : yardChecks()) {
        std::vector<std::string> ids;
        for (const auto& reading : check.readings) ids.push_back(reading.id);
        EXPECT_THAT(yardReadingIds(check.id), testing::UnorderedElementsAreArray(ids)) << check.id;
    }
}

TEST(YardBook, TheSumAcceptsReadingsOfTheKindsAskedFor) {
    const Machine machine = build::trailed28();
    const auto sentences = Sentences::shipped();
    for (const auto& check : yardChecks()) {
        SCOPED_TRACE(check.id);
        const auto readings = goodReadings(check);
        for (const auto& reading : check.readings) {
            const auto& entry = readings.at(reading.id);
            if (reading.kind == ReadingKind::Quantity) {
                EXPECT_EQ(entry.numbers.at(0).dimension, reading.dimension) << reading.id;
            }
        }
        const auto answer = yardSum(check.id, readings, machine);
        ASSERT_TRUE(answer.isOk()) << answer.problem().code << " " << answer.problem().where;
        EXPECT_FALSE(answer->shown.sum.empty());
        for (const auto& fact : answer->shown.sum) {
            const auto text = sentences.of(fact, {});
            EXPECT_EQ(text.find_first_of("{<"), std::string::npos) << text;
        }
    }
}

TEST(YardBook, TheSumAsksForWhatIsMissingByItsId) {
    for (const auto& check : yardChecks()) {
        for (const auto& reading : check.readings) {
            auto readings = goodReadings(check);
            readings.erase(reading.id);
            const auto answer = yardSum(check.id, readings, build::trailed28());
            if (answer) {
                EXPECT_TRUE(reading.isOptional) << check.id << " " << reading.id;
                continue;
            }
            EXPECT_NE(check.reading(answer.problem().where), nullptr) << answer.problem().where;
            if (reading.isOptional) continue;  // a second reading may call for it
            EXPECT_EQ(answer.problem().code, "yard_reading_missing");
            EXPECT_EQ(answer.problem().where, reading.id) << check.id;
        }
    }
    EXPECT_EQ(yardSum("Y9", {}, {}).problem().code, "yard_no_check");
}

TEST(YardBook, EveryRefusalNamesAReadingOfTheCheck) {
    for (const auto& check : yardChecks()) {
        for (const auto& reading : check.readings) {
            auto readings = goodReadings(check);
            for (auto& number : readings[reading.id].numbers) number.si = -1;
            const auto answer = yardSum(check.id, readings, build::trailed28());
            if (!answer) {
                EXPECT_NE(check.reading(answer.problem().where), nullptr)
                    << check.id << " " << answer.problem().code << " " << answer.problem().where;
            }
        }
    }
}

TEST(YardBook, ChoicesAreThoseOfTheSums) {
    for (const auto* id : {"Y5", "Y5j", "Y6"}) {
        for (const auto& choice : yardCheck(id)->reading("convention")->choices)
            EXPECT_TRUE(choiceFor<PulseConvention>(choice.id)) << choice.id;
    }
    for (const auto& choice : yardCheck("Y3")->reading("position")->choices)
        EXPECT_TRUE(choiceFor<RestrictorPosition>(choice.id)) << choice.id;
}

TEST(YardBook, NothingIsWrittenThatTheDataDoNotName) {
    Machine machine = build::selfPropelled100();
    machine.control = Sourced<Control>(Control::Throttle);  // too small for 80 L/min: cleared
    machine.controlValve = {Sourced<Flow>(build::lpm(40)), Sourced<Pressure>(build::bar(2)), {}};
    std::set<std::string> named;
    std::set<std::string> written;
    for (const auto& check : yardChecks()) {
        for (const auto* position : {"narrowed", "full_bore"}) {
            auto readings = goodReadings(check);
            if (readings.contains("position")) readings["position"].choice = position;
            // Lost at any flow: half a bar tells a ball valve.
            if (check.id == "Y2" && std::string_view(position) == "full_bore") {
                readings["low_loss"].numbers[0].si += 5e4;
                readings["high_loss"].numbers[0].si += 5e4;
            }
            const auto answer = yardSum(check.id, readings, machine);
            ASSERT_TRUE(answer.isOk()) << check.id;
            for (const auto& edit : answer->edits) {
                EXPECT_EQ(std::count(check.writes.begin(), check.writes.end(), edit.key), 1)
                    << check.id << " " << edit.key;
                written.insert(check.id + edit.key);
            }
        }
        for (const auto& key : check.writes) named.insert(check.id + key);
    }
    EXPECT_EQ(named, written);
}

TEST(YardBook, EachMachineGetsItsOwnChecks) {
    Machine m;
    takeClass(m, MachineClass::SelfPropelled);
    EXPECT_EQ(idsFor(m),
              (std::set<std::string>{"Y1", "Y2", "Y3", "Y4", "Y5", "Y5j", "Y6", "Y7", "gauge"}));
    takeClass(m, MachineClass::Trailed);
    EXPECT_EQ(idsFor(m), (std::set<std::string>{"Y1d", "Y2", "Y3", "Y4", "Y5", "Y5j", "Y6", "Y7",
                                                "Y8", "gauge"}));
    setField(m, "senses", "nothing");
    EXPECT_EQ(idsFor(m), (std::set<std::string>{"Y1d", "Y2", "Y6", "Y7", "Y8", "gauge"}));
}

TEST(YardBook, AnUnknownPumpIsNeverShutIn) {
    const auto ids = idsFor(Machine{});
    EXPECT_FALSE(ids.contains("Y1"));
    EXPECT_FALSE(ids.contains("Y1d"));
    EXPECT_TRUE(ids.contains("Y3")) << "what nobody knows does not rule out a harmless check";
}

/// Each break of the data is refused with its place.
TEST(YardBook, BrokenDataAreRefused) {
    const Json whole = Json::parse(resource("knowledge/yard_checks.json"));
    const auto expectBroken = [&](const char* pointer, const Json& value, const char* where) {
        Json broken = whole;
        broken[Json::json_pointer(std::string("/yard_checks/0") + pointer)] = value;
        const auto read = yardChecksFrom(broken.dump());
        ASSERT_FALSE(read.isOk()) << pointer;
        EXPECT_EQ(read.problem().code, "knowledge_broken");
        EXPECT_NE(read.problem().where.find(where), std::string::npos) << read.problem().where;
    };
    ASSERT_TRUE(yardChecksFrom(whole.dump()).isOk());
    expectBroken("/cautions/0", "C99", "C99");
    expectBroken("/steps/1", "", "steps");
    expectBroken("/steps", Json::array(), "steps");
    expectBroken("/cautions", Json::array(), "cautions");
    expectBroken("/writes/0", "pump.colour", "pump.colour");
    expectBroken("/when/0/key", "pump.colour", "pump.colour");
    expectBroken("/when/0/is/0", "gear", "gear");
    expectBroken("/readings/0/dimension", "colour", "colour");
    expectBroken("/readings/0/hint", "", "hint");
    expectBroken("/place", "sum", "place");
    expectBroken("/minutes", 0, "minutes");
    expectBroken("/sources", Json::array(), "sources");
    expectBroken("/id", "Y2", "twice");
    EXPECT_FALSE(yardChecksFrom("no").isOk());
}

}  // namespace
}  // namespace bw
