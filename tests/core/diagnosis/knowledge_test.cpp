// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/knowledge.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "core/base/resource.h"
#include "core/diagnosis/next_check.h"
#include "core/diagnosis/readings.h"
#include "core/diagnosis/triage.h"
#include "core/text/sentences.h"
#include "tests/core/diagnosis/case_builders.h"

namespace bw {
namespace {

using Json = nlohmann::json;

Json shippedJson() {
    auto all = Json::object();
    for (const auto* file : {"causes", "checks", "cautions"})
        all.update(Json::parse(resource(std::string("knowledge/") + file + ".json")));
    return all;
}

bool carries(const std::vector<std::string>& ids, const char* id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

TEST(Knowledge, ShippedDataAreWhole) {
    const auto read = Knowledge::fromJson(shippedJson().dump());
    ASSERT_TRUE(read.isOk()) << read.problem().where;
    EXPECT_EQ(read->causes.size(), Knowledge::shipped().causes.size());
}

TEST(Knowledge, ThirtyCautionsWithTheirIds) {
    const auto& cautions = Knowledge::shipped().cautions;
    EXPECT_EQ(cautions.size(), 30u);
    for (int i = 1; i <= 30; ++i) EXPECT_TRUE(cautions.contains("C" + std::to_string(i))) << i;
}

TEST(Knowledge, HasTheCausesOfTheFirstSlice) {
    for (const auto* id : {"suction_strainer", "line_strainer",       "section_strainer",
                           "nozzle_strainers", "restrictor_position", "floor_high",
                           "nozzle_large",     "speed_too_slow",      "ceiling_low",
                           "nozzle_small",     "speed_too_fast",      "nozzles_worn",
                           "pump_worn",        "pump_drive",          "agitation_open",
                           "bypass_passing",   "suction_air",         "foam",
                           "meter_high",       "meter_low",           "meter_fouled",
                           "meter_part_full",  "gain_high",           "actuator_stiff",
                           "speed_noisy",      "speed_high",          "speed_low",
                           "width_large",      "width_small",         "sensor_high",
                           "sensor_low",       "section_shut"})
        EXPECT_TRUE(Knowledge::shipped().cause(id)) << id;
    const auto& k = Knowledge::shipped();
    EXPECT_EQ(k.cause("floor_high")->group, k.cause("nozzle_large")->group);
    EXPECT_EQ(k.cause("floor_high")->group, k.cause("speed_too_slow")->group);
    EXPECT_EQ(k.cause("ceiling_low")->group, k.cause("speed_too_fast")->group);
}

TEST(Knowledge, EveryItemHasASourceOrAMark) {
    const std::set<std::string> kinds{"published", "practice", "judgement"};
    const auto expectSources = [&](const auto& item) {
        EXPECT_FALSE(item.sources.empty()) << item.id;
        for (const auto& s : item.sources) {
            EXPECT_TRUE(kinds.contains(s.kind)) << item.id << ": " << s.kind;
            EXPECT_FALSE(s.text.empty()) << item.id;
        }
    };
    for (const auto& cause : Knowledge::shipped().causes) expectSources(cause);
    for (const auto& check : Knowledge::shipped().checks) expectSources(check);
}

TEST(Knowledge, EveryCauseHasRemedyProofPreventionAndACaution) {
    for (const auto& cause : Knowledge::shipped().causes) {
        EXPECT_FALSE(cause.remedy.empty()) << cause.id;
        EXPECT_FALSE(cause.proof.empty()) << cause.id;
        EXPECT_FALSE(cause.prevention.empty()) << cause.id;
        EXPECT_FALSE(cause.cautions.empty()) << cause.id;
        EXPECT_GT(cause.prior, 0) << cause.id;
        EXPECT_FALSE(cause.symptoms.empty()) << cause.id;
        for (const auto& [symptom, fit] : cause.symptoms) {
            EXPECT_GT(fit, 0) << cause.id;
            EXPECT_LE(fit, 1) << cause.id;
        }
        EXPECT_EQ(cause.group.empty(), cause.groupName.empty()) << cause.id;
    }
}

TEST(Knowledge, EverySymptomHasCauses) {
    for (const auto& [symptom, name] : ChoiceNames<Symptom>::names) {
        int fitting = 0;
        for (const auto& cause : Knowledge::shipped().causes) {
            const auto found = cause.symptoms.find(symptom);
            fitting += found != cause.symptoms.end() && found->second >= 0.3;
        }
        EXPECT_GE(fitting, 2) << name;
    }
}

TEST(Knowledge, EveryCheckHasACautionAndOpeningOnesStopFirst) {
    EXPECT_GE(Knowledge::shipped().checks.size(), 15u);
    for (const auto& check : Knowledge::shipped().checks) {
        EXPECT_FALSE(check.cautions.empty()) << check.id;
        EXPECT_FALSE(check.howTo.empty()) << check.id;
        EXPECT_FALSE(check.why.empty()) << check.id;
        EXPECT_GT(check.minutes, 0) << check.id;
        if (check.place == CheckPlace::LineOpened) {
            EXPECT_TRUE(carries(check.cautions, "C1")) << check.id;
            EXPECT_TRUE(carries(check.cautions, "C2")) << check.id;
            EXPECT_TRUE(check.needsWater) << check.id;
        }
        if (check.place == CheckPlace::OnFootOnWater) {
            EXPECT_TRUE(check.needsWater) << check.id;
        }
        if (check.place == CheckPlace::CabWorking) {
            EXPECT_TRUE(carries(check.cautions, "C7")) << check.id;
        }
        if (check.needsWater && check.place != CheckPlace::LineOpened) {
            EXPECT_TRUE(carries(check.cautions, "C3")) << check.id;
        }
    }
}

TEST(Knowledge, RemediesThatOpenTheLineStopFirst) {
    for (const auto& cause : Knowledge::shipped().causes) {
        if (cause.remedy.find("as the caution above says") == std::string::npos) continue;
        EXPECT_TRUE(carries(cause.cautions, "C1")) << cause.id;
        EXPECT_TRUE(carries(cause.cautions, "C2")) << cause.id;
    }
}

TEST(Knowledge, BaseRatesAddToOne) {
    for (const auto& check : Knowledge::shipped().checks) {
        double sum = 0;
        for (const auto& answer : check.answers) sum += answer.baseRate;
        if (!check.answers.empty()) {
            EXPECT_NEAR(sum, 1.0, 1e-9) << check.id;
        }
    }
}

TEST(Knowledge, ReadingChecksBearTheNameOfTheirReading) {
    std::set<std::string> readings;
    for (const auto& check : Knowledge::shipped().checks) {
        if (check.reading.empty()) continue;
        EXPECT_EQ(check.id, check.reading);
        readings.insert(check.reading);
    }
    EXPECT_EQ(readings.size(), kReadings);
}

/// The best that answers and readings can do for a cause lifts it above where the complaint left
/// it.
TEST(Knowledge, EveryCauseIsReachable) {
    const auto& k = Knowledge::shipped();
    for (const auto& cause : k.causes) {
        int pointing = 0;
        for (const auto& check : k.checks) {
            for (const auto& [key, levels] : check.likelihoods) {
                if (key.substr(0, key.find(':')) != cause.id) continue;
                for (const auto& [answer, level] : levels) pointing += level > 1;
            }
        }
        EXPECT_GE(pointing, 1) << cause.id << ": no answer points to it";
    }
}

TEST(Knowledge, EveryCheckTellsSomethingForSomeComplaint) {
    auto record = build::highFlowCase();
    for (const auto& check : Knowledge::shipped().checks) {
        double most = 0;
        for (const auto& [symptom, name] : ChoiceNames<Symptom>::names) {
            if (!check.onlyFor.empty() && std::find(check.onlyFor.begin(), check.onlyFor.end(),
                                                    symptom) == check.onlyFor.end())
                continue;
            record.symptom = symptom;
            const CaseNumbers numbers(record);
            const auto predictor = predictorFor(record, numbers);
            const Evidence evidence(
                Knowledge::shipped(), *predictor,
                sortObservations(record, Knowledge::shipped(), numbers, *predictor), symptom);
            most = std::max(most, expectedBits(check, evidence));
        }
        EXPECT_GE(most, kTellsBits) << check.id;
    }
}

TEST(Knowledge, WaysOutAreOnesThatTheProgramCanReckon) {
    const auto known = knownWaysOut();
    for (const auto& cause : Knowledge::shipped().causes) {
        for (const auto& code : cause.waysOut)
            EXPECT_TRUE(std::find(known.begin(), known.end(), code) != known.end()) << code;
    }
}

TEST(Knowledge, BrokenDataAreRefusedWithTheirPlace) {
    const auto expectBroken = [](const Json& json, const std::string& where) {
        const auto read = Knowledge::fromJson(json.dump());
        ASSERT_FALSE(read.isOk()) << where;
        EXPECT_EQ(read.problem().code, "knowledge_broken");
        EXPECT_NE(read.problem().where.find(where), std::string::npos) << read.problem().where;
    };
    auto json = shippedJson();
    json["causes"][0]["cautions"].push_back("C99");
    expectBroken(json, "C99");
    json = shippedJson();
    json["checks"][0]["likelihoods"]["no_such_cause"] = {{"slow_end", "likely"}};
    expectBroken(json, "no_such_cause");
    json = shippedJson();
    json["checks"][0]["likelihoods"]["foam"]["slow_end"] = "perhaps";
    expectBroken(json, "perhaps");
    json = shippedJson();
    json["causes"][3].erase("sources");
    expectBroken(json, "sources");
    json = shippedJson();
    json["causes"][1]["id"] = json["causes"][0]["id"];
    expectBroken(json, "twice");
    EXPECT_FALSE(Knowledge::fromJson("{").isOk());
    EXPECT_FALSE(Knowledge::fromJson("[]").isOk());
}

/// All strings of a JSON text that a person could get to read.
void gather(const Json& json, std::vector<std::string>& out) {
    if (json.is_string()) out.push_back(json.get<std::string>());
    if (json.is_structured()) {
        for (const auto& part : json) gather(part, out);
    }
}

std::vector<std::regex> patternsOf(const Json& rules) {
    std::vector<std::regex> out;
    for (const auto& rule : rules["patterns"])
        out.emplace_back(rule["pattern"].get<std::string>(),
                         std::regex::ECMAScript | std::regex::icase | std::regex::optimize);
    return out;
}

/// The texts of one embedded file: JSON strings, or the lines of any other file. Bare codes
/// ("stuck_high") are not read by anyone.
std::vector<std::string> textsOf(const ResourceEntry& entry) {
    std::vector<std::string> texts;
    const auto json = Json::parse(entry.bytes, nullptr, false);
    if (!json.is_discarded()) {
        gather(json, texts);
    } else {
        std::istringstream lines{std::string(entry.bytes)};
        for (std::string line; std::getline(lines, line);) texts.push_back(line);
    }
    const auto isCode = [](const std::string& text) {
        return text.find_first_not_of("abcdefghijklmnopqrstuvwxyz_.0123456789") ==
                   std::string::npos &&
               text.find('_') != std::string::npos;
    };
    std::erase_if(texts, isCode);
    return texts;
}

TEST(Texts, NeverSayWhatTheProgramMustNotSay) {
    std::ifstream file(std::string(BW_SOURCE_DIR) + "/tests/reference/never_say.json");
    const auto rules = Json::parse(file);
    ASSERT_GE(rules["patterns"].size(), 20u);
    const auto patterns = patternsOf(rules);
    for (std::size_t i = 0; i < patterns.size(); ++i) {
        const auto example = rules["patterns"][i]["catches"].get<std::string>();
        EXPECT_TRUE(std::regex_search(example, patterns[i])) << example;
    }
    std::set<std::string> seen;
    for (const auto& entry : resources()) {
        for (const auto& text : textsOf(entry)) {
            if (!seen.insert(text).second) continue;
            std::smatch match;
            for (const auto& pattern : patterns) {
                if (std::regex_search(text, match, pattern))
                    ADD_FAILURE() << entry.path << ": \"" << match.str() << "\" in: " << text;
            }
        }
    }
    EXPECT_GT(seen.size(), 500u);
}

/// Facts and problems of many cases: each has a sentence, and every gap is filled.
TEST(Texts, EveryFactOfTheFinderHasItsSentence) {
    const auto sentences = Sentences::shipped();
    const auto expectWhole = [&](const std::string& text) {
        EXPECT_EQ(text.find('{'), std::string::npos) << text;
        EXPECT_EQ(text.find('<'), std::string::npos) << text;
    };
    const auto expectAll = [&](const std::vector<Fact>& facts) {
        for (const auto& fact : facts) expectWhole(sentences.of(fact, {UnitSystem::Us}));
    };
    for (const auto& [symptom, name] : ChoiceNames<Symptom>::names) {
        for (auto record : {build::lowFlowCase(), build::highFlowCase()}) {
            record.symptom = symptom;
            for (const double p : {15.0, 40.0, 90.0}) {
                record.observations = {build::read("sensor_pressure", build::psi(p)),
                                       build::read("shown_flow", build::gpm(30)),
                                       build::said("onset", "gradual")};
                record.machine.limits.pressureFloor = Sourced<Pressure>(build::psi(p + 30));
                const auto state = build::reasoned(record);
                expectAll(state.sums);
                expectAll(state.waysOut);
                for (const auto& s : state.standing) expectAll(s.why);
                if (state.next) expectAll(state.next->why);
                for (const auto& c : state.conflicts)
                    expectWhole(sentences.of(c, {UnitSystem::Us}));
            }
        }
    }
    for (const auto& [kind, name] : ChoiceNames<Reading>::names)
        EXPECT_TRUE(sentences.has("finder.reading." + std::string(name))) << name;
    for (const auto* code :
         {"floor", "ceiling", "meter_minimum", "restrictor_full_bore", "restrictor_narrowed"})
        EXPECT_TRUE(sentences.has("finder.why.described_" + std::string(code))) << code;
}

}  // namespace
}  // namespace bw
