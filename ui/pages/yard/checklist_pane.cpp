// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/checklist_pane.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const NotedTick* tickOf(const YardRecord& record, const std::string& item) {
    const auto found = std::find_if(record.ticks.begin(), record.ticks.end(),
                                    [&](const NotedTick& t) { return t.item == item; });
    return found == record.ticks.end() ? nullptr : &*found;
}

QString phaseName(const ChecklistPart& part) {
    return qs(choiceName(part.phase));
}

}  // namespace

ChecklistRow::ChecklistRow(const ChecklistItem& item, QWidget* parent)
    : QWidget(parent),
      m_id(item.id),
      m_tick(new QCheckBox),
      m_day(new TextLabel({}, TextSize::Small, Role::Ok)),
      m_note(new QLineEdit) {
    const QString name = u"yard.checklist."_s + qs(item.id);
    m_tick->setObjectName(name + u".tick"_s);
    m_tick->setAccessibleName(qs(item.text));
    m_day->setObjectName(name + u".day"_s);
    m_note->setObjectName(name + u".note"_s);
    m_note->setPlaceholderText(tr("note"));
    m_note->setAccessibleName(tr("Note on: %1").arg(qs(item.text)));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, px(2), 0, px(2));
    row->setSpacing(px(10));
    row->addWidget(m_tick, 0, Qt::AlignTop);
    auto* words = new QVBoxLayout;
    words->setSpacing(px(1));
    words->addWidget((new TextLabel(qs(item.text)))->wrapped());
    words->addWidget((new TextLabel(qs(item.why), TextSize::Small, Role::Quiet))->wrapped());
    row->addLayout(words, 1);
    auto* side = new QVBoxLayout;
    side->setSpacing(px(2));
    m_note->setFixedWidth(px(150));
    side->addWidget(m_note);
    side->addWidget(m_day);
    if (!item.check.empty()) {
        auto* open = new Button(tr("Open the check"), u"right"_s, Button::Kind::Flat);
        open->setObjectName(name + u".check"_s);
        side->addWidget(open, 0, Qt::AlignLeft);
        connect(open, &QAbstractButton::clicked, this,
                [this, check = qs(item.check)] { Q_EMIT checkWanted(check); });
    }
    side->addStretch(1);
    row->addLayout(side);
    const auto tell = [this] {
        Q_EMIT changed(qs(m_id), m_tick->isChecked(), m_note->text().trimmed());
    };
    connect(m_tick, &QAbstractButton::clicked, this, tell);
    connect(m_note, &QLineEdit::editingFinished, this, [this, tell] {
        if (m_note->isModified()) tell();
        m_note->setModified(false);
    });
}

void ChecklistRow::present(const NotedTick* tick) {
    m_tick->setChecked(tick && !tick->date.empty());
    m_day->setText(tick && !tick->date.empty() ? tr("done %1").arg(dayWords(tick->date))
                                               : QString());
    const QString note = tick ? qs(tick->note) : QString();
    if (!m_note->isModified() && m_note->text() != note) m_note->setText(note);
    m_note->setToolTip(note);
}

