// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/season/set_choice.h"

namespace bw {

/// The season as the choice sees it: jobs of the reckoning as rows, nozzles as columns. Nozzles
/// that do not compete but have a job pinned to them come after the others, for that job alone.
class SetMatrix {
  public:
    /// Holds references; both must outlive it.
    SetMatrix(const SeasonReckoning& season, const SetWishes& wishes);

    std::size_t jobs() const { return m_season.jobs.size(); }
    std::size_t nozzles() const { return m_columns.size(); }
    std::size_t machines() const { return m_season.inputs.machines.size(); }
    const Nozzle& nozzle(std::size_t n) const { return *m_columns[n]; }
    const StoredMachine& machine(std::size_t m) const { return m_season.inputs.machines[m]; }
    const StoredJob& job(std::size_t j) const { return *m_jobs[j]; }
    const JobVerdict& verdict(std::size_t j) const { return m_season.jobs[j].verdict; }
    const CoverTask& task() const { return m_task; }
    const SetWishes& wishes() const { return m_wishes; }

    /// Nothing where the pairing was not worked out (a nozzle pinned by another job).
    const PairVerdict* pair(std::size_t j, std::size_t n) const;
    /// Pin and bars allow it, whether it covers or not.
    bool isAllowed(std::size_t j, std::size_t n) const;
    bool isOwned(std::size_t m, std::size_t n) const;
    /// Spares that a machine alone would want of a set; 0 if it is owned.
    int spares(std::size_t m, std::size_t n) const;
    std::optional<Area> area(std::size_t j) const { return bare(m_jobs[j]->job.area); }
    /// What a job weighs: its hectares; the mean of the known ones if not known, else 1.
    double weight(std::size_t j) const { return m_weights[j]; }

  private:
    void findJobs();
    void addColumns();
    void buildTask();
    CoverMachine coverMachine(std::size_t m, double unknownPrice) const;
    CoverJob coverJob(std::size_t j) const;
    std::optional<std::size_t> columnNamed(const std::string& name) const;

    const SeasonReckoning& m_season;
    const SetWishes& m_wishes;
    std::vector<const StoredJob*> m_jobs;
    std::vector<const Nozzle*> m_columns;
    std::vector<double> m_weights;
    CoverTask m_task;
};

/// Makes plans of choices.
class PlanMaker {
  public:
    explicit PlanMaker(const SetMatrix& matrix) : m_matrix(matrix) {}

    SetPlan plan(const CoverChoice& choice) const;
    /// How a job goes with the best of the nozzles fitted to its machine.
    JobRun runOf(std::size_t j, const std::vector<std::size_t>& fitted) const;
    /// What is fitted to each machine, owned sets of the choice among it, unused ones left out.
    std::vector<std::vector<std::size_t>> used(const CoverChoice& choice) const;
    SetAlternative alternative(AlternativeKind kind, const CoverChoice& choice,
                               const CoverChoice& chosen) const;

  private:
    ChosenSet set(std::size_t n, const std::vector<std::vector<std::size_t>>& fitted) const;
    FittedSet fittedSet(std::size_t m, std::size_t n,
                        const std::vector<std::vector<std::size_t>>& fitted) const;
    void addJob(ChosenSet& set, std::size_t j, std::size_t n,
                const std::vector<std::size_t>& fitted) const;
    std::optional<std::size_t> covering(std::size_t j,
                                        const std::vector<std::size_t>& fitted) const;
    JobRun runWith(std::size_t j, std::size_t n) const;

    const SetMatrix& m_matrix;
};

}  // namespace bw
