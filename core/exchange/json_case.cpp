// SPDX-License-Identifier: GPL-3.0-or-later
#include <limits>

#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"

namespace bw {
namespace {

const std::vector<std::string>& caseKeys() {
    static const std::vector<std::string> kKeys{
        "opened",       "symptom", "tank",        "company",     "place", "who",
        "observations", "state",   "cause_found", "minutes",     "notes", "machine",
        "nozzle",       "job",     "machine_id",  "customer_id", "demo"};
    return kKeys;
}

void readObservations(const Json& json, const std::string& where, std::vector<Observation>& out,
                      JsonIssues& issues) {
    if (!json.is_array()) return issues.add(jsonWrongType(where, "list"));
    for (std::size_t i = 0; i < json.size(); ++i)
        out.push_back(readObservation(json[i], pathTo(where, i), issues));
}

void readId(const Json& json, const std::string& where, std::string_view key, RecordId& out,
            JsonIssues& issues) {
    const Json* id = member(json, key);
    if (!id) return;
    if (id->is_number_integer())
        out = id->get<RecordId>();
    else
        issues.add(jsonWrongType(pathTo(where, key), "whole_number"));
}

void readParts(const Json& json, const std::string& where, CaseRecord& out, JsonIssues& issues) {
    constexpr auto use = JsonUse::Stored;
    if (const Json* part = member(json, "machine"))
        out.machine = readMachine(*part, use, pathTo(where, "machine"), issues);
    if (const Json* part = member(json, "nozzle"))
        out.nozzle = readNozzle(*part, use, pathTo(where, "nozzle"), issues);
    if (const Json* part = member(json, "job"))
        out.job = readJob(*part, use, pathTo(where, "job"), issues);
}

void readCaseTexts(const Json& json, const std::string& where, CaseRecord& out,
                   JsonIssues& issues) {
    readOptionalText(json, where, "opened", out.opened, issues);
    readOptionalText(json, where, "tank", out.tank, issues);
    readOptionalText(json, where, "company", out.company, issues);
    readOptionalText(json, where, "place", out.place, issues);
    readOptionalText(json, where, "who", out.who, issues);
    readOptionalText(json, where, "cause_found", out.causeFound, issues);
    readOptionalText(json, where, "notes", out.notes, issues);
    readOptionalMark(json, where, "demo", out.isDemo, issues);
}

OrderedJson writtenObservation(const Observation& observation, UnitSystem units) {
    OrderedJson out{{"check", observation.check}};
    putText(out, "answer", observation.answer);
    std::string readingText;
    if (observation.reading && std::isfinite(observation.reading->si)) {
        const AnyQuantity& reading = *observation.reading;
        if (reading.dimension == Dimension::None) {
            out["reading"] = reading.si;
        } else {
            readingText = quantityText(reading, observation.typed, units);
            out["reading"] = readingText;
        }
    }
    if (observation.typed != readingText) out["typed"] = observation.typed;
    return out;
}

}  // namespace

namespace {

/// A number, a quantity of any dimension, or either as an object with its origin.
void readReading(const Json& json, const std::string& where, Observation& out, JsonIssues& issues) {
    if (json.is_object()) {
        SourceKeys source;
        if (readSource(json, where, source, issues))
            readReading(json["value"], pathTo(where, "value"), out, issues);
        if (source.typed) out.typed = *source.typed;
        return;
    }
    if (json.is_number()) {
        out.reading = AnyQuantity{Dimension::None, json.get<double>()};
    } else if (!json.is_string()) {
        issues.add(jsonWrongType(where, "quantity"));
    } else {
        out.typed = json.get<std::string>();
        const auto read = parseJsonQuantity(out.typed);
        if (read)
            out.reading = *read;
        else
            issues.add({read.problem().code, Severity::Error, where, read.problem().arguments});
    }
}

}  // namespace

Observation readObservation(const Json& json, const std::string& where, JsonIssues& issues) {
    Observation out;
    checkKeys(json, where, {"check", "answer", "reading", "typed"}, issues);
    if (!member(json, "check")) issues.add(jsonMissing(pathTo(where, "check")));
    readOptionalText(json, where, "check", out.check, issues);
    readOptionalText(json, where, "answer", out.answer, issues);
    if (const Json* reading = member(json, "reading"))
        readReading(*reading, pathTo(where, "reading"), out, issues);
    readOptionalText(json, where, "typed", out.typed, issues);
    return out;
}

CaseRecord readCase(const Json& json, const std::string& where, JsonIssues& issues) {
    CaseRecord out;
    checkKeys(json, where, caseKeys(), issues);
    readCaseTexts(json, where, out, issues);
    if (const Json* symptom = member(json, "symptom")) {
        Symptom value{};
        if (readChoice(*symptom, pathTo(where, "symptom"), value, issues)) out.symptom = value;
    }
    if (const Json* state = member(json, "state"))
        readChoice(*state, pathTo(where, "state"), out.state, issues);
    if (const Json* minutes = member(json, "minutes"))
        readWholeNumber(*minutes, pathTo(where, "minutes"), out.minutes, issues);
    if (const Json* list = member(json, "observations")) {
        readObservations(*list, pathTo(where, "observations"), out.observations, issues);
    }
    readId(json, where, "machine_id", out.machineId, issues);
    readId(json, where, "customer_id", out.customerId, issues);
    readParts(json, where, out, issues);
    return out;
}

OrderedJson writtenCase(const CaseRecord& record) {
    const UnitSystem units = record.machine.units;
    OrderedJson out = OrderedJson::object();
    putText(out, "opened", record.opened);
    if (record.symptom) out["symptom"] = std::string(choiceName(*record.symptom));
    putText(out, "tank", record.tank);
    putText(out, "company", record.company);
    putText(out, "place", record.place);
    putText(out, "who", record.who);
    for (const auto& observation : record.observations) {
        out["observations"].push_back(writtenObservation(observation, units));
    }
    out["state"] = std::string(choiceName(record.state));
    putText(out, "cause_found", record.causeFound);
    if (record.minutes != 0) out["minutes"] = record.minutes;
    putText(out, "notes", record.notes);
    out["machine"] = writtenMachine(record.machine);
    out["nozzle"] = writtenNozzle(record.nozzle, units);
    out["job"] = writtenJob(record.job, units);
    if (record.machineId != 0) out["machine_id"] = record.machineId;
    if (record.customerId != 0) out["customer_id"] = record.customerId;
    putMark(out, "demo", record.isDemo);
    return out;
}

}  // namespace bw
