// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;

double converted(const std::string& value, const std::string& to, const std::string& symbol) {
    return number(ask(Json{{"do", "convert"}, {"value", value}, {"to", to}})["value"], symbol);
}

TEST(CalcConvert, ConvertsExactly) {
    // Exact by definition: inch 25.4 mm, US gallon 231 in3, pound 0.45359237 kg, acre 43560 ft2.
    EXPECT_DOUBLE_EQ(converted("1 gal", "L", "L"), 3.785411784);
    EXPECT_DOUBLE_EQ(converted("1 mph", "km/h", "km/h"), 1.609344);
    EXPECT_DOUBLE_EQ(converted("1 psi", "kPa", "kPa"),
                     0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000);
    EXPECT_DOUBLE_EQ(converted("1 ac", "ha", "ha"), 43560 * 0.3048 * 0.3048 / 1e4);
    EXPECT_DOUBLE_EQ(converted("1 gal/ac", "L/ha", "L/ha"),
                     3.785411784 / (43560 * 0.3048 * 0.3048 / 1e4));
    EXPECT_DOUBLE_EQ(converted("128 fl oz", "gal", "gal"), 1.0);
    EXPECT_DOUBLE_EQ(converted("60 gal/min", "L/min", "L/min"), 60 * 3.785411784);
    EXPECT_DOUBLE_EQ(converted("1 mm2/s", "mm2/s", "mm2/s"), 1.0);
    EXPECT_DOUBLE_EQ(converted("2 min", "s", "s"), 120.0);
    EXPECT_DOUBLE_EQ(converted("7 1/2 in", "cm", "cm"), 19.05);
    EXPECT_DOUBLE_EQ(converted("-1 bar", "kPa", "kPa"), -100.0);
}

TEST(CalcConvert, RefusesWhatItCannotMean) {
    const auto where = [](const Json& request) {
        return refused(request)["where"].get<std::string>();
    };
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2,8 bar"}, {"to", "psi"}}), "value");
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2.8"}, {"to", "psi"}}), "value");
    EXPECT_EQ(where({{"do", "convert"}, {"value", 2.8}, {"to", "psi"}}), "value");
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2.8 bar"}, {"to", "mph"}}), "to");
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2.8 bar"}, {"to", "bars per mile"}}), "to");
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2.8 bar"}}), "to");
    EXPECT_EQ(where({{"do", "convert"}, {"to", "psi"}}), "value");
    EXPECT_EQ(where({{"do", "convert"}, {"value", "2.8 bar"}, {"too", "psi"}}), "too");
    EXPECT_EQ(where({{"do", "convert"}, {"value", nullptr}, {"to", "psi"}}), "value");
}

TEST(CalcNozzle, FlowAndPressureAreEachOthersInverse) {
    for (const double gravity : {1.0, 1.28}) {
        for (
            const char* nozzle :
            {R"({"flow": "1.18 L/min", "at": "3 bar"})",
             R"({"flow": "1.18 L/min", "at": "3 bar", "exponent": 0.47})",
             R"({"table": [["0.8 bar", "1.30 L/min"], ["1.5 bar", "1.74 L/min"], ["4 bar", "2.73 L/min"]]})"}) {
            const Json flow = ask(Json{{"do", "nozzle_flow"},
                                       {"nozzle", Json::parse(nozzle)},
                                       {"pressure", "2.2 bar"},
                                       {"specific_gravity", gravity}});
            const double value = number(flow["flow"], "L/min");
            char text[64];
            std::snprintf(text, sizeof text, "%.17g L/min", value);
            const Json pressure = ask(Json{{"do", "nozzle_pressure"},
                                           {"nozzle", Json::parse(nozzle)},
                                           {"flow", text},
                                           {"specific_gravity", gravity}});
            EXPECT_NEAR(number(pressure["pressure"], "bar"), 2.2, 1e-12);
        }
    }
}

TEST(CalcNozzle, FollowsTheSquareRootOfPressureOverDensity) {
    const Json nozzle = Json::parse(R"({"flow": "0.4 gal/min", "at": "40 psi"})");
    const Json request{
        {"do", "nozzle_flow"}, {"units", "us"}, {"nozzle", nozzle}, {"pressure", "62.5 psi"}};
    EXPECT_NEAR(number(ask(request)["flow"], "gal/min"), 0.4 * std::sqrt(62.5 / 40), 1e-13);
    Json heavy = request;
    heavy["specific_gravity"] = 1.28;
    EXPECT_NEAR(number(ask(heavy)["flow"], "gal/min"), 0.4 * std::sqrt(62.5 / 40 / 1.28), 1e-13);
}

TEST(CalcNozzle, ATableSaysItsFitAndWhereItEnds) {
    Json request = Json::parse(R"({"do": "nozzle_flow", "pressure": "5 bar",
        "nozzle": {"table": [["4 bar", "2 L/min"], ["1 bar", "1 L/min"]]}})");
    const Json beyond = ask(request);
    EXPECT_NEAR(beyond["fit"]["exponent"].get<double>(), 0.5, 1e-12);
    EXPECT_TRUE(beyond["extrapolated"]);
    request["pressure"] = "2 bar";
    EXPECT_FALSE(ask(request)["extrapolated"]);
    EXPECT_NEAR(number(ask(request)["flow"], "L/min"), std::sqrt(2.0), 1e-12);
}

