// SPDX-License-Identifier: GPL-3.0-or-later
// How the catch test is put together and walked; what it shows stands in catch_result.cpp.
#include "ui/pages/yard/catch_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/kit/buttons.h"
#include "ui/kit/data_table.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/catch_entry.h"
#include "ui/pages/yard/catch_setup.h"
#include "ui/pages/yard/catch_table.h"
#include "ui/pages/yard/catch_walk.h"
#include "ui/pages/yard/catch_watch.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr const char* kCheck = "Y7";

QScrollArea* scrolled(QWidget* content) {
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    return scroll;
}

}  // namespace

CatchPane::CatchPane(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_stack(new QStackedWidget),
      m_setup(new CatchSetup(session)),
      m_card(new CatchEntryCard),
      m_chart(new CatchChart),
      m_model(new CatchTable(this)),
      m_table(new DataTable),
      m_picture(new QStackedWidget),
      m_head(new TextLabel({}, TextSize::Body, Role::Ink, true)),
      m_tableButton(new IconButton(tr("Table of all nozzles"), u"table"_s)),
      m_setupCautions(new CautionBox),
      m_cautions(new CautionBox),
      m_result(new EvidenceColumn),
      m_again(new Button({}, u"back"_s)),
      m_back(new Button(tr("Take back"), u"back"_s)),
      m_finish(new Button(tr("Finish"), u"check"_s, Button::Kind::Primary)),
      m_new(new Button(tr("New catch test"), u"plus"_s)),
      m_note(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_stack->addWidget(buildSetup());
    m_stack->addWidget(buildTest());
    row->addWidget(m_stack, 1);
    row->addWidget(m_result);
    buildFoot();
}

QWidget* CatchPane::buildSetup() {
    auto* paper = new QWidget;
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(20), px(14), px(20), px(14));
    column->setSpacing(px(8));
    const YardCheckText* check = yardCheck(kCheck);
    auto* title = new TextLabel(qs(check->title), TextSize::Verdict, Role::Ink, true);
    title->setObjectName(u"yard.catch.title"_s);
    column->addWidget(title);
    column->addWidget((new TextLabel(qs(check->purpose)))->wrapped());
    QString steps;
    for (const auto& step : check->steps) steps += qs(step) + u' ';
    m_setupCautions->setObjectName(u"yard.catch.setup.cautions"_s);
    column->addWidget(m_setupCautions);
    m_setupCautions->setTexts(ledCautions(check->cautions), true);
    column->addWidget((new TextLabel(steps.trimmed()))->wrapped());
    column->addWidget(m_setup);
    column->addStretch(1);
    connect(m_setup, &CatchSetup::startWanted, this, &CatchPane::start);
    return scrolled(paper);
}

QWidget* CatchPane::buildTest() {
    auto* paper = new QWidget;
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(12), px(10), px(12), px(10));
    column->setSpacing(px(8));
    column->addWidget(m_card);
    column->addWidget(buildChartHead());
    column->addWidget(buildPicture(), 1);
    m_cautions->setObjectName(u"yard.catch.cautions"_s);
    column->addWidget(m_cautions);
    m_cautions->setTexts(ledCautions(yardCheck(kCheck)->cautions), true);
    connect(m_card, &CatchEntryCard::caught, this, &CatchPane::take);
    connect(m_card, &CatchEntryCard::skipWanted, this, &CatchPane::skip);
    connect(m_card, &CatchEntryCard::moveWanted, this, &CatchPane::move);
    connect(m_card, &CatchEntryCard::takeBackWanted, this, &CatchPane::takeBack);
    connect(m_card, &CatchEntryCard::nozzleWanted, this, &CatchPane::goToNozzle);
    return scrolled(paper);
}

QWidget* CatchPane::buildChartHead() {
    auto* head = new QWidget;
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(6));
    m_head->setObjectName(u"yard.catch.head"_s);
    row->addWidget(m_head->wrapped(), 1);
    m_tableButton->setObjectName(u"yard.catch.table.button"_s);
    m_tableButton->setCheckable(true);
    auto* copy = new IconButton(tr("Copy picture and table"), u"copy"_s);
    copy->setObjectName(u"yard.catch.copy"_s);
    row->addWidget(m_tableButton, 0, Qt::AlignTop);
    row->addWidget(copy, 0, Qt::AlignTop);
    connect(m_tableButton, &QAbstractButton::toggled, this, &CatchPane::showTable);
    connect(copy, &QAbstractButton::clicked, this, [this] {
        if (m_picture->currentIndex() == 0)
            m_chart->copy();
        else
            QApplication::clipboard()->setText(m_table->selectionText(true));
    });
    return head;
}

