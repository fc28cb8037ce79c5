// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <QString>
#include <QWidget>
#include <optional>

#include "core/window/limits.h"
#include "ui/kit/palette.h"

class QPainter;

namespace bw {

/// How a set serves a job, as far as it could be checked.
enum class SpanState { All, UsualOnly, Neither, NotChecked };

/// The speed window as one bar, in the reader's speed unit.
struct Span {
    double from = 0.0;  ///< left end of the scale
    double to = 1.0;
    std::optional<double> low;  ///< window; absent on both sides: empty
    std::optional<double> high;
    double slow = 0.0;
    double usual = 0.0;
    double fast = 0.0;
    SpanState state = SpanState::All;
    Limit lowLimit = Limit::None;
    Limit highLimit = Limit::None;
    // Full size only:
    QString lowFigure, lowReason;  ///< "6.9", "too coarse below"
    QString highFigure, highReason;
    QString holds, spare;  ///< "holds 150 L/ha, C or M", "to spare: 31 % down, 33 % up"
};

/// Full width with marks and words below the bar; height spanHeight().
void paintSpan(QPainter& painter, const QRectF& box, const Span& span, Look look);
/// Thumb size for a table cell: bar, posts and bracket only; the word below is the cell's.
void paintSpanThumb(QPainter& painter, const QRectF& box, const Span& span, Look look);
int spanHeight();

/// The full-size bar as a widget; its scale can be aligned with a chart's plot.
class SpanBar : public QWidget {
    Q_OBJECT

  public:
    explicit SpanBar(QWidget* parent = nullptr);
    void setSpan(const Span& span);
    const Span& span() const { return m_span; }
    /// Left and right room in pixels at a body of 12, as given to ChartPanel::setRoom.
    void setRoom(double left, double right);
    void setLook(std::optional<Look> look);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    Span m_span;
    double m_left = 40;
    double m_right = 16;
    std::optional<Look> m_look;
};

}  // namespace bw
