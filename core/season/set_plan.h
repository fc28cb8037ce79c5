// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/season/job_verdict.h"
#include "core/season/season_reckoning.h"

namespace bw {

/// One job as a plan runs it.
struct JobRun {
    RecordId job = 0;
    RecordId machine = 0;
    std::string nozzle;                          ///< empty: no set of the plan can run it
    Standing standing = Standing::Neither;       ///< with that nozzle
    std::optional<double> room;                  ///< to spare
    std::optional<RestrictorPosition> position;  ///< nothing: none fitted
    Speed usual;                                 ///< as the job wishes
    std::optional<Speed> speed;                  ///< nearest to it that the set holds
    std::optional<Speed> low, high;              ///< ends of the window with that set
    std::optional<Area> area;                    ///< of the job, if known
    std::optional<Duration> time;                ///< for the area at `speed`
};

/// How a job goes with one plan and with another.
struct JobChange {
    JobRun before;
    JobRun after;
    /// More time, if both are known.
    std::optional<Duration> moreTime() const;
};

/// What one machine has of a set.
struct FittedSet {
    RecordId machine = 0;
    int nozzles = 0;              ///< one a place on the boom
    bool isOwned = false;         ///< costs nothing
    int spares = 0;               ///< this machine alone would want; 0 if owned
    std::vector<RecordId> jobs;   ///< that it runs with it
    std::optional<double> price;  ///< of the nozzles, without spares; nothing: price not known
};

/// One nozzle set of a plan.
struct ChosenSet {
    std::string nozzle;
    std::vector<FittedSet> machines;
    std::vector<RecordId> jobs;      ///< that it runs
    std::vector<RecordId> forcedBy;  ///< jobs that no other set of the plan on their machine covers
    std::vector<RecordId> onlyWith;  ///< of those, jobs that no other nozzle at all covers
    int spares = 0;                  ///< shared by its machines: the most that one of them wants
    int toBuy = 0;                   ///< nozzles to buy, spares among them
    std::optional<double> price;     ///< of those; nothing: price not known
    Area area;                       ///< of its jobs, as far as known
    std::vector<JobChange> without;  ///< what its jobs would do without it, with the sets left
};

/// A choice of sets and what comes of it.
struct SetPlan {
    std::vector<ChosenSet> sets;
    std::optional<double> price;        ///< nothing: a price is not known
    std::vector<std::string> unpriced;  ///< nozzles whose price that is
    std::optional<double> room;         ///< smallest room to spare of the covered jobs
    std::vector<JobRun> runs;           ///< jobs that a set covers
};

enum class AlternativeKind { NextBest, OneFewer, OneMore };
template <>
struct ChoiceNames<AlternativeKind> {
    static constexpr std::array<std::pair<AlternativeKind, std::string_view>, 3> names{
        {{AlternativeKind::NextBest, "next_best"},
         {AlternativeKind::OneFewer, "one_fewer"},
         {AlternativeKind::OneMore, "one_more"}}};
};
/// Another plan beside the chosen one.
struct SetAlternative {
    AlternativeKind kind = AlternativeKind::NextBest;
    SetPlan plan;
    std::optional<double> morePrice;  ///< under zero: it saves money
    std::vector<JobChange> changes;   ///< jobs that run otherwise than in the chosen plan
    Area leftArea;                    ///< of jobs it covers no longer, as far as known
    int leftJobs = 0;
    Area roomierArea;  ///< of jobs that gain room to spare, as far as known
    int roomierJobs = 0;
    std::optional<Duration> moreTime;  ///< of all jobs that can still be run; nothing: not known
};

}  // namespace bw
