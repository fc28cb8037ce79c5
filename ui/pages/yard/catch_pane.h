// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/base/problem.h"
#include "core/model/yard_record.h"
#include "ui/kit/evidence.h"
#include "ui/pages/yard/catch_chart.h"

class QScrollArea;
class QStackedWidget;

namespace bw {

class Button;
class CatchEntryCard;
class CatchSetup;
class CatchTable;
class CatchWalk;
class CautionBox;
class DataTable;
class FarmSession;
class IconButton;
class EvidenceColumn;
class TextLabel;

/// The catch test: set up, then nozzle by nozzle, number and Enter, until all are in. Each catch is
/// saved; the test is gone on with where it was left.
class CatchPane : public QWidget {
    Q_OBJECT

  public:
    explicit CatchPane(FarmSession& session, QWidget* parent = nullptr);
    /// Shows the test begun for a machine, or the set-up of a new one.
    void open(RecordId machine);
    void refresh();
    void takeFocus();
    bool commitPending();
    /// A test is in hand, begun or just finished: it wants the room.
    bool isRunning() const { return m_recordId != 0; }
    void takeBack();
    void showTable(bool isTable);
    /// Goes on with, or looks at, a test that is stored.
    void openRecord(RecordId id);
    /// The test in hand; before its start what the set-up says.
    YardRecord recordToPrint() const;

  Q_SIGNALS:
    void failed(const bw::Problem& problem);
    /// Set-up, test in hand: how much room is wanted changed.
    void stateChanged();

  private:
    QWidget* buildSetup();
    QWidget* buildTest();
    QWidget* buildChartHead();
    QWidget* buildPicture();
    void buildFoot();
    const Machine* machine() const;
    NumberStyle style() const;
    std::string now() const;

    void start();
    void take(Volume volume, const QString& typed, bool isAgain);
    void skip();
    void move(int step);
    void goToNozzle(int nozzle);
    void goToNext(const CatchWalk& walk);
    void catchLowAgain();
    void finish();
    void startNew();
    bool save();
    int lowToCatchAgain(int after) const;

    void show();
    void showCard(const CatchWalk& walk);
    void showPicture(const CatchWalk& walk);
    void showResult(const CatchWalk& walk);
    void showSetupResult();
    void showFoot(const CatchWalk& walk);
    QString lastWords() const;
    QString headWords() const;
    QString verdictTitle() const;
    EvidenceSection soFar() const;
    EvidenceSection rule() const;
    EvidenceSection openSection(const CatchWalk& walk) const;
    EvidenceSection doubts() const;
    const CaughtNozzle* caught(int nozzle) const;

    FarmSession& m_session;
    RecordId m_machineId = 0;
    RecordId m_recordId = 0;
    YardRecord m_record;
    int m_nozzle = 1;  ///< in hand
    bool m_isSaving = false;
    CatchChart::View m_view;

    QStackedWidget* m_stack;
    CatchSetup* m_setup;
    CatchEntryCard* m_card;
    CatchChart* m_chart;
    CatchTable* m_model;
    DataTable* m_table;
    QStackedWidget* m_picture;
    TextLabel* m_head;
    IconButton* m_tableButton;
    CautionBox* m_setupCautions;
    CautionBox* m_cautions;
    EvidenceColumn* m_result;
    Button* m_again;
    Button* m_back;
    Button* m_finish;
    Button* m_new;
    TextLabel* m_note;
};

}  // namespace bw
