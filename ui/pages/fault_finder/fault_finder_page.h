// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QElapsedTimer>
#include <memory>

#include "ui/kit/page.h"
#include "ui/pages/fault_finder/case_view.h"

class QStackedWidget;
class QTimer;

namespace bw {

class Button;
class CallColumn;
class CaseList;
class EndCard;
class NumbersForm;
class QuestionCard;
class ReadingBar;
class StandingColumn;
class TextLabel;
class WayPipe;

/// The fault finder: a call question by question, each answer saved, until something is most
/// likely; and the list of cases. What is asked, and in which order, is the engine's.
class FaultFinderPage : public Page {
    Q_OBJECT

  public:
    explicit FaultFinderPage(FarmSession& session, QWidget* parent = nullptr);
    ~FaultFinderPage() override;

    QString title() const override { return tr("Fault finder"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override;
    void showState(const QString& state) override;
    /// A case by its number.
    void takeInHand(const QString& caseId) override;

  protected:
    QWidget* makeWallView() override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    void buildHeader();
    QWidget* buildCall();
    void addActions();

    void newCall();
    void openCase(RecordId id);
    void showMiddle(CaseRecord record);
    void showList();
    /// Saves the record as it is now and shows what it makes of itself.
    void changed(CaseRecord record, std::optional<Step> then = std::nullopt);
    bool save(CaseRecord& record);
    void finishCase();

    void showStep(Step step);
    void showCard(const CardContent& card);
    void showHeader();
    void connectNumbers(NumbersForm* form);
    NumbersForm& numbersInHand();
    CardContent withoutNames(CardContent card) const;
    void tellWall();
    void askOn();
    void showWay();
    CardContent startCard(Step step) const;
    CardContent machineCard() const;
    CardContent jobCard() const;
    CardContent nozzleCard() const;
    CardContent questionCard() const;
    const NextCheck* checkInHand() const;
    Step stepAfter(Step step) const;

    void answer(const QString& id);
    void answerStart(const QString& id);
    bool answerMachine(CaseRecord& record, const QString& id);
    void answerJob(CaseRecord& record, const QString& id);
    void answerNozzle(CaseRecord& record, const QString& id);
    void observeNow(const Observation& observation);
    void otherTyped(const QString& text);
    void goOn();
    void changeAnswer(const QString& checkId);
    void takeBack();
    void takeBackStart();
    void openReading();
    void focusStep();
    void setState(CaseState state);

    NumberStyle callStyle() const;
    int minutesNow() const;
    bool isTiming() const;
    void tick();

    QWidget* m_tools = nullptr;
    TextLabel* m_caseLabel = nullptr;
    TextLabel* m_clock = nullptr;
    Button* m_backButton = nullptr;
    Button* m_listButton = nullptr;

    QStackedWidget* m_views;
    CaseList* m_list = nullptr;
    QStackedWidget* m_cards = nullptr;
    QuestionCard* m_card = nullptr;
    NumbersForm* m_numbers = nullptr;
    EndCard* m_end = nullptr;
    ReadingBar* m_reading = nullptr;
    CallColumn* m_left = nullptr;
    StandingColumn* m_right = nullptr;
    WayPipe* m_way = nullptr;

    RecordId m_caseId = 0;  ///< 0: no case in hand, or not stored yet
    bool m_hasCase = false;
    bool m_isSaving = false;
    std::unique_ptr<CaseView> m_view;
    Step m_step = Step::Symptom;
    bool m_isAgain = false;     ///< a step of the start is being answered again
    bool m_isAskingOn = false;  ///< questions go on though something is likely enough
    QString m_again;            ///< the check that is being answered again
    qint64 m_spent = 0;         ///< ms before the clock last started
    QElapsedTimer m_running;
    QTimer* m_ticker;
};

}  // namespace bw
