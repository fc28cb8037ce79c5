// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_form.h"

#include <QApplication>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

#include "core/model/checks.h"
#include "core/model/start_values.h"
#include "ui/kit/cautions.h"
#include "ui/kit/messages.h"
#include "ui/kit/quantity_format.h"
#include "ui/kit/section.h"
#include "ui/pages/machine/aid_panel.h"
#include "ui/pages/machine/form_summary.h"
#include "ui/pages/machine/machine_rows.h"
#include "ui/pages/machine/name_rows.h"
#include "ui/pages/machine/origin_button.h"
#include "ui/pages/machine/question_strip.h"
#include "ui/pages/machine/set_row.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// The nozzle aboard with the most flow at its rating; null if none is known.
const Nozzle* largestAboard(const FarmSession& session, const Machine& machine) {
    const Nozzle* largest = nullptr;
    for (const auto& set : machine.setsAboard) {
        const Nozzle* nozzle = session.nozzleNamed(set.nozzle);
        if (!nozzle || !nozzle->flow) continue;
        if (!largest || nozzle->flow->value > largest->flow->value) largest = nozzle;
    }
    return largest;
}

}  // namespace

MachineForm::MachineForm(const FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_scroll(new QScrollArea),
      m_aid(new AidPanel),
      m_questions(new QuestionStrip),
      m_names(new NameRows) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_questions);
    column->addWidget(m_scroll, 1);
    column->addWidget(m_aid);
    auto* content = new QWidget;
    m_column = new QVBoxLayout(content);
    m_column->setContentsMargins(px(16), 0, px(8), px(12));
    m_column->setSpacing(0);
    m_column->addWidget(m_names);
    for (const auto& group : formGroups()) buildGroup(group);
    m_column->addStretch(1);
    m_scroll->setObjectName(u"machine.form.scroll"_s);
    m_scroll->setWidget(content);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    connect(qApp, &QApplication::focusChanged, this,
            [this](QWidget*, QWidget* now) { followFocus(now); });
    connect(m_questions, &QuestionStrip::questionTaken, this, &MachineForm::focusField);
    connect(m_names, &NameRows::renamed, this, [this](const QString& name) {
        Q_EMIT edited([name = ss(name)](Machine& m) { m.name = name; }, tr("name %1").arg(name));
    });
    connect(m_names, &NameRows::customerWished, this, &MachineForm::customerWished);
    connect(m_names, &NameRows::newCustomerWished, this, &MachineForm::newCustomerWished);
    connect(m_aid, &AidPanel::whereWished, this, &MachineForm::toggleWhere);
    connect(m_aid, &AidPanel::unknownWished, this, &MachineForm::takeUnknown);
    connect(m_aid, &AidPanel::originWished, this, &MachineForm::openOriginMenu);
    connect(m_aid, &AidPanel::dateEntered, this, [this](const QString& date) {
        if (m_inHand) setOrigin(m_inHand, Origin::Measured, date);
    });
    presentAid();
}

MachineForm::~MachineForm() {
    // The fields go after this object is a plain widget again, and the one in hand then loses
    // focus.
    disconnect(qApp, nullptr, this, nullptr);
}

void MachineForm::buildGroup(const FormGroup& group) {
    auto* section = new Section(group.title);
    section->header()->setObjectName(u"machine.%1.header"_s.arg(group.id));
    m_sections[group.id] = section;
    m_column->addWidget(section);
    if (!group.cautions.isEmpty()) {
        auto* caution = new CautionBox;
        section->body()->addWidget(caution);
        caution->setTexts(cautionTexts(group.cautions), true);
    }
    for (const auto& key : group.keys) {
        if (key == u"sets_aboard"_s)
            addSetRows(group, *section->body());
        else if (MachineRow* row = addRow(group, key))
            section->body()->addWidget(row);
    }
    section->setFolded(group.isFolded);
}

