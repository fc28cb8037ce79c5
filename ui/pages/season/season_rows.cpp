// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/season_rows.h"

#include <algorithm>

#include "ui/kit/quantity_format.h"

namespace bw {
namespace {

std::vector<const StoredJob*> shownJobs(const Season& season, RecordId machine,
                                        const QString& filter) {
    std::vector<const StoredJob*> out;
    for (const auto& job : season.jobs) {
        const bool matches =
            filter.isEmpty() || qs(job.job.name).contains(filter, Qt::CaseInsensitive);
        if (job.machine == machine && matches) out.push_back(&job);
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const auto* a, const auto* b) { return a->position < b->position; });
    return out;
}

}  // namespace

std::vector<SeasonRow> seasonRows(const Season& season, const SeasonScope& scope) {
    std::vector<SeasonRow> rows;
    const QString filter = scope.filter.trimmed();
    for (const auto& machine : season.machines) {
        if (scope.machine != 0 && machine.id != scope.machine) continue;
        const auto jobs = shownJobs(season, machine.id, filter);
        if (jobs.empty() && !filter.isEmpty()) continue;
        rows.push_back({SeasonRow::Kind::Group, machine.id, 0});
        for (const auto* job : jobs) rows.push_back({SeasonRow::Kind::Job, machine.id, job->id});
        if (filter.isEmpty()) rows.push_back({SeasonRow::Kind::NewJob, machine.id, 0});
    }
    return rows;
}

int SeasonRowsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

const SeasonRow* SeasonRowsModel::rowAt(int row) const {
    return row >= 0 && row < rowCount() ? &m_rows[static_cast<std::size_t>(row)] : nullptr;
}

int SeasonRowsModel::rowOfJob(RecordId job) const {
    const auto it = std::find_if(m_rows.begin(), m_rows.end(), [&](const SeasonRow& r) {
        return r.kind == SeasonRow::Kind::Job && r.job == job;
    });
    return it == m_rows.end() ? -1 : static_cast<int>(it - m_rows.begin());
}

int SeasonRowsModel::newRowOf(RecordId machine) const {
    const SeasonRow wanted{SeasonRow::Kind::NewJob, machine, 0};
    const auto it = std::find(m_rows.begin(), m_rows.end(), wanted);
    return it == m_rows.end() ? -1 : static_cast<int>(it - m_rows.begin());
}

/// Rows alike at the top and at the bottom stay; what lies between is taken out and put in.
void SeasonRowsModel::setRows(std::vector<SeasonRow> rows) {
    const auto head = std::mismatch(m_rows.begin(), m_rows.end(), rows.begin(), rows.end());
    const auto same = head.first - m_rows.begin();
    const auto tail =
        std::mismatch(m_rows.rbegin(), m_rows.rend() - same, rows.rbegin(), rows.rend() - same);
    const auto alikeBelow = tail.first - m_rows.rbegin();
    const int first = static_cast<int>(same);
    const int oldEnd = rowCount() - static_cast<int>(alikeBelow);
    const int newEnd = static_cast<int>(rows.size()) - static_cast<int>(alikeBelow);
    if (oldEnd > first) {
        beginRemoveRows({}, first, oldEnd - 1);
        m_rows.erase(m_rows.begin() + first, m_rows.begin() + oldEnd);
        endRemoveRows();
    }
    if (newEnd > first) {
        beginInsertRows({}, first, newEnd - 1);
        m_rows.insert(m_rows.begin() + first, rows.begin() + first, rows.begin() + newEnd);
        endInsertRows();
    }
}

void SeasonRowsModel::touchAll() {
    if (rowCount() > 0 && columnCount() > 0)
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

}  // namespace bw
