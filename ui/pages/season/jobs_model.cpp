// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/jobs_model.h"

#include <QVariantList>

#include "core/model/checks.h"
#include "core/model/nozzle_sizes.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/season_runner.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

bool isFigure(JobColumn column) {
    switch (column) {
        case JobColumn::Name:
        case JobColumn::Droplets:
        case JobColumn::Nozzle:
        case JobColumn::Verdict:
            return false;
        default:
            return true;
    }
}

JobColumn columnOf(const QModelIndex& index) {
    return static_cast<JobColumn>(index.column());
}

int alignmentOf(JobColumn column) {
    const auto side = isFigure(column) ? Qt::AlignRight : Qt::AlignLeft;
    return static_cast<int>(side | Qt::AlignVCenter);
}

}  // namespace

QString standingWords(JobStanding standing, const Sentences& sentences) {
    return qs(sentences.text("season." + std::string(choiceName(standing))));
}

JobsModel::JobsModel(FarmSession& session, const SeasonRunner& runner, QObject* parent)
    : SeasonRowsModel(parent), m_session(session), m_runner(runner) {}

void JobsModel::reload(const SeasonScope& scope) {
    m_problems.clear();
    for (const auto& stored : m_session.season().jobs) m_problems[stored.id] = checkJob(stored.job);
    std::erase_if(m_refusals, [&](const auto& entry) {
        const RecordId job = std::get<1>(entry.first);
        return job != 0 && !m_problems.contains(job);
    });
    setRows(seasonRows(m_session.season(), scope));
    touchAll();
}

void JobsModel::showVerdicts() {
    if (rowCount() == 0) return;
    const int first = static_cast<int>(JobColumn::Nozzle);
    Q_EMIT dataChanged(index(0, first), index(rowCount() - 1, kJobColumns - 1));
}

int JobsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kJobColumns;
}

QVariant JobsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= kJobColumns) return {};
    const auto column = static_cast<JobColumn>(section);
    if (role == Qt::DisplayRole) return headingOf(column);
    if (role == Qt::ToolTipRole) return helpOf(column);
    if (role == Qt::TextAlignmentRole) return alignmentOf(column);
    return {};
}

Qt::ItemFlags JobsModel::flags(const QModelIndex& index) const {
    const SeasonRow* row = rowOf(index);
    if (!row || row->kind == SeasonRow::Kind::Group) return Qt::NoItemFlags;
    const Qt::ItemFlags reachable = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return isTyped(columnOf(index)) ? reachable | Qt::ItemIsEditable : reachable;
}

QVariant JobsModel::data(const QModelIndex& index, int role) const {
    const SeasonRow* row = rowOf(index);
    if (!row || !index.isValid()) return {};
    if (role == Qt::TextAlignmentRole) return alignmentOf(columnOf(index));
    if (role == ProblemRole) return problemText(index);
    if (role == ProblemIsErrorRole) {
        const Problem* problem = problemOf(index);
        return problem && problem->severity == Severity::Error;
    }
    switch (row->kind) {
        case SeasonRow::Kind::Group:
            return groupData(*row, role);
        case SeasonRow::Kind::NewJob:
            return newJobData(*row, columnOf(index), role);
        case SeasonRow::Kind::Job:
            return jobData(index, *row, role);
    }
    return {};
}

QVariant JobsModel::groupData(const SeasonRow& row, int role) const {
    const Machine* machine = m_session.machine(row.machine);
    if (!machine) return {};
    if (role == GroupRole) return true;
    if (role == Qt::DisplayRole) return qs(machine->name);
    if (role == Qt::UserRole) return unitsOf(row.machine);
    return {};
}

QString JobsModel::unitsOf(RecordId id) const {
    const Machine* machine = m_session.machine(id);
    const NumberStyle style = styleOf(id);
    QString text =
        unitOf<AreaRate>(style) + u", "_s + unitOf<Speed>(style) + u", "_s + unitOf<Area>(style);
    if (const int nozzles = nozzleCount(*machine); nozzles > 0)
        text = tr("%1 nozzles").arg(nozzles) + u" · "_s + text;
    if (hasRestrictor(*machine)) text += u" · "_s + tr("restrictor valve set for each job");
    if (machine->isDemo) text += u" · "_s + tr("invented");
    return text;
}

/// Area of the machine's jobs: those of the whole season, whatever the filter hides.
QString JobsModel::totalOf(RecordId machine) const {
    Area sum;
    bool any = false;
    for (const auto& stored : m_session.season().jobs) {
        if (stored.machine != machine || !stored.job.area) continue;
        sum += stored.job.area->value;
        any = true;
    }
    return any ? figure(sum, styleOf(machine)) : QString();
}

