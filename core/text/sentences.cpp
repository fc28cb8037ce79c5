// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sentences.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/base/resource.h"

namespace bw {
namespace {

std::string valueText(const Sentences& sentences, const ArgumentValue& value,
                      const NumberStyle& style) {
    if (const auto* quantity = std::get_if<AnyQuantity>(&value)) return format(*quantity, style);
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    return sentences.fill(std::get<CodeText>(value).code, {}, style);
}

}  // namespace

Sentences Sentences::shipped(std::string_view language) {
    Sentences out;
    const auto addAll = [&](std::string_view tag) {
        const std::string ending = "." + std::string(tag) + ".json";
        for (const auto& entry : resources()) {
            if (entry.path.starts_with("text/") && entry.path.ends_with(ending))
                out.add(entry.bytes);
        }
    };
    addAll("en");
    if (language != "en") addAll(language);
    return out;
}

bool Sentences::add(std::string_view json) {
    const auto parsed = nlohmann::json::parse(json, nullptr, false);
    if (!parsed.is_object()) return false;
    if (!std::all_of(parsed.begin(), parsed.end(), [](const auto& v) { return v.is_string(); }))
        return false;
    for (const auto& [code, text] : parsed.items())
        m_texts[code] = text.template get<std::string>();
    return true;
}

bool Sentences::has(std::string_view code) const {
    return m_texts.find(code) != m_texts.end();
}

std::string Sentences::fill(std::string_view code, const std::vector<Argument>& arguments,
                            const NumberStyle& style) const {
    const auto found = m_texts.find(code);
    if (found == m_texts.end()) return "<" + std::string(code) + ">";
    std::string out;
    std::string_view rest = found->second;
    while (true) {
        const auto open = rest.find('{');
        const auto close = rest.find('}', open == std::string_view::npos ? 0 : open);
        if (open == std::string_view::npos || close == std::string_view::npos) break;
        out += rest.substr(0, open);
        const auto gap = rest.substr(open + 1, close - open - 1);
        const auto at = std::find_if(arguments.begin(), arguments.end(),
                                     [&](const auto& a) { return a.name == gap; });
        out += at == arguments.end() ? "{" + std::string(gap) + "}"
                                     : valueText(*this, at->value, style);
        rest.remove_prefix(close + 1);
    }
    return out + std::string(rest);
}

}  // namespace bw
