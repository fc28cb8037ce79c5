// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/speed_window_page.h"

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "core/model/typed_over.h"
#include "core/store/farm_file.h"
#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/chips.h"
#include "ui/kit/data_table.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/nozzle_icon.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/speed_window/boom_view.h"
#include "ui/pages/speed_window/candidate_picker.h"
#include "ui/pages/speed_window/cursor_strip.h"
#include "ui/pages/speed_window/duty_view.h"
#include "ui/pages/speed_window/evidence_text.h"
#include "ui/pages/speed_window/pressure_view.h"
#include "ui/pages/speed_window/rate_view.h"
#include "ui/pages/speed_window/speed_table.h"
#include "ui/pages/speed_window/window_paint.h"
#include "ui/pages/speed_window/window_wall.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const QString kChoicesKey = u"speed_window.candidates"_s;

}  // namespace

SpeedWindowPage::SpeedWindowPage(FarmSession& session, QWidget* parent)
    : Page(session, parent), m_states(new QStackedWidget), m_study(new WindowStudy) {
    setObjectName(u"speedWindow"_s);
    auto* all = new QHBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(m_states);
    m_states->addWidget(buildWork());
    m_states->addWidget(buildEmpty());
    buildHeader();
    addActions();
}

SpeedWindowPage::~SpeedWindowPage() = default;

void SpeedWindowPage::addActions() {
    addPageAction(
        this,
        {u"speed_window.candidates"_s, tr("Candidate nozzles…"), u"plus"_s,
         QKeySequence(Qt::Key_Insert), tr("Take nozzles in to compare, or put them back")},
        [this] { openPicker(); });
    addPageAction(this,
                  {u"speed_window.copy"_s,
                   tr("Copy picture and figures"),
                   u"copy"_s,
                   QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C),
                   {}},
                  [this] { copyView(); });
    addPageAction(this,
                  {u"speed_window.print"_s, tr("Print cab card…"), u"print"_s, QKeySequence::Print,
                   tr("The job in hand, or all jobs of the machine, on paper or as PDF")},
                  [this] { offerPrint(); });
}

QString SpeedWindowPage::hint() const {
    return tr(
        "Alt+1 pressure · Alt+2 rate · Alt+3 by speed · Alt+4 along the boom · Ins candidates");
}

void SpeedWindowPage::refresh() {
    if (!m_hasReadChoices) {
        m_candidates.read(session().file().setting(kChoicesKey));
        m_hasReadChoices = true;
    }
    fillMachines();
    fillJobs();
    followSession();
    study();
    fillNozzles();
    if (m_picker->isVisible()) fillPicker();
    showStudy();
}

void SpeedWindowPage::fillMachines() {
    const QSignalBlocker quiet(m_machines);
    m_machines->clear();
    for (const auto& stored : session().season().machines)
        m_machines->addItem(qs(stored.machine.name), QVariant::fromValue<qlonglong>(stored.id));
    m_machines->setCurrentData(QVariant::fromValue<qlonglong>(session().currentMachine()));
    m_machines->setToolTip(m_machines->currentText());
}

void SpeedWindowPage::fillJobs() {
    const QSignalBlocker quiet(m_jobs);
    m_jobs->clear();
    const Machine* machine = session().machine(session().currentMachine());
    if (!machine) return;
    const NumberStyle style = session().styleOf(*machine);
    for (const auto& stored : session().jobsOf(session().currentMachine())) {
        QString words = qs(stored.job.name);
        if (stored.job.rate) words += u" · "_s + shown(stored.job.rate->value, style);
        m_jobs->addItem(words, QVariant::fromValue<qlonglong>(stored.id));
    }
    m_jobs->setCurrentData(QVariant::fromValue<qlonglong>(session().currentJob()));
    m_jobs->setToolTip(m_jobs->currentText());
}

