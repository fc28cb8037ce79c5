// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <tuple>

#include "core/season/set_choice.h"
#include "ui/kit/data_table.h"
#include "ui/pages/season/job_cells.h"
#include "ui/pages/season/season_rows.h"

namespace bw {

class FarmSession;
class SeasonRunner;

/// Roles of the jobs table beside those of TableRole.
enum JobRole {
    ProblemRole = Qt::UserRole + 200,  ///< sentence; empty: nothing wrong with the cell
    ProblemIsErrorRole,                ///< bool: error or warning
    DropletsRole,                      ///< QVariantList of DropletCategory as int
    SizeCodeRole,                      ///< code of the nozzle that the row speaks of
    BestNozzleRole,                    ///< name of the best nozzle where none is pinned
    StandingRole,                      ///< JobStanding as int; invalid: not reckoned yet
    RoomRole,                          ///< "31 %" where the job holds
    IsChosenRole,                      ///< bool: the nozzle is that of the choice of sets
    PlaceholderRole,                   ///< bool: the line of a new job
};

/// The words of a standing, "usual only".
QString standingWords(JobStanding standing, const Sentences& sentences);

/// The jobs of the season as a table that is typed into. Every edit goes through the session; what
/// could not be read stays beside its cell with the reason, and the old value stays in the job.
class JobsModel : public SeasonRowsModel {
    Q_OBJECT

  public:
    JobsModel(FarmSession& session, const SeasonRunner& runner, QObject* parent = nullptr);

    /// Takes over what the session holds now.
    void reload(const SeasonScope& scope);
    /// The verdicts have changed.
    void showVerdicts();
    /// Rows speak of the nozzle that a choice of sets gives them; null: of the best again.
    void setChoice(std::shared_ptr<const SetChoice> choice);

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

    const Job* jobAt(const QModelIndex& index) const;
    NumberStyle styleOf(RecordId machine) const;
    /// How a cell of this machine is read.
    CellReading readingOf(RecordId machine) const;
    /// Keeps a text that was refused, with its reason, beside the cell. `job` 0: on the new line.
    void refuse(RecordId machine, RecordId job, JobColumn column, const QString& typed,
                const Problem& problem);
    void forget(RecordId machine, RecordId job, JobColumn column);
    /// The text that was refused in a cell; nothing if none was.
    std::optional<QString> refusedText(const QModelIndex& index) const;

  Q_SIGNALS:
    /// A job was made by typing on the new line.
    void jobTyped(bw::RecordId job, bw::JobColumn column);
    void notStored(const bw::Problem& problem);

  private:
    using Cell = std::tuple<RecordId, RecordId, int>;  ///< machine, job, column
    struct Refusal {
        QString typed;
        Problem problem;
    };
    const SeasonRow* rowOf(const QModelIndex& index) const { return rowAt(index.row()); }
    Cell cellOf(const QModelIndex& index) const;
    QVariant groupData(const SeasonRow& row, int role) const;
    QVariant newJobData(const SeasonRow& row, JobColumn column, int role) const;
    QVariant jobData(const QModelIndex& index, const SeasonRow& row, int role) const;
    QVariant nozzleData(const SeasonRow& row, const Job& job, int role) const;
    QVariant verdictData(const SeasonRow& row, int role) const;
    QString verdictText(const SeasonRow& row) const;
    const Problem* problemOf(const QModelIndex& index) const;
    QString problemText(const QModelIndex& index) const;
    QString unitsOf(RecordId machine) const;
    QString totalOf(RecordId machine) const;
    const JobVerdict* verdictOf(RecordId job) const;
    const JobRun* runOf(RecordId job) const;
    bool store(const SeasonRow& row, JobColumn column, const QString& text);
    bool addTyped(RecordId machine, Job job, JobColumn column);

    FarmSession& m_session;
    const SeasonRunner& m_runner;
    std::shared_ptr<const SetChoice> m_choice;
    std::map<RecordId, std::vector<Problem>> m_problems;  ///< of each shown job
    std::map<Cell, Refusal> m_refusals;
};

}  // namespace bw
