// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

std::vector<std::string> words(const Json& list) {
    return list.get<std::vector<std::string>>();
}
std::vector<std::string> limitsOf(const Json& end) {
    std::vector<std::string> out{end["limit"]};
    for (const auto& next : end["next"]) out.push_back(next["limit"]);
    return out;
}

TEST(CalcWindow, SpeedFrom12To15MphAt40PsiNeeds63Psi) {
    // Published: Iowa State University Extension, Integrated Crop Management News item 844 (sprayer
    // speed and pressure): 12 to 15 mph at 40 psi needs 63 psi, exactly 62.5. The nozzle (0.4
    // gal/min at 40 psi) and 20 in are ours: 9.9 gal/ac = 5940 * 0.4 / (12 * 20).
    const Json answer = ask(bareRequest());
    EXPECT_NEAR(number(answer["at"]["slow"]["sensor_pressure"], "psi"), 40.0, 1e-9);
    EXPECT_NEAR(number(answer["at"]["fast"]["sensor_pressure"], "psi"), 62.5, 1e-9);
    EXPECT_NEAR(number(answer["at"]["fast"]["sensor_pressure"], "psi"), 63.0, 0.5);
}

TEST(CalcWindow, TheNarrowedPositionBelongsUnderTheChangeoverFlow) {
    // Common practice, no source: 90 to 130 ft with a changeover flow of 26 gal/min, at 15 mph: 5
    // gal/ac is under it (narrowed), 10 gal/ac over it (full bore).
    for (const int nozzles : {54, 66, 78}) {
        for (const auto& [rate, band, position] : {std::tuple{"5 gal/ac", "under", "narrowed"},
                                                   std::tuple{"10 gal/ac", "over", "full_bore"}}) {
            Json request = bareRequest();
            request["machine"]["sections"] = {nozzles / 2, nozzles / 2};
            request["machine"]["restrictor"] = {{"changeover_flow", "26 gal/min"}};
            request["job"] = {{"rate", rate}, {"usual", "15 mph"}};
            const Json advice = ask(request)["restrictor"];
            EXPECT_EQ(advice["band"], band) << nozzles << " " << rate;
            EXPECT_EQ(advice["position"], position) << nozzles << " " << rate;
            const double width = nozzles * 20.0 / 12;
            EXPECT_NEAR(number(advice["crossing_speed"], "mph"),
                        26 * 495 / (std::stod(rate) * width), 1e-9);
            EXPECT_THAT(advice["note"].get<std::string>(), HasSubstr("26 gal/min"));
        }
    }
}

TEST(CalcWindow, AFloorAt144PercentOfTheNeedTurns5GallonsInto6) {
    // Common practice, no source: 5 gal/ac that cannot come under 6 is a floor at 1.44 times the
    // need.
    Json request = bareRequest();
    request["job"] = {{"rate", "5 gal/ac"}, {"usual", "12 mph"}};
    const double need = number(ask(request)["at"]["usual"]["sensor_pressure"], "psi");
    request["machine"]["limits"] = {{"pressure_floor", std::to_string(1.44 * need) + " psi"}};
    const Json usual = ask(request)["at"]["usual"];
    EXPECT_EQ(usual["verdict"], "stuck_high");
    EXPECT_NEAR(number(usual["rate"], "gal/ac"), 6.0, 1e-5);
    EXPECT_THAT(words(usual["past"]), ElementsAre("pressure_floor"));
}

TEST(CalcWindow, WithoutAPumpsPartPressureGoesWithTheSquareOfSpeed) {
    Json request = bareRequest();
    request["job"]["slow"] = "6 mph";
    request["job"]["usual"] = "9 mph";
    request["job"]["fast"] = "18 mph";
    const Json at = ask(request)["at"];
    const double slow = number(at["slow"]["sensor_pressure"], "psi");
    EXPECT_NEAR(number(at["usual"]["sensor_pressure"], "psi"), slow * 2.25, 1e-9);
    EXPECT_NEAR(number(at["fast"]["sensor_pressure"], "psi"), slow * 9, 1e-9);
}

