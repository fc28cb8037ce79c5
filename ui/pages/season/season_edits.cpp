// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_edits.h"

#include <QMimeData>
#include <algorithm>
#include <map>
#include <set>

#include "ui/kit/quantity_format.h"
#include "ui/pages/season/job_drafts.h"
#include "ui/pages/season/jobs_model.h"
#include "ui/pages/season/paste_block.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Our own copy of the cells, with units, beside the plain text.
const QString& ownFormat() {
    static const QString format = u"application/x-boomwright-cells"_s;
    return format;
}

JobColumn columnOf(const QModelIndex& index) {
    return static_cast<JobColumn>(index.column());
}

QModelIndex topLeft(const QModelIndexList& cells) {
    QModelIndex corner = cells.first();
    for (const auto& cell : cells)
        corner = cell.sibling(std::min(corner.row(), cell.row()),
                              std::min(corner.column(), cell.column()));
    return corner;
}

/// Where a field of a block goes: by its heading, else counted from the corner.
PasteColumn placeOf(const PasteBlock& block, const std::vector<JobColumn>& columns,
                    std::size_t first, std::size_t field) {
    if (!block.columns.empty())
        return field < block.columns.size() ? block.columns[field] : PasteColumn{};
    if (first + field < columns.size()) return {columns[first + field], std::nullopt};
    return {};
}

}  // namespace

SeasonEdits::SeasonEdits(FarmSession& session, JobsModel& model, QObject* parent)
    : QObject(parent), m_session(session), m_model(model) {}

std::optional<StoredJob> SeasonEdits::storedAt(int at) const {
    const SeasonRow* row = m_model.rowAt(at);
    if (!row || row->kind != SeasonRow::Kind::Job) return std::nullopt;
    for (const auto& stored : m_session.season().jobs) {
        if (stored.id == row->job) return stored;
    }
    return std::nullopt;
}

std::vector<StoredJob> SeasonEdits::jobsIn(const QModelIndexList& selection) const {
    std::set<int> rows;
    for (const auto& cell : selection) rows.insert(cell.row());
    std::vector<StoredJob> jobs;
    for (const int row : rows) {
        if (auto stored = storedAt(row)) jobs.push_back(std::move(*stored));
    }
    return jobs;
}

/// Fills drafts with the block's fields; returns how many found no column.
int SeasonEdits::pasteRows(const PasteBlock& block, const QModelIndex& corner,
                           const std::vector<JobColumn>& columns, JobDrafts& drafts) const {
    const RecordId machine = m_model.rowAt(corner.row())->machine;
    const auto first = static_cast<std::size_t>(
        std::find(columns.begin(), columns.end(), columnOf(corner)) - columns.begin());
    int leftOut = 0;
    int row = corner.row();
    for (const QStringList& fields : block.rows) {
        const SeasonRow* at = m_model.rowAt(row);
        const bool isOurs = at && at->machine == machine;
        const auto stored = isOurs ? storedAt(row) : std::nullopt;
        const std::size_t draft = stored ? drafts.of(*stored) : drafts.ofNew(machine);
        drafts.setLine(draft, ++row - corner.row() + (block.columns.empty() ? 0 : 1));
        for (qsizetype i = 0; i < fields.size(); ++i) {
            const auto place = placeOf(block, columns, first, static_cast<std::size_t>(i));
            if (place.column && isTyped(*place.column))
                drafts.put(draft, *place.column, fields[i], place.unit);
            else if (!place.column && !fields[i].trimmed().isEmpty())
                ++leftOut;
        }
    }
    return leftOut;
}

void SeasonEdits::paste(const QModelIndexList& selection, const QMimeData& data,
                        const std::vector<JobColumn>& columns) {
    const QString text =
        data.hasFormat(ownFormat()) ? QString::fromUtf8(data.data(ownFormat())) : data.text();
    const PasteBlock block = readBlock(text);
    if (block.rows.empty() || selection.isEmpty()) return;
    const bool isOne =
        block.rows.size() == 1 && block.rows.front().size() == 1 && block.columns.empty();
    if (isOne && selection.size() > 1) {
        fill(selection, block.rows.front().front(),
             tr("paste into %1 cells").arg(selection.size()));
        return;
    }
    qsizetype widest = 0;
    for (const auto& row : block.rows) widest = std::max(widest, row.size());
    JobDrafts drafts(m_session, m_model);
    const int leftOut = pasteRows(block, topLeft(selection), columns, drafts);
    const QString size = tr("%1 × %2").arg(block.rows.size()).arg(widest);
    if (drafts.store(tr("paste of %1").arg(size)))
        report(tr("Pasted %1").arg(size), drafts, leftOut);
}

