// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/model/case_record.h"
#include "core/model/yard_record.h"

namespace bw {

class FarmSession;

/// What the table can be narrowed to.
enum class LineKind { CatchTest, MeterAndSpeed, OtherCheck, Checklist, Case };
inline constexpr LineKind kLineKinds[] = {LineKind::CatchTest, LineKind::MeterAndSpeed,
                                          LineKind::OtherCheck, LineKind::Checklist,
                                          LineKind::Case};
/// "Catch tests", "Meter and speed" …
QString kindWords(LineKind kind);

/// One record as a row of the table, in words.
struct RecordLine {
    LineKind kind = LineKind::Case;
    RecordId id = 0;   ///< of the yard record, or of the case
    std::string when;  ///< ISO date, with time where there is one
    RecordId machineId = 0;
    QString machine;
    QString customer;  ///< empty: nobody's
    QString what;
    QString outcome;  ///< one sentence
    QString state;
    bool isOpen = false;  ///< can be gone on with
    QString notes;
    QString searched;  ///< all that is looked through, in small letters

    bool isCase() const { return kind == LineKind::Case; }
    QString day() const { return QString::fromStdString(when.substr(0, 10)); }
    QString year() const { return QString::fromStdString(when.substr(0, 4)); }
};

/// Every yard record and case of the file, newest first.
std::vector<RecordLine> recordLines(const FarmSession& session);

}  // namespace bw
