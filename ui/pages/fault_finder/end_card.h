// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/pages/fault_finder/case_view.h"

class QPlainTextEdit;
class QVBoxLayout;

namespace bw {

class AnswerRow;
class CautionBox;
class TextLabel;

/// The end of a call: what is most likely, its cautions and then its remedy, the ways out with this
/// machine's numbers, how you know it is fixed, what else is possible; proved or not; notes.
class EndCard : public QWidget {
    Q_OBJECT

  public:
    explicit EndCard(QWidget* parent = nullptr);
    void setView(const CaseView& view, int minutes);
    bool press(int digit);
    void takeFocus();
    QString notes() const;

  Q_SIGNALS:
    void stateChosen(bw::CaseState state);
    void backWanted();
    void notesChanged();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void buildRows(QVBoxLayout* column);
    void showRemedies(const CaseView& view, const Finding& finding);
    void showOthers(const CaseView& view);
    TextLabel* paragraph(QVBoxLayout* column, const QString& title, const QString& name);

    TextLabel* m_lead;
    TextLabel* m_title;
    TextLabel* m_members;
    CautionBox* m_caution;
    TextLabel* m_remedy = nullptr;
    TextLabel* m_ways = nullptr;
    TextLabel* m_proof = nullptr;
    TextLabel* m_prevention = nullptr;
    TextLabel* m_others = nullptr;
    CautionBox* m_endCaution;
    std::vector<AnswerRow*> m_rows;
    QPlainTextEdit* m_notes;
};

}  // namespace bw
