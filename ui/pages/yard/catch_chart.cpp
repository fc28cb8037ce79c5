// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_chart.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "ui/kit/catch_drawing.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/yard_words.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kMostShown = 40.0;  ///< %; beyond it a bar runs out of the picture
constexpr double kLeastShown = 12.0;

bool isOff(const CaughtNozzle& nozzle) {
    return nozzle.verdict != CatchVerdict::Good;
}

}  // namespace

CatchChart::CatchChart(QWidget* parent) : ChartPanel(parent) {
    setRoom(50, 22, 66, 88);
    setUnderlay([this](QPainter& p, const ChartMap& map) {
        paintLimits(p, map);
        paintOpen(p, map);
        paintBars(p, map);
    });
    setOverlay([this](QPainter& p, const ChartMap& map) {
        paintLines(p, map);
        paintOffNames(p, map);
    });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

double CatchChart::off(double part) const {
    return std::clamp((part - 1) * 100, -kMostShown, kMostShown);
}

int CatchChart::nozzles() const {
    return std::accumulate(m_view.test.sections.begin(), m_view.test.sections.end(), 0);
}

ChartAxis CatchChart::yAxis() const {
    double low = std::min(-kLeastShown, off(m_view.picture.low) - 4);
    double high = std::max(kLeastShown, off(m_view.picture.high) + 4);
    for (const double part : m_view.picture.nozzles) {
        low = std::min(low, off(part) - 3);
        high = std::max(high, off(part) + 3);
    }
    ChartAxis axis;
    axis.from = std::floor(low);
    axis.to = std::ceil(high);
    const double step = axis.to - axis.from > 45 ? 10 : 5;
    for (double tick = std::ceil(axis.from / step) * step; tick <= axis.to; tick += step)
        axis.ticks.push_back(tick);
    axis.decimals = 0;
    axis.title = m_view.picture.isOfNew ? tr("% off a new one") : tr("% off the mean");
    return axis;
}

void CatchChart::setView(View view, const QString& summary) {
    m_view = std::move(view);
    ChartData data;
    data.name = tr("Catch of each nozzle across the boom");
    data.summary = summary;
    data.decimalMark = m_view.style.decimalMark;
    const double count = std::max(1, nozzles());
    data.x = {0.5, count + 0.5, {}, {}, {}, 0};
    data.y = yAxis();
    ChartCurve values;
    values.name = m_view.picture.isOfNew ? tr("% off a new one") : tr("% off the mean");
    values.isVisible = false;
    if (m_view.summary) {
        for (std::size_t i = 0; i < m_view.summary->nozzles.size(); ++i)
            values.points.emplace_back(m_view.summary->nozzles[i].nozzle,
                                       (m_view.picture.nozzles[i] - 1) * 100);
    }
    data.curves.push_back(std::move(values));
    setData(std::move(data));
    setCursorRange(1, count, 1);
    setCursor(m_view.inHand > 0 ? std::optional<double>(m_view.inHand) : std::nullopt);
}

void CatchChart::paintLimits(QPainter& painter, const ChartMap& map) const {
    paintCatchLimits(painter, map, off(m_view.picture.low), off(m_view.picture.high));
}

void CatchChart::paintOpen(QPainter& painter, const ChartMap& map) const {
    QPen pen(map.color(Role::Unchecked), map.px(1.2), Qt::DotLine);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    for (const int nozzle : m_view.order) {
        const bool isCaught = std::any_of(m_view.test.catches.begin(), m_view.test.catches.end(),
                                          [&](const NotedCatch& c) { return c.nozzle == nozzle; });
        if (isCaught) continue;
        QRectF box = map.columns(nozzle - 0.35, nozzle + 0.35);
        box.setTop(map.y(0) - map.px(3));
        box.setBottom(map.y(0) + map.px(3));
        painter.drawRect(box);
    }
}

void CatchChart::paintBars(QPainter& painter, const ChartMap& map) const {
    if (!m_view.summary) return;
    for (std::size_t i = 0; i < m_view.summary->nozzles.size(); ++i) {
        const CaughtNozzle& nozzle = m_view.summary->nozzles[i];
        paintCatchBar(painter, map, nozzle.nozzle, 0.34, off(m_view.picture.nozzles[i]),
                      isOff(nozzle));
    }
}

void CatchChart::paintLines(QPainter& painter, const ChartMap& map) const {
    const bool hasMean = m_view.summary && m_view.picture.isOfNew;
    paintCatchLines(painter, map, hasMean ? std::optional(off(m_view.picture.mean)) : std::nullopt);
}

/// "17: +12.5 %, replace" at its bar; those that would lie over another name give their number
/// alone, or nothing: the table names all.
void CatchChart::paintOffNames(QPainter& painter, const ChartMap& map) const {
    if (!m_view.summary) return;
    std::vector<QRectF> taken;
    for (std::size_t i = 0; i < m_view.summary->nozzles.size(); ++i) {
        const CaughtNozzle& nozzle = m_view.summary->nozzles[i];
        if (!isOff(nozzle)) continue;
        const double part = m_view.picture.nozzles[i];
        const bool isAtRight = nozzle.nozzle > nozzles() / 2;
        const double x = map.x(nozzle.nozzle) + (isAtRight ? -1 : 1) * map.px(7);
        const double y = map.y(off(part)) + (part < 1 ? -1 : 1) * map.px(8);
        const QString number = QString::number(nozzle.nozzle);
        for (const QString& text :
             {tr("%1: %2, %3")
                  .arg(number, offWords(part, m_view.style),
                       nozzle.verdict == CatchVerdict::Replace ? tr("replace") : tr("clean")),
              number}) {
            const double width =
                QFontMetricsF(map.font(TextSize::Small, true)).horizontalAdvance(text) + map.px(10);
            const QRectF box(isAtRight ? x - width : x, y - map.px(9), width, map.px(18));
            const bool isFree = std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) {
                return other.intersects(box);
            });
            if (!isFree) continue;
            taken.push_back(box);
            paintPlate(painter, map, {x, y},
                       (isAtRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, text,
                       Role::Limit, TextSize::Small, true);
            break;
        }
    }
}

