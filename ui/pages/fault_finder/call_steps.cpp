// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of a call: what each shows, and what an answer does to the record.
#include <QStackedWidget>
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/fault_finder/call_column.h"
#include "ui/pages/fault_finder/end_card.h"
#include "ui/pages/fault_finder/fault_finder_page.h"
#include "ui/pages/fault_finder/numbers_form.h"
#include "ui/pages/fault_finder/question_card.h"
#include "ui/pages/fault_finder/standing_column.h"
#include "ui/pages/fault_finder/way_pipe.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const QString kNone = u"none"_s;
const QString kNewCall = u"new_call"_s;

struct StartWords {
    const char* id;
    const char* question;
    const char* reason;
    QStringList cautions;
};

StartWords wordsOf(Step step) {
    switch (step) {
        case Step::Tank:
            return {"tank",
                    QT_TRANSLATE_NOOP("FaultFinderPage", "What is in the tank?"),
                    QT_TRANSLATE_NOOP("FaultFinderPage",
                                      "It decides which checks can be asked at all."),
                    {u"C3"_s}};
        case Step::Company:
            return {"company",
                    QT_TRANSLATE_NOOP("FaultFinderPage", "Is the caller alone?"),
                    QT_TRANSLATE_NOOP("FaultFinderPage", "Some checks need two people."),
                    {u"C6"_s, u"C4"_s}};
        case Step::Place:
            return {"place",
                    QT_TRANSLATE_NOOP("FaultFinderPage", "Where does the machine stand?"),
                    QT_TRANSLATE_NOOP("FaultFinderPage",
                                      "Displays are read parked; nothing on foot beside a road."),
                    {u"C7"_s, u"C5"_s}};
        default:
            return {"symptom",
                    QT_TRANSLATE_NOOP("FaultFinderPage", "What does the caller say?"),
                    QT_TRANSLATE_NOOP("FaultFinderPage",
                                      "Our word at the left, the caller's words at the right."),
                    {u"C7"_s}};
    }
}

QString jobMeaning(const Job& job, const NumberStyle& style) {
    QStringList parts;
    if (job.rate) parts.append(shown(job.rate->value, style));
    if (job.usual)
        parts.append(FaultFinderPage::tr("usually %1").arg(shown(job.usual->value, style)));
    return parts.join(u", "_s);
}

QString nozzleMeaning(const Nozzle& nozzle, const NumberStyle& style) {
    if (!nozzle.flow || !nozzle.at) return {};
    return FaultFinderPage::tr("%1 at %2")
        .arg(shown(nozzle.flow->value, style), shown(nozzle.at->value, style));
}

}  // namespace

void FaultFinderPage::showCard(const CardContent& card) {
    m_cards->setCurrentWidget(m_card);
    m_card->setContent(card, callStyle());
    focusStep();
    tellWall();
}

const NextCheck* FaultFinderPage::checkInHand() const {
    const CallState& state = m_view->state();
    if (state.next) return &*state.next;
    return m_isAskingOn && state.further ? &*state.further : nullptr;
}

void FaultFinderPage::showStep(Step step) {
    if (step == Step::Check && !checkInHand()) step = m_view->openStep();
    if (step == Step::End && m_view->findings().empty()) step = Step::NotCovered;
    m_step = step;
    m_again.clear();
    m_left->setView(*m_view);
    m_right->setView(*m_view, step == Step::Check ? checkInHand() : nullptr);
    showWay();
    showHeader();
    if (step == Step::Numbers) {
        m_cards->setCurrentWidget(m_numbers);
        m_numbers->setRecord(m_view->record(), callStyle());
        focusStep();
        return tellWall();
    }
    if (step == Step::End) {
        m_cards->setCurrentWidget(m_end);
        m_end->setView(*m_view, std::max(m_view->record().minutes, isTiming() ? minutesNow() : 0));
        focusStep();
        return tellWall();
    }
    showCard(step == Step::Check ? questionCard() : startCard(step));
}

CardContent FaultFinderPage::questionCard() const {
    const NextCheck* next = checkInHand();
    if (!next) return {};
    CardContent card = m_view->checkCard(qs(next->check), next);
    int asked = 1;
    for (const auto& observation : m_view->record().observations)
        asked += NumbersForm::asksFor(observation.check) ? 0 : 1;
    card.lead = tr("Check %1").arg(asked);
    return card;
}

