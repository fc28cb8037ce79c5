// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/yard_page.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/yard/yard_book.h"
#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/catch_pane.h"
#include "ui/pages/yard/check_list.h"
#include "ui/pages/yard/check_pane.h"
#include "ui/pages/yard/checklist_pane.h"
#include "ui/pages/yard/firm_up_runner.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr int kListWidth = 236;
/// From here on the list and a catch test stand side by side.
constexpr int kWideFrom = 1400;
const QString kCatch = u"Y7"_s;
const QString kChecklist = u"checklist"_s;

}  // namespace

YardPage::YardPage(FarmSession& session, QWidget* parent)
    : Page(session, parent),
      m_stack(new QStackedWidget),
      m_list(new CheckList),
      m_panes(new QStackedWidget),
      m_check(new CheckPane(session)),
      m_catch(new CatchPane(session)),
      m_checklist(new ChecklistPane(session)),
      m_firmUp(new FirmUpRunner(this)) {
    setObjectName(u"yard"_s);
    buildHeader();
    auto* outer = new QHBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* empty = new EmptyPage(tr("A check belongs to a machine: its readings and what they give "
                                   "are kept with it. Enter the machine first."),
                                tr("Enter a machine"), tr("Try the demo season"));
    m_stack->addWidget(empty);
    m_stack->addWidget(buildWork());
    outer->addWidget(m_stack);
    connect(empty, &EmptyPage::acted, this, [this] { Q_EMIT goTo(u"machine"_s); });
    connect(empty, &EmptyPage::secondActed, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
    connectPanes();
    addActions();
}

YardPage::~YardPage() = default;

void YardPage::buildHeader() {
    m_tools = new QWidget;
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(12));
    m_machineBox = new ChoiceBox;
    m_machineBox->setObjectName(u"yard.header.machine"_s);
    m_machineBox->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_machineBox->setMinimumContentsLength(12);
    m_machineBox->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_machineBox->setMaximumWidth(px(320));
    m_listButton = new Button(tr("Checks"), u"yard"_s);
    m_listButton->setObjectName(u"yard.header.list"_s);
    m_listButton->setKey(Qt::Key_F8, false);
    m_listButton->setToolTip(tr("Shows the list of checks, or gives its room to the check"));
    row->addWidget(captioned(tr("Machine"), m_machineBox), 1);
    row->addStretch(1);
    row->addWidget(m_listButton);
    m_printButton = new Button(tr("Print …"), u"print"_s);
    m_printButton->setObjectName(u"yard.header.print"_s);
    m_printButton->setToolTip(
        tr("Prints what is in hand: the catch test, the list, or the check "
           "with room for its readings"));
    row->addWidget(m_printButton);
    connect(m_printButton, &QAbstractButton::clicked, this, &YardPage::offerPrint);
    connect(m_machineBox, &QComboBox::activated, this, [this](int index) {
        leaveCheck();
        m_catch->commitPending();
        session().setCurrentMachine(m_machineBox->itemData(index).toLongLong());
        refresh();
    });
    connect(m_listButton, &QAbstractButton::clicked, this, &YardPage::toggleList);
}

QWidget* YardPage::buildWork() {
    auto* work = new QWidget;
    auto* row = new QHBoxLayout(work);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_side = new QWidget;
    m_side->setFixedWidth(px(kListWidth));
    auto* side = new QHBoxLayout(m_side);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(0);
    m_list->setObjectName(u"yard.list"_s);
    m_list->setAccessibleName(tr("Yard checks of this machine"));
    side->addWidget(m_list, 1);
    side->addWidget(new HairLine(Qt::Vertical));
    row->addWidget(m_side);
    m_panes->addWidget(m_check);
    m_panes->addWidget(m_catch);
    m_panes->addWidget(m_checklist);
    row->addWidget(m_panes, 1);
    return work;
}

void YardPage::connectPanes() {
    connect(m_list, &CheckList::taken, this, [this](const QString& id) { openCheck(id, false); });
    connect(m_list, &QListWidget::itemActivated, this,
            [this] { openCheck(m_list->inHand(), true); });
    connect(m_check, &CheckPane::failed, this, &YardPage::tell);
    connect(m_check, &CheckPane::told, this,
            [this](const QString& text) { Q_EMIT notice(text, false); });
    connect(m_catch, &CatchPane::failed, this, &YardPage::tell);
    connect(m_catch, &CatchPane::stateChanged, this, &YardPage::showRoom);
    connect(m_checklist, &ChecklistPane::failed, this, &YardPage::tell);
    connect(m_checklist, &ChecklistPane::checkWanted, this,
            [this](const QString& id) { openCheck(id, true); });
    connect(m_firmUp, &FirmUpRunner::finished, this, &YardPage::presentList);
    connect(&session(), &FarmSession::yardChanged, this, &Page::markStale);
}

