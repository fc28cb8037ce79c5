// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/call.h"

namespace bw {

/// How a share of belief is said. The borders are judgement.
enum class Likeliness { Likely, Possible, LessLikely, NoLonger };
inline constexpr double kLikelyFrom = 0.30;
inline constexpr double kPossibleFrom = 0.10;
inline constexpr double kLessLikelyFrom = 0.02;
Likeliness likeliness(double probability);

/// A cause, or all the causes of a group, as one line of what is most likely so far.
struct Finding {
    std::string id;                   ///< the group's or the cause's
    std::string name;                 ///< for a reader; of a group the group's
    std::string phrase;               ///< inside a sentence
    std::vector<std::string> causes;  ///< most likely first
    double probability = 0.0;         ///< of all of them
    bool isSomethingElse = false;
    Likeliness word() const { return likeliness(probability); }
};

/// The standing by findings, most likely first. Empty where the finder does not reach.
std::vector<Finding> findingsOf(const CallState& state, const Knowledge& knowledge);

/// What one answer, or reading, would do to the standing.
struct Outlook {
    std::vector<Finding> gains;  ///< what would gain most, at most two; empty: it changes little
    Finding leads;               ///< what would lead
};
/// Reasons about the case as if the observation were made, in place of any of the same check.
Outlook outlookOf(const CaseRecord& record, const Knowledge& knowledge, const CallState& now,
                  const Observation& observation);

/// Puts an observation in place of the one of its check, or at the end.
void observe(CaseRecord& record, const Observation& observation);

/// Sections of a caller's machine that is not in the file, as one row of nozzles: from their number
/// if it is known, else from width and spacing; else unknown.
void takeNozzleCount(Machine& machine, std::optional<int> nozzles);

}  // namespace bw
