// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/yard/catch_test.h"
#include "core/yard/meter_check.h"
#include "core/yard/profile_edits.h"

namespace bw::calc {
namespace {

template <class T>
T needed(Request& request, std::string_view key) {
    if (!request.need(key)) return T{};
    return request.value<T>(key).value_or(T{});
}

template <class T>
std::vector<T> listIn(Request& request, std::string_view key) {
    std::vector<T> out;
    if (const Json* json = request.need(key))
        readValue(*json, std::string(key), out, nullptr, request.issues());
    return out;
}

PulseConvention conventionIn(Request& request, bool isNeeded) {
    auto convention = PulseConvention::PulsesPer;
    const Json* json = isNeeded ? request.need("convention") : member(request.json(), "convention");
    if (json) readChoice(*json, "convention", convention, request.issues());
    return convention;
}

void addShown(const Request& request, const YardSum& shown, OrderedJson& answer) {
    answer["sum"] = request.words(shown.sum);
    answer["warnings"] = OrderedJson::array();
    for (const auto& one : shown.warnings)
        answer["warnings"].push_back(sentences().of(one, request.style()));
}

template <class T>
OrderedJson withSpread(const Request& request, const Measured<T>& m) {
    return {{"value", request.number(m.value)}, {"uncertainty", request.number(m.uncertainty)}};
}

/// A result, or its problem left in the request.
template <class R>
const R* accepted(Request& request, const Result<R>& result) {
    if (result) return &*result;
    request.fail(result.problem());
    return nullptr;
}

std::string_view word(CatchVerdict verdict) {
    switch (verdict) {
        case CatchVerdict::Good:
            return "good";
        case CatchVerdict::CleanAndCatchAgain:
            return "clean_and_catch_again";
        case CatchVerdict::Replace:
            break;
    }
    return "replace";
}

std::vector<CatchEntry> catchesIn(Request& request) {
    const auto volumes = listIn<Volume>(request, "caught");
    const auto time = needed<Duration>(request, "time");
    const int step = request.value<int>("step").value_or(1);
    if (request.ok() && !(time.si() > 0)) request.fail(error("yard_not_positive", "time"));
    if (request.ok() && step < 1) request.fail(error("yard_not_positive", "step"));
    std::vector<CatchEntry> out;
    if (!request.ok()) return out;
    for (const Volume volume : volumes)
        out.push_back({1 + step * static_cast<int>(out.size()), caughtFlow(volume, time), {}});
    return out;
}

OrderedJson summaryJson(const Request& request, const CatchSummary& summary) {
    OrderedJson answer{{"mean", withSpread(request, summary.mean)},
                       {"cv", request.number(summary.cv)},
                       {"mean_of_new", request.number(summary.meanOfNew)},
                       {"replace_set", summary.replaceSet}};
    answer["nozzles"] = OrderedJson::array();
    for (const auto& n : summary.nozzles)
        answer["nozzles"].push_back({{"nozzle", n.nozzle},
                                     {"flow", request.number(n.flow.value)},
                                     {"of_mean", n.ofMean},
                                     {"of_new", request.number(n.ofNew)},
                                     {"verdict", word(n.verdict)}});
    answer["sections"] = OrderedJson::array();
    for (const auto& s : summary.sections)
        answer["sections"].push_back(
            {{"section", s.section + 1}, {"mean", request.number(s.mean)}, {"caught", s.count}});
    addShown(request, {{}, summary.warnings}, answer);
    answer.erase("sum");
    return answer;
}

}  // namespace

OrderedJson courseSpeedAnswer(Request& request) {
    request.allowKeys({"course", "times", "shown", "number", "convention"});
    CourseReadings readings;
    const ReadingErrors errors;
    readings.course = {needed<Length>(request, "course"), errors.course};
    for (const Duration time : listIn<Duration>(request, "times"))
        readings.times.push_back(watchReading(time));
    if (const auto shown = request.value<Speed>("shown"))
        readings.shown = Measured<Speed>{*shown, errors.shownSpeed};
    readings.number = request.value<double>("number");
    readings.convention = conventionIn(request, readings.number.has_value());
    if (!request.ok()) return {};
    const auto result = courseCheck(readings);
    const CourseCheck* check = accepted(request, result);
    if (!check) return {};
    OrderedJson answer{{"speed", withSpread(request, check->speed)}};
    if (check->shownOverTrue) answer["shown_over_true"] = check->shownOverTrue->value;
    if (check->number) answer["number"] = check->number->value;
    addShown(request, check->shown, answer);
    return answer;
}

OrderedJson catchTest(Request& request) {
    request.allowKeys(
        {"caught", "time", "step", "sections", "new_flow", "limit_of_mean", "limit_of_new"});
    const auto entries = catchesIn(request);
    std::vector<int> sections;
    if (member(request.json(), "sections")) sections = listIn<int>(request, "sections");
    const auto fresh = request.value<Flow>("new_flow");
    CatchLimits limits;
    limits.ofMean = request.value<double>("limit_of_mean").value_or(limits.ofMean);
    limits.ofNew = request.value<double>("limit_of_new").value_or(limits.ofNew);
    if (!request.ok()) return {};
    const auto result = catchSummary(entries, sections, fresh, limits);
    const CatchSummary* summary = accepted(request, result);
    return summary ? summaryJson(request, *summary) : OrderedJson{};
}

OrderedJson meterCheckAnswer(Request& request) {
    request.allowKeys({"shown", "true", "number", "convention"});
    const auto shown = needed<Volume>(request, "shown");
    const auto known = needed<Volume>(request, "true");
    const auto old = request.value<double>("number");
    const auto convention = conventionIn(request, old.has_value());
    if (!request.ok()) return {};
    const auto result = meterCheck({{tankReading(shown), tankReading(known)}}, old, convention);
    const MeterCheck* check = accepted(request, result);
    if (!check) return {};
    OrderedJson answer{{"scale", withSpread(request, check->shownOverTrue)},
                       {"rate_error", check->rateError.value}};
    if (check->number) answer["number"] = withSpread(request, *check->number);
    addShown(request, check->shown, answer);
    return answer;
}

OrderedJson pumpLineAnswer(Request& request) {
    request.allowKeys({"shutoff_pressure", "flow", "pressure"});
    const auto shutOff = gaugeReading(needed<Pressure>(request, "shutoff_pressure"));
    const auto flow = flowReading(needed<Flow>(request, "flow"));
    const auto pressure = gaugeReading(needed<Pressure>(request, "pressure"));
    if (!request.ok()) return {};
    const auto result = pumpLine({shutOff, flow, pressure});
    const PumpLine* line = accepted(request, result);
    if (!line) return {};
    const UnitSystem units = request.units();
    const OrderedJson point = {written(flow.value, units), written(pressure.value, units)};
    OrderedJson answer{{"pump",
                        {{"kind", choiceName(PumpKind::Centrifugal)},
                         {"shutoff_pressure", written(shutOff.value, units)},
                         {"curve", OrderedJson::array({point})}}},
                       {"k_uncertainty", line->kUncertainty / line->k}};
    addShown(request, line->shown, answer);
    return answer;
}

}  // namespace bw::calc
