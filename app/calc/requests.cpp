// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/requests.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <istream>
#include <ostream>

#include "app/calc/request.h"

namespace bw::calc {
namespace {

struct Task {
    std::string_view name;
    OrderedJson (*answer)(Request&);
};
constexpr std::array kTasks{
    Task{"convert", convert},
    Task{"nozzle_flow", nozzleFlow},
    Task{"nozzle_pressure", nozzlePressure},
    Task{"speed_window", speedWindow},
    Task{"boom_evenness", boomEvenness},
    Task{"line_loss", lineLoss},
    Task{"turn", turn},
    Task{"simulate", simulate},
    Task{"diagnose", diagnose},
    Task{"knowledge", knowledge},
    Task{"course_speed", courseSpeedAnswer},
    Task{"catch_test", catchTest},
    Task{"meter_check", meterCheckAnswer},
    Task{"pump_line", pumpLineAnswer},
    Task{"choose_sets", chooseSetsAnswer},
    Task{"loads", loadsAnswer},
    Task{"work_rate", workRateAnswer},
};

std::string dumped(const OrderedJson& json) {
    return json.dump(-1, ' ', false, OrderedJson::error_handler_t::replace);
}

Answer errorAnswer(const Problem& problem, const NumberStyle& style) {
    const OrderedJson body{{"where", problem.where}, {"what", sentences().of(problem, style)}};
    return {true, dumped({{"error", body}})};
}

const Task* taskFor(Request& request) {
    const Json* name = request.need("do");
    std::string word;
    if (!name || !readText(*name, "do", word, request.issues())) return nullptr;
    const auto found = std::find_if(kTasks.begin(), kTasks.end(),
                                    [&](const Task& task) { return task.name == word; });
    if (found != kTasks.end()) return &*found;
    request.fail(jsonNotAChoice("do", word, taskNames()));
    return nullptr;
}

/// Numbers that JSON cannot hold would come out as null, half an answer.
bool isWhole(const OrderedJson& json) {
    if (!json.is_structured()) return !json.is_number_float() || std::isfinite(json.get<double>());
    return std::all_of(json.begin(), json.end(), isWhole);
}

Answer answered(const Json& json) {
    if (!json.is_object()) return errorAnswer(jsonWrongType({}, "request"), {});
    Request request(json);
    OrderedJson answer;
    if (const Task* task = taskFor(request)) answer = task->answer(request);
    if (!request.ok()) return errorAnswer(request.issues().first(), request.style());
    if (!isWhole(answer)) return errorAnswer(error("calc_not_finite"), {});
    return {false, dumped(answer)};
}

}  // namespace

std::vector<std::string> taskNames() {
    std::vector<std::string> out;
    for (const auto& task : kTasks) out.emplace_back(task.name);
    return out;
}

Answer errorAnswer(std::string_view code, std::string_view where, std::string_view name) {
    return errorAnswer(error(std::string(code), std::string(where), {{"name", shortened(name)}}),
                       NumberStyle{});
}

Answer answerTo(std::string_view request) {
    // The last guard: a fault of the program itself must not take the other lines with it.
    try {
        const auto json = parseJson(request);
        return json ? answered(*json) : errorAnswer(json.problem(), NumberStyle{});
    } catch (const std::exception& failure) {
        return {true, dumped({{"error", {{"where", ""}, {"what", shortened(failure.what())}}}})};
    }
}

void answerLines(std::istream& in, std::ostream& out) {
    std::string line;
    while (std::getline(in, line)) {
        if (line.find_first_not_of(" \t\r") == std::string::npos) continue;
        out << answerTo(line).text << '\n' << std::flush;
    }
}

}  // namespace bw::calc
