// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainter>
#include <algorithm>

#include "ui/kit/hatch.h"
#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_pieces.h"

namespace bw {
namespace {

constexpr double kReason = 0.92, kEndFigure = 1.4, kUsual = 1.0;
constexpr double kBarHeight = 1.35;
/// Sizes of the rows of figures, in ems; further rows as the last.
constexpr double kRowSizes[] = {1.7, 1.85, 1.2, 1.05};

QColor role(Role r) {
    return color(r, Look::Print);
}

double rowSize(std::size_t row) {
    return kRowSizes[std::min<std::size_t>(row, std::size(kRowSizes) - 1)];
}
/// Where columns are tight, the large figures give way; the small ones stay readable.
double shrunk(std::size_t row, double factor) {
    return std::max(rowSize(row) * factor, std::min(rowSize(row), 1.0));
}
/// The second row, the pressure, is the one that is read while driving.
bool isBoldRow(std::size_t row, bool isPlan) {
    return isPlan && row < 2;
}

class ScalePicture {
  public:
    ScalePicture(const SheetScale& scale, double width, const SheetStyle& style)
        : m_scale(scale),
          m_style(style),
          m_labels(std::clamp(labelRoom(), width * 0.15, width * 0.3)),
          m_width(width),
          m_words(qs(scale.words), style.font(), m_labels - style.dots(0.8)) {
        placeColumns();
    }

    double barPart() const {
        const double head =
            std::max(m_style.lineHeight(kEndFigure, true), 2 * m_style.lineHeight(kReason));
        const double side =
            m_style.lineHeight(1.1, true) + (m_scale.words.empty() ? 0 : m_words.height());
        return std::max(head + m_style.dots(kBarHeight + 0.7), side + m_style.dots(0.2));
    }
    double rowsPart() const {
        if (m_scale.columns.empty()) return 0;
        double height = m_style.dots(0.7);
        for (std::size_t i = 0; i < m_scale.rowLabels.size(); ++i) height += rowHeight(i);
        return height + m_style.dots(0.35);
    }
    double height() const { return barPart() + rowsPart(); }

    void paint(QPainter& painter, const QRectF& box) const {
        paintBarWords(painter, box);
        paintBar(painter, box);
        if (!m_scale.columns.empty())
            paintRows(painter, QRectF(box.left(), box.top() + barPart(), box.width(), rowsPart()));
    }

  private:
    double labelRoom() const {
        double widest = m_style.widthOf(qs(m_scale.title), 1.1, true);
        for (std::size_t i = 0; i < m_scale.rowLabels.size(); ++i) {
            double own = m_style.widthOf(qs(m_scale.rowLabels[i]), 1.0);
            if (i == 0)
                own += m_style.widthOf(qs(m_scale.rowsTitle), 1.1, true) + m_style.dots(0.6);
            widest = std::max(widest, own);
        }
        return widest + m_style.dots(1.0);
    }
    double rowHeight(std::size_t row) const {
        return m_style.lineHeight(rowSize(row), true) * 1.02;
    }
    double x(double value) const {
        const double part = (value - m_scale.from) / std::max(1e-12, m_scale.to - m_scale.from);
        return m_labels + std::clamp(part, 0.0, 1.0) * (m_width - m_labels);
    }
    double widthOfColumn(std::size_t column, double shrink) const {
        double widest = 0;
        const auto& c = m_scale.columns[column];
        for (std::size_t i = 0; i < c.figures.size(); ++i)
            widest = std::max(widest, m_style.widthOf(qs(c.figures[i]), shrunk(i, shrink),
                                                      isBoldRow(i, c.isBold)));
        return widest + m_style.dots(0.7) * shrink;
    }

    /// Every figure at its own speed; where they would touch they shrink, then move apart.
    void placeColumns() {
        const auto& columns = m_scale.columns;
        for (const auto& c : columns) m_places.push_back(x(c.at));
        const auto isTight = [&] {
            for (std::size_t i = 1; i < columns.size(); ++i) {
                const double need =
                    (widthOfColumn(i - 1, m_shrink) + widthOfColumn(i, m_shrink)) / 2;
                if (m_places[i] - m_places[i - 1] < need) return true;
            }
            return false;
        };
        while (isTight() && m_shrink > 0.72) m_shrink *= 0.95;
        for (std::size_t i = 1; i < columns.size(); ++i) {
            const double need = (widthOfColumn(i - 1, m_shrink) + widthOfColumn(i, m_shrink)) / 2;
            m_places[i] = std::max(m_places[i], m_places[i - 1] + need);
        }
        double limit = m_width;
        for (std::size_t i = columns.size(); i-- > 0;) {
            const double half = widthOfColumn(i, m_shrink) / 2;
            m_places[i] = std::min(m_places[i], limit - half);
            limit = m_places[i] - half;
        }
    }

