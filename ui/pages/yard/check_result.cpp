// SPDX-License-Identifier: GPL-3.0-or-later
// What a check's pane shows: its words, the sum, and what would be written.
#include <QHBoxLayout>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/kit/buttons.h"
#include "ui/kit/evidence.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/check_pane.h"
#include "ui/pages/yard/reading_form.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

void CheckPane::fillWords() {
    m_title->setText(qs(m_check->title));
    m_purpose->setText(qs(m_check->purpose));
    QStringList takes{tr("about %1 min, rinsing not counted").arg(m_check->minutes),
                      m_check->people > 1 ? tr("%1 people").arg(m_check->people) : tr("1 person"),
                      placeWords(m_check->place)};
    if (m_check->tools != "none") takes << tr("tools: %1").arg(qs(m_check->tools));
    m_takes->setText(takes.join(u" · "_s));
    m_cautions->setTexts(ledCautions(m_check->cautions), true);
    fillSteps();
}

void CheckPane::fillSteps() {
    while (auto* item = m_steps->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    int number = 0;
    for (const auto& step : m_check->steps) {
        auto* line = new QWidget;
        auto* row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(px(8));
        auto* figure = new TextLabel(QString::number(++number), TextSize::Body, Role::Accent, true);
        figure->setFixedWidth(px(16));
        row->addWidget(figure, 0, Qt::AlignTop);
        row->addWidget((new TextLabel(qs(step)))->wrapped(), 1);
        m_steps->addWidget(line);
    }
}

QString CheckPane::lastWords() const {
    const auto* last = newestRecord(m_session, m_machineId, YardKind::Check, m_check->id, true);
    if (!last || last->id == m_recordId) return {};
    QStringList read;
    for (const auto& reading : last->record.readings) {
        read << (reading.typed.empty() ? shown(reading.value, style()) : qs(reading.typed));
    }
    return tr("Last done %1, read then: %2.")
        .arg(dayWords(last->record.finished), read.join(u", "_s));
}

YardReadings CheckPane::readings() const {
    YardReadings out;
    auto sorted = m_record.readings;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const auto& a, const auto& b) { return a.run < b.run; });
    for (const auto& reading : sorted) out[reading.id].numbers.push_back(reading.value);
    for (const auto& choice : m_record.choices) out[choice.id].choice = choice.word;
    return out;
}

QString CheckPane::halfRun() const {
    for (const auto& reading : m_record.readings) {
        const auto* text = m_check->reading(reading.id);
        if (!text || !text->repeats) continue;
        for (const auto& other : m_check->readings) {
            if (!other.repeats) continue;
            const bool isRead = std::any_of(
                m_record.readings.begin(), m_record.readings.end(),
                [&](const NotedReading& r) { return r.id == other.id && r.run == reading.run; });
            if (!isRead) return tr("%1, no. %2").arg(qs(other.label)).arg(reading.run);
        }
    }
    return {};
}

void CheckPane::show() {
    const QString last = lastWords();
    m_last->setText(last);
    m_last->setVisible(!last.isEmpty());
    m_answer.reset();
    const Machine* now = machine();
    if (!now || !m_check) return;
    if (const QString half = halfRun(); !half.isEmpty()) {
        m_form->setProblem({}, {});
        return showMissing(half);
    }
    const auto answer = yardSum(m_check->id, readings(), *now);
    if (!answer) return showProblem(answer.problem());
    m_form->setProblem({}, {});
    m_answer = *answer;
    showAnswer(*answer);
}

void CheckPane::showProblem(const Problem& problem) {
    const auto* reading = m_check->reading(problem.where);
    if (problem.code == "yard_reading_missing" || problem.code == "yard_no_runs") {
        m_form->setProblem({}, {});
        return showMissing(reading ? qs(reading->label) : QString());
    }
    const QString sentence = qs(m_session.sentences().of(problem, style()));
    m_form->setProblem(problem.where, sentence);
    // The message takes its room first.
    QTimer::singleShot(0, this, [this] {
        if (QWidget* field = m_form->problemField()) m_scroll->ensureWidgetVisible(field);
    });
    m_result->setVerdict(tr("These readings do not fit"), sentence, Tone::Limit);
    m_result->setSections({aboutSection()});
    showFoot(false, false, false, tr("Nothing is lost: mend the reading and go on."));
}