MachineRow* MachineForm::addRow(const FormGroup& group, const QString& key) {
    const auto view = fieldView(Machine{}, ss(key));
    if (!view) return nullptr;
    const QString name = fieldName(group.id, key);
    MachineRow* row = nullptr;
    switch (view->kind) {
        case FieldKind::Quantity:
            row = new QuantityRow(key, name, view->dimension);
            break;
        case FieldKind::WholeNumber:
        case FieldKind::Choice:
            row = new ChoiceRow(key, name);
            break;
        case FieldKind::Sections:
        case FieldKind::NozzleNumbers:
        case FieldKind::Curve:
            row = new ListRow(key, name);
            break;
    }
    m_rows.push_back(row);
    m_sectionOf[row] = m_sections[group.id];
    watch(row);
    return row;
}

void MachineForm::addSetRows(const FormGroup& group, QVBoxLayout& column) {
    for (int position = 1; position <= SetRow::kMost; ++position) {
        auto* row = new SetRow(position, u"machine.boom.set%1"_s.arg(position));
        m_setRows.push_back(row);
        m_sectionOf[row] = m_sections[group.id];
        column.addWidget(row);
        connect(row, &MachineRow::edited, this, &MachineForm::edited);
    }
}

void MachineForm::pass(MachineRow* row, const MachineChange& change, const QString& undoText) {
    m_editing = row;
    Q_EMIT edited(change, undoText);
    m_editing = nullptr;
}

bool MachineForm::isEditingNumber() const {
    return m_editing && m_editing->field().kind == FieldKind::Quantity;
}

void MachineForm::refuseEdit(const QString& sentence) {
    if (m_editing) m_editing->refuse(sentence);
}

/// A row that cannot be taken yet says so again by itself; each try is an edit of its own.
void MachineForm::retryWaiting() {
    for (MachineRow* row : m_rows) {
        if (row != m_editing && row->isWaiting()) row->commitPending();
    }
}

void MachineForm::watch(MachineRow* row) {
    connect(
        row, &MachineRow::edited, this,
        [this, row](const MachineChange& change, const QString& text) { pass(row, change, text); });
    connect(row, &MachineRow::originWished, this, [this, row](Origin origin) {
        takeInHand(row);
        setOrigin(row, origin);
    });
    connect(row, &MachineRow::unknownWished, this, [this, row] {
        takeInHand(row);
        takeUnknown();
    });
}

void MachineForm::present(const FormView& view, RecordId machine) {
    if (machine != m_shownMachine) {
        // What was typed for another machine and never taken is not this one's.
        for (MachineRow* row : m_rows) row->dropPending();
        m_names->dropPending();
        m_shownMachine = machine;
    }
    m_questions->present(view.session, view.machine);
    m_names->present(view, machine);
    for (MachineRow* row : m_rows) {
        row->present(view);
        row->setVisible(isShown(view.machine, row->key()));
    }
    for (SetRow* row : m_setRows) {
        row->setVisible(row->position() <= SetRow::rowsFor(view.machine));
        if (row->position() <= SetRow::rowsFor(view.machine)) row->present(view);
    }
    presentProblems(view);
    for (auto& [id, section] : m_sections) section->setSummary(groupSummary(view, id));
    presentAid();
}

/// Errors and warnings stand at their field, the first of each; notes are in the list of checks.
void MachineForm::presentProblems(const FormView& view) {
    std::map<QString, QString> byField;
    for (const auto& problem : checkMachine(view.machine)) {
        if (problem.severity == Severity::Note) continue;
        byField.try_emplace(qs(problem.where),
                            qs(view.session.sentences().of(problem, view.style)));
    }
    for (MachineRow* row : m_rows) row->setProblem(byField[row->key()]);
    for (SetRow* row : m_setRows) row->setProblem({});
    m_setRows.front()->setProblem(byField[u"sets_aboard"_s]);
}

MachineRow* MachineForm::rowOf(const QString& key) const {
    if (key == u"sets_aboard"_s) return m_setRows.front();
    for (MachineRow* row : m_rows) {
        if (row->key() == key) return row;
    }
    return nullptr;
}

