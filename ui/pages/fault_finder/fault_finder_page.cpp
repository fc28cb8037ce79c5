// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/fault_finder_page.h"

#include <QDateTime>
#include <QKeyEvent>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/call_column.h"
#include "ui/pages/fault_finder/case_list.h"
#include "ui/pages/fault_finder/end_card.h"
#include "ui/pages/fault_finder/numbers_form.h"
#include "ui/pages/fault_finder/question_card.h"
#include "ui/pages/fault_finder/reading_bar.h"
#include "ui/pages/fault_finder/standing_column.h"
#include "ui/pages/fault_finder/way_pipe.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr int kMinute = 60'000;  ///< ms
}

FaultFinderPage::FaultFinderPage(FarmSession& session, QWidget* parent)
    : Page(session, parent), m_views(new QStackedWidget), m_ticker(new QTimer(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_views);
    buildHeader();
    m_list = new CaseList;
    m_views->addWidget(m_list);
    m_views->addWidget(buildCall());
    addActions();
    connect(m_list, &CaseList::newCallWanted, this, &FaultFinderPage::newCall);
    connect(m_list, &CaseList::opened, this, &FaultFinderPage::openCase);
    connect(m_list, &CaseList::removeWanted, this, [this](qlonglong id) {
        const auto removed = this->session().removeCase(id, tr("case removed"));
        if (!removed) Q_EMIT notice(sentenceOf(removed.problem(), callStyle()), true);
    });
    connect(m_end, &EndCard::notesChanged, this, [this] {
        CaseRecord record = m_view->record();
        record.notes = ss(m_end->notes());
        if (save(record))
            m_view = std::make_unique<CaseView>(record, callStyle(), this->session().sentences());
    });
    connect(&session, &FarmSession::casesChanged, this, [this] {
        if (!m_isSaving) markStale();
    });
    m_ticker->setInterval(1000);
    connect(m_ticker, &QTimer::timeout, this, &FaultFinderPage::tick);
}

FaultFinderPage::~FaultFinderPage() = default;

QString FaultFinderPage::hint() const {
    return tr(
        "1 to 9 answer · R any reading · H how to · W why · Bksp take back · F9 new call, "
        "this one stays open");
}

NumberStyle FaultFinderPage::callStyle() const {
    return m_view && !m_view->record().machine.name.empty()
               ? session().styleOf(m_view->record().machine)
               : session().currentStyle();
}

/// Cases may have been changed or removed elsewhere (undo of a removal, another page); the one in
/// hand follows what is stored.
void FaultFinderPage::refresh() {
    if (m_isSaving) return;
    m_list->setCases(session().cases());
    if (!m_hasCase) {
        tellWall();
        return showHeader();
    }
    const StoredCase* stored = m_caseId != 0 ? session().caseRecord(m_caseId) : nullptr;
    if (m_caseId != 0 && !stored) return showList();
    CaseRecord record = stored ? stored->record : m_view->record();
    m_view = std::make_unique<CaseView>(std::move(record), callStyle(), session().sentences());
    if (m_again.isEmpty())
        showStep(m_step);
    else
        tellWall();
}

QStringList FaultFinderPage::pictureStates() const {
    return {u"call"_s, u"question"_s, u"end"_s, u"list"_s};
}

/// The first question of a new call; a question in the middle of one; one that is done.
void FaultFinderPage::showState(const QString& state) {
    if (state == u"list"_s) return showList();
    if (state == u"call"_s) return newCall();
    for (const auto& stored : session().cases()) {
        if (stored.record.state == CaseState::Open) continue;
        if (state == u"end"_s) return openCase(stored.id);
        return showMiddle(stored.record);
    }
}

/// As it stood with the first answers only; nothing of this is kept.
void FaultFinderPage::showMiddle(CaseRecord record) {
    constexpr std::size_t kAnswers = 2;
    newCall();
    record.state = CaseState::Open;
    record.observations.resize(std::min(kAnswers, record.observations.size()));
    m_view = std::make_unique<CaseView>(std::move(record), callStyle(), session().sentences());
    showStep(m_view->openStep());
}