void SpeedWindowPage::fillNozzles() {
    const QSignalBlocker quiet(m_nozzleBox);
    m_nozzleBox->clear();
    for (const auto& n : m_study->nozzles) {
        QString words = qs(n.nozzle.name);
        if (n.position > 0) words += u" · "_s + tr("pos. %1").arg(n.position);
        m_nozzleBox->addItem(nozzleIcon(qs(n.nozzle.sizeCode)), words, qs(n.nozzle.name));
    }
    if (!m_study->nozzles.empty()) m_nozzleBox->setCurrentIndex(static_cast<int>(m_study->inHand));
    m_nozzleBox->setToolTip(m_nozzleBox->currentText());
    m_nozzleBox->setEnabled(m_nozzleBox->count() > 0);
    m_jobs->setEnabled(m_jobs->count() > 0);
    m_machines->setEnabled(m_machines->count() > 0);
    m_candidateButton->setEnabled(session().job(session().currentJob()) != nullptr);
}

/// A nozzle that another page took in hand becomes the one in hand here, if it is a candidate. The
/// first of the file is no one's choice: a session starts with it.
void SpeedWindowPage::followSession() {
    const RecordId now = session().currentNozzle();
    if (now == m_seenNozzle) return;
    const auto& nozzles = session().season().nozzles;
    const bool isDefault = m_seenNozzle == 0 && !nozzles.empty() && nozzles.front().id == now;
    m_seenNozzle = now;
    const Nozzle* nozzle = session().nozzle(now);
    if (nozzle && !isDefault && session().currentJob() != 0)
        m_candidates.takeInHand(session().currentJob(), nozzle->name);
}

void SpeedWindowPage::study() {
    const RecordId jobId = session().currentJob();
    const Machine* machine = session().machine(session().currentMachine());
    const Job* job = machine ? session().job(jobId) : nullptr;
    std::vector<Nozzle> candidates;
    std::string inHand;
    if (job) {
        candidates = m_candidates.candidates(jobId, *machine, *job, session().season().nozzles);
        inHand = m_candidates.inHand(jobId);
        const auto has = [&](const std::string& name) {
            return std::any_of(candidates.begin(), candidates.end(),
                               [&](const auto& n) { return n.name == name; });
        };
        if (!has(inHand)) inHand = job->pinnedNozzle;
    }
    const NumberStyle style = machine ? session().styleOf(*machine) : session().currentStyle();
    Machine tried = machine ? *machine : Machine{};
    if (m_floor) tried.limits.pressureFloor = movedByHand(*m_floor);
    *m_study = studied(machine ? &tried : nullptr, job, style, candidates, inHand);
}

void SpeedWindowPage::showEmpty(const QString& sentence, const QString& button,
                                const QString& target) {
    // The views hold on to the study: none while there is nothing to show.
    m_pressure->setStudy(nullptr, {});
    m_duty->setStudy(nullptr, {});
    m_rate->setStudy(nullptr, {});
    m_tableModel->setStudy(nullptr);
    m_boom->setStudy(nullptr);
    m_emptyText->setText(sentence);
    m_emptyButton->setText(button);
    m_emptyButton->updateGeometry();
    m_emptyTarget = target;
    m_emptyDemo->setVisible(session().season().machines.empty());
    m_states->setCurrentIndex(1);
    setFocusProxy(m_emptyButton);
}

