// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/catch_bars.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr double kKerb = 1.5;        ///< % of height of the hatched kerb beyond a limit
constexpr double kMostShown = 40.0;  ///< %; beyond it a bar runs out of the picture
constexpr double kLeastShown = 12.0;
}  // namespace

CatchBars::CatchBars(QWidget* parent) : ChartPanel(parent) {
    setObjectName(u"records.detail.bars"_s);
    setRoom(50, 20, 52, 46);
    setMinimumHeight(px(170));
    setUnderlay([this](QPainter& p, const ChartMap& map) {
        paintKerbs(p, map);
        paintBars(p, map);
    });
    setFrame([this](QPainter& p, const ChartMap& map) { paintSections(p, map); });
}

double CatchBars::off(double part) const {
    return std::clamp((part - 1) * 100, -kMostShown, kMostShown);
}

double CatchBars::partOf(const CaughtNozzle& nozzle) const {
    return nozzle.ofNew.value_or(nozzle.ofMean);
}

ChartAxis CatchBars::yAxis() const {
    double low = std::min(-kLeastShown / 2, off(m_low) - 3);
    double high = std::max(kLeastShown, off(m_high) + 3);
    for (const auto& nozzle : m_summary.nozzles) {
        low = std::min(low, off(partOf(nozzle)) - 1);
        high = std::max(high, off(partOf(nozzle)) + 1);
    }
    ChartAxis axis;
    axis.from = std::floor(low);
    axis.to = std::ceil(high);
    const double step = axis.to - axis.from > 30 ? 10 : 5;
    for (double tick = std::ceil(axis.from / step) * step; tick <= axis.to; tick += step)
        axis.ticks.push_back(tick);
    axis.decimals = 0;
    axis.title = m_summary.meanOfNew ? tr("% against a new one") : tr("% against the mean");
    return axis;
}

void CatchBars::setTest(const CatchTest& test, const CatchSummary& summary,
                        const NumberStyle& style) {
    m_test = test;
    m_summary = summary;
    m_style = style;
    m_mean = summary.meanOfNew.value_or(1.0);
    m_low = m_mean * (1 - test.limitOfMean);
    // High against the mean or against a new one: the tighter of the two is the kerb.
    m_high = m_mean * (1 + test.limitOfMean);
    if (summary.meanOfNew) m_high = std::min(m_high, 1 + test.limitOfNew);
    ChartData data;
    data.name = tr("Catch of each nozzle across the boom");
    data.summary = meanWords(summary, style);
    data.decimalMark = style.decimalMark;
    const int count = std::accumulate(test.sections.begin(), test.sections.end(), 0);
    const int last = summary.nozzles.empty() ? 1 : summary.nozzles.back().nozzle;
    data.x = {0.5, std::max(count, last) + 0.5, {}, {}, {}, 0};
    data.y = yAxis();
    ChartCurve values;
    values.name = data.y.title;
    values.isVisible = false;
    for (const auto& nozzle : summary.nozzles)
        values.points.emplace_back(nozzle.nozzle, (partOf(nozzle) - 1) * 100);
    data.curves.push_back(std::move(values));
    setData(std::move(data));
    setAccessibleDescription(meanWords(summary, style));
}

void CatchBars::paintKerbs(QPainter& painter, const ChartMap& map) const {
    const double low = off(m_low), high = off(m_high);
    const auto kerb = [&](double from, double to, Hatch hatch, double line) {
        paintHatch(painter, map.rows(from, to), hatch, map.color(Role::Limit),
                   map.color(Role::LimitTint), map.px(7));
        painter.setPen(QPen(map.color(Role::Limit), map.px(1.4)));
        painter.drawLine(QPointF(map.plot().left(), map.y(line)),
                         QPointF(map.plot().right(), map.y(line)));
    };
    kerb(low - kKerb, low, Hatch::Rising, low);
    kerb(high, high + kKerb, Hatch::Falling, high);
}

void CatchBars::paintBars(QPainter& painter, const ChartMap& map) const {
    // A sample of a wide boom leaves room: its bars may be broader than a nozzle's place.
    const double half = std::max(0.36, map.valueX(map.px(1.5)) - map.valueX(0));
    for (const auto& nozzle : m_summary.nozzles) {
        const double value = off(partOf(nozzle));
        QRectF bar = map.box(nozzle.nozzle - half, nozzle.nozzle + half, std::min(0.0, value),
                             std::max(0.0, value));
        if (bar.height() < map.px(2)) bar.setHeight(map.px(2));
        if (nozzle.verdict == CatchVerdict::Good) {
            painter.fillRect(bar, map.color(Role::Measured));
            continue;
        }
        paintHatch(painter, bar, value < 0 ? Hatch::Rising : Hatch::Falling,
                   map.color(Role::Raised), map.color(Role::Limit), map.px(5));
        painter.setPen(QPen(map.color(Role::Limit), map.px(1.2)));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(bar);
    }
    painter.setPen(QPen(map.color(Role::Ink), map.px(1.3)));
    painter.drawLine(QPointF(map.plot().left(), map.y(0)), QPointF(map.plot().right(), map.y(0)));
    if (!m_summary.meanOfNew) return;
    painter.setPen(QPen(map.color(Role::Ink), map.px(1.3), Qt::DashLine));
    painter.drawLine(QPointF(map.plot().left(), map.y(off(m_mean))),
                     QPointF(map.plot().right(), map.y(off(m_mean))));
}

void CatchBars::paintSections(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    const double line = QFontMetricsF(painter.font()).height();
    const double top = map.plot().bottom() + map.px(22);
    double start = 0.5;
    for (std::size_t i = 0; i < m_test.sections.size(); ++i) {
        const double from = map.x(start) + 1, to = map.x(start + m_test.sections[i]) - 1;
        start += m_test.sections[i];
        painter.setPen(QPen(map.color(Role::Edge), map.px(1.2)));
        painter.drawPolyline(
            QPolygonF({{from, top}, {from, top + map.px(4)}, {to, top + map.px(4)}, {to, top}}));
        painter.setPen(map.color(Role::Ink));
        painter.drawText(QRectF(from, top + map.px(5), to - from, line), Qt::AlignCenter,
                         QString::number(i + 1));
    }
    painter.setPen(map.color(Role::Quiet));
    painter.drawText(QRectF(map.plot().left() - map.px(60), top + map.px(5), map.px(54), line),
                     Qt::AlignRight | Qt::AlignVCenter, tr("section"));
    std::vector<double> used;
    const auto word = [&](double value, const QString& text, Role role) {
        const double y = map.y(value);
        const bool isFree = std::none_of(used.begin(), used.end(),
                                         [&](double other) { return std::abs(other - y) < line; });
        if (!isFree) return;
        used.push_back(y);
        painter.setPen(map.color(role));
        painter.drawText(QRectF(map.plot().right() + map.px(4), y - line / 2, map.px(50), line),
                         Qt::AlignLeft | Qt::AlignVCenter, text);
    };
    word(off(m_high), tr("replace"), Role::Limit);
    word(off(m_low), tr("clean"), Role::Limit);
    word(0, m_summary.meanOfNew ? tr("new") : tr("mean"), Role::Ink);
    if (m_summary.meanOfNew) word(off(m_mean), tr("mean"), Role::Ink);
}

}  // namespace bw