    void paintBarWords(QPainter& painter, const QRectF& box) const {
        painter.setPen(role(Role::Ink));
        paintOneLine(painter,
                     QRectF(box.left(), box.top(), m_labels, m_style.lineHeight(1.1, true)),
                     qs(m_scale.title), m_style.font(1.1, true));
        m_words.paint(painter, box.topLeft() + QPointF(0, m_style.lineHeight(1.1, true)));
    }

    void paintBar(QPainter& painter, const QRectF& box) const {
        const double bottom = box.top() + barPart() - m_style.dots(0.35);
        const QRectF bar(box.left() + m_labels, bottom - m_style.dots(kBarHeight),
                         m_width - m_labels, m_style.dots(kBarHeight));
        const double low = box.left() + (m_scale.low ? x(*m_scale.low) : m_labels);
        const double high = box.left() + (m_scale.high ? x(*m_scale.high) : m_width);
        const auto hatch = [&](double from, double to, Hatch kind) {
            if (to - from < 1) return;
            const QRectF part(from, bar.top(), to - from, bar.height());
            paintHatch(painter, part, kind, role(Role::Line), role(Role::Surface),
                       m_style.dots(0.5), m_style.dots(0.08));
            painter.setPen(QPen(role(Role::Edge), m_style.dots(0.07)));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(part);
        };
        const double slow = box.left() + x(m_scale.slow), fast = box.left() + x(m_scale.fast);
        if (m_scale.isEmpty) {
            hatch(bar.left(), bar.right(), Hatch::Rising);
        } else {
            hatch(bar.left(), low, Hatch::Rising);
            hatch(high, bar.right(), Hatch::Falling);
            const QRectF inside(low, bar.top(), high - low, bar.height());
            if (m_scale.isUnchecked)
                paintHatch(painter, inside, Hatch::Dots, role(Role::Unchecked), role(Role::Surface),
                           m_style.dots(0.45), m_style.dots(0.08));
            else
                painter.fillRect(inside, role(Role::Line).lighter(kPale));
            const double from = std::max(slow, low), to = std::min(fast, high);
            if (!m_scale.isUnchecked && to > from)
                painter.fillRect(QRectF(from, bar.top(), to - from, bar.height()), role(Role::Ink));
        }
        const bool isCovered =
            !m_scale.isEmpty && !m_scale.isUnchecked && slow >= low && fast <= high;
        if (!isCovered) paintPlan(painter, bar, slow, fast);
        if (!m_scale.isEmpty) paintEnds(painter, bar, low, high);
        paintUsual(painter, bar, box, low, high);
    }

    /// The job's speeds as a bracket under the bar, where the window does not hold them all.
    void paintPlan(QPainter& painter, const QRectF& bar, double slow, double fast) const {
        const double y = bar.bottom() + m_style.dots(0.3), tick = m_style.dots(0.3);
        painter.setPen(QPen(role(Role::Ink), m_style.dots(0.12), Qt::SolidLine, Qt::SquareCap));
        painter.drawPolyline(QPolygonF({QPointF(slow, y - tick), QPointF(slow, y), QPointF(fast, y),
                                        QPointF(fast, y - tick)}));
    }

    void paintEnds(QPainter& painter, const QRectF& bar, double low, double high) const {
        const double post = m_style.dots(0.5);
        painter.setPen(QPen(role(Role::Ink), m_style.dots(0.32), Qt::SolidLine, Qt::FlatCap));
        for (const double at : {m_scale.low ? low : -1.0, m_scale.high ? high : -1.0}) {
            if (at >= 0)
                painter.drawLine(QPointF(at, bar.top() - post),
                                 QPointF(at, bar.bottom() + post * 0.4));
        }
        paintEnd(painter, bar, low, qs(m_scale.lowFigure), qs(m_scale.lowReason), true);
        paintEnd(painter, bar, high, qs(m_scale.highFigure), qs(m_scale.highReason), false);
    }

