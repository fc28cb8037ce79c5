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

/// From least to most of a fault that is worth thinking of; parts as in the fault table (0 to 1).
struct SeverityRange {
    double from = 1.0;
    double to = 1.0;
};

struct Cause {
    std::string id;
    std::string name;    ///< as on the bars
    std::string phrase;  ///< inside a sentence: "a blocked section strainer"
    std::string group;   ///< shared by causes that no reading can part
    std::string groupName;
    double prior = 1.0;                  ///< relative weight
    std::map<Symptom, double> symptoms;  ///< how well the complaint fits, 0 to 1
    SeverityRange severity;              ///< for the predictor
    std::vector<std::string> needs;      ///< "flow_meter", "loop", "restrictor": else it cannot be
    std::string asIs;  ///< "floor", "ceiling", "restrictor", "meter_minimum": the machine as
                       ///< described already explains the complaint by this cause; empty: never
    std::string remedy;
    std::string proof;  ///< how you know it is fixed
    std::string prevention;
    std::vector<std::string> cautions;  ///< ids C1…C30 that stand before the remedy
    std::vector<std::string> waysOut;   ///< sentence codes with numbers of this machine (R20)
    std::vector<Source> sources;
};

/// Sum: reckoned, never asked. The order of the others is the safety order of asking.
enum class CheckPlace { Sum, CabWorking, CabParked, OnFoot, OnFootOnWater, LineOpened };
template <>
struct ChoiceNames<CheckPlace> {
    static constexpr std::array<std::pair<CheckPlace, std::string_view>, 6> names{
        {{CheckPlace::Sum, "sum"},
         {CheckPlace::CabWorking, "cab_working"},
         {CheckPlace::CabParked, "cab_parked"},
         {CheckPlace::OnFoot, "on_foot"},
         {CheckPlace::OnFootOnWater, "on_foot_on_water"},
         {CheckPlace::LineOpened, "line_opened"}}};
};

struct Answer {
    std::string id;
    std::string text;
    double baseRate = 0.5;
};

/// A reading whose number is not predicted but sorted into an answer: up to `upTo` (in SI of the
/// reading; the difference to the sensor pressure if `overSensor`) it is that answer.
struct ReadingBin {
    std::string answer;
    std::optional<double> upTo;  ///< absent: all the rest
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
    std::vector<ReadingBin> bins;
    bool overSensor = false;
    std::vector<Symptom> onlyFor;    ///< asked only for these complaints; empty: for all
    std::vector<std::string> needs;  ///< as for causes
    std::vector<Source> sources;
    /// Cause id (or "id:variant") → answer id → likelihood level (very likely 8 … very unlikely
    /// 0.1), 1 where absent. p = base rate × level, scaled to add to 1.
    std::map<std::string, std::map<std::string, double>> likelihoods;

    const Answer* answer(std::string_view answerId) const;
};

struct Caution {
    std::string id;
    std::string text;
    std::string where;  ///< the places it belongs to
};

/// Minutes that rinsing to clean water adds to a check on water while product is in the tank
/// (judgement).
inline constexpr int kRinseMinutes = 20;

/// All that the finder knows, read from data.
struct Knowledge {
    std::vector<Cause> causes;
    std::vector<Check> checks;
    std::map<std::string, Caution> cautions;
    double somethingElse = 1.0;  ///< prior weight of "something_else"

    const Cause* cause(std::string_view id) const;
    const Check* check(std::string_view id) const;
    /// The shipped knowledge; broken data is a programming error, found by the tests.
    static const Knowledge& shipped();
    /// From one object with the keys of the shipped files (`causes`, `checks`, `cautions`,
    /// `something_else`). Problem `knowledge_broken` with the path in `where`: a field that is
    /// missing, a reference to nothing, a level that is not one of the five words.
    static Result<Knowledge> fromJson(std::string_view json);
};

}  // namespace bw
