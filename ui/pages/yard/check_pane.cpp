// SPDX-License-Identifier: GPL-3.0-or-later
// How the pane is put together and what it saves; what it shows stands in check_result.cpp.
#include "ui/pages/yard/check_pane.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/reading_form.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Runs that stand open from the start: two, six where a jug stands for the boom.
int runsFor(const YardCheckText& check) {
    return check.id == "Y5j" ? 6 : 2;
}

}  // namespace

CheckPane::CheckPane(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_title(new TextLabel({}, TextSize::Verdict, Role::Ink, true)),
      m_purpose(new TextLabel),
      m_takes(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_cautions(new CautionBox),
      m_steps(new QVBoxLayout),
      m_last(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_form(new ReadingForm),
      m_scroll(new QScrollArea),
      m_result(new EvidenceColumn),
      m_write(new Button(tr("Write into the profile as measured"), {}, Button::Kind::Primary)),
      m_finish(new Button(tr("Finish and keep"), u"check"_s)),
      m_again(new Button(tr("Start again"), u"back"_s)),
      m_note(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(buildMiddle(), 1);
    row->addWidget(m_result);
    buildFoot();
    connect(m_form, &ReadingForm::given, this, &CheckPane::take);
    connect(m_form, &ReadingForm::cleared, this,
            [this](const QString& id, int run) { drop(ss(id), run); });
    connect(m_form, &ReadingForm::chosen, this,
            [this](const QString& id, const QString& word) { choose(ss(id), ss(word)); });
    connect(m_form, &ReadingForm::finished, this, [this] {
        Button* next = m_write->isVisibleTo(this) ? m_write : m_finish;
        if (next->isEnabled()) next->setFocus(Qt::TabFocusReason);
    });
}

QWidget* CheckPane::buildMiddle() {
    m_title->setObjectName(u"yard.check.title"_s);
    m_purpose->setObjectName(u"yard.check.purpose"_s);
    m_takes->setObjectName(u"yard.check.takes"_s);
    m_cautions->setObjectName(u"yard.check.cautions"_s);
    m_last->setObjectName(u"yard.check.last"_s);
    auto* paper = new QWidget;
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(20), px(14), px(20), px(14));
    column->setSpacing(px(8));
    column->addWidget(m_title->wrapped());
    column->addWidget(m_purpose->wrapped());
    column->addWidget(m_takes->wrapped());
    column->addWidget(m_cautions);
    const auto heading = [column](const QString& text) {
        auto* label = new TextLabel(text, TextSize::Lead, Role::Ink, true);
        label->setContentsMargins(0, px(6), 0, 0);
        column->addWidget(label);
    };
    heading(tr("What to do"));
    m_steps->setSpacing(px(5));
    column->addLayout(m_steps);
    heading(tr("What to read"));
    column->addWidget(m_last->wrapped());
    column->addWidget(m_form);
    column->addStretch(1);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setWidget(paper);
    return m_scroll;
}

void CheckPane::buildFoot() {
    m_result->verdict()->setObjectName(u"yard.check.verdict"_s);
    m_result->list()->setObjectName(u"yard.check.evidence"_s);
    m_write->setObjectName(u"yard.check.write"_s);
    m_finish->setObjectName(u"yard.check.finish"_s);
    m_again->setObjectName(u"yard.check.again"_s);
    m_note->setObjectName(u"yard.check.note"_s);
    m_finish->setToolTip(tr("Closes this check and keeps its readings with the machine"));
    auto* foot = m_result->foot();
    foot->addWidget(m_note->wrapped());
    foot->addWidget(m_write);
    auto* row = new QHBoxLayout;
    row->setSpacing(px(6));
    row->addWidget(m_finish);
    row->addWidget(m_again);
    row->addStretch(1);
    foot->addLayout(row);
    connect(m_write, &QAbstractButton::clicked, this, &CheckPane::write);
    connect(m_finish, &QAbstractButton::clicked, this, &CheckPane::finish);
    connect(m_again, &QAbstractButton::clicked, this, &CheckPane::startAgain);
}

const Machine* CheckPane::machine() const {
    return m_session.machine(m_machineId);
}

NumberStyle CheckPane::style() const {
    return machine() ? m_session.styleOf(*machine()) : m_session.currentStyle();
}

std::string CheckPane::now() const {
    return ss(m_session.now().toString(u"yyyy-MM-ddTHH:mm:ss"_s));
}

void CheckPane::open(const YardCheckText& check, RecordId machine) {
    m_check = &check;
    m_machineId = machine;
    m_recordId = 0;
    m_record = {};
    if (const auto* begun = newestRecord(m_session, machine, YardKind::Check, check.id, false)) {
        m_recordId = begun->id;
        m_record = begun->record;
    }
    fillWords();
    m_form->setCheck(check, style(), runsFor(check));
    m_form->present(m_record, style());
    m_scroll->ensureVisible(0, 0);
    show();
}

void CheckPane::refresh() {
    if (!m_check || !machine() || m_isSaving) return;
    if (m_recordId != 0) {
        // Thrown away, and perhaps brought back by undo.
        const auto* stored = m_session.yardRecord(m_recordId);
        if (!stored) return open(*m_check, m_machineId);
        m_record = stored->record;
    } else if (newestRecord(m_session, m_machineId, YardKind::Check, m_check->id, false)) {
        return open(*m_check, m_machineId);
    }
    m_form->present(m_record, style());
    show();
}

void CheckPane::takeFocus() {
    m_form->takeFocus();
}

QString CheckPane::checkTitle() const {
    return m_title->text();
}

QString CheckPane::refusedText() const {
    return m_form->refusedText();
}

bool CheckPane::commitPending() {
    return m_form->commitPending();
}

void CheckPane::take(const NotedReading& reading) {
    auto& all = m_record.readings;
    const auto place = std::find_if(all.begin(), all.end(), [&](const NotedReading& r) {
        return r.id == reading.id && r.run == reading.run;
    });
    if (place == all.end())
        all.push_back(reading);
    else
        *place = reading;
    save();
}

void CheckPane::drop(const std::string& id, int run) {
    std::erase_if(m_record.readings,
                  [&](const NotedReading& r) { return r.id == id && r.run == run; });
    save();
}

void CheckPane::choose(const std::string& id, const std::string& word) {
    std::erase_if(m_record.choices, [&](const NotedChoice& c) { return c.id == id; });
    m_record.choices.push_back({id, word});
    save();
}

bool CheckPane::save() {
    if (!m_check || !machine()) return false;
    if (m_record.started.empty()) {
        m_record.kind = YardKind::Check;
        m_record.check = m_check->id;
        m_record.machineId = m_machineId;
        m_record.started = now();
    }
    m_record.machineName = machine()->name;
    m_record.units = machine()->units;
    m_isSaving = true;
    const auto id = m_session.saveYardRecord(m_recordId, m_record);
    m_isSaving = false;
    if (!id) {
        Q_EMIT failed(id.problem());
        show();
        return false;
    }
    m_recordId = *id;
    m_form->present(m_record, style());
    show();
    return true;
}

void CheckPane::write() {
    if (!commitPending() || !m_answer || !machine()) return;
    const auto after = written(*m_answer);
    if (!after) return;
    std::vector<std::string> keys;
    for (const auto& edit : m_answer->edits) keys.push_back(edit.key);
    const QString name = qs(m_check->title);
    const auto done = m_session.editMachine(
        m_machineId, *after, tr("%1, measured").arg(name.left(1).toLower() + name.mid(1)));
    if (!done) return Q_EMIT failed(done.problem());
    m_record.writtenFields = std::move(keys);
    m_record.finished = now();
    if (save())
        Q_EMIT told(tr("Written into the profile of %1 as measured. Undo (Ctrl+Z) takes it "
                       "back.")
                        .arg(qs(machine()->name)));
}

void CheckPane::finish() {
    if (!commitPending() || m_recordId == 0) return;
    m_record.finished = now();
    if (save()) m_again->setFocus(Qt::OtherFocusReason);
}

void CheckPane::startAgain() {
    // What is finished stays with the machine; what is not is thrown away, with undo.
    const RecordId before = m_recordId;
    const bool isFinished = !m_record.finished.empty();
    m_recordId = 0;
    m_record = {};
    if (before != 0 && !isFinished) {
        const auto done = m_session.removeYardRecord(
            before, tr("readings of “%1” thrown away").arg(qs(m_check->title)));
        if (!done) Q_EMIT failed(done.problem());
    }
    open(*m_check, m_machineId);
    takeFocus();
}

}  // namespace bw