TEST(CalcWindow, NothingKnownOfLimitsMeansNothingCheckedAndNoEnds) {
    const Json answer = ask(bareRequest());
    EXPECT_EQ(answer["low"]["limit"], "none");
    EXPECT_EQ(number(answer["low"]["speed"], "mph"), 0.0);
    EXPECT_EQ(answer["high"]["limit"], "none");
    EXPECT_TRUE(answer["high"]["speed"].is_null());
    EXPECT_FALSE(answer["empty"]);
    EXPECT_THAT(words(answer["not_checked"]),
                ::testing::UnorderedElementsAre("pressure_floor", "nozzle_minimum",
                                                "control_minimum", "pressure_ceiling",
                                                "nozzle_maximum", "pump", "meter", "top_speed"));
    EXPECT_THAT(answer["sentence"].get<std::string>(), HasSubstr("Not checked"));
}

/// The whole machine of the demo, with every part it knows.
TEST(CalcWindow, AWholeMachineLeavesNothingUncheckedAndEachMissingPartDoes) {
    EXPECT_THAT(words(ask(demoRequest(0, 0, "Demo low-drift fan 04"))["not_checked"]),
                ElementsAre());
    Json request = demoRequest(1, 2, "Demo low-drift fan 03");
    EXPECT_THAT(words(ask(request)["not_checked"]), ElementsAre());
    Json& machine = request["machine"];
    machine["losses"].erase("suction");
    EXPECT_THAT(words(ask(request)["not_checked"]), ElementsAre("suction"));
    machine["pump"].erase("relief_pressure");
    EXPECT_THAT(words(ask(request)["not_checked"]), ElementsAre("relief_valve", "suction"));
    machine.erase("control_valve");
    EXPECT_THAT(words(ask(request)["not_checked"]),
                ElementsAre("control_minimum", "relief_valve", "suction"));
    machine.erase("pump");
    EXPECT_THAT(words(ask(request)["not_checked"]), ElementsAre("control_minimum", "pump"));
    Json narrowed = demoRequest(0, 0, "Demo low-drift fan 04");
    narrowed["machine"]["restrictor"].erase("hole");
    EXPECT_THAT(words(ask(narrowed)["not_checked"]), ElementsAre("pump"));
}

TEST(CalcWindow, EveryPairOfTheDemoHasAnAnswerThatAddsUp) {
    int answers = 0;
    for (std::size_t machine = 0; machine < 2; ++machine) {
        for (std::size_t job = 0; job < demo()["fleet"][machine]["jobs"].size(); ++job) {
            for (const auto& nozzle : demo()["nozzles"]) {
                const Json answer = ask(demoRequest(machine, job, nozzle["name"]));
                const std::string unit = machine == 0 ? "mph" : "km/h";
                const double low = number(answer["low"]["speed"], unit);
                const double high = number(answer["high"]["speed"], unit);
                if (!answer.contains("why")) {
                    EXPECT_EQ(answer["empty"].get<bool>(), low > high * (1 + 1e-9));
                }
                const Json& sections = demo()["fleet"][machine]["machine"]["sections"];
                EXPECT_EQ(answer["sections_off"].size(), sections.size());
                EXPECT_EQ(answer["sections_off"].front()["on"], sections.size());
                EXPECT_EQ(answer["rests_on"], Json::array());
                EXPECT_THAT(answer["sentence"].get<std::string>(),
                            Not(::testing::AnyOf(HasSubstr("<"), HasSubstr("{"))));
                ++answers;
            }
        }
    }
    EXPECT_EQ(answers, 96);
}

TEST(CalcWindow, LimitsAreNamedNearestFirst) {
    const Json answer = ask(demoRequest(0, 0, "Demo low-drift fan 04"));
    EXPECT_THAT(limitsOf(answer["low"]),
                ElementsAre("pressure_floor", "nozzle_minimum", "droplets_unlisted",
                            "control_minimum", "meter_minimum"));
    EXPECT_THAT(limitsOf(answer["high"]),
                ElementsAre("droplets_too_fine", "pump", "top_speed", "pressure_ceiling",
                            "nozzle_maximum", "meter_maximum", "suction"));
    // By hand: section loss 1.5 psi at 9 gal/min; the sections are 10 (smallest) and 14 nozzles.
    // The ceiling-side droplet limit, 3.2 bar at the nozzle of the smallest section; the floor, 18
    // psi.
    EXPECT_NEAR(number(answer["low"]["speed"], "mph"), 9.9103, 1e-4);
    EXPECT_NEAR(number(answer["high"]["speed"], "mph"), 15.9724, 1e-4);
}

