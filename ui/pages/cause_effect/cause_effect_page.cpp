// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/cause_effect_page.h"

#include <QAction>
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QTimer>
#include <algorithm>
#include <chrono>

#include "core/simulation/need_curve.h"
#include "core/simulation/teaching_machine.h"
#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/circuit_view.h"
#include "ui/kit/nozzle_icon.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/cause_effect/fault_panel.h"
#include "ui/pages/cause_effect/lever_panel.h"
#include "ui/pages/cause_effect/point_chart.h"
#include "ui/pages/cause_effect/read_outs.h"
#include "ui/pages/cause_effect/run_words.h"
#include "ui/pages/cause_effect/section_strip.h"
#include "ui/pages/cause_effect/strip_chart.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

double steadySeconds() {
    using namespace std::chrono;
    return duration<double>(steady_clock::now().time_since_epoch()).count();
}

void write(TextLabel* label, const QString& text) {
    if (label->text() != text) label->setText(text);
}

/// A nozzle that brings the job's usual speed between floor and ceiling.
bool suits(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto setup = LoopSetup::make(machine, nozzle, job);
    return setup && setup->need.control && !(setup->floor && setup->need.sensor < *setup->floor) &&
           !(setup->ceiling && setup->need.sensor > *setup->ceiling);
}

}  // namespace

CauseEffectPage::CauseEffectPage(FarmSession& session, QWidget* parent)
    : Page(session, parent),
      m_states(new QStackedWidget),
      m_clock(steadySeconds),
      m_timer(new QTimer(this)) {
    setObjectName(u"causeEffect"_s);
    auto* all = new QHBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_states);
    m_states->addWidget(buildWork());
    m_states->addWidget(buildMessage());
    buildHeader();
    addActions();
    m_timer->setTimerType(Qt::PreciseTimer);
    connect(m_timer, &QTimer::timeout, this, &CauseEffectPage::tick);
}

CauseEffectPage::~CauseEffectPage() = default;

QString CauseEffectPage::hint() const {
    return tr(
        "F5 freeze \u00b7 F6 step \u00b7 F7 guess first \u00b7 Alt+1 traces \u00b7 Alt+2 "
        "circuit \u00b7 Alt+3 levers \u00b7 Alt+4 faults");
}

NumberStyle CauseEffectPage::numbers() const {
    return session().styleOf(m_source.machine);
}

void CauseEffectPage::refresh() {
    fillHeader();
    makeRun();
    readCalm();
}

void CauseEffectPage::fillHeader() {
    const QSignalBlocker quietMachines(m_machines), quietJobs(m_jobs);
    m_machines->clear();
    for (const auto& stored : session().season().machines)
        m_machines->addItem(qs(stored.machine.name), QVariant::fromValue<qlonglong>(stored.id));
    m_machines->setCurrentData(QVariant::fromValue<qlonglong>(session().currentMachine()));
    m_jobs->clear();
    if (const Machine* machine = session().machine(session().currentMachine())) {
        const NumberStyle style = session().styleOf(*machine);
        for (const auto& stored : session().jobsOf(session().currentMachine())) {
            QString words = qs(stored.job.name);
            if (stored.job.rate) words += u" \u00b7 "_s + shown(stored.job.rate->value, style);
            m_jobs->addItem(words, QVariant::fromValue<qlonglong>(stored.id));
        }
    }
    m_jobs->setCurrentData(QVariant::fromValue<qlonglong>(session().currentJob()));
    for (ChoiceBox* box : {m_machines, m_jobs}) {
        box->setEnabled(box->count() > 0);
        box->setToolTip(box->currentText());
    }
}

/// The one chosen here; else the job's own, those aboard and the user's, the first that suits.
const Nozzle* CauseEffectPage::nozzleInHand(const Machine& machine, const Job& job) {
    std::vector<const Nozzle*> all;
    const auto add = [&](const std::string& name) {
        const Nozzle* nozzle = name.empty() ? nullptr : session().nozzleNamed(name);
        if (nozzle && std::find(all.begin(), all.end(), nozzle) == all.end()) all.push_back(nozzle);
    };
    add(job.pinnedNozzle);
    for (const auto& set : machine.setsAboard) add(set.nozzle);
    for (const auto& stored : session().season().nozzles) add(stored.nozzle.name);
    const QSignalBlocker quiet(m_nozzles);
    m_nozzles->clear();
    for (const Nozzle* nozzle : all)
        m_nozzles->addItem(nozzleIcon(qs(nozzle->sizeCode)), qs(nozzle->name), qs(nozzle->name));
    m_nozzles->setEnabled(!all.empty());
    if (m_nozzleJob != session().currentJob()) m_nozzleName.clear();
    const Nozzle* taken =
        m_nozzleName.isEmpty() ? nullptr : session().nozzleNamed(ss(m_nozzleName));
    if (!taken && job.pinnedNozzle.empty()) {
        const auto fitting = std::find_if(all.begin(), all.end(),
                                          [&](const Nozzle* n) { return suits(machine, *n, job); });
        if (fitting != all.end()) taken = *fitting;
    }
    if (!taken && !all.empty()) taken = all.front();
    if (taken) m_nozzles->setCurrentData(qs(taken->name));
    m_nozzles->setToolTip(m_nozzles->currentText());
    return taken;
}

