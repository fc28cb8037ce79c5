// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QVector>

#include "core/model/case_record.h"
#include "core/model/yard_record.h"
#include "core/units/format.h"
#include "core/yard/catch_test.h"
#include "core/yard/yard_sum.h"
#include "ui/kit/evidence.h"
#include "ui/kit/plain_words.h"

namespace bw {

class FarmSession;

/// Our word for a complaint.
QString symptomWords(Symptom symptom);
QString stateWords(CaseState state);
/// Name of a cause; empty if there is none of that id.
QString causeWords(const std::string& cause);

/// "Catch test, set name", "Meter check", "Spring start".
QString whatWords(const YardRecord& record);
/// What came of it, in one sentence.
QString outcomeWords(const FarmSession& session, const YardRecord& record);
QString outcomeWords(const CaseRecord& record);

/// Units as the record was taken in, or as the reader asked for.
NumberStyle styleOf(const FarmSession& session, const YardRecord& record);
/// A check's sum from what was noted.
Result<YardAnswer> answerOf(const FarmSession& session, const YardRecord& record);
/// The items of a checklist, for the machine as it is now; all of them if it is gone.
std::vector<std::pair<QString, const NotedTick*>> itemsOf(const FarmSession& session,
                                                          const YardRecord& record);
/// "104.2 % of a new one" or "mean 1.62 L/min".
QString meanWords(const CatchSummary& summary, const NumberStyle& style);

/// All that a record holds, for the column beside the table.
QVector<EvidenceSection> sectionsOf(const FarmSession& session, const YardRecord& record);
QVector<EvidenceSection> sectionsOf(const FarmSession& session, const CaseRecord& record);

}  // namespace bw
