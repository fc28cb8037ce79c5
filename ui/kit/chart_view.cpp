// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <cmath>

#include "ui/kit/chart_panel.h"
#include "ui/kit/metrics.h"

namespace bw {

std::vector<std::vector<QPointF>> finiteRuns(const std::vector<QPointF>& points) {
    std::vector<std::vector<QPointF>> runs(1);
    for (const QPointF& p : points) {
        if (std::isfinite(p.x()) && std::isfinite(p.y()))
            runs.back().push_back(p);
        else if (!runs.back().empty())
            runs.emplace_back();
    }
    if (runs.back().empty()) runs.pop_back();
    return runs;
}

std::vector<QPointF> thinned(const std::vector<QPointF>& points, double xFrom, double xTo,
                             int columns) {
    if (columns < 1 || points.size() <= static_cast<std::size_t>(columns) * 4 || !(xTo > xFrom))
        return points;
    std::vector<QPointF> out;
    const auto columnOf = [&](double x) {
        return static_cast<long>(std::floor((x - xFrom) / (xTo - xFrom) * columns));
    };
    std::size_t i = 0;
    while (i < points.size()) {
        std::size_t end = i, low = i, high = i;
        const long column = columnOf(points[i].x());
        for (; end < points.size() && columnOf(points[end].x()) == column; ++end) {
            if (points[end].y() < points[low].y()) low = end;
            if (points[end].y() > points[high].y()) high = end;
        }
        std::vector<std::size_t> kept{i, std::min(low, high), std::max(low, high), end - 1};
        kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
        for (const std::size_t k : kept) out.push_back(points[k]);
        i = end;
    }
    return out;
}

ChartView::ChartView(ChartPanel& panel)
    : QChartView(&panel), m_panel(panel), m_x(new QValueAxis), m_y(new QValueAxis) {
    chart()->setBackgroundVisible(false);
    chart()->setPlotAreaBackgroundVisible(false);
    chart()->setDropShadowEnabled(false);
    chart()->setAnimationOptions(QChart::NoAnimation);
    chart()->legend()->hide();
    chart()->setMargins(QMargins());
    chart()->layout()->setContentsMargins(0, 0, 0, 0);
    chart()->addAxis(m_x, Qt::AlignBottom);
    chart()->addAxis(m_y, Qt::AlignLeft);
    for (QValueAxis* axis : {m_x, m_y}) {
        axis->setVisible(false);
        axis->setLabelsVisible(false);
        axis->setGridLineVisible(false);
    }
    setFrameShape(QFrame::NoFrame);
    setRenderHint(QPainter::Antialiasing);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setBackgroundBrush(Qt::NoBrush);
    viewport()->setAutoFillBackground(false);
    setFocusPolicy(Qt::NoFocus);
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    setCacheMode(QGraphicsView::CacheNone);
}

void ChartView::fill() {
    const ChartData& data = m_panel.m_data;
    m_x->setRange(data.x.from, data.x.to);
    m_y->setRange(data.y.from, data.y.to);
    m_curveOf.clear();
    std::size_t used = 0;
    const int columns = std::max(200, viewport()->width());
    for (std::size_t c = 0; c < data.curves.size(); ++c) {
        if (!data.curves[c].isVisible) continue;
        for (const auto& run : finiteRuns(data.curves[c].points)) {
            if (used == m_series.size()) {
                m_series.push_back(new QLineSeries);
                chart()->addSeries(m_series.back());
                m_series.back()->attachAxis(m_x);
                m_series.back()->attachAxis(m_y);
            }
            const auto points = thinned(run, data.x.from, data.x.to, columns);
            m_series[used++]->replace(QList<QPointF>(points.begin(), points.end()));
            m_curveOf.push_back(c);
        }
    }
    for (std::size_t i = used; i < m_series.size(); ++i) m_series[i]->replace(QList<QPointF>());
    restyle();
    place();
}

QPen ChartView::penOf(std::size_t run, Look look, double scale) const {
    const ChartCurve& curve = m_panel.m_data.curves[m_curveOf[run]];
    const CurveStyle drawn = curveStyle(curve.style, look);
    const double width = curve.width * scale;
    QPen pen(curve.role ? color(*curve.role, look) : drawn.color, width, Qt::SolidLine, Qt::FlatCap,
             Qt::RoundJoin);
    const QList<double> dash = curve.dash.value_or(drawn.dash);
    if (dash.isEmpty()) return pen;
    // Dashes are given in pixels at 1.5 px; a pen counts them in its own widths.
    QList<double> inWidths;
    for (const double d : dash) inWidths.append(d * scale / width);
    pen.setDashPattern(inWidths);
    return pen;
}

void ChartView::style(Look look, double scale) {
    for (std::size_t i = 0; i < m_curveOf.size(); ++i) m_series[i]->setPen(penOf(i, look, scale));
}

void ChartView::restyle() {
    style(m_panel.look(), bodyPixels() / 12.0);
    repaintAll();
}

void ChartView::place() {
    chart()->setGeometry(QRectF(QPointF(), viewport()->size()));
    chart()->setPlotArea(m_panel.map().plot());
    setSceneRect(QRectF(QPointF(), viewport()->size()));
    repaintAll();
}

void ChartView::repaintAll() {
    resetCachedContent();
    viewport()->update();
}

void ChartView::renderInto(QPainter& painter, const QRectF& target, Look look, double scale) {
    const QRectF whole(QPointF(), target.size());
    const ChartMap map(m_panel.plotRect(target.size(), scale), m_panel.m_data.x, m_panel.m_data.y,
                       look, scale);
    style(look, scale);
    chart()->setGeometry(whole);
    chart()->setPlotArea(map.plot());
    painter.save();
    painter.translate(target.topLeft());
    painter.setRenderHint(QPainter::Antialiasing);
    m_panel.paintBack(painter, map);
    scene()->setSceneRect(whole);
    scene()->render(&painter, whole, whole, Qt::IgnoreAspectRatio);
    m_panel.paintFront(painter, map);
    painter.restore();
    style(m_panel.look(), bodyPixels() / 12.0);
    place();
}

void ChartView::drawBackground(QPainter* painter, const QRectF& rect) {
    painter->fillRect(rect, color(Role::Surface, m_panel.look()));
    m_panel.paintBack(*painter, m_panel.map());
}

void ChartView::drawForeground(QPainter* painter, const QRectF&) {
    const ChartMap map = m_panel.map();
    m_panel.paintFront(*painter, map);
    if (!hasFocus()) return;
    painter->setPen(QPen(map.color(Role::Focus), 2));
    painter->setBrush(Qt::NoBrush);
    painter->drawRoundedRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1), 3, 3);
}