void CauseEffectPage::makeRun() {
    const Machine* machine = session().machine(session().currentMachine());
    const Job* job = machine ? session().job(session().currentJob()) : nullptr;
    if (!machine)
        return showMessage(tr("Cause and effect needs a machine first: the running loop is made "
                              "from its profile."),
                           tr("Enter a machine"), u"machine"_s, false);
    if (!job)
        return showMessage(tr("%1 has no job yet. The loop runs a job: a rate and the speeds you "
                              "drive.")
                               .arg(qs(machine->name)),
                           tr("Enter a job"), u"season"_s, false);
    Source source{session().currentMachine(), session().currentJob(), *machine, {}, *job, false};
    const Nozzle* nozzle = nozzleInHand(*machine, *job);
    if (!nozzle)
        return showMessage(tr("No nozzle is aboard or in the list yet."), tr("Enter a nozzle"),
                           u"nozzles"_s, false);
    source.nozzle = *nozzle;
    source.isTaught = m_taughtFor == source.machineId;
    TeachingMachine taught = teachingMachine(*machine, *nozzle, *job);
    const auto setup = LoopSetup::make(source.isTaught ? taught.machine : *machine, *nozzle, *job);
    if (!setup) {
        const bool canTeach =
            !source.isTaught && LoopSetup::make(taught.machine, *nozzle, *job).isOk();
        const NumberStyle style = session().styleOf(*machine);
        return showMessage(u"%1: %2"_s.arg(qs(machine->name),
                                           qs(session().sentences().of(setup.problem(), style))),
                           tr("Fill it in there"), placeOf(setup.problem()), canTeach);
    }
    m_taught->setVisible(source.isTaught && !taught.assumed.empty());
    m_taughtText->setText(tr("Teaching values, not this machine's own: %1. Nothing of it is "
                             "written into the profile.")
                              .arg(partsAssumed(taught.assumed)));
    if (source.isTaught) source.machine = std::move(taught.machine);
    m_states->setCurrentIndex(0);
    setFocusProxy(m_freeze);
    if (m_run && source == m_source) {
        m_levers->setRun(*m_run, numbers());
        return showSetup();
    }
    startRun(*setup, source);
}

void CauseEffectPage::startRun(const LoopSetup& setup, const Source& source) {
    m_source = source;
    const auto demand = demandOf(source.job);
    m_run = std::make_unique<Run>(setup, *demand, m_run ? m_run->seed() : 1);
    m_besideKind = Beside::Nothing;
    m_beside->setCurrentIndex(0);
    m_isGuessing = false;
    m_top = 0.0;
    m_droplets.clear();
    if (const auto model = WindowModel::make(source.machine, source.nozzle, source.job))
        m_droplets = dropletStretches(*model);
    m_boom->setSections(source.machine.sections->value);
    m_circuit->setMachine(source.machine);
    m_drawnRestrictor.reset();
    m_levers->setRun(*m_run, numbers());
    m_lastTick = m_clock();
    showSetup();
}

void CauseEffectPage::showMessage(const QString& text, const QString& button, const QString& target,
                                  bool canTeach) {
    m_run.reset();
    m_messageText->setText(text);
    m_messageButton->setText(button);
    m_messageButton->updateGeometry();
    m_messageTarget = target;
    m_teachButton->setVisible(canTeach);
    m_demoButton->setVisible(session().season().machines.empty());
    m_states->setCurrentIndex(1);
    setFocusProxy(m_messageButton);
}

void CauseEffectPage::takeLevers(const Levers& levers, const QString& words) {
    if (!m_run) return;
    // What the core refuses stays as it was; the levers below are written anew either way.
    static_cast<void>(m_run->setLevers(levers, words.toStdString()));
    if (m_besideKind == Beside::WithoutFaults) {
        Levers healthy = m_run->levers();
        healthy.faults.clear();
        m_run->moveOther(healthy);
    }
    showSetup();
}

