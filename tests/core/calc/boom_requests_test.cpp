// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;

Json evennessRequest() {
    return Json::parse(R"({"do": "boom_evenness", "units": "metric", "pressure": "3 bar",
        "machine": {"spacing": "50 cm", "sections": [12, 12, 12, 12]},
        "nozzle": {"flow": "1.6 L/min", "at": "3 bar"},
        "boom_pipe": {"bore": "19 mm", "feed": [12, 37], "roughness": "0.0015 mm",
                      "viscosity": "1 mm2/s"}})");
}

TEST(CalcBoom, TheFeedHoldsItsPressureAndTheBoomLosesOnTheWay) {
    const Json answer = ask(evennessRequest());
    const Json& nozzles = answer["nozzles"];
    ASSERT_EQ(nozzles.size(), 48U);
    EXPECT_NEAR(number(nozzles[11]["pressure"], "bar"), 3.0, 1e-9);
    EXPECT_NEAR(number(nozzles[36]["pressure"], "bar"), 3.0, 1e-9);
    EXPECT_NEAR(number(nozzles[11]["flow"], "L/min"), 1.6, 1e-9);
    EXPECT_LT(number(nozzles[23]["pressure"], "bar"), 3.0);
    double least = 3.0;
    for (const auto& n : nozzles) least = std::min(least, number(n["pressure"], "bar"));
    EXPECT_NEAR(answer["drop"].get<double>(), 100 * (1 - least / 3.0), 1e-9);
    EXPECT_GT(answer["cv"].get<double>(), 0.0);
}

TEST(CalcBoom, AWiderPipeARingAndAnotherFeedMakeItMoreEven) {
    const double plain = ask(evennessRequest())["drop"];
    Json wider = evennessRequest();
    wider["boom_pipe"]["bore"] = "25 mm";
    EXPECT_LT(ask(wider)["drop"].get<double>(), plain);
    Json one = evennessRequest();
    one["boom_pipe"]["feed"] = {12};
    const double fromOne = ask(one)["drop"];
    EXPECT_GT(fromOne, plain);
    one["boom_pipe"]["ring"] = true;
    EXPECT_LT(ask(one)["drop"].get<double>(), fromOne);
}

TEST(CalcBoom, RefusesWhatIsNoBoom) {
    const auto where = [](const char* key, const Json& value) {
        Json request = evennessRequest();
        request["boom_pipe"][key] = value;
        return refused(request)["where"].get<std::string>();
    };
    EXPECT_EQ(where("bore", "0 mm"), "boom_pipe.bore");
    EXPECT_EQ(where("bore", "19 bar"), "boom_pipe.bore");
    EXPECT_EQ(where("feed", Json::array()), "boom_pipe.feed");
    EXPECT_EQ(where("feed", {49}), "boom_pipe.feed");
    EXPECT_EQ(where("bores", "19 mm"), "boom_pipe.bores");
    EXPECT_EQ(where("bore", nullptr), "boom_pipe.bore");
    EXPECT_EQ(where("viscosity", "0 mm2/s"), "boom_pipe.viscosity");
    Json none = evennessRequest();
    none.erase("boom_pipe");
    EXPECT_EQ(refused(none)["where"], "boom_pipe");
    Json noPressure = evennessRequest();
    noPressure["pressure"] = "0 bar";
    EXPECT_EQ(refused(noPressure)["where"], "pressure");
}

Json withOwnPipe(const Json& pipe) {
    Json request = evennessRequest();
    request.erase("boom_pipe");
    request["machine"]["boom_pipe"] = pipe;
    return request;
}

TEST(CalcBoom, TheMachinesOwnPipeIsTakenWhereTheRequestSaysNothing) {
    const Json own = {{"bore", "19 mm"}, {"feeds", {12, 37}}};
    EXPECT_EQ(ask(withOwnPipe(own)), ask(evennessRequest()));
    Json one = {{"bore", "19 mm"}, {"feeds", {12}}};
    const double fromOne = ask(withOwnPipe(one))["drop"];
    one["ring"] = true;
    EXPECT_LT(ask(withOwnPipe(one))["drop"].get<double>(), fromOne);
    // What the request says goes first, the rest stays the machine's.
    Json wider = withOwnPipe(own);
    wider["boom_pipe"] = {{"bore", "25 mm"}};
    Json whole = evennessRequest();
    whole["boom_pipe"]["bore"] = "25 mm";
    EXPECT_EQ(ask(wider), ask(whole));
    EXPECT_EQ(refused(withOwnPipe({{"bore", "19 mm"}}))["where"], "machine.boom_pipe.feeds");
    EXPECT_EQ(refused(withOwnPipe({{"feeds", {12}}}))["where"], "machine.boom_pipe.bore");
    EXPECT_EQ(refused(withOwnPipe({{"bore", "19 mm"}, {"feeds", {49}}}))["where"],
              "machine.boom_pipe.feeds");
}