TEST(CalcNozzle, NothingFlowsAtNothing) {
    const Json request = Json::parse(
        R"({"do": "nozzle_flow", "pressure": "0 bar", "nozzle": {"flow": "1 L/min", "at": "3 bar"}})");
    EXPECT_EQ(number(ask(request)["flow"], "L/min"), 0.0);
}

TEST(CalcNozzle, RefusesWhatCannotBe) {
    Json request = Json::parse(
        R"({"do": "nozzle_flow", "pressure": "2 bar", "nozzle": {"flow": "1 L/min", "at": "3 bar"}})");
    const auto whereWith = [&](const std::string& pointer, const Json& value) {
        Json changed = request;
        changed[Json::json_pointer(pointer)] = value;
        return refused(changed)["where"].get<std::string>();
    };
    EXPECT_EQ(whereWith("/pressure", "-2 bar"), "pressure");
    EXPECT_EQ(whereWith("/pressure", "1e6 bar"), "pressure");
    EXPECT_EQ(whereWith("/pressure", "2 L/min"), "pressure");
    EXPECT_EQ(whereWith("/specific_gravity", 0), "specific_gravity");
    EXPECT_EQ(whereWith("/specific_gravity", -1), "specific_gravity");
    EXPECT_EQ(whereWith("/specific_gravity", "1.2"), "specific_gravity");
    EXPECT_EQ(whereWith("/nozzle/flow", nullptr), "nozzle.flow");
    EXPECT_EQ(whereWith("/nozzle", nullptr), "nozzle");
    EXPECT_EQ(whereWith("/machine", Json::object()), "machine");
    EXPECT_EQ(whereWith("/units", "imperial"), "units");
}

TEST(CalcAnswers, ComeInTheRequestsUnitsElseTheMachinesElseMetric) {
    Json request = bareRequest();
    const auto speedUnit = [&] {
        return ask(request)["at"]["usual"]["speed"]["unit"].get<std::string>();
    };
    const auto rateUnit = [&] {
        return ask(request)["at"]["usual"]["rate"]["unit"].get<std::string>();
    };
    EXPECT_EQ(speedUnit() + " " + rateUnit(), "mph gal/ac");
    request["units"] = "metric";
    EXPECT_EQ(speedUnit() + " " + rateUnit(), "km/h L/ha");
    request["units"] = "uk";
    EXPECT_EQ(speedUnit() + " " + rateUnit(), "mph L/ha");
    request.erase("units");
    request["machine"].erase("units");
    EXPECT_EQ(speedUnit() + " " + rateUnit(), "km/h L/ha");
}

TEST(CalcAnswers, CarryTwelveDigitsAndMore) {
    const auto answer = calc::answerTo(R"({"do": "convert", "value": "1 psi", "to": "bar"})");
    EXPECT_THAT(answer.text, ::testing::HasSubstr("0.0689475729316"));
}

TEST(CalcAnswers, AreOneLine) {
    EXPECT_EQ(calc::answerTo(bareRequest().dump(2)).text.find('\n'), std::string::npos);
    EXPECT_EQ(calc::answerTo("[\n]").text.find('\n'), std::string::npos);
}

TEST(CalcAnswers, AnUnknownDoNamesTheKnownOnes) {
    const Json error = refusedText(R"({"do": "speedwindow"})");
    EXPECT_EQ(error["where"], "do");
    EXPECT_THAT(error["what"].get<std::string>(),
                ::testing::AllOf(::testing::HasSubstr("nearest known one is \"speed_window\""),
                                 ::testing::HasSubstr("nozzle_pressure")));
    EXPECT_EQ(refusedText("{}")["where"], "do");
    EXPECT_EQ(refusedText(R"({"do": 3})")["where"], "do");
    EXPECT_EQ(refusedText(R"({"do": null})")["where"], "do");
    EXPECT_EQ(refusedText(R"([1, 2])")["where"], "");
    EXPECT_EQ(refusedText("")["where"], "");
}

TEST(CalcAnswers, AnUnknownKeyIsRefusedAndTheNearestNamed) {
    Json request = bareRequest();
    request["machin"] = 1;
    EXPECT_EQ(refused(request)["where"], "machin");
    EXPECT_THAT(refused(request)["what"].get<std::string>(), ::testing::HasSubstr("\"machine\""));
}

TEST(CalcKnowledge, NamesCausesAndChecksWithTheirAnswers) {
    const Json all = ask(Json{{"do", "knowledge"}});
    EXPECT_EQ(all["symptoms"].size(), 9U);
    EXPECT_GT(all["causes"].size(), 20U);
    std::set<std::string> ids;
    for (const auto& cause : all["causes"]) EXPECT_TRUE(ids.insert(cause["id"]).second) << cause;
    EXPECT_TRUE(ids.contains("line_strainer") && ids.contains("restrictor_position") &&
                ids.contains("floor_high"));
    for (const auto& check : all["checks"]) {
        EXPECT_TRUE(check.contains("answers") || check.contains("reading")) << check;
        EXPECT_FALSE(check["question"].get<std::string>().empty()) << check;
        if (check["place"] == "line_opened") {
            EXPECT_FALSE(check["cautions"].empty()) << check;
        }
    }
    EXPECT_EQ(refusedText(R"({"do": "knowledge", "machine": {}})")["where"], "machine");
}

}  // namespace
}  // namespace bw
