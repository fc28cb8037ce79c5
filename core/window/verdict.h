// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/text/sentences.h"
#include "core/window/speed_window.h"

namespace bw {

/// How a nozzle set serves a job. `NotChecked`: it would, but the nozzle's own range, droplets or
/// drift class that the job asks for are not known and the user has not accepted that.
enum class Standing { Covers, UsualOnly, Neither, Empty, NotChecked };
template <>
struct ChoiceNames<Standing> {
    static constexpr std::array<std::pair<Standing, std::string_view>, 5> names{
        {{Standing::Covers, "covers"},
         {Standing::UsualOnly, "usual_only"},
         {Standing::Neither, "neither"},
         {Standing::Empty, "empty"},
         {Standing::NotChecked, "not_checked"}}};
};

/// The verdict as facts with words "verdict.…": the sentence in large, and what belongs to it.
struct Verdict {
    Standing standing = Standing::Neither;
    Fact title;                 ///< "Holds 150 L/ha from 6.9 to 13.3 km/h"
    std::vector<Fact> details;  ///< whole sentences, in order
};
Verdict verdictOf(const WindowModel& model, const SpeedWindow& window);
/// Title and details as one text: "Holds … km/h. On the values given … ."
std::string sentenceOf(const Verdict& verdict, const Sentences& sentences,
                       const NumberStyle& style);

/// The nozzle's own limits that stand open for this job (range, droplets, drift class).
std::vector<Limit> nozzleGaps(const SpeedWindow& window);
/// Whether such a gap keeps the nozzle from counting for any job: the user has not accepted it.
bool isOpen(const SpeedWindow& window, const Nozzle& nozzle);
Standing standingOf(const SpeedWindow& window, const Nozzle& nozzle);

/// What stops one end of the window, in words "stop.…" and "past.…".
struct Stop {
    Side side = Side::Low;
    Limit limit = Limit::None;
    std::optional<Speed> speed;  ///< nothing: no limit known on this side
    Fact what;                   ///< "droplets too coarse: VC, under 1.6 bar at the nozzle"
    Fact shortly;                ///< "too coarse below", for beside a bar
    Fact past;                   ///< what happens past it: "Rate stays right."
    std::optional<Fact> next;    ///< "Next: 5.9 km/h, the pressure floor."
};
Stop whatStops(const WindowModel& model, const SpeedWindow& window, Side side);

/// One thing that was not checked: its fact "unchecked.…" and the part that could mend it
/// ("machine", "nozzle").
struct Unchecked {
    Limit limit = Limit::None;
    Fact what;
    std::string part;
    std::string field;  ///< of the part, by its key; empty: more than one
};
/// In the order of Limit. Without a pump, all that hangs on it comes as one.
std::vector<Unchecked> whatIsUnchecked(const WindowModel& model, const SpeedWindow& window);

/// The word of a limit as an argument, "limit.pressure_floor".
CodeText limitWord(Limit limit);

}  // namespace bw