/// Something was moved: levers, curves and bands follow, pictures too unless they are held back.
void CauseEffectPage::showSetup() {
    if (!m_run) return;
    m_levers->setLevers(*m_run);
    m_faults->setFaults(m_run->levers().faults, numbers());
    m_boom->setOn(m_run->levers().isOn);
    showRestrictor();
    const auto faults = m_run->levers().faults.size();
    m_sideChoice->button(1)->setText(faults == 0 ? tr("Faults") : tr("Faults (%1)").arg(faults));
    m_sideChoice->button(1)->updateGeometry();
    m_noise->setText(tr("New noise (%1)").arg(m_run->seed()));
    m_noise->updateGeometry();
    m_freeze->setText(m_isFrozen ? tr("Go on") : tr("Freeze"));
    m_guess->setText(m_isGuessing ? tr("Reveal") : tr("Guess first"));
    m_guess->updateGeometry();
    m_freeze->setEnabled(!m_isGuessing);
    m_step->setEnabled(!m_isGuessing);
    m_noise->setEnabled(!m_isGuessing);
    m_beside->setEnabled(!m_isGuessing);
    if (!m_isGuessing) {
        m_point->showSetup(*m_run, m_droplets, numbers(), pressureTop());
        showFrame();
    }
    showWords();
}

/// The drawn circuit names the position that the valve stands in now.
void CauseEffectPage::showRestrictor() {
    const LoopRestrictor& valve = m_run->loop().setup().restrictor;
    if (!valve.isFitted || m_drawnRestrictor == valve.position) return;
    m_drawnRestrictor = valve.position;
    Machine machine = m_source.machine;
    machine.restrictor.position = Sourced<RestrictorPosition>(valve.position);
    m_circuit->setMachine(machine);
}

/// End of both pressure axes in the reader's unit: holds ceiling, need and where the point is, and
/// shrinks only when something is moved.
double CauseEffectPage::pressureTop() const {
    const Unit unit = displayUnit(numbers().units, Dimension::Pressure);
    const LoopSetup& setup = m_run->loop().setup();
    double most = 1.5 * in(m_run->healthy().need.sensor, unit);
    if (setup.ceiling) most = std::max(most, 1.15 * in(*setup.ceiling, unit));
    if (setup.floor) most = std::max(most, 1.15 * in(*setup.floor, unit));
    if (!m_run->trace().empty())
        most = std::max(most, 1.05 * in(Pressure::fromSi(m_run->trace().newest().sensor), unit));
    if (most > m_top || most < 0.6 * m_top) m_top = niceRange(0.0, most, 5).second;
    return m_top;
}

void CauseEffectPage::showFrame() {
    if (m_pictures->currentIndex() != 0) return;
    const StripFrame frame{m_run.get(), numbers(), shownSeconds()};
    const double before = m_top;
    const double top = pressureTop();
    if (top != before) m_point->showSetup(*m_run, m_droplets, numbers(), top);
    m_rate->showFrame(frame);
    m_pressure->showFrame(frame, top);
    m_point->showPoint(*m_run);
}

void CauseEffectPage::showWords() {
    m_sinceWords = 0.0;
    if (!m_run) return;
    if (m_isGuessing) {
        write(m_why, tr("Guess first: what will the display show, and what comes on the ground? "
                        "The run waits; levers and faults act when you reveal."));
        write(m_verdict, tr("Hidden until you reveal it"));
        write(m_verdictText, {});
        m_verdict->setRole(Role::Ink);
        m_levers->setStability({});
        m_read->hideFigures();
        m_boom->setShares({});
        m_circuit->setReadings({});
        return;
    }
    const RunWords words(session().sentences(), numbers());
    const auto reading = RunWords::readingOf(*m_run);
    write(m_why, words.why(*m_run));
    write(m_verdict, words.verdictTitle(*m_run, reading));
    write(m_verdictText, words.verdictText(reading));
    m_verdict->setRole(!reading                                         ? Role::Quiet
                       : reading->shown.verdict == TraceVerdict::OnRate ? Role::Ok
                                                                        : Role::Limit);
    m_levers->setStability(words.stability(*m_run));
    const RateLoop* other = m_run->other();
    const bool hasOther = other && !m_run->otherTrace().empty();
    m_read->show(m_run->trace().newest(), reading,
                 hasOther ? &m_run->otherTrace().newest() : nullptr, numbers());
    m_boom->setShares(sectionShares(m_run->loop().setup(), m_run->loop().sample()));
    if (m_pictures->currentIndex() == 1) m_circuit->setReadings(words.circuit(*m_run));
}

}  // namespace bw
