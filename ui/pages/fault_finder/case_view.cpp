// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/case_view.h"

#include <QCoreApplication>

#include "core/diagnosis/evidence.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("FaultFinderPage", text);
}

QStringList ids(const std::vector<std::string>& list) {
    QStringList out;
    for (const auto& id : list) out.append(qs(id));
    return out;
}

QString effortOf(const Check& check, int minutes) {
    QString text = QCoreApplication::translate("FaultFinderPage", "%1 min").arg(minutes);
    const bool none = check.tools.empty() || check.tools == "none";
    text += u", "_s + (none ? tr("no tools") : qs(check.tools));
    if (check.people > 1) text += u", "_s + tr("two people");
    return text;
}

}  // namespace

CaseView::CaseView(CaseRecord record, NumberStyle style, const Sentences& sentences)
    : m_record(std::move(record)),
      m_style(style),
      m_sentences(sentences),
      m_state(reason(m_record, Knowledge::shipped())),
      m_numbers(m_record),
      m_findings(findingsOf(m_state, Knowledge::shipped())) {}

Step CaseView::openStep() const {
    if (!m_record.symptom) return Step::Symptom;
    if (m_record.tank.empty()) return Step::Tank;
    if (m_record.company.empty()) return Step::Company;
    if (m_record.place.empty()) return Step::Place;
    const bool fromFile = m_record.machineId != 0;
    if (!fromFile && m_record.machine.name.empty()) return Step::Machine;
    if (fromFile && m_record.job.name.empty()) return Step::Job;
    if (fromFile && m_record.nozzle.name.empty()) return Step::Nozzle;
    if (m_state.notCovered) return Step::NotCovered;
    return m_state.done ? Step::End : Step::Check;
}

QString CaseView::words(const Fact& fact) const {
    return qs(m_sentences.of(fact, m_style));
}
QString CaseView::words(const Problem& problem) const {
    return qs(m_sentences.of(problem, m_style));
}

QString CaseView::shortName(const std::string& check) const {
    return qs(m_sentences.text("finder.check." + check));
}

QString CaseView::nameOf(const Finding& finding) const {
    return finding.isSomethingElse ? qs(m_sentences.text("finder.something_else"))
                                   : qs(finding.name);
}

QString CaseView::phraseOf(const std::string& causeId) const {
    const Cause* cause = Knowledge::shipped().cause(causeId);
    return cause ? qs(cause->phrase) : tr("something else");
}

QString CaseView::answerText(const Observation& observation) const {
    if (observation.reading) {
        const QString typed = qs(observation.typed);
        return typed.isEmpty() ? shownIn(*observation.reading,
                                         readingUnit(observation.check, m_style.units), m_style)
                               : typed;
    }
    if (observation.answer == kCantTell) return tr("can't tell");
    const Check* check = Knowledge::shipped().check(observation.check);
    const Answer* answer = check ? check->answer(observation.answer) : nullptr;
    return answer ? qs(answer->text) : qs(observation.answer);
}

QString CaseView::outlook(const Observation& observation) const {
    const Outlook then = outlookOf(m_record, Knowledge::shipped(), m_state, observation);
    if (then.gains.empty()) return tr("the bars hardly move");
    QStringList names;
    for (const auto& gain : then.gains) names.append(nameOf(gain));
    return tr("speaks for: %1").arg(names.join(u"; "_s));
}

std::vector<CardAnswer> CaseView::answersOf(const Check& check) const {
    std::vector<CardAnswer> answers;
    for (const auto& answer : check.answers)
        answers.push_back(
            {qs(answer.id), qs(answer.text), outlook({check.id, answer.id, std::nullopt, {}})});
    answers.push_back({qs(kCantTell), tr("can't do it, or can't tell"),
                       tr("nothing changes in the bars; the next check follows")});
    return answers;
}

QStringList CaseView::expectedLines(const NextCheck& next) const {
    const Unit unit = readingUnit(next.check, m_style.units);
    QStringList lines;
    for (const auto& [cause, value] : next.expected.byCause)
        lines.append(tr("%1 with %2").arg(shownIn(value, unit, m_style), phraseOf(cause)));
    return lines;
}

CardContent CaseView::checkCard(const QString& checkId, const NextCheck* next) const {
    const Check* check = Knowledge::shipped().check(ss(checkId));
    CardContent card;
    card.id = checkId;
    if (!check) return card;
    card.place = placeName(check->place);
    card.opensLine = check->place == CheckPlace::LineOpened;
    card.effort = effortOf(*check, next ? next->minutes : check->minutes);
    card.question = qs(check->question);
    card.cautions = ids(check->cautions);
    card.answers = answersOf(*check);
    card.howTo = qs(check->howTo);
    card.why = qs(check->why);
    if (const auto dimension = readingDimension(check->id)) {
        card.entry = CardEntry{*dimension,
                               readingUnit(check->id, m_style.units),
                               shortName(check->id),
                               std::nullopt,
                               {}};
    }
    for (const auto& observation : m_record.observations) {
        if (observation.check != check->id) continue;
        card.given = qs(observation.answer);
        if (card.entry && observation.reading) {
            card.entry->value = observation.reading;
            card.entry->typed = qs(observation.typed);
        }
    }
    if (!next) return card;
    for (const auto& fact : next->why) {
        if (fact.code.starts_with("finder.next.parts"))
            card.reason += (card.reason.isEmpty() ? QString() : u" "_s) + words(fact);
        else
            card.why += u' ' + words(fact);
    }
    if (card.reason.isEmpty()) card.reason = qs(check->why);
    if (next->expected.healthy)
        card.healthy =
            shownIn(*next->expected.healthy, readingUnit(check->id, m_style.units), m_style);
    card.expected = expectedLines(*next);
    return card;
}

}  // namespace bw
