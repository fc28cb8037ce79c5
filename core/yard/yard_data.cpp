// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/yard_data.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/model/machine_fields.h"

namespace bw::yard_data {
namespace {

std::vector<std::string> choicesOf(const Json& object, const char* key, const FieldView& field,
                                   const std::string& where) {
    const auto words = textsOf(object, key, where);
    for (const auto& word : words) {
        if (std::find(field.choices.begin(), field.choices.end(), word) == field.choices.end())
            throw BrokenData{where + "." + key + ": " + word};
    }
    return words;
}

ProfileCondition conditionOf(const Json& object, const std::string& where) {
    ProfileCondition out;
    out.key = textOf(object, "key", where);
    const auto field = fieldView(Machine{}, out.key);
    if (!field) throw BrokenData{where + ".key: " + out.key};
    out.is = choicesOf(object, "is", *field, where);
    out.isNot = choicesOf(object, "not", *field, where);
    if (object.contains("known")) out.isKnown = object.at("known").get<bool>();
    if (out.is.empty() && out.isNot.empty() && !out.isKnown) throw BrokenData{where};
    return out;
}

}  // namespace

std::string textOf(const Json& object, const char* key, const std::string& where) {
    auto text = object.value(key, std::string());
    if (text.empty()) throw BrokenData{where + "." + key};
    return text;
}

std::vector<std::string> textsOf(const Json& object, const char* key, const std::string& where) {
    auto out = object.value(key, std::vector<std::string>{});
    for (const auto& text : out) {
        if (text.empty()) throw BrokenData{where + "." + key};
    }
    return out;
}

std::vector<Source> sourcesOf(const Json& object, const std::string& where) {
    std::vector<Source> out;
    for (const auto& source : object.value("sources", Json::array()))
        out.push_back({textOf(source, "kind", where), textOf(source, "text", where)});
    if (out.empty()) throw BrokenData{where + ".sources"};
    return out;
}

std::vector<std::string> cautionsOf(const Json& object, const std::string& where) {
    auto out = textsOf(object, "cautions", where);
    for (const auto& id : out) {
        if (!Knowledge::shipped().cautions.contains(id))
            throw BrokenData{where + ".cautions: " + id};
    }
    return out;
}

std::vector<ProfileCondition> conditionsOf(const Json& object, const std::string& where) {
    std::vector<ProfileCondition> out;
    for (const auto& one : object.value("when", Json::array()))
        out.push_back(conditionOf(one, where + ".when"));
    return out;
}

}  // namespace bw::yard_data
