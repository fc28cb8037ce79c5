// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/flow_picture.h"

#include <QPainter>

#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

void paintNeeded(QPainter& painter, const ChartMap& map, QPointF at) {
    const double r = map.px(5.5);
    const QPointF p = map.point(at);
    const QPolygonF diamond{
        {p.x(), p.y() - r}, {p.x() + r, p.y()}, {p.x(), p.y() + r}, {p.x() - r, p.y()}};
    painter.setPen(QPen(map.color(Role::Target), map.px(1.6)));
    painter.setBrush(map.color(Role::Raised));
    painter.drawPolygon(diamond);
    paintPlate(painter, map, p + QPointF(-r - map.px(2), -map.px(2)),
               Qt::AlignRight | Qt::AlignBottom, FlowPicture::tr("needed"), Role::Target,
               TextSize::Small, true);
}

void paintRead(QPainter& painter, const ChartMap& map, QPointF at, QPointF needed) {
    const QPointF p = map.point(at);
    painter.setPen(QPen(map.color(Role::Raised), map.px(1)));
    painter.setBrush(map.color(Role::Measured));
    painter.drawEllipse(p, map.px(4.5), map.px(4.5));
    // Beside the point, away from the needed one, whose word stands at its upper left.
    const bool isRight = p.x() >= map.point(needed).x();
    const bool hasRoom = isRight ? p.x() < map.plot().right() - map.px(34) : true;
    const double step = isRight && hasRoom ? map.px(7) : -map.px(7);
    paintPlate(painter, map, p + QPointF(step, map.px(4)),
               (step > 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop, FlowPicture::tr("read"),
               Role::Measured, TextSize::Small, true);
}

}  // namespace

FlowPicture::FlowPicture(QWidget* parent) : ChartPanel(parent) {
    setRoom(34, 20, 12, 22);
    setFixedHeight(px(142));
    setFocusPolicy(Qt::NoFocus);
}

bool FlowPicture::setView(const CaseView& view) {
    const CaseNumbers& n = view.numbers();
    const auto flowUnit = displayUnit(view.style().units, Dimension::Flow);
    const auto pressureUnit = displayUnit(view.style().units, Dimension::Pressure);
    const bool canDraw = n.boom && !n.sections.empty() && n.needFlow && n.needSensor;
    setVisible(canDraw);
    if (!canDraw) return false;
    const auto flowRead = n.shownFlow();
    const auto pressureRead = n.pressureRead();
    const Pressure seen = std::max(*n.needSensor, pressureRead.value_or(*n.needSensor));
    const Flow most =
        1.25 * std::max({*n.needFlow, flowRead.value_or(*n.needFlow), n.boom->boomFlow(seen)});
    ChartData data;
    ChartCurve curve;
    curve.name = tr("boom pressure over flow");
    constexpr int kPoints = 40;
    for (int i = 1; i <= kPoints; ++i) {
        const Flow flow = most * (static_cast<double>(i) / kPoints);
        curve.points.emplace_back(in(flow, flowUnit),
                                  in(n.boom->sensorPressure(flow), pressureUnit));
    }
    curve.width = 2.2;
    const double top = std::min(curve.points.back().y(), 1.7 * in(seen, pressureUnit));
    data.curves = {curve};
    data.x = {0, in(most, flowUnit), niceTicks(0, in(most, flowUnit), 4), {}, symbol(flowUnit)};
    data.y = {0,
              top,
              niceTicks(0, top, 4),
              tr("boom %1 over %2").arg(symbol(pressureUnit), symbol(flowUnit)),
              {}};
    data.decimalMark = view.style().decimalMark;
    data.name = tr("Flow against pressure");
    data.summary = tr("Needed: %1 at %2.")
                       .arg(shown(*n.needSensor, view.style()), shown(*n.needFlow, view.style()));
    if (flowRead && pressureRead)
        data.summary +=
            u' ' + tr("Read: %1 at %2.")
                       .arg(shown(*pressureRead, view.style()), shown(*flowRead, view.style()));
    setData(std::move(data));
    const QPointF needed(in(*n.needFlow, flowUnit), in(*n.needSensor, pressureUnit));
    std::optional<QPointF> read;
    if (flowRead && pressureRead)
        read = QPointF(in(*flowRead, flowUnit), in(*pressureRead, pressureUnit));
    setOverlay([needed, read](QPainter& painter, const ChartMap& map) {
        painter.setRenderHint(QPainter::Antialiasing);
        paintNeeded(painter, map, needed);
        if (read) paintRead(painter, map, *read, needed);
    });
    return true;
}

}  // namespace bw
