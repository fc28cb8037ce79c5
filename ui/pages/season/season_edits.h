// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QModelIndexList>
#include <QObject>
#include <optional>
#include <vector>

#include "core/model/season.h"
#include "ui/pages/season/job_cells.h"

class QMimeData;

namespace bw {

class FarmSession;
class JobDrafts;
class JobsModel;
struct PasteBlock;

/// The deeds on many cells or on whole jobs of the table. Each is one undo step.
class SeasonEdits : public QObject {
    Q_OBJECT

  public:
    SeasonEdits(FarmSession& session, JobsModel& model, QObject* parent = nullptr);

    /// Pastes a block with its first cell at the selection's top left; with a heading, into the
    /// columns that it names. One cell fills the whole selection. Rows past the machine's last job
    /// become new jobs. `columns`: the typed columns on screen, in order. What can't be read stays
    /// out, marked at its cell and reported.
    void paste(const QModelIndexList& selection, const QMimeData& data,
               const std::vector<JobColumn>& columns);
    /// The top cells of the selection go into those below; a single cell takes what is above it.
    void fillDown(const QModelIndexList& selection);
    void clear(const QModelIndexList& selection);
    /// The selection as tab-separated text, a rectangle of the columns on screen. Figures are bare
    /// unless the machines' units differ; the units travel beside the text for our own paste.
    std::unique_ptr<QMimeData> copied(const QModelIndexList& selection,
                                      const std::vector<JobColumn>& columns,
                                      bool withHeading) const;

    /// A new job under the current one, ready to be named.
    void add(const QModelIndex& current);
    /// A copy under the job. As a strip: a second line of the same job, which asks for a drift
    /// class of its own and has its own area.
    void duplicate(const QModelIndex& current, bool asStrip);
    void remove(const QModelIndexList& selection);
    /// Moves the selected jobs of one machine up (-1) or down (1).
    void move(const QModelIndexList& selection, int step);

  Q_SIGNALS:
    void notice(const QString& text, bool isError);
    /// A job to be put in hand, its cell edited if `edit`.
    void placed(bw::RecordId job, bw::JobColumn column, bool edit);

  private:
    void fill(const QModelIndexList& selection, const QString& text, const QString& undoText);
    void report(const QString& what, const JobDrafts& drafts, int leftOut);
    void insert(StoredJob like, const QString& undoText, JobColumn column);
    int indexBelow(const StoredJob& above) const;
    std::optional<StoredJob> storedAt(int row) const;
    /// The jobs in a selection, in order, each once.
    std::vector<StoredJob> jobsIn(const QModelIndexList& selection) const;
    int pasteRows(const PasteBlock& block, const QModelIndex& corner,
                  const std::vector<JobColumn>& columns, JobDrafts& drafts) const;

    FarmSession& m_session;
    JobsModel& m_model;
};

}  // namespace bw