bool MachineForm::focusField(const QString& key) {
    if (key == u"name"_s) {
        m_names->focusName();
        m_scroll->verticalScrollBar()->setValue(0);
        return true;
    }
    MachineRow* row = rowOf(key);
    if (!row || row->isHidden()) return false;
    m_sectionOf[row]->setFolded(false);
    row->editor()->setFocus(Qt::ShortcutFocusReason);
    takeInHand(row);
    return true;
}

QString MachineForm::keyInHand() const {
    return m_inHand ? m_inHand->key() : m_otherInHand;
}

bool MachineForm::commitPending() {
    bool areTaken = m_names->commitPending();
    for (MachineRow* row : m_rows) areTaken = row->commitPending() && areTaken;
    return areTaken;
}

/// The field in hand stays so while the focus is in the header or in the aid panel.
void MachineForm::followFocus(QWidget* now) {
    if (!now || !isAncestorOf(now)) return;
    for (QWidget* widget = now; widget && widget != this; widget = widget->parentWidget()) {
        if (auto* row = qobject_cast<MachineRow*>(widget)) {
            takeInHand(row);
            // After the layout has settled: a problem text may just have come or gone.
            QTimer::singleShot(0, row,
                               [this, row] { m_scroll->ensureWidgetVisible(row, 0, px(8)); });
            return;
        }
    }
    const QString other = m_names->keyOf(now);
    if (other.isEmpty()) return;
    m_inHand = nullptr;
    m_otherInHand = other;
    presentAid();
    Q_EMIT fieldTaken(other);
}

void MachineForm::takeInHand(MachineRow* row) {
    if (m_inHand == row) return;
    m_inHand = row;
    m_otherInHand.clear();
    presentAid();
    Q_EMIT fieldTaken(row->key());
}

void MachineForm::presentAid() {
    if (m_inHand)
        return m_aid->present(m_inHand, m_inHand->label(), whereText(m_session, m_inHand->key()));
    const QString label = m_otherInHand == u"name"_s       ? tr("Name")
                          : m_otherInHand == u"customer"_s ? tr("Customer")
                                                           : QString();
    m_aid->present(nullptr, label, whereText(m_session, m_otherInHand));
}

void MachineForm::toggleWhere() {
    m_aid->setWhereShown(!m_aid->isWhereShown());
    if (m_inHand) {
        MachineRow* row = m_inHand;
        QTimer::singleShot(0, row, [this, row] { m_scroll->ensureWidgetVisible(row, 0, px(8)); });
    }
}

void MachineForm::takeUnknown() {
    if (!m_inHand) return;
    m_inHand->dropPending();
    const QString label = inSentence(m_inHand->label());
    if (auto* set = qobject_cast<SetRow*>(m_inHand)) {
        Q_EMIT edited([position = set->position()](Machine& m) { setSetAboard(m, position, {}); },
                      tr("%1 not known").arg(label));
        return;
    }
    const bool isSectionLoss = m_inHand->key().startsWith(u"losses.section."_s);
    Q_EMIT edited(
        [key = ss(m_inHand->key()), isSectionLoss, this](Machine& m) {
            const Nozzle* nozzle = isSectionLoss ? largestAboard(m_session, m) : nullptr;
            if (!nozzle || !assumeSectionLoss(m, *nozzle)) takeStartValue(m, key);
        },
        tr("%1 not known").arg(label));
}

void MachineForm::openOriginMenu() {
    if (m_inHand) m_inHand->origin()->openMenu();
}

void MachineForm::setOrigin(MachineRow* row, Origin origin, const QString& date) {
    if (!row->commitPending() || !row->field().isKnown) return;
    const bool isMeasured = origin == Origin::Measured;
    const QString day =
        isMeasured && date.isEmpty() ? m_session.now().date().toString(Qt::ISODate) : date;
    const QString word = isMeasured                   ? tr("measured %1").arg(day)
                         : origin == Origin::Handbook ? tr("from the handbook")
                                                      : tr("assumed");
    Q_EMIT edited([key = ss(row->key()), origin,
                   text = ss(day)](Machine& m) { setFieldOrigin(m, key, origin, text); },
                  inSentence(row->label()) + u' ' + word);
}

}  // namespace bw
