// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/nozzles/nozzles_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/model/checks.h"
#include "core/window/nozzle_facts.h"
#include "ui/kit/actions.h"
#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/chips.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/nozzles/nozzle_curve.h"
#include "ui/pages/nozzles/nozzle_form.h"
#include "ui/pages/nozzles/nozzles_model.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

NozzlesPage::NozzlesPage(FarmSession& farm, QWidget* parent) : Page(farm, parent) {
    buildTools();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(buildList(), 56);
    row->addWidget(new HairLine(Qt::Vertical, Role::Line, this));
    row->addWidget(buildDetail(), 44);
    connect(&session(), &FarmSession::seasonChanged, this, &Page::markStale);
    connect(&session(), &FarmSession::styleChanged, this, &Page::markStale);
}

void NozzlesPage::buildTools() {
    m_tools = new QWidget(this);
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    m_filter = new QLineEdit(m_tools);
    m_filter->setObjectName(u"nozzles.tools.filter"_s);
    m_filter->setPlaceholderText(tr("Name, family or size"));
    m_filter->setClearButtonEnabled(true);
    m_filter->setMinimumWidth(px(160));
    row->addWidget(captioned(tr("Shown"), m_filter, m_tools));
    row->addStretch(1);
    const auto button = [&](const QString& text, const QString& icon, const QString& name,
                            Button::Kind kind) {
        auto* b = new Button(text, icon, kind, m_tools);
        b->setObjectName(name);
        row->addWidget(b);
        return b;
    };
    m_remove = button(tr("Remove"), {}, u"nozzles.tools.remove"_s, Button::Kind::Plain);
    m_copy = button(tr("Copy as own"), u"copy"_s, u"nozzles.tools.copy"_s, Button::Kind::Plain);
    auto* plus = button(tr("Nozzle"), u"plus"_s, u"nozzles.tools.add"_s, Button::Kind::Primary);
    plus->setKey(QKeySequence(Qt::Key_Insert), false);
    connect(m_filter, &QLineEdit::textChanged, this, &NozzlesPage::refresh);
    connect(plus, &Button::clicked, this, &NozzlesPage::add);
    connect(m_copy, &Button::clicked, this, &NozzlesPage::copy);
    connect(m_remove, &Button::clicked, this, &NozzlesPage::remove);
    addPageAction(
        this, {u"nozzle.add"_s, tr("Add a nozzle"), u"plus"_s, QKeySequence(Qt::Key_Insert), {}},
        [this] { add(); });
    addPageAction(this,
                  {u"nozzle.copy"_s,
                   tr("Copy as own nozzle"),
                   u"copy"_s,
                   QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D),
                   {}},
                  [this] { copy(); });
    addPageAction(this,
                  {u"nozzle.remove"_s,
                   tr("Remove the nozzle"),
                   {},
                   QKeySequence(Qt::CTRL | Qt::Key_Delete),
                   {}},
                  [this] { remove(); });
}

QWidget* NozzlesPage::buildList() {
    m_model = new NozzlesModel(this);
    m_table = new DataTable(this);
    m_table->setObjectName(u"nozzles.list.table"_s);
    m_table->setAccessibleName(tr("Nozzles"));
    m_table->setItemDelegate(new NozzleDelegate(m_table));
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    auto* header = m_table->horizontalHeader();
    header->setSectionResizeMode(QHeaderView::ResizeToContents);
    header->setSectionResizeMode(NozzlesModel::Name, QHeaderView::Stretch);
    header->setSectionResizeMode(NozzlesModel::Droplets, QHeaderView::Fixed);
    header->resizeSection(NozzlesModel::Droplets, px(112));
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &NozzlesPage::choose);
    return m_table;
}

QWidget* NozzlesPage::buildDetail() {
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* box = new QWidget(scroll);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(px(14), px(12), px(14), px(12));
    column->setSpacing(px(10));
    m_heading = new TextLabel({}, TextSize::Title, Role::Ink, true, box);
    m_heading->wrapped();
    m_heading->setObjectName(u"nozzles.detail.heading"_s);
    column->addWidget(m_heading);
    m_form = new NozzleForm(session(), box);
    column->addWidget(m_form);
    m_chart = new ChartPanel(box);
    m_chart->setObjectName(u"nozzles.detail.curve"_s);
    m_chart->setMinimumHeight(px(190));
    m_chart->setRoom(44, 22, 20, 26);
    column->addWidget(m_chart, 1);
    m_notes = new EvidenceList(box);
    m_notes->setObjectName(u"nozzles.detail.notes"_s);
    column->addWidget(m_notes);
    auto* caution = new CautionBox(box);
    caution->setObjectName(u"nozzles.detail.caution"_s);
    caution->setTexts(cautionTexts({u"C18"_s, u"C21"_s}), true);
    column->addWidget(caution);
    scroll->setWidget(box);
    connect(m_form, &NozzleForm::edited, this, &NozzlesPage::store);
    return scroll;
}

/// Names come first: where the page is narrow, what the form shows as well gives way.
void NozzlesPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    const bool narrow = width() < px(1350);
    m_table->setColumnHidden(NozzlesModel::Drift, narrow);
    m_table->setColumnHidden(NozzlesModel::Price, narrow);
    m_table->setColumnHidden(NozzlesModel::AtColumn, width() < px(900));
    m_table->spanGroups();
}

