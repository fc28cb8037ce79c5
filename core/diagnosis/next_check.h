// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/evidence.h"

namespace bw {

/// A check tells something if it is expected to bring this many bits about the cause (judgement:
/// a fair coin is 1 bit; less than this rarely moves the first place).
inline constexpr double kTellsBits = 0.03;
/// While nothing opens the line, one safe step is left for the next as soon as none of its checks
/// brings this much (judgement): fewer questions that lead nowhere.
inline constexpr double kWorthBits = 0.1;

/// Steps of the safety order: displays and questions first, then on foot, on foot on water; when
/// none of these still tells, what has to wait for clean water or company, and last what opens the
/// line. The first three follow one another as long as a check of theirs is worth it.
enum class SafetyStep { Cab, OnFoot, OnFootOnWater, Deferred, LineOpened };

/// How a check stands under the three safety answers.
struct CheckStanding {
    SafetyStep step = SafetyStep::Cab;
    bool barred = false;
    int minutes = 1;  ///< rinsing counted where product is in the tank
};
/// Tank not said, or "product": checks on water are deferred, rinsing counts. "alone": two-people
/// checks are barred (not said: deferred). "road": nothing on foot, nothing on water.
CheckStanding checkStanding(const Check& check, const CaseRecord& record);

struct Candidate {
    const Check* check = nullptr;
    CheckStanding standing;
    double bits = 0.0;
    double bitsPerMinute() const { return bits / standing.minutes; }
};

/// Expected information of a check about which cause it is, in bits.
double expectedBits(const Check& check, const Evidence& evidence);

/// The check to ask next among those that are not asked, not barred, and fit complaint and machine:
/// of the first safety step in which any is worth it, then in which any still tells, the one with
/// most bits per minute (equal: by name). Nothing if none tells. No order of questions stands
/// anywhere else.
std::optional<Candidate> nextCheck(const CaseRecord& record, const Knowledge& knowledge,
                                   const Evidence& evidence, const CaseNumbers& numbers,
                                   std::optional<Symptom> symptom);

}  // namespace bw
