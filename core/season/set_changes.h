// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// What could be changed so that a nozzle covers a job.
enum class ChangeKind { Speed, Rate, Floor, Droplets, Drift };
template <>
struct ChoiceNames<ChangeKind> {
    static constexpr std::array<std::pair<ChangeKind, std::string_view>, 5> names{
        {{ChangeKind::Speed, "speed"},
         {ChangeKind::Rate, "rate"},
         {ChangeKind::Floor, "floor"},
         {ChangeKind::Droplets, "droplets"},
         {ChangeKind::Drift, "drift"}}};
};
/// How the value is meant: at least this, at most this, between `value` and `to`, or just this.
enum class ChangeBound { Least, Most, Between, Exactly };
template <>
struct ChoiceNames<ChangeBound> {
    static constexpr std::array<std::pair<ChangeBound, std::string_view>, 4> names{
        {{ChangeBound::Least, "least"},
         {ChangeBound::Most, "most"},
         {ChangeBound::Between, "between"},
         {ChangeBound::Exactly, "exactly"}}};
};

/// One change that would do.
struct PlanChange {
    ChangeKind what = ChangeKind::Speed;
    ChangeBound bound = ChangeBound::Exactly;
    std::string nozzle;                     ///< name of the nozzle that covers the job then
    std::optional<AnyQuantity> value;       ///< speed, rate, pressure floor, or percent
    std::optional<AnyQuantity> to;          ///< only between two speeds
    std::vector<DropletCategory> droplets;  ///< the whole wish, widened
    /// How much it changes, as a part of what stands now. Each further droplet category counts as
    /// an eighth, there being eight (judgement: classes have no size).
    double size = 0.0;
};

/// Carries a change out. A bound on speeds or rates moves only those past it.
void applyChange(const PlanChange& change, Machine& machine, Job& job);

/// The smallest change of each kind with which one of the nozzles covers the job, the smallest of
/// them first; each solved again with the changed value. `roundIn`: speeds, rates and pressures
/// stepped to the safe side in these units where that still does; else exact. The pressure ceiling
/// is never raised, a floor never put under a nozzle's lowest pressure, a job never driven over its
/// own fast speed, and what is not checked stays so.
std::vector<PlanChange> changesThatDo(const Machine& machine, const Job& job,
                                      const std::vector<const Nozzle*>& nozzles,
                                      std::optional<UnitSystem> roundIn = std::nullopt);

}  // namespace bw
