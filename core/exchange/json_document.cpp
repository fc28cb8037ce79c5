// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_document.h"

#include <numeric>
#include <set>

namespace bw {
namespace {

constexpr std::size_t kShownBytes = 80;

/// Builds the document from the parser's events and watches over keys and depth.
class DocumentBuilder : public nlohmann::json_sax<Json> {
  public:
    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(Json::object()); }
    bool start_array(std::size_t) override { return open(Json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& name) override;
    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& failure) override;

    Json root;
    std::optional<Problem> problem;
    std::size_t failedAt = 0;
    bool numberTooBig = false;

  private:
    struct Level {
        Json* value = nullptr;
        std::string key;
        std::set<std::string> keys;
    };
    Json* place(Json value);
    bool put(Json value) { return place(std::move(value)) != nullptr; }
    bool open(Json value);
    bool close();
    std::string path() const;

    std::vector<Level> m_levels;
};

bool DocumentBuilder::key(string_t& name) {
    Level& level = m_levels.back();
    level.key = name;
    if (level.keys.insert(name).second) return true;
    problem = error("json_duplicate_key", path(), {{"key", shortened(name)}});
    return false;
}

bool DocumentBuilder::parse_error(std::size_t position, const std::string&,
                                  const nlohmann::detail::exception& failure) {
    failedAt = position;
    numberTooBig = failure.id == 406;
    return false;
}

Json* DocumentBuilder::place(Json value) {
    if (m_levels.empty()) {
        root = std::move(value);
        return &root;
    }
    Level& level = m_levels.back();
    if (level.value->is_array()) {
        level.value->push_back(std::move(value));
        return &level.value->back();
    }
    Json& slot = (*level.value)[level.key];
    slot = std::move(value);
    return &slot;
}

bool DocumentBuilder::open(Json value) {
    if (m_levels.size() >= static_cast<std::size_t>(kJsonDepth)) {
        problem = error("json_too_deep", path());
        return false;
    }
    m_levels.push_back({place(std::move(value)), {}, {}});
    return true;
}

bool DocumentBuilder::close() {
    m_levels.pop_back();
    return true;
}

std::string DocumentBuilder::path() const {
    std::string out;
    for (const auto& level : m_levels) {
        const bool array = level.value->is_array();
        out = array ? pathTo(out, level.value->size() - (level.value->empty() ? 0U : 1U))
                    : pathTo(out, level.key);
    }
    return out;
}

Problem syntaxProblem(std::string_view text, std::size_t position) {
    const auto before = text.substr(0, std::min(position > 0 ? position - 1 : 0, text.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto lineStart = before.rfind('\n');
    const auto column =
        before.size() - (lineStart == std::string_view::npos ? 0 : lineStart + 1) + 1;
    return error("json_syntax", {},
                 {{"line", std::to_string(line)}, {"column", std::to_string(column)}});
}

}  // namespace

Result<Json> parseJson(std::string_view text) {
    if (text.size() > kJsonBytes) return error("json_too_big");
    // The parser takes a zero byte for the end, whatever comes after it.
    if (const auto zero = text.find('\0'); zero != std::string_view::npos)
        return syntaxProblem(text, zero + 1);
    DocumentBuilder builder;
    if (Json::sax_parse(text.begin(), text.end(), &builder)) return std::move(builder.root);
    if (builder.problem) return *builder.problem;
    if (builder.numberTooBig) return error("json_number_too_big");
    return syntaxProblem(text, builder.failedAt);
}

const Json* member(const Json& object, std::string_view key) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(std::string(key));
    return found == object.end() || found->is_null() ? nullptr : &*found;
}

const Json* memberAt(const Json& object, std::string_view dottedKey) {
    const Json* at = &object;
    while (at) {
        const auto dot = dottedKey.find('.');
        at = member(*at, dottedKey.substr(0, dot));
        if (dot == std::string_view::npos) break;
        dottedKey.remove_prefix(dot + 1);
    }
    return at;
}

std::string pathTo(const std::string& where, std::string_view key) {
    return where.empty() ? shortened(key) : where + "." + shortened(key);
}

std::string pathTo(const std::string& where, std::size_t index) {
    return where + "[" + std::to_string(index) + "]";
}

std::string shortened(std::string_view text) {
    if (text.size() <= kShownBytes) return std::string(text);
    std::size_t end = kShownBytes;
    // Not inside a character: continuation bytes of UTF-8 are 10xxxxxx.
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return std::string(text.substr(0, end)) + "…";
}

namespace {

/// Letters changed, added, left out or swapped with their neighbour.
std::size_t editDistance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> beforeLast(b.size() + 1);
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> now(b.size() + 1);
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + change});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) now[j] = std::min(now[j], beforeLast[j - 2] + 1);
        }
        std::swap(beforeLast, last);
        std::swap(last, now);
    }
    return last[b.size()];
}

}  // namespace

std::string nearestWord(std::string_view word, const std::vector<std::string>& known) {
    const std::string tried = shortened(word);
    std::string best;
    std::size_t least = 0;
    for (const auto& candidate : known) {
        const std::size_t distance = editDistance(tried, candidate);
        if (!best.empty() && distance >= least) continue;
        best = candidate;
        least = distance;
    }
    return best;
}

Problem jsonWrongType(const std::string& where, std::string_view expected) {
    return error("json_wrong_type", where,
                 {{"expected", CodeText{"json.kind." + std::string(expected)}}});
}

Problem jsonMissing(const std::string& where) {
    return error("json_missing", where);
}

}  // namespace bw