QWidget* CatchPane::buildPicture() {
    m_chart->setObjectName(u"yard.catch.chart"_s);
    m_chart->setMinimumHeight(px(190));
    m_table->setObjectName(u"yard.catch.table"_s);
    m_table->setAccessibleName(tr("Every nozzle of the catch test"));
    m_table->setModel(m_model);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_picture->addWidget(m_chart);
    m_picture->addWidget(m_table);
    connect(m_chart, &ChartPanel::cursorMoved, this,
            [this](double x) { goToNozzle(static_cast<int>(std::lround(x))); });
    connect(m_table, &QAbstractItemView::activated, this,
            [this](const QModelIndex& index) { goToNozzle(m_model->nozzleAt(index.row())); });
    return m_picture;
}

void CatchPane::buildFoot() {
    m_result->verdict()->setObjectName(u"yard.catch.verdict"_s);
    m_result->list()->setObjectName(u"yard.catch.evidence"_s);
    m_again->setObjectName(u"yard.catch.catchAgain"_s);
    m_back->setObjectName(u"yard.catch.takeBack"_s);
    m_back->setKey(QKeySequence(u"Ctrl+Backspace"_s), false);
    m_finish->setObjectName(u"yard.catch.finish"_s);
    m_new->setObjectName(u"yard.catch.new"_s);
    m_note->setObjectName(u"yard.catch.note"_s);
    auto* foot = m_result->foot();
    foot->addWidget(m_note->wrapped());
    foot->addWidget(m_setup->startButton());
    foot->addWidget(m_again);
    foot->addWidget(m_back);
    foot->addWidget(m_finish);
    foot->addWidget(m_new);
    connect(m_again, &QAbstractButton::clicked, this, &CatchPane::catchLowAgain);
    connect(m_back, &QAbstractButton::clicked, this, &CatchPane::takeBack);
    connect(m_finish, &QAbstractButton::clicked, this, &CatchPane::finish);
    connect(m_new, &QAbstractButton::clicked, this, &CatchPane::startNew);
}

const Machine* CatchPane::machine() const {
    return m_session.machine(m_machineId);
}

NumberStyle CatchPane::style() const {
    return machine() ? m_session.styleOf(*machine()) : m_session.currentStyle();
}

std::string CatchPane::now() const {
    return ss(m_session.now().toString(u"yyyy-MM-ddTHH:mm:ss"_s));
}

void CatchPane::open(RecordId machineId) {
    m_machineId = machineId;
    m_recordId = 0;
    m_record = {};
    const auto* begun = newestRecord(m_session, machineId, YardKind::CatchTest, kCheck, false);
    if (begun) return openRecord(begun->id);
    m_setup->present(machineId);
    show();
}

void CatchPane::openRecord(RecordId id) {
    const auto* stored = m_session.yardRecord(id);
    if (!stored) return;
    m_machineId = stored->record.machineId;
    m_recordId = id;
    m_record = stored->record;
    const CatchWalk walk(m_record);
    // Where it was left: after the last catch.
    const int last = walk.last() ? walk.last()->nozzle : 0;
    m_nozzle = walk.nextOpen(last).value_or(last > 0 ? last : 1);
    show();
}

YardRecord CatchPane::recordToPrint() const {
    YardRecord out = m_record;
    if (!isRunning()) out.catchTest = m_setup->test();
    return out;
}

void CatchPane::refresh() {
    if (!machine() || m_isSaving) return;
    if (m_recordId == 0) {
        if (newestRecord(m_session, m_machineId, YardKind::CatchTest, kCheck, false))
            return open(m_machineId);
        m_setup->present(m_machineId);
        return show();
    }
    const auto* stored = m_session.yardRecord(m_recordId);
    if (!stored) return open(m_machineId);
    m_record = stored->record;
    show();
}

void CatchPane::takeFocus() {
    if (!isRunning())
        m_setup->takeFocus();
    else if (m_record.finished.empty())
        m_card->takeFocus();
    else
        m_new->setFocus(Qt::OtherFocusReason);
}