QVariant JobsModel::newJobData(const SeasonRow& row, JobColumn column, int role) const {
    const bool isName = column == JobColumn::Name;
    const bool isArea = column == JobColumn::Area;
    switch (role) {
        case PlaceholderRole:
        case QuietRole:
            return true;
        case Qt::DisplayRole:
            return isName ? tr("New job: type here") : isArea ? totalOf(row.machine) : QString();
        case Qt::EditRole: {
            const auto found = m_refusals.find({row.machine, 0, static_cast<int>(column)});
            return found == m_refusals.end() ? QString() : found->second.typed;
        }
        case Qt::ToolTipRole:
            return isArea ? tr("Area of all jobs of this machine") : QVariant();
        case Qt::FontRole:
            return isArea ? textFont(TextSize::Body, true) : QVariant();
        case Qt::AccessibleTextRole:
            return isArea ? tr("total area %1").arg(totalOf(row.machine))
                          : tr("new job, %1").arg(wordsOf(column));
        default:
            return {};
    }
}

QVariant JobsModel::jobData(const QModelIndex& index, const SeasonRow& row, int role) const {
    const Job* job = m_session.job(row.job);
    if (!job) return {};
    const JobColumn column = columnOf(index);
    if (column == JobColumn::Verdict) return verdictData(row, role);
    const QString text = cellText(*job, column, styleOf(row.machine));
    switch (role) {
        case Qt::DisplayRole:
            return text;
        case Qt::EditRole:
            return refusedText(index).value_or(text);
        case Qt::ToolTipRole:
            return problemText(index).isEmpty() ? text : problemText(index);
        case Qt::AccessibleTextRole:
            return wordsOf(column) + u' ' + (text.isEmpty() ? tr("empty") : text);
        case DropletsRole: {
            QVariantList list;
            for (const auto category : job->droplets) list << static_cast<int>(category);
            return list;
        }
        default:
            return column == JobColumn::Nozzle ? nozzleData(row, *job, role) : QVariant();
    }
}

/// The nozzle that the verdict speaks of: pinned, or the best so far.
QVariant JobsModel::nozzleData(const SeasonRow& row, const Job& job, int role) const {
    const JobRun* run = runOf(row.job);
    if (role == IsChosenRole) return run != nullptr;
    if (role != SizeCodeRole && role != BestNozzleRole) return {};
    const bool isPinned = !job.pinnedNozzle.empty();
    const JobVerdict* verdict = verdictOf(row.job);
    const bool serves = verdict && verdict->bestPair() && !verdict->problem &&
                        verdict->standing != JobStanding::DoesNotHold;
    if (!isPinned && !serves && !run) return {};
    const std::string& name = isPinned ? job.pinnedNozzle : run ? run->nozzle : verdict->nozzle;
    const Nozzle* nozzle = m_session.nozzleNamed(name);
    if (!nozzle) return {};
    if (role == SizeCodeRole) return qs(nozzle->sizeCode);
    return isPinned ? QVariant() : qs(nozzle->name);
}

const JobVerdict* JobsModel::verdictOf(RecordId job) const {
    if (!m_runner.result()) return nullptr;
    const JobReckoning* reckoning = m_runner.result()->of(job);
    return reckoning ? &reckoning->verdict : nullptr;
}

const JobRun* JobsModel::runOf(RecordId job) const {
    if (!m_choice) return nullptr;
    for (const auto& run : m_choice->plan.runs) {
        if (run.job == job) return &run;
    }
    return nullptr;
}

void JobsModel::setChoice(std::shared_ptr<const SetChoice> choice) {
    m_choice = std::move(choice);
    showVerdicts();
}

QString JobsModel::verdictText(const SeasonRow& row) const {
    const JobVerdict* verdict = verdictOf(row.job);
    return verdict ? standingWords(verdict->standing, m_session.sentences()) : tr("reckoning");
}

QVariant JobsModel::verdictData(const SeasonRow& row, int role) const {
    const JobVerdict* verdict = verdictOf(row.job);
    switch (role) {
        case Qt::DisplayRole:
            return verdictText(row);
        case Qt::AccessibleTextRole:
            return tr("verdict %1").arg(verdictText(row));
        case Qt::ToolTipRole:
            return verdict && verdict->problem
                       ? qs(m_session.sentences().of(*verdict->problem, styleOf(row.machine)))
                       : helpOf(JobColumn::Verdict);
        case StandingRole:
            return verdict ? QVariant(static_cast<int>(verdict->standing)) : QVariant();
        case RoomRole: {
            const JobRun* run = runOf(row.job);
            if (run && run->room) return percent(*run->room, styleOf(row.machine));
            const PairVerdict* pair = verdict ? verdict->bestPair() : nullptr;
            const bool holds = pair && verdict->standing == JobStanding::Holds;
            return holds && pair->roomToSpare ? percent(*pair->roomToSpare, styleOf(row.machine))
                                              : QVariant();
        }
        default:
            return {};
    }
}

const Job* JobsModel::jobAt(const QModelIndex& index) const {
    const SeasonRow* row = rowOf(index);
    return row && row->kind == SeasonRow::Kind::Job ? m_session.job(row->job) : nullptr;
}

