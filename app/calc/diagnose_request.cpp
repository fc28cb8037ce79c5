// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "app/calc/knowledge_words.h"
#include "app/calc/request.h"
#include "core/diagnosis/call.h"
#include "core/diagnosis/readings.h"

namespace bw::calc {
namespace {

/// Numbers of the call that are no check of their own.
constexpr std::string_view kSpeedOfFault = "speed";
constexpr std::string_view kCantTell = "cant_tell";

std::vector<std::string> checkIds(const Knowledge& all) {
    std::vector<std::string> ids;
    for (const auto& check : all.checks) {
        if (check.place != CheckPlace::Sum) ids.push_back(check.id);
    }
    for (const auto& [reading, id] : ChoiceNames<Reading>::names) ids.emplace_back(id);
    ids.emplace_back(kSpeedOfFault);
    return ids;
}

/// The dimension of the number that a check takes; nothing if it takes none.
std::optional<Dimension> readingDimension(const Knowledge& all, const std::string& id) {
    if (id == kSpeedOfFault) return Dimension::Speed;
    const Check* check = all.check(id);
    const auto reading = choiceFor<Reading>(check ? check->reading : id);
    return reading ? std::optional(dimensionOf(*reading)) : std::nullopt;
}

void refuseReading(Request& request, const Observation& observation, std::optional<Dimension> takes,
                   const std::string& where) {
    if (!takes) return request.fail(error("calc_no_reading", where));
    if (observation.reading->dimension != *takes) {
        const Unit unit = displayUnit(request.units(), *takes);
        if (unit == Unit::None) return request.fail(jsonWrongType(where, "number"));
        const bool bare = observation.reading->dimension == Dimension::None;
        if (bare) return request.fail(jsonWrongType(where, "quantity_not_number"));
        return request.fail(error("unit_wrong_kind", where,
                                  {{"typed", shortened(observation.typed)},
                                   {"unit", shortened(observation.typed)},
                                   {"example", jsonSymbol(unit)}}));
    }
    if (observation.reading->si < 0) request.fail(error("calc_reading_negative", where));
}

void refuseAnswer(Request& request, const Observation& observation, const Check* check,
                  const std::string& where) {
    if (observation.answer == kCantTell) return;
    if (!check || check->answers.empty()) return request.fail(error("calc_no_answers", where));
    if (check->answer(observation.answer)) return;
    std::vector<std::string> words;
    for (const auto& answer : check->answers) words.push_back(answer.id);
    words.emplace_back(kCantTell);
    request.fail(jsonNotAChoice(where, observation.answer, words));
}

void refuseObservation(Request& request, const Observation& observation, const std::string& where) {
    const Knowledge& all = Knowledge::shipped();
    const auto ids = checkIds(all);
    if (std::find(ids.begin(), ids.end(), observation.check) == ids.end()) {
        return request.fail(error("calc_unknown_check", pathTo(where, "check"),
                                  {{"given", shortened(observation.check)},
                                   {"nearest", nearestWord(observation.check, ids)}}));
    }
    const bool answered = !observation.answer.empty();
    if (answered && observation.reading) request.fail(error("calc_answer_and_reading", where));
    if (!answered && !observation.reading) request.fail(error("calc_neither", where));
    if (observation.reading) {
        refuseReading(request, observation, readingDimension(all, observation.check),
                      pathTo(where, "reading"));
    } else if (answered) {
        refuseAnswer(request, observation, all.check(observation.check), pathTo(where, "answer"));
    }
}

void readObservations(Request& request, CaseRecord& record) {
    const Json* list = member(request.json(), "observations");
    if (!list) return;
    if (!list->is_array()) return request.fail(jsonWrongType("observations", "list"));
    for (std::size_t i = 0; i < list->size(); ++i) {
        const std::string where = pathTo("observations", i);
        record.observations.push_back(readObservation((*list)[i], where, request.issues()));
        if (!request.ok()) return;
        refuseObservation(request, record.observations.back(), where);
    }
}

void readWord(Request& request, std::string_view key, const std::vector<std::string>& words,
              std::string& out) {
    readOptionalText(request.json(), {}, key, out, request.issues());
    if (!out.empty() && std::find(words.begin(), words.end(), out) == words.end())
        request.fail(jsonNotAChoice(std::string(key), out, words));
}

CaseRecord recordIn(Request& request) {
    CaseRecord record;
    record.machine = request.machine(JsonUse::Partial);
    record.nozzle = request.nozzle(JsonUse::Partial);
    record.job = request.job(JsonUse::Partial);
    if (const Json* json = member(request.json(), "symptom")) {
        Symptom symptom{};
        if (readChoice(*json, "symptom", symptom, request.issues())) record.symptom = symptom;
    }
    readWord(request, "tank", {"water", "rinsed", "product"}, record.tank);
    readWord(request, "company", {"alone", "second_person"}, record.company);
    readWord(request, "place", {"field", "yard", "road"}, record.place);
    readObservations(request, record);
    return record;
}

OrderedJson sentencesOf(const Request& request, const std::vector<Fact>& facts) {
    auto out = OrderedJson::array();
    for (const auto& fact : facts) out.push_back(request.words(fact));
    return out;
}

OrderedJson standingJson(const Request& request, const CallState& state) {
    auto out = OrderedJson::array();
    for (const auto& s : state.standing) {
        out.push_back({{"cause", s.cause},
                       {"group", s.group.empty() ? OrderedJson(nullptr) : OrderedJson(s.group)},
                       {"probability", s.probability},
                       {"why", sentencesOf(request, s.why)}});
    }
    // Where the finder does not reach, all of it is something else.
    if (out.empty()) {
        out.push_back({{"cause", "something_else"},
                       {"group", nullptr},
                       {"probability", 1.0},
                       {"why", OrderedJson::array()}});
    }
    return out;
}

OrderedJson expectedJson(const Request& request, const Expectation& expected) {
    if (!expected.healthy && expected.byCause.empty()) return nullptr;
    OrderedJson causes = OrderedJson::object();
    for (const auto& [cause, reading] : expected.byCause) causes[cause] = request.number(reading);
    return {{"healthy", request.number(expected.healthy)}, {"by_cause", causes}};
}

OrderedJson nextJson(const Request& request, const CallState& state) {
    if (!state.next) return nullptr;
    const Knowledge& all = Knowledge::shipped();
    const Check* check = all.check(state.next->check);
    OrderedJson out{{"check", state.next->check}, {"why", request.words(state.next->why)}};
    out["expected"] = expectedJson(request, state.next->expected);
    if (check) {
        out["cautions"] = cautionTexts(all, check->cautions);
        out["question"] = check->question;
        out["how_to"] = check->howTo;
    }
    out["minutes"] = state.next->minutes;
    return out;
}

OrderedJson conflictsJson(const Request& request, const CallState& state) {
    auto out = OrderedJson::array();
    for (const auto& problem : state.conflicts)
        out.push_back(sentences().of(problem, request.style()));
    return out;
}

}  // namespace

OrderedJson diagnose(Request& request) {
    request.allowKeys(
        {"machine", "nozzle", "job", "symptom", "observations", "tank", "company", "place"});
    const CaseRecord record = recordIn(request);
    if (!request.ok()) return {};
    const CallState state = reason(record, Knowledge::shipped());
    OrderedJson out;
    out["standing"] = standingJson(request, state);
    out["next"] = nextJson(request, state);
    out["done"] = state.done;
    if (state.notCovered) out["not_covered"] = "pulsed";
    if (state.symptomFromNumbers)
        out["symptom_from_numbers"] = std::string(choiceName(*state.symptomFromNumbers));
    out["sums"] = sentencesOf(request, state.sums);
    out["ways_out"] = sentencesOf(request, state.waysOut);
    out["conflicts"] = conflictsJson(request, state);
    out["barred"] = state.barredChecks;
    return out;
}

}  // namespace bw::calc
