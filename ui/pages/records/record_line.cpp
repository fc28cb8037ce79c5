// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/record_line.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "ui/kit/quantity_format.h"
#include "ui/pages/records/record_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("RecordLine", text);
}

QString customerName(const FarmSession& session, RecordId id) {
    for (const auto& stored : session.customers()) {
        if (stored.id == id) return qs(stored.customer.name);
    }
    return {};
}

RecordId ownerOf(const FarmSession& session, RecordId machine) {
    for (const auto& stored : session.season().machines) {
        if (stored.id == machine) return stored.customer;
    }
    return 0;
}

LineKind kindOf(const YardRecord& record) {
    if (record.kind == YardKind::CatchTest) return LineKind::CatchTest;
    if (record.kind == YardKind::Checklist) return LineKind::Checklist;
    const bool isMeter = record.check == "Y5" || record.check == "Y5j" || record.check == "Y6";
    return isMeter ? LineKind::MeterAndSpeed : LineKind::OtherCheck;
}

void makeSearched(RecordLine& line, const QStringList& more) {
    QStringList all{line.customer, line.machine, line.what,  line.outcome,
                    line.state,    line.notes,   line.day(), dayWords(line.when)};
    line.searched = (all + more).join(u'\n').toLower();
}

RecordLine lineOf(const FarmSession& session, const StoredYardRecord& stored) {
    const YardRecord& r = stored.record;
    RecordLine line;
    line.kind = kindOf(r);
    line.id = stored.id;
    line.when = r.started;
    line.machineId = r.machineId;
    line.machine = qs(r.machineName);
    line.customer = customerName(session, ownerOf(session, r.machineId));
    line.what = whatWords(r);
    line.outcome = outcomeWords(session, r);
    line.isOpen = r.finished.empty();
    line.state = line.isOpen ? words("open") : words("finished");
    line.notes = qs(r.notes);
    QStringList more{qs(r.catchTest.set), qs(r.check)};
    for (const auto& tick : r.ticks) more.append(qs(tick.note));
    makeSearched(line, more);
    return line;
}

RecordLine lineOf(const FarmSession& session, const StoredCase& stored) {
    const CaseRecord& r = stored.record;
    RecordLine line;
    line.kind = LineKind::Case;
    line.id = stored.id;
    line.when = r.opened;
    line.machineId = r.machineId;
    line.machine = qs(r.machine.name);
    const RecordId owner = r.customerId != 0 ? r.customerId : ownerOf(session, r.machineId);
    line.customer = customerName(session, owner);
    line.what = r.symptom ? words("Case: %1").arg(symptomWords(*r.symptom)) : words("Case");
    line.outcome = outcomeWords(r);
    line.isOpen = r.state == CaseState::Open;
    line.state = stateWords(r.state);
    line.notes = qs(r.notes);
    makeSearched(line, {qs(r.nozzle.name), qs(r.job.name)});
    return line;
}

}  // namespace

QString kindWords(LineKind kind) {
    switch (kind) {
        case LineKind::CatchTest:
            return words("Catch tests");
        case LineKind::MeterAndSpeed:
            return words("Meter and speed checks");
        case LineKind::OtherCheck:
            return words("Other checks");
        case LineKind::Checklist:
            return words("Checklists");
        case LineKind::Case:
            break;
    }
    return words("Cases");
}

std::vector<RecordLine> recordLines(const FarmSession& session) {
    std::vector<RecordLine> lines;
    for (const auto& stored : session.yardRecords()) lines.push_back(lineOf(session, stored));
    for (const auto& stored : session.cases()) lines.push_back(lineOf(session, stored));
    std::stable_sort(lines.begin(), lines.end(),
                     [](const RecordLine& a, const RecordLine& b) { return a.when > b.when; });
    return lines;
}

}  // namespace bw
