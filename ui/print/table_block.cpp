// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainter>
#include <algorithm>
#include <numeric>

#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_pieces.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kHead = 0.86, kCell = 0.96, kPad = 0.5, kBar = 0.32;
/// A word longer than this (ems) is broken rather than making its column wider.
constexpr double kLongestWord = 9.0;

QString cellOf(const SheetRow& row, std::size_t column) {
    return column < row.cells.size() ? qs(row.cells[column]) : QString();
}

/// Widths of the columns; nothing if the table does not fit at this text size.
class Columns {
  public:
    Columns(const SheetTable& table, double width, const SheetStyle& style, double size)
        : m_table(table), m_style(style), m_size(size) {
        const double pad = 2 * style.dots(kPad) * size;
        double numbers = 0, shares = 0, leastTexts = 0;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            const double least = leastWidth(i) + pad;
            m_widths.push_back(least);
            if (table.columns[i].isNumber)
                numbers += least;
            else {
                shares += table.columns[i].share;
                leastTexts += least;
            }
        }
        fits = numbers + leastTexts <= width;
        if (fits) shareOut(width - numbers, shares);
    }
    const std::vector<double>& widths() const { return m_widths; }
    bool fits = false;

  private:
    double leastWidth(std::size_t column) const {
        const bool isNumber = m_table.columns[column].isNumber;
        double least = m_style.longestWord(qs(m_table.columns[column].title), kHead * m_size, true);
        for (const auto& row : m_table.rows) {
            const QString cell = cellOf(row, column);
            const bool bold = row.isEmphasised;
            const double own = isNumber ? m_style.widthOf(cell, kCell * m_size, bold)
                                        : std::min(m_style.longestWord(cell, kCell * m_size, bold),
                                                   m_style.dots(kLongestWord) * m_size);
            least = std::max(least, own);
        }
        // Rounding must not break the word that set the width.
        return least + m_style.dots(0.15);
    }

    /// What numbers leave goes to the texts by their shares, to each at least what it needs.
    void shareOut(double room, double shares) {
        std::vector<std::size_t> open;
        for (std::size_t i = 0; i < m_widths.size(); ++i) {
            if (!m_table.columns[i].isNumber) open.push_back(i);
        }
        if (open.empty()) return spread(room);
        for (bool changed = true; changed && !open.empty();) {
            changed = false;
            for (auto it = open.begin(); it != open.end(); ++it) {
                const double share = m_table.columns[*it].share;
                if (room * share / shares >= m_widths[*it]) continue;
                room -= m_widths[*it];
                shares -= share;
                open.erase(it);
                changed = true;
                break;
            }
        }
        for (const auto i : open) m_widths[i] = room * m_table.columns[i].share / shares;
    }
    /// Numbers alone: they may stand a little apart, but not at the ends of the page.
    void spread(double room) {
        const double all = std::accumulate(m_widths.begin(), m_widths.end(), 0.0);
        const double extra =
            std::min(room / static_cast<double>(m_widths.size()), m_style.dots(2.0));
        if (room > 0 && all > 0)
            for (double& width : m_widths) width += std::max(0.0, extra);
    }

    const SheetTable& m_table;
    const SheetStyle& m_style;
    double m_size;
    std::vector<double> m_widths;
};

struct Cells {
    std::vector<SheetLines> lines;
    double height = 0;
};

Cells cellsOf(const std::vector<QString>& texts, const SheetTable& table,
              const std::vector<double>& widths, const SheetStyle& style, double ems, bool bold,
              double pad) {
    Cells out;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto side = table.columns[i].isNumber ? Qt::AlignRight : Qt::AlignLeft;
        out.lines.emplace_back(texts[i], style.font(ems, bold), widths[i] - 2 * pad, side);
        out.height = std::max(out.height, out.lines.back().height());
    }
    return out;
}

void paintCells(QPainter& painter, const QRectF& box, const Cells& cells,
                const std::vector<double>& widths, double pad, double top) {
    painter.setPen(color(Role::Ink, Look::Print));
    double x = box.left();
    for (std::size_t i = 0; i < cells.lines.size(); ++i) {
        cells.lines[i].paint(painter, {x + pad, box.top() + top});
        x += widths[i];
    }
}

