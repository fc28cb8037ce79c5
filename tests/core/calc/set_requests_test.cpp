// SPDX-License-Identifier: GPL-3.0-or-later
// Requests of the season; machines, nozzles, jobs and prices are invented, sums worked by hand.
#include "tests/core/calc/asking.h"

namespace bw::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

/// 36 m, nozzles at 0.5 m. "small" ends at 1.5 L/min, 12 km/h at 150 L/ha; "big" begins at 1.155.
Json smallAndBig() {
    return Json::parse(R"({"do": "choose_sets",
      "machine": {"spacing": "0.5 m", "sections": [36, 36]},
      "nozzles": [
        {"name": "small", "flow": "1.06066 L/min", "at": "3 bar", "pressure_min": "1 bar",
         "pressure_max": "6 bar", "price": 5},
        {"name": "big", "flow": "2 L/min", "at": "3 bar", "pressure_min": "1 bar",
         "pressure_max": "6 bar", "price": 8}],
      "jobs": [
        {"name": "Barley", "rate": "150 L/ha", "usual": "14 km/h", "area": "120 ha"},
        {"name": "Oats", "rate": "100 L/ha", "slow": "8 km/h", "usual": "9 km/h",
         "fast": "10 km/h", "area": "40 ha"}]})");
}

TEST(SetRequests, ChoosesSetsAndTellsWhatTheyAreWorth) {
    const Json answer = ask(smallAndBig());
    ASSERT_EQ(answer["sets"].size(), 2U);
    EXPECT_EQ(answer["sets"][0]["nozzle"], "small");
    EXPECT_THAT(answer["sets"][0]["jobs"], ElementsAre("Oats"));
    EXPECT_DOUBLE_EQ(answer["sets"][0]["price"], 360);
    EXPECT_THAT(answer["sets"][1]["jobs"], ElementsAre("Barley"));
    EXPECT_THAT(
        answer["sets"][1]["without"],
        ElementsAre("Barley (120 ha) runs at 12 km/h, not 14 km/h, with small: 0.4 h more."));
    EXPECT_DOUBLE_EQ(answer["price"], 936);
    EXPECT_TRUE(answer["uncovered"].empty());
    ASSERT_EQ(answer["alternatives"].size(), 1U);
    EXPECT_EQ(answer["alternatives"][0]["kind"], "one_fewer");
    EXPECT_EQ(answer["alternatives"][0]["sets"][0]["nozzle"], "big");
    EXPECT_DOUBLE_EQ(answer["alternatives"][0]["price"], 576);
    EXPECT_THAT(answer["not_checked"], ::testing::Contains("pump"));
}

TEST(SetRequests, SmallestChangeDoesWhenAskedAgain) {
    Json request = smallAndBig();
    request["nozzles"].erase(1);
    request["jobs"][0]["slow"] = "11 km/h";
    request["jobs"][0]["usual"] = "11.5 km/h";
    request["jobs"][0]["fast"] = "13 km/h";
    Json answer = ask(request);
    ASSERT_EQ(answer["uncovered"].size(), 1U);
    const Json lost = answer["uncovered"][0];
    EXPECT_EQ(lost["job"], "Barley");
    EXPECT_THAT(lost["usual_only"], ElementsAre("small"));
    EXPECT_EQ(lost["limit"], "nozzle_maximum");
    EXPECT_THAT(lost["why"].get<std::string>(), HasSubstr("small holds the usual 11.5 km/h"));
    const Json change = lost["smallest_change"];
    EXPECT_EQ(change["what"], "speed");
    EXPECT_EQ(change["nozzle"], "small");
    EXPECT_EQ(change["bound"], "most");
    EXPECT_NEAR(number(change["value"], "km/h"), 12, 1e-4);
    const auto speed = std::to_string(number(change["value"], "km/h") - 1e-6) + " km/h";
    request["jobs"][0]["fast"] = speed;
    EXPECT_TRUE(ask(request)["uncovered"].empty());
    request["jobs"][0]["fast"] = "12.01 km/h";
    EXPECT_EQ(ask(request)["uncovered"].size(), 1U);
}

TEST(SetRequests, UnknownNeverPassesUnlessAccepted) {
    Json request = smallAndBig();
    request["jobs"][0]["droplets"] = {"C"};
    Json answer = ask(request);
    ASSERT_EQ(answer["uncovered"].size(), 1U);
    EXPECT_THAT(answer["uncovered"][0]["why"].get<std::string>(), HasSubstr("not known"));
    EXPECT_TRUE(answer["uncovered"][0]["smallest_change"].is_null());
    Json ofNozzle = request;
    ofNozzle["nozzles"][1]["accept_unchecked"] = true;
    answer = ask(ofNozzle);
    EXPECT_TRUE(answer["uncovered"].empty());
    EXPECT_THAT(answer["taken_unchecked"], ElementsAre("droplets"));
    request["accept_unchecked"] = true;
    EXPECT_TRUE(ask(request)["uncovered"].empty());
}