void ChartView::resizeEvent(QResizeEvent* event) {
    QChartView::resizeEvent(event);
    place();
}

bool ChartView::isCursorNear(double pixel) const {
    return m_panel.m_cursor && std::abs(m_panel.map().x(*m_panel.m_cursor) - pixel) < px(8);
}

void ChartView::mousePressEvent(QMouseEvent* event) {
    m_mapAtPress = m_panel.map();
    m_originAtPress = event->globalPosition() - event->position();
    m_isLevelDragged = event->button() == Qt::LeftButton &&
                       m_panel.levelGrip(*m_mapAtPress).contains(event->position());
    if (m_isLevelDragged) return event->accept();
    const bool inPlot =
        m_panel.map().plot().adjusted(-px(8), 0, px(8), 0).contains(event->position());
    if (event->button() != Qt::LeftButton || !(m_panel.m_cursorTo > m_panel.m_cursorFrom) ||
        !inPlot) {
        event->ignore();
        return;
    }
    m_isDragging = true;
    if (!isCursorNear(event->position().x()))
        m_panel.moveCursor(m_panel.map().valueX(event->position().x()));
}

void ChartView::mouseMoveEvent(QMouseEvent* event) {
    // What the hand moves may lay out the page anew: it is read as it stood when the hand took
    // hold.
    const QPointF held = event->globalPosition() - m_originAtPress;
    if (m_isDragging) m_panel.moveCursor(m_mapAtPress->valueX(held.x()));
    if (m_isLevelDragged) m_panel.moveLevel(m_mapAtPress->valueY(held.y()));
    if (m_isLevelDragged || m_panel.levelGrip(m_panel.map()).contains(event->position()))
        return viewport()->setCursor(Qt::SplitVCursor);
    viewport()->setCursor(m_isDragging || isCursorNear(event->position().x()) ? Qt::SplitHCursor
                                                                              : Qt::ArrowCursor);
}

void ChartView::mouseReleaseEvent(QMouseEvent* event) {
    if (m_isLevelDragged) m_panel.takeLevel(true);
    m_isDragging = m_isLevelDragged = false;
    event->accept();
}

/// ↑ ↓ move the level, Enter means it, Esc takes it back.
bool ChartView::levelKey(int key) {
    if (!m_panel.m_level) return false;
    const double now = m_panel.m_levelMoved.value_or(*m_panel.m_level);
    if (key == Qt::Key_Up || key == Qt::Key_Down) {
        m_panel.moveLevel(now + (key == Qt::Key_Up ? 1 : -1) * m_panel.m_levelStep);
        return true;
    }
    const bool isMeant = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (!m_panel.m_levelMoved || (!isMeant && key != Qt::Key_Escape)) return false;
    m_panel.takeLevel(isMeant);
    m_isLevelDragged = false;
    return true;
}

void ChartView::keyPressEvent(QKeyEvent* event) {
    if (levelKey(event->key())) return event->accept();
    const double step = m_panel.m_cursorStep > 0
                            ? m_panel.m_cursorStep
                            : (m_panel.m_cursorTo - m_panel.m_cursorFrom) / 100;
    const double now = m_panel.m_cursor.value_or(m_panel.m_cursorFrom);
    if (!(m_panel.m_cursorTo > m_panel.m_cursorFrom)) return event->ignore();
    switch (event->key()) {
        case Qt::Key_Left:
            m_panel.moveCursor(now - step);
            return;
        case Qt::Key_Right:
            m_panel.moveCursor(now + step);
            return;
        case Qt::Key_PageDown:
            m_panel.moveCursor(now - 10 * step);
            return;
        case Qt::Key_PageUp:
            m_panel.moveCursor(now + 10 * step);
            return;
        case Qt::Key_Home:
            m_panel.moveCursor(m_panel.m_cursorFrom);
            return;
        case Qt::Key_End:
            m_panel.moveCursor(m_panel.m_cursorTo);
            return;
        default:
            event->ignore();
    }
}

void ChartView::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

void ChartView::focusInEvent(QFocusEvent* event) {
    QChartView::focusInEvent(event);
    viewport()->update();
}

void ChartView::focusOutEvent(QFocusEvent* event) {
    QChartView::focusOutEvent(event);
    viewport()->update();
}

}  // namespace bw
