// SPDX-License-Identifier: GPL-3.0-or-later
#include <utility>

#include "core/exchange/json_fields.h"
#include "core/exchange/json_yard.h"

namespace bw {
namespace {

template <class Take>
void eachOf(const Json& object, const std::string& where, std::string_view key, JsonIssues& issues,
            Take&& take) {
    const Json* list = member(object, key);
    if (!list) return;
    const std::string path = pathTo(where, key);
    if (!list->is_array()) return issues.add(jsonWrongType(path, "list"));
    for (std::size_t i = 0; i < list->size() && issues.none(); ++i)
        take((*list)[i], pathTo(path, i));
}

void readPositive(const Json& object, const std::string& where, std::string_view key, int& out,
                  JsonIssues& issues) {
    if (const Json* number = member(object, key))
        readWholeNumber(*number, pathTo(where, key), out, issues);
}

void readNumber(const Json& object, const std::string& where, std::string_view key, double& out,
                JsonIssues& issues) {
    if (const Json* number = member(object, key))
        readValue(*number, pathTo(where, key), out, nullptr, issues);
}

/// A number, or a quantity of whatever dimension its unit has.
void readAny(const Json& object, const std::string& where, AnyQuantity& out, std::string& typed,
             JsonIssues& issues) {
    const Json* json = member(object, "value");
    const std::string path = pathTo(where, "value");
    if (!json) return issues.add(jsonMissing(path));
    if (json->is_number()) {
        out = {Dimension::None, json->get<double>()};
        return;
    }
    if (!readText(*json, path, typed, issues)) return;
    const auto read = parseJsonQuantity(typed);
    if (read)
        out = *read;
    else
        issues.add({read.problem().code, Severity::Error, path, read.problem().arguments});
}

NotedReading readReading(const Json& json, const std::string& where, JsonIssues& issues) {
    NotedReading out;
    checkKeys(json, where, {"id", "run", "value", "typed"}, issues);
    readOptionalText(json, where, "id", out.id, issues);
    readPositive(json, where, "run", out.run, issues);
    readAny(json, where, out.value, out.typed, issues);
    readOptionalText(json, where, "typed", out.typed, issues);
    return out;
}

NotedChoice readChoiceMade(const Json& json, const std::string& where, JsonIssues& issues) {
    NotedChoice out;
    checkKeys(json, where, {"id", "word"}, issues);
    readOptionalText(json, where, "id", out.id, issues);
    readOptionalText(json, where, "word", out.word, issues);
    return out;
}

NotedTick readTick(const Json& json, const std::string& where, JsonIssues& issues) {
    NotedTick out;
    checkKeys(json, where, {"item", "date", "note"}, issues);
    readOptionalText(json, where, "item", out.item, issues);
    readOptionalText(json, where, "date", out.date, issues);
    readOptionalText(json, where, "note", out.note, issues);
    return out;
}

NotedCatch readCatch(const Json& json, const std::string& where, JsonIssues& issues) {
    NotedCatch out;
    checkKeys(json, where, {"nozzle", "again", "volume", "time", "typed"}, issues);
    readPositive(json, where, "nozzle", out.nozzle, issues);
    readOptionalMark(json, where, "again", out.isAgain, issues);
    if (const Json* volume = member(json, "volume"))
        readValue(*volume, pathTo(where, "volume"), out.volume, &out.typed, issues);
    if (const Json* time = member(json, "time"))
        readValue(*time, pathTo(where, "time"), out.time, nullptr, issues);
    readOptionalText(json, where, "typed", out.typed, issues);
    return out;
}

CatchTest readCatchTest(const Json& json, const std::string& where, JsonIssues& issues) {
    CatchTest out;
    checkKeys(json, where,
              {"set", "pressure", "new_flow", "time", "scope", "section", "sections",
               "limit_of_mean", "limit_of_new", "catches"},
              issues);
    readOptionalText(json, where, "set", out.set, issues);
    if (const Json* p = member(json, "pressure"))
        readKnown(*p, pathTo(where, "pressure"), out.pressure, issues);
    if (const Json* q = member(json, "new_flow"))
        readKnown(*q, pathTo(where, "new_flow"), out.newFlow, issues);
    if (const Json* t = member(json, "time"))
        readValue(*t, pathTo(where, "time"), out.time, nullptr, issues);
    if (const Json* scope = member(json, "scope"))
        readChoice(*scope, pathTo(where, "scope"), out.scope, issues);
    readPositive(json, where, "section", out.section, issues);
    if (const Json* list = member(json, "sections"))
        readValue(*list, pathTo(where, "sections"), out.sections, nullptr, issues);
    readNumber(json, where, "limit_of_mean", out.limitOfMean, issues);
    readNumber(json, where, "limit_of_new", out.limitOfNew, issues);
    eachOf(json, where, "catches", issues, [&](const Json& j, const std::string& w) {
        out.catches.push_back(readCatch(j, w, issues));
    });
    return out;
}

void readTexts(const Json& json, const std::string& where, YardRecord& out, JsonIssues& issues) {
    readOptionalText(json, where, "check", out.check, issues);
    readOptionalText(json, where, "machine_name", out.machineName, issues);
    readOptionalText(json, where, "started", out.started, issues);
    readOptionalText(json, where, "finished", out.finished, issues);
    readOptionalText(json, where, "notes", out.notes, issues);
    readOptionalMark(json, where, "demo", out.isDemo, issues);
    if (const Json* units = member(json, "units")) {
        std::string text;
        const auto path = pathTo(where, "units");
        if (!readText(*units, path, text, issues)) return;
        if (const auto known = unitSystemFor(text))
            out.units = *known;
        else
            issues.add(jsonNotAChoice(path, text, {"metric", "us", "uk"}));
    }
}

void readLists(const Json& json, const std::string& where, YardRecord& out, JsonIssues& issues) {
    eachOf(json, where, "readings", issues, [&](const Json& j, const std::string& w) {
        out.readings.push_back(readReading(j, w, issues));
    });
    eachOf(json, where, "choices", issues, [&](const Json& j, const std::string& w) {
        out.choices.push_back(readChoiceMade(j, w, issues));
    });
    eachOf(json, where, "ticks", issues, [&](const Json& j, const std::string& w) {
        out.ticks.push_back(readTick(j, w, issues));
    });
    eachOf(json, where, "written_fields", issues, [&](const Json& j, const std::string& w) {
        if (std::string key; readText(j, w, key, issues)) out.writtenFields.push_back(key);
    });
}

OrderedJson written(const NotedReading& reading, UnitSystem units) {
    OrderedJson out{{"id", reading.id}};
    if (reading.run != 1) out["run"] = reading.run;
    std::string text;
    if (reading.value.dimension == Dimension::None) {
        out["value"] = reading.value.si;
    } else {
        text = quantityText(reading.value, reading.typed, units);
        out["value"] = text;
    }
    if (reading.typed != text) out["typed"] = reading.typed;
    return out;
}

OrderedJson written(const NotedCatch& one, UnitSystem units) {
    OrderedJson out{{"nozzle", one.nozzle}};
    putMark(out, "again", one.isAgain);
    const std::string text = quantityText(anyQuantity(one.volume), one.typed, units);
    out["volume"] = text;
    if (one.typed != text) out["typed"] = one.typed;
    out["time"] = exactText(anyQuantity(one.time), units);
    return out;
}

OrderedJson written(const CatchTest& test, UnitSystem units) {
    OrderedJson out = OrderedJson::object();
    putText(out, "set", test.set);
    putKnown(out, "pressure", test.pressure, units);
    putKnown(out, "new_flow", test.newFlow, units);
    out["time"] = exactText(anyQuantity(test.time), units);
    out["scope"] = std::string(choiceName(test.scope));
    if (test.section != 0) out["section"] = test.section;
    if (!test.sections.empty()) out["sections"] = test.sections;
    out["limit_of_mean"] = test.limitOfMean;
    out["limit_of_new"] = test.limitOfNew;
    for (const auto& one : test.catches) out["catches"].push_back(written(one, units));
    return out;
}

}  // namespace

YardRecord readYardRecord(const Json& json, const std::string& where, JsonIssues& issues) {
    YardRecord out;
    checkKeys(json, where,
              {"kind", "check", "machine_id", "machine_name", "units", "started", "finished",
               "readings", "choices", "ticks", "catch_test", "written_fields", "notes", "demo"},
              issues);
    if (const Json* kind = member(json, "kind"))
        readChoice(*kind, pathTo(where, "kind"), out.kind, issues);
    readTexts(json, where, out, issues);
    if (const Json* id = member(json, "machine_id")) {
        if (id->is_number_integer())
            out.machineId = id->get<RecordId>();
        else
            issues.add(jsonWrongType(pathTo(where, "machine_id"), "whole_number"));
    }
    readLists(json, where, out, issues);
    if (const Json* test = member(json, "catch_test"))
        out.catchTest = readCatchTest(*test, pathTo(where, "catch_test"), issues);
    return out;
}

OrderedJson writtenYardRecord(const YardRecord& record) {
    OrderedJson out{{"kind", std::string(choiceName(record.kind))}};
    putText(out, "check", record.check);
    if (record.machineId != 0) out["machine_id"] = record.machineId;
    putText(out, "machine_name", record.machineName);
    out["units"] = std::string(name(record.units));
    putText(out, "started", record.started);
    putText(out, "finished", record.finished);
    for (const auto& reading : record.readings)
        out["readings"].push_back(written(reading, record.units));
    for (const auto& choice : record.choices)
        out["choices"].push_back({{"id", choice.id}, {"word", choice.word}});
    for (const auto& tick : record.ticks) {
        OrderedJson one{{"item", tick.item}, {"date", tick.date}};
        putText(one, "note", tick.note);
        out["ticks"].push_back(std::move(one));
    }
    if (!(record.catchTest == CatchTest{}))
        out["catch_test"] = written(record.catchTest, record.units);
    for (const auto& key : record.writtenFields) out["written_fields"].push_back(key);
    putText(out, "notes", record.notes);
    putMark(out, "demo", record.isDemo);
    return out;
}

Result<YardRecord> yardRecordFromJson(std::string_view text, const std::string& where) {
    const auto json = parseJson(text);
    if (!json) return json.problem();
    JsonIssues issues;
    YardRecord out = readYardRecord(*json, where, issues);
    if (!issues.none()) return issues.first();
    return out;
}

std::string toJson(const YardRecord& record, int indent) {
    return writtenYardRecord(record).dump(indent, ' ', false, Json::error_handler_t::replace);
}

}  // namespace bw
