// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/fault_finder/case_view.h"
#include "ui/pages/fault_finder/cause_bars.h"

class QAction;
class QStackedWidget;

namespace bw {

class EndCard;
class NumbersForm;
class QuestionCard;
class TextLabel;

/// A call on a wall: the question in large type with its answer keys, and the bars beside it, or in
/// its place where there is no room. Made at the projector's type and look.
class FinderWall : public QWidget {
    Q_OBJECT

  public:
    explicit FinderWall(QWidget* parent = nullptr);
    QuestionCard& card() { return *m_card; }
    NumbersForm& numbers() { return *m_numbers; }
    EndCard& end() { return *m_end; }
    /// No call in hand.
    void showNoCall();
    /// Texts of the card may hold no name that somebody gave a machine or job.
    void showCard(const CaseView& view, const CardContent& content);
    void showNumbers(const CaseView& view);
    void showEnd(const CaseView& view, int minutes);

  Q_SIGNALS:
    void backWanted();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void addActions();
    void showStep(QWidget* step, const CaseView* view);
    void arrange();
    void fitBars(int width);
    void takeFocus();
    QStackedWidget* m_steps;
    QWidget* m_noCall;
    QuestionCard* m_card;
    NumbersForm* m_numbers;
    EndCard* m_end;
    QWidget* m_side;
    CauseBars* m_bars;
    std::vector<CauseBar> m_allBars;
    QAction* m_barsAction = nullptr;
};

}  // namespace bw
