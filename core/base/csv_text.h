// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bw {

/// A CSV text as rows of fields, the first row being the header. For the program's own data files:
/// comma between fields, double quotes around a field that holds a comma, a quote (doubled) or a
/// line end; lines that begin with '#' outside a field are comments; empty lines are skipped.
struct CsvTable {
    std::vector<std::string> header;
    std::vector<std::vector<std::string>> rows;

    /// Index of a column; nothing if there is none of that name.
    std::optional<std::size_t> column(std::string_view name) const;
    /// A field; empty if the row or the column is missing.
    std::string_view at(std::size_t row, std::string_view columnName) const;
};

CsvTable parseCsv(std::string_view text);
/// A table from somewhere else: with another separator, or where '#' begins no comment.
CsvTable parseCsv(std::string_view text, char separator, bool hasComments);
/// A field as it stands in a comma-separated line: quoted where it must be to read back the same.
std::string csvField(std::string_view field);

/// Rows as CSV text by RFC 4180 (2005): comma between fields, lines end with CR LF, double quotes
/// around a field that needs them, a quote within doubled. For other programs to read.
std::string csvText(const std::vector<std::vector<std::string>>& rows);

}  // namespace bw
