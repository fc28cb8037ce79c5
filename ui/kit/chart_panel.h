// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "ui/kit/metrics.h"
#include "ui/kit/palette.h"

class QPainter;

namespace bw {

class ChartView;
class Button;

/// An axis in the reader's unit. Ticks are ours: empty means about `niceTicks(from, to)`.
struct ChartAxis {
    double from = 0.0;
    double to = 1.0;
    std::vector<double> ticks;
    QString title;      ///< y: top left of the plot; x: not drawn unless set
    QString unit;       ///< x: behind the last tick
    int decimals = -1;  ///< of the tick labels; -1: as many as the ticks need
};

/// One curve. Give it as many points as it needs; more than two a pixel column are thinned.
/// Non-finite points split it.
struct ChartCurve {
    QString name;
    std::vector<QPointF> points;
    int style = 1;                      ///< curve 1 to 8
    double width = 1.5;                 ///< pixels at a body of 12
    std::vector<QPointF> markers;       ///< where markers of its style stand
    std::optional<Role> role;           ///< a role's colour instead of the style's
    std::optional<QList<double>> dash;  ///< another dash than the style's
    bool isVisible = true;
};

/// All that a chart shows by itself, in plain numbers. What the numbers mean (bands, veil, ribbons,
/// chips) is painted by the page through the hooks.
struct ChartData {
    ChartAxis x;
    ChartAxis y;
    std::vector<ChartCurve> curves;
    char decimalMark = '.';
    QString name;     ///< for screen readers
    QString summary;  ///< one sentence, from the model
};

/// Values to pixels and back, and what a hook needs to paint in the right look and size.
class ChartMap {
  public:
    ChartMap(const QRectF& plot, const ChartAxis& x, const ChartAxis& y, Look look, double scale)
        : m_plot(plot),
          m_xFrom(x.from),
          m_xTo(x.to),
          m_yFrom(y.from),
          m_yTo(y.to),
          m_look(look),
          m_scale(scale) {}
    QRectF plot() const { return m_plot; }
    double x(double value) const {
        return m_plot.left() + (value - m_xFrom) / (m_xTo - m_xFrom) * m_plot.width();
    }
    double y(double value) const {
        return m_plot.bottom() - (value - m_yFrom) / (m_yTo - m_yFrom) * m_plot.height();
    }
    QPointF point(QPointF value) const { return {x(value.x()), y(value.y())}; }
    double valueX(double pixel) const {
        return m_xFrom + (pixel - m_plot.left()) / m_plot.width() * (m_xTo - m_xFrom);
    }
    double valueY(double pixel) const {
        return m_yFrom + (m_plot.bottom() - pixel) / m_plot.height() * (m_yTo - m_yFrom);
    }
    /// The rectangle between two values on each axis, clipped to the plot.
    QRectF box(double xFrom, double xTo, double yFrom, double yTo) const;
    QRectF columns(double xFrom, double xTo) const;  ///< full height
    QRectF rows(double yFrom, double yTo) const;     ///< full width
    Look look() const { return m_look; }
    QColor color(Role role) const { return bw::color(role, m_look); }
    CurveStyle curve(int number) const { return curveStyle(number, m_look); }
    /// Pixels for a length of the drawings at a body of 12.
    double px(double atTwelve) const { return atTwelve * m_scale; }
    QFont font(TextSize size, bool bold = false) const;

  private:
    QRectF m_plot;
    double m_xFrom, m_xTo, m_yFrom, m_yTo;
    Look m_look;
    double m_scale;
};

/// Text on a plate of the raised role (so that it reads over hatching), anchored at a corner or
/// side of its box: `anchor` names the part of the plate that lies at `at`.
QRectF paintPlate(QPainter& painter, const ChartMap& map, QPointF at, Qt::Alignment anchor,
                  const QString& text, Role ink = Role::Ink, TextSize size = TextSize::Small,
                  bool bold = false, Role plate = Role::Raised);
/// A broad band along points with an ink outline: the ribbon of a curve in hand.
void paintRibbon(QPainter& painter, const ChartMap& map, const std::vector<QPointF>& values,
                 const QColor& fill, double width = 8.0);

/// About `count` round ticks within [from, to].
std::vector<double> niceTicks(double from, double to, int count = 7);
/// The least round range that holds [from, to].
std::pair<double, double> niceRange(double from, double to, int count = 7);

/// A chart: one window on Qt Charts, which no page sees. Styled for the four looks, never animated.
class ChartPanel : public QWidget {
    Q_OBJECT

