// SPDX-License-Identifier: GPL-3.0-or-later
#include <random>
#include <sstream>

#include "tests/core/calc/asking.h"

namespace bw {
namespace {

using namespace bw::testing;

/// Whatever comes, one line of JSON goes back: an answer, or an error with a place and words.
void expectAnswered(const std::string& request) {
    const auto answer = calc::answerTo(request);
    const Json json = Json::parse(answer.text, nullptr, false);
    ASSERT_TRUE(json.is_object()) << answer.text;
    ASSERT_EQ(answer.text.find('\n'), std::string::npos);
    ASSERT_EQ(answer.isError, json.contains("error"));
    if (!answer.isError) return;
    ASSERT_TRUE(json["error"]["where"].is_string() &&
                !json["error"]["what"].get<std::string>().empty())
        << answer.text;
}

std::vector<std::string> seeds() {
    Json assumed = demoRequest(0, 1, "Demo air fan 05");
    assumed["machine"]["spacing"] = {
        {"value", "20 in"}, {"origin", "assumed"}, {"from", "19 in"}, {"to", "21 in"}};
    Json pulsed = demoRequest(0, 2, "Demo metering plate 06");
    pulsed["machine"]["pulsed"] = {{"pressure", "30 psi"}};
    return {
        demoRequest(0, 0, "Demo low-drift fan 04").dump(),
        demoRequest(1, 5, "Demo metering plate 06").dump(),
        assumed.dump(),
        pulsed.dump(),
        R"({"do": "convert", "value": "7 1/2 gal/ac", "to": "L/ha"})",
        R"({"do": "nozzle_flow", "nozzle": {"table": [["1 bar", "1 L/min"], ["4 bar", "2 L/min"]]}, "pressure": "2 bar"})"};
}

TEST(CalcBroken, MutatedBytesNeverCrash) {
    std::mt19937 random(2026);
    const auto below = [&](std::size_t count) {
        return static_cast<std::size_t>(random() % count);
    };
    const std::vector<std::string> pieces{
        "\"", "{",       "}",    "[",    "]", ",",    ":",          "null", "-",  "1e308", "1e-308",
        "0",  "\\u0000", "\xff", "\xc3", "e", " psi", "9999999999", "true", "\\", "nan",   "²"};
    for (const auto& seed : seeds()) {
        for (int round = 0; round < 400; ++round) {
            std::string text = seed;
            for (std::size_t change = 1 + below(4); change > 0; --change) {
                const std::size_t at = below(text.size());
                switch (below(4)) {
                    case 0:
                        text[at] = static_cast<char>(below(256));
                        break;
                    case 1:
                        text.erase(at, 1 + below(12));
                        break;
                    case 2:
                        text.insert(at, pieces[below(pieces.size())]);
                        break;
                    default:
                        text.replace(at, 1, std::to_string(below(10)));
                        break;
                }
                if (text.empty()) text = "{";
            }
            expectAnswered(text);
        }
    }
}

/// Every place of a request, with every kind of value put there.
void visitPlaces(const Json& json, const Json::json_pointer& at,
                 std::vector<Json::json_pointer>& out) {
    out.push_back(at);
    if (json.is_object())
        for (const auto& [key, value] : json.items()) visitPlaces(value, at / key, out);
    if (json.is_array())
        for (std::size_t i = 0; i < json.size(); ++i) visitPlaces(json[i], at / i, out);
}

TEST(CalcBroken, AnyValueAtAnyPlaceIsAnsweredOrRefused) {
    const std::vector<Json> strangers{nullptr,
                                      true,
                                      0,
                                      -1,
                                      1e308,
                                      1e-308,
                                      3.5,
                                      "",
                                      "x",
                                      "0 psi",
                                      "-5 mph",
                                      "1e300 gal/ac",
                                      "1e-300 bar",
                                      "40 psi",
                                      "8 gal/ac",
                                      "9 mph",
                                      "5 gal/min",
                                      "0.5 m",
                                      Json::array(),
                                      Json::object(),
                                      Json::array({1, 2, 3}),
                                      Json{{"value", nullptr}},
                                      Json{{"value", "9 mph"},
                                           {"from", "1e-300 mph"},
                                           {"to", "1e300 mph"},
                                           {"origin", "assumed"}}};
    for (const auto& seed : seeds()) {
        const Json whole = Json::parse(seed);
        std::vector<Json::json_pointer> places;
        visitPlaces(whole, Json::json_pointer(), places);
        // Of the long requests every third pair of place and value: chosen so that each comes up.
        const std::size_t step = places.size() > 60 ? 3 : 1;
        for (std::size_t i = 0; i < places.size(); ++i) {
            for (std::size_t j = i % step; j < strangers.size(); j += step) {
                Json changed = whole;
                changed[places[i]] = strangers[j];
                expectAnswered(changed.dump());
            }
        }
    }
}

TEST(CalcBroken, LeavingAnythingOutIsAnsweredOrRefused) {
    for (const auto& seed : seeds()) {
        const Json whole = Json::parse(seed);
        std::vector<Json::json_pointer> places;
        visitPlaces(whole, Json::json_pointer(), places);
        for (const auto& place : places) {
            if (place.empty() || !whole.at(place.parent_pointer()).is_object()) continue;
            Json changed = whole;
            changed[place.parent_pointer()].erase(place.back());
            expectAnswered(changed.dump());
        }
    }
}

TEST(CalcBroken, HugeAndDeepRequestsAreRefused) {
    EXPECT_THAT(refusedText(std::string(3'000'000, '['))["what"].get<std::string>(),
                ::testing::HasSubstr("nested"));
    expectAnswered("{\"do\": \"" + std::string(20'000'000, 'x') + "\"}");
    expectAnswered("{\"do\": \"convert\", \"value\": \"" + std::string(100'000, '1') +
                   " bar\", \"to\": \"psi\"}");
    std::string sections = "1";
    for (int i = 0; i < 200'000; ++i) sections += ",1";
    expectAnswered(
        R"({"do": "speed_window", "machine": {"spacing": "1 m", "sections": [)" + sections +
        R"(]}, "nozzle": {"flow": "1 L/min", "at": "3 bar"}, "job": {"rate": "100 L/ha", "usual": "9 km/h"}})");
}

TEST(CalcLines, OneAnswerALineInOrder) {
    std::istringstream in(
        "{\"do\": \"convert\", \"value\": \"1 m\", \"to\": \"cm\"}\n"
        "not JSON\n"
        "\n"
        "{\"do\": \"convert\", \"value\": \"2 m\", \"to\": \"cm\"}\r\n"
        "{\"do\": \"convert\", \"value\": \"3 m\", \"to\": \"cm\"}");
    std::ostringstream out;
    calc::answerLines(in, out);
    std::istringstream answers(out.str());
    std::vector<Json> lines;
    for (std::string line; std::getline(answers, line);) lines.push_back(Json::parse(line));
    ASSERT_EQ(lines.size(), 4U);
    EXPECT_EQ(number(lines[0]["value"], "cm"), 100);
    EXPECT_EQ(lines[1]["error"]["where"], "");
    EXPECT_EQ(number(lines[2]["value"], "cm"), 200);
    EXPECT_EQ(number(lines[3]["value"], "cm"), 300);
}

}  // namespace
}  // namespace bw