void paintLineUnder(QPainter& painter, const QRectF& box, double width, double pen, Role role) {
    painter.setPen(QPen(color(role, Look::Print), pen, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(box.bottomLeft(), box.bottomLeft() + QPointF(width, 0));
}

void addGrid(SheetPieces& out, const SheetTable& table, const std::vector<double>& widths,
             const SheetStyle& style, double size) {
    const double pad = style.dots(kPad) * size;
    const double whole = std::accumulate(widths.begin(), widths.end(), 0.0);
    std::vector<QString> titles;
    for (const auto& column : table.columns) titles.push_back(qs(column.title));
    const Cells heads = cellsOf(titles, table, widths, style, kHead * size, true, pad);
    auto head = std::make_shared<SheetPiece>();
    head->gap = style.dots(0.6);
    head->height = heads.height + 1.4 * pad;
    head->keepsWithNext = true;
    head->paint = [=](QPainter& painter, const QRectF& box) {
        painter.fillRect(QRectF(box.left(), box.top(), whole, box.height()),
                         color(Role::Sunken, Look::Print));
        paintCells(painter, box, heads, widths, pad, 0.7 * pad);
        paintLineUnder(painter, box, whole, style.dots(0.12), Role::Ink);
    };
    out.push_back(*head);
    for (const auto& row : table.rows) {
        std::vector<QString> texts;
        for (std::size_t i = 0; i < table.columns.size(); ++i) texts.push_back(cellOf(row, i));
        const Cells cells =
            cellsOf(texts, table, widths, style, kCell * size, row.isEmphasised, pad);
        SheetPiece piece;
        piece.height = cells.height + 1.1 * pad;
        piece.head = head;
        const bool isEmphasised = row.isEmphasised;
        piece.paint = [=](QPainter& painter, const QRectF& box) {
            if (isEmphasised)
                painter.fillRect(QRectF(box.left(), box.top() + pad * 0.2, style.dots(kBar) * size,
                                        box.height() - pad * 0.4),
                                 color(Role::Ink, Look::Print));
            paintCells(painter, box, cells, widths, pad, 0.55 * pad);
            paintLineUnder(painter, box, whole, style.dots(0.05), Role::Line);
        };
        out.push_back(std::move(piece));
    }
}

/// On paper too narrow for the columns each row becomes a short entry: its first cell, then all
/// others with the column's title.
void addEntries(SheetPieces& out, const SheetTable& table, double width, const SheetStyle& style) {
    for (const auto& row : table.rows) {
        const double bar = row.isEmphasised ? style.dots(0.9) : 0.0;
        const auto title =
            std::make_shared<SheetLines>(cellOf(row, 0), style.font(1.06, true), width - bar);
        QString text;
        std::vector<BoldPart> bold;
        for (std::size_t i = 1; i < table.columns.size(); ++i) {
            const QString cell = cellOf(row, i);
            if (cell.isEmpty() || cell == u"–"_s) continue;
            if (!text.isEmpty()) text += u";  "_s;
            text += qs(table.columns[i].title) + u": "_s;
            bold.push_back({static_cast<int>(text.size()), static_cast<int>(cell.size())});
            text += cell;
        }
        const auto lines =
            std::make_shared<SheetLines>(text, style.font(kCell), width - bar, Qt::AlignLeft, bold);
        SheetPiece piece;
        piece.gap = style.dots(0.4);
        piece.height = title->height() + lines->height() + style.dots(0.3);
        piece.paint = [=](QPainter& painter, const QRectF& box) {
            if (bar > 0)
                painter.fillRect(
                    QRectF(box.left(), box.top(), style.dots(kBar), box.height() - style.dots(0.3)),
                    color(Role::Ink, Look::Print));
            painter.setPen(color(Role::Ink, Look::Print));
            title->paint(painter, box.topLeft() + QPointF(bar, 0));
            lines->paint(painter, box.topLeft() + QPointF(bar, title->height()));
            paintLineUnder(painter, box, width, style.dots(0.05), Role::Line);
        };
        out.push_back(std::move(piece));
    }
}

}  // namespace

void addPieces(SheetPieces& out, const SheetTable& block, double width, const SheetStyle& style) {
    if (block.columns.empty()) return;
    for (const double size : {1.0, 0.92, 0.85, 0.78}) {
        const Columns columns(block, width, style, size);
        if (columns.fits) return addGrid(out, block, columns.widths(), style, size);
    }
    addEntries(out, block, width, style);
}

}  // namespace bw
