// SPDX-License-Identifier: GPL-3.0-or-later
// A record in words: what it was and what came of it.
#include "ui/pages/records/record_words.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/diagnosis/knowledge.h"
#include "core/yard/catch_record.h"
#include "core/yard/checklist.h"
#include "core/yard/yard_book.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("RecordWords", text);
}

const ChecklistPart* listOf(const std::vector<ChecklistPart>& parts, const std::string& phase) {
    for (const auto& part : parts) {
        if (choiceName(part.phase) == phase) return &part;
    }
    return nullptr;
}

QString catchOutcome(const FarmSession& session, const YardRecord& record) {
    const NumberStyle style = styleOf(session, record);
    const auto summary = summaryOf(record.catchTest);
    if (!summary) return qs(session.sentences().of(summary.problem(), style));
    QStringList parts{
        words("%1 caught: %2").arg(summary->nozzles.size()).arg(meanWords(*summary, style))};
    if (summary->cv) parts << words("CV %1 %").arg(plainNumber(*summary->cv * 100, 1, style));
    const auto count = [&](CatchVerdict verdict) {
        return std::count_if(summary->nozzles.begin(), summary->nozzles.end(),
                             [&](const CaughtNozzle& n) { return n.verdict == verdict; });
    };
    if (summary->replaceSet)
        parts << words("replace the set");
    else if (count(CatchVerdict::Replace) > 0)
        parts << words("%1 to replace").arg(count(CatchVerdict::Replace));
    if (count(CatchVerdict::CleanAndCatchAgain) > 0)
        parts << words("%1 to clean").arg(count(CatchVerdict::CleanAndCatchAgain));
    if (parts.size() < 3 && !summary->replaceSet) parts << words("all within the limits");
    return parts.join(u", "_s) + u'.';
}

QString checkOutcome(const FarmSession& session, const YardRecord& record) {
    // The first of these that the sum holds says what the check is about.
    static constexpr std::array<std::string_view, 11> kOrder{
        "yard.delay",       "yard.pump_left",  "yard.agitation", "yard.loss_constant",
        "yard.steady",      "yard.meter_high", "yard.meter_low", "yard.course",
        "yard.gauge_scale", "yard.settled",    "yard.pump_drop"};
    const NumberStyle style = styleOf(session, record);
    const auto answer = answerOf(session, record);
    if (!answer) return qs(session.sentences().of(answer.problem(), style));
    const auto& sum = answer->shown.sum;
    for (const auto code : kOrder) {
        for (const auto& fact : sum) {
            if (fact.code == code) return qs(session.sentences().of(fact, style));
        }
    }
    return sum.empty() ? QString() : qs(session.sentences().of(sum.back(), style));
}

QString checklistOutcome(const FarmSession& session, const YardRecord& record) {
    const auto items = itemsOf(session, record);
    const auto ticked = std::count_if(items.begin(), items.end(), [](const auto& item) {
        return item.second && !item.second->date.empty();
    });
    return words("%1 of %2 ticked.").arg(ticked).arg(items.size());
}

}  // namespace

QString symptomWords(Symptom symptom) {
    switch (symptom) {
        case Symptom::Hunting:
            return words("hunting");
        case Symptom::StuckHigh:
            return words("stuck high");
        case Symptom::StuckLow:
            return words("stuck low");
        case Symptom::UnevenBoom:
            return words("uneven boom");
        case Symptom::TankWrong:
            return words("reads right, tank wrong");
        case Symptom::SlowToSettle:
            return words("slow to settle");
        case Symptom::NothingComes:
            return words("nothing comes");
        case Symptom::NoReading:
            return words("display shows no flow or speed");
        case Symptom::NotShuttingOff:
            break;
    }
    return words("does not shut off");
}

QString stateWords(CaseState state) {
    switch (state) {
        case CaseState::Open:
            return words("open");
        case CaseState::Found:
            return words("not proved yet");
        case CaseState::Confirmed:
            return words("proved");
        case CaseState::NotConfirmed:
            break;
    }
    return words("was not that");
}

QString causeWords(const std::string& id) {
    const Cause* cause = Knowledge::shipped().cause(id);
    return cause ? qs(cause->name) : QString();
}

QString whatWords(const YardRecord& record) {
    if (record.kind == YardKind::CatchTest) {
        const QString set = qs(record.catchTest.set);
        return set.isEmpty() ? words("Catch test") : words("Catch test: %1").arg(set);
    }
    if (record.kind == YardKind::Checklist) {
        const auto* list = listOf(wholeChecklist(), record.check);
        return list ? qs(list->title) : qs(record.check);
    }
    const auto* check = yardCheck(record.check);
    return check ? qs(check->title) : qs(record.check);
}

QString outcomeWords(const FarmSession& session, const YardRecord& record) {
    if (record.kind == YardKind::CatchTest) return catchOutcome(session, record);
    if (record.kind == YardKind::Checklist) return checklistOutcome(session, record);
    return checkOutcome(session, record);
}

QString outcomeWords(const CaseRecord& record) {
    const QString cause = causeWords(record.causeFound);
    if (cause.isEmpty()) return words("No cause found yet.");
    switch (record.state) {
        case CaseState::Confirmed:
            return words("Cause: %1.").arg(cause);
        case CaseState::NotConfirmed:
            return words("It was not: %1.").arg(cause);
        default:
            return words("Most likely so far: %1.").arg(cause);
    }
}

NumberStyle styleOf(const FarmSession& session, const YardRecord& record) {
    Machine machine;
    machine.units = record.units;
    return session.styleOf(machine);
}

Result<YardAnswer> answerOf(const FarmSession& session, const YardRecord& record) {
    auto sorted = record.readings;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const auto& a, const auto& b) { return a.run < b.run; });
    YardReadings readings;
    for (const auto& reading : sorted) readings[reading.id].numbers.push_back(reading.value);
    for (const auto& choice : record.choices) readings[choice.id].choice = choice.word;
    Machine gone;
    gone.units = record.units;
    const Machine* machine = session.machine(record.machineId);
    return yardSum(record.check, readings, machine ? *machine : gone);
}

std::vector<std::pair<QString, const NotedTick*>> itemsOf(const FarmSession& session,
                                                          const YardRecord& record) {
    const Machine* machine = session.machine(record.machineId);
    std::vector<Job> jobs;
    if (machine) {
        for (const auto& stored : session.jobsOf(record.machineId)) jobs.push_back(stored.job);
    }
    const auto parts = machine ? checklistFor(*machine, jobs) : std::vector<ChecklistPart>();
    const auto* now = listOf(parts, record.check);
    const auto* whole = listOf(wholeChecklist(), record.check);
    std::vector<std::pair<QString, const NotedTick*>> items;
    if (!whole) return items;
    for (const auto& item : whole->items) {
        const auto tick = std::find_if(record.ticks.begin(), record.ticks.end(),
                                       [&](const NotedTick& t) { return t.item == item.id; });
        const bool isNoted = tick != record.ticks.end();
        const bool isAsked =
            !now || std::any_of(now->items.begin(), now->items.end(),
                                [&](const ChecklistItem& i) { return i.id == item.id; });
        // What was ticked stays, though the machine may have changed since.
        if (isNoted || isAsked) items.emplace_back(qs(item.text), isNoted ? &*tick : nullptr);
    }
    return items;
}

QString meanWords(const CatchSummary& summary, const NumberStyle& style) {
    if (summary.meanOfNew)
        return words("mean %1 % of a new one").arg(plainNumber(*summary.meanOfNew * 100, 1, style));
    return words("mean %1").arg(shown(summary.mean.value, style));
}

}  // namespace bw
