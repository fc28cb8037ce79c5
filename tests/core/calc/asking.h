// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "app/calc/requests.h"

/// Asking the calculator from tests.
namespace bw::testing {

using Json = nlohmann::json;

inline Json parsed(const std::string& text) {
    Json json = Json::parse(text, nullptr, false);
    EXPECT_TRUE(json.is_object()) << text;
    return json;
}

/// The answer to a request that must succeed.
inline Json ask(const Json& request) {
    const auto answer = calc::answerTo(request.dump());
    EXPECT_FALSE(answer.isError) << answer.text;
    return parsed(answer.text);
}

/// The error of a request that must be refused.
inline Json refusedText(const std::string& request) {
    const auto answer = calc::answerTo(request);
    EXPECT_TRUE(answer.isError) << answer.text;
    const Json json = parsed(answer.text);
    EXPECT_EQ(json.size(), 1U) << answer.text;
    EXPECT_TRUE(json.at("error").at("where").is_string() && json["error"]["what"].is_string());
    const auto what = json["error"]["what"].get<std::string>();
    // No sentence without words, no gap left open.
    EXPECT_THAT(what, ::testing::Not(
                          ::testing::AnyOf(::testing::HasSubstr("<"), ::testing::HasSubstr("{"))));
    EXPECT_FALSE(what.empty());
    return json["error"];
}
inline Json refused(const Json& request) {
    return refusedText(request.dump());
}

inline double number(const Json& quantity, const std::string& unit) {
    EXPECT_EQ(quantity.at("unit"), unit);
    return quantity.at("value").get<double>();
}

inline Json fileJson(const std::string& path) {
    std::ifstream file(std::string(BW_SOURCE_DIR) + "/" + path);
    EXPECT_TRUE(file.good()) << path;
    return Json::parse(file);
}

/// The invented machines, jobs and nozzles of the demo season.
inline const Json& demo() {
    static const Json kDemo = fileJson("tests/reference/demo_machines.json");
    return kDemo;
}
inline Json demoNozzle(const std::string& name) {
    for (const auto& nozzle : demo()["nozzles"])
        if (nozzle["name"] == name) return nozzle;
    ADD_FAILURE() << name;
    return {};
}
inline Json demoRequest(std::size_t machine, std::size_t job, const std::string& nozzle) {
    const Json& fleet = demo()["fleet"][machine];
    return {{"do", "speed_window"},
            {"machine", fleet["machine"]},
            {"nozzle", demoNozzle(nozzle)},
            {"job", fleet["jobs"][job]}};
}

/// A bare machine (invented): nozzles without any loss before them, nothing limited.
inline Json bareRequest() {
    return Json::parse(R"({"do": "speed_window",
      "machine": {"units": "us", "spacing": "20 in", "sections": [9, 9, 9, 9, 9, 9]},
      "nozzle": {"flow": "0.4 gal/min", "at": "40 psi"},
      "job": {"rate": "9.9 gal/ac", "slow": "12 mph", "usual": "12 mph", "fast": "15 mph"}})");
}

}  // namespace bw::testing
