// SPDX-License-Identifier: GPL-3.0-or-later
// All that a record holds, as evidence sections.
#include <QCoreApplication>
#include <algorithm>

#include "core/diagnosis/knowledge.h"
#include "core/yard/catch_record.h"
#include "core/yard/yard_book.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("RecordSections", text);
}

EvidenceRow line(const QString& text, const QString& strong = {}, const QString& quiet = {}) {
    EvidenceRow row;
    row.text = text;
    row.strong = strong;
    row.quiet = quiet;
    return row;
}

EvidenceRow marked(const QString& icon, Role role, const QString& text) {
    EvidenceRow row = line(text);
    row.icon = icon;
    row.iconRole = role;
    return row;
}

void addSection(QVector<EvidenceSection>& out, EvidenceSection section) {
    if (!section.rows.isEmpty()) out.append(std::move(section));
}

void addNotes(QVector<EvidenceSection>& out, const std::string& notes) {
    EvidenceSection section{words("Notes"), {}};
    if (!notes.empty()) section.rows.append(line(qs(notes)));
    addSection(out, section);
}

/// "+12.5 %, replace" of each nozzle that is off.
EvidenceSection offNozzles(const CatchSummary& summary, const NumberStyle& style) {
    EvidenceSection section{words("Off the limits"), {}};
    for (const auto& nozzle : summary.nozzles) {
        if (nozzle.verdict == CatchVerdict::Good) continue;
        const bool isLow = nozzle.verdict == CatchVerdict::CleanAndCatchAgain;
        QString off = words("%1 against the mean").arg(offWords(nozzle.ofMean, style));
        if (nozzle.ofNew) off += words(", %1 against new").arg(offWords(*nozzle.ofNew, style));
        EvidenceRow row = marked(
            u"nozzle"_s, Role::Limit,
            isLow ? words("%1: clean, catch again").arg(off) : words("%1: replace").arg(off));
        row.strong = words("Nozzle %1").arg(nozzle.nozzle);
        section.rows.append(row);
    }
    return section;
}

EvidenceSection howCaught(const CatchTest& test, const NumberStyle& style) {
    EvidenceSection section{words("How it was caught"), {}};
    const auto add = [&](const QString& name, const QString& value) {
        section.rows.append(line(value, name + u':'));
    };
    if (!test.set.empty()) add(words("Set"), qs(test.set));
    if (test.pressure) add(words("At the nozzle"), shown(test.pressure->value, style));
    if (test.newFlow) add(words("A new one gives"), shown(test.newFlow->value, style));
    add(words("Limits"), words("%1 % off the mean, %2 % over new")
                             .arg(plainNumber(test.limitOfMean * 100, 0, style),
                                  plainNumber(test.limitOfNew * 100, 0, style)));
    return section;
}

QVector<EvidenceSection> catchSections(const FarmSession& session, const YardRecord& record) {
    const NumberStyle style = styleOf(session, record);
    QVector<EvidenceSection> out;
    const auto summary = summaryOf(record.catchTest);
    if (summary) {
        EvidenceSection doubts{words("Doubts"), {}};
        for (const auto& problem : summary->warnings)
            doubts.rows.append(
                marked(u"caution"_s, Role::Caution, qs(session.sentences().of(problem, style))));
        addSection(out, offNozzles(*summary, style));
        addSection(out, doubts);
    }
    out.append(howCaught(record.catchTest, style));
    return out;
}

QString readingWords(const NotedReading& reading, const NumberStyle& style) {
    const QString figure = shown(reading.value, style);
    const QString typed = qs(reading.typed).trimmed();
    // "38" says less than "38.0 psi"; "2,6 bar" typed on a machine in psi is what was read.
    const bool hasUnit =
        std::any_of(typed.begin(), typed.end(), [](QChar c) { return c.isLetter(); });
    return hasUnit ? typed : figure;
}

