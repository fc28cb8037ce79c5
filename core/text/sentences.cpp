// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/text/sentences.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/base/resource.h"

namespace bw {
namespace {

/// The figure of a quantity without its unit, for ranges: "6.9" of "6.9 to 13.3 km/h".
std::string figureText(const AnyQuantity& quantity, const NumberStyle& style) {
    const Unit unit = displayUnit(style.units, quantity.dimension);
    return formatNumber(toUnit(quantity, unit), unit, style.decimalMark);
}

std::string valueText(const Sentences& sentences, const ArgumentValue& value,
                      const NumberStyle& style, bool figureOnly) {
    if (const auto* quantity = std::get_if<AnyQuantity>(&value))
        return figureOnly ? figureText(*quantity, style) : format(*quantity, style);
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    return sentences.fill(std::get<CodeText>(value).code, {}, style);
}

/// A gap as written: "floor", "floor#" (the figure alone), "droplets|or" (a list, its last word).
struct Gap {
    explicit Gap(std::string_view written) : name(written) {
        if (const auto bar = name.find('|'); bar != std::string_view::npos) {
            joiner = name.substr(bar + 1);
            name = name.substr(0, bar);
        }
        if (name.ends_with('#')) {
            figureOnly = true;
            name.remove_suffix(1);
        }
    }
    std::string_view name;
    std::string_view joiner;
    bool figureOnly = false;
};

std::string joined(const std::vector<std::string>& parts, const std::string& last) {
    std::string out;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) out += i + 1 == parts.size() && !last.empty() ? " " + last + " " : ", ";
        out += parts[i];
    }
    return out;
}

std::string gapText(const Sentences& sentences, std::string_view written,
                    const std::vector<Argument>& arguments, const NumberStyle& style) {
    const Gap gap(written);
    std::vector<std::string> parts;
    for (const auto& a : arguments) {
        if (a.name == gap.name)
            parts.push_back(valueText(sentences, a.value, style, gap.figureOnly));
    }
    if (parts.empty()) return "{" + std::string(written) + "}";
    const auto last =
        gap.joiner.empty() ? std::string() : sentences.text("list." + std::string(gap.joiner));
    return joined(parts, last);
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
        out += gapText(*this, rest.substr(open + 1, close - open - 1), arguments, style);
        rest.remove_prefix(close + 1);
    }
    return out + std::string(rest);
}

}  // namespace bw