void SeasonEdits::fill(const QModelIndexList& selection, const QString& text,
                       const QString& undoText) {
    JobDrafts drafts(m_session, m_model);
    for (const auto& cell : selection) {
        const auto stored = storedAt(cell.row());
        if (stored && isTyped(columnOf(cell))) drafts.put(drafts.of(*stored), columnOf(cell), text);
    }
    if (drafts.store(undoText)) report(undoText, drafts, 0);
}

/// Speaks only where something stayed out or rows were added: the rest is seen in the table.
void SeasonEdits::report(const QString& what, const JobDrafts& drafts, int leftOut) {
    const auto refused = static_cast<int>(drafts.refused().size());
    if (refused == 0 && leftOut == 0 && drafts.newJobs() == 0) return;
    QString text = tr("%1. Cells taken: %2.").arg(what).arg(drafts.taken());
    if (drafts.newJobs() > 0) text += u' ' + tr("New jobs: %1.").arg(drafts.newJobs());
    if (leftOut > 0) text += u' ' + tr("Without a column here, left out: %1.").arg(leftOut);
    if (refused > 0) {
        text += u' ' + tr("Not taken, each marked at its cell: %1.").arg(refused);
        text += u'\n' + drafts.refused().join(u'\n');
    }
    Q_EMIT notice(text, refused > 0);
}

void SeasonEdits::fillDown(const QModelIndexList& selection) {
    std::map<int, std::vector<int>> rowsOf;
    for (const auto& cell : selection) {
        if (isTyped(columnOf(cell)) && storedAt(cell.row()))
            rowsOf[cell.column()].push_back(cell.row());
    }
    JobDrafts drafts(m_session, m_model);
    for (auto& [column, rows] : rowsOf) {
        std::sort(rows.begin(), rows.end());
        if (rows.size() == 1) rows.insert(rows.begin(), rows.front() - 1);
        const auto source = storedAt(rows.front());
        if (!source) continue;
        const auto at = static_cast<JobColumn>(column);
        const QString text = cellTextWithUnit(source->job, at, m_model.styleOf(source->machine));
        for (std::size_t i = 1; i < rows.size(); ++i) {
            if (const auto target = storedAt(rows[i])) drafts.put(drafts.of(*target), at, text);
        }
    }
    if (drafts.taken() + drafts.refused().size() == 0) return;
    if (drafts.store(tr("fill down"))) report(tr("Filled down"), drafts, 0);
}

void SeasonEdits::clear(const QModelIndexList& selection) {
    for (const auto& cell : selection) {
        if (const SeasonRow* row = m_model.rowAt(cell.row()))
            m_model.forget(row->machine, row->job, columnOf(cell));
    }
    fill(selection, {},
         selection.size() == 1 ? tr("%1 emptied").arg(wordsOf(columnOf(selection.first())))
                               : tr("%1 cells emptied").arg(selection.size()));
}

std::unique_ptr<QMimeData> SeasonEdits::copied(const QModelIndexList& selection,
                                               const std::vector<JobColumn>& columns,
                                               bool withHeading) const {
    auto data = std::make_unique<QMimeData>();
    const auto jobs = jobsIn(selection);
    if (jobs.empty()) return data;
    std::set<JobColumn> wanted;
    for (const auto& cell : selection) wanted.insert(columnOf(cell));
    std::set<UnitSystem> systems;
    for (const auto& job : jobs) systems.insert(m_model.styleOf(job.machine).units);
    std::vector<QStringList> plain, exact;
    QStringList heading;
    const NumberStyle style = m_model.styleOf(jobs.front().machine);
    const auto row = [&](auto&& text) {
        QStringList fields;
        for (const JobColumn column : columns) {
            if (wanted.contains(column)) fields << text(column);
        }
        return fields;
    };
    for (const auto& job : jobs) {
        const NumberStyle own = m_model.styleOf(job.machine);
        exact.push_back(row([&](JobColumn c) { return cellTextWithUnit(job.job, c, own); }));
        plain.push_back(row([&](JobColumn c) { return cellText(job.job, c, own); }));
    }
    if (systems.size() > 1) plain = exact;
    if (withHeading) {
        const bool bare = systems.size() == 1;
        plain.insert(plain.begin(), row([&](JobColumn c) {
                         const Dimension d = dimensionOf(c);
                         if (!bare || d == Dimension::None) return headingOf(c);
                         return tr("%1 (%2)").arg(headingOf(c),
                                                  symbol(displayUnit(style.units, d)));
                     }));
    }
    data->setText(tabbed(plain));
    if (!withHeading) data->setData(ownFormat(), tabbed(exact).toUtf8());
    return data;
}