TEST(CalcWindow, PastAFloorTheRateIsStuckByTheSpeedsRatio) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["job"]["slow"] = "6 mph";
    const Json answer = ask(request);
    const double floorSpeed = number(answer["low"]["speed"], "mph");
    const Json slow = answer["at"]["slow"];
    EXPECT_EQ(slow["verdict"], "stuck_high");
    EXPECT_NEAR(number(slow["rate"], "gal/ac"), 8 * floorSpeed / 6, 1e-9);
    EXPECT_THAT(words(slow["past"]), Contains("pressure_floor"));
}

TEST(CalcWindow, PastALimitThatPinsNothingTheRateIsRight) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["job"]["fast"] = "17 mph";
    const Json fast = ask(request)["at"]["fast"];
    EXPECT_EQ(fast["verdict"], "beyond_limit");
    EXPECT_NEAR(number(fast["rate"], "gal/ac"), 8.0, 1e-9);
    EXPECT_EQ(fast["droplets"], "M");
    EXPECT_THAT(words(fast["past"]), ElementsAre("droplets_too_fine"));
}

TEST(CalcWindow, CrossedEndsAreBothGivenAndEmpty) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["machine"]["limits"] = {{"pressure_floor", "60 psi"}};
    const Json answer = ask(request);
    EXPECT_TRUE(answer["empty"]);
    EXPECT_FALSE(answer.contains("why"));
    EXPECT_GT(number(answer["low"]["speed"], "mph"), number(answer["high"]["speed"], "mph"));
}

TEST(CalcWindow, NoListedCategoryAllowedIsEmptyAndSaysWhy) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["job"]["droplets"] = {"XC"};
    const Json answer = ask(request);
    EXPECT_TRUE(answer["empty"]);
    EXPECT_EQ(answer["why"], "droplets_none");
    for (const char* at : {"slow", "usual", "fast"})
        EXPECT_THAT(words(answer["at"][at]["past"]), Contains("droplets_none"));
    EXPECT_EQ(answer["low"]["limit"], "pressure_floor");
    EXPECT_THAT(words(answer["not_checked"]), Not(Contains("droplets")));
}

TEST(CalcWindow, DropletsOrDriftWithoutATableAreNotChecked) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["nozzle"].erase("droplets");
    request["job"]["drift_percent"] = 75;
    EXPECT_THAT(words(ask(request)["not_checked"]),
                ::testing::AllOf(Contains("droplets"), Contains("drift_class")));
    request["nozzle"]["droplets"] = Json::array();
    EXPECT_THAT(words(ask(request)["not_checked"]), Contains("droplets"));
    request["job"].erase("drift_percent");
    request["job"]["droplets"] = Json::array();
    EXPECT_THAT(words(ask(request)["not_checked"]),
                Not(::testing::AnyOf(Contains("droplets"), Contains("drift_class"))));
}

TEST(CalcWindow, ADriftClassTheTableDoesNotReachIsEmpty) {
    Json request = bareRequest();
    request["job"]["drift_percent"] = 90;
    request["nozzle"]["drift"] =
        Json::parse(R"([{"from": "1 bar", "to": "3 bar", "percent": 75}])");
    EXPECT_EQ(ask(request)["why"], "drift_none");
    request["job"]["drift_percent"] = 75;
    EXPECT_EQ(ask(request)["high"]["limit"], "drift_class");
}

