// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/pages/fault_finder/case_view.h"

class QScrollArea;
class QGridLayout;
class QVBoxLayout;

namespace bw {

class AnswerRow;
class Button;
class CautionBox;
class QuantityEdit;
class TextLabel;

/// One question: where it is asked and what it takes, the question, the reason, the cautions, then
/// the answers with their keys, and the figure. Digits answer, Enter answers with the row in focus
/// or commits the figure; Enter in an empty figure field is "can't tell".
class QuestionCard : public QWidget {
    Q_OBJECT

  public:
    explicit QuestionCard(QWidget* parent = nullptr);

    void setContent(const CardContent& content, const NumberStyle& style);
    const CardContent& content() const { return m_content; }
    /// Answers with the row of this digit (1 to 9). False if there is none.
    bool press(int digit);
    void toggleHowTo();
    void toggleWhy();
    /// Focus where the answer is given: the figure if there are no words to choose, else the rows.
    void takeFocus();

  Q_SIGNALS:
    void answered(const QString& answerId);
    void figureGiven(bw::AnyQuantity value, const QString& typed);
    /// A text that is no figure of this question's kind: perhaps another reading with its unit.
    void otherTyped(const QString& text);
    void returned();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void build();
    void buildTop(QVBoxLayout* column);
    void buildEntry(QVBoxLayout* column);
    void showTop(bool isSame);
    void showAnswers();
    void dropEntry();
    void showEntry(const NumberStyle& style);
    bool isPureFigure() const;

    CardContent m_content;
    QScrollArea* m_scroll = nullptr;
    TextLabel* m_lead = nullptr;
    Button* m_howToButton = nullptr;
    Button* m_whyButton = nullptr;
    TextLabel* m_question = nullptr;
    TextLabel* m_reason = nullptr;
    TextLabel* m_howTo = nullptr;
    TextLabel* m_why = nullptr;
    CautionBox* m_caution = nullptr;
    QGridLayout* m_rowLayout = nullptr;
    std::vector<AnswerRow*> m_rows;
    QWidget* m_entryRow = nullptr;
    QVBoxLayout* m_entryPlace = nullptr;
    QuantityEdit* m_entry = nullptr;
    TextLabel* m_healthy = nullptr;
    TextLabel* m_expected = nullptr;
    TextLabel* m_entryHint = nullptr;
    Button* m_back = nullptr;
};

}  // namespace bw