    /// Figure outside the post where there is room, the reason inside.
    void paintEnd(QPainter& painter, const QRectF& bar, double at, const QString& figure,
                  const QString& reason, bool isLow) const {
        const double gap = m_style.dots(0.5), foot = bar.top() - m_style.dots(0.15);
        const double figureWidth = m_style.widthOf(figure, kEndFigure, true);
        const double figureLine = m_style.lineHeight(kEndFigure, true);
        double left = isLow ? at - gap - figureWidth : at + gap;
        const bool fits = isLow ? left >= bar.left() : left + figureWidth <= bar.right();
        if (!fits) left = isLow ? at + gap : at - gap - figureWidth;
        painter.setPen(role(Role::Ink));
        if (!figure.isEmpty())
            paintOneLine(painter, QRectF(left, foot - figureLine, figureWidth + 2, figureLine),
                         figure, m_style.font(kEndFigure, true));
        const double taken = fits || figure.isEmpty() ? 0 : figureWidth + gap;
        const double room = bar.width() * 0.34 - taken;
        const double width = std::min(room, m_style.widthOf(reason, kReason) + 2);
        const double x = isLow ? at + gap + taken : at - gap - taken - width;
        const double line = m_style.lineHeight(kReason);
        paintOneLine(painter, QRectF(x, foot - line, width, line), reason, m_style.font(kReason),
                     (isLow ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }

    /// The usual speed over the bar, a line higher where the reasons leave no room.
    void paintUsual(QPainter& painter, const QRectF& bar, const QRectF& box, double low,
                    double high) const {
        const QString words = qs(m_scale.usualWords);
        const double width = m_style.widthOf(words, kUsual, true);
        const double line = m_style.lineHeight(kUsual, true);
        const double at = box.left() + x(m_scale.usual);
        const double left = std::clamp(at - width / 2, bar.left(), bar.right() - width);
        const double afterLow =
            low + m_style.dots(1) + m_style.widthOf(qs(m_scale.lowReason), kReason);
        const double beforeHigh =
            high - m_style.dots(1) - m_style.widthOf(qs(m_scale.highReason), kReason);
        const bool isFree = m_scale.isEmpty || (left > afterLow && left + width < beforeHigh);
        const double foot = bar.top() - m_style.dots(0.3) - (isFree ? 0 : line);
        painter.setPen(role(Role::Ink));
        paintOneLine(painter, QRectF(left, foot - line, width + 2, line), words,
                     m_style.font(kUsual, true));
        const double tip = m_style.dots(0.28);
        painter.setBrush(role(Role::Ink));
        painter.setPen(QPen(role(Role::Surface), m_style.dots(0.06)));
        painter.drawPolygon(QPolygonF({QPointF(at - tip, bar.top() - tip * 1.1),
                                       QPointF(at + tip, bar.top() - tip * 1.1),
                                       QPointF(at, bar.top() + tip * 0.5)}));
    }

    void paintRows(QPainter& painter, const QRectF& box) const {
        double y = box.top() + m_style.dots(0.7);
        const double top = y - m_style.dots(0.2);
        for (std::size_t row = 0; row < m_scale.rowLabels.size(); ++row) {
            const double height = rowHeight(row);
            paintRowLabel(painter, QRectF(box.left(), y, m_labels - m_style.dots(0.6), height),
                          row);
            for (std::size_t i = 0; i < m_scale.columns.size(); ++i) {
                const auto& column = m_scale.columns[i];
                if (row >= column.figures.size()) continue;
                const double size = shrunk(row, m_shrink);
                const bool bold = isBoldRow(row, column.isBold);
                const double width = m_style.widthOf(qs(column.figures[row]), size, bold) + 2;
                paintOneLine(painter,
                             QRectF(box.left() + m_places[i] - width / 2, y, width, height),
                             qs(column.figures[row]), m_style.font(size, bold), Qt::AlignCenter);
            }
            y += height;
        }
        paintPlanBox(painter, box, top, y + m_style.dots(0.1));
    }

    void paintRowLabel(QPainter& painter, const QRectF& box, std::size_t row) const {
        painter.setPen(role(Role::Ink));
        double left = box.left();
        if (row == 0) {
            paintOneLine(painter, box, qs(m_scale.rowsTitle), m_style.font(1.1, true));
            left += m_style.widthOf(qs(m_scale.rowsTitle), 1.1, true) + m_style.dots(0.6);
        }
        paintOneLine(painter, QRectF(left, box.top(), box.right() - left, box.height()),
                     qs(m_scale.rowLabels[row]), m_style.font(),
                     (row == 0 ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    }

    void paintPlanBox(QPainter& painter, const QRectF& box, double top, double bottom) const {
        double from = -1, to = -1;
        for (std::size_t i = 0; i < m_scale.columns.size(); ++i) {
            if (!m_scale.columns[i].isBold) continue;
            const double half = widthOfColumn(i, m_shrink) / 2;
            if (from < 0) from = m_places[i] - half;
            to = m_places[i] + half;
        }
        if (from < 0) return;
        painter.setPen(
            QPen(role(Role::Ink), m_style.dots(0.2), Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(box.left() + from, top, to - from, bottom - top));
    }

    static constexpr int kPale = 155;
    const SheetScale m_scale;
    const SheetStyle m_style;
    double m_labels;
    double m_width;
    SheetLines m_words;
    std::vector<double> m_places;
    double m_shrink = 1.0;
};

}  // namespace

void addPieces(SheetPieces& out, const SheetScale& block, double width, const SheetStyle& style) {
    const auto picture = std::make_shared<ScalePicture>(block, width, style);
    SheetPiece piece;
    piece.gap = style.dots(0.7);
    piece.height = picture->height();
    piece.paint = [picture](QPainter& painter, const QRectF& box) { picture->paint(painter, box); };
    out.push_back(std::move(piece));
}

}  // namespace bw
