// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/season/binary_program.h"

namespace bw {

/// One job as the choice sees it.
struct CoverJob {
    std::size_t machine = 0;
    std::vector<std::optional<double>> room;  ///< one a nozzle: room to spare; nothing: not covered
    std::optional<std::size_t> pin;           ///< the only nozzle it may run with
};
/// One machine: what a set of each nozzle costs it, and how many sets its bodies carry.
struct CoverMachine {
    std::vector<double> cost;              ///< one a nozzle, >= 0; 0 for an owned set
    std::optional<std::size_t> positions;  ///< most sets aboard; nothing: no limit
    /// One a nozzle, or empty: cost of the spares this machine wants, >= 0. Machines that run the
    /// same nozzle share them: the dearest of theirs is paid, once.
    std::vector<double> spares{};
};
struct CoverTask {
    std::vector<CoverJob> jobs;
    std::vector<CoverMachine> machines;
    std::vector<double> spares;        ///< cost a nozzle once chosen, whatever the machines, >= 0
    std::vector<bool> barred;          ///< one a nozzle
    std::optional<std::size_t> least;  ///< at least so many sets ("one set more")
    std::optional<std::size_t> most;   ///< at most so many
    std::vector<std::vector<std::size_t>> excluded{};  ///< sets not to be chosen all together
    /// Empty: no job may be left out. Else what it weighs to leave out each job, > 0; the least
    /// weight left out then goes before everything else.
    std::vector<double> leaving{};
};

struct CoverChoice {
    SolveEnd end = SolveEnd::Failed;               ///< Infeasible: the positions do not suffice
    std::vector<std::size_t> sets;                 ///< nozzles chosen, in order
    std::vector<std::vector<std::size_t>> fitted;  ///< of those, one list a machine
    std::vector<std::optional<std::size_t>> runs;  ///< one a job; nothing: not covered, or left out
    double cost = 0.0;
    std::optional<double> room;  ///< smallest room to spare of the covered jobs
};

/// Whether a job may run with a nozzle.
bool mayRun(const CoverTask& task, std::size_t job, std::size_t nozzle);

/// The choice for all jobs that some nozzle covers, in this order: fewest sets (a nozzle that two
/// machines use is one set), least cost, largest smallest room to spare. Exact.
CoverChoice chooseCover(const CoverTask& task, const std::function<bool()>& isCancelled = {},
                        const BinarySolver& solver = solveByGlpk);

}  // namespace bw