void SpeedWindowPage::showStudy() {
    const WindowStudy& s = *m_study;
    tellWall();
    switch (s.state) {
        case WindowStudy::State::NoMachine:
            return showEmpty(
                tr("A speed window needs a machine first: its width, sections and what "
                   "its controller allows."),
                tr("Enter a machine"), u"machine"_s);
        case WindowStudy::State::NoJob:
            return showEmpty(
                tr("%1 has no job yet. A speed window belongs to a job: a rate and the "
                   "speeds you drive.")
                    .arg(qs(s.machine.name)),
                tr("Enter a job"), u"season"_s);
        case WindowStudy::State::NoNozzle:
            return showEmpty(tr("No nozzle comes near this job. Take one in, or a size of the "
                                "standard."),
                             tr("Choose candidates"), u"candidates"_s);
        case WindowStudy::State::Refused: {
            const QString page = pageForProblem(s.problem);
            const QString name = page == u"nozzles"_s  ? qs(s.hand().nozzle.name)
                                 : page == u"season"_s ? qs(s.job.name)
                                                       : qs(s.machine.name);
            return showEmpty(
                tr("%1: %2").arg(name, qs(session().sentences().of(s.problem, s.style))),
                tr("Mend it there"), page);
        }
        case WindowStudy::State::Ready:
            break;
    }
    m_states->setCurrentIndex(0);
    const VerdictText verdict = verdictText(s, session().sentences());
    m_evidence->setVerdict(verdict.title, verdict.text, verdict.tone);
    // Its many lines take longer than a frame to lay out: while a floor is dragged they wait for a
    // rest of the hand.
    if (m_floor)
        m_evidenceLater->start();
    else
        tellEvidence();
    const QString summary = verdict.title + u". "_s + verdict.text;
    m_pressure->setStudy(&s, summary);
    m_duty->setStudy(&s, summary);
    m_first->setCurrentWidget(s.isPulsed() ? static_cast<QWidget*>(m_duty) : m_pressure);
    m_viewChoice->button(View::Pressure)->setText(s.isPulsed() ? tr("On-time") : tr("Pressure"));
    // While a floor is tried only what is seen follows; the rest waits until it is let go.
    if (!m_floor) {
        m_rate->setStudy(&s, summary);
        m_tableModel->setStudy(&s);
        m_boom->setStudy(&s);
        fitColumns();
    }
    placeFloorGrip();
    m_span->setSpan(spanOf(s, session().sentences()));
    showView(m_views->currentIndex());
    if (m_cursorJob != session().currentJob() || m_cursor.si() <= 0) {
        m_cursorJob = session().currentJob();
        m_cursor = s.model().demand().usual;
    }
    if (m_views->currentIndex() == View::ByTable)
        m_table->setCurrentIndex(m_tableModel->index(m_tableModel->rowNear(m_cursor), 0));
    moveCursor(std::clamp(m_cursor, s.speedAt(std::max(s.xFrom, kCursorStep)), s.speedAt(s.xTo)));
}

/// Columns as wide as their figures and the longer line of their heading.
void SpeedWindowPage::fitColumns() {
    const QFontMetrics bold(textFont(TextSize::Small, true)), plain(m_table->font());
    for (int c = 0; c < m_tableModel->columnCount(); ++c) {
        int width = c == SpeedTable::Stands ? px(196) : 0;
        const QString heading =
            m_tableModel->headerData(c, Qt::Horizontal, Qt::DisplayRole).toString();
        for (const QString& line : heading.split(u'\n'))
            width = std::max(width, bold.horizontalAdvance(line) + px(16));
        for (int r = 0; c != SpeedTable::Stands && r < m_tableModel->rowCount(); ++r) {
            const QString cell = m_tableModel->index(r, c).data().toString();
            width = std::max(width, plain.horizontalAdvance(cell) + px(18));
        }
        m_table->setColumnWidth(c, width);
    }
}

void SpeedWindowPage::showState(const QString& state) {
    const QStringList boom{u"boom_even"_s, u"boom_turn"_s, u"boom_slope"_s};
    if (boom.contains(state)) {
        m_viewChoice->setCurrentIndex(View::Along);
        return m_boom->showKind(static_cast<StripKind>(boom.indexOf(state)));
    }
    m_viewChoice->setCurrentIndex(state == u"rate"_s    ? View::Rate
                                  : state == u"table"_s ? View::ByTable
                                                        : View::Pressure);
}

void SpeedWindowPage::showView(int view) {
    if (m_floor && view != m_views->currentIndex()) previewFloor({});
    // The row first: a table that comes in front without one takes its first, and the cursor along.
    if (view == View::ByTable && m_views->currentIndex() != View::ByTable)
        m_table->setCurrentIndex(m_tableModel->index(m_tableModel->rowNear(m_cursor), 0));
    m_views->setCurrentIndex(view);
    setFocusProxy(view == View::Pressure ? m_first->currentWidget() : m_views->currentWidget());
    m_span->setVisible(view == View::Pressure || view == View::Rate);
    m_strip->setVisible(view != View::Along);
    m_viewHint->setText(view == View::ByTable ? tr("Ctrl+C copies")
                        : view == View::Along ? tr("← → walk along the boom")
                                              : tr("Drag, or ← →"));
    if (view == View::Along) m_boom->showCursor(m_cursor);
    showCautions();
}

