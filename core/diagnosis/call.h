// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/diagnosis/knowledge.h"
#include "core/model/case_record.h"

namespace bw {

/// One cause in the standing, or "something_else".
struct CauseStanding {
    std::string cause;
    std::string group;  ///< causes that no reading can part on this machine share one: the
                        ///< knowledge's, or the id of the leading cause; empty: alone
    double probability = 0.0;
    std::vector<Fact> why;  ///< what speaks for or against it, with numbers of this machine
};

/// What a healthy machine, and each leading cause, would show at a check.
struct Expectation {
    std::optional<AnyQuantity> healthy;
    std::vector<std::pair<std::string, AnyQuantity>> byCause;  ///< cause id → expected reading
};

struct NextCheck {
    std::string check;
    std::vector<Fact> why;  ///< why this one now
    Expectation expected;   ///< for a check that takes a number
    double bitsPerMinute = 0.0;
    int minutes = 1;  ///< rinsing to clean water counted where product is in the tank
};

/// State of a case, recomputed from nothing but its record: answers can be changed in any order.
struct CallState {
    std::vector<CauseStanding> standing;  ///< most likely first; adds to 1 with something_else
    std::optional<NextCheck> next;
    std::vector<std::string> barredChecks;  ///< by the safety answers
    bool done = false;  ///< one cause or group is over 90 %, or nothing would tell more
    /// When done: the check that would part the leading group, else the one that would still tell
    /// most, for who wants to go on asking.
    std::optional<NextCheck> further;
    bool notCovered = false;  ///< pulsed nozzles: said at question one, with `sums`
    std::optional<Symptom> symptomFromNumbers;
    std::vector<Fact> sums;     ///< triage by flow against pressure, and what it does to the dose
    std::vector<Fact> waysOut;  ///< of the leading finding, with this machine's numbers
    std::vector<Problem> conflicts;  ///< readings that nothing explains, answers that contradict
};

/// Reasons about one case in a few milliseconds. Machine, nozzle and job in the record may be
/// incomplete: what is missing predicts nothing. Numbers typed in a call are observations whose
/// `check` is a reading's name ("sensor_pressure" …); the extra name "speed" says at which speed it
/// goes wrong and is no evidence by itself. Answers, and numbers, count whatever their order.
CallState reason(const CaseRecord& record, const Knowledge& knowledge);

}  // namespace bw
