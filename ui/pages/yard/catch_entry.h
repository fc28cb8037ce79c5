// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/format.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"

namespace bw {

class CatchWatch;
class SegmentedButtons;

/// The line in which catches are typed. Its keys are the walk's: Enter next, space the watch (while
/// nothing is typed), / skip, up and down another nozzle, Ctrl+Backspace take back.
class CatchLine : public FigureLine {
    Q_OBJECT

  public:
    explicit CatchLine(QWidget* parent = nullptr);

  Q_SIGNALS:
    void watchWanted();
    void skipWanted();
    void moveWanted(int step);
    void takeBackWanted();

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
};

/// The card on top of a catch test: watch, the nozzle in hand in large type, the catch to type.
class CatchEntryCard : public RolePanel {
    Q_OBJECT

  public:
    explicit CatchEntryCard(QWidget* parent = nullptr);

    struct Content {
        int nozzle = 0;
        QString of;       ///< "of 56 · section 6, fourth"
        QString counted;  ///< "Nozzle, counted from the left end"
        QString last;     ///< "last: nozzle 44, 608 mL, +3.1 % of new"
        double seconds = 0.0;
        Unit unit = Unit::Millilitre;
        char decimalMark = '.';
        bool isCaught = false;  ///< asks what a second catch means
        bool isAgain = false;   ///< the usual answer to that
    };
    /// Shows the nozzle in hand; another nozzle than before takes the choice of a second catch.
    void show(const Content& content);
    /// A problem at the place of input; the next letter typed takes it away.
    void tell(const QString& problem);
    void takeFocus();
    CatchWatch* watch() const { return m_watch; }
    bool hasText() const { return !m_line->text().trimmed().isEmpty(); }

  Q_SIGNALS:
    void caught(bw::Volume volume, const QString& typed, bool isAgain);
    void skipWanted();
    void moveWanted(int step);
    void takeBackWanted();
    void nozzleWanted(int nozzle);

  private:
    QWidget* buildNozzle();
    QWidget* buildField();
    QWidget* buildKeys();
    void showUnit(const QString& text);
    void enter();
    void jump();
    void refuse(const Problem& problem);

    Content m_content;
    CatchWatch* m_watch;
    TextLabel* m_counted;
    TextLabel* m_number;
    TextLabel* m_of;
    TextLabel* m_last;
    CatchLine* m_line;
    TextLabel* m_problem;
    QuantityEdit* m_jump;
    SegmentedButtons* m_again;
};

}  // namespace bw
