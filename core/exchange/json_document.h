// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace bw {

using Json = nlohmann::json;
/// For what is written: keys stay in the order in which they were set.
using OrderedJson = nlohmann::ordered_json;

/// The deepest nesting and the longest text that are read.
inline constexpr int kJsonDepth = 32;
inline constexpr std::size_t kJsonBytes = 8'000'000;

/// One JSON value from text. Refuses what the library would let pass: a key given twice, nesting
/// beyond kJsonDepth, text beyond kJsonBytes. Problems as in json.h; `where` is the path of the
/// key.
Result<Json> parseJson(std::string_view text);

/// The first problem met while reading; later ones are mostly its consequences.
class JsonIssues {
  public:
    void add(Problem problem) {
        if (!m_first) m_first = std::move(problem);
    }
    bool none() const { return !m_first; }
    const Problem& first() const { return *m_first; }

  private:
    std::optional<Problem> m_first;
};

/// The value under a key, or nothing if the key is absent or null.
const Json* member(const Json& object, std::string_view key);
/// As `member`, through groups: "losses.line.pressure".
const Json* memberAt(const Json& object, std::string_view dottedKey);

/// A path one step longer: "machine" and "spacing", or "sections" and 2.
std::string pathTo(const std::string& where, std::string_view key);
std::string pathTo(const std::string& where, std::size_t index);
/// The text, or its beginning if it is too long to be shown in a message.
std::string shortened(std::string_view text);
/// The word of `known` that is nearest to `word` by letters changed, added, left out or swapped.
std::string nearestWord(std::string_view word, const std::vector<std::string>& known);

Problem jsonWrongType(const std::string& where, std::string_view expected);
Problem jsonMissing(const std::string& where);

}  // namespace bw
