// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_page.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/checks.h"
#include "core/model/start_values.h"
#include "ui/kit/actions.h"
#include "ui/kit/metrics.h"
#include "ui/kit/prompts.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/circuit_panel.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/pages/machine/machine_evidence.h"
#include "ui/pages/machine/machine_form.h"
#include "ui/pages/machine/machine_header.h"
#include "ui/pages/machine/new_machine_panel.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// An error that the machine has after an edit and had not before.
std::optional<Problem> newError(const Machine& before, const Machine& after) {
    const auto known = checkMachine(before);
    for (const auto& problem : checkMachine(after)) {
        const bool isNew = std::none_of(known.begin(), known.end(), [&](const Problem& old) {
            return old.code == problem.code && old.where == problem.where;
        });
        if (problem.severity == Severity::Error && isNew) return problem;
    }
    return std::nullopt;
}

}  // namespace

MachinePage::MachinePage(FarmSession& session, QWidget* parent)
    : Page(session, parent),
      m_stack(new QStackedWidget),
      m_new(new NewMachinePanel(session)),
      m_header(new MachineHeader(session)),
      m_form(new MachineForm(session)),
      m_circuit(new CircuitPanel),
      m_evidence(new MachineEvidence) {
    setObjectName(u"machine"_s);
    build();
    addActions();
    connectForm();
    connectHeader();
    connectNewPanel();
}

void MachinePage::build() {
    auto* outer = new QHBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_stack);
    auto* work = new QWidget;
    auto* row = new QHBoxLayout(work);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_form->setMinimumWidth(px(474));
    m_form->setMaximumWidth(px(560));
    row->addWidget(m_form, 2);
    row->addWidget(new HairLine(Qt::Vertical));
    auto* right = new QVBoxLayout;
    right->setSpacing(0);
    right->addWidget(m_circuit);
    right->addWidget(new HairLine);
    right->addWidget(m_evidence, 1);
    row->addLayout(right, 3);
    m_stack->addWidget(m_new);
    m_stack->addWidget(work);
}

void MachinePage::addActions() {
    const auto add = [this](const char* id, const QString& text, const QString& icon,
                            const QKeySequence& key, auto act) {
        addPageAction(this, {QLatin1String(id), text, icon, key, {}}, act);
    };
    add("machine.where", tr("Where do I find this?"), u"help"_s, QKeySequence(Qt::Key_F1),
        [this] { m_form->toggleWhere(); });
    add("machine.origin", tr("Where the value came from"), u"edit"_s, QKeySequence(Qt::Key_F2),
        [this] { m_form->openOriginMenu(); });
    add("machine.unknown", tr("I don't know"), u"unchecked"_s, QKeySequence(Qt::Key_F4),
        [this] { m_form->takeUnknown(); });
    add("machine.new", tr("New machine"), u"plus"_s, QKeySequence(u"Ctrl+Shift+N"_s),
        [this] { askForNew(); });
    add("machine.duplicate", tr("Duplicate machine"), u"copy"_s, QKeySequence(u"Ctrl+D"_s),
        [this] { duplicate(); });
    add("machine.delete", tr("Delete machine"), u"delete"_s, {}, [this] { removeMachine(); });
}

void MachinePage::connectForm() {
    connect(m_form, &MachineForm::edited, this, &MachinePage::edit);
    connect(m_form, &MachineForm::fieldTaken, m_circuit, &CircuitPanel::setFieldInHand);
    connect(m_form, &MachineForm::newCustomerWished, this, &MachinePage::addCustomer);
    connect(m_form, &MachineForm::customerWished, this, [this](qint64 id) {
        QString name = tr("own machine");
        for (const auto& stored : session().customers()) {
            if (stored.id == id) name = QString::fromStdString(stored.customer.name);
        }
        setCustomer(id, name);
    });
    connect(m_circuit, &CircuitPanel::partTaken, m_form, &MachineForm::focusField);
    connect(m_circuit, &CircuitPanel::nozzleTaken, this, &MachinePage::refresh);
    connect(m_circuit, &CircuitPanel::jobTaken, this,
            [this](qint64 job) { session().setCurrentJob(job); });
    connect(m_evidence, &MachineEvidence::pageWished, this, &Page::goTo);
    connect(m_evidence, &MachineEvidence::fieldWished, m_form, &MachineForm::focusField);
}

