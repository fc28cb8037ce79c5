// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/paste_block.h"

#include <QRegularExpression>
#include <algorithm>
#include <array>

#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

using namespace Qt::StringLiterals;

/// Other words for the heads of columns, as farms' own lists have them.
constexpr std::array<std::pair<const char16_t*, JobColumn>, 26> kSpoken{
    {{u"name", JobColumn::Name},
     {u"task", JobColumn::Name},
     {u"spray rate", JobColumn::Rate},
     {u"volume", JobColumn::Rate},
     {u"usual rate", JobColumn::Rate},
     {u"least rate", JobColumn::RateLeast},
     {u"lowest rate", JobColumn::RateLeast},
     {u"most rate", JobColumn::RateMost},
     {u"highest rate", JobColumn::RateMost},
     {u"slow speed", JobColumn::Slow},
     {u"slowest", JobColumn::Slow},
     {u"usual speed", JobColumn::Usual},
     {u"speed", JobColumn::Usual},
     {u"fast speed", JobColumn::Fast},
     {u"fastest", JobColumn::Fast},
     {u"weight against water", JobColumn::Gravity},
     {u"specific gravity", JobColumn::Gravity},
     {u"density", JobColumn::Gravity},
     {u"droplets", JobColumn::Droplets},
     {u"droplet class", JobColumn::Droplets},
     {u"drops", JobColumn::Droplets},
     {u"drift class", JobColumn::Drift},
     {u"drift reduction", JobColumn::Drift},
     {u"hectares", JobColumn::Area},
     {u"acres", JobColumn::Area},
     {u"nozzle set", JobColumn::Nozzle}}};

std::optional<JobColumn> columnNamed(const QString& text) {
    for (int i = 0; i < kJobColumns; ++i) {
        const auto column = static_cast<JobColumn>(i);
        if (text.compare(headingOf(column), Qt::CaseInsensitive) == 0) return column;
    }
    for (const auto& [word, column] : kSpoken) {
        if (text.compare(QStringView(word), Qt::CaseInsensitive) == 0) return column;
    }
    return std::nullopt;
}

/// "Usual (km/h)", "Rate, L/ha", "Rate L/ha", "Usual": the words, then perhaps a unit.
PasteColumn headingIn(const QString& field) {
    const QString text = field.simplified();
    if (const auto column = columnNamed(text)) {
        if (text.compare(u"hectares"_s, Qt::CaseInsensitive) == 0) return {column, Unit::Hectare};
        if (text.compare(u"acres"_s, Qt::CaseInsensitive) == 0) return {column, Unit::Acre};
        return {column, std::nullopt};
    }
    static const QRegularExpression parts(u"^(.*?)[ ,]*[\\(\\[]?([^ \\(\\[\\)\\],]+)[\\)\\]]?$"_s);
    const auto match = parts.match(text);
    if (!match.hasMatch()) return {};
    const auto column = columnNamed(match.captured(1).trimmed());
    const auto unit = unitFor(ss(match.captured(2)));
    if (!column || !unit) return {};
    const bool fits = info(*unit).dimension == dimensionOf(*column);
    return {column, fits ? unit : std::nullopt};
}

void dropEmptyEnd(std::vector<QStringList>& rows) {
    while (!rows.empty() && std::all_of(rows.back().begin(), rows.back().end(),
                                        [](const QString& f) { return f.trimmed().isEmpty(); }))
        rows.pop_back();
}

/// Reads one field from `at`; returns where it ends.
qsizetype readField(const QString& text, qsizetype at, QString& field) {
    const bool quoted = at < text.size() && text[at] == u'"';
    if (quoted) ++at;
    for (; at < text.size(); ++at) {
        const QChar c = text[at];
        if (quoted && c == u'"') {
            if (at + 1 < text.size() && text[at + 1] == u'"')
                ++at;
            else
                return at + 1;
        } else if (!quoted && (c == u'\t' || c == u'\n')) {
            return at;
        }
        field += c;
    }
    return at;
}

}  // namespace

std::vector<QStringList> splitTabbed(const QString& clipboard) {
    QString text = clipboard;
    text.replace(u"\r\n"_s, u"\n"_s).replace(u'\r', u'\n');
    std::vector<QStringList> rows;
    QStringList row;
    qsizetype at = 0;
    while (at <= text.size()) {
        QString field;
        at = readField(text, at, field);
        row << field;
        const bool more = at < text.size() && text[at] == u'\t';
        if (!more) {
            rows.push_back(row);
            row.clear();
            // Whatever stands between a closing quote and the next mark is no part of a table.
            while (at < text.size() && text[at] != u'\n') ++at;
        }
        ++at;
    }
    dropEmptyEnd(rows);
    return rows;
}

PasteBlock readBlock(const QString& text) {
    PasteBlock block{splitTabbed(text), {}, {}};
    if (block.rows.empty()) return block;
    std::vector<PasteColumn> columns;
    QStringList unknown;
    int filled = 0, known = 0;
    for (const QString& field : block.rows.front()) {
        columns.push_back(headingIn(field));
        if (field.trimmed().isEmpty()) continue;
        ++filled;
        if (columns.back().column)
            ++known;
        else
            unknown << field.simplified();
    }
    const bool oneOfOne = known == 1 && filled == 1 && block.rows.size() > 1;
    if (!oneOfOne && (known < 2 || 2 * known < filled)) return block;
    block.columns = std::move(columns);
    block.unknownHeadings = unknown;
    block.rows.erase(block.rows.begin());
    return block;
}

QString tabbed(const std::vector<QStringList>& rows) {
    static const QRegularExpression special(u"[\t\n\"]"_s);
    QString out;
    for (const auto& row : rows) {
        for (qsizetype i = 0; i < row.size(); ++i) {
            QString field = row[i];
            if (field.contains(special)) field = u'"' + field.replace(u'"', u"\"\""_s) + u'"';
            if (i > 0) out += u'\t';
            out += field;
        }
        out += u'\n';
    }
    return out;
}

}  // namespace bw
