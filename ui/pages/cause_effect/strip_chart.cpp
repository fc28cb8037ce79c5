// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/strip_chart.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kRoomLeft = 42, kRoomTop = 30, kRoomRight = 16, kRoomBottom = 22;

}  // namespace

void paintLimits(QPainter& painter, const ChartMap& map, std::optional<double> floor,
                 std::optional<double> ceiling, double top) {
    const QColor line = map.color(Role::Limit), tint = map.color(Role::LimitTint);
    const QPen edge(line, map.px(1.4));
    if (floor) {
        const QRectF band = map.rows(0.0, *floor);
        paintHatch(painter, band, Hatch::Rising, line, tint, map.px(8), map.px(1));
        painter.setPen(edge);
        painter.drawLine(band.topLeft(), band.topRight());
    }
    if (ceiling && *ceiling < top) {
        const QRectF band = map.rows(*ceiling, top);
        paintHatch(painter, band, Hatch::Falling, line, tint, map.px(8), map.px(1));
        painter.setPen(edge);
        painter.drawLine(band.bottomLeft(), band.bottomRight());
    }
}

StripChart::StripChart(QWidget* parent) : ChartPanel(parent) {
    setRoom(kRoomLeft, kRoomTop, kRoomRight, kRoomBottom);
}

void StripChart::placeTime(ChartData& data, const StripFrame& frame) {
    const TraceRing& trace = frame.run->trace();
    const double now = trace.empty() ? 0.0 : trace.newest().time;
    // A little room ahead, so that the dots at the end stay whole.
    const double ahead = 0.02 * frame.window;
    const double first = Run::kLead - Run::kLeadShown;
    const double to = std::max(first + frame.window, now + ahead);
    m_from = to - frame.window;
    data.x = {m_from, to, {}, {}, u"s"_s, 0};
    data.x.ticks = niceTicks(m_from, to - 0.06 * frame.window, 6);
    m_marks = frame.run->marks();
}

double StripChart::slice(const StripFrame& frame) const {
    const double columns = std::max(100.0, map().plot().width());
    return std::max(RateLoop::kStep, 1.5 * frame.window / columns);
}

double StripChart::unseen() const {
    return (data().y.to - data().y.from) / (3.0 * std::max(50.0, map().plot().height()));
}

