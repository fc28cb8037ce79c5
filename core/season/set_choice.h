// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/season/season_reckoning.h"
#include "core/season/set_changes.h"
#include "core/season/set_cover.h"
#include "core/season/set_plan.h"

namespace bw {

/// A set that is there already: it costs that machine nothing.
struct OwnedSet {
    RecordId machine = 0;
    std::string nozzle;
    bool operator==(const OwnedSet&) const = default;
};
/// The sets that the machines carry on their bodies (`setsAboard`).
std::vector<OwnedSet> setsAboard(const std::vector<StoredMachine>& machines);

struct SetWishes {
    std::vector<OwnedSet> owned;
    std::vector<std::string> barred;           ///< nozzles not to be chosen
    std::vector<std::string> acceptUnchecked;  ///< besides those that say so themselves
    double spares = 0.0;                       ///< part of a set to buy on top, rounded up
    bool isAllAboard = false;  ///< all sets of a machine must fit on its bodies at once
    std::optional<double> fieldEfficiency;  ///< 0 to 1; nothing: hours are for the spraying alone
    std::optional<UnitSystem> roundIn;      ///< changes stepped in these units; nothing: exact
};

/// A job that no nozzle covers slow to fast.
struct UncoveredJob {
    RecordId job = 0;
    RecordId machine = 0;
    Fact why;                            ///< "sets.why_…"
    std::string nozzle;                  ///< that comes nearest; empty: none
    Limit limit = Limit::None;           ///< what stops that one
    std::vector<std::string> usualOnly;  ///< nozzles that hold its usual speed
    std::vector<PlanChange> changes;     ///< that would do, the smallest first
};

struct SetChoice {
    SolveEnd end = SolveEnd::Failed;  ///< Infeasible: the bodies do not carry all sets needed
    SetPlan plan;                     ///< only if optimal
    std::vector<UncoveredJob> uncovered;
    std::vector<SetAlternative> alternatives;  ///< next best, one fewer, one more; those there are
    std::vector<Limit> machineGaps;            ///< not checked, hinder nothing; in order
    std::vector<Limit> takenUnchecked;         ///< of nozzles chosen because the user takes them so
    SeasonReckoning season;                    ///< the matrix it rests on
};

/// Told how far it is, 0 to 1; false: stop. May be empty.
using SetProgress = std::function<bool(double done)>;

/// The nozzle sets for a season (several machines, RecordIds of machines and jobs all different):
/// fewest that cover every job that can be covered, then least cost, then the largest smallest room
/// to spare. Exact. Only what is known to cover counts. A nozzle without a price counts as dear as
/// the dearest known. `before` spares the pairings that have not changed.
SetChoice chooseSets(SeasonInputs inputs, const SetWishes& wishes = {},
                     const SetProgress& progress = {}, const SeasonReckoning* before = nullptr);

}  // namespace bw
