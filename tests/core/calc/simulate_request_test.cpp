// SPDX-License-Identifier: GPL-3.0-or-later
#include <sstream>

#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace testing;
using bw::testing::Json;

/// The invented trailed machine of the demo season with its fungicide job.
Json request() {
    const Json demo = fileJson("tests/reference/demo_machines.json");
    return {{"do", "simulate"},
            {"machine", demo["fleet"][1]["machine"]},
            {"nozzle", demo["nozzles"][1]},
            {"job", demo["fleet"][1]["jobs"][2]}};
}
Json withFaults(const Json& faults) {
    Json r = request();
    r["faults"] = faults;
    return r;
}

TEST(SimulateRequest, HealthyAndFloorHigh) {
    const Json healthy = ask(request());
    EXPECT_EQ(healthy["verdict"], "on_rate");
    EXPECT_NEAR(number(healthy["sensor_pressure"], "bar"), 3.81, 0.08);
    EXPECT_FALSE(healthy.contains("trace"));
    const Json high = ask(withFaults({{{"cause", "floor_high"}, {"severity", 0.5}}}));
    EXPECT_EQ(high["verdict"], "stuck_high");
    EXPECT_NEAR(high["real"]["mean"].get<double>(), 1.25, 0.01);
    EXPECT_NEAR(high["share_at_limit"].get<double>(), 1.0, 1e-9);
    EXPECT_NE(high["why"].get<std::string>().find("The floor holds"), std::string::npos);
}

TEST(SimulateRequest, TraceAsRowsAndAsText) {
    Json r = request();
    r["seconds"] = 20;
    r["trace"] = true;
    const Json rows = ask(r)["trace"];
    ASSERT_EQ(rows["rows"].size(), 200U);
    EXPECT_EQ(rows["columns"][2]["unit"], "L/ha");
    EXPECT_EQ(rows["rows"][0].size(), rows["columns"].size());
    r["trace"] = "csv";
    std::istringstream text(ask(r)["trace"].get<std::string>());
    std::string line;
    std::getline(text, line);
    EXPECT_TRUE(line.starts_with("time (s),speed (km/h),target (L/ha),shown (L/ha)")) << line;
    int count = 0;
    while (std::getline(text, line)) {
        EXPECT_EQ(std::count(line.begin(), line.end(), ','), 11);
        ++count;
    }
    EXPECT_EQ(count, 200);
}

TEST(SimulateRequest, RefusesWithItsPlace) {
    EXPECT_EQ(refused(withFaults({{{"cause", "florr_high"}, {"severity", 0.5}}}))["where"],
              "faults[0].cause");
    EXPECT_EQ(refused(withFaults({{{"cause", "floor_high"}, {"severity", 2}}}))["where"],
              "faults[0].severity");
    EXPECT_EQ(refused(withFaults({{{"cause", "floor_high"}}}))["where"], "faults[0].severity");
    Json r = withFaults({{{"cause", "floor_high"}, {"severity", 0.1}},
                         {{"cause", "floor_high"}, {"severity", 0.1}}});
    EXPECT_EQ(refused(r)["where"], "faults[1].cause");
    r = request();
    r["seconds"] = 1e9;
    EXPECT_EQ(refused(r)["where"], "seconds");
    r = request();
    r["seed"] = 1.5;
    EXPECT_EQ(refused(r)["where"], "seed");
    r = request();
    r["trace"] = "xml";
    EXPECT_EQ(refused(r)["where"], "trace");
    r = request();
    r["machine"].erase("control_valve");
    EXPECT_EQ(refused(r)["where"], "machine.control_valve");
    r = request();
    r["machine"].erase("pump");
    EXPECT_EQ(refused(r)["where"], "machine.pump");
}

}  // namespace
}  // namespace bw
