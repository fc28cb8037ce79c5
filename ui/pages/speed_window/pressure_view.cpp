// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/pressure_view.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/kit/chips.h"
#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/curve_labels.h"
#include "ui/pages/speed_window/window_paint.h"

namespace bw {

using namespace Qt::StringLiterals;

PressureView::PressureView(QWidget* parent) : ChartPanel(parent) {
    setRoom(kRoomLeft, kRoomTop, kRoomRight, kRoomBottom);
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void PressureView::setStudy(const WindowStudy* study, const QString& summary) {
    m_study = study;
    ChartData data;
    data.name = tr("Pressure at the boom sensor against speed");
    data.summary = summary;
    if (study) {
        data.decimalMark = study->style.decimalMark;
        data.x = {study->xFrom, study->xTo, study->speedTicks, {}, symbol(study->speedUnit()), -1};
        data.y = {0.0, study->pressureTo, {}, {}, symbol(study->pressureUnit()), -1};
        for (std::size_t i = 0; i < study->nozzles.size(); ++i) {
            if (study->nozzles[i].model && i != study->inHand)
                data.curves.push_back(curveOf(study->nozzles[i], false));
        }
        data.curves.push_back(curveOf(study->hand(), true));
    }
    setData(std::move(data));
    if (study) {
        setCursorRange(std::max(study->xFrom, kCursorStep), study->xTo, kCursorStep);
    }
}

ChartCurve PressureView::curveOf(const StudiedNozzle& nozzle, bool inHand) const {
    ChartCurve curve;
    curve.name = qs(nozzle.nozzle.name);
    curve.points = m_study->pressurePoints(nozzle);
    curve.style = inHand ? 1 : nozzle.style;
    if (inHand) {
        curve.role = Role::Accent;
        curve.dash = QList<double>();
        curve.width = 2.2;
        return curve;
    }
    // Markers on the rising part: those on the floor would lie on each other.
    const auto rises = [](const QPointF& a, const QPointF& b) { return b.y() > a.y() * 1.0001; };
    const auto start = std::adjacent_find(curve.points.begin(), curve.points.end(), rises);
    const auto first = start - curve.points.begin(), count = curve.points.end() - start;
    for (const double part : {0.25, 0.62}) {
        const auto i = first + static_cast<std::ptrdiff_t>(part * static_cast<double>(count));
        if (count > 1) curve.markers.push_back(curve.points[static_cast<std::size_t>(i)]);
    }
    return curve;
}

void PressureView::showCursor(Speed speed) {
    if (!m_study) return;
    const auto point = m_study->model().at(speed);
    setCursor(m_study->x(speed), {m_study->y(point.sensorPressure)});
}

void PressureView::paintUnder(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintLitWindow(painter, map, *m_study);
    paintRateBand(painter, map);
    paintPumpBand(painter, map);
    if (!m_study->isPulsed()) paintLimitBands(painter, map);
}

/// All that lies over what the pump can feed.
void PressureView::paintPumpBand(QPainter& painter, const ChartMap& map) const {
    const auto& fed = m_study->fed;
    if (fed.size() < 2) return;
    QPolygonF edge;
    for (const auto& p : fed) edge << map.point({p.x(), std::min(p.y(), m_study->pressureTo)});
    QPainterPath area;
    area.moveTo(edge.first().x(), map.plot().top());
    for (const auto& p : edge) area.lineTo(p);
    area.lineTo(edge.last().x(), map.plot().top());
    area.closeSubpath();
    painter.save();
    painter.setClipRect(map.plot());
    paintHatch(painter, area, Hatch::Upright, map.color(Role::Limit), map.color(Role::LimitTint),
               map.px(8), map.px(1));
    painter.setPen(QPen(map.color(Role::Limit), map.px(1.4)));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(edge);
    painter.restore();
}

void PressureView::paintLimitBands(QPainter& painter, const ChartMap& map) const {
    const auto& limits = m_study->machine.limits;
    const QColor line = map.color(Role::Limit), tint = map.color(Role::LimitTint);
    const QPen edge(line, map.px(1.4));
    if (limits.pressureFloor) {
        const QRectF band = map.rows(0.0, m_study->y(limits.pressureFloor->value));
        paintHatch(painter, band, Hatch::Rising, line, tint, map.px(8), map.px(1));
        painter.setPen(edge);
        painter.drawLine(band.topLeft(), band.topRight());
    }
    if (limits.pressureCeiling) {
        const QRectF band =
            map.rows(m_study->y(limits.pressureCeiling->value), m_study->pressureTo);
        paintHatch(painter, band, Hatch::Falling, line, tint, map.px(8), map.px(1));
        painter.setPen(edge);
        painter.drawLine(band.bottomLeft(), band.bottomRight());
    }
}

void PressureView::paintRateBand(QPainter& painter, const ChartMap& map) const {
    const auto& band = m_study->rates;
    if (band.empty()) return;
    QPolygonF outline;
    for (const auto& p : band) outline << map.point({m_study->x(p.speed), m_study->y(p.atLeast)});
    for (auto p = band.rbegin(); p != band.rend(); ++p)
        outline << map.point({m_study->x(p->speed), m_study->y(p->atMost)});
    QColor fill = map.color(Role::Accent);
    fill.setAlphaF(0.16F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawPolygon(outline);
}

void PressureView::paintOver(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    auto taken = paintPlates(painter, map);
    paintPosts(painter, map, *m_study);
    const double floor = m_study->machine.limits.pressureFloor && !m_study->isPulsed()
                             ? map.y(m_study->y(m_study->machine.limits.pressureFloor->value))
                             : map.plot().bottom();
    for (const QRectF& plate : paintChangeover(painter, map, *m_study, floor - map.px(4)))
        taken.push_back(plate);
    for (const QRectF& chip : paintInHand(painter, map)) taken.push_back(chip);
    paintNames(painter, map, taken);
}

std::vector<QRectF> PressureView::paintPlates(QPainter& painter, const ChartMap& map) const {
    std::vector<QRectF> taken;
    const QRectF plot = map.plot();
    const auto plate = [&](double y, Qt::Alignment side, const QString& text, Role ink) {
        taken.push_back(paintPlate(painter, map, {plot.left() + map.px(6), y}, Qt::AlignLeft | side,
                                   text, ink, TextSize::Small, true));
    };
    if (m_study->isPulsed()) {
        plate(plot.top() + map.px(4), Qt::AlignTop,
              tr("Pulsed: pressure does not follow speed, the on-time share does"), Role::Accent);
        return taken;
    }
    const auto& limits = m_study->machine.limits;
    if (limits.pressureFloor) {
        const double floor = map.y(m_study->y(limits.pressureFloor->value));
        plate((floor + plot.bottom()) / 2, Qt::AlignVCenter,
              tr("Floor %1").arg(shown(limits.pressureFloor->value, m_study->style)), Role::Limit);
    } else {
        plate(plot.bottom() - map.px(4), Qt::AlignBottom, tr("Floor not checked"), Role::Unchecked);
    }
    if (limits.pressureCeiling) {
        const double ceiling = map.y(m_study->y(limits.pressureCeiling->value));
        plate((ceiling + plot.top()) / 2, Qt::AlignVCenter,
              tr("Ceiling %1").arg(shown(limits.pressureCeiling->value, m_study->style)),
              Role::Limit);
    } else {
        plate(plot.top() + map.px(4), Qt::AlignTop, tr("Ceiling not checked"), Role::Unchecked);
    }
    const auto& fed = m_study->fed;
    const double under =
        limits.pressureCeiling ? m_study->y(limits.pressureCeiling->value) : m_study->pressureTo;
    if (!fed.empty() && fed.back().y() < 0.97 * under)
        taken.push_back(paintPlate(painter, map,
                                   {plot.right() - map.px(6), map.y(under) + map.px(5)},
                                   Qt::AlignRight | Qt::AlignTop, tr("Pump gives no more"),
                                   Role::Limit, TextSize::Small, true));
    return taken;
}

std::vector<QRectF> PressureView::paintInHand(QPainter& painter, const ChartMap& map) const {
    std::vector<QRectF> chips;
    for (const auto& s : m_study->ribbon)
        paintRibbon(painter, map, s.points, dropletColor(s.category), 8.0);
    for (const auto& s : m_study->ribbon) {
        const QPointF from = map.point(s.points.front()), to = map.point(s.points.back());
        const QSizeF size = dropletChipSize(s.category);
        if (QLineF(from, to).length() < 1.3 * size.width()) continue;
        const QPointF at = map.point(s.points[s.points.size() / 2]);
        const QRectF box(at - QPointF(size.width() / 2, size.height() / 2), size);
        paintDropletChip(painter, box, s.category, map.color(Role::Ink));
        chips.push_back(box);
    }
    return chips;
}

void PressureView::paintNames(QPainter& painter, const ChartMap& map,
                              const std::vector<QRectF>& taken) const {
    CurveLabels labels(map);
    for (const auto& box : taken) labels.block(box);
    for (const double x : postsOf(*m_study))
        labels.block(
            QRectF(map.x(x) - map.px(3), map.plot().top(), map.px(6), map.plot().height()));
    // The curve in hand keeps its own ground free of other names.
    const auto own = m_study->pressurePoints(m_study->hand());
    for (std::size_t i = 0; i < own.size(); i += 6) {
        const QPointF at = map.point(own[i]);
        labels.block(QRectF(at - QPointF(map.px(6), map.px(6)), QSizeF(map.px(12), map.px(12))));
    }
    for (const bool inHand : {true, false}) {
        for (std::size_t i = 0; i < m_study->nozzles.size(); ++i) {
            const auto& n = m_study->nozzles[i];
            if ((i == m_study->inHand) != inHand || !n.model) continue;
            labels.place(painter, m_study->pressurePoints(n), curveName(map, n, inHand));
        }
    }
}

void PressureView::paintAround(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintAxisTitle(painter, map,
                   tr("Pressure at the boom sensor, %1").arg(symbol(m_study->pressureUnit())));
    paintJobSpeeds(painter, map, *m_study);
    paintDropletScale(painter, map);
}

void PressureView::paintDropletScale(QPainter& painter, const ChartMap& map) const {
    const auto& stretches = m_study->droplets;
    if (stretches.empty()) return;
    const QRectF plot = map.plot();
    const double left = plot.right() + map.px(14);
    painter.setFont(map.font(TextSize::Small));
    painter.setPen(map.color(Role::Quiet));
    painter.drawText(
        QRectF(plot.right(), plot.top() - map.px(kRoomTop), map.px(kRoomRight), map.px(16)),
        Qt::AlignCenter, tr("drops"));
    for (const auto& s : stretches) {
        const double top = std::max(plot.top(), map.y(m_study->y(s.sensorTo)));
        const double bottom = std::min(plot.bottom(), map.y(m_study->y(s.sensorFrom)));
        if (bottom - top < map.px(2)) continue;
        const QRectF box(left, top, map.px(20), bottom - top);
        const QColor fill = dropletColor(s.category);
        painter.setPen(QPen(map.color(Role::Ink), map.px(1.3)));
        painter.setBrush(fill);
        painter.drawRect(box);
        if (box.height() < map.px(12)) continue;
        painter.setFont(map.font(TextSize::Small, true));
        painter.setPen(inkOn(fill));
        painter.drawText(box, Qt::AlignCenter, letters(s.category));
    }
}

}  // namespace bw
