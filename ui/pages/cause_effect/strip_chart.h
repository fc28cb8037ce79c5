// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/format.h"
#include "ui/kit/chart_panel.h"
#include "ui/pages/cause_effect/run.h"
#include "ui/pages/cause_effect/strip_points.h"

namespace bw {

/// What both strips are given for a frame.
struct StripFrame {
    const Run* run = nullptr;
    NumberStyle style;
    double window = 60.0;  ///< s
};

/// A strip chart over the last seconds: the newest at the right end, posts where a lever was moved.
class StripChart : public ChartPanel {
    Q_OBJECT

  public:
    explicit StripChart(QWidget* parent = nullptr);

  protected:
    /// Time axis, and where the trace starts.
    void placeTime(ChartData& data, const StripFrame& frame);
    double from() const { return m_from; }
    /// Time slice of a column of points.
    double slice(const StripFrame& frame) const;
    /// Differences in the reader's unit that nobody sees: a third of a pixel.
    double unseen() const;
    void paintPosts(QPainter& painter, const ChartMap& map) const;
    /// A dot at the end of a curve, ringed so that it parts from the other.
    static void paintDot(QPainter& painter, const ChartMap& map, QPointF value, Role role,
                         double size);
    /// Names with a stroke of the curve before each, at the top right.
    struct Key {
        QString name;
        Role role;
        double width;
        bool isDashed;
    };
    static void paintKeys(QPainter& painter, const ChartMap& map, const std::vector<Key>& keys);

    std::vector<RunMark> m_marks;

  private:
    double m_from = 0.0;
};

/// Rate: shown, on the ground, target.
class RateStrip : public StripChart {
    Q_OBJECT

  public:
    explicit RateStrip(QWidget* parent = nullptr);
    void showFrame(const StripFrame& frame);

  private:
    void placeRate(ChartData& data, double target);
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;

    QString m_unit;
    QString m_targetText;
    double m_target = 0.0;
    bool m_hasOther = false;
    std::optional<QPointF> m_shown, m_real;
    double m_low = 0.0, m_high = 0.0;
};

/// Pressure at the boom sensor, with floor and ceiling hatched.
class PressureStrip : public StripChart {
    Q_OBJECT

  public:
    explicit PressureStrip(QWidget* parent = nullptr);
    /// `top`: end of the axis in the reader's unit, shared with the chart beside it.
    void showFrame(const StripFrame& frame, double top);

  private:
    void paintUnder(QPainter& painter, const ChartMap& map) const;
    void paintOver(QPainter& painter, const ChartMap& map) const;
    void paintAround(QPainter& painter, const ChartMap& map) const;

    QString m_unit;
    std::optional<double> m_floor, m_ceiling;
    QString m_floorText, m_ceilingText;
    std::optional<QPointF> m_now;
    bool m_readsFalse = false;
};

/// Floor and ceiling as hatched bands with their edges.
void paintLimits(QPainter& painter, const ChartMap& map, std::optional<double> floor,
                 std::optional<double> ceiling, double top);

}  // namespace bw
