// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_painter.h"

#include <QDir>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <algorithm>

#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_layout.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

Problem notWritten(const QString& path, const QString& reason) {
    return error("print_not_written", "path",
                 {{"path", ss(QDir::toNativeSeparators(path))}, {"reason", ss(reason)}});
}

/// Writes into a file beside the place, then puts it there.
template <class Write>
Outcome written(const QString& path, Write&& write) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return notWritten(path, file.errorString());
    if (!write(file)) {
        file.cancelWriting();
        return notWritten(path, file.errorString());
    }
    if (!file.commit()) return notWritten(path, file.errorString());
    return Done{};
}

}  // namespace

bool paintSheet(const Sheet& sheet, QPagedPaintDevice& device) {
    const QPageLayout page = device.pageLayout();
    const SheetLayout layout(sheet, page);
    // Margins are ours: the painter starts at the corner of the paper.
    QPageLayout whole = page;
    whole.setMode(QPageLayout::FullPageMode);
    device.setPageLayout(whole);
    QPainter painter;
    if (!painter.begin(&device)) return false;
    const double scale = static_cast<double>(device.logicalDpiX()) / kDotsPerInch;
    for (int i = 0; i < layout.pageCount(); ++i) {
        if (i > 0 && !device.newPage()) return false;
        painter.save();
        painter.scale(scale, scale);
        layout.paint(painter, i);
        painter.restore();
    }
    return painter.end();
}

Outcome savePdf(const Sheet& sheet, const QString& path, const PageChoice& page) {
    return written(path, [&](QIODevice& file) {
        QPdfWriter writer(&file);
        writer.setResolution(kDotsPerInch);
        writer.setPageLayout(pageLayoutOf(page));
        writer.setTitle(qs(sheet.title + (sheet.machine.empty() ? "" : ", " + sheet.machine)));
        writer.setCreator(u"Boomwright"_s);
        return paintSheet(sheet, writer);
    });
}

namespace {

void collectTables(const std::vector<SheetBlock>& blocks, std::vector<const SheetTable*>& out) {
    for (const auto& block : blocks) {
        if (const auto* table = std::get_if<SheetTable>(&block.content)) out.push_back(table);
        if (const auto* side = std::get_if<SheetSideBySide>(&block.content)) {
            for (const auto& part : side->parts) collectTables(part, out);
        }
    }
}

}  // namespace

bool hasTable(const Sheet& sheet) {
    std::vector<const SheetTable*> tables;
    collectTables(sheet.blocks, tables);
    return !tables.empty();
}

Outcome saveCsv(const Sheet& sheet, const QString& path, char separator) {
    std::vector<const SheetTable*> tables;
    collectTables(sheet.blocks, tables);
    QByteArray text;
    for (const auto* table : tables) {
        if (!text.isEmpty()) text += "\r\n";
        text += QByteArray::fromStdString(toCsv(*table, separator));
    }
    return written(path, [&](QIODevice& file) { return file.write(text) == text.size(); });
}

}  // namespace bw