bool CatchPane::commitPending() {
    return isRunning() || m_setup->commitPending();
}

void CatchPane::start() {
    m_record = {};
    m_record.kind = YardKind::CatchTest;
    m_record.check = kCheck;
    m_record.started = now();
    m_record.catchTest = m_setup->test();
    setFromRight(m_record, m_setup->isFromRight());
    const CatchWalk walk(m_record);
    m_nozzle = walk.nextOpen(0).value_or(1);
    if (save()) takeFocus();
}

bool CatchPane::save() {
    if (!machine()) return false;
    m_record.machineId = m_machineId;
    m_record.machineName = machine()->name;
    m_record.units = machine()->units;
    m_isSaving = true;
    const auto id = m_session.saveYardRecord(m_recordId, m_record);
    m_isSaving = false;
    if (!id) {
        Q_EMIT failed(id.problem());
        if (const auto* stored = m_session.yardRecord(m_recordId)) m_record = stored->record;
    } else {
        m_recordId = *id;
    }
    show();
    return id.isOk();
}

void CatchPane::take(Volume volume, const QString& typed, bool isAgain) {
    const NotedCatch one{m_nozzle, isAgain, volume, m_record.catchTest.time, ss(typed)};
    m_record.catchTest.catches.push_back(one);
    m_record.finished.clear();
    const int nozzle = m_nozzle;
    if (!save()) {
        m_nozzle = nozzle;
        return show();
    }
    const CatchWalk walk(m_record);
    if (const int low = isAgain ? lowToCatchAgain(nozzle) : 0; low > 0)
        m_nozzle = low;
    else
        m_nozzle = walk.nextOpen(nozzle).value_or(nozzle);
    show();
    m_card->takeFocus();
}

void CatchPane::skip() {
    const CatchWalk walk(m_record);
    goToNozzle(walk.nextOpen(m_nozzle).value_or(m_nozzle));
}

void CatchPane::move(int step) {
    goToNozzle(CatchWalk(m_record).neighbour(m_nozzle, step));
}

void CatchPane::goToNozzle(int nozzle) {
    const CatchWalk walk(m_record);
    if (!walk.isOnBoom(nozzle)) {
        m_card->tell(tr("There is no nozzle %1: the boom has %2.").arg(nozzle).arg(walk.nozzles()));
        return;
    }
    m_nozzle = nozzle;
    show();
    if (m_record.finished.empty()) m_card->takeFocus();
}

/// The next nozzle after `after` that is low and was not caught again; 0: none.
int CatchPane::lowToCatchAgain(int after) const {
    int first = 0;
    if (!m_view.summary) return 0;
    for (const auto& nozzle : m_view.summary->nozzles) {
        if (nozzle.verdict != CatchVerdict::CleanAndCatchAgain) continue;
        if (nozzle.nozzle > after) return nozzle.nozzle;
        if (first == 0) first = nozzle.nozzle;
    }
    return first;
}

void CatchPane::catchLowAgain() {
    const int low = lowToCatchAgain(0);
    if (low == 0) return;
    if (!m_record.finished.empty()) {
        m_record.finished.clear();
        if (!save()) return;
    }
    goToNozzle(low);
}

void CatchPane::takeBack() {
    if (m_recordId == 0 || m_record.catchTest.catches.empty()) return;
    const int nozzle = m_record.catchTest.catches.back().nozzle;
    m_record.catchTest.catches.pop_back();
    m_record.finished.clear();
    if (save()) goToNozzle(nozzle);
}

void CatchPane::finish() {
    if (m_recordId == 0) return;
    if (m_record.catchTest.catches.empty()) {
        // Nothing was caught: nothing to keep.
        const RecordId id = m_recordId;
        m_recordId = 0;
        const auto done = m_session.removeYardRecord(id, tr("empty catch test left"));
        if (!done) Q_EMIT failed(done.problem());
        return open(m_machineId);
    }
    m_record.finished = now();
    if (save()) takeFocus();
}

void CatchPane::startNew() {
    m_recordId = 0;
    m_record = {};
    m_setup->present(m_machineId);
    show();
    takeFocus();
}

void CatchPane::showTable(bool isTable) {
    const QSignalBlocker quiet(m_tableButton);
    m_tableButton->setChecked(isTable);
    m_picture->setCurrentIndex(isTable ? 1 : 0);
}

}  // namespace bw
