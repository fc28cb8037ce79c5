// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/units/unit.h"
#include "ui/pages/season/job_cells.h"

namespace bw {

/// One column of a pasted block: where it goes, and the unit that its heading named.
struct PasteColumn {
    std::optional<JobColumn> column;  ///< nothing: not known here, left out
    std::optional<Unit> unit;
};

/// A block copied from a spreadsheet.
struct PasteBlock {
    std::vector<QStringList> rows;     ///< without the heading
    std::vector<PasteColumn> columns;  ///< from the heading; empty: there was none
    QStringList unknownHeadings;
};

/// Tab-separated text as spreadsheets put it on the clipboard: a field with a tab, a line end or a
/// quote stands in double quotes, quotes doubled. Empty lines at the end are dropped.
std::vector<QStringList> splitTabbed(const QString& text);
/// The block, its heading recognised: a first line of several fields of which two and at least half
/// are headings ("Job", "Rate L/ha", "Usual (km/h)"), or of one field that is one, above others.
PasteBlock readBlock(const QString& text);
/// Rows as tab-separated text, with quotes where a field needs them.
QString tabbed(const std::vector<QStringList>& rows);

}  // namespace bw
