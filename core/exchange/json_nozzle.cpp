// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"
#include "core/exchange/json_refusals.h"

namespace bw {
namespace {

std::vector<std::string> nozzleKeys() {
    std::vector<std::string> keys{"name",     "family", "size_code", "accept_unchecked",
                                  "built_in", "notes",  "demo"};
    const Nozzle nozzle;
    visitFields(nozzle, [&](std::string_view key, const auto&) { keys.emplace_back(key); });
    return keys;
}

}  // namespace

Nozzle readNozzle(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues) {
    Nozzle nozzle;
    static const auto kKeys = nozzleKeys();
    checkKeys(json, where, kKeys, issues);
    readOptionalText(json, where, "name", nozzle.name, issues);
    readOptionalText(json, where, "family", nozzle.family, issues);
    readOptionalText(json, where, "size_code", nozzle.sizeCode, issues);
    visitFields(nozzle, [&](std::string_view key, auto& field) {
        if (const Json* value = member(json, key))
            readKnown(*value, pathTo(where, key), field, issues);
    });
    readOptionalMark(json, where, "accept_unchecked", nozzle.acceptUnchecked, issues);
    readOptionalMark(json, where, "built_in", nozzle.isBuiltIn, issues);
    readOptionalText(json, where, "notes", nozzle.notes, issues);
    readOptionalMark(json, where, "demo", nozzle.isDemo, issues);
    if (use == JsonUse::Stored || !issues.none()) return nozzle;
    if (use == JsonUse::Request) requireNozzleKeys(json, where, issues);
    refuseNozzleRows(nozzle, where, issues);
    putInOrder(nozzle);
    refuseNozzle(nozzle, where, issues);
    return nozzle;
}

OrderedJson writtenNozzle(const Nozzle& nozzle, UnitSystem units) {
    OrderedJson out = OrderedJson::object();
    putText(out, "name", nozzle.name);
    putText(out, "family", nozzle.family);
    putText(out, "size_code", nozzle.sizeCode);
    visitFields(nozzle,
                [&](std::string_view key, const auto& field) { putKnown(out, key, field, units); });
    putMark(out, "accept_unchecked", nozzle.acceptUnchecked);
    putMark(out, "built_in", nozzle.isBuiltIn);
    putText(out, "notes", nozzle.notes);
    putMark(out, "demo", nozzle.isDemo);
    return out;
}

}  // namespace bw