void NozzlesPage::refresh() {
    const RecordId id = m_chosen.id;
    const QSignalBlocker quiet(m_table->selectionModel());
    m_model->setContent(session().season().nozzles, m_filter->text().trimmed(),
                        session().currentStyle());
    m_table->spanGroups();
    int row = m_model->rowOf(id);
    if (row < 0 && m_hasChosen && id == 0) {
        for (int i = 0; i < m_model->rowCount(); ++i) {
            if (const auto* n = m_model->nozzleAt(i);
                n && n->id == 0 && n->nozzle.name == m_chosen.nozzle.name)
                row = i;
        }
    }
    for (int i = 0; row < 0 && i < m_model->rowCount(); ++i) {
        if (m_model->nozzleAt(i)) row = i;
    }
    m_table->setCurrentIndex(m_model->index(row, 0));
    choose(m_model->index(row, 0));
}

void NozzlesPage::choose(const QModelIndex& index) {
    const auto* nozzle = m_model->nozzleAt(index.row());
    m_hasChosen = nozzle != nullptr;
    m_chosen = nozzle ? *nozzle : StoredNozzle{};
    if (m_chosen.id != 0) session().setCurrentNozzle(m_chosen.id);
    showChosen();
}

void NozzlesPage::showChosen() {
    m_form->setVisible(m_hasChosen);
    m_chart->setVisible(m_hasChosen);
    m_notes->setVisible(m_hasChosen);
    m_copy->setEnabled(m_hasChosen);
    m_remove->setEnabled(m_hasChosen && m_chosen.id != 0);
    if (!m_hasChosen) return m_heading->setText(tr("No nozzle fits what is typed above."));
    const bool own = m_chosen.id != 0;
    m_heading->setText(own ? qs(m_chosen.nozzle.name)
                           : tr("%1: a size, not a nozzle").arg(qs(m_chosen.nozzle.name)));
    const auto inHand = std::pair(m_chosen.id, own ? std::string() : m_chosen.nozzle.name);
    if (inHand != m_shown) m_form->forgetTyped();
    m_shown = inHand;
    m_form->setNozzle(m_chosen.nozzle, session().currentStyle(), !own);
    showCurve(m_chosen.nozzle);
    showNotes(m_chosen.nozzle);
}

void NozzlesPage::showCurve(const Nozzle& nozzle) {
    drawNozzleCurve(*m_chart, nozzle, session().currentStyle());
}

void NozzlesPage::showNotes(const Nozzle& nozzle) {
    const NumberStyle style = session().currentStyle();
    EvidenceSection section{tr("What is known of it"), {}};
    const auto row = [&](const QString& icon, Role role, const QString& text) {
        EvidenceRow r;
        r.icon = icon;
        r.iconRole = role;
        r.text = text;
        section.rows.push_back(r);
    };
    for (const auto& fact : nozzleFacts(nozzle)) {
        const bool gap = fact.code.find("not_checked") != std::string::npos;
        row(gap ? u"not-checked"_s : u"nozzle"_s, gap ? Role::Unchecked : Role::Quiet,
            qs(session().sentences().of(fact, style)));
    }
    for (const auto& problem : checkNozzle(nozzle)) {
        if (problem.severity != Severity::Error)
            row(u"caution"_s, Role::Caution, sentenceOf(problem, style));
    }
    m_notes->setSections({section});
}

void NozzlesPage::add() {
    Nozzle nozzle;
    QString name = tr("New nozzle");
    for (int i = 2; session().nozzleNamed(ss(name)); ++i) name = tr("New nozzle %1").arg(i);
    nozzle.name = ss(name);
    const auto id = session().addNozzle(nozzle, tr("add nozzle"));
    if (!id) return say(id.problem());
    m_filter->clear();
    m_chosen = {*id, nozzle};
    refresh();
    m_form->startNaming();
}

void NozzlesPage::copy() {
    if (!m_hasChosen) return;
    Nozzle nozzle = m_chosen.nozzle;
    nozzle.isBuiltIn = false;
    QString name = tr("%1, copy").arg(qs(nozzle.name));
    for (int i = 2; session().nozzleNamed(ss(name)); ++i)
        name = tr("%1, copy %2").arg(qs(m_chosen.nozzle.name)).arg(i);
    nozzle.name = ss(name);
    const auto id = session().addNozzle(nozzle, tr("copy nozzle"));
    if (!id) return say(id.problem());
    m_filter->clear();
    m_chosen = {*id, nozzle};
    refresh();
    m_form->startNaming();
}

void NozzlesPage::remove() {
    if (!m_hasChosen || m_chosen.id == 0) return;
    const auto done =
        session().removeNozzle(m_chosen.id, tr("remove nozzle %1").arg(qs(m_chosen.nozzle.name)));
    if (!done) say(done.problem());
}

void NozzlesPage::store(const Nozzle& nozzle, const QString& undoText) {
    if (m_chosen.id == 0) return;
    const auto done = session().editNozzle(m_chosen.id, nozzle, undoText);
    if (done) return;
    say(done.problem());
    refresh();
}

void NozzlesPage::say(const Problem& problem) {
    Q_EMIT notice(sentenceOf(problem, session().currentStyle()), true);
}

}  // namespace bw