void MachinePage::takeInHand(const QString& fieldKey) {
    m_form->focusField(fieldKey);
}

void MachinePage::connectHeader() {
    connect(m_header, &MachineHeader::machineTaken, this, [this](qint64 id) {
        m_form->commitPending();
        m_isAsking = false;
        session().setCurrentMachine(id);
        refresh();
    });
    connect(m_header, &MachineHeader::newWished, this, &MachinePage::askForNew);
    connect(m_header, &MachineHeader::duplicateWished, this, &MachinePage::duplicate);
    connect(m_header, &MachineHeader::deleteWished, this, &MachinePage::removeMachine);
    connect(m_header, &MachineHeader::classTaken, this, &MachinePage::takeClassChoice);
    connect(m_header, &MachineHeader::unitsTaken, this, &MachinePage::takeUnits);
}

void MachinePage::connectNewPanel() {
    connect(m_new, &NewMachinePanel::classTaken, this, &MachinePage::addMachine);
    connect(m_new, &NewMachinePanel::givenUp, this, [this] {
        m_isAsking = false;
        refresh();
    });
    connect(m_new, &NewMachinePanel::demoWished, this, [this] { Q_EMIT goTo(u"file.demo"_s); });
}

QString MachinePage::title() const {
    return tr("Machine");
}

QWidget* MachinePage::headerTools() {
    return m_header;
}

QString MachinePage::hint() const {
    return tr("F1 where do I find this · F2 origin · F4 I don't know");
}

RecordId MachinePage::machineInHand() const {
    const auto& machines = session().season().machines;
    if (session().machine(session().currentMachine())) return session().currentMachine();
    return machines.empty() ? 0 : machines.front().id;
}

const Machine* MachinePage::machine() const {
    return session().machine(machineInHand());
}

void MachinePage::refresh() {
    const Machine* inHand = machine();
    m_header->present(session().season(), machineInHand());
    const bool asks = m_isAsking || !inHand;
    const bool isNewlyAsking = asks && m_stack->currentIndex() != 0;
    m_stack->setCurrentIndex(asks ? 0 : 1);
    if (inHand) presentMachine(*inHand);
    if (asks && (isNewlyAsking || !m_new->isAncestorOf(focusWidget())))
        m_new->present(!inHand, session().currentStyle().units);
}

void MachinePage::presentMachine(const Machine& machine) {
    // A copy: an edit that starts from within replaces what the session holds.
    const Machine shownMachine = machine;
    const FormView view{session(), shownMachine, session().styleOf(shownMachine)};
    const RecordId id = machineInHand();
    m_form->present(view, id);
    m_circuit->present(view, id, session().currentJob());
    m_circuit->setFieldInHand(m_form->keyInHand());
    std::vector<Job> jobs;
    for (const auto& stored : session().jobsOf(id)) jobs.push_back(stored.job);
    m_evidence->present(view, jobs, m_circuit->model());
}

void MachinePage::tell(const Problem& problem) {
    Q_EMIT notice(qs(session().sentences().of(problem, session().currentStyle())), true);
}

void MachinePage::edit(const MachineChange& change, const QString& undoText) {
    const Machine* before = machine();
    if (!before) return;
    Machine after = *before;
    change(after);
    if (const auto refusal = newError(*before, after); refusal && m_form->isEditingNumber()) {
        m_form->refuseEdit(qs(session().sentences().of(*refusal, session().styleOf(*before))));
        return;
    }
    const auto done = session().editMachine(machineInHand(), std::move(after), undoText);
    if (!done) tell(done.problem());
    if (!done) return refresh();
    m_form->retryWaiting();
}

