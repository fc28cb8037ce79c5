// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/model/case_record.h"

namespace bw {

/// Where a claim comes from: a published source, common practice, or judgement.
struct Source {
    std::string kind;  ///< "published", "practice", "judgement"
    std::string text;  ///< title, number, year
};

struct Cause {
    std::string id;
    std::string name;   ///< as on the bars
    std::string group;  ///< shared by causes that no reading can part
    std::string groupName;
    double prior = 1.0;                  ///< relative weight
    std::map<Symptom, double> symptoms;  ///< how well the complaint fits, 0 to 1
    std::string remedy;
    std::string proof;  ///< how you know it is fixed
    std::string prevention;
    std::vector<std::string> cautions;  ///< ids C1…C30 that stand before the remedy
    std::vector<std::string> waysOut;   ///< sentence codes with numbers of this machine (R20)
    std::vector<Source> sources;
};

enum class CheckPlace { Sum, CabWorking, CabParked, OnFootOnWater, LineOpened };

struct Answer {
    std::string id;
    std::string text;
    double baseRate = 0.5;
};

struct Check {
    std::string id;
    std::string question;
    std::string howTo;
    std::string why;
    CheckPlace place = CheckPlace::CabParked;
    int minutes = 1;  ///< rinsing to clean water is counted by the engine where the tank needs it
    bool needsWater = false;
    int people = 1;
    std::string tools;
    std::vector<std::string> cautions;
    std::vector<Answer> answers;  ///< empty for a pure reading
    std::string reading;          ///< "sensor_pressure", "shown_flow" …; empty for word answers
    std::vector<Source> sources;
    /// cause id → answer id → likelihood level (very likely 8 … very unlikely 0.1), 1 where absent.
    std::map<std::string, std::map<std::string, double>> likelihoods;
};

struct Caution {
    std::string id;
    std::string text;
};

/// All that the finder knows, read from data.
struct Knowledge {
    std::vector<Cause> causes;
    std::vector<Check> checks;
    std::map<std::string, Caution> cautions;

    const Cause* cause(std::string_view id) const;
    const Check* check(std::string_view id) const;
    /// The shipped knowledge; broken data is a programming error, found by the tests.
    static const Knowledge& shipped();
    static Result<Knowledge> fromJson(std::string_view json);
};

}  // namespace bw