CardContent FaultFinderPage::startCard(Step step) const {
    if (step == Step::Machine) return machineCard();
    if (step == Step::Job) return jobCard();
    if (step == Step::Nozzle) return nozzleCard();
    CardContent card;
    card.canReturn = m_isAgain;
    if (step == Step::NotCovered) {
        card.id = u"start.notCovered"_s;
        card.question = tr("Pulsed nozzles: not covered yet");
        for (const auto& fact : m_view->state().sums) card.reason += m_view->words(fact);
        card.cautions = {u"C7"_s};
        card.answers = {{u"numbers"_s, tr("Change the numbers"), {}},
                        {kNewCall, tr("New call"), tr("this one stays in the list")}};
        return card;
    }
    const StartWords words = wordsOf(step);
    const CaseRecord& record = m_view->record();
    const QString key = QString::fromLatin1(words.id);
    card.id = u"start."_s + key;
    card.lead = step == Step::Symptom ? tr("New call") : tr("Before anything else");
    card.question = tr(words.question);
    card.reason = tr(words.reason);
    card.cautions = words.cautions;
    card.answers = step == Step::Symptom ? symptomChoices() : safetyChoices(key);
    if (step == Step::Symptom && record.symptom) card.given = qs(choiceName(*record.symptom));
    if (step == Step::Tank) card.given = qs(record.tank);
    if (step == Step::Company) card.given = qs(record.company);
    if (step == Step::Place) card.given = qs(record.place);
    return card;
}

CardContent FaultFinderPage::machineCard() const {
    CardContent card;
    card.id = u"start.machine"_s;
    card.lead = tr("The machine");
    card.question = tr("Which machine is it?");
    card.reason = tr("With its numbers the finder says what to expect at each check.");
    card.canReturn = m_isAgain;
    auto machines = session().season().machines;
    std::stable_partition(machines.begin(), machines.end(), [this](const StoredMachine& stored) {
        return stored.id == session().currentMachine();
    });
    for (const auto& stored : machines) {
        const int nozzles = nozzleCount(stored.machine);
        card.answers.push_back({QString::number(stored.id), qs(stored.machine.name),
                                nozzles > 0 ? tr("%1 nozzles").arg(nozzles) : QString()});
    }
    card.answers.push_back({kNone, tr("The caller's machine is not here"),
                            tr("its numbers come next; every one can be skipped")});
    if (m_view->record().machineId != 0) card.given = QString::number(m_view->record().machineId);
    return card;
}

CardContent FaultFinderPage::jobCard() const {
    CardContent card;
    card.id = u"start.job"_s;
    card.lead = tr("The machine");
    card.question = tr("Which job was it doing?");
    card.reason = tr("Rate and speed tell what flow and pressure it needs.");
    card.canReturn = m_isAgain;
    auto jobs = session().jobsOf(m_view->record().machineId);
    std::stable_partition(jobs.begin(), jobs.end(), [this](const StoredJob& stored) {
        return stored.id == session().currentJob();
    });
    for (const auto& stored : jobs)
        card.answers.push_back(
            {QString::number(stored.id), qs(stored.job.name), jobMeaning(stored.job, callStyle())});
    card.answers.push_back({kNone, tr("Another job"), tr("its rate and speed come next")});
    return card;
}

CardContent FaultFinderPage::nozzleCard() const {
    CardContent card;
    card.id = u"start.nozzle"_s;
    card.lead = tr("The machine");
    card.question = tr("Which nozzle is on?");
    card.reason = tr("Its size is read off the nozzle or its colour; the job's own comes first.");
    card.canReturn = m_isAgain;
    const CaseRecord& record = m_view->record();
    std::vector<std::string> names;
    const auto add = [&names](const std::string& name) {
        if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(name);
    };
    add(record.job.pinnedNozzle);
    for (const auto& set : record.machine.setsAboard) add(set.nozzle);
    for (const auto& stored : session().season().nozzles) add(stored.nozzle.name);
    const bool us = record.machine.units == UnitSystem::Us;
    for (const auto& nozzle : builtInNozzles()) {
        if (qs(nozzle.name).contains(us ? u"US"_s : u"metric"_s)) add(nozzle.name);
    }
    for (const auto& name : names) {
        const Nozzle* nozzle = session().nozzleNamed(name);
        if (nozzle)
            card.answers.push_back({qs(name), qs(name), nozzleMeaning(*nozzle, callStyle())});
    }
    card.answers.push_back({kNone, tr("Nobody knows"), tr("then no pressure can be expected")});
    return card;
}