void SeasonEdits::insert(StoredJob like, const QString& undoText, JobColumn column) {
    const auto id = m_session.addJob(like.machine, std::move(like.job), like.position, undoText);
    if (!id)
        Q_EMIT m_model.notStored(id.problem());
    else
        Q_EMIT placed(*id, column, true);
}

/// Where the job under a row goes in the machine's list.
int SeasonEdits::indexBelow(const StoredJob& above) const {
    const auto jobs = m_session.jobsOf(above.machine);
    const auto at = std::find_if(jobs.begin(), jobs.end(),
                                 [&](const StoredJob& job) { return job.id == above.id; });
    return at == jobs.end() ? -1 : static_cast<int>(at - jobs.begin()) + 1;
}

void SeasonEdits::add(const QModelIndex& current) {
    const SeasonRow* row = m_model.rowAt(current.row());
    StoredJob fresh;
    fresh.machine = row ? row->machine : m_session.currentMachine();
    if (fresh.machine == 0) return;
    const auto above = row ? storedAt(current.row()) : std::nullopt;
    fresh.position = above ? indexBelow(*above) : -1;
    fresh.job.name = ss(tr("New job"));
    insert(std::move(fresh), tr("new job"), JobColumn::Name);
}

void SeasonEdits::duplicate(const QModelIndex& current, bool asStrip) {
    auto copy = storedAt(current.row());
    if (!copy) return;
    const QString name = qs(copy->job.name);
    copy->position = indexBelow(*copy);
    if (asStrip) {
        copy->job.name = ss(tr("%1, strip").arg(name));
        copy->job.area.reset();
        copy->job.driftPercent.reset();
        copy->job.pinnedNozzle.clear();
        insert(std::move(*copy), tr("strip of “%1”").arg(name), JobColumn::Drift);
    } else {
        copy->job.name = ss(tr("%1, copy").arg(name));
        insert(std::move(*copy), tr("copy of “%1”").arg(name), JobColumn::Name);
    }
}

void SeasonEdits::remove(const QModelIndexList& selection) {
    const auto jobs = jobsIn(selection);
    if (jobs.empty()) return;
    std::vector<RecordId> ids;
    for (const auto& job : jobs) ids.push_back(job.id);
    const QString text = jobs.size() == 1 ? tr("removing “%1”").arg(qs(jobs.front().job.name))
                                          : tr("removing %1 jobs").arg(jobs.size());
    const auto done = m_session.removeJobs(ids, text);
    if (!done) Q_EMIT m_model.notStored(done.problem());
}

void SeasonEdits::move(const QModelIndexList& selection, int step) {
    const auto chosen = jobsIn(selection);
    if (chosen.empty()) return;
    const RecordId machine = chosen.front().machine;
    const auto isChosen = [&](const StoredJob& job) {
        return std::any_of(chosen.begin(), chosen.end(),
                           [&](const StoredJob& c) { return c.id == job.id; });
    };
    auto jobs = m_session.jobsOf(machine);
    if (step > 0) std::reverse(jobs.begin(), jobs.end());
    // Each chosen job changes places with the one before it, unless that is chosen as well.
    for (std::size_t i = 1; i < jobs.size(); ++i) {
        if (isChosen(jobs[i]) && !isChosen(jobs[i - 1])) std::swap(jobs[i], jobs[i - 1]);
    }
    if (step > 0) std::reverse(jobs.begin(), jobs.end());
    const auto before = m_session.jobsOf(machine);
    std::vector<StoredJob> changed;
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        if (jobs[i].id == before[i].id) continue;
        jobs[i].position = before[i].position;
        changed.push_back(jobs[i]);
    }
    if (changed.empty()) return;
    const QString text = chosen.size() == 1 ? tr("moving “%1”").arg(qs(chosen.front().job.name))
                                            : tr("moving %1 jobs").arg(chosen.size());
    const auto done = m_session.editJobs(std::move(changed), text);
    if (!done)
        Q_EMIT m_model.notStored(done.problem());
    else
        Q_EMIT placed(chosen.front().id, JobColumn::Name, false);
}

}  // namespace bw