void FaultFinderPage::newCall() {
    finishCase();
    CaseRecord record;
    record.opened = ss(session().now().toString(Qt::ISODate));
    m_caseId = 0;
    m_hasCase = true;
    m_isAgain = m_isAskingOn = false;
    m_view.reset();
    m_view = std::make_unique<CaseView>(std::move(record), callStyle(), session().sentences());
    m_spent = 0;
    m_running.start();
    m_views->setCurrentIndex(1);
    showStep(Step::Symptom);
}

void FaultFinderPage::openCase(RecordId id) {
    finishCase();
    const StoredCase* stored = session().caseRecord(id);
    if (!stored) return;
    m_caseId = id;
    m_hasCase = true;
    m_isAgain = m_isAskingOn = false;
    m_view = std::make_unique<CaseView>(stored->record, session().styleOf(stored->record.machine),
                                        session().sentences());
    m_spent = qint64(stored->record.minutes) * kMinute;
    m_running.start();
    m_views->setCurrentIndex(1);
    showStep(stored->record.state == CaseState::Open ? m_view->openStep() : Step::End);
}

void FaultFinderPage::takeInHand(const QString& caseId) {
    openCase(caseId.toLongLong());
}

/// Minutes spent on an open case are kept when it is left.
void FaultFinderPage::finishCase() {
    if (m_hasCase && m_caseId != 0 && isTiming() && minutesNow() != m_view->record().minutes) {
        CaseRecord record = m_view->record();
        save(record);
    }
    m_hasCase = false;
}

void FaultFinderPage::showList() {
    finishCase();
    m_reading->hide();
    m_list->setCases(session().cases(), m_caseId);
    m_views->setCurrentIndex(0);
    showHeader();
    tellWall();
    if (isVisible()) m_list->takeFocus();
}

bool FaultFinderPage::save(CaseRecord& record) {
    record.minutes = std::max(record.minutes, isTiming() ? minutesNow() : 0);
    m_isSaving = true;
    const auto id = session().saveCase(m_caseId, record);
    m_isSaving = false;
    if (id)
        m_caseId = id.value();
    else
        Q_EMIT notice(sentenceOf(id.problem(), callStyle()), true);
    return id.isOk();
}

void FaultFinderPage::changed(CaseRecord record, std::optional<Step> then) {
    record.state = CaseState::Open;
    record.causeFound.clear();
    auto view = std::make_unique<CaseView>(record, session().styleOf(record.machine),
                                           session().sentences());
    if (view->openStep() == Step::End && !view->findings().empty()) {
        record.state = CaseState::Found;
        const Finding& first = view->findings().front();
        if (!first.isSomethingElse) record.causeFound = first.causes.front();
    }
    if (!save(record)) return;
    m_view = std::make_unique<CaseView>(record, session().styleOf(record.machine),
                                        session().sentences());
    const bool asksOn = m_isAskingOn && m_view->openStep() == Step::End && m_view->state().further;
    showStep(then ? *then : asksOn ? Step::Check : m_view->openStep());
}

void FaultFinderPage::setState(CaseState state) {
    CaseRecord record = m_view->record();
    record.state = state;
    if (!save(record)) return;
    m_view = std::make_unique<CaseView>(record, callStyle(), session().sentences());
    showStep(Step::End);
}

void FaultFinderPage::observeNow(const Observation& observation) {
    CaseRecord record = m_view->record();
    observe(record, observation);
    changed(std::move(record));
}

/// In a field of one kind a figure with the unit of another was typed: it is that reading.
void FaultFinderPage::otherTyped(const QString& text) {
    if (const auto reading = ReadingBar::readingIn(text, callStyle())) observeNow(*reading);
}

void FaultFinderPage::openReading() {
    if (!m_hasCase) return;
    m_reading->open({}, callStyle());
}

void FaultFinderPage::askOn() {
    m_isAskingOn = true;
    showStep(Step::Check);
}

/// Back to what is open, with nothing changed.
void FaultFinderPage::goOn() {
    m_isAgain = false;
    const bool isOver = m_view->record().state != CaseState::Open;
    showStep(m_isAskingOn ? Step::Check : isOver ? Step::End : m_view->openStep());
}