ChecklistPane::ChecklistPane(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_phase(new SegmentedButtons),
      m_result(new EvidenceColumn),
      m_finish(new Button(tr("Close this list and keep it"), u"check"_s)),
      m_note(new TextLabel({}, TextSize::Small, Role::Quiet)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* paper = new QWidget;
    m_column = new QVBoxLayout(paper);
    m_column->setContentsMargins(px(20), px(14), px(20), px(14));
    m_column->setSpacing(px(8));
    auto* title = new TextLabel(tr("Pre-season checklist"), TextSize::Verdict, Role::Ink, true);
    title->setObjectName(u"yard.checklist.title"_s);
    m_column->addWidget(title);
    m_column->addWidget((new TextLabel(tr("Made from this machine's profile. Tick what is done; "
                                          "each tick is kept with its day.")))
                            ->wrapped());
    m_phase->setObjectName(u"yard.checklist.phase"_s);
    m_phase->setAccessibleName(tr("Phase"));
    m_column->addWidget(m_phase, 0, Qt::AlignLeft);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(paper);
    row->addWidget(scroll, 1);
    row->addWidget(m_result);
    m_result->verdict()->setObjectName(u"yard.checklist.verdict"_s);
    m_finish->setObjectName(u"yard.checklist.finish"_s);
    m_result->foot()->addWidget(m_note->wrapped());
    m_result->foot()->addWidget(m_finish);
    for (const auto& part : wholeChecklist()) {
        const int index = m_phase->addChoice(qs(part.title));
        m_phase->button(index)->setObjectName(u"yard.checklist.phase."_s + phaseName(part));
    }
    connect(m_phase, &SegmentedButtons::currentIndexChanged, this, [this] { open(m_machineId); });
    connect(m_finish, &QAbstractButton::clicked, this, &ChecklistPane::finish);
}

void ChecklistPane::takePhase(int index) {
    m_phase->setCurrentIndex(index);
}

const ChecklistPart* ChecklistPane::part() const {
    const auto& all = wholeChecklist();
    const auto phase = all[static_cast<std::size_t>(std::max(0, m_phase->currentIndex()))].phase;
    for (const auto& one : m_parts) {
        if (one.phase == phase) return &one;
    }
    return nullptr;
}

std::string ChecklistPane::now() const {
    return ss(m_session.now().toString(u"yyyy-MM-ddTHH:mm:ss"_s));
}

void ChecklistPane::readRecord() {
    m_recordId = 0;
    m_record = {};
    const ChecklistPart* now = part();
    if (!now) return;
    const auto* begun = newestRecord(m_session, m_machineId, YardKind::Checklist,
                                     std::string(choiceName(now->phase)), false);
    if (!begun) return;
    m_recordId = begun->id;
    m_record = begun->record;
}

void ChecklistPane::open(RecordId machineId) {
    m_machineId = machineId;
    const Machine* machine = m_session.machine(machineId);
    if (!machine) return;
    std::vector<Job> jobs;
    for (const auto& stored : m_session.jobsOf(machineId)) jobs.push_back(stored.job);
    m_parts = checklistFor(*machine, jobs);
    readRecord();
    fill();
    show();
}

void ChecklistPane::refresh() {
    if (m_isSaving || m_machineId == 0) return;
    open(m_machineId);
}

/// Built anew only when other items are due: a row in hand stays in hand.
void ChecklistPane::fill() {
    const ChecklistPart* now = part();
    std::vector<std::string> ids;
    if (now) {
        for (const auto& item : now->items) ids.push_back(item.id);
    }
    if (m_body && ids == m_filled) return;
    m_filled = ids;
    m_rows.clear();
    if (m_body) m_body->deleteLater();
    if (m_body) m_body->hide();
    m_body = new QWidget;
    auto* column = new QVBoxLayout(m_body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(6));
    m_column->addWidget(m_body, 1);
    if (now) addItems(*now);
    column->addStretch(1);
}

/// Items in a row that need the same cautions stand under one box of them.
void ChecklistPane::addItems(const ChecklistPart& part) {
    std::vector<std::string> before;
    bool isFirst = true;
    for (const auto& item : part.items) {
        if (!item.cautions.empty() && (isFirst || item.cautions != before)) {
            auto* box = new CautionBox;
            box->setObjectName(u"yard.checklist.%1.cautions"_s.arg(qs(item.id)));
            m_body->layout()->addWidget(box);
            box->setTexts(ledCautions(item.cautions), true);
        } else if (!isFirst) {
            m_body->layout()->addWidget(new HairLine);
        }
        before = item.cautions;
        isFirst = false;
        auto* row = new ChecklistRow(item);
        m_body->layout()->addWidget(row);
        connect(row, &ChecklistRow::changed, this, &ChecklistPane::note);
        connect(row, &ChecklistRow::checkWanted, this, &ChecklistPane::checkWanted);
        m_rows.push_back(row);
    }
}

void ChecklistPane::show() {
    int done = 0;
    for (auto* row : m_rows) {
        const NotedTick* tick = tickOf(m_record, row->id());
        row->present(tick);
        done += tick && !tick->date.empty();
    }
    const int all = static_cast<int>(m_rows.size());
    m_result->setVerdict(tr("%1 of %2 ticked").arg(done).arg(all),
                         m_record.started.empty() ? tr("Not begun.")
                                                  : tr("Begun %1.").arg(dayWords(m_record.started)),
                         done == all && all > 0 ? Tone::Ok : Tone::Plain);
    QVector<EvidenceSection> sections;
    EvidenceSection notes{tr("Noted"), {}};
    for (const auto& tick : m_record.ticks) {
        if (tick.note.empty()) continue;
        EvidenceRow one;
        one.text = qs(tick.note);
        notes.rows.append(one);
    }
    if (!notes.rows.isEmpty()) sections.append(notes);
    EvidenceSection rests{tr("What it does not say"), {}};
    EvidenceRow one;
    one.icon = u"unchecked"_s;
    one.iconRole = Role::Unchecked;
    one.text =
        tr("A tick says that you looked, not that the machine passes an inspection. Label, "
           "handbook and local rules come first.");
    rests.rows.append(one);
    sections.append(rests);
    if (const ChecklistPart* now = part()) {
        const auto* last = newestRecord(m_session, m_machineId, YardKind::Checklist,
                                        std::string(choiceName(now->phase)), true);
        if (last) {
            EvidenceSection before{tr("Last time"), {}};
            EvidenceRow line;
            line.text = tr("Closed %1, %2 ticked.")
                            .arg(dayWords(last->record.finished))
                            .arg(last->record.ticks.size());
            before.rows.append(line);
            sections.append(before);
        }
    }
    m_result->setSections(sections);
    m_finish->setEnabled(m_recordId != 0);
    m_note->setText(tr("Each tick is saved. A closed list is kept; the next one starts empty."));
}

void ChecklistPane::note(const QString& item, bool isTicked, const QString& text) {
    const NotedTick* before = tickOf(m_record, ss(item));
    NotedTick tick{ss(item), {}, ss(text)};
    if (isTicked) tick.date = before && !before->date.empty() ? before->date : now().substr(0, 10);
    std::erase_if(m_record.ticks, [&](const NotedTick& t) { return t.item == tick.item; });
    if (isTicked || !tick.note.empty()) m_record.ticks.push_back(tick);
    save();
}

bool ChecklistPane::save() {
    const ChecklistPart* list = part();
    const Machine* machine = m_session.machine(m_machineId);
    if (!list || !machine) return false;
    if (m_record.started.empty()) {
        m_record.kind = YardKind::Checklist;
        m_record.check = choiceName(list->phase);
        m_record.started = now();
    }
    m_record.machineId = m_machineId;
    m_record.machineName = machine->name;
    m_record.units = machine->units;
    m_isSaving = true;
    const auto id = m_session.saveYardRecord(m_recordId, m_record);
    m_isSaving = false;
    if (!id) {
        Q_EMIT failed(id.problem());
        readRecord();
    } else {
        m_recordId = *id;
    }
    show();
    return id.isOk();
}

void ChecklistPane::finish() {
    if (m_recordId == 0) return;
    m_record.finished = now();
    if (save()) open(m_machineId);
}

void ChecklistPane::takeFocus() {
    m_phase->button(std::max(0, m_phase->currentIndex()))->setFocus(Qt::OtherFocusReason);
}

}  // namespace bw
