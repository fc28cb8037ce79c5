// SPDX-License-Identifier: GPL-3.0-or-later
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "ui/kit/hatch.h"
#include "ui/kit/palette.h"
#include "ui/kit/quantity_format.h"
#include "ui/print/sheet_pieces.h"

namespace bw {
namespace {

constexpr double kSmallText = 0.84;

QColor role(Role r) {
    return color(r, Look::Print);
}

/// Where words about a point stand, kept inside `within`.
QRectF plateAt(QPointF centre, const QString& text, const SheetStyle& style, const QRectF& within,
               bool bold = false) {
    const double pad = style.dots(0.2);
    QRectF box(0, 0, std::min(style.widthOf(text, kSmallText, bold) + 2 * pad, within.width()),
               style.lineHeight(kSmallText, bold));
    box.moveCenter(centre);
    if (box.left() < within.left()) box.moveLeft(within.left());
    if (box.right() > within.right()) box.moveRight(within.right());
    if (box.top() < within.top()) box.moveTop(within.top());
    if (box.bottom() > within.bottom()) box.moveBottom(within.bottom());
    return box;
}

/// Words on white, so that hatch and lines do not run through them.
void paintPlate(QPainter& painter, const QRectF& box, const QString& text, const SheetStyle& style,
                bool bold = false) {
    if (text.isEmpty()) return;
    painter.fillRect(box, role(Role::Surface));
    painter.setPen(role(Role::Ink));
    paintOneLine(painter, box, text, style.font(kSmallText, bold), Qt::AlignCenter);
}

/// Maps an axis to a stretch of dots.
struct Scale {
    double from, to, first, last;
    double operator()(double value) const {
        const double part = to > from ? (value - from) / (to - from) : 0.0;
        return first + std::clamp(part, 0.0, 1.0) * (last - first);
    }
};

QPen linePen(const SheetStyle& style, int dash) {
    QPen pen(role(Role::Ink), style.dots(0.17), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    if (dash == 1) pen.setDashPattern({5.0, 3.0});
    if (dash == 2) pen.setDashPattern({1.4, 2.0});
    return pen;
}

double widestTick(const SheetAxis& axis, const SheetStyle& style) {
    double widest = 0;
    for (const auto& [at, text] : axis.ticks)
        widest = std::max(widest, style.widthOf(qs(text), kSmallText));
    return widest;
}

class LinePicture {
  public:
    LinePicture(QPainter& painter, const QRectF& box, const SheetLineChart& chart,
                const SheetStyle& style)
        : m_painter(painter), m_chart(chart), m_style(style) {
        const double line = style.lineHeight(kSmallText);
        m_plot = box.adjusted(widestTick(chart.y, style) + style.dots(0.5), line * 1.15,
                              -style.dots(0.3), -line * 1.15);
        m_x = {chart.x.from, chart.x.to, m_plot.left(), m_plot.right()};
        m_y = {chart.y.from, chart.y.to, m_plot.bottom(), m_plot.top()};
        m_box = box;
    }
    void paint() {
        paintBands();
        paintAxes();
        paintSeries();
        paintLines();
        paintBandWords();
    }

  private:
    QRectF areaOf(const SheetBand& band) const {
        return band.isAlongX ? QRectF(QPointF(m_x(band.from), m_plot.top()),
                                      QPointF(m_x(band.to), m_plot.bottom()))
                             : QRectF(QPointF(m_plot.left(), m_y(band.to)),
                                      QPointF(m_plot.right(), m_y(band.from)));
    }
    void paintBands() {
        for (const auto& band : m_chart.bands) {
            if (!band.isHatched) m_painter.fillRect(areaOf(band), role(Role::AccentTint));
        }
        for (const auto& band : m_chart.bands) {
            if (!band.isHatched) continue;
            paintHatch(m_painter, areaOf(band), band.isFalling ? Hatch::Falling : Hatch::Rising,
                       role(Role::Line), role(Role::LimitTint), m_style.dots(0.55),
                       m_style.dots(0.07));
        }
    }
    void paintAxes() {
        const QFont font = m_style.font(kSmallText);
        const double line = m_style.lineHeight(kSmallText), tick = m_style.dots(0.25);
        m_painter.setPen(QPen(role(Role::Edge), m_style.dots(0.08)));
        m_painter.drawLine(m_plot.topLeft(), m_plot.bottomLeft());
        m_painter.drawLine(m_plot.bottomLeft(), m_plot.bottomRight());
        // The last place below belongs to the name of the axis.
        const QString name = qs(m_chart.x.title);
        const double nameLeft = m_box.right() - m_style.widthOf(name, kSmallText) - tick;
        for (const auto& [at, words] : m_chart.x.ticks) {
            const double x = m_x(at);
            m_painter.setPen(QPen(role(Role::Edge), m_style.dots(0.08)));
            m_painter.drawLine(QPointF(x, m_plot.bottom()), QPointF(x, m_plot.bottom() + tick));
            const double half = m_style.widthOf(qs(words), kSmallText) / 2;
            if (x + half > nameLeft - tick) continue;
            m_painter.setPen(role(Role::Ink));
            paintOneLine(m_painter, QRectF(x - half, m_plot.bottom() + tick, 2 * half + 1, line),
                         qs(words), font, Qt::AlignCenter);
        }
        m_painter.setPen(role(Role::Ink));
        paintOneLine(m_painter,
                     QRectF(nameLeft, m_plot.bottom() + tick, m_box.right() - nameLeft, line), name,
                     font, Qt::AlignRight | Qt::AlignVCenter);
        for (const auto& [at, words] : m_chart.y.ticks) {
            const double y = m_y(at);
            m_painter.setPen(QPen(role(Role::Edge), m_style.dots(0.08)));
            m_painter.drawLine(QPointF(m_plot.left() - tick, y), QPointF(m_plot.left(), y));
            m_painter.setPen(role(Role::Ink));
            paintOneLine(
                m_painter,
                QRectF(m_box.left(), y - line / 2, m_plot.left() - 1.4 * tick - m_box.left(), line),
                qs(words), font, Qt::AlignRight | Qt::AlignVCenter);
        }
        paintOneLine(m_painter, QRectF(m_box.left(), m_box.top(), m_box.width(), line),
                     qs(m_chart.y.title), font);
    }
    void paintSeries() {
        m_painter.save();
        m_painter.setClipRect(m_plot.adjusted(0, -m_style.dots(0.1), 0, m_style.dots(0.1)));
        m_painter.setBrush(Qt::NoBrush);
        for (const auto& series : m_chart.series) {
            QPolygonF line;
            for (const auto& [x, y] : series.points) {
                if (x >= m_chart.x.from && x <= m_chart.x.to) line.append({m_x(x), m_y(y)});
            }
            m_painter.setPen(linePen(m_style, series.dash));
            m_painter.drawPolyline(line);
        }
        m_painter.restore();
        for (const auto& series : m_chart.series) {
            if (series.label.empty() || series.points.empty()) continue;
            const auto& [x, y] = series.points.back();
            write(QPointF(m_x(x), m_y(y)), qs(series.label), false);
        }
    }
    void paintLines() {
        for (const auto& line : m_chart.lines) {
            m_painter.setPen(QPen(role(Role::Ink), m_style.dots(0.2), Qt::SolidLine, Qt::FlatCap));
            if (line.isUpright) {
                const double x = m_x(line.at);
                m_painter.drawLine(QPointF(x, m_plot.top()), QPointF(x, m_plot.bottom()));
                write(QPointF(x, m_plot.bottom()), qs(line.label), true);
            } else {
                const double y = m_y(line.at);
                m_painter.drawLine(QPointF(m_plot.left(), y), QPointF(m_plot.right(), y));
                write(QPointF(m_plot.right(), y), qs(line.label), true);
            }
        }
    }
    void write(QPointF at, const QString& text, bool bold) {
        if (text.isEmpty()) return;
        m_taken.push_back(plateAt(at, text, m_style, m_plot, bold));
        paintPlate(m_painter, m_taken.back(), text, m_style, bold);
    }
    /// In the middle of the band, at its sides or just over it: where nothing else is written.
    void paintBandWords() {
        for (const auto& band : m_chart.bands) {
            const QRectF area = areaOf(band);
            if (band.label.empty()) continue;
            const double y = band.isFalling && !band.isAlongX ? area.top() : area.center().y();
            const double above = area.top() - m_style.lineHeight(kSmallText) * 0.6;
            const QPointF places[] = {{area.center().x(), y},
                                      {area.right(), y},
                                      {area.left(), y},
                                      {area.center().x(), above},
                                      {area.left(), above}};
            QRectF best;
            for (const QPointF& at : places) {
                best = plateAt(at, qs(band.label), m_style, m_plot);
                const bool isFree = std::none_of(m_taken.begin(), m_taken.end(),
                                                 [&](const auto& r) { return r.intersects(best); });
                if (isFree) break;
            }
            m_taken.push_back(best);
            paintPlate(m_painter, best, qs(band.label), m_style);
        }
    }

    QPainter& m_painter;
    const SheetLineChart& m_chart;
    const SheetStyle& m_style;
    QRectF m_box, m_plot;
    Scale m_x{}, m_y{};
    std::vector<QRectF> m_taken;  ///< where words stand already
};

class BarPicture {
  public:
    BarPicture(QPainter& painter, const QRectF& box, const SheetBarChart& chart,
               const SheetStyle& style)
        : m_painter(painter), m_chart(chart), m_style(style), m_box(box) {
        m_line = style.lineHeight(kSmallText);
        double ticks = 0, limits = 0;
        for (const auto& text : chart.tickTexts)
            ticks = std::max(ticks, style.widthOf(qs(text), kSmallText));
        for (const auto& limit : chart.limits)
            limits = std::max(limits, style.widthOf(qs(limit.label), kSmallText));
        limits = std::min(limits, box.width() * 0.25);
        m_plot = box.adjusted(ticks + style.dots(0.5), m_line * 2.1, -limits - style.dots(0.4),
                              -m_line * (chart.groups.empty() ? 1.15 : 2.5));
        m_y = {chart.from, chart.to, m_plot.bottom(), m_plot.top()};
        m_step = m_plot.width() / static_cast<double>(std::max<std::size_t>(1, chart.bars.size()));
    }
    void paint() {
        paintAxis();
        for (std::size_t i = 0; i < m_chart.bars.size(); ++i) paintBar(i);
        paintLimits();
        paintGroups();
    }

  private:
    double left(std::size_t bar) const { return m_plot.left() + m_step * static_cast<double>(bar); }
    void paintAxis() {
        const QFont font = m_style.font(kSmallText);
        m_painter.setPen(role(Role::Ink));
        paintOneLine(m_painter, QRectF(m_box.left(), m_box.top(), m_box.width(), m_line),
                     qs(m_chart.axis), font);
        for (std::size_t i = 0; i < m_chart.ticks.size(); ++i) {
            const double y = m_y(m_chart.ticks[i]);
            m_painter.setPen(QPen(role(Role::Line), m_style.dots(0.04)));
            m_painter.drawLine(QPointF(m_plot.left(), y), QPointF(m_plot.right(), y));
            if (i >= m_chart.tickTexts.size()) continue;
            m_painter.setPen(role(Role::Ink));
            paintOneLine(m_painter,
                         QRectF(m_box.left(), y - m_line / 2,
                                m_plot.left() - m_style.dots(0.3) - m_box.left(), m_line),
                         qs(m_chart.tickTexts[i]), font, Qt::AlignRight | Qt::AlignVCenter);
        }
        m_painter.setPen(QPen(role(Role::Edge), m_style.dots(0.08)));
        m_painter.drawLine(m_plot.bottomLeft(), m_plot.bottomRight());
        m_painter.drawLine(m_plot.bottomLeft(), m_plot.topLeft());
    }
    /// Every so many bars have their label, so that labels stay apart.
    bool hasLabel(std::size_t bar) const {
        double widest = 0;
        for (const auto& b : m_chart.bars)
            widest = std::max(widest, m_style.widthOf(qs(b.label), kSmallText * 0.9));
        const auto every = static_cast<std::size_t>((widest + m_style.dots(0.3)) / m_step) + 1;
        return bar % every == 0;
    }
    void paintBar(std::size_t i) {
        const SheetBar& bar = m_chart.bars[i];
        const double thick = m_step * 0.72;
        const double x = left(i) + (m_step - thick) / 2;
        // From zero, up or down; from the foot of the picture where zero is not in it.
        const double base = m_y(std::clamp(0.0, m_chart.from, m_chart.to));
        const double end = bar.value ? m_y(*bar.value) : m_plot.top();
        const double top = std::min(base, end);
        const QRectF box(x, top, thick, std::max(std::abs(base - end), m_style.dots(0.1)));
        const double pen = std::min(m_style.dots(0.08), thick * 0.12);
        m_painter.setBrush(Qt::NoBrush);
        if (!bar.value) {
            QPen dotted(role(Role::Edge), pen);
            dotted.setDashPattern({1.5, 2.5});
            m_painter.setPen(dotted);
            m_painter.drawRect(box);
        } else if (bar.isOff) {
            paintHatch(m_painter, box, Hatch::Rising, role(Role::Ink), role(Role::Surface),
                       m_style.dots(0.4), m_style.dots(0.09));
            m_painter.setPen(QPen(role(Role::Ink), pen * 1.6));
            m_painter.drawRect(box);
        } else {
            m_painter.fillRect(box, role(Role::Edge));
        }
        if (!bar.letter.empty()) {
            m_painter.setPen(role(Role::Ink));
            const double half = m_style.widthOf(qs(bar.letter), kSmallText, true) / 2;
            const double y = std::max(m_plot.top() - m_line, top - m_line);
            paintOneLine(m_painter, QRectF(box.center().x() - half, y, 2 * half + 1, m_line),
                         qs(bar.letter), m_style.font(kSmallText, true), Qt::AlignCenter);
        }
        if (!hasLabel(i)) return;
        const double half = m_style.widthOf(qs(bar.label), kSmallText * 0.9) / 2;
        m_painter.setPen(role(Role::Ink));
        paintOneLine(m_painter,
                     QRectF(box.center().x() - half, m_plot.bottom() + m_style.dots(0.1),
                            2 * half + 1, m_line),
                     qs(bar.label), m_style.font(kSmallText * 0.9), Qt::AlignCenter);
    }
    void paintLimits() {
        for (const auto& limit : m_chart.limits) {
            const double y = m_y(limit.value);
            QPen pen(role(Role::Ink), m_style.dots(0.12), Qt::SolidLine, Qt::FlatCap);
            pen.setDashPattern({5, 3});
            m_painter.setPen(pen);
            m_painter.drawLine(QPointF(m_plot.left(), y), QPointF(m_plot.right(), y));
            m_painter.setPen(role(Role::Ink));
            const double x = m_plot.right() + m_style.dots(0.3);
            paintOneLine(m_painter, QRectF(x, y - m_line / 2, m_box.right() - x, m_line),
                         qs(limit.label), m_style.font(kSmallText));
        }
    }
    void paintGroups() {
        std::size_t bar = 0;
        const double y = m_plot.bottom() + m_line * 1.25;
        for (const auto& group : m_chart.groups) {
            const double from = left(bar) + m_step * 0.14;
            bar += static_cast<std::size_t>(std::max(0, group.bars));
            const double to = left(bar) - m_step * 0.14;
            m_painter.setPen(QPen(role(Role::Ink), m_style.dots(0.08)));
            m_painter.drawPolyline(
                QPolygonF({QPointF(from, y - m_style.dots(0.2)), QPointF(from, y), QPointF(to, y),
                           QPointF(to, y - m_style.dots(0.2))}));
            paintOneLine(m_painter, QRectF(from, y, to - from, m_line), qs(group.label),
                         m_style.font(kSmallText), Qt::AlignCenter);
        }
    }

    QPainter& m_painter;
    const SheetBarChart& m_chart;
    const SheetStyle& m_style;
    QRectF m_box, m_plot;
    Scale m_y{};
    double m_line = 0, m_step = 1;
};

}  // namespace

void addPieces(SheetPieces& out, const SheetLineChart& block, double width,
               const SheetStyle& style) {
    SheetPiece piece;
    piece.gap = style.dots(0.4);
    piece.height = std::min(width * block.heightShare, style.pageHeight * 0.6);
    piece.paint = [block, style](QPainter& painter, const QRectF& box) {
        LinePicture(painter, box, block, style).paint();
    };
    out.push_back(std::move(piece));
}

void addPieces(SheetPieces& out, const SheetBarChart& block, double width,
               const SheetStyle& style) {
    SheetPiece piece;
    piece.gap = style.dots(0.5);
    piece.height = std::min(std::max(width * 0.34, style.dots(14)), style.pageHeight * 0.6);
    piece.paint = [block, style](QPainter& painter, const QRectF& box) {
        BarPicture(painter, box, block, style).paint();
    };
    out.push_back(std::move(piece));
}

}  // namespace bw