void FaultFinderPage::changeAnswer(const QString& checkId) {
    if (checkId == u"start.symptom"_s) {
        m_isAgain = true;
        return showStep(Step::Symptom);
    }
    if (!Knowledge::shipped().check(ss(checkId))) return showStep(Step::Numbers);
    CardContent card = m_view->checkCard(checkId, nullptr);
    card.lead = tr("Answer again");
    card.canReturn = true;
    showStep(Step::Check);
    m_again = checkId;
    showCard(card);
}

void FaultFinderPage::takeBack() {
    if (!m_hasCase) return;
    const bool isAsking = m_step == Step::Check || m_step == Step::End;
    if (!isAsking || m_view->record().observations.empty()) return takeBackStart();
    CaseRecord record = m_view->record();
    record.observations.pop_back();
    m_isAskingOn = false;
    changed(std::move(record));
}

void FaultFinderPage::keyPressEvent(QKeyEvent* event) {
    const int digit = event->key() - Qt::Key_0;
    const auto modifiers = event->modifiers() & ~Qt::KeypadModifier;
    if (m_hasCase && modifiers == Qt::NoModifier && digit >= 1 && digit <= 9) {
        if (m_cards->currentWidget() == m_card && m_card->press(digit)) return;
        if (m_cards->currentWidget() == m_end && m_end->press(digit)) return;
    }
    Page::keyPressEvent(event);
}

void FaultFinderPage::focusInEvent(QFocusEvent* event) {
    Page::focusInEvent(event);
    if (m_hasCase)
        focusStep();
    else
        m_list->takeFocus();
}

void FaultFinderPage::focusStep() {
    if (!isVisible()) return;
    if (m_cards->currentWidget() == m_numbers)
        m_numbers->takeFocus();
    else if (m_cards->currentWidget() == m_end)
        m_end->takeFocus();
    else
        m_card->takeFocus();
}

void FaultFinderPage::showEvent(QShowEvent* event) {
    Page::showEvent(event);
    if (m_hasCase) m_running.start();
    m_ticker->start();
}

void FaultFinderPage::hideEvent(QHideEvent* event) {
    if (m_hasCase && m_running.isValid()) m_spent += m_running.elapsed();
    m_running.invalidate();
    m_ticker->stop();
    Page::hideEvent(event);
}

bool FaultFinderPage::isTiming() const {
    return m_view && (m_view->record().state == CaseState::Open ||
                      m_view->record().state == CaseState::Found);
}

/// Whole minutes; what took less counts as one.
int FaultFinderPage::minutesNow() const {
    const qint64 ms = m_spent + (m_running.isValid() ? m_running.elapsed() : 0);
    return std::max(1, static_cast<int>(ms / kMinute));
}

void FaultFinderPage::tick() {
    if (!m_hasCase || !m_view) return m_clock->clear();
    const qint64 ms = isTiming() ? m_spent + (m_running.isValid() ? m_running.elapsed() : 0)
                                 : qint64(m_view->record().minutes) * kMinute;
    m_clock->setText(QString::number(ms / kMinute) + u':' +
                     QString::number(ms / 1000 % 60).rightJustified(2, u'0'));
}

void FaultFinderPage::showHeader() {
    m_backButton->setVisible(m_hasCase);
    m_clock->setVisible(m_hasCase);
    m_listButton->setVisible(m_hasCase);
    tick();
    if (!m_hasCase)
        return m_caseLabel->setText(tr("Cases in this file: %1").arg(session().cases().size()));
    const CaseRecord& record = m_view->record();
    const auto opened = QDateTime::fromString(qs(record.opened), Qt::ISODate);
    QStringList parts{m_caseId == 0 ? tr("new call") : tr("Case %1").arg(m_caseId),
                      opened.toString(u"d MMM yyyy, hh:mm"_s)};
    if (!record.machine.name.empty()) parts.append(qs(record.machine.name));
    if (record.isDemo) parts.append(tr("invented"));
    m_caseLabel->setText(parts.join(u" · "_s));
    m_caseLabel->setToolTip(m_caseLabel->text());
}

}  // namespace bw