QVector<EvidenceSection> checkSections(const FarmSession& session, const YardRecord& record) {
    const NumberStyle style = styleOf(session, record);
    const auto* check = yardCheck(record.check);
    EvidenceSection read{words("Readings"), {}};
    for (const auto& reading : record.readings) {
        const auto* text = check ? check->reading(reading.id) : nullptr;
        QString name = text ? qs(text->label) : qs(reading.id);
        if (text && text->repeats) name = words("%1, no. %2").arg(name).arg(reading.run);
        read.rows.append(line(readingWords(reading, style), name + u':'));
    }
    for (const auto& choice : record.choices) {
        const auto* text = check ? check->reading(choice.id) : nullptr;
        QString chosen = qs(choice.word);
        for (const auto& one : text ? text->choices : std::vector<YardReadingText::Choice>()) {
            if (one.id == choice.word) chosen = qs(one.text);
        }
        read.rows.append(line(chosen, (text ? qs(text->label) : qs(choice.id)) + u':'));
    }
    QVector<EvidenceSection> out;
    addSection(out, read);
    const auto answer = answerOf(session, record);
    if (!answer) return out;
    EvidenceSection sum{words("The sum"), {}};
    for (const auto& fact : answer->shown.sum)
        sum.rows.append(line(qs(session.sentences().of(fact, style))));
    EvidenceSection doubts{words("Doubts"), {}};
    for (const auto& problem : answer->shown.warnings)
        doubts.rows.append(
            marked(u"caution"_s, Role::Caution, qs(session.sentences().of(problem, style))));
    addSection(out, sum);
    addSection(out, doubts);
    if (!record.writtenFields.empty())
        out.append({words("Profile"),
                    {marked(u"origin:measured"_s, Role::Ink,
                            words("Its result was written into the profile as measured."))}});
    return out;
}

QVector<EvidenceSection> checklistSections(const FarmSession& session, const YardRecord& record) {
    EvidenceSection done{words("Ticked"), {}}, open{words("Not ticked"), {}};
    for (const auto& [text, tick] : itemsOf(session, record)) {
        const bool isTicked = tick && !tick->date.empty();
        EvidenceRow row = marked(isTicked ? u"check"_s : u"unchecked"_s,
                                 isTicked ? Role::Ok : Role::Unchecked, text);
        QStringList quiet;
        if (isTicked) quiet << dayWords(tick->date);
        if (tick && !tick->note.empty()) quiet << qs(tick->note);
        row.quiet = quiet.join(u" · "_s);
        (isTicked ? done : open).rows.append(row);
    }
    QVector<EvidenceSection> out;
    addSection(out, open);
    addSection(out, done);
    return out;
}

QString answerWords(const Observation& observation, const NumberStyle& style) {
    if (observation.reading)
        return observation.typed.empty() ? shown(*observation.reading, style)
                                         : qs(observation.typed);
    if (observation.answer == "cant_tell") return words("can't tell");
    const Check* check = Knowledge::shipped().check(observation.check);
    const Answer* answer = check ? check->answer(observation.answer) : nullptr;
    return answer ? qs(answer->text) : qs(observation.answer);
}

EvidenceSection wayOf(const FarmSession& session, const CaseRecord& record) {
    EvidenceSection way{words("The way walked"), {}};
    const NumberStyle style = session.styleOf(record.machine);
    for (const auto& observation : record.observations) {
        const std::string code = "finder.check." + observation.check;
        const QString name = session.sentences().has(code) ? qs(session.sentences().text(code))
                                                           : qs(observation.check);
        way.rows.append(line(answerWords(observation, style), name + u':'));
    }
    if (way.rows.isEmpty()) way.rows.append(line(words("Nothing was asked yet.")));
    return way;
}

QString tankWords(const std::string& tank) {
    if (tank == "water") return words("clean water");
    if (tank == "rinsed") return words("rinsed, water in it");
    if (tank == "product") return words("product");
    return words("not asked");
}

}  // namespace

QVector<EvidenceSection> sectionsOf(const FarmSession& session, const YardRecord& record) {
    QVector<EvidenceSection> out =
        record.kind == YardKind::CatchTest   ? catchSections(session, record)
        : record.kind == YardKind::Checklist ? checklistSections(session, record)
                                             : checkSections(session, record);
    addNotes(out, record.notes);
    return out;
}

QVector<EvidenceSection> sectionsOf(const FarmSession& session, const CaseRecord& record) {
    EvidenceSection call{words("The call"), {}};
    const QString complaint =
        record.symptom ? symptomWords(*record.symptom) : words("not asked yet");
    call.rows.append(line(complaint, words("Complaint:")));
    call.rows.append(line(tankWords(record.tank), words("In the tank:")));
    if (!record.nozzle.name.empty())
        call.rows.append(line(qs(record.nozzle.name), words("Nozzle:")));
    if (!record.job.name.empty()) call.rows.append(line(qs(record.job.name), words("Job:")));
    call.rows.append(line(words("%1 min").arg(record.minutes), words("Took:")));
    QVector<EvidenceSection> out{call, wayOf(session, record)};
    addNotes(out, record.notes);
    return out;
}

}  // namespace bw