void YardPage::addActions() {
    addPageAction(this,
                  {u"yard.list"_s, tr("&List of checks"), u"yard"_s, QKeySequence(Qt::Key_F8), {}},
                  [this] { toggleList(); });
    addPageAction(this, {u"yard.print"_s, tr("&Print …"), u"print"_s, QKeySequence::Print, {}},
                  [this] { offerPrint(); });
    addPageAction(this,
                  {u"yard.takeBack"_s,
                   tr("&Take the last catch back"),
                   u"back"_s,
                   QKeySequence(u"Ctrl+Backspace"_s),
                   {}},
                  [this] {
                      if (m_inHand == kCatch) m_catch->takeBack();
                  });
}

QString YardPage::hint() const {
    return tr("F8 list of checks · a figure may carry its own unit");
}

RecordId YardPage::machineInHand() const {
    const auto& machines = session().season().machines;
    if (session().machine(session().currentMachine())) return session().currentMachine();
    return machines.empty() ? 0 : machines.front().id;
}

const Machine* YardPage::machine() const {
    return session().machine(machineInHand());
}

void YardPage::presentMachines() {
    const QSignalBlocker quiet(m_machineBox);
    m_machineBox->clear();
    for (const auto& stored : session().season().machines) {
        const QString name = qs(stored.machine.name);
        m_machineBox->addItem(name.isEmpty() ? tr("(no name)") : name,
                              QVariant::fromValue<qint64>(stored.id));
    }
    m_machineBox->setCurrentData(QVariant::fromValue<qint64>(machineInHand()));
    m_machineBox->setToolTip(m_machineBox->currentText());
}

void YardPage::refresh() {
    const Machine* now = machine();
    presentMachines();
    m_tools->setEnabled(now);
    m_stack->setCurrentIndex(now ? 1 : 0);
    if (!now) return;
    askFirmUp();
    presentList();
    if (machineInHand() != m_shownMachine) {
        const auto* inHand = yardCheck(ss(m_inHand));
        const bool isHere = m_inHand == kChecklist || (inHand && applies(*inHand, *now));
        openCheck(isHere ? m_inHand : kCatch, false);
        return;
    }
    // The others are opened anew when they are shown.
    if (m_panes->currentWidget() == m_check) m_check->refresh();
    if (m_panes->currentWidget() == m_catch) m_catch->refresh();
    if (m_panes->currentWidget() == m_checklist) m_checklist->refresh();
    showRoom();
}

void YardPage::askFirmUp() {
    const Machine* now = machine();
    const Job* job = session().job(session().currentJob());
    const auto jobs = session().jobsOf(machineInHand());
    const bool isOwn = std::any_of(jobs.begin(), jobs.end(), [this](const StoredJob& stored) {
        return stored.id == session().currentJob();
    });
    if (!isOwn) job = jobs.empty() ? nullptr : &jobs.front().job;
    const Nozzle* nozzle = job ? session().nozzleNamed(job->pinnedNozzle) : nullptr;
    if (!nozzle && job && !now->setsAboard.empty())
        nozzle = session().nozzleNamed(now->setsAboard.front().nozzle);
    if (nozzle)
        m_firmUp->run({*now, *nozzle, *job});
    else
        m_firmUp->clear();
}

CheckLine YardPage::lineOf(const YardCheckText& check, const Machine& machine) const {
    CheckLine line;
    line.id = qs(check.id);
    line.title = qs(check.title);
    line.isHere = applies(check, machine);
    if (!line.isHere) {
        line.state = whyNotHere(session(), check, machine);
        return line;
    }
    line.detail = tr("%1 min · %2").arg(check.minutes).arg(firmsUpWords(session(), check.id));
    const YardKind kind = line.id == kCatch ? YardKind::CatchTest : YardKind::Check;
    if (newestRecord(session(), machineInHand(), kind, check.id, false)) {
        line.mark = CheckLine::Mark::Begun;
        line.state = tr("begun, go on");
    } else if (const auto* done = newestRecord(session(), machineInHand(), kind, check.id, true)) {
        line.mark = CheckLine::Mark::Done;
        line.state = tr("done %1").arg(dayWords(done->record.finished));
    }
    if (line.id == m_firmUp->check() && line.mark != CheckLine::Mark::Begun) {
        line.mark = CheckLine::Mark::Best;
        line.state = tr("firms up the job in hand most");
    }
    return line;
}