void CheckPane::showMissing(const QString& what) {
    m_result->setVerdict(m_record.readings.empty() ? tr("Not read yet") : tr("Begun"),
                         what.isEmpty() ? QString() : tr("Still to read: %1.").arg(what),
                         Tone::Plain);
    m_result->setSections({aboutSection()});
    showFoot(false, false, false,
             m_record.readings.empty()
                 ? tr("A figure may carry its own unit. Each one is saved as you enter it.")
                 : tr("Saved. You can leave it and go on later."));
}

EvidenceSection CheckPane::sumSection(const YardAnswer& answer) const {
    EvidenceSection out{tr("The sum"), {}};
    for (const auto& fact : answer.shown.sum) {
        EvidenceRow row;
        row.text = qs(m_session.sentences().of(fact, style()));
        out.rows.append(row);
    }
    return out;
}

EvidenceSection CheckPane::aboutSection() const {
    EvidenceSection out{tr("Where this is from"), {}};
    for (const auto& source : m_check->sources) {
        EvidenceRow row;
        row.quiet = qs(source.text);
        out.rows.append(row);
    }
    return out;
}

std::optional<Machine> CheckPane::written(const YardAnswer& answer) const {
    if (answer.edits.empty() || !machine()) return std::nullopt;
    Machine after = *machine();
    const std::string day = m_record.finished.empty() ? now() : m_record.finished;
    if (!applyEdits(after, answer.edits, day.substr(0, 10))) return std::nullopt;
    return after;
}

void CheckPane::showAnswer(const YardAnswer& answer) {
    QVector<EvidenceSection> sections{sumSection(answer)};
    EvidenceSection doubts{tr("Doubts"), {}};
    for (const auto& problem : answer.shown.warnings) {
        EvidenceRow row;
        row.icon = u"caution"_s;
        row.iconRole = Role::Caution;
        row.text = qs(m_session.sentences().of(problem, style()));
        doubts.rows.append(row);
    }
    if (!doubts.rows.isEmpty()) sections.append(doubts);
    const auto after = written(answer);
    const bool isWritten = after && *after == *machine();
    if (after) {
        std::vector<std::string> keys;
        for (const auto& edit : answer.edits) keys.push_back(edit.key);
        const QString title =
            isWritten ? tr("In the profile as measured") : tr("What would be written");
        sections.append({title, changeRows(m_session, keys, *machine(), *after, style())});
    }
    sections.append(aboutSection());
    QString title = headlineOf(m_session, answer.shown.sum, style());
    if (title.isEmpty()) title = tr("Worked out");
    const QString number = newNumber(answer.shown.sum, style());
    m_result->setVerdict(title,
                         (number.isEmpty() ? QString() : tr("New number: %1.").arg(number) + u' ') +
                             tr("As read; “give or take” holds 19 times in 20."),
                         doubts.rows.isEmpty() ? Tone::Ok : Tone::Limit);
    m_result->setSections(sections);
    const bool isFinished = !m_record.finished.empty();
    QString note;
    if (isWritten)
        note = tr("Written. Undo takes it back.");
    else if (isFinished)
        note = tr("Finished %1.").arg(dayWords(m_record.finished));
    else if (!after)
        note =
            tr("This check writes nothing into the profile; its result is kept with the "
               "machine.");
    showFoot(after && !isWritten, isWritten, !isFinished, note);
}

void CheckPane::showFoot(bool canWrite, bool isWritten, bool canFinish, const QString& note) {
    const bool isWriter = !m_check->writes.empty();
    m_write->setVisible(isWriter && !isWritten);
    m_write->setEnabled(canWrite && !m_form->hasRefused());
    m_finish->setVisible(canFinish);
    m_again->setVisible(m_recordId != 0);
    m_again->setText(m_record.finished.empty() ? tr("Start again") : tr("Do it again"));
    m_note->setText(note);
    m_note->setVisible(!note.isEmpty());
}

}  // namespace bw
