// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/speed_window/evidence_text.h"
#include "ui/pages/speed_window/window_study.h"

class QAction;
class QBoxLayout;
class QStackedWidget;

namespace bw {

class CautionBox;
class DutyView;
class EvidenceList;
class PressureView;
class RateView;
class TextLabel;
class WallReadOut;
class WallSentence;

/// The speed window on a wall: the verdict, one chart of the nozzle in hand or what stops it, and
/// speed, pressure and rate at the cursor. Made at the projector's type and look. Machine, job and
/// nozzle go without the names that somebody gave them.
class WindowWall : public QWidget {
    Q_OBJECT

  public:
    enum View { Pressure, Rate, Stops };

    explicit WindowWall(const Sentences& sentences, QWidget* parent = nullptr);
    /// Shows the nozzle in hand of a study (a copy of it).
    void setStudy(const WindowStudy& study, const VerdictText& verdict);
    /// There is nothing to show, and this is why.
    void setEmpty(const QString& sentence);
    void showCursor(Speed speed);
    void showView(int view);

  Q_SIGNALS:
    /// Steps of the cursor, down or up.
    void cursorStepped(int steps);
    void cursorMoved(double x);
    void nextJobWanted();
    void nextNozzleWanted();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* buildViews();
    QWidget* buildReadOuts();
    void addActions();
    void showReadOuts(const OperatingPoint& point);
    void showCautions(const OperatingPoint& point);

    const Sentences& m_sentences;
    WindowStudy m_study;
    Speed m_cursor;
    WallSentence* m_sentence;
    QBoxLayout* m_body;
    QStackedWidget* m_views = nullptr;
    QStackedWidget* m_first = nullptr;
    PressureView* m_pressure = nullptr;
    DutyView* m_duty = nullptr;
    RateView* m_rate = nullptr;
    EvidenceList* m_stops = nullptr;
    QWidget* m_readOuts = nullptr;
    QBoxLayout* m_readOutBox = nullptr;
    WallReadOut* m_speed = nullptr;
    WallReadOut* m_middle = nullptr;  ///< pressure, or the on-time of pulsed nozzles
    WallReadOut* m_rateOut = nullptr;
    QWidget* m_uncheckedRow = nullptr;
    TextLabel* m_unchecked = nullptr;
    CautionBox* m_caution;
    std::vector<QAction*> m_viewActions;
};

}  // namespace bw