CheckLine YardPage::checklistLine() const {
    CheckLine line;
    line.id = kChecklist;
    line.title = tr("Pre-season checklist");
    line.detail = tr("made from the profile, ticked with date");
    for (const auto& part : wholeChecklist()) {
        const std::string phase(choiceName(part.phase));
        if (!newestRecord(session(), machineInHand(), YardKind::Checklist, phase, false)) continue;
        line.mark = CheckLine::Mark::Begun;
        line.state = tr("begun, go on");
    }
    return line;
}

void YardPage::presentList() {
    const Machine* now = machine();
    if (!now) return;
    QVector<CheckLine> lines, others;
    for (const auto& check : yardChecks()) {
        const CheckLine line = lineOf(check, *now);
        (line.isHere ? lines : others).append(line);
    }
    // The catch test, done every year, and the checklist come first.
    std::stable_partition(lines.begin(), lines.end(),
                          [](const CheckLine& line) { return line.id == kCatch; });
    lines.insert(std::min<qsizetype>(1, lines.size()), checklistLine());
    m_list->setLines(lines + others);
    m_list->setInHand(m_inHand);
}

void YardPage::openCheck(const QString& id, bool takeFocus) {
    const Machine* now = machine();
    const YardCheckText* check = yardCheck(ss(id));
    if (!now || (id != kChecklist && (!check || !applies(*check, *now)))) return;
    const bool isOther = id != m_inHand || m_shownMachine != machineInHand();
    if (isOther) leaveCheck();
    m_inHand = id;
    m_shownMachine = machineInHand();
    m_list->setInHand(id);
    if (id == kChecklist) {
        m_panes->setCurrentWidget(m_checklist);
        if (isOther) m_checklist->open(m_shownMachine);
        if (takeFocus) m_checklist->takeFocus();
    } else if (id == kCatch) {
        m_panes->setCurrentWidget(m_catch);
        if (isOther) m_catch->open(m_shownMachine);
        if (takeFocus) m_catch->takeFocus();
    } else {
        m_panes->setCurrentWidget(m_check);
        if (isOther) m_check->open(*check, m_shownMachine);
        if (takeFocus) m_check->takeFocus();
    }
    showRoom();
}

/// What is being typed is taken; what cannot be read is named before it goes.
void YardPage::leaveCheck() {
    if (m_panes->currentWidget() != m_check || m_check->commitPending()) return;
    Q_EMIT notice(tr("%1: “%2” could not be read and is not kept.")
                      .arg(m_check->checkTitle(), m_check->refusedText()),
                  true);
}

void YardPage::takeInHand(const QString& check) {
    openCheck(check, true);
}

/// A catch test under way has the room, unless there is enough or the list was asked for.
void YardPage::showRoom() {
    const bool isCatching = m_inHand == kCatch && m_catch->isRunning();
    const bool isNarrow = width() < px(kWideFrom);
    if (!isCatching) m_isListWanted = false;
    m_side->setVisible(!isCatching || !isNarrow || m_isListWanted);
    m_listButton->setVisible(isCatching && isNarrow);
}

void YardPage::toggleList() {
    if (!m_listButton->isVisible()) return m_list->setFocus(Qt::OtherFocusReason);
    m_isListWanted = !m_side->isVisible();
    showRoom();
    if (m_side->isVisible())
        m_list->setFocus(Qt::OtherFocusReason);
    else
        m_catch->takeFocus();
}

void YardPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    showRoom();
}

void YardPage::focusInEvent(QFocusEvent* event) {
    Page::focusInEvent(event);
    if (m_inHand == kCatch && m_catch->isRunning())
        m_catch->takeFocus();
    else if (m_side->isVisible())
        m_list->setFocus(Qt::OtherFocusReason);
}

void YardPage::tell(const Problem& problem) {
    Q_EMIT notice(qs(session().sentences().of(problem, session().currentStyle())), true);
}

QStringList YardPage::pictureStates() const {
    return {u"Y1"_s, u"Y5"_s, u"checklist"_s, u"catch"_s, u"catch_table"_s};
}

void YardPage::showState(const QString& state) {
    if (state == kChecklist || yardCheck(ss(state))) return openCheck(state, false);
    // A machine that has a catch test to show.
    for (const auto& stored : session().yardRecords()) {
        if (stored.record.kind != YardKind::CatchTest) continue;
        session().setCurrentMachine(stored.record.machineId);
        openCheck(kCatch, false);
        m_catch->openRecord(stored.id);
    }
    m_catch->showTable(state == u"catch_table"_s);
}

}  // namespace bw
