// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/point_chart.h"

#include <QAbstractScrollArea>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/kit/chips.h"
#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/cause_effect/run.h"
#include "ui/pages/cause_effect/strip_chart.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kPoints = 97;
constexpr double kWay = 6.0;  ///< s of the way that is drawn
constexpr double kRoomAhead = 1.2;

}  // namespace

PointChart::PointChart(QWidget* parent) : ChartPanel(parent) {
    setRoom(42, 30, 16, 22);
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

QPointF PointChart::valueOf(double speedSi, double pressureSi) const {
    return {speedSi * m_perSpeed, pressureSi * m_perPressure};
}

void PointChart::showSetup(const Run& run, const std::vector<DropletStretch>& droplets,
                           const NumberStyle& style, double top) {
    m_style = style;
    const Unit speed = displayUnit(style.units, Dimension::Speed);
    const Unit pressure = displayUnit(style.units, Dimension::Pressure);
    m_perSpeed = in(Speed::fromSi(1.0), speed);
    m_perPressure = in(Pressure::fromSi(1.0), pressure);
    const LoopSetup& setup = run.loop().setup();
    m_slow = in(run.demand().slow, speed);
    m_fast = in(run.demand().fast, speed);
    const double most = kRoomAhead * std::max(m_fast, in(run.levers().speed, speed));
    ChartData data;
    data.name = tr("Pressure at the boom sensor against speed");
    data.decimalMark = style.decimalMark;
    data.x = {0.0, niceRange(0.0, most, 6).second, {}, {}, symbol(speed), -1};
    data.x.ticks = niceTicks(0.0, 0.92 * data.x.to, 5);
    data.y = {0.0, top, niceTicks(0.0, top, 5), {}, {}, -1};
    const auto curve = needCurve(setup, Speed::fromSi(0.005 * most / m_perSpeed),
                                 Speed::fromSi(data.x.to / m_perSpeed), kPoints);
    ChartCurve need;
    need.name = tr("what the target needs");
    need.role = Role::Accent;
    need.dash = QList<double>();
    need.width = 2.2;
    m_fed.clear();
    for (const auto& p : curve) {
        const QPointF at = valueOf(p.speed.si(), p.needed.si());
        if (at.y() <= 1.05 * top) need.points.push_back(at);
        if (p.fed) m_fed.push_back(valueOf(p.speed.si(), p.fed->si()));
    }
    data.curves.push_back(std::move(need));
    splitIntoRibbons(curve, droplets);
    const auto limit = [&](const std::optional<Pressure>& p) {
        return p ? std::optional(in(*p, pressure)) : std::nullopt;
    };
    m_floor = limit(setup.floor);
    m_ceiling = limit(setup.ceiling);
    setData(std::move(data));
    showPoint(run);
}

void PointChart::splitIntoRibbons(const std::vector<NeedPoint>& curve,
                                  const std::vector<DropletStretch>& droplets) {
    m_ribbons.clear();
    for (const auto& stretch : droplets) {
        Ribbon ribbon{stretch.category, {}};
        for (const auto& p : curve) {
            if (p.needed >= stretch.sensorFrom && p.needed <= stretch.sensorTo)
                ribbon.points.push_back(valueOf(p.speed.si(), p.needed.si()));
        }
        if (ribbon.points.size() > 1) m_ribbons.push_back(std::move(ribbon));
    }
}

void PointChart::showPoint(const Run& run) {
    m_way.clear();
    const TraceRing& trace = run.trace();
    if (trace.empty()) return;
    const double from = trace.newest().time - kWay;
    constexpr std::size_t kEvery = 5;
    for (std::size_t i = trace.firstFrom(Duration::fromSi(from)); i < trace.size(); i += kEvery)
        m_way.push_back(valueOf(trace.at(i).speed, trace.at(i).sensor));
    m_now = valueOf(trace.newest().speed, trace.newest().sensor);
    m_other.reset();
    if (!run.otherTrace().empty()) {
        const TracePoint& other = run.otherTrace().newest();
        m_other = valueOf(other.speed, other.sensor);
    }
    findChild<QAbstractScrollArea*>()->viewport()->update();
}

void PointChart::paintUnder(QPainter& painter, const ChartMap& map) const {
    if (m_fast > m_slow) painter.fillRect(map.columns(m_slow, m_fast), map.color(Role::AccentTint));
    paintPumpBand(painter, map);
    paintLimits(painter, map, m_floor, m_ceiling, data().y.to);
}

/// All that lies over what the pump can feed.
void PointChart::paintPumpBand(QPainter& painter, const ChartMap& map) const {
    if (m_fed.size() < 2) return;
    QPolygonF edge;
    for (const auto& p : m_fed) edge << map.point({p.x(), std::min(p.y(), data().y.to)});
    QPainterPath area;
    area.moveTo(edge.first().x(), map.plot().top());
    for (const auto& p : edge) area.lineTo(p);
    area.lineTo(edge.last().x(), map.plot().top());
    area.closeSubpath();
    paintHatch(painter, area, Hatch::Upright, map.color(Role::Limit), map.color(Role::LimitTint),
               map.px(8), map.px(1));
    painter.setPen(QPen(map.color(Role::Limit), map.px(1.4)));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(edge);
}

void PointChart::paintOver(QPainter& painter, const ChartMap& map) const {
    for (const auto& r : m_ribbons) paintRibbon(painter, map, r.points, dropletColor(r.category));
    for (const auto& r : m_ribbons) {
        const QPointF from = map.point(r.points.front()), to = map.point(r.points.back());
        const QSizeF size = dropletChipSize(r.category);
        if (QLineF(from, to).length() < 1.6 * size.width()) continue;
        const QPointF at = map.point(r.points[r.points.size() / 2]);
        paintDropletChip(painter, QRectF(at - QPointF(size.width() / 2, size.height() / 2), size),
                         r.category, map.color(Role::Ink));
    }
    QPolygonF way;
    for (const QPointF& p : m_way) way << map.point(p);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(map.color(Role::Focus), map.px(1.6)));
    painter.drawPolyline(way);
    const auto ring = [&](QPointF value, Role role, double size) {
        painter.setPen(QPen(map.color(role), map.px(2.6)));
        painter.setBrush(map.color(Role::Raised));
        painter.drawEllipse(map.point(value), map.px(size), map.px(size));
    };
    if (m_other) ring(*m_other, Role::Measured, 5);
    if (m_now) ring(*m_now, Role::Focus, 6.5);
}

void PointChart::paintAround(QPainter& painter, const ChartMap& map) const {
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    const QString words = tr("Pressure against speed: the line is what the target needs");
    painter.drawText(QPointF(map.px(2), map.plot().top() - map.px(14)),
                     painter.fontMetrics().elidedText(words, Qt::ElideRight,
                                                      static_cast<int>(map.plot().right())));
}

}  // namespace bw