Json lineRequest() {
    return Json::parse(R"({"do": "line_loss", "bore": "25 mm", "length": "3 m", "flow": "60 L/min",
        "fittings": ["short_elbow", "short_elbow", "tee_branch"]})");
}

/// What comes out goes into a machine's losses as it is.
TEST(CalcLine, ARunOfPipeIsReadyForTheMachinesLosses) {
    const Json answer = ask(lineRequest());
    // By hand: 3.6 velocity heads of 2075.06 Pa.
    EXPECT_NEAR(number(answer["fittings"], "bar"), 3.6 * 0.0207506, 1e-6);
    EXPECT_NEAR(number(answer["pressure"], "bar"),
                number(answer["fittings"], "bar") + number(answer["friction"], "bar"), 1e-12);
    Json window = Json::parse(R"({"do": "speed_window",
        "machine": {"spacing": "0.5 m", "sections": [36],
                    "pump": {"kind": "centrifugal", "shutoff_pressure": "6 bar",
                             "curve": [["200 L/min", "4 bar"]]}},
        "nozzle": {"flow": "1.6 L/min", "at": "3 bar"},
        "job": {"rate": "150 L/ha", "usual": "12 km/h"}})");
    const double free = number(ask(window)["high"]["speed"], "km/h");
    const auto text = [](const Json& q) {
        return std::to_string(q["value"].get<double>()) + " " + q["unit"].get<std::string>();
    };
    window["machine"]["losses"]["plumbing"] = {{"pressure", text(answer["pressure"])},
                                               {"at", text(answer["at"])}};
    EXPECT_LT(number(ask(window)["high"]["speed"], "km/h"), free);
}

TEST(CalcLine, RefusesWhatItCannotReckon) {
    const auto where = [](const char* key, const Json& value) {
        Json request = lineRequest();
        request[key] = value;
        return refused(request)["where"].get<std::string>();
    };
    EXPECT_EQ(where("bore", nullptr), "bore");
    EXPECT_EQ(where("bore", "0 mm"), "bore");
    EXPECT_EQ(where("flow", "-1 L/min"), "flow");
    EXPECT_EQ(where("fittings", {"short_elbow", "elbows"}), "fittings[1]");
    EXPECT_EQ(where("length", "3 bar"), "length");
    EXPECT_EQ(where("lenght", "3 m"), "lenght");
}

Json turnRequest(const char* radius) {
    Json request = Json::parse(R"({"do": "turn",
        "machine": {"spacing": "50 cm", "sections": [24, 25, 24]},
        "job": {"rate": "150 L/ha", "usual": "12 km/h"}})");
    request["radius"] = radius;
    return request;
}

/// 73 nozzles: the last one stands 18 m from the centre.
TEST(CalcTurn, TheInnerEndSlowsStandsAndBacksUp) {
    const Json wide = ask(turnRequest("36 m"));
    EXPECT_NEAR(number(wide["inner"]["speed"], "km/h"), 6.0, 1e-9);
    EXPECT_NEAR(number(wide["inner"]["rate"], "L/ha"), 300.0, 1e-9);
    EXPECT_NEAR(number(wide["outer"]["speed"], "km/h"), 18.0, 1e-9);
    EXPECT_NEAR(number(wide["outer"]["rate"], "L/ha"), 100.0, 1e-9);
    const Json stands = ask(turnRequest("18 m"));
    EXPECT_EQ(number(stands["inner"]["speed"], "km/h"), 0.0);
    EXPECT_TRUE(stands["inner"]["rate"].is_null());
    const Json back = ask(turnRequest("9 m"));
    EXPECT_NEAR(number(back["inner"]["speed"], "km/h"), -12.0, 1e-9);
    EXPECT_NEAR(number(back["inner"]["rate"], "L/ha"), 150.0, 1e-9);
    EXPECT_EQ(refused(turnRequest("0 m"))["where"], "radius");
    EXPECT_EQ(refused(turnRequest("-3 m"))["where"], "radius");
}

TEST(CalcTurn, RefusesWhatIsMissing) {
    for (const auto& [part, key] : {std::pair{"machine", "spacing"},
                                    {"machine", "sections"},
                                    {"job", "usual"},
                                    {"job", "rate"}}) {
        Json request = turnRequest("36 m");
        request[part].erase(key);
        EXPECT_EQ(refused(request)["where"], std::string(part) + "." + key);
        request[part][key] = nullptr;
        EXPECT_EQ(refused(request)["where"], std::string(part) + "." + key);
    }
    Json bare = turnRequest("36 m");
    bare.erase("radius");
    EXPECT_EQ(refused(bare)["where"], "radius");
}

}  // namespace
}  // namespace bw