TEST(CalcWindow, ByHandIsAnsweredAsIfALoopHeldTheRate) {
    Json request = demoRequest(1, 2, "Demo low-drift fan 03");
    const Json sensed = ask(request);
    EXPECT_FALSE(sensed.contains("by_hand"));
    request["machine"]["senses"] = "nothing";
    const Json byHand = ask(request);
    EXPECT_EQ(byHand["high"]["speed"], sensed["high"]["speed"]);
    ASSERT_EQ(byHand["by_hand"].size(), 5U);
    EXPECT_EQ(number(byHand["by_hand"][0]["speed"], "km/h"), 8.0);
    EXPECT_EQ(number(byHand["by_hand"][4]["speed"], "km/h"), 12.0);
    EXPECT_DOUBLE_EQ(number(byHand["by_hand"][2]["pressure"], "bar"),
                     number(sensed["at"]["usual"]["sensor_pressure"], "bar"));
    // Nothing measures the flow: the meter bounds nothing and is not missed.
    EXPECT_THAT(limitsOf(byHand["low"]), Not(Contains("meter_minimum")));
    EXPECT_THAT(words(byHand["not_checked"]), Not(Contains("meter")));
}

TEST(CalcWindow, TheMetersDefaultsComeFromTheChangeoverFlow) {
    Json request = bareRequest();
    request["machine"]["restrictor"] = {{"changeover_flow", "28 gal/min"}};
    request["machine"]["meter"] = {{"maximum", "75 gal/min"}};
    const auto lowest = [&] { return number(ask(request)["low"]["speed"], "mph"); };
    const double perMph = 9.9 * 90 / 495;
    EXPECT_NEAR(lowest(), 28 / perMph, 1e-9);
    request["machine"]["restrictor"]["position"] = "narrowed";
    EXPECT_NEAR(lowest(), 7 / perMph, 1e-9);
    request["machine"].erase("restrictor");
    EXPECT_THAT(words(ask(request)["not_checked"]), Contains("meter"));
    EXPECT_TRUE(ask(request)["restrictor"].is_null());
}

TEST(CalcWindow, ARestrictorWithoutAChangeoverFlowGivesNoAdvice) {
    Json request = bareRequest();
    request["machine"]["restrictor"] = {{"hole", "0.5 in"}, {"position", "narrowed"}};
    const Json answer = ask(request);
    EXPECT_TRUE(answer["restrictor"].is_null());
    EXPECT_THAT(words(answer["not_checked"]), Contains("pump"));
}

TEST(CalcWindow, TheFloorAdviceIsRoundedInTheAnswersUnits) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    Json floor = ask(request)["floor"];
    EXPECT_NEAR(number(floor["recommended"], "psi"), 15.0, 1e-9);
    EXPECT_LT(number(floor["least"], "psi"), 15.0);
    request["units"] = "metric";
    floor = ask(request)["floor"];
    EXPECT_NEAR(number(floor["recommended"], "bar"), 1.1, 1e-9);
    request["nozzle"].erase("pressure_min");
    floor = ask(request)["floor"];
    EXPECT_EQ(floor.size(), 1U);
    EXPECT_TRUE(floor.contains("most"));
}

TEST(CalcWindow, NoFloorIsRecommendedWhereNoneFits) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["job"]["slow"] = "5 mph";
    EXPECT_TRUE(ask(request)["floor"]["recommended"].is_null());
}

TEST(CalcWindow, PulsedNozzlesStandAtTheirSetPressure) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["machine"]["pulsed"] = {{"pressure", "40 psi"}, {"duty_min", 0.4}};
    const Json answer = ask(request);
    EXPECT_TRUE(answer["floor"].is_null());
    for (const char* at : {"slow", "usual", "fast"})
        EXPECT_NEAR(number(answer["at"][at]["nozzle_pressure"], "psi"), 40.0, 1e-9);
    // The least duty at 0.4 of the flow that 40 psi gives: 1.58 L/min at 3 bar, 60
    // nozzles.
    const double full = 60 * 1.58 / 3.785411784 * std::sqrt(40 * 6894.757293168 / 3e5);
    EXPECT_NEAR(number(answer["low"]["speed"], "mph"), 0.4 * full * 495 / (8 * 100), 1e-6);
    EXPECT_EQ(answer["low"]["limit"], "duty_minimum");
    EXPECT_THAT(words(answer["not_checked"]),
                Not(::testing::AnyOf(Contains("pressure_floor"), Contains("pressure_ceiling"),
                                     Contains("control_minimum"))));
    request["machine"]["pulsed"]["pressure"] = "95 psi";
    EXPECT_EQ(ask(request)["why"], "nozzle_maximum");
    request["machine"]["pulsed"]["pressure"] = "55 psi";
    EXPECT_EQ(ask(request)["why"], "droplets_none");
}

