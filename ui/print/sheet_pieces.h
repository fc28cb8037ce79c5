// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <functional>
#include <memory>
#include <vector>

#include "core/report/sheet.h"
#include "ui/print/sheet_text.h"

class QPainter;

namespace bw {

/// What a page is filled with from top to bottom: something of a height that is never split.
struct SheetPiece {
    double gap = 0;     ///< above it, unless it stands first on a page
    double height = 0;  ///< dots
    bool keepsWithNext = false;
    bool breaksPage = false;  ///< nothing to paint: what follows begins a page
    std::function<void(QPainter&, const QRectF&)> paint;
    std::shared_ptr<SheetPiece> head;  ///< a table row: repeated above it where it begins a page
};
using SheetPieces = std::vector<SheetPiece>;

/// The pieces of blocks at a width.
SheetPieces piecesOf(const std::vector<SheetBlock>& blocks, double width, const SheetStyle& style);
/// With the gaps between them.
double heightOf(const SheetPieces& pieces);

// One kind of block each.
void addPieces(SheetPieces& out, const SheetBanner& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetHeading& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetParagraph& block, double width,
               const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetCautions& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetFacts& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetList& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetTable& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetBarChart& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetLineChart& block, double width,
               const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetScale& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetTicks& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetBlanks& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetSpace& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetRule& block, double width, const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetPageBreak& block, double width,
               const SheetStyle& style);
void addPieces(SheetPieces& out, const SheetSideBySide& block, double width,
               const SheetStyle& style);

/// Width that a mark takes at a text size, and the mark itself, as high as that text.
double markWidth(const SheetMark& mark, const SheetStyle& style, double ems);
void paintMark(QPainter& painter, QPointF topLeft, const SheetMark& mark, const SheetStyle& style,
               double ems);

}  // namespace bw
