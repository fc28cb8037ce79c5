// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/yard_book.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "core/base/resource.h"
#include "core/model/machine_fields.h"
#include "core/yard/yard_data.h"

namespace bw {
namespace {

using yard_data::BrokenData;
using yard_data::Json;
using yard_data::textOf;

constexpr std::array<std::pair<std::string_view, Dimension>, 6> kDimensions{
    {{"pressure", Dimension::Pressure},
     {"flow", Dimension::Flow},
     {"volume", Dimension::Volume},
     {"duration", Dimension::Duration},
     {"speed", Dimension::Speed},
     {"length", Dimension::Length}}};

Dimension dimensionFor(const std::string& word, const std::string& where) {
    for (const auto& [name, dimension] : kDimensions) {
        if (name == word) return dimension;
    }
    throw BrokenData{where + ".dimension: " + word};
}

ReadingKind kindOf(const Json& object, const std::string& where) {
    const auto kind = choiceFor<ReadingKind>(object.value("kind", "quantity"));
    if (!kind) throw BrokenData{where + ".kind"};
    return *kind;
}

YardReadingText readingOf(const Json& object, const std::string& check) {
    YardReadingText r;
    r.id = textOf(object, "id", check + ".readings");
    const std::string where = check + ".readings." + r.id;
    r.label = textOf(object, "label", where);
    r.hint = textOf(object, "hint", where);
    r.kind = kindOf(object, where);
    if (r.kind == ReadingKind::Quantity)
        r.dimension = dimensionFor(textOf(object, "dimension", where), where);
    for (const auto& choice : object.value("choices", Json::array()))
        r.choices.push_back({textOf(choice, "id", where), textOf(choice, "text", where)});
    if ((r.kind == ReadingKind::Choice) != (r.choices.size() > 1))
        throw BrokenData{where + ".choices"};
    r.isOptional = object.value("optional", false);
    r.repeats = object.value("repeats", false);
    return r;
}

CheckPlace placeOf(const Json& object, const std::string& where) {
    const auto place = choiceFor<CheckPlace>(textOf(object, "place", where));
    if (!place || *place == CheckPlace::Sum) throw BrokenData{where + ".place"};
    return *place;
}

std::vector<std::string> keysOf(const Json& object, const std::string& where) {
    auto out = yard_data::textsOf(object, "writes", where);
    for (const auto& key : out) {
        if (!fieldView(Machine{}, key)) throw BrokenData{where + ".writes: " + key};
    }
    return out;
}

std::vector<std::string> settledOf(const Json& object, const std::string& where) {
    auto out = yard_data::textsOf(object, "settles", where);
    for (const auto& value : out) {
        const std::string machine = "machine.";
        const bool isThere =
            value == "nozzle.flow" ||
            (value.starts_with(machine) && fieldView(Machine{}, value.substr(machine.size())));
        if (!isThere) throw BrokenData{where + ".settles: " + value};
    }
    return out;
}

void requireUseful(const YardCheckText& check, const std::string& where) {
    if (check.steps.empty()) throw BrokenData{where + ".steps"};
    if (check.readings.empty()) throw BrokenData{where + ".readings"};
    if (check.cautions.empty()) throw BrokenData{where + ".cautions"};
    if (check.minutes <= 0) throw BrokenData{where + ".minutes"};
}

YardCheckText checkOf(const Json& object) {
    YardCheckText c;
    c.id = textOf(object, "id", "yard_checks");
    const std::string where = "yard_checks." + c.id;
    c.title = textOf(object, "title", where);
    c.purpose = textOf(object, "purpose", where);
    c.when = yard_data::conditionsOf(object, where);
    c.steps = yard_data::textsOf(object, "steps", where);
    for (const auto& reading : object.at("readings"))
        c.readings.push_back(readingOf(reading, where));
    c.minutes = object.at("minutes").get<int>();
    c.people = object.value("people", 1);
    c.tools = textOf(object, "tools", where);
    c.place = placeOf(object, where);
    c.cautions = yard_data::cautionsOf(object, where);
    c.writes = keysOf(object, where);
    c.settles = settledOf(object, where);
    c.sources = yard_data::sourcesOf(object, where);
    requireUseful(c, where);
    return c;
}

void requireUnique(const std::vector<YardCheckText>& checks) {
    std::set<std::string> seen;
    for (const auto& check : checks) {
        if (!seen.insert(check.id).second) throw BrokenData{"yard_checks." + check.id + ": twice"};
        std::set<std::string> readings;
        for (const auto& reading : check.readings) {
            if (!readings.insert(reading.id).second)
                throw BrokenData{"yard_checks." + check.id + "." + reading.id + ": twice"};
        }
    }
}

}  // namespace

const YardReadingText* YardCheckText::reading(std::string_view readingId) const {
    const auto found = std::find_if(readings.begin(), readings.end(),
                                    [&](const auto& one) { return one.id == readingId; });
    return found == readings.end() ? nullptr : &*found;
}

bool YardCheckText::firmsUp(std::string_view where) const {
    const auto isHere = [&](const std::string& one) { return one == where; };
    if (std::any_of(settles.begin(), settles.end(), isHere)) return true;
    constexpr std::string_view machine = "machine.";
    if (!where.starts_with(machine)) return false;
    where.remove_prefix(machine.size());
    return std::any_of(writes.begin(), writes.end(), isHere);
}

Result<std::vector<YardCheckText>> yardChecksFrom(std::string_view json) {
    return yard_data::loaded([&] {
        std::vector<YardCheckText> out;
        const Json whole = Json::parse(json);
        for (const auto& check : whole.at("yard_checks")) out.push_back(checkOf(check));
        requireUnique(out);
        return out;
    });
}

const std::vector<YardCheckText>& yardChecks() {
    static const std::vector<YardCheckText> checks =
        yard_data::shipped(yardChecksFrom(resource("knowledge/yard_checks.json")));
    return checks;
}

const YardCheckText* yardCheck(std::string_view id) {
    const auto found = std::find_if(yardChecks().begin(), yardChecks().end(),
                                    [&](const YardCheckText& check) { return check.id == id; });
    return found == yardChecks().end() ? nullptr : &*found;
}

bool applies(const YardCheckText& check, const Machine& machine) {
    return allHold(check.when, machine);
}

std::string_view checkForValue(const Machine& machine, std::string_view where) {
    for (const YardCheckText& check : yardChecks()) {
        if (check.firmsUp(where) && applies(check, machine)) return check.id;
    }
    return {};
}

}  // namespace bw
