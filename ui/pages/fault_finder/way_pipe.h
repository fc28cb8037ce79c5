// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <vector>

class QHBoxLayout;
class QScrollArea;

namespace bw {

/// One station of the way: a check with its answer, or the one in hand.
struct WayStop {
    QString id;      ///< check id; empty: the question in hand, not to be clicked
    QString title;   ///< short name
    QString answer;  ///< what was answered; empty for the one in hand
    QString other;   ///< the branch not walked
    bool isInHand = false;
};

/// One station as a button: disc or square on the pipe, name above, answer below, and a dashed
/// branch for what was not answered.
class WayNode : public QAbstractButton {
    Q_OBJECT

  public:
    WayNode(const WayStop& stop, bool isFirst, bool isLast, QWidget* parent = nullptr);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void paintPipe(QPainter& painter, double y);
    void paintWords(QPainter& painter, double y);
    WayStop m_stop;
    bool m_isFirst;
    bool m_isLast;
};

/// The way so far: a pipe with a station for each answer. A click, or Enter, on one asks it again.
class WayPipe : public QWidget {
    Q_OBJECT

  public:
    explicit WayPipe(QWidget* parent = nullptr);
    void setStops(const std::vector<WayStop>& stops);

  Q_SIGNALS:
    void stopChosen(const QString& checkId);

  private:
    QScrollArea* m_scroll;
    QHBoxLayout* m_row;
};

}  // namespace bw