  public:
    using Hook = std::function<void(QPainter&, const ChartMap&)>;

    explicit ChartPanel(QWidget* parent = nullptr);
    ~ChartPanel() override;

    void setData(ChartData data);
    const ChartData& data() const { return m_data; }
    /// Painted under grid and curves, clipped to the plot: bands, veil, shading.
    void setUnderlay(Hook hook);
    /// Painted over the curves, clipped to the plot: ribbon, chips, names.
    void setOverlay(Hook hook);
    /// Painted last, not clipped: brackets above, scales beside, posts that overhang.
    void setFrame(Hook hook);
    /// Room around the plot in pixels at a body of 12, for axis labels and what the frame hook
    /// paints.
    void setRoom(double left, double top, double right, double bottom);

    /// Cursor at x with open rings at the given y values; nothing hides it.
    void setCursor(std::optional<double> x, std::vector<double> rings = {});
    /// Makes the cursor draggable and movable by ← → (Home, End, Page keys) in these bounds.
    void setCursorRange(double from, double to, double step);
    std::optional<double> cursor() const { return m_cursor; }

    /// A level that a hand can move by its grip at the left edge, or by ↑ ↓ and Enter; Esc takes it
    /// back. `step` in the reader's unit. Nothing: no grip.
    void setLevel(std::optional<double> y, double least, double most, double step,
                  const QString& name = {});

    /// Wears a look of its own (projector); nothing: follows the theme.
    void setLook(std::optional<Look> look);
    Look look() const;
    /// The map of the present size.
    ChartMap map() const;
    /// Draws the chart with its hooks into any painter, vector only.
    void render(QPainter& painter, const QRectF& target, Look look, double scale = 1.0);
    QImage image(QSize size, Look look);
    /// Puts picture and table text (tab-separated) on the clipboard.
    void copy();
    /// The curves as text, tab-separated: x and one column a curve with its own x values in rows.
    QString tableText() const;
    QSize minimumSizeHint() const override;
    QSize sizeHint() const override;

  Q_SIGNALS:
    /// The user moved the cursor; the page answers with setCursor().
    void cursorMoved(double x);
    /// The level is being moved: a preview, nothing is meant yet.
    void levelMoved(double y);
    /// It was let go there, or Enter pressed.
    void levelTaken(double y);
    void levelTakenBack();

  private:
    friend class ChartView;
    QRectF plotRect(QSizeF size, double scale) const;
    void paintBack(QPainter& painter, const ChartMap& map);
    void paintFront(QPainter& painter, const ChartMap& map);
    void paintTicks(QPainter& painter, const ChartMap& map);
    void paintCursor(QPainter& painter, const ChartMap& map);
    void moveCursor(double x);
    void moveLevel(double y);
    void takeLevel(bool isMeant);
    QRectF levelGrip(const ChartMap& map) const;
    void paintLevel(QPainter& painter, const ChartMap& map);

    ChartData m_data;
    Hook m_underlay;
    Hook m_overlay;
    Hook m_frame;
    std::optional<double> m_cursor;
    std::vector<double> m_rings;
    double m_cursorFrom = 0.0;
    double m_cursorTo = 0.0;
    double m_cursorStep = 0.0;
    std::optional<double> m_level;
    std::optional<double> m_levelMoved;  ///< where it is being held
    double m_levelLeast = 0.0;
    double m_levelMost = 0.0;
    double m_levelStep = 0.0;
    std::optional<Look> m_look;
    double m_room[4] = {40, 20, 16, 24};
    ChartView* m_view;
};

}  // namespace bw