void StripChart::paintPosts(QPainter& painter, const ChartMap& map) const {
    const QRectF plot = map.plot();
    QPen pen(map.color(Role::Ink), map.px(1.3), Qt::CustomDashLine, Qt::FlatCap);
    pen.setDashPattern({4, 3});
    double free = plot.left();
    for (const RunMark& mark : m_marks) {
        const double x = map.x(mark.time.si());
        if (x <= plot.left() || x >= plot.right()) continue;
        painter.setPen(pen);
        painter.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
        const QString text = qs(mark.text);
        const double width =
            QFontMetricsF(map.font(TextSize::Small)).horizontalAdvance(text) + map.px(11);
        const bool fitsRight = x + width < plot.right();
        const double left = fitsRight ? x : x - width;
        if (text.isEmpty() || left < free) continue;
        paintPlate(painter, map, {x + map.px(fitsRight ? 3 : -3), plot.top() + map.px(3)},
                   (fitsRight ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop, text);
        free = left + width;
    }
}

void StripChart::paintDot(QPainter& painter, const ChartMap& map, QPointF value, Role role,
                          double size) {
    if (!std::isfinite(value.x()) || !std::isfinite(value.y())) return;
    painter.setPen(QPen(map.color(Role::Raised), map.px(1.6)));
    painter.setBrush(map.color(role));
    painter.drawEllipse(map.point(value), map.px(size), map.px(size));
}

void StripChart::paintKeys(QPainter& painter, const ChartMap& map, const std::vector<Key>& keys) {
    painter.setFont(map.font(TextSize::Small));
    const QFontMetricsF metrics(painter.font());
    double right = map.plot().right();
    const double y = map.plot().top() - map.px(18);
    for (auto key = keys.rbegin(); key != keys.rend(); ++key) {
        const double width = metrics.horizontalAdvance(key->name);
        painter.setPen(map.color(Role::Ink));
        painter.drawText(QPointF(right - width, y + metrics.ascent() / 2 - map.px(1)), key->name);
        right -= width + map.px(5);
        QPen pen(map.color(key->role), map.px(key->width), Qt::SolidLine, Qt::FlatCap);
        if (key->isDashed) pen.setDashPattern({8 / key->width, 4 / key->width});
        painter.setPen(pen);
        painter.drawLine(QPointF(right - map.px(24), y), QPointF(right, y));
        right -= map.px(24 + 14);
    }
}

RateStrip::RateStrip(QWidget* parent) : StripChart(parent) {
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void RateStrip::showFrame(const StripFrame& frame) {
    const Run& run = *frame.run;
    const Unit unit = displayUnit(frame.style.units, Dimension::AreaRate);
    const double perUnit = in(AreaRate::fromSi(1.0), unit);
    ChartData data;
    data.name = tr("Rate over time");
    data.decimalMark = frame.style.decimalMark;
    placeTime(data, frame);
    const double slices = slice(frame);
    const auto curve = [&](const TraceRing& trace, const QString& name, Role role, double width,
                           TraceFigure figure, bool hasGaps) {
        ChartCurve out;
        out.name = name;
        out.points =
            withoutFlats(stripPoints(trace, from(), slices, perUnit, figure, hasGaps), unseen());
        out.role = role;
        out.width = width;
        out.dash = QList<double>();
        return out;
    };
    const auto shown = [](const TracePoint& p) { return p.shown; };
    const auto real = [](const TracePoint& p) { return p.real; };
    data.curves.push_back(curve(
        run.trace(), tr("target"), Role::Target, 1.8, [](const TracePoint& p) { return p.target; },
        false));
    data.curves.back().dash = QList<double>{8, 5};
    m_hasOther = run.isComparing();
    if (m_hasOther) {
        data.curves.push_back(curve(run.otherTrace(), tr("second run, on the ground"),
                                    Role::Measured, 2.4, real, true));
        data.curves.back().dash = QList<double>{3, 3};
        data.curves.push_back(
            curve(run.otherTrace(), tr("second run, display"), Role::Measured, 1.0, shown, true));
    }
    data.curves.push_back(curve(run.trace(), tr("on the ground"), Role::Ok, 3.2, real, true));
    data.curves.push_back(curve(run.trace(), tr("display"), Role::Ink, 1.3, shown, true));
    m_unit = symbol(unit);
    m_target = in(run.levers().target, unit);
    m_targetText = tr("target %1").arg(figure(run.levers().target, frame.style));
    m_shown.reset();
    m_real.reset();
    if (!run.trace().empty() && run.trace().newest().isSpraying) {
        const TracePoint& now = run.trace().newest();
        m_shown = QPointF(now.time, now.shown * perUnit);
        m_real = QPointF(now.time, now.real * perUnit);
    }
    placeRate(data, m_target);
    setData(std::move(data));
}

/// Holds all that is drawn with room about it; keeps still until that no longer fits, or takes less
/// than half.
void RateStrip::placeRate(ChartData& data, double target) {
    double low = 0.85 * target, high = 1.15 * target;
    for (const auto& curve : data.curves) {
        for (const QPointF& p : curve.points) {
            if (!std::isfinite(p.x())) continue;
            low = std::min(low, p.y());
            high = std::max(high, p.y());
        }
    }
    high = std::min(high, 4 * target);
    const bool fits = low >= m_low && high <= m_high && m_high - m_low < 2.4 * (high - low);
    if (!fits) {
        const double room = 0.08 * (high - low);
        std::tie(m_low, m_high) = niceRange(std::max(0.0, low - room), high + room, 5);
    }
    data.y = {m_low, m_high, niceTicks(m_low, m_high, 5), {}, {}, -1};
}

void RateStrip::paintOver(QPainter& painter, const ChartMap& map) const {
    paintPosts(painter, map);
    if (m_real) paintDot(painter, map, *m_real, Role::Ok, 5.5);
    if (m_shown) paintDot(painter, map, *m_shown, Role::Ink, 3.8);
}

void RateStrip::paintAround(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    painter.drawText(QPointF(map.px(2), map.plot().top() - map.px(14)), tr("Rate, %1").arg(m_unit));
    std::vector<Key> keys{{m_targetText, Role::Target, 1.8, true},
                          {tr("on the ground"), Role::Ok, 3.2, false},
                          {tr("display"), Role::Ink, 1.3, false}};
    if (m_hasOther) keys.insert(keys.begin(), {tr("second run"), Role::Measured, 2.4, true});
    paintKeys(painter, map, keys);
}

PressureStrip::PressureStrip(QWidget* parent) : StripChart(parent) {
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void PressureStrip::showFrame(const StripFrame& frame, double top) {
    const Run& run = *frame.run;
    const LoopSetup& setup = run.loop().setup();
    const Unit unit = displayUnit(frame.style.units, Dimension::Pressure);
    const double perUnit = in(Pressure::fromSi(1.0), unit);
    ChartData data;
    data.name = tr("Pressure at the boom sensor over time");
    data.decimalMark = frame.style.decimalMark;
    placeTime(data, frame);
    data.x.ticks = niceTicks(data.x.from, data.x.to - 0.1 * frame.window, 4);
    data.y = {0.0, top, niceTicks(0.0, top, 5), {}, {}, -1};
    const double slices = slice(frame);
    const auto curve = [&](const QString& name, Role role, double width, TraceFigure figure) {
        ChartCurve out;
        out.name = name;
        out.points = withoutFlats(stripPoints(run.trace(), from(), slices, perUnit, figure, false),
                                  unseen());
        out.role = role;
        out.width = width;
        out.dash = QList<double>();
        data.curves.push_back(std::move(out));
    };
    curve(tr("true pressure"), Role::Accent, 3.0, [](const TracePoint& p) { return p.sensor; });
    m_readsFalse = setup.meter.sensorScale != 1.0;
    if (m_readsFalse)
        curve(tr("shown pressure"), Role::Ink, 1.3, [](const TracePoint& p) { return p.reading; });
    m_unit = symbol(unit);
    const auto limit = [&](const std::optional<Pressure>& p) {
        return p ? std::optional(in(*p, unit)) : std::nullopt;
    };
    m_floor = limit(setup.floor);
    m_ceiling = limit(setup.ceiling);
    m_floorText = setup.floor ? tr("Floor %1").arg(shown(*setup.floor, frame.style)) : QString();
    m_ceilingText =
        setup.ceiling ? tr("Ceiling %1").arg(shown(*setup.ceiling, frame.style)) : QString();
    m_now.reset();
    if (!run.trace().empty())
        m_now = QPointF(run.trace().newest().time, run.trace().newest().sensor * perUnit);
    setData(std::move(data));
}

void PressureStrip::paintUnder(QPainter& painter, const ChartMap& map) const {
    paintLimits(painter, map, m_floor, m_ceiling, data().y.to);
}

void PressureStrip::paintOver(QPainter& painter, const ChartMap& map) const {
    const double left = map.plot().left() + map.px(6);
    if (m_floor)
        paintPlate(painter, map, {left, (map.y(*m_floor) + map.plot().bottom()) / 2},
                   Qt::AlignLeft | Qt::AlignVCenter, m_floorText, Role::Limit, TextSize::Small,
                   true);
    if (m_ceiling && *m_ceiling < data().y.to)
        paintPlate(painter, map, {left, (map.y(*m_ceiling) + map.plot().top()) / 2},
                   Qt::AlignLeft | Qt::AlignVCenter, m_ceilingText, Role::Limit, TextSize::Small,
                   true);
    if (m_now) paintDot(painter, map, *m_now, Role::Accent, 5.0);
}

void PressureStrip::paintAround(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    painter.drawText(QPointF(map.px(2), map.plot().top() - map.px(14)),
                     tr("Pressure at the boom sensor, %1").arg(m_unit));
    if (m_readsFalse)
        paintKeys(painter, map,
                  {{tr("true"), Role::Accent, 3.0, false}, {tr("shown"), Role::Ink, 1.3, false}});
}

}  // namespace bw
