// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_table.h"

#include <algorithm>
#include <set>

#include "ui/kit/data_table.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/yard_words.h"

namespace bw {

using namespace Qt::StringLiterals;

void CatchTable::setView(const CatchChart::View& view) {
    beginResetModel();
    m_view = view;
    m_rows.clear();
    std::set<int> numbers(view.order.begin(), view.order.end());
    for (const auto& one : view.test.catches) numbers.insert(one.nozzle);
    for (const int nozzle : numbers) {
        Row row{nozzle, std::nullopt, caughtText(nozzle), 0};
        int end = 0;
        for (std::size_t i = 0; i < view.test.sections.size() && row.section == 0; ++i) {
            end += view.test.sections[i];
            if (nozzle <= end) row.section = static_cast<int>(i) + 1;
        }
        if (view.summary) {
            for (const auto& caught : view.summary->nozzles) {
                if (caught.nozzle == nozzle) row.caught = caught;
            }
        }
        m_rows.push_back(std::move(row));
    }
    endResetModel();
}

/// "710, then 820": what was caught, in order.
QString CatchTable::caughtText(int nozzle) const {
    QString first, again;
    for (const auto& one : m_view.test.catches) {
        if (one.nozzle != nozzle) continue;
        (one.isAgain ? again : first) =
            figureIn(one.volume, jugUnit(m_view.style.units), m_view.style);
    }
    if (first.isEmpty()) return again;
    return again.isEmpty() ? first : tr("%1, then %2").arg(first, again);
}

int CatchTable::nozzleAt(int row) const {
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].nozzle : 0;
}

int CatchTable::rowOf(int nozzle) const {
    const auto found = std::find_if(m_rows.begin(), m_rows.end(),
                                    [&](const Row& row) { return row.nozzle == nozzle; });
    return found == m_rows.end() ? -1 : static_cast<int>(found - m_rows.begin());
}

int CatchTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int CatchTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(kColumns);
}

QString CatchTable::text(const Row& row, int column) const {
    const NumberStyle& style = m_view.style;
    if (column == Number) return QString::number(row.nozzle);
    if (column == Section) return row.section > 0 ? QString::number(row.section) : QString();
    if (column == Caught) return row.volume;
    if (!row.caught) return column == Verdict ? tr("not caught yet") : u"–"_s;
    switch (column) {
        case FlowThere:
            return figure(row.caught->flow.value, style);
        case OfNew:
            return row.caught->ofNew ? plainNumber(*row.caught->ofNew * 100, 1, style) : u"–"_s;
        case OfMean:
            return plainNumber(row.caught->ofMean * 100, 1, style);
        default:
            return verdictWords(row.caught->verdict);
    }
}

QVariant CatchTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    const bool isVerdict = index.column() == Verdict;
    if (role == Qt::DisplayRole) return text(row, index.column());
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter | (isVerdict ? Qt::AlignLeft : Qt::AlignRight));
    if (role == QuietRole) return !row.caught;
    if (role == Qt::ForegroundRole && isVerdict && row.caught &&
        row.caught->verdict != CatchVerdict::Good)
        return color(Role::Limit);
    if (role == SortRole) return row.nozzle;
    return {};
}

QVariant CatchTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter | (section == Verdict ? Qt::AlignLeft : Qt::AlignRight));
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    switch (section) {
        case Number:
            return tr("Nozzle\n");
        case Section:
            return tr("Section\n");
        case Caught:
            return tr("Caught\n%1").arg(symbol(jugUnit(m_view.style.units)));
        case FlowThere:
            return tr("Flow\n%1").arg(unitOf<Flow>(m_view.style));
        case OfNew:
            return tr("Of new\n%");
        case OfMean:
            return tr("Of mean\n%");
        default:
            return tr("What to do\n");
    }
}

}  // namespace bw
