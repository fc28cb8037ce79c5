// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/knowledge.h"
#include "core/units/unit.h"
#include "core/yard/profile_condition.h"

namespace bw {

/// What a reading of a yard check is: a quantity with its unit; a plain number (the one in the
/// controller); a count; one of a few words.
enum class ReadingKind { Quantity, Number, Count, Choice };
template <>
struct ChoiceNames<ReadingKind> {
    static constexpr std::array<std::pair<ReadingKind, std::string_view>, 4> names{
        {{ReadingKind::Quantity, "quantity"},
         {ReadingKind::Number, "number"},
         {ReadingKind::Count, "count"},
         {ReadingKind::Choice, "choice"}}};
};

/// One thing to read. `id` is the one that `yardSum` takes and that its problems name.
struct YardReadingText {
    struct Choice {
        std::string id;
        std::string text;
    };
    std::string id;
    std::string label;
    std::string hint;
    ReadingKind kind = ReadingKind::Quantity;
    Dimension dimension = Dimension::None;  ///< of a quantity
    std::vector<Choice> choices;            ///< of a choice
    bool isOptional = false;
    bool repeats = false;  ///< one for each run, or for each nozzle
};

/// One yard check in words. Cautions stand before the steps and are never folded.
struct YardCheckText {
    std::string id;  ///< "Y1", "Y1d", "Y2" ... "Y5j" (by jug), "gauge"
    std::string title;
    std::string purpose;  ///< one sentence
    std::vector<ProfileCondition> when;
    std::vector<std::string> steps;
    std::vector<YardReadingText> readings;
    int minutes = 0;  ///< without rinsing; judgement
    int people = 1;
    std::string tools;
    CheckPlace place = CheckPlace::CabParked;
    std::vector<std::string> cautions;  ///< ids; the words are in Knowledge::shipped().cautions
    std::vector<std::string> writes;    ///< profile keys that it can write or clear
    /// What else it settles: values that no longer count once it is done ("nozzle.flow",
    /// "machine.restrictor.changeover_flow").
    std::vector<std::string> settles;
    std::vector<Source> sources;

    const YardReadingText* reading(std::string_view readingId) const;  ///< null if there is none
    /// It makes this value measured, or settles it: "machine." and a key, "nozzle.flow".
    bool firmsUp(std::string_view where) const;
};

/// Every yard check, in the order of the page. Broken data are a programming error, found by tests.
const std::vector<YardCheckText>& yardChecks();
/// Null if there is no such check.
const YardCheckText* yardCheck(std::string_view id);
/// The check is one for this machine. A check that could hurt the wrong pump is shown only where
/// the pump is known (or assumed) to be the right one; the others wherever nothing speaks against
/// them.
bool applies(const YardCheckText& check, const Machine& machine);

/// The first check of this machine that makes a value measured or settles it, by its id:
/// "machine.losses.section.pressure" gives "Y2", "nozzle.flow" gives "Y7"; empty where none does.
std::string_view checkForValue(const Machine& machine, std::string_view where);

/// The checks of one JSON file. Problem `knowledge_broken`, the path in `where`.
Result<std::vector<YardCheckText>> yardChecksFrom(std::string_view json);

}  // namespace bw
