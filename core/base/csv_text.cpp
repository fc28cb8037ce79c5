// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/csv_text.h"

#include <algorithm>

namespace bw {
namespace {

/// Walks a CSV text once, field by field.
class CsvReader {
  public:
    CsvReader(std::string_view text, char separator, bool hasComments)
        : m_text(text), m_separator(separator), m_hasComments(hasComments) {}

    /// The next row that is neither empty nor a comment; nothing at the end.
    std::optional<std::vector<std::string>> row() {
        while (m_at < m_text.size() && (isLineEnd() || isComment())) skipLine();
        if (m_at >= m_text.size()) return std::nullopt;
        std::vector<std::string> fields{field()};
        while (m_at < m_text.size() && m_text[m_at] == m_separator) {
            ++m_at;
            fields.push_back(field());
        }
        skipLine();
        return fields;
    }

  private:
    bool isComment() const { return m_hasComments && m_text[m_at] == '#'; }
    bool isLineEnd() const { return m_text[m_at] == '\n' || m_text[m_at] == '\r'; }

    void skipLine() {
        while (m_at < m_text.size() && m_text[m_at] != '\n') ++m_at;
        if (m_at < m_text.size()) ++m_at;
    }

    std::string field() {
        if (m_at < m_text.size() && m_text[m_at] == '"') return quotedField();
        const auto start = m_at;
        while (m_at < m_text.size() && m_text[m_at] != m_separator && !isLineEnd()) ++m_at;
        return std::string(m_text.substr(start, m_at - start));
    }

    std::string quotedField() {
        std::string out;
        for (++m_at; m_at < m_text.size(); ++m_at) {
            if (m_text[m_at] != '"') {
                out += m_text[m_at];
            } else if (m_at + 1 < m_text.size() && m_text[m_at + 1] == '"') {
                out += '"';
                ++m_at;
            } else {
                ++m_at;
                break;
            }
        }
        return out;
    }

    std::string_view m_text;
    char m_separator;
    bool m_hasComments;
    std::size_t m_at = 0;
};

}  // namespace

std::optional<std::size_t> CsvTable::column(std::string_view name) const {
    const auto found = std::find(header.begin(), header.end(), name);
    if (found == header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - header.begin());
}

std::string_view CsvTable::at(std::size_t row, std::string_view columnName) const {
    const auto index = column(columnName);
    if (!index || row >= rows.size() || *index >= rows[row].size()) return {};
    return rows[row][*index];
}

CsvTable parseCsv(std::string_view text) {
    return parseCsv(text, ',', true);
}

CsvTable parseCsv(std::string_view text, char separator, bool hasComments) {
    CsvReader reader(text, separator, hasComments);
    CsvTable table;
    if (auto header = reader.row()) table.header = std::move(*header);
    while (auto row = reader.row()) table.rows.push_back(std::move(*row));
    return table;
}

std::string csvField(std::string_view field) {
    const bool isPlain =
        field.find_first_of(",;\t\"\r\n") == std::string_view::npos && !field.starts_with('#');
    if (isPlain) return std::string(field);
    std::string out = "\"";
    for (const char c : field) {
        if (c == '"') out += c;
        out += c;
    }
    return out + "\"";
}

std::string csvText(const std::vector<std::vector<std::string>>& rows) {
    std::string text;
    for (const auto& row : rows) {
        bool isFirst = true;
        for (const auto& field : row) {
            if (!isFirst) text += ',';
            isFirst = false;
            text += csvField(field);
        }
        text += "\r\n";
    }
    return text;
}

}  // namespace bw
