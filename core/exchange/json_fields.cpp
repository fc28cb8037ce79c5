// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_fields.h"

#include <algorithm>

namespace bw {
namespace {

/// The keys that may stand right below a prefix ("losses." → suction, line …).
std::vector<std::string> keysBelow(const std::string& prefix,
                                   const std::vector<std::string>& known) {
    std::vector<std::string> out;
    for (const auto& key : known) {
        if (!key.starts_with(prefix)) continue;
        const std::string rest = key.substr(prefix.size());
        const std::string first = rest.substr(0, rest.find('.'));
        if (std::find(out.begin(), out.end(), first) == out.end()) out.push_back(first);
    }
    return out;
}

void checkBelow(const Json& object, const std::string& where, const std::string& prefix,
                const std::vector<std::string>& known, JsonIssues& issues) {
    const auto allowed = keysBelow(prefix, known);
    for (const auto& [key, value] : object.items()) {
        const std::string path = pathTo(where, key);
        if (std::find(allowed.begin(), allowed.end(), key) == allowed.end()) {
            issues.add(error("json_unknown_key", path,
                             {{"key", shortened(key)}, {"nearest", nearestWord(key, allowed)}}));
            return;
        }
        const bool group = std::find(known.begin(), known.end(), prefix + key) == known.end();
        if (!group || value.is_null()) continue;
        if (!value.is_object()) return issues.add(jsonWrongType(path, "group"));
        checkBelow(value, path, prefix + key + ".", known, issues);
    }
}

}  // namespace

void checkKeys(const Json& object, const std::string& where, const std::vector<std::string>& known,
               JsonIssues& issues) {
    if (!object.is_object()) return issues.add(jsonWrongType(where, "group"));
    checkBelow(object, where, {}, known, issues);
}

bool readSource(const Json& object, const std::string& where, SourceKeys& out, JsonIssues& issues) {
    checkKeys(object, where, {"value", "origin", "from", "to", "typed", "date"}, issues);
    if (!member(object, "value")) issues.add(jsonMissing(pathTo(where, "value")));
    readOptionalText(object, where, "date", out.date, issues);
    if (const Json* typed = member(object, "typed")) {
        std::string text;
        if (readText(*typed, pathTo(where, "typed"), text, issues)) out.typed = text;
    }
    std::string word(name(Origin::Handbook));
    readOptionalText(object, where, "origin", word, issues);
    const auto origin = originFor(word);
    if (origin)
        out.origin = *origin;
    else
        issues.add(
            jsonNotAChoice(pathTo(where, "origin"), word, {"measured", "handbook", "assumed"}));
    return issues.none();
}

void writeSource(const SourceKeys& source, OrderedJson& object) {
    object["origin"] = std::string(name(source.origin));
    if (!source.date.empty()) object["date"] = source.date;
    if (source.typed) object["typed"] = *source.typed;
}

std::string quantityText(AnyQuantity quantity, const std::string& typed, UnitSystem units) {
    const auto read = parseJsonQuantity(typed, quantity.dimension);
    return read && read->si == quantity.si ? typed : exactText(quantity, units);
}

void put(OrderedJson& object, std::string_view dottedKey, OrderedJson value) {
    OrderedJson* at = &object;
    while (true) {
        const auto dot = dottedKey.find('.');
        at = &(*at)[std::string(dottedKey.substr(0, dot))];
        if (dot == std::string_view::npos) break;
        dottedKey.remove_prefix(dot + 1);
    }
    *at = std::move(value);
}

void putText(OrderedJson& object, std::string_view key, const std::string& text) {
    if (!text.empty()) object[std::string(key)] = text;
}

void putMark(OrderedJson& object, std::string_view key, bool mark) {
    if (mark) object[std::string(key)] = true;
}

void readOptionalText(const Json& object, const std::string& where, std::string_view key,
                      std::string& out, JsonIssues& issues) {
    if (const Json* json = member(object, key)) readText(*json, pathTo(where, key), out, issues);
}

void readOptionalMark(const Json& object, const std::string& where, std::string_view key, bool& out,
                      JsonIssues& issues) {
    if (const Json* json = member(object, key))
        readValue(*json, pathTo(where, key), out, nullptr, issues);
}

}  // namespace bw
