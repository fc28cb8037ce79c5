// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"
#include "core/exchange/json_refusals.h"

namespace bw {
namespace {

std::vector<std::string> jobKeys() {
    std::vector<std::string> keys{"name", "droplets", "pinned_nozzle", "notes", "demo"};
    const Job job;
    visitFields(job, [&](std::string_view key, const auto&) { keys.emplace_back(key); });
    return keys;
}

}  // namespace

Job readJob(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues) {
    Job job;
    static const auto kKeys = jobKeys();
    checkKeys(json, where, kKeys, issues);
    readOptionalText(json, where, "name", job.name, issues);
    visitFields(job, [&](std::string_view key, auto& field) {
        if (const Json* value = member(json, key))
            readKnown(*value, pathTo(where, key), field, issues);
    });
    if (const Json* droplets = member(json, "droplets")) {
        readValue(*droplets, pathTo(where, "droplets"), job.droplets, nullptr, issues);
    }
    readOptionalText(json, where, "pinned_nozzle", job.pinnedNozzle, issues);
    readOptionalText(json, where, "notes", job.notes, issues);
    readOptionalMark(json, where, "demo", job.isDemo, issues);
    if (use == JsonUse::Stored || !issues.none()) return job;
    if (use == JsonUse::Request) requireJobKeys(json, where, issues);
    refuseJob(job, where, issues);
    return job;
}

OrderedJson writtenJob(const Job& job, UnitSystem units) {
    OrderedJson out = OrderedJson::object();
    putText(out, "name", job.name);
    visitFields(job,
                [&](std::string_view key, const auto& field) { putKnown(out, key, field, units); });
    if (!job.droplets.empty()) out["droplets"] = written(job.droplets, units);
    putText(out, "pinned_nozzle", job.pinnedNozzle);
    putText(out, "notes", job.notes);
    putMark(out, "demo", job.isDemo);
    return out;
}

}  // namespace bw