TEST(CalcWindow, ARangeOfRatesHasAWindowForAllOfThem) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    const Json one = ask(request);
    EXPECT_FALSE(one.contains("all_rates"));
    request["job"]["rate_least"] = "7 gal/ac";
    request["job"]["rate_most"] = "9 gal/ac";
    const Json answer = ask(request);
    EXPECT_EQ(answer["low"], one["low"]);
    const Json all = answer["all_rates"];
    EXPECT_NEAR(number(all["low"]["speed"], "mph"), number(one["low"]["speed"], "mph") * 8 / 7,
                1e-9);
    EXPECT_NEAR(number(all["high"]["speed"], "mph"), number(one["high"]["speed"], "mph") * 8 / 9,
                1e-9);
    EXPECT_EQ(all["low"]["limit"], "pressure_floor");
    EXPECT_FALSE(all["empty"]);
}

TEST(CalcWindow, SectionsShutFromTheLastOneUntilTheMeterLosesThem) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    const Json off = ask(request)["sections_off"];
    ASSERT_EQ(off.size(), 5U);
    const double all = number(off[0]["flow"], "gal/min");
    EXPECT_NEAR(number(off[4]["flow"], "gal/min"), all * 10 / 60, 1e-9);
    EXPECT_FALSE(off[3]["under_minimum"].get<bool>());
    EXPECT_TRUE(off[4]["under_minimum"].get<bool>());
    request["machine"]["section_returns"] = "metered";
    EXPECT_NEAR(number(ask(request)["sections_off"][4]["flow"], "gal/min"), all, 1e-9);
    request["machine"]["section_returns"] = "none";
    request["machine"].erase("meter");
    request["machine"].erase("restrictor");
    EXPECT_TRUE(ask(request)["sections_off"][4]["under_minimum"].is_null());
}

TEST(CalcWindow, AssumedValuesWithARangeSayHowFarTheyMoveTheAnswer) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["machine"]["limits"]["pressure_floor"] = {
        {"value", "18 psi"}, {"origin", "assumed"}, {"from", "15 psi"}, {"to", "25 psi"}};
    request["machine"]["limits"]["top_speed"] = {{"value", "20 mph"}, {"origin", "assumed"}};
    request["nozzle"]["pressure_min"] = {
        {"value", "1 bar"}, {"origin", "measured"}, {"from", "0.9 bar"}, {"to", "1.1 bar"}};
    const Json restsOn = ask(request)["rests_on"];
    ASSERT_EQ(restsOn.size(), 1U) << restsOn;
    EXPECT_EQ(restsOn[0]["value"], "machine.limits.pressure_floor");
    EXPECT_EQ(restsOn[0]["origin"], "assumed");
    for (const auto& [end, floor] : {std::pair{"from", "15 psi"}, std::pair{"to", "25 psi"}}) {
        Json fixed = request;
        fixed["machine"]["limits"]["pressure_floor"] = floor;
        const Json there = ask(fixed);
        EXPECT_EQ(restsOn[0]["moves"]["low"][end], there["low"]["speed"]);
        EXPECT_EQ(restsOn[0]["moves"]["high"][end], there["high"]["speed"]);
    }
}

Json assumed(const char* value, const char* from, const char* to) {
    return {{"value", value}, {"origin", "assumed"}, {"from", from}, {"to", to}};
}