void SpeedWindowPage::showCautions() {
    if (m_study->state != WindowStudy::State::Ready) return;
    const bool isAlong = m_views->currentIndex() == View::Along;
    m_caution->setTexts(isAlong ? m_boom->cautions() : cautionsNow(), true);
}

void SpeedWindowPage::showAsTable() {
    if (m_views->currentIndex() == View::Along) return m_boom->toggleTable();
    m_viewChoice->setCurrentIndex(View::ByTable);
}

/// Asks the models for the one point and moves what shows it; nothing is solved again.
void SpeedWindowPage::moveCursor(Speed speed) {
    if (m_study->state != WindowStudy::State::Ready) return;
    m_cursor = speed;
    m_pressure->showCursor(speed);
    m_duty->showCursor(speed);
    m_rate->showCursor(speed);
    m_strip->show(*m_study, session().sentences(), speed);
    if (auto* onWall = static_cast<WindowWall*>(wall())) onWall->showCursor(speed);
    if (m_views->currentIndex() == View::Along) m_boom->showCursor(speed);
}

void SpeedWindowPage::takeNozzle(const QString& nozzle) {
    m_candidates.takeInHand(session().currentJob(), ss(nozzle));
    keepChoices();
    // A nozzle of the file is in hand on all pages: the frame then has them look again.
    const auto& own = session().season().nozzles;
    const auto found = std::find_if(own.begin(), own.end(), [&](const auto& stored) {
        return stored.nozzle.name == ss(nozzle);
    });
    if (found == own.end() || found->id == session().currentNozzle()) return refresh();
    m_seenNozzle = found->id;
    session().setCurrentNozzle(found->id);
}

void SpeedWindowPage::openPicker() {
    if (!session().job(session().currentJob())) return;
    fillPicker();
    m_picker->openBelow(m_candidateButton->isVisible() ? static_cast<QWidget&>(*m_candidateButton)
                                                       : *this);
}

void SpeedWindowPage::fillPicker() {
    std::vector<CandidatePicker::Entry> entries;
    const auto add = [&](const Nozzle& n) {
        const bool taken = std::any_of(m_study->nozzles.begin(), m_study->nozzles.end(),
                                       [&](const auto& s) { return s.nozzle.name == n.name; });
        entries.push_back({qs(n.name), qs(n.sizeCode), n.isBuiltIn, taken});
    };
    for (const auto& stored : session().season().nozzles) add(stored.nozzle);
    for (const auto& size : builtInNozzles()) add(size);
    m_picker->setEntries(entries);
}

void SpeedWindowPage::changeCandidates(const QString& nozzle, bool take) {
    const RecordId job = session().currentJob();
    if (take)
        m_candidates.add(job, ss(nozzle));
    else
        m_candidates.remove(job, ss(nozzle));
    keepChoices();
    study();
    fillNozzles();
    showStudy();
}

/// In the farm file, so that the next start shows the same candidates. Where the file may not be
/// written they are remembered until the program ends.
void SpeedWindowPage::keepChoices() {
    static_cast<void>(session().file().setSetting(kChoicesKey, m_candidates.text()));
}

void SpeedWindowPage::copyView() {
    switch (m_views->currentIndex()) {
        case View::Pressure:
            (m_study->isPulsed() ? static_cast<ChartPanel*>(m_duty) : m_pressure)->copy();
            break;
        case View::Rate:
            m_rate->copy();
            break;
        case View::Along:
            m_boom->copy();
            break;
        default:
            QApplication::clipboard()->setText(m_table->selectionText(true));
            break;
    }
}

void SpeedWindowPage::followLink(const QString& link) {
    if (link.startsWith(kPageLink)) Q_EMIT goTo(link.mid(kPageLink.size()));
}

}  // namespace bw
