// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QElapsedTimer>
#include <QTimer>

namespace bw {

/// The stop-watch of a catch: a ring that fills, the seconds left, and a beep with a word at the
/// end. Pressed: starts; pressed again: stops.
class CatchWatch : public QAbstractButton {
    Q_OBJECT

  public:
    explicit CatchWatch(QWidget* parent = nullptr);
    /// The time of each catch, in seconds; 0: none set.
    void setSeconds(double seconds);
    void toggleWatch();
    void stopWatch();
    bool isRunning() const { return m_ticker.isActive(); }
    bool isOver() const { return m_isOver; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  Q_SIGNALS:
    /// The catch time has just ended.
    void over();

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void tick();
    void tell();
    double secondsLeft() const;

    double m_seconds = 0.0;
    bool m_isOver = false;
    QElapsedTimer m_since;
    QTimer m_ticker;
};

}  // namespace bw
