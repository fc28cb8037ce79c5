// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/duty_view.h"

#include <algorithm>

#include "ui/kit/hatch.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/curve_labels.h"
#include "ui/pages/speed_window/window_paint.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kTop = 110;  // %: room over a share of 100 for its band

/// The first limit of the pump's side that pins, in the reader's unit.
std::optional<double> pumpEnd(const WindowStudy& study) {
    std::optional<double> end;
    for (const auto& l : study.window().limits) {
        const bool isSupply =
            l.limit == Limit::Pump || l.limit == Limit::ReliefValve || l.limit == Limit::Suction;
        if (isSupply && (!end || study.x(l.speed) < *end)) end = study.x(l.speed);
    }
    return end;
}

}  // namespace

DutyView::DutyView(QWidget* parent) : ChartPanel(parent) {
    setRoom(kRoomLeft, kRoomTop, kRoomRight, kRoomBottom);
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void DutyView::setStudy(const WindowStudy* study, const QString& summary) {
    m_study = study && study->isPulsed() ? study : nullptr;
    ChartData data;
    data.name = tr("On-time share against speed");
    data.summary = summary;
    if (m_study) {
        const auto [least, most] = dutyRange(study->machine);
        m_least = 100.0 * least;
        m_most = 100.0 * most;
        data.decimalMark = study->style.decimalMark;
        data.x = {study->xFrom, study->xTo, study->speedTicks, {}, symbol(study->speedUnit()), -1};
        data.y = {0.0, kTop, {0, 20, 40, 60, 80, 100}, {}, u"%"_s, 0};
        for (std::size_t i = 0; i < study->nozzles.size(); ++i) {
            const auto& n = study->nozzles[i];
            if (n.model && i != study->inHand)
                data.curves.push_back(
                    {qs(n.nozzle.name), points(n), n.style, 1.5, {}, {}, {}, true});
        }
        data.curves.push_back({qs(study->hand().nozzle.name),
                               points(study->hand()),
                               1,
                               3.0,
                               {},
                               Role::Accent,
                               QList<double>(),
                               true});
    }
    setData(std::move(data));
    if (m_study) setCursorRange(std::max(study->xFrom, kCursorStep), study->xTo, kCursorStep);
}

double DutyView::shareAt(const StudiedNozzle& nozzle, Speed speed) const {
    return 100.0 * onTimeShare(*nozzle.model, nozzle.model->at(speed).boomFlow).value_or(0.0);
}

std::vector<QPointF> DutyView::points(const StudiedNozzle& nozzle) const {
    std::vector<QPointF> out;
    for (const auto& p : nozzle.curve)
        out.emplace_back(m_study->x(p.speed),
                         100.0 * onTimeShare(*nozzle.model, p.boomFlow).value_or(0.0));
    return out;
}

void DutyView::showCursor(Speed speed) {
    if (m_study) setCursor(m_study->x(speed), {shareAt(m_study->hand(), speed)});
}

void DutyView::paintUnder(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintLitWindow(painter, map, *m_study);
    const QColor line = map.color(Role::Limit), tint = map.color(Role::LimitTint);
    const QRectF low = map.rows(0.0, m_least);
    const QRectF high = map.rows(m_most, kTop);
    paintHatch(painter, low, Hatch::Rising, line, tint, map.px(8), map.px(1));
    paintHatch(painter, high, Hatch::Falling, line, tint, map.px(8), map.px(1));
    painter.setPen(QPen(line, map.px(1.4)));
    painter.drawLine(low.topLeft(), low.topRight());
    painter.drawLine(high.bottomLeft(), high.bottomRight());
    paintPumpEnd(painter, map);
}

void DutyView::paintPumpEnd(QPainter& painter, const ChartMap& map) const {
    const auto end = pumpEnd(*m_study);
    if (!end || *end >= m_study->xTo) return;
    const QRectF band = map.box(*end, m_study->xTo, m_least, m_most);
    paintHatch(painter, band, Hatch::Upright, map.color(Role::Limit), map.color(Role::LimitTint),
               map.px(8), map.px(1));
    painter.setPen(QPen(map.color(Role::Limit), map.px(1.4)));
    painter.drawLine(band.topLeft(), band.bottomLeft());
}

std::vector<QRectF> DutyView::paintPlates(QPainter& painter, const ChartMap& map) const {
    std::vector<QRectF> taken;
    const QRectF plot = map.plot();
    const NumberStyle& style = m_study->style;
    const auto plate = [&](QPointF at, Qt::Alignment side, const QString& text, Role ink) {
        taken.push_back(paintPlate(painter, map, at, side, text, ink, TextSize::Small, true));
    };
    const double left = plot.left() + map.px(6);
    plate({left, (map.y(m_least) + plot.bottom()) / 2}, Qt::AlignLeft | Qt::AlignVCenter,
          tr("Least on-time %1 %").arg(plainNumber(m_least, 0, style)), Role::Limit);
    plate({left, (map.y(m_most) + plot.top()) / 2}, Qt::AlignLeft | Qt::AlignVCenter,
          tr("Greatest on-time %1 %").arg(plainNumber(m_most, 0, style)), Role::Limit);
    plate({left, map.y(m_most) + map.px(6)}, Qt::AlignLeft | Qt::AlignTop,
          tr("Every nozzle at %1, whatever the speed")
              .arg(shown(m_study->machine.pulsed.pressure->value, style)),
          Role::Accent);
    const auto end = pumpEnd(*m_study);
    if (end && *end < m_study->xTo)
        plate({plot.right() - map.px(6), map.y(m_most) + map.px(6)}, Qt::AlignRight | Qt::AlignTop,
              tr("Pump gives no more"), Role::Limit);
    return taken;
}

void DutyView::paintOver(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    CurveLabels labels(map);
    for (const QRectF& box : paintPlates(painter, map)) labels.block(box);
    paintPosts(painter, map, *m_study);
    for (const QRectF& plate : paintChangeover(painter, map, *m_study, map.y(m_least) - map.px(4)))
        labels.block(plate);
    for (const double x : postsOf(*m_study))
        labels.block(
            QRectF(map.x(x) - map.px(3), map.plot().top(), map.px(6), map.plot().height()));
    for (const bool inHand : {true, false}) {
        for (std::size_t i = 0; i < m_study->nozzles.size(); ++i) {
            const auto& n = m_study->nozzles[i];
            if ((i == m_study->inHand) == inHand && n.model)
                labels.place(painter, points(n), curveName(map, n, inHand));
        }
    }
}

void DutyView::paintAround(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintAxisTitle(painter, map, tr("On-time share of the nozzles, %"));
    paintJobSpeeds(painter, map, *m_study);
}

}  // namespace bw
