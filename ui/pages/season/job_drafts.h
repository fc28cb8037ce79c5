// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/model/season.h"
#include "ui/pages/season/job_cells.h"

namespace bw {

class FarmSession;
class JobsModel;

/// Changes to several jobs that are stored together, as one undo step. What can't be read is left
/// out, kept beside its cell and listed.
class JobDrafts {
  public:
    JobDrafts(FarmSession& session, JobsModel& model);

    /// A draft of a stored job. The same job gives the same draft.
    std::size_t of(const StoredJob& stored);
    /// A draft of a new job at the end of a machine's.
    std::size_t ofNew(RecordId machine);
    std::size_t size() const { return m_drafts.size(); }
    /// Puts a text into a cell; an empty one empties it. `bareUnit`: of a bare number.
    void put(std::size_t draft, JobColumn column, const QString& text,
             std::optional<Unit> bareUnit = std::nullopt);
    /// The line of a pasted block that a draft comes from, for the report.
    void setLine(std::size_t draft, int line) { m_drafts[draft].line = line; }
    /// Stores what has changed. False if it could not be stored; the model says why.
    bool store(const QString& undoText);

    int taken() const { return m_taken; }
    /// "Line 3, “Ear fungicide”, slow speed: “abc” is not a number …", one for each cell left out.
    const QStringList& refused() const { return m_refusedLines; }
    int newJobs() const;

  private:
    struct Refused {
        std::size_t draft;
        JobColumn column;
        QString typed;
        Problem problem;
    };
    struct Draft {
        StoredJob before;
        StoredJob after;
        bool isUsed = false;
        int line = 0;
    };
    RecordId storedId(const Draft& draft) const;
    QString labelOf(const Draft& draft) const;
    void listRefused();

    FarmSession& m_session;
    JobsModel& m_model;
    std::vector<Draft> m_drafts;
    std::vector<Refused> m_refused;
    QStringList m_refusedLines;
    int m_taken = 0;
};

}  // namespace bw