void MachinePage::askForNew() {
    if (machine()) m_form->commitPending();
    m_isAsking = true;
    refresh();
}

QString MachinePage::freeName(const QString& wished) const {
    const auto isTaken = [this](const QString& name) {
        const auto& machines = session().season().machines;
        return std::any_of(machines.begin(), machines.end(), [&](const StoredMachine& stored) {
            return QString::fromStdString(stored.machine.name) == name;
        });
    };
    QString name = wished;
    for (int i = 2; isTaken(name); ++i) name = tr("%1 %2").arg(wished).arg(i);
    return name;
}

void MachinePage::addMachine(std::optional<MachineClass> machineClass, UnitSystem units) {
    Machine machine;
    machine.units = units;
    QString name = tr("My machine");
    if (machineClass) {
        takeClass(machine, *machineClass);
        name =
            tr("My machine (%1)")
                .arg(inSentence(choiceWord(session(), u"class"_s, qs(choiceName(*machineClass)))));
    }
    machine.name = ss(freeName(name));
    const auto id = session().addMachine(machine, tr("new machine"));
    if (!id) return tell(id.problem());
    m_isAsking = false;
    session().setCurrentMachine(*id);
    refresh();
    m_form->focusField(u"name"_s);
}

void MachinePage::duplicate() {
    const Machine* before = machine();
    if (!before) return;
    m_form->commitPending();
    Machine copy = *machine();
    const QString name = QString::fromStdString(copy.name);
    copy.name = ss(freeName(tr("%1, copy").arg(name)));
    const auto id = session().addMachine(std::move(copy), tr("duplicate of %1").arg(name));
    if (!id) return tell(id.problem());
    session().setCurrentMachine(*id);
    refresh();
    m_form->focusField(u"name"_s);
}

void MachinePage::removeMachine() {
    const Machine* before = machine();
    if (!before) return;
    const QString name = QString::fromStdString(before->name);
    const auto jobs = session().jobsOf(machineInHand()).size();
    const auto done = session().removeMachine(machineInHand(), tr("%1 deleted").arg(name));
    if (!done) return tell(done.problem());
    Q_EMIT notice(jobs == 0
                      ? tr("%1 is deleted. Undo (Ctrl+Z) brings it back.").arg(name)
                      : tr("%1 is deleted, with its jobs (%2). Undo (Ctrl+Z) brings all of it "
                           "back.")
                            .arg(name)
                            .arg(jobs),
                  false);
    refresh();
}

void MachinePage::takeClassChoice(const QString& choice) {
    const auto machineClass = choiceFor<MachineClass>(ss(choice));
    if (!machineClass)
        return edit([](Machine& m) { m.machineClass.reset(); }, tr("class not known"));
    edit([machineClass](Machine& m) { takeClass(m, *machineClass); },
         tr("class %1").arg(inSentence(choiceWord(session(), u"class"_s, choice))));
}

void MachinePage::takeUnits(UnitSystem units) {
    const QString word = units == UnitSystem::Us   ? tr("US")
                         : units == UnitSystem::Uk ? tr("UK")
                                                   : tr("metric");
    m_form->commitPending();
    edit([units](Machine& m) { m.units = units; }, tr("units %1").arg(word));
}

void MachinePage::addCustomer() {
    const QString name =
        prompts().text(this, tr("New customer"), tr("Name of the customer"), {}).trimmed();
    if (name.isEmpty()) return;
    Customer customer;
    customer.name = ss(name);
    const auto id = session().addCustomer(customer, tr("customer %1").arg(name));
    if (!id) return tell(id.problem());
    setCustomer(*id, name);
}

void MachinePage::setCustomer(RecordId customer, const QString& name) {
    const auto done = session().setMachineCustomer(machineInHand(), customer,
                                                   tr("customer of the machine: %1").arg(name));
    if (!done) tell(done.problem());
}

}  // namespace bw