void CatchChart::paintAround(QPainter& painter, const ChartMap& map) const {
    painter.setRenderHint(QPainter::Antialiasing);
    paintSide(painter, map);
    paintBoom(painter, map);
    paintSections(painter, map);
}

void CatchChart::paintSide(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    const double line = QFontMetricsF(painter.font()).height();
    std::vector<double> used;
    const auto word = [&](double value, const QString& text, Role role) {
        double y = map.y(value);
        for (const double other : used) {
            if (std::abs(other - y) < line) y = other + (y < other ? -line : line);
        }
        used.push_back(y);
        painter.setPen(map.color(role));
        painter.drawText(QRectF(map.plot().right() + map.px(5), y - line / 2, map.px(60), line),
                         Qt::AlignLeft | Qt::AlignVCenter, text);
    };
    word(off(m_view.picture.high), tr("replace"), Role::Limit);
    word(off(m_view.picture.low), tr("clean"), Role::Limit);
    word(0, m_view.picture.isOfNew ? tr("new") : tr("mean"), Role::Ink);
    if (m_view.summary && m_view.picture.isOfNew)
        word(off(m_view.picture.mean), tr("mean"), Role::Ink);
}

/// The boom as a line with its nozzles: filled caught, open not yet, a ring on the one in hand.
void CatchChart::paintBoom(QPainter& painter, const ChartMap& map) const {
    const double y = map.plot().bottom() + map.px(22);
    painter.setPen(QPen(map.color(Role::Ink), map.px(3)));
    painter.drawLine(QPointF(map.plot().left(), y), QPointF(map.plot().right(), y));
    const double half = std::min(map.px(4.5), map.plot().width() / std::max(1, nozzles()) * 0.42);
    for (int nozzle = 1; nozzle <= nozzles(); ++nozzle) {
        const bool isCaught = std::any_of(m_view.test.catches.begin(), m_view.test.catches.end(),
                                          [&](const NotedCatch& c) { return c.nozzle == nozzle; });
        const double x = map.x(nozzle);
        QPainterPath fan(QPointF(x, y + map.px(3)));
        fan.lineTo(x - half, y + map.px(12));
        fan.lineTo(x + half, y + map.px(12));
        fan.closeSubpath();
        painter.setPen(QPen(map.color(isCaught ? Role::Ink : Role::Edge), map.px(1)));
        painter.setBrush(isCaught ? map.color(Role::Ink) : map.color(Role::Raised));
        painter.drawPath(fan);
        if (nozzle != m_view.inHand) continue;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(map.color(Role::Focus), map.px(2)));
        painter.drawEllipse(QPointF(x, y + map.px(8)), map.px(8), map.px(8));
    }
    painter.setBrush(Qt::NoBrush);
}

void CatchChart::paintSections(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    const QFontMetricsF metrics(painter.font());
    const double line = metrics.height();
    const double top = map.plot().bottom() + map.px(38);
    double start = 0.5;
    for (std::size_t i = 0; i < m_view.test.sections.size(); ++i) {
        const double from = map.x(start) + 1, to = map.x(start + m_view.test.sections[i]) - 1;
        start += m_view.test.sections[i];
        painter.setPen(QPen(map.color(Role::Edge), map.px(1.2)));
        painter.drawPolyline(
            QPolygonF({{from, top}, {from, top + map.px(4)}, {to, top + map.px(4)}, {to, top}}));
        const QRectF box(from, top + map.px(5), to - from, line);
        painter.setPen(map.color(Role::Ink));
        painter.drawText(box, Qt::AlignCenter, QString::number(i + 1));
        QString mean;
        if (m_view.summary) {
            for (std::size_t k = 0; k < m_view.summary->sections.size(); ++k) {
                if (m_view.summary->sections[k].section == static_cast<int>(i))
                    mean = offWords(m_view.picture.sections[k], m_view.style);
            }
        }
        if (metrics.horizontalAdvance(mean) > to - from + map.px(2)) mean.clear();
        painter.setPen(map.color(Role::Quiet));
        painter.drawText(box.translated(0, line), Qt::AlignCenter, mean);
    }
    painter.setPen(map.color(Role::Quiet));
    const double left = map.plot().left() - map.px(48);
    const QRectF label(left, top + map.px(5), map.px(44), line);
    painter.drawText(label, Qt::AlignRight | Qt::AlignVCenter, tr("section"));
    painter.drawText(label.translated(0, line), Qt::AlignRight | Qt::AlignVCenter, tr("mean"));
}

}  // namespace bw
