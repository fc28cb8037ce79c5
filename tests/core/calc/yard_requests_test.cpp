// SPDX-License-Identifier: GPL-3.0-or-later
// Requests of the yard; readings are invented, sums worked by hand.
#include "tests/core/calc/asking.h"

namespace bw::testing {
namespace {

TEST(YardRequests, PumpLineIsReadyForAMachine) {
    const Json answer = ask({{"do", "pump_line"},
                             {"shutoff_pressure", "7.4 bar"},
                             {"flow", "210 L/min"},
                             {"pressure", "4.6 bar"}});
    const Json window =
        ask({{"do", "speed_window"},
             {"machine", {{"spacing", "0.5 m"}, {"sections", {72}}, {"pump", answer["pump"]}}},
             {"nozzle", {{"flow", "1.6 L/min"}, {"at", "3 bar"}}},
             {"job", {{"rate", "150 L/ha"}, {"usual", "12 km/h"}}}});
    // By hand: √(7.4 / (6.349e-5 + 2.2605e-4)) = 159.87 L/min: 17.763 km/h.
    EXPECT_NEAR(number(window["high"]["speed"], "km/h"), 17.763, 0.001);
    EXPECT_EQ(window["high"]["limit"], "pump");
    EXPECT_EQ(refused({{"do", "pump_line"},
                       {"shutoff_pressure", "4 bar"},
                       {"flow", "210 L/min"},
                       {"pressure", "4.6 bar"}})["where"],
              "pressure");
}

TEST(YardRequests, MeterAndCourseAskForTheConvention) {
    const Json meter{{"do", "meter_check"}, {"shown", "105 L"}, {"true", "100 L"}, {"number", 5.4}};
    EXPECT_EQ(refused(meter)["where"], "convention");
    Json known = meter;
    known["convention"] = "per_pulse";
    EXPECT_NEAR(ask(known)["number"]["value"].get<double>(), 5.142857, 1e-6);
    const Json course =
        ask({{"do", "course_speed"}, {"course", "100 m"}, {"times", {"36 s", "36.4 s"}}});
    EXPECT_NEAR(number(course["speed"]["value"], "km/h"), 9.9448, 1e-4);
}

TEST(YardRequests, CatchTestSortsNozzles) {
    const Json answer = ask({{"do", "catch_test"},
                             {"caught", {"2 L", "2 L", "1.8 L", "2.2 L"}},
                             {"time", "120 s"},
                             {"sections", {2, 2}},
                             {"new_flow", "1 L/min"}});
    EXPECT_EQ(answer["nozzles"][2]["verdict"], "clean_and_catch_again");
    EXPECT_EQ(answer["nozzles"][3]["verdict"], "replace");
    EXPECT_EQ(answer["replace_set"], false);
    EXPECT_EQ(answer["sections"].size(), 2U);
    EXPECT_EQ(refused({{"do", "catch_test"}, {"caught", {"2 L"}}, {"time", "0 s"}})["where"],
              "time");
}

}  // namespace
}  // namespace bw::testing
