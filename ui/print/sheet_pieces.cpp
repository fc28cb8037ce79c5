// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_pieces.h"

#include <QPainter>
#include <algorithm>

#include "ui/kit/chips.h"
#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

/// A part of a side-by-side block is at least this wide, in ems.
constexpr double kLeastPart = 19.0;
constexpr double kBetweenParts = 1.6;

void paintAll(QPainter& painter, const SheetPieces& pieces, const QRectF& box) {
    double y = box.top();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (i > 0) y += pieces[i].gap;
        const QRectF place(box.left(), y, box.width(), pieces[i].height);
        if (pieces[i].paint) pieces[i].paint(painter, place);
        y += pieces[i].height;
    }
}

QSizeF markSize(const SheetMark& mark, double side) {
    switch (mark.kind) {
        case SheetMark::Kind::NozzleSize:
            return {side * (mark.code.size() > 3 ? 2.1 : 1.72), side};
        case SheetMark::Kind::Droplets: {
            double width = 0;
            for (const auto category : mark.of)
                width += side * (choiceName(category).size() > 1 ? 1.53 : 1.12) + side * 0.2;
            return {std::max(0.0, width - side * 0.2), side};
        }
        case SheetMark::Kind::OriginMark:
        case SheetMark::Kind::NotChecked:
            return {side, side};
    }
    return {};
}

/// Ring of an origin, or the dashed one with a question mark: drawn to any size.
void paintRing(QPainter& painter, const QRectF& box, const SheetMark& mark,
               const SheetStyle& style) {
    const QColor ink = color(Role::Ink, Look::Print);
    const double pen = box.height() * 0.09;
    const QRectF ring = box.adjusted(pen, pen, -pen, -pen);
    const bool isOpen = mark.kind == SheetMark::Kind::NotChecked;
    QPen line(ink, pen);
    if (isOpen || mark.origin == Origin::Assumed) {
        line.setCapStyle(Qt::FlatCap);
        line.setDashPattern({1.8, 1.4});
    }
    painter.setPen(line);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(ring);
    if (isOpen) {
        QFont font = style.font(1.0, true);
        font.setPixelSize(std::max(1, static_cast<int>(box.height() * 0.72)));
        painter.setFont(font);
        painter.drawText(box, Qt::AlignCenter | Qt::TextDontClip, QStringLiteral("?"));
        return;
    }
    painter.setBrush(ink);
    if (mark.origin == Origin::Measured) painter.drawEllipse(ring);
    if (mark.origin == Origin::Handbook) painter.drawPie(ring, 90 * 16, 180 * 16);
}

}  // namespace

double markWidth(const SheetMark& mark, const SheetStyle& style, double ems) {
    return markSize(mark, style.dots(ems)).width();
}

void paintMark(QPainter& painter, QPointF topLeft, const SheetMark& mark, const SheetStyle& style,
               double ems) {
    painter.save();
    const QRectF box(topLeft, markSize(mark, style.dots(ems)));
    const QColor ink = color(Role::Ink, Look::Print);
    switch (mark.kind) {
        case SheetMark::Kind::NozzleSize:
            paintNozzleChip(painter, box, qs(mark.code), ink, color(Role::Surface, Look::Print));
            break;
        case SheetMark::Kind::Droplets: {
            double x = box.left();
            for (const auto category : mark.of) {
                const double width = box.height() * (choiceName(category).size() > 1 ? 1.53 : 1.12);
                paintDropletChip(painter, QRectF(x, box.top(), width, box.height()), category, ink);
                x += width + box.height() * 0.2;
            }
            break;
        }
        case SheetMark::Kind::OriginMark:
        case SheetMark::Kind::NotChecked:
            paintRing(painter, box, mark, style);
            break;
    }
    painter.restore();
}

SheetPieces piecesOf(const std::vector<SheetBlock>& blocks, double width, const SheetStyle& style) {
    SheetPieces out;
    for (const auto& block : blocks)
        std::visit([&](const auto& content) { addPieces(out, content, width, style); },
                   block.content);
    return out;
}

double heightOf(const SheetPieces& pieces) {
    double height = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        height += pieces[i].height + (i > 0 ? pieces[i].gap : 0.0);
    return height;
}

void addPieces(SheetPieces& out, const SheetSideBySide& block, double width,
               const SheetStyle& style) {
    const double between = style.dots(kBetweenParts);
    const double least = style.dots(kLeastPart);
    if (block.parts.empty()) return;
    const auto fitting = static_cast<std::size_t>((width + between) / (least + between));
    const std::size_t across = std::clamp<std::size_t>(fitting, 1, block.parts.size());
    const double part =
        (width - between * static_cast<double>(across - 1)) / static_cast<double>(across);
    // Each part goes under the column that is shortest so far.
    auto columns = std::make_shared<std::vector<SheetPieces>>(across);
    std::vector<double> heights(across, 0.0);
    for (const auto& blocks : block.parts) {
        const auto shortest = static_cast<std::size_t>(
            std::min_element(heights.begin(), heights.end()) - heights.begin());
        auto& column = (*columns)[shortest];
        auto pieces = piecesOf(blocks, part, style);
        column.insert(column.end(), pieces.begin(), pieces.end());
        heights[shortest] = heightOf(column);
    }
    const double height = *std::max_element(heights.begin(), heights.end());
    if (across == 1 || height > style.pageHeight) {
        // One under the other, or too high to stay together: pages may break inside.
        for (const auto& blocks : block.parts) {
            const auto pieces = piecesOf(blocks, width, style);
            out.insert(out.end(), pieces.begin(), pieces.end());
        }
        return;
    }
    SheetPiece piece;
    piece.gap = style.dots(0.7);
    piece.height = height;
    piece.paint = [columns, part, between](QPainter& painter, const QRectF& box) {
        double x = box.left();
        for (const auto& pieces : *columns) {
            paintAll(painter, pieces, QRectF(x, box.top(), part, box.height()));
            x += part + between;
        }
    };
    out.push_back(std::move(piece));
}

}  // namespace bw
