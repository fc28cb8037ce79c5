// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/window/rests_on.h"
#include "core/window/speed_window.h"
#include "core/window/verdict.h"

namespace bw {

/// The window of a pairing with the restrictor valve where it serves the job better: in a plan the
/// valve is moved for the job. Without a restrictor, or without a changeover flow to judge by, the
/// machine is taken as it stands.
Result<WindowModel> modelInBetterPosition(const Machine& machine, const Nozzle& nozzle,
                                          const Job& job);

/// A speed of the job at which the rate does not come out as wished.
struct OffRate {
    Speed speed;
    AreaRate rate;
    double ratio = 1.0;  ///< really sprayed / wished; the dose goes with it
};

/// How one nozzle serves one job, as far as a table of the season needs it.
struct PairVerdict {
    Standing standing = Standing::NotChecked;
    WindowEnds ends;
    Limit lowLimit = Limit::None;
    Limit highLimit = Limit::None;
    Limit stop = Limit::None;  ///< what keeps the job's speeds outside; None if it covers them
    Speed slow, usual, fast;   ///< of the job, defaults filled in
    std::optional<double> roomToSpare;
    std::optional<RestrictorPosition> position;  ///< the one reckoned with; nothing if none fitted
    std::vector<Limit> nozzleGaps;               ///< not checked for want of nozzle data
    std::vector<Limit> machineGaps;              ///< not checked, hinder nothing (R1)
    std::optional<OffRate> off;                  ///< the usual speed first, then slow, then fast
    std::optional<Problem> problem;              ///< why nothing could be reckoned

    /// Covers or holds the usual speed, but only because the user takes it unchecked.
    bool isTakenUnchecked() const;
};
PairVerdict pairVerdict(const Machine& machine, const Nozzle& nozzle, const Job& job);

/// How a job stands. Unknown never passes: `NotChecked` where no nozzle is known to hold it and
/// one would but for what is not known of it, or where nothing can be reckoned.
enum class JobStanding { Holds, UsualOnly, DoesNotHold, NotChecked };
template <>
struct ChoiceNames<JobStanding> {
    static constexpr std::array<std::pair<JobStanding, std::string_view>, 4> names{
        {{JobStanding::Holds, "holds"},
         {JobStanding::UsualOnly, "usual_only"},
         {JobStanding::DoesNotHold, "does_not_hold"},
         {JobStanding::NotChecked, "not_checked"}}};
};

/// The verdict on a job: with its pinned nozzle, else with the best of the nozzles given.
struct JobVerdict {
    JobStanding standing = JobStanding::NotChecked;
    std::string nozzle;                    ///< name of the one it speaks of, pinned or best
    std::optional<std::size_t> best;       ///< its index, if it is one of those given
    bool isPinned = false;                 ///< the job names its nozzle
    std::vector<PairVerdict> pairs;        ///< one for each nozzle, in order
    std::optional<PairVerdict> elsewhere;  ///< with a pinned nozzle that is none of those given
    std::optional<Problem> problem;        ///< why nothing could be reckoned
    /// The pairing that it speaks of; nothing if there is no nozzle to speak of.
    const PairVerdict* bestPair() const;
};

/// Which of two pairings serves better: covering, then the usual speed, then not checked; then the
/// one with more room to spare. An equal one does not.
bool servesBetter(const PairVerdict& a, const PairVerdict& b);

/// Reckons a job with every nozzle. Problems of the verdict: those of checkJob, of the machine,
/// no_nozzle_yet, pinned_nozzle_unknown. `elsewhere`: nozzles that a job may have pinned, but that
/// do not compete (the built-in sizes).
JobVerdict jobVerdict(const Machine& machine, const Job& job, const std::vector<Nozzle>& nozzles,
                      const std::vector<Nozzle>& elsewhere = {});

}  // namespace bw
