// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/catch_bars.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "ui/kit/catch_drawing.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr double kMostShown = 40.0;  ///< %; beyond it a bar runs out of the picture
constexpr double kLeastShown = 12.0;
}  // namespace

CatchBars::CatchBars(QWidget* parent) : ChartPanel(parent) {
    setObjectName(u"records.detail.bars"_s);
    setRoom(50, 20, 52, 46);
    setMinimumHeight(px(170));
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintBars(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintSections(p, map); });
}

double CatchBars::off(double part) const {
    return std::clamp((part - 1) * 100, -kMostShown, kMostShown);
}

ChartAxis CatchBars::yAxis() const {
    double low = std::min(-kLeastShown / 2, off(m_picture.low) - 3);
    double high = std::max(kLeastShown, off(m_picture.high) + 3);
    for (const double part : m_picture.nozzles) {
        low = std::min(low, off(part) - 1);
        high = std::max(high, off(part) + 1);
    }
    ChartAxis axis;
    axis.from = std::floor(low);
    axis.to = std::ceil(high);
    const double step = axis.to - axis.from > 30 ? 10 : 5;
    for (double tick = std::ceil(axis.from / step) * step; tick <= axis.to; tick += step)
        axis.ticks.push_back(tick);
    axis.decimals = 0;
    axis.title = m_picture.isOfNew ? tr("% against a new one") : tr("% against the mean");
    return axis;
}

void CatchBars::setTest(const CatchTest& test, const CatchSummary& summary,
                        const NumberStyle& style) {
    m_test = test;
    m_summary = summary;
    m_style = style;
    m_picture = catchPicture(summary, bare(test.newFlow), {test.limitOfMean, test.limitOfNew});
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
    for (std::size_t i = 0; i < summary.nozzles.size(); ++i)
        values.points.emplace_back(summary.nozzles[i].nozzle, (m_picture.nozzles[i] - 1) * 100);
    data.curves.push_back(std::move(values));
    setData(std::move(data));
    setAccessibleDescription(meanWords(summary, style));
}

void CatchBars::paintBars(QPainter& painter, const ChartMap& map) const {
    paintCatchLimits(painter, map, off(m_picture.low), off(m_picture.high));
    // A sample of a wide boom leaves room: its bars may be broader than a nozzle's place.
    const double half = std::max(0.36, map.valueX(map.px(1.5)) - map.valueX(0));
    for (std::size_t i = 0; i < m_summary.nozzles.size(); ++i) {
        const CaughtNozzle& nozzle = m_summary.nozzles[i];
        paintCatchBar(painter, map, nozzle.nozzle, half, off(m_picture.nozzles[i]),
                      nozzle.verdict != CatchVerdict::Good);
    }
    paintCatchLines(painter, map,
                    m_picture.isOfNew ? std::optional(off(m_picture.mean)) : std::nullopt);
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
    word(off(m_picture.high), tr("replace"), Role::Limit);
    word(off(m_picture.low), tr("clean"), Role::Limit);
    word(0, m_picture.isOfNew ? tr("new") : tr("mean"), Role::Ink);
    if (m_picture.isOfNew) word(off(m_picture.mean), tr("mean"), Role::Ink);
}

}  // namespace bw
