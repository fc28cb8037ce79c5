// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include <optional>

#include "ui/kit/page.h"
#include "ui/pages/speed_window/candidate_set.h"
#include "ui/pages/speed_window/window_study.h"

class QStackedWidget;
class QTimer;
class QVBoxLayout;

namespace bw {

class BoomView;
class Button;
class CandidatePicker;
class CautionBox;
class ChoiceBox;
class CursorStrip;
class DataTable;
class EvidenceColumn;
class IconButton;
class DutyView;
class PressureView;
class RateView;
class SegmentedButtons;
class SpanBar;
class SpeedTable;
class TextLabel;

/// The speed window of the job in hand: pressure against speed, rate against speed and the table by
/// speed, all from one study; the verdict and what it rests on beside it.
class SpeedWindowPage : public Page {
    Q_OBJECT

  public:
    explicit SpeedWindowPage(FarmSession& session, QWidget* parent = nullptr);
    ~SpeedWindowPage() override;

    QString title() const override { return tr("Speed window"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override {
        return {QStringLiteral("rate"),       QStringLiteral("table"),
                QStringLiteral("boom_even"),  QStringLiteral("boom_turn"),
                QStringLiteral("boom_slope"), QStringLiteral("pressure")};
    }
    void showState(const QString& state) override;
    QString trainerTruth() const override;

  protected:
    QWidget* makeWallView() override;

  private:
    /// The views, in the order of their buttons.
    struct View {
        enum { Pressure, Rate, ByTable, Along };
    };
    void buildHeader();
    QWidget* buildWork();
    QWidget* buildToolRow();
    QWidget* buildEmpty();
    void addActions();
    void fillMachines();
    void fillJobs();
    void fillNozzles();
    void followSession();
    void study();
    void showStudy();
    void showEmpty(const QString& sentence, const QString& button, const QString& target);
    void showView(int view);
    void showCautions();
    void showAsTable();
    void fitColumns();
    void moveCursor(Speed speed);
    void stepCursor(int steps);
    void tellWall();
    void nextJob();
    void nextNozzle();
    void tellEvidence();
    QStringList cautionsNow() const;
    bool canMoveFloor() const;
    void placeFloorGrip();
    void previewFloor(std::optional<Pressure> floor);
    void takeFloor(Pressure floor);
    void takeNozzle(const QString& nozzle);
    void openPicker();
    void fillPicker();
    void changeCandidates(const QString& nozzle, bool take);
    void keepChoices();
    void copyView();
    void followLink(const QString& link);
    void offerPrint();

    QWidget* m_tools = nullptr;
    ChoiceBox* m_machines = nullptr;
    ChoiceBox* m_jobs = nullptr;
    ChoiceBox* m_nozzleBox = nullptr;
    Button* m_candidateButton = nullptr;
    CandidatePicker* m_picker = nullptr;

    QStackedWidget* m_states;
    TextLabel* m_emptyText = nullptr;
    Button* m_emptyButton = nullptr;
    Button* m_emptyDemo = nullptr;
    QString m_emptyTarget;

    SegmentedButtons* m_viewChoice = nullptr;
    TextLabel* m_viewHint = nullptr;
    QStackedWidget* m_views = nullptr;
    PressureView* m_pressure = nullptr;
    QTimer* m_evidenceLater = nullptr;
    std::optional<Pressure> m_floor;    ///< tried on the chart, not written
    DutyView* m_duty = nullptr;         ///< in its place for pulsed nozzles
    QStackedWidget* m_first = nullptr;  ///< one of the two
    RateView* m_rate = nullptr;
    DataTable* m_table = nullptr;
    SpeedTable* m_tableModel = nullptr;
    BoomView* m_boom = nullptr;
    SpanBar* m_span = nullptr;
    CursorStrip* m_strip = nullptr;
    CautionBox* m_caution = nullptr;
    EvidenceColumn* m_evidence = nullptr;

    CandidateSet m_candidates;
    std::unique_ptr<WindowStudy> m_study;
    Speed m_cursor;
    RecordId m_cursorJob = 0;   ///< the job whose usual speed the cursor started from
    RecordId m_seenNozzle = 0;  ///< the session's nozzle in hand when last looked at
    bool m_hasReadChoices = false;
};

}  // namespace bw