void FaultFinderPage::answer(const QString& id) {
    if (m_step == Step::Check)
        return observeNow({ss(m_card->content().id), ss(id), std::nullopt, {}});
    if (id == kNewCall) return newCall();
    if (m_step == Step::NotCovered) return showStep(Step::Numbers);
    answerStart(id);
}

void FaultFinderPage::answerStart(const QString& id) {
    CaseRecord record = m_view->record();
    std::optional<Step> then;
    switch (m_step) {
        case Step::Symptom:
            record.symptom = choiceFor<Symptom>(ss(id));
            break;
        case Step::Tank:
            record.tank = ss(id);
            break;
        case Step::Company:
            record.company = ss(id);
            break;
        case Step::Place:
            record.place = ss(id);
            break;
        case Step::Machine:
            if (!answerMachine(record, id)) then = Step::Numbers;
            break;
        case Step::Job:
            answerJob(record, id);
            break;
        case Step::Nozzle:
            answerNozzle(record, id);
            then = Step::Numbers;
            break;
        default:
            numbersInHand().writeInto(record);
    }
    m_isAgain = false;
    changed(std::move(record), then);
}

/// True: a machine of the file, whose job comes next.
bool FaultFinderPage::answerMachine(CaseRecord& record, const QString& id) {
    record.job = {};
    record.nozzle = {};
    record.machineId = id.toLongLong();
    const Machine* machine = session().machine(record.machineId);
    if (machine) {
        record.machine = *machine;
        for (const auto& stored : session().season().machines) {
            if (stored.id == record.machineId) record.customerId = stored.customer;
        }
        return true;
    }
    record.machineId = record.customerId = 0;
    const UnitSystem units = session().currentStyle().units;
    record.machine = {};
    record.machine.units = units;
    record.machine.name = ss(tr("Caller's machine"));
    return false;
}

void FaultFinderPage::answerJob(CaseRecord& record, const QString& id) {
    const Job* job = session().job(id.toLongLong());
    record.job = job ? *job : Job{};
    if (!job) record.job.name = ss(tr("Another job"));
}

void FaultFinderPage::answerNozzle(CaseRecord& record, const QString& id) {
    const Nozzle* nozzle = session().nozzleNamed(ss(id));
    record.nozzle = nozzle ? *nozzle : Nozzle{};
    if (!nozzle) record.nozzle.name = ss(tr("not known"));
}

/// Clears the last answer of the start that was given, and asks it again.
void FaultFinderPage::takeBackStart() {
    CaseRecord record = m_view->record();
    Step step = Step::Symptom;
    if (record.machineId != 0 && !record.nozzle.name.empty()) {
        record.nozzle = {};
        step = Step::Nozzle;
    } else if (record.machineId != 0 && !record.job.name.empty()) {
        record.job = {};
        step = Step::Job;
    } else if (!record.machine.name.empty()) {
        record.machine = {};
        record.machineId = record.customerId = 0;
        step = Step::Machine;
    } else if (!record.place.empty()) {
        record.place.clear();
        step = Step::Place;
    } else if (!record.company.empty()) {
        record.company.clear();
        step = Step::Company;
    } else if (!record.tank.empty()) {
        record.tank.clear();
        step = Step::Tank;
    } else if (record.symptom) {
        record.symptom.reset();
    } else {
        return;
    }
    changed(std::move(record), step);
}

void FaultFinderPage::showWay() {
    std::vector<WayStop> stops;
    const CaseRecord& record = m_view->record();
    if (record.symptom)
        stops.push_back(
            {u"start.symptom"_s, tr("Complaint"), symptomName(*record.symptom), {}, false});
    for (const auto& observation : record.observations) {
        WayStop stop{qs(observation.check),
                     m_view->shortName(observation.check),
                     m_view->answerText(observation),
                     {},
                     false};
        const Check* check = Knowledge::shipped().check(observation.check);
        if (check && !observation.answer.empty()) {
            for (const auto& other : check->answers) {
                if (other.id == observation.answer) continue;
                stop.other = qs(other.text);
                break;
            }
        }
        stops.push_back(std::move(stop));
    }
    const NextCheck* next = checkInHand();
    QString title = tr("The start");
    if (m_step == Step::Check && next) title = m_view->shortName(next->check);
    if (m_step == Step::End) title = tr("Most likely");
    if (m_step == Step::Numbers) title = tr("Numbers");
    stops.push_back({{}, title, {}, {}, true});
    m_way->setStops(stops);
}

}  // namespace bw
