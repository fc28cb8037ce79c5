// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/wear_chart.h"

#include <QDate>
#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "ui/kit/chips.h"
#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kCover = 2.0;      ///< standard uncertainties to either side
constexpr double kMostAhead = 8.0;  ///< years shown beyond the last test
constexpr int kSteps = 80;

QDate dateOf(Day day) {
    return QDate(1970, 1, 1).addDays(day.time_since_epoch().count());
}

Day dayAt(double years) {
    const int year = static_cast<int>(std::floor(years));
    const QDate start(year, 1, 1);
    const double days = (years - year) * start.daysInYear();
    return Day(std::chrono::days(QDate(1970, 1, 1).daysTo(start) + std::lround(days)));
}

double percentOver(double part) {
    return (part - 1) * 100;
}

}  // namespace

double yearsOf(Day day) {
    const QDate date = dateOf(day);
    return date.year() + (date.dayOfYear() - 1) / static_cast<double>(date.daysInYear());
}

QString monthWords(Day day) {
    return QLocale(QLocale::English).toString(dateOf(day), u"MMMM yyyy"_s);
}

WearChart::WearChart(QWidget* parent) : ChartPanel(parent) {
    setObjectName(u"records.wear.chart"_s);
    setRoom(44, 24, 26, 26);
    setMinimumHeight(px(190));
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
}

ChartAxis WearChart::timeAxis() const {
    ChartAxis axis;
    double from = 1e9, to = -1e9;
    for (const auto& test : m_history.tests) {
        const double at = yearsOf(*dayFor(test.date));
        from = std::min(from, at);
        to = std::max(to, at);
    }
    const double last = to;
    if (m_history.trend.isOk()) {
        const WearTrend& trend = *m_history.trend;
        to = std::max(to, yearsOf(trend.passes) + 0.6);
        if (trend.latest) to = std::max(to, yearsOf(*trend.latest) + 0.2);
    }
    axis.from = std::floor((from - 0.25) * 4) / 4;
    axis.to = std::min(std::max(to, last + 0.75), last + kMostAhead);
    const double step = axis.to - axis.from > 9 ? 2 : 1;
    for (double tick = std::ceil(axis.from); tick <= axis.to; tick += step)
        axis.ticks.push_back(tick);
    axis.decimals = 0;
    return axis;
}

ChartAxis WearChart::flowAxis() const {
    double low = -1, high = limitPercent() + 2;
    for (const auto& test : m_history.tests) {
        const double spread = kCover * test.ofNew.uncertainty * 100;
        low = std::min(low, percentOver(test.ofNew.value) - spread - 0.5);
        high = std::max(high, percentOver(test.ofNew.value) + spread + 0.5);
    }
    ChartAxis axis;
    std::tie(axis.from, axis.to) = niceRange(low, high, 6);
    axis.ticks = niceTicks(axis.from, axis.to, 6);
    axis.title = tr("% over a new one");
    return axis;
}

void WearChart::setHistory(const WearHistory& history, const NumberStyle& style,
                           const QString& summary) {
    m_history = history;
    m_style = style;
    m_time = timeAxis();
    ChartData data;
    data.name = tr("Wear of %1 on %2").arg(qs(history.set), qs(history.machineName));
    data.summary = summary;
    data.decimalMark = style.decimalMark;
    data.x = m_time;
    data.y = flowAxis();
    ChartCurve tests;
    tests.name = tr("% over a new one");
    tests.isVisible = false;
    for (const auto& test : history.tests)
        tests.points.emplace_back(yearsOf(*dayFor(test.date)), percentOver(test.ofNew.value));
    data.curves.push_back(std::move(tests));
    if (history.trend.isOk()) {
        ChartCurve line;
        line.name = tr("line through them");
        for (const double at : {m_time.from, m_time.to})
            line.points.emplace_back(at, percentOver(history.trend->at(dayAt(at)).value));
        line.width = 2;
        data.curves.push_back(std::move(line));
    }
    setData(std::move(data));
    setAccessibleDescription(summary);
}

