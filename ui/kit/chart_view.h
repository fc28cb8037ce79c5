// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCharts/QChartView>
#include <optional>
#include <vector>

#include "ui/kit/chart_panel.h"
#include "ui/kit/palette.h"

QT_FORWARD_DECLARE_CLASS(QLineSeries)
QT_FORWARD_DECLARE_CLASS(QValueAxis)

namespace bw {

/// Points of which each pixel column keeps at most its first, lowest, highest and last, in order.
std::vector<QPointF> thinned(const std::vector<QPointF>& points, double xFrom, double xTo,
                             int columns);
/// A run of finite points each; non-finite ones part them.
std::vector<std::vector<QPointF>> finiteRuns(const std::vector<QPointF>& points);

/// The one place that knows Qt Charts. Draws the curves; ticks, grid and hooks are the panel's.
class ChartView : public QChartView {
    Q_OBJECT

  public:
    explicit ChartView(ChartPanel& panel);
    /// Takes the panel's data: makes series as needed and replaces their points.
    void fill();
    void restyle();
    void place();
    void repaintAll();
    void renderInto(QPainter& painter, const QRectF& target, Look look, double scale);

  protected:
    void drawBackground(QPainter* painter, const QRectF& rect) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void style(Look look, double scale);
    QPen penOf(std::size_t run, Look look, double scale) const;
    bool isCursorNear(double pixel) const;
    bool levelKey(int key);

    ChartPanel& m_panel;
    QValueAxis* m_x;
    QValueAxis* m_y;
    std::vector<QLineSeries*> m_series;
    std::vector<std::size_t> m_curveOf;  ///< the curve that a series draws a run of
    bool m_isDragging = false;
    bool m_isLevelDragged = false;
    std::optional<ChartMap> m_mapAtPress;
    QPointF m_originAtPress;
};

}  // namespace bw
