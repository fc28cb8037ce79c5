// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/nozzles/nozzle_curve.h"

#include <QPainter>
#include <algorithm>

#include "core/hydraulics/nozzle_law.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/chips.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kPoints = 60;

Pressure chartTop(const Nozzle& nozzle, const NozzleLaw& law) {
    Pressure top = 2.0 * law.pRef();
    if (nozzle.pressureMax) top = 1.15 * nozzle.pressureMax->value;
    if (nozzle.droplets && !nozzle.droplets->value.empty())
        top = std::max(top, 1.05 * nozzle.droplets->value.back().to);
    return top;
}

std::vector<QPointF> curvePoints(const NozzleLaw& law, Pressure from, Pressure to,
                                 const NumberStyle& style) {
    const Unit pressure = displayUnit(style.units, Dimension::Pressure);
    const Unit flow = displayUnit(style.units, Dimension::Flow);
    std::vector<QPointF> out;
    for (int i = 0; i <= kPoints; ++i) {
        const Pressure p = from + (static_cast<double>(i) / kPoints) * (to - from);
        out.emplace_back(in(p, pressure), in(law.flow(p), flow));
    }
    return out;
}

void paintBands(QPainter& painter, const ChartMap& map, const Nozzle& nozzle, const NozzleLaw& law,
                const NumberStyle& style) {
    if (!nozzle.droplets) return;
    for (const auto& band : nozzle.droplets->value) {
        const auto points = curvePoints(law, band.from, band.to, style);
        paintRibbon(painter, map, points, dropletColor(band.category));
        paintDropletChip(painter, map.point(points[points.size() / 2]), band.category);
    }
}

void paintRange(QPainter& painter, const ChartMap& map, const Nozzle& nozzle,
                const NumberStyle& style) {
    const Unit unit = displayUnit(style.units, Dimension::Pressure);
    painter.setPen(QPen(map.color(Role::Ink), map.px(2)));
    for (const auto& end : {nozzle.pressureMin, nozzle.pressureMax}) {
        if (!end) continue;
        const double x = map.x(in(end->value, unit));
        painter.drawLine(QPointF(x, map.plot().top()), QPointF(x, map.plot().bottom()));
    }
}

}  // namespace

void drawNozzleCurve(ChartPanel& chart, const Nozzle& nozzle, const NumberStyle& style) {
    const auto law = nozzleLaw(nozzle);
    ChartData data;
    data.decimalMark = style.decimalMark;
    data.name = QObject::tr("Flow against pressure");
    data.y.title = QObject::tr("Flow of one nozzle, %1").arg(unitOf<Flow>(style));
    data.x.unit = unitOf<Pressure>(style);
    if (!law) {
        data.summary = QObject::tr("No flow is known.");
        chart.setUnderlay({});
        chart.setOverlay({});
        chart.setData(data);
        return;
    }
    const auto points = curvePoints(*law, Pressure{}, chartTop(nozzle, *law), style);
    const auto [xFrom, xTo] = niceRange(0, points.back().x());
    const auto [yFrom, yTo] = niceRange(0, points.back().y(), 5);
    data.x.from = xFrom, data.x.to = xTo, data.x.ticks = niceTicks(xFrom, xTo);
    data.y.from = yFrom, data.y.to = yTo, data.y.ticks = niceTicks(yFrom, yTo, 5);
    ChartCurve curve;
    curve.name = qs(nozzle.name);
    curve.points = points;
    data.curves.push_back(curve);
    data.summary = QObject::tr("%1 gives %2 at %3.")
                       .arg(curve.name, shown(law->qRef(), style), shown(law->pRef(), style));
    chart.setUnderlay([nozzle, style](QPainter& painter, const ChartMap& map) {
        paintRange(painter, map, nozzle, style);
    });
    chart.setOverlay([nozzle, law = *law, style](QPainter& painter, const ChartMap& map) {
        paintBands(painter, map, nozzle, law, style);
    });
    chart.setData(data);
}

}  // namespace bw
