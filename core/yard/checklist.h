// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/knowledge.h"
#include "core/model/job.h"
#include "core/yard/profile_condition.h"

namespace bw {

/// The three times at which a sprayer is gone over.
enum class ChecklistPhase { AutumnLayUp, SpringStart, BeforeJob };
template <>
struct ChoiceNames<ChecklistPhase> {
    static constexpr std::array<std::pair<ChecklistPhase, std::string_view>, 3> names{
        {{ChecklistPhase::AutumnLayUp, "autumn_lay_up"},
         {ChecklistPhase::SpringStart, "spring_start"},
         {ChecklistPhase::BeforeJob, "before_job"}}};
};

/// One line to tick. Its id is kept for good: ticks are stored by it.
struct ChecklistItem {
    std::string id;
    std::string text;
    std::string why;
    std::vector<std::string> cautions;  ///< ids, shown before the text, never folded
    std::vector<Source> sources;
    std::string check;                   ///< id of the yard check that does it; may be empty
    bool opensLine = false;              ///< its cautions begin with C1 and C2
    bool isForHeavyLiquid = false;       ///< for jobs with a liquid heavier than water
    std::vector<ProfileCondition> when;  ///< all must hold
};
struct ChecklistPart {
    ChecklistPhase phase = ChecklistPhase::SpringStart;
    std::string title;
    std::vector<ChecklistItem> items;
};

/// Every item there is, by phase. Broken data are a programming error, found by tests.
const std::vector<ChecklistPart>& wholeChecklist();

/// The items for this machine: none for a part that it is known not to have; those for heavy
/// liquids if one of the jobs has one (weight against water over 1.02, judgement) or none is known.
std::vector<ChecklistPart> checklistFor(const Machine& machine, const std::vector<Job>& jobs = {});

/// The list of one JSON file. Problem `knowledge_broken`, the path in `where`.
Result<std::vector<ChecklistPart>> checklistFrom(std::string_view json);

}  // namespace bw
