// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/rate_view.h"

#include <algorithm>
#include <cmath>

#include "ui/kit/quantity_format.h"
#include "ui/pages/speed_window/curve_labels.h"
#include "ui/pages/speed_window/window_paint.h"

namespace bw {

using namespace Qt::StringLiterals;

RateView::RateView(QWidget* parent) : ChartPanel(parent) {
    setRoom(kRoomLeft, kRoomTop, kRoomRight, kRoomBottom);
    setUnderlay([this](QPainter& p, const ChartMap& map) { paintUnder(p, map); });
    setOverlay([this](QPainter& p, const ChartMap& map) { paintOver(p, map); });
    setFrame([this](QPainter& p, const ChartMap& map) { paintAround(p, map); });
}

void RateView::setStudy(const WindowStudy* study, const QString& summary) {
    m_study = study;
    ChartData data;
    data.name = tr("Rate against speed");
    data.summary = summary;
    if (study) {
        data.decimalMark = study->style.decimalMark;
        data.x = {study->xFrom, study->xTo, study->speedTicks, {}, symbol(study->speedUnit()), -1};
        data.y = {0.0, study->rateTo, {}, {}, symbol(study->rateUnit()), -1};
        for (std::size_t i = 0; i < study->nozzles.size(); ++i) {
            const auto& n = study->nozzles[i];
            if (!n.model || i == study->inHand) continue;
            data.curves.push_back(
                {qs(n.nozzle.name), study->ratePoints(n), n.style, 1.5, {}, {}, {}, true});
        }
        const double target = study->rate(study->model().demand().rate);
        data.curves.push_back({tr("Target"),
                               {{study->xFrom, target}, {study->xTo, target}},
                               1,
                               1.6,
                               {},
                               Role::Target,
                               QList<double>{8, 5},
                               true});
        data.curves.push_back({qs(study->hand().nozzle.name),
                               study->ratePoints(study->hand()),
                               1,
                               3.0,
                               {},
                               Role::Accent,
                               QList<double>(),
                               true});
    }
    setData(std::move(data));
    if (study) setCursorRange(std::max(study->xFrom, kCursorStep), study->xTo, kCursorStep);
}

void RateView::showCursor(Speed speed) {
    if (!m_study) return;
    setCursor(m_study->x(speed), {m_study->rate(m_study->model().at(speed).rate)});
}

void RateView::paintUnder(QPainter& painter, const ChartMap& map) const {
    if (m_study) paintLitWindow(painter, map, *m_study);
}

void RateView::paintOver(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintPosts(painter, map, *m_study);
    const JobDemand& d = m_study->model().demand();
    const double target = map.y(m_study->rate(d.rate));
    CurveLabels labels(map);
    for (const QRectF& plate :
         paintChangeover(painter, map, *m_study, map.plot().bottom() - map.px(4)))
        labels.block(plate);
    labels.block(paintPlate(painter, map, {map.plot().left() + map.px(6), target + map.px(4)},
                            Qt::AlignLeft | Qt::AlignTop,
                            tr("Target %1").arg(shown(d.rate, m_study->style)), Role::Target,
                            TextSize::Small, true));
    if (d.rateLeast < d.rateMost) {
        for (const AreaRate rate : {d.rateLeast, d.rateMost}) {
            const double y = map.y(m_study->rate(rate));
            QPen pen(map.color(Role::Target), map.px(1), Qt::DotLine);
            painter.setPen(pen);
            painter.drawLine(QPointF(map.plot().left(), y), QPointF(map.plot().right(), y));
        }
    }
    const QRectF plot = map.plot();
    labels.block(paintPlate(painter, map, {plot.right() - map.px(6), plot.top() + map.px(6)},
                            Qt::AlignRight | Qt::AlignTop,
                            tr("above the target: more product on the same ground"), Role::Quiet));
    labels.block(paintPlate(painter, map, {plot.right() - map.px(6), plot.bottom() - map.px(26)},
                            Qt::AlignRight | Qt::AlignBottom, tr("below it: less"), Role::Quiet));
    labels.block(QRectF(plot.left(), target - map.px(3), plot.width(), map.px(6)));
    const auto own = m_study->ratePoints(m_study->hand());
    for (std::size_t i = 0; i < own.size(); i += 6) {
        const QPointF at = map.point(own[i]);
        labels.block(QRectF(at - QPointF(map.px(5), map.px(5)), QSizeF(map.px(10), map.px(10))));
    }
    for (const double x : postsOf(*m_study))
        labels.block(QRectF(map.x(x) - map.px(3), plot.top(), map.px(6), plot.height()));
    for (const bool inHand : {true, false}) {
        for (std::size_t i = 0; i < m_study->nozzles.size(); ++i) {
            if ((i == m_study->inHand) == inHand && m_study->nozzles[i].model)
                labels.place(painter, offTarget(m_study->nozzles[i]),
                             curveName(map, m_study->nozzles[i], inHand));
        }
    }
}

/// Where the curve leaves the target, nearest to the window first on both branches.
std::vector<QPointF> RateView::offTarget(const StudiedNozzle& nozzle) const {
    const double target = m_study->rate(m_study->model().demand().rate);
    std::vector<QPointF> out;
    for (const QPointF& p : m_study->ratePoints(nozzle)) {
        const bool isOff = std::abs(p.y() - target) > 0.01 * target;
        if (isOff && p.y() < m_study->rateTo) out.push_back(p);
    }
    return out;
}

void RateView::paintAround(QPainter& painter, const ChartMap& map) const {
    if (!m_study) return;
    paintAxisTitle(painter, map, tr("Rate on the ground, %1").arg(symbol(m_study->rateUnit())));
    paintJobSpeeds(painter, map, *m_study);
}

}  // namespace bw
