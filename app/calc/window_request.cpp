// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/window/advice.h"
#include "core/window/rests_on.h"
#include "core/window/speed_window.h"
#include "core/window/verdict.h"
#include "core/yard/firm_up.h"
#include "core/yard/yard_book.h"

namespace bw::calc {
namespace {

std::string nameOf(Limit limit) {
    return std::string(choiceName(limit));
}

OrderedJson namesOf(const std::vector<Limit>& limits) {
    auto out = OrderedJson::array();
    for (const Limit limit : limits) out.push_back(nameOf(limit));
    return out;
}

OrderedJson endJson(const Request& request, const WindowEnd& end) {
    auto next = OrderedJson::array();
    for (const auto& other : end.next)
        next.push_back({{"limit", nameOf(other.limit)}, {"speed", request.number(other.speed)}});
    return {{"speed", request.number(end.speed)}, {"limit", nameOf(end.limit)}, {"next", next}};
}

template <class T, class Written>
OrderedJson orNull(const std::optional<T>& value, Written written) {
    return value ? OrderedJson(written(*value)) : OrderedJson(nullptr);
}

OrderedJson pointJson(const Request& request, const OperatingPoint& point) {
    return {{"speed", request.number(point.speed)},
            {"nozzle_flow", request.number(point.nozzleFlow)},
            {"boom_flow", request.number(point.boomFlow)},
            {"nozzle_pressure", request.number(point.nozzlePressure)},
            {"sensor_pressure", request.number(point.sensorPressure)},
            {"rate", request.number(point.rate)},
            {"droplets", orNull(point.droplets, [](auto c) { return std::string(choiceName(c)); })},
            {"drift_percent", orNull(point.driftPercent, [](double percent) { return percent; })},
            {"verdict", std::string(choiceName(point.verdict))},
            {"past", namesOf(point.past)}};
}

/// Without the nozzle's lowest pressure there is only the most that the slow speed leaves.
OrderedJson floorJson(const Request& request, const FloorAdvice& floor) {
    OrderedJson out = OrderedJson::object();
    if (floor.least) {
        out["recommended"] = request.number(floor.recommended);
        out["least"] = request.number(floor.least);
    }
    out["most"] = request.number(floor.most);
    return out;
}

OrderedJson restrictorJson(const Request& request, const WindowModel& model,
                           const SpeedWindow& window) {
    if (!window.restrictor) return nullptr;
    const auto& advice = *window.restrictor;
    const auto text = restrictorAdvice(model, window);
    return {{"position", std::string(choiceName(advice.position))},
            {"crossing_speed", request.number(advice.crossingSpeed)},
            {"band", std::string(choiceName(advice.band))},
            {"note",
             text ? request.words(text->title) + ". " + request.words(text->body) : std::string()}};
}

OrderedJson sectionsJson(const Request& request, const std::vector<SectionsOn>& rows) {
    auto out = OrderedJson::array();
    for (const auto& row : rows) {
        out.push_back(
            {{"on", row.sectionsOn},
             {"flow", request.number(row.flow)},
             {"under_minimum", orNull(row.underMinimum, [](bool under) { return under; })}});
    }
    return out;
}

OrderedJson movesJson(const Request& request, const Move& move) {
    const auto end = [&](std::optional<Speed> from, std::optional<Speed> to) {
        return OrderedJson{{"from", request.number(from)}, {"to", request.number(to)}};
    };
    return {{"low", end(move.atFrom.low, move.atTo.low)},
            {"high", end(move.atFrom.high, move.atTo.high)},
            {"empty", {{"from", move.atFrom.empty}, {"to", move.atTo.empty}}}};
}

OrderedJson restsOnJson(const Request& request, const Machine& machine,
                        const std::vector<RestsOn>& items) {
    auto out = OrderedJson::array();
    for (const auto& item : items) {
        if (!item.hasRange) continue;
        const std::string check(checkForValue(machine, item.where));
        out.push_back(
            {{"value", item.where},
             {"origin", std::string(name(item.origin))},
             {"moves", orNull(item.move, [&](const Move& m) { return movesJson(request, m); })},
             {"check", check.empty() ? OrderedJson(nullptr) : OrderedJson(check)}});
    }
    return out;
}

OrderedJson firmUpJson(const Request& request, const FirmUp& up) {
    const auto spread = [&](const EndSpread& end) {
        return OrderedJson{{"from", request.number(end.from)}, {"to", request.number(end.to)}};
    };
    return {{"check", up.check},        {"values", up.values},
            {"low", spread(up.low)},    {"high", spread(up.high)},
            {"can_empty", up.canEmpty}, {"shrinks", request.number(up.shrinks)}};
}

OrderedJson byHandJson(const Request& request, const std::vector<ByHandRow>& rows) {
    auto out = OrderedJson::array();
    for (const auto& row : rows)
        out.push_back({{"speed", request.number(row.speed)},
                       {"pressure", request.number(row.sensorPressure)}});
    return out;
}

OrderedJson windowJson(const Request& request, const WindowModel& model) {
    const SpeedWindow window = model.window(request.units());
    OrderedJson out;
    out["low"] = endJson(request, window.low);
    out["high"] = endJson(request, window.high);
    out["empty"] = window.empty;
    if (window.emptyWhy != Limit::None) out["why"] = nameOf(window.emptyWhy);
    out["at"] = {{"slow", pointJson(request, window.atSlow)},
                 {"usual", pointJson(request, window.atUsual)},
                 {"fast", pointJson(request, window.atFast)}};
    out["floor"] =
        orNull(window.floor, [&](const auto& floor) { return floorJson(request, floor); });
    out["restrictor"] = restrictorJson(request, model, window);
    out["sections_off"] = sectionsJson(request, window.sectionsOff);
    if (window.allRates) {
        out["all_rates"] = {{"low", endJson(request, window.allRates->low)},
                            {"high", endJson(request, window.allRates->high)},
                            {"empty", window.allRates->empty}};
    }
    if (valueOr(model.machine().senses, Senses::Flow) == Senses::Nothing)
        out["by_hand"] = byHandJson(request, model.byHand());
    out["not_checked"] = namesOf(window.notChecked);
    const Machine& machine = model.machine();
    out["rests_on"] = restsOnJson(request, machine, restsOn(machine, model.nozzle(), model.job()));
    out["firm_up"] = orNull(firmUp(machine, model.nozzle(), model.job()),
                            [&](const FirmUp& up) { return firmUpJson(request, up); });
    out["sentence"] = sentenceOf(verdictOf(model, window), sentences(), request.style());
    return out;
}

}  // namespace

OrderedJson speedWindow(Request& request) {
    request.allowKeys({"machine", "nozzle", "job"});
    const Machine machine = request.machine();
    const Nozzle nozzle = request.nozzle();
    const Job job = request.job();
    if (!request.ok()) return {};
    const auto model = WindowModel::make(machine, nozzle, job);
    if (model) return windowJson(request, *model);
    request.fail(model.problem());
    return {};
}

}  // namespace bw::calc