NumberStyle JobsModel::styleOf(RecordId machine) const {
    const Machine* m = m_session.machine(machine);
    return m ? m_session.styleOf(*m) : m_session.currentStyle();
}

CellReading JobsModel::readingOf(RecordId machine) const {
    CellReading reading{styleOf(machine), {}, std::nullopt};
    for (const auto& stored : m_session.season().nozzles)
        reading.nozzleNames.push_back(stored.nozzle.name);
    for (const auto& nozzle : builtInNozzles()) reading.nozzleNames.push_back(nozzle.name);
    return reading;
}

JobsModel::Cell JobsModel::cellOf(const QModelIndex& index) const {
    const SeasonRow* row = rowOf(index);
    return {row ? row->machine : 0, row ? row->job : 0, index.column()};
}

std::optional<QString> JobsModel::refusedText(const QModelIndex& index) const {
    const auto found = m_refusals.find(cellOf(index));
    if (found == m_refusals.end()) return std::nullopt;
    return found->second.typed;
}

/// A refused text first, then what the checks say of the cell.
const Problem* JobsModel::problemOf(const QModelIndex& index) const {
    const SeasonRow* row = rowOf(index);
    if (!row || row->kind == SeasonRow::Kind::Group) return nullptr;
    const auto refused = m_refusals.find(cellOf(index));
    if (refused != m_refusals.end()) return &refused->second.problem;
    const auto found = m_problems.find(row->job);
    if (found == m_problems.end()) return nullptr;
    const auto column = columnOf(index);
    for (const auto& problem : found->second) {
        if (problem.severity != Severity::Note && columnOfField(problem.where) == column)
            return &problem;
    }
    if (column == JobColumn::Nozzle) {
        const JobVerdict* verdict = verdictOf(row->job);
        const bool isOfNozzle =
            verdict && verdict->problem && verdict->problem->where == fieldOf(column);
        return isOfNozzle ? &*verdict->problem : nullptr;
    }
    return nullptr;
}

QString JobsModel::problemText(const QModelIndex& index) const {
    const Problem* problem = problemOf(index);
    if (!problem) return {};
    const SeasonRow* row = rowOf(index);
    QString text = qs(m_session.sentences().of(*problem, styleOf(row->machine)));
    const Job* job = jobAt(index);
    if (!job || !refusedText(index)) return text;
    const QString kept = cellText(*job, columnOf(index), styleOf(row->machine));
    return text + u' ' + (kept.isEmpty() ? tr("The cell stays empty.") : tr("Kept: %1.").arg(kept));
}

void JobsModel::refuse(RecordId machine, RecordId job, JobColumn column, const QString& typed,
                       const Problem& problem) {
    m_refusals[{machine, job, static_cast<int>(column)}] = {typed, problem};
    touchAll();
}

void JobsModel::forget(RecordId machine, RecordId job, JobColumn column) {
    if (m_refusals.erase({machine, job, static_cast<int>(column)}) > 0) touchAll();
}

bool JobsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const SeasonRow* row = rowOf(index);
    if (role != Qt::EditRole || !row || !(flags(index) & Qt::ItemIsEditable)) return false;
    // A copy: storing changes the rows.
    return store(SeasonRow(*row), columnOf(index), value.toString());
}

bool JobsModel::store(const SeasonRow& row, JobColumn column, const QString& text) {
    const bool isNew = row.kind == SeasonRow::Kind::NewJob;
    const Job* before = isNew ? nullptr : m_session.job(row.job);
    if (!isNew && !before) return false;
    Job after = before ? *before : Job{};
    if (isNew && text.trimmed().isEmpty()) {
        forget(row.machine, 0, column);
        return false;
    }
    if (const auto problem = setCell(after, column, text, readingOf(row.machine))) {
        refuse(row.machine, row.job, column, text, *problem);
        return false;
    }
    forget(row.machine, row.job, column);
    if (isNew) return addTyped(row.machine, std::move(after), column);
    if (after == *before) return true;
    const QString value = cellText(after, column, styleOf(row.machine));
    const QString name =
        value.isEmpty() ? tr("%1 emptied").arg(wordsOf(column)) : wordsOf(column) + u' ' + value;
    const auto done = m_session.editJob(row.job, std::move(after), name);
    if (!done) Q_EMIT notStored(done.problem());
    return done.isOk();
}

bool JobsModel::addTyped(RecordId machine, Job job, JobColumn column) {
    if (job.name.empty()) job.name = ss(tr("New job"));
    const QString name = tr("job “%1”").arg(qs(job.name));
    const auto id = m_session.addJob(machine, std::move(job), -1, name);
    if (!id) {
        Q_EMIT notStored(id.problem());
        return false;
    }
    Q_EMIT jobTyped(*id, column);
    return true;
}

}  // namespace bw
