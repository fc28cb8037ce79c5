// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/base/result.h"
#include "core/report/sheet.h"
#include "ui/print/page_choice.h"

class QPagedPaintDevice;

namespace bw {

/// Paints a sheet on any paged device (printer, PDF writer), in the page layout that it has: vector
/// pictures, text as text. False if the device could not be started or a page not begun.
bool paintSheet(const Sheet& sheet, QPagedPaintDevice& device);

/// Writes a sheet as PDF with its fonts embedded. The file appears whole or not at all: a file that
/// stood there before is only replaced by a finished one. Problem print_not_written {path, reason}.
Outcome savePdf(const Sheet& sheet, const QString& path, const PageChoice& page);

/// The tables of a sheet as one CSV file (UTF-8), an empty line between two. Written as by savePdf.
Outcome saveCsv(const Sheet& sheet, const QString& path, char separator);
bool hasTable(const Sheet& sheet);

}  // namespace bw
