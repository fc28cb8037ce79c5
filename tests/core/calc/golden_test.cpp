// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdlib>

#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;

constexpr const char* kGolden = "tests/reference/calc_golden.jsonl";

std::vector<Json> goldenRequests() {
    Json byHand = demoRequest(1, 2, "Demo low-drift fan 03");
    byHand["machine"]["senses"] = "nothing";
    Json pulsed = demoRequest(0, 1, "Demo air fan 05");
    pulsed["machine"]["pulsed"] = {{"pressure", "45 psi"}};
    Json range = demoRequest(1, 0, "Demo air fan 05");
    range["job"]["rate_least"] = "150 L/ha";
    range["machine"]["limits"]["pressure_floor"] = {
        {"value", "1.6 bar"}, {"origin", "assumed"}, {"from", "1.2 bar"}, {"to", "2 bar"}};
    range["units"] = "uk";
    Json loss = demoRequest(0, 0, "Demo low-drift fan 04");
    loss["machine"]["losses"]["section"]["pressure"] = {
        {"value", "1.5 psi"}, {"origin", "assumed"}, {"from", "0 psi"}, {"to", "4 psi"}};
    const Json even = Json::parse(R"({"do": "boom_evenness", "pressure": "3 bar",
        "machine": {"spacing": "50 cm", "sections": [4, 4],
                    "boom_pipe": {"bore": "12 mm", "feeds": [3], "ring": true}},
        "nozzle": {"flow": "1.6 L/min", "at": "3 bar"}})");
    const Json turn = Json::parse(R"({"do": "turn", "radius": "9 m",
        "machine": {"spacing": "50 cm", "sections": [24, 25, 24]},
        "job": {"rate": "150 L/ha", "usual": "12 km/h"}})");
    const Json line = Json::parse(R"({"do": "line_loss", "bore": "25 mm", "length": "3 m",
        "flow": "60 L/min", "fittings": ["short_elbow", "tee_branch"]})");
    const Json& trailed = demo()["fleet"][1];
    const Json sets{{"do", "choose_sets"},
                    {"machine", trailed["machine"]},
                    {"nozzles", demo()["nozzles"]},
                    {"jobs", trailed["jobs"]},
                    {"spares", 0.05}};
    const Json loads{{"do", "loads"},
                     {"units", "us"},
                     {"tank", "1200 gal"},
                     {"rate", "12 gal/ac"},
                     {"area", "240 ac"},
                     {"specific_gravity", 1.1},
                     {"products", {{{"name", "Demo product"}, {"rate", "1.5 lb/ac"}}}}};
    const Json work{{"do", "work_rate"}, {"width", "28 m"}, {"speed", "9 km/h"},
                    {"area", "40 ha"},   {"run", "400 m"},  {"turn", "25 s"}};
    return {demoRequest(0, 0, "Demo low-drift fan 04"),
            demoRequest(0, 5, "Demo metering plate 06"),
            byHand,
            pulsed,
            range,
            loss,
            even,
            turn,
            line,
            sets,
            loads,
            work};
}

/// The same in every word and key; numbers to 1e-9, as compilers may differ in the last digits.
void expectSame(const Json& now, const Json& golden, const std::string& path) {
    if (golden.is_number_float()) {
        ASSERT_TRUE(now.is_number()) << path;
        EXPECT_NEAR(now.get<double>(), golden.get<double>(),
                    1e-9 * std::max(1.0, std::abs(golden.get<double>())))
            << path;
        return;
    }
    if (!golden.is_structured()) {
        EXPECT_EQ(now, golden) << path;
        return;
    }
    ASSERT_EQ(now.size(), golden.size()) << path;
    if (golden.is_array()) {
        for (std::size_t i = 0; i < golden.size(); ++i)
            expectSame(now[i], golden[i], path + "[" + std::to_string(i) + "]");
        return;
    }
    for (const auto& [key, value] : golden.items()) {
        ASSERT_TRUE(now.contains(key)) << path << "." << key;
        expectSame(now[key], value, path + "." + key);
    }
}

/// Whole answers as they were last looked at. BW_RENEW_GOLDEN=1 writes them anew: review the diff.
TEST(CalcGolden, WholeAnswersAreAsTheyWere) {
    const std::string path = std::string(BW_SOURCE_DIR) + "/" + kGolden;
    const auto requests = goldenRequests();
    if (std::getenv("BW_RENEW_GOLDEN")) {
        std::ofstream out(path, std::ios::binary);
        for (const auto& request : requests) out << calc::answerTo(request.dump()).text << "\n";
    }
    std::ifstream in(path);
    std::string line;
    for (std::size_t i = 0; i < requests.size(); ++i) {
        ASSERT_TRUE(std::getline(in, line)) << kGolden << " ends at " << i;
        expectSame(ask(requests[i]), Json::parse(line), "[" + std::to_string(i) + "]");
    }
    EXPECT_FALSE(std::getline(in, line));
}

}  // namespace
}  // namespace bw
