// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "core/model/nozzle.h"
#include "core/model/season.h"
#include "core/units/format.h"
#include "core/window/window_curve.h"
#include "ui/kit/page.h"
#include "ui/pages/cause_effect/run.h"

class QStackedWidget;
class QTimer;
class QVBoxLayout;

namespace bw {

class Button;
class CautionBox;
class ChoiceBox;
class CircuitView;
class FaultPanel;
class LeverPanel;
class PointChart;
class PressureStrip;
class RateStrip;
class ReadOuts;
class RolePanel;
class SectionStrip;
class SegmentedButtons;
class TextLabel;

/// The running loop of the job in hand: strip charts, the moving point on the pressure chart,
/// circuit and boom, levers and faults, and why the rate is what it is. Nothing that is moved here
/// is written into the profile.
class CauseEffectPage : public Page {
    Q_OBJECT

  public:
    explicit CauseEffectPage(FarmSession& session, QWidget* parent = nullptr);
    ~CauseEffectPage() override;

    QString title() const override { return tr("Cause and effect"); }
    QWidget* headerTools() override { return m_tools; }
    void refresh() override;
    QString hint() const override;
    QStringList pictureStates() const override;
    void showState(const QString& state) override;

    /// What the time is, in s from anywhere; the steady clock unless a test brings its own.
    void setClock(std::function<double()> seconds);
    /// One frame: runs as far as the clock went and draws.
    void tick();

  protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    enum class Beside { Nothing, WithoutFaults, AsPinned };
    /// What the run was made from: the same again needs no new one.
    struct Source {
        RecordId machineId = 0;
        RecordId jobId = 0;
        Machine machine;
        Nozzle nozzle;
        Job job;
        bool isTaught = false;
        bool operator==(const Source&) const = default;
    };
    void buildHeader();
    QWidget* buildWork();
    QWidget* buildBar();
    QWidget* buildPictures();
    QWidget* buildStack();
    QLayout* buildFoot();
    QWidget* buildSide();
    QWidget* buildMessage();
    void addActions();
    void fillHeader();
    const Nozzle* nozzleInHand(const Machine& machine, const Job& job);
    void makeRun();
    void startRun(const LoopSetup& setup, const Source& source);
    void showMessage(const QString& text, const QString& button, const QString& target,
                     bool canTeach);
    void takeLevers(const Levers& levers, const QString& words);
    void showSetup();
    void showRestrictor();
    void showFrame();
    void showWords();
    void resetAll();
    void setFrozen(bool isFrozen);
    void stepOnce();
    void setFactor(int index);
    void setGuessing(bool isGuessing);
    void setBeside(Beside beside);
    void readCalm();
    void setCalm(bool isCalm);
    void keepTiming();
    double factor() const;
    double shownSeconds() const;
    double pressureTop() const;
    NumberStyle numbers() const;

    QWidget* m_tools = nullptr;
    ChoiceBox* m_machines = nullptr;
    ChoiceBox* m_jobs = nullptr;
    ChoiceBox* m_nozzles = nullptr;

    QStackedWidget* m_states = nullptr;
    TextLabel* m_messageText = nullptr;
    Button* m_messageButton = nullptr;
    Button* m_teachButton = nullptr;
    Button* m_demoButton = nullptr;
    QString m_messageTarget;

    RolePanel* m_taught = nullptr;
    TextLabel* m_taughtText = nullptr;
    Button* m_freeze = nullptr;
    Button* m_step = nullptr;
    SegmentedButtons* m_factor = nullptr;
    Button* m_noise = nullptr;
    ChoiceBox* m_beside = nullptr;
    Button* m_guess = nullptr;
    QAction* m_calmAction = nullptr;
    TextLabel* m_why = nullptr;
    SegmentedButtons* m_pictureChoice = nullptr;
    QStackedWidget* m_pictures = nullptr;
    RateStrip* m_rate = nullptr;
    PressureStrip* m_pressure = nullptr;
    PointChart* m_point = nullptr;
    SectionStrip* m_boom = nullptr;
    CircuitView* m_circuit = nullptr;
    CautionBox* m_caution = nullptr;
    ReadOuts* m_read = nullptr;
    TextLabel* m_verdict = nullptr;
    TextLabel* m_verdictText = nullptr;
    SegmentedButtons* m_sideChoice = nullptr;
    QStackedWidget* m_side = nullptr;
    LeverPanel* m_levers = nullptr;
    FaultPanel* m_faults = nullptr;

    std::unique_ptr<Run> m_run;
    Source m_source;
    std::vector<DropletStretch> m_droplets;
    QString m_nozzleName;      ///< chosen here; empty: the first that suits
    RecordId m_nozzleJob = 0;  ///< the job that it was chosen for
    RecordId m_taughtFor = 0;  ///< the machine whose gaps teaching values fill
    Beside m_besideKind = Beside::Nothing;
    std::optional<RestrictorPosition> m_drawnRestrictor;  ///< in the circuit
    bool m_isFrozen = false;
    bool m_isGuessing = false;
    mutable double m_top = 0.0;  ///< end of the pressure axes

    std::function<double()> m_clock;
    double m_lastTick = 0.0;
    double m_sinceWords = 0.0;
    QTimer* m_timer = nullptr;
};

}  // namespace bw
