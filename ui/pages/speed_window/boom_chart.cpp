// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/boom_chart.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/kit/hatch.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kMostShown = 400.0;  ///< % of the rate; over it a bar runs out of the picture
constexpr double kFull = 100.0;

bool isOff(const StripNozzle& nozzle) {
    return nozzle.state != StripState::Sprays;
}

double percentOf(const StripNozzle& nozzle) {
    return nozzle.part ? std::min(kMostShown, kFull * *nozzle.part) : kMostShown;
}

}  // namespace

BoomChart::BoomChart(QWidget* parent) : ChartPanel(parent) {
    setRoom(42, 40, 16, 40);
    setUnderlay([this](QPainter& p, const ChartMap& map) {
        paintSections(p, map);
        paintBars(p, map);
    });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintLines(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void BoomChart::placeAxis(ChartAxis& axis) const {
    double least = kFull, most = kFull;
    for (const auto& nozzle : m_strip.nozzles) {
        least = std::min(least, percentOf(nozzle));
        most = std::max(most, percentOf(nozzle));
    }
    if (m_strip.limitPart) least = std::min(least, kFull * *m_strip.limitPart);
    const double room = std::max(1.0, 0.08 * (most - least));
    std::tie(axis.from, axis.to) = niceRange(std::max(0.0, least - room), most + room, 5);
    if (m_kind == StripKind::Turn) axis.from = 0.0;
}

void BoomChart::setStrip(StripKind kind, const BoomStrip& strip, char decimalMark,
                         const QString& summary) {
    m_kind = kind;
    m_strip = strip;
    ChartData data;
    data.name = tr("Along the boom, nozzle by nozzle");
    data.summary = summary;
    data.decimalMark = decimalMark;
    const double count = static_cast<double>(strip.nozzles.size());
    data.x = {0.5, std::max(1.5, count + 0.5), {}, {}, {}, 0};
    for (const double tick : niceTicks(1, std::max(2.0, count), 10)) {
        if (tick == std::floor(tick)) data.x.ticks.push_back(tick);
    }
    placeAxis(data.y);
    ChartCurve values;
    values.name = axisTitle();
    values.isVisible = false;
    for (const auto& nozzle : strip.nozzles) {
        if (nozzle.part) values.points.emplace_back(nozzle.number, kFull * *nozzle.part);
    }
    data.curves.push_back(std::move(values));
    setData(std::move(data));
    setCursorRange(1, std::max(1.0, count), 1);
}

void BoomChart::showNozzle(int number) {
    const auto place = static_cast<std::size_t>(number - 1);
    if (number < 1 || place >= m_strip.nozzles.size()) return setCursor(std::nullopt);
    const StripNozzle& nozzle = m_strip.nozzles[place];
    setCursor(number, nozzle.part ? std::vector<double>{percentOf(nozzle)} : std::vector<double>{});
}

void BoomChart::paintSections(QPainter& painter, const ChartMap& map) const {
    for (std::size_t i = 0; i < m_strip.nozzles.size();) {
        std::size_t end = i;
        while (end < m_strip.nozzles.size() &&
               m_strip.nozzles[end].section == m_strip.nozzles[i].section)
            ++end;
        if (m_strip.nozzles[i].section % 2 == 0)
            painter.fillRect(
                map.columns(static_cast<double>(i) + 0.5, static_cast<double>(end) + 0.5),
                map.color(Role::Sunken));
        i = end;
    }
}

void BoomChart::paintBars(QPainter& painter, const ChartMap& map) const {
    for (const auto& nozzle : m_strip.nozzles) {
        const double value = percentOf(nozzle);
        QRectF bar = map.box(nozzle.number - 0.32, nozzle.number + 0.32, std::min(kFull, value),
                             std::max(kFull, value));
        if (bar.height() < map.px(2)) bar.setHeight(map.px(2));
        if (isOff(nozzle))
            paintHatch(painter, bar, Hatch::Rising, map.color(Role::Limit),
                       map.color(Role::LimitTint), map.px(5));
        else
            painter.fillRect(bar, map.color(Role::Accent));
    }
}

void BoomChart::paintLines(QPainter& painter, const ChartMap& map) const {
    const QRectF plot = map.plot();
    const auto line = [&](double y, Role role, bool isDashed) {
        QPen pen(map.color(role), map.px(1.6));
        if (isDashed) pen.setDashPattern({6, 4});
        painter.setPen(pen);
        painter.drawLine(QPointF(plot.left(), map.y(y)), QPointF(plot.right(), map.y(y)));
    };
    line(kFull, Role::Target, false);
    if (m_strip.limitPart) {
        const double limit = kFull * *m_strip.limitPart;
        line(limit, Role::Limit, true);
        paintPlate(painter, map, {plot.left() + map.px(6), map.y(limit) - map.px(3)},
                   Qt::AlignLeft | Qt::AlignBottom,
                   tr("usual limit: pressure 10 % under the feed's (from memory)"), Role::Quiet);
    }
    const bool runsOut =
        std::any_of(m_strip.nozzles.begin(), m_strip.nozzles.end(),
                    [](const auto& n) { return !n.part || kFull * *n.part > kMostShown; });
    if (runsOut)
        paintPlate(painter, map, {plot.left() + map.px(6), plot.top() + map.px(6)},
                   Qt::AlignLeft | Qt::AlignTop, tr("over four times the rate, or without a bound"),
                   Role::Limit);
}

void BoomChart::paintAround(QPainter& painter, const ChartMap& map) const {
    const QRectF plot = map.plot();
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    const double line = QFontMetricsF(painter.font()).height();
    painter.drawText(QRectF(map.px(4), plot.top() - map.px(38), plot.width(), line),
                     Qt::AlignLeft | Qt::AlignVCenter, axisTitle());
    std::size_t start = 0;
    for (std::size_t i = 0; i < m_strip.nozzles.size(); ++i) {
        const bool isLast = i + 1 == m_strip.nozzles.size() ||
                            m_strip.nozzles[i + 1].section != m_strip.nozzles[i].section;
        if (!isLast) continue;
        const double from = map.x(static_cast<double>(start) + 0.5);
        const double to = map.x(static_cast<double>(i) + 1.5);
        const QString number = QString::number(m_strip.nozzles[i].section);
        const QString whole = tr("section %1").arg(number);
        const bool hasRoom = painter.fontMetrics().horizontalAdvance(whole) < to - from - 4;
        painter.drawText(QRectF(from, plot.top() - line - map.px(3), to - from, line),
                         Qt::AlignCenter, hasRoom ? whole : number);
        start = i + 1;
    }
    const QRectF foot(plot.left(), plot.bottom() + map.px(20), plot.width(), line);
    painter.drawText(foot, Qt::AlignLeft | Qt::AlignVCenter, endWords(true));
    painter.drawText(foot, Qt::AlignHCenter | Qt::AlignVCenter, tr("nozzle, from the left"));
    painter.drawText(foot, Qt::AlignRight | Qt::AlignVCenter, endWords(false));
}

QString BoomChart::axisTitle() const {
    switch (m_kind) {
        case StripKind::Even:
            return tr("Flow of each nozzle, % of the feed's");
        case StripKind::Turn:
            return tr("Rate under each nozzle, % of the planned one");
        case StripKind::Slope:
            return tr("Flow of each nozzle, % of that on the level");
    }
    return {};
}

QString BoomChart::endWords(bool isLeft) const {
    switch (m_kind) {
        case StripKind::Turn:
            return isLeft ? tr("inner end (left turn)") : tr("outer end");
        case StripKind::Slope:
            return isLeft ? tr("lower end") : tr("upper end");
        default:
            return isLeft ? tr("left") : tr("right");
    }
}

}  // namespace bw
