// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/window/window_ends.h"

namespace bw {

/// How far an assumed value with a plausible range moves the answer: the window solved again at
/// both ends of that range, all else as it is.
struct Move {
    AnyQuantity from;
    AnyQuantity to;
    WindowEnds atFrom;
    WindowEnds atTo;
};

/// One value that a verdict uses.
struct RestsOn {
    std::string where;  ///< "machine.limits.pressure_floor", as in calc requests
    Origin origin = Origin::Handbook;
    std::string date;                  ///< of a measurement; may be empty
    std::optional<AnyQuantity> value;  ///< nothing for tables and lists
    bool isProgram = false;            ///< the profile says nothing: the program's own value
    bool binds = false;                ///< one end of the window is this value
    bool hasRange = false;             ///< assumed, with both ends of a plausible range
    /// Where hasRange; nothing for tables, and where an end of the range leads to no window at all.
    std::optional<Move> move;
    std::optional<WindowEnds> worn;  ///< the nozzle's flow, unless measured: the whole set
                                     ///< passing 10 % more
};

/// The values that the window of this pairing uses, those that the program takes where the profile
/// says nothing among them (assumed, without a range): assumed ones that move an end furthest
/// first, then those that bind, then the nozzle's flow until it is caught, then the other assumed
/// ones, then the rest in the order of the forms. Empty if the pairing has no window (a problem).
std::vector<RestsOn> restsOn(const Machine& machine, const Nozzle& nozzle, const Job& job);

/// What moves, as a fact "rests.…" with the range and the ends; a move under 0.5 % counts as none.
Fact moveFact(const Move& move);
/// "If the set is worn 10 %: 7.6 to 14.6 km/h."
Fact wornFact(const WindowEnds& worn);

}  // namespace bw
