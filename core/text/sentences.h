// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/units/format.h"

namespace bw {

/// The words of the program by code, one language. The core returns codes with values; this fills
/// the gaps, "{floor}" or "{speed}", in the reader's units. "{low#}" is the figure without its
/// unit; arguments that share a name make a list, "{droplets|or}": "C, M or F". Text files:
/// resources/text/*.<language>.json, each one object of "code": "sentence".
class Sentences {
  public:
    /// The shipped sentences of a language ("en"); codes missing there fall back to English.
    static Sentences shipped(std::string_view language = "en");
    /// Adds or replaces sentences from one JSON object; returns false (and changes nothing) if it
    /// is not one.
    bool add(std::string_view json);

    bool has(std::string_view code) const;
    /// The filled sentence. An unknown code yields the code itself in angle brackets; a test scans
    /// for them.
    std::string fill(std::string_view code, const std::vector<Argument>& arguments,
                     const NumberStyle& style) const;
    std::string text(std::string_view code) const { return fill(code, {}, {}); }
    std::string of(const Problem& problem, const NumberStyle& style) const {
        return fill("problem." + problem.code, problem.arguments, style);
    }
    std::string of(const Fact& fact, const NumberStyle& style) const {
        return fill(fact.code, fact.arguments, style);
    }
    const std::map<std::string, std::string, std::less<>>& all() const { return m_texts; }

  private:
    std::map<std::string, std::string, std::less<>> m_texts;
};

}  // namespace bw
