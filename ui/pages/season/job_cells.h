// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/model/job.h"
#include "core/units/format.h"

namespace bw {

/// The columns of the jobs table, in their order.
enum class JobColumn {
    Name,
    Rate,
    RateLeast,
    RateMost,
    Slow,
    Usual,
    Fast,
    Gravity,
    Droplets,
    Drift,
    Area,
    Nozzle,
    Verdict
};
inline constexpr int kJobColumns = 13;

/// Whether people type into the column; the verdict is worked out.
constexpr bool isTyped(JobColumn column) {
    return column != JobColumn::Verdict;
}
/// The head of a column, "Usual".
QString headingOf(JobColumn column);
/// What the column holds, for messages and names of undo steps: "usual speed".
QString wordsOf(JobColumn column);
/// What to type, for the tool tip of the head.
QString helpOf(JobColumn column);
/// The job's field as problems name it, "usual".
std::string fieldOf(JobColumn column);
/// The column to which a problem belongs; nothing if it is another's.
std::optional<JobColumn> columnOfField(const std::string& field);
/// What the column measures; None for texts and plain numbers.
Dimension dimensionOf(JobColumn column);

/// What is needed to read a cell.
struct CellReading {
    NumberStyle style;
    std::vector<std::string> nozzleNames;  ///< those that may be pinned
    std::optional<Unit> bareUnit;          ///< of a bare number; absent: that of the style
};

/// A cell as it is shown: what was typed, unrounded, its unit only where it is not the machine's.
QString cellText(const Job& job, JobColumn column, const NumberStyle& style);
/// The same with its unit always, for another machine's cell.
QString cellTextWithUnit(const Job& job, JobColumn column, const NumberStyle& style);
/// Reads a text into the job. An empty one means unknown. If it can't be read, or is not possible
/// by itself, the job stays as it was and the problem comes back; what only clashes with another
/// cell is taken (checkJob speaks of it).
std::optional<Problem> setCell(Job& job, JobColumn column, const QString& text,
                               const CellReading& reading);

}  // namespace bw