TEST(SetRequests, OwnedBarredAndSpares) {
    Json request = smallAndBig();
    request["owned"] = {"big"};
    request["spares"] = 0.05;
    Json answer = ask(request);
    EXPECT_DOUBLE_EQ(answer["price"], (72 + 4) * 5);
    EXPECT_EQ(answer["sets"][1]["to_buy"], 0);
    request["barred"] = {"big"};
    EXPECT_THAT(ask(request)["uncovered"][0]["why"].get<std::string>(), HasSubstr("ruled out"));
    request["nozzles"][0].erase("price");
    EXPECT_TRUE(ask(request)["price"].is_null());
}

TEST(SetRequests, RefusesWhatItCannotTake) {
    Json request = smallAndBig();
    request["owned"] = {"bigg"};
    EXPECT_EQ(refused(request)["where"], "owned[0]");
    request = smallAndBig();
    request["nozzles"][1]["name"] = "small";
    EXPECT_EQ(refused(request)["where"], "nozzles[1].name");
    request = smallAndBig();
    request["jobs"] = 3;
    EXPECT_EQ(refused(request)["where"], "jobs");
    request = smallAndBig();
    request["jobs"][1].erase("rate");
    EXPECT_EQ(refused(request)["where"], "jobs[1].rate");
    request = smallAndBig();
    request["spares"] = 2;
    EXPECT_EQ(refused(request)["where"], "spares");
    request = smallAndBig();
    request.erase("nozzles");
    EXPECT_EQ(refused(request)["where"], "nozzles");
}

TEST(SetRequests, EmptyLists) {
    Json request = smallAndBig();
    request["jobs"] = Json::array();
    EXPECT_TRUE(ask(request)["sets"].empty());
    request = smallAndBig();
    request["nozzles"] = Json::array();
    EXPECT_EQ(ask(request)["uncovered"].size(), 2U);
}

/// 15,000 L from a 4,000 L tank: three full ones and 3,000 L.
TEST(WorkRequests, Loads) {
    Json request{
        {"do", "loads"},
        {"tank", "4000 L"},
        {"rate", "150 L/ha"},
        {"area", "100 ha"},
        {"specific_gravity", 1.28},
        {"products",
         {{{"name", "liquid"}, {"rate", "3 L/ha"}}, {{"name", "powder"}, {"rate", "0.5 kg/ha"}}}}};
    const Json answer = ask(request);
    EXPECT_EQ(answer["loads"], 4);
    EXPECT_EQ(answer["full_loads"], 3);
    EXPECT_NEAR(number(answer["last"]["volume"], "L"), 3000, 1e-6);
    EXPECT_NEAR(number(answer["last"]["products"][0]["amount"], "L"), 60, 1e-9);
    EXPECT_NEAR(number(answer["last"]["products"][1]["amount"], "kg"), 10, 1e-9);
    EXPECT_NEAR(number(answer["full"]["water"], "L"), 3920, 1e-6);
    EXPECT_NEAR(number(answer["full"]["weight"], "kg"), 5120, 1e-6);
    request["area"] = "80 ha";
    EXPECT_TRUE(ask(request)["last"].is_null());
    request["products"][0]["rate"] = "3 L";
    EXPECT_EQ(refused(request)["where"], "products[0].rate");
    request["products"][0]["rate"] = "200 L/ha";
    EXPECT_EQ(refused(request)["where"], "products[0].rate");
    request.erase("tank");
    EXPECT_EQ(refused(request)["where"], "tank");
}

TEST(WorkRequests, WorkRateByEfficiencyAndByParts) {
    // Iowa State University Extension, PM 696 (2001): 40 ft, 6 mph, 70 %: 20.4 ac/h.
    Json request{{"do", "work_rate"},
                 {"units", "us"},
                 {"width", "40 ft"},
                 {"speed", "6 mph"},
                 {"efficiency", 0.7}};
    EXPECT_NEAR(number(ask(request)["effective_rate"], "ac/h"), 20.4, 0.05);
    request["turn"] = "30 s";
    EXPECT_EQ(refused(request)["where"], "turn");
    // 36 m at 10 km/h: 18 ha in 0.5 h; nine turns of 30 s; two loads of 15 min.
    const Json parts = ask({{"do", "work_rate"},
                            {"machine", {{"spacing", "0.5 m"}, {"sections", {72}}}},
                            {"speed", "10 km/h"},
                            {"area", "18 ha"},
                            {"run", "500 m"},
                            {"turn", "30 s"},
                            {"filling", "15 min"},
                            {"tank", "2000 L"},
                            {"rate", "200 L/ha"}});
    EXPECT_EQ(parts["loads"], 2);
    EXPECT_EQ(parts["runs"], 10);
    EXPECT_NEAR(number(parts["time"]["total"], "h"), 3870.0 / 3600, 1e-9);
    EXPECT_NEAR(number(parts["effective_rate"], "ha/h"), 36 * 1800.0 / 3870, 1e-9);
    EXPECT_EQ(refused({{"do", "work_rate"}, {"width", "36 m"}, {"speed", "0 km/h"}})["where"],
              "speed");
    EXPECT_EQ(refused({{"do", "work_rate"}, {"speed", "9 km/h"}})["where"], "width");
}

}  // namespace
}  // namespace bw::testing
