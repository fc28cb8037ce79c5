// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "core/model/season.h"

namespace bw {

/// Which nozzles stand beside each other for a job, and which one is in hand: the nearest ones
/// unless the user has added or taken some away. Remembered by job.
class CandidateSet {
  public:
    /// The candidates of a job, own nozzles before sizes: the season's nearest own ones, or, if it
    /// has none, the sizes that come nearest; the job's pinned nozzle and the sets aboard; then
    /// what was added, without what was removed.
    std::vector<Nozzle> candidates(RecordId job, const Machine& machine, const Job& theJob,
                                   const std::vector<StoredNozzle>& own) const;
    void add(RecordId job, const std::string& nozzle);
    void remove(RecordId job, const std::string& nozzle);
    void takeInHand(RecordId job, const std::string& nozzle);
    /// The name taken in hand for a job; empty: none chosen yet.
    std::string inHand(RecordId job) const;

    /// All choices as text for a setting of the farm file, and back. A text that makes no sense
    /// reads as no choices.
    QString text() const;
    void read(const QString& text);

  private:
    struct Choice {
        std::vector<std::string> added;
        std::vector<std::string> removed;
        std::string inHand;
    };
    std::map<RecordId, Choice> m_choices;
};

}  // namespace bw
