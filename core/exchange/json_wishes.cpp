// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_wishes.h"

#include "core/exchange/json_fields.h"

namespace bw {
namespace {

OwnedSet readOwned(const Json& json, const std::string& where, JsonIssues& issues) {
    OwnedSet out;
    checkKeys(json, where, {"machine", "nozzle"}, issues);
    if (const Json* id = member(json, "machine"); id && id->is_number_integer())
        out.machine = id->get<RecordId>();
    else
        issues.add(jsonWrongType(pathTo(where, "machine"), "whole_number"));
    readOptionalText(json, where, "nozzle", out.nozzle, issues);
    return out;
}

template <class Take>
void eachOf(const Json& object, std::string_view key, JsonIssues& issues, Take&& take) {
    const Json* list = member(object, key);
    const std::string path = pathTo("wishes", key);
    if (!list) return;
    if (!list->is_array()) return issues.add(jsonWrongType(path, "list"));
    for (std::size_t i = 0; i < list->size() && issues.none(); ++i)
        take((*list)[i], pathTo(path, i));
}

}  // namespace

Result<SetWishes> wishesFromJson(std::string_view text) {
    const auto json = parseJson(text);
    if (!json) return json.problem();
    JsonIssues issues;
    SetWishes out;
    checkKeys(*json, "wishes",
              {"owned", "barred", "accept_unchecked", "spares", "all_aboard", "field_efficiency"},
              issues);
    const auto names = [&](std::string_view key, std::vector<std::string>& list) {
        eachOf(*json, key, issues, [&](const Json& j, const std::string& w) {
            if (std::string name; readText(j, w, name, issues)) list.push_back(std::move(name));
        });
    };
    eachOf(*json, "owned", issues, [&](const Json& j, const std::string& w) {
        out.owned.push_back(readOwned(j, w, issues));
    });
    names("barred", out.barred);
    names("accept_unchecked", out.acceptUnchecked);
    if (const Json* part = member(*json, "spares"))
        readValue(*part, "wishes.spares", out.spares, nullptr, issues);
    readOptionalMark(*json, "wishes", "all_aboard", out.isAllAboard, issues);
    if (const Json* part = member(*json, "field_efficiency"))
        readValue(*part, "wishes.field_efficiency", out.fieldEfficiency.emplace(), nullptr, issues);
    if (!issues.none()) return issues.first();
    return out;
}

std::string toJson(const SetWishes& wishes) {
    OrderedJson out = OrderedJson::object();
    for (const auto& set : wishes.owned)
        out["owned"].push_back({{"machine", set.machine}, {"nozzle", set.nozzle}});
    for (const auto& name : wishes.barred) out["barred"].push_back(name);
    for (const auto& name : wishes.acceptUnchecked) out["accept_unchecked"].push_back(name);
    if (wishes.spares != 0.0) out["spares"] = wishes.spares;
    putMark(out, "all_aboard", wishes.isAllAboard);
    if (wishes.fieldEfficiency) out["field_efficiency"] = *wishes.fieldEfficiency;
    return out.dump();
}

}  // namespace bw
