// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/matrix_model.h"

#include <algorithm>

#include "ui/kit/data_table.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/season/job_sentences.h"
#include "ui/pages/season/season_runner.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

SpanState stateOf(Standing standing) {
    switch (standing) {
        case Standing::Covers:
            return SpanState::All;
        case Standing::UsualOnly:
            return SpanState::UsualOnly;
        case Standing::NotChecked:
            return SpanState::NotChecked;
        case Standing::Neither:
        case Standing::Empty:
            break;
    }
    return SpanState::Neither;
}

/// The same scale in every cell of a job: its speeds in the middle, as much again around them.
Span spanOf(const PairVerdict& pair) {
    const double slow = pair.slow.si(), usual = pair.usual.si(), fast = pair.fast.si();
    const double around = std::max(fast - slow, 0.25 * usual) * 0.8;
    Span span;
    span.from = std::max(0.0, slow - around);
    span.to = fast + around;
    span.slow = slow;
    span.usual = usual;
    span.fast = fast;
    span.state = stateOf(pair.standing);
    span.lowLimit = pair.lowLimit;
    span.highLimit = pair.highLimit;
    if (pair.ends.empty) return span;
    span.low = pair.ends.low ? pair.ends.low->si() : 0.0;
    if (pair.ends.high) span.high = pair.ends.high->si();
    return span;
}

}  // namespace

MatrixModel::MatrixModel(FarmSession& session, const SeasonRunner& runner, QObject* parent)
    : SeasonRowsModel(parent), m_session(session), m_runner(runner) {}

void MatrixModel::reload(const SeasonScope& scope) {
    const auto& nozzles = m_session.season().nozzles;
    if (nozzles.size() != m_nozzles.size()) {
        beginResetModel();
        m_nozzles = nozzles;
        endResetModel();
    } else if (nozzles != m_nozzles) {
        m_nozzles = nozzles;
        if (!m_nozzles.empty())
            Q_EMIT headerDataChanged(Qt::Horizontal, 0, static_cast<int>(m_nozzles.size()) - 1);
    }
    setRows(seasonRows(m_session.season(), scope));
    touchAll();
}

int MatrixModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_nozzles.size());
}

const StoredNozzle* MatrixModel::nozzleAt(int column) const {
    return column >= 0 && column < columnCount() ? &m_nozzles[static_cast<std::size_t>(column)]
                                                 : nullptr;
}

Qt::ItemFlags MatrixModel::flags(const QModelIndex& index) const {
    const SeasonRow* row = rowAt(index.row());
    if (!row || row->kind != SeasonRow::Kind::Job) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

QVariant MatrixModel::headerData(int section, Qt::Orientation orientation, int role) const {
    const StoredNozzle* stored = nozzleAt(section);
    if (orientation != Qt::Horizontal || !stored) return {};
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return qs(stored->nozzle.name);
    return {};
}

/// Only while the result speaks of the nozzles on screen.
const PairVerdict* MatrixModel::pairAt(const QModelIndex& index) const {
    const SeasonRow* row = rowAt(index.row());
    const StoredNozzle* stored = nozzleAt(index.column());
    const SeasonReckoning* result = m_runner.result();
    if (!row || !stored || !result || row->kind != SeasonRow::Kind::Job) return nullptr;
    const auto column = static_cast<std::size_t>(index.column());
    const auto& reckoned = result->inputs.nozzles;
    if (column >= reckoned.size() || reckoned[column].name != stored->nozzle.name) return nullptr;
    const JobReckoning* job = result->of(row->job);
    return job && column < job->verdict.pairs.size() ? &job->verdict.pairs[column] : nullptr;
}

QString MatrixModel::wordOf(const PairVerdict& pair, const NumberStyle& style) const {
    const Sentences& sentences = m_session.sentences();
    if (pair.problem) return u"–"_s;
    if (pair.standing == Standing::NotChecked) return qs(sentences.text("season.not_checked"));
    if (pair.standing == Standing::Covers) {
        const QString room = pair.roomToSpare ? percent(*pair.roomToSpare, style) : QString();
        return pair.isTakenUnchecked() ? room + u" ?"_s : room;
    }
    return qs(sentences.text("cell." + std::string(choiceName(pair.stop))));
}

void MatrixModel::setChoice(std::shared_ptr<const SetChoice> choice) {
    m_choice = std::move(choice);
    touchAll();
}

bool MatrixModel::isChosen(RecordId job, int column) const {
    const StoredNozzle* stored = nozzleAt(column);
    const auto& runs = m_choice->plan.runs;
    return stored && std::any_of(runs.begin(), runs.end(), [&](const JobRun& run) {
               return run.job == job && run.nozzle == stored->nozzle.name;
           });
}

std::optional<MatrixCell> MatrixModel::cellAt(const QModelIndex& index) const {
    const PairVerdict* pair = pairAt(index);
    if (!pair) return std::nullopt;
    const SeasonRow* row = rowAt(index.row());
    const Machine* machine = m_session.machine(row->machine);
    if (!machine) return std::nullopt;
    MatrixCell cell;
    cell.word = wordOf(*pair, m_session.styleOf(*machine));
    cell.isUnchecked = pair->standing == Standing::NotChecked || pair->isTakenUnchecked();
    const JobVerdict& verdict = m_runner.result()->of(row->job)->verdict;
    const bool serves = pair->standing == Standing::Covers || pair->standing == Standing::UsualOnly;
    cell.isBest =
        verdict.best == static_cast<std::size_t>(index.column()) && (serves || verdict.isPinned);
    if (m_choice) cell.isBest = isChosen(row->job, index.column());
    cell.span = spanOf(*pair);
    if (pair->problem) cell.span = Span{};
    return cell;
}

QString MatrixModel::toolTip(const QModelIndex& index) const {
    const SeasonRow* row = rowAt(index.row());
    const Machine* machine = m_session.machine(row->machine);
    const Job* job = m_session.job(row->job);
    const StoredNozzle* stored = nozzleAt(index.column());
    if (!machine || !job || !stored) return {};
    return qs(stored->nozzle.name) + u'\n' +
           pairSentence(*machine, stored->nozzle, *job, m_session.sentences(),
                        m_session.styleOf(*machine));
}

QVariant MatrixModel::data(const QModelIndex& index, int role) const {
    const SeasonRow* row = rowAt(index.row());
    if (!row || !index.isValid()) return {};
    if (role == GroupRole) return row->kind == SeasonRow::Kind::Group;
    if (row->kind != SeasonRow::Kind::Job) return {};
    if (role == Qt::ToolTipRole) return toolTip(index);
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
    const auto cell = cellAt(index);
    const QString word = cell ? cell->word : QString();
    return role == Qt::DisplayRole ? word : qs(nozzleAt(index.column())->nozzle.name) + u' ' + word;
}

}  // namespace bw