TEST(CalcWindow, NamesTheYardCheckThatFirmsItUpMost) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    EXPECT_TRUE(ask(request)["firm_up"].is_null()) << "nothing is assumed";
    request["machine"]["losses"]["section"]["pressure"] = assumed("1.5 psi", "0 psi", "4 psi");
    request["machine"]["limits"]["pressure_floor"] = assumed("18 psi", "17 psi", "19 psi");
    const Json answer = ask(request);
    ASSERT_EQ(answer["firm_up"]["check"], "Y2") << answer["firm_up"];
    EXPECT_EQ(answer["firm_up"]["values"], Json::array({"machine.losses.section.pressure"}));
    for (const auto& item : answer["rests_on"]) {
        if (item["value"] == "machine.limits.pressure_floor") {
            EXPECT_TRUE(item["check"].is_null());
            continue;
        }
        EXPECT_EQ(item["check"], "Y2");
        // One value alone: what the check tells apart is what the value moves.
        EXPECT_EQ(item["moves"]["low"]["from"], answer["firm_up"]["low"]["to"]);
        EXPECT_EQ(item["moves"]["low"]["to"], answer["firm_up"]["low"]["from"]);
    }
    EXPECT_GT(answer["firm_up"]["shrinks"]["value"].get<double>(), 0);
}

TEST(CalcWindow, ARangeWhoseEndLeavesNoWindowIsNamedAllTheSame) {
    Json request = bareRequest();
    request["machine"]["limits"] = {
        {"pressure_ceiling", "50 psi"},
        {"pressure_floor",
         {{"value", "30 psi"}, {"origin", "assumed"}, {"from", "20 psi"}, {"to", "60 psi"}}}};
    const Json restsOn = ask(request)["rests_on"];
    ASSERT_EQ(restsOn.size(), 1U);
    EXPECT_TRUE(restsOn[0]["moves"].is_null());
}

TEST(CalcWindow, NullIsTheSameAsAbsent) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    Json nulled = request;
    for (const char* key : {"pump", "restrictor", "meter", "agitation"}) {
        request["machine"].erase(key);
        nulled["machine"][key] = nullptr;
    }
    nulled["job"]["drift_percent"] = nullptr;
    nulled["units"] = nullptr;
    EXPECT_EQ(ask(nulled), ask(request));
}

TEST(CalcWindow, TheOrderOfRowsDoesNotMatter) {
    Json request = demoRequest(1, 2, "Demo low-drift fan 03");
    const Json answer = ask(request);
    Json& droplets = request["nozzle"]["droplets"];
    std::reverse(droplets.begin(), droplets.end());
    EXPECT_EQ(ask(request), answer);
}

TEST(CalcWindow, RefusalsSayWhere) {
    const auto where = [](const std::string& pointer, const Json& value) {
        Json request = demoRequest(0, 0, "Demo low-drift fan 04");
        request[Json::json_pointer(pointer)] = value;
        return refused(request)["where"].get<std::string>();
    };
    EXPECT_EQ(where("/machine", nullptr), "machine");
    EXPECT_EQ(where("/nozzle", nullptr), "nozzle");
    EXPECT_EQ(where("/job", nullptr), "job");
    EXPECT_EQ(where("/machine/spacing", nullptr), "machine.spacing");
    EXPECT_EQ(where("/machine/sections/2", -1), "machine.sections[2]");
    EXPECT_EQ(where("/machine/limits/pressure_floor", "2,8 bar"), "machine.limits.pressure_floor");
    EXPECT_EQ(where("/machine/limits/pressure_floor", "85 psi"), "machine.limits.pressure_floor");
    EXPECT_EQ(where("/machine/pump/curve/0/1", "300 psi"), "machine.pump.curve");
    EXPECT_EQ(where("/nozzle/droplets/1/from", "1.7 bar"), "nozzle.droplets[1].from");
    EXPECT_EQ(where("/nozzle/exponent", 0), "nozzle.exponent");
    EXPECT_EQ(where("/job/slow", "14.5 mph"), "job.slow");
    EXPECT_EQ(where("/job/fast", "13 mph"), "job.fast");
    EXPECT_EQ(where("/job/droplet", "C"), "job.droplet");
}

TEST(CalcWindow, MessagesShowValuesInTheMachinesUnits) {
    Json request = demoRequest(0, 0, "Demo low-drift fan 04");
    request["machine"]["limits"]["pressure_floor"] = "90 psi";
    EXPECT_THAT(refused(request)["what"].get<std::string>(), HasSubstr("90 psi"));
}

}  // namespace
}  // namespace bw