void WearChart::paintUnder(QPainter& painter, const ChartMap& map) const {
    painter.setRenderHint(QPainter::Antialiasing);
    paintHatch(painter, map.rows(limitPercent(), 1000), Hatch::Falling, map.color(Role::Limit),
               map.color(Role::LimitTint), map.px(8));
    paintBand(painter, map);
    painter.setPen(QPen(map.color(Role::Limit), map.px(1.4)));
    painter.drawLine(QPointF(map.plot().left(), map.y(limitPercent())),
                     QPointF(map.plot().right(), map.y(limitPercent())));
    painter.setPen(QPen(map.color(Role::Ink), map.px(1.2)));
    painter.drawLine(QPointF(map.plot().left(), map.y(0)), QPointF(map.plot().right(), map.y(0)));
}

void WearChart::paintBand(QPainter& painter, const ChartMap& map) const {
    if (!m_history.trend.isOk()) return;
    QPolygonF upper, lower;
    for (int i = 0; i <= kSteps; ++i) {
        const double at = m_time.from + (m_time.to - m_time.from) * i / kSteps;
        const auto line = m_history.trend->at(dayAt(at));
        upper << map.point({at, percentOver(line.value + kCover * line.uncertainty)});
        lower.prepend(map.point({at, percentOver(line.value - kCover * line.uncertainty)}));
    }
    painter.save();
    // Beyond the limit the hatch is what counts.
    painter.setClipRect(map.rows(-1000, limitPercent()), Qt::IntersectClip);
    painter.setPen(Qt::NoPen);
    painter.setBrush(map.color(Role::AccentTint));
    painter.drawPolygon(upper + lower);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(map.color(Role::Accent), map.px(1), Qt::DotLine));
    painter.drawPolyline(upper);
    painter.drawPolyline(lower);
    painter.restore();
}

void WearChart::paintOver(QPainter& painter, const ChartMap& map) const {
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = map.color(Role::Measured);
    for (const auto& test : m_history.tests) {
        const double at = yearsOf(*dayFor(test.date));
        const double spread = kCover * test.ofNew.uncertainty * 100;
        const double value = percentOver(test.ofNew.value);
        const double x = map.x(at), half = map.px(4);
        painter.setPen(QPen(ink, map.px(1.5)));
        const double top = map.y(value + spread), bottom = map.y(value - spread);
        painter.drawLine(QPointF(x, top), QPointF(x, bottom));
        painter.drawLine(QPointF(x - half, top), QPointF(x + half, top));
        painter.drawLine(QPointF(x - half, bottom), QPointF(x + half, bottom));
        paintMarker(painter, {x, map.y(value)}, Marker::Disc, map.px(8), ink, ink);
    }
    paintPassing(painter, map);
    paintPlate(painter, map, {map.plot().left() + map.px(6), map.y(limitPercent()) - map.px(3)},
               Qt::AlignLeft | Qt::AlignBottom,
               tr("limit: %1 % over new").arg(plainNumber(limitPercent(), 0, m_style)), Role::Limit,
               TextSize::Small, true);
}

/// The best estimate as a dashed post, and from the earliest to the latest day a bar on the limit.
void WearChart::paintPassing(QPainter& painter, const ChartMap& map) const {
    if (!m_history.trend.isOk()) return;
    const WearTrend& trend = *m_history.trend;
    const double y = map.y(limitPercent());
    const double from = trend.earliest ? yearsOf(*trend.earliest) : m_time.from;
    const double to = trend.latest ? yearsOf(*trend.latest) : m_time.to;
    painter.setPen(QPen(map.color(Role::Ink), map.px(4), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(map.x(std::max(from, m_time.from)), y),
                     QPointF(map.x(std::min(to, m_time.to)), y));
    const double at = yearsOf(trend.passes);
    if (at < m_time.from || at > m_time.to) return;
    painter.setPen(QPen(map.color(Role::Ink), map.px(1.5), Qt::DashLine));
    painter.drawLine(QPointF(map.x(at), y), QPointF(map.x(at), map.plot().bottom()));
    const bool isAtRight = map.x(at) > map.plot().center().x();
    paintPlate(painter, map,
               {map.x(at) + (isAtRight ? -1 : 1) * map.px(6), map.plot().bottom() - map.px(8)},
               (isAtRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignBottom,
               tr("about %1").arg(monthWords(trend.passes)), Role::Ink, TextSize::Small, true);
}

}  // namespace bw
