// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/model/season.h"
#include "core/season/job_verdict.h"

namespace bw {

/// What a season is reckoned from: value copies, so that it can be done in the background.
struct SeasonInputs {
    std::vector<StoredMachine> machines;
    std::vector<StoredJob> jobs;
    std::vector<Nozzle> nozzles;    ///< those that compete
    std::vector<Nozzle> elsewhere;  ///< others that jobs have pinned
    bool operator==(const SeasonInputs&) const = default;
};

/// One job of the season with its verdict.
struct JobReckoning {
    RecordId job = 0;
    RecordId machine = 0;
    JobVerdict verdict;
};

/// Every job × every nozzle.
struct SeasonReckoning {
    SeasonInputs inputs;
    std::vector<JobReckoning> jobs;  ///< in the order of the inputs
    const JobReckoning* of(RecordId job) const;
};

/// How many pairings `reckonSeason` would have to work out, those of unchanged jobs left out.
std::size_t pairsToReckon(const SeasonInputs& inputs, const SeasonReckoning* before);

/// Reckons the season. Jobs that `before` holds with the same machine, job and nozzles are taken
/// over. Nothing if `isCancelled` says so on the way (asked once a job; may be empty).
std::optional<SeasonReckoning> reckonSeason(SeasonInputs inputs, const SeasonReckoning* before = {},
                                            const std::function<bool()>& isCancelled = {});

/// Jobs of one machine for which a nozzle comes out best so far. Not a choice of sets: only what
/// is best for each job by itself, counted.
struct NozzleShare {
    std::string nozzle;  ///< name
    std::vector<RecordId> jobs;
    Area area;  ///< of those jobs whose area is known
};

/// Counts of one machine.
struct MachineTally {
    RecordId machine = 0;
    int jobs = 0;
    int holding = 0;
    int usualOnly = 0;
    int notHolding = 0;
    int notChecked = 0;
    Area area;                        ///< of all jobs whose area is known
    int withoutArea = 0;              ///< jobs whose area is not known
    std::vector<NozzleShare> shares;  ///< most area first; holding jobs only
    std::vector<Limit> machineGaps;   ///< not checked for any of the jobs, in the order of Limit
    std::vector<Limit>
        takenUnchecked;  ///< of nozzles that hold only because the user takes them so
};
MachineTally tallyOf(const SeasonReckoning& season, RecordId machine);

}  // namespace bw
