// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records/records_model.h"

#include <QRegularExpression>

#include "ui/kit/data_table.h"
#include "ui/pages/records/record_words.h"

namespace bw {

using namespace Qt::StringLiterals;

void RecordsModel::setLines(std::vector<RecordLine> lines) {
    beginResetModel();
    m_lines = std::move(lines);
    endResetModel();
}

int RecordsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int RecordsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kColumns;
}

QString RecordsModel::text(const RecordLine& line, int column) const {
    switch (column) {
        case When:
            return line.day();
        case Machine:
            return line.machine.isEmpty() ? tr("not named") : line.machine;
        case What:
            return line.what;
        case Outcome:
            return line.outcome;
        default:
            return line.state;
    }
}

QVariant RecordsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const RecordLine& at = line(index.row());
    switch (role) {
        case Qt::DisplayRole:
            return text(at, index.column());
        case Qt::ToolTipRole:
            if (index.column() == Machine && !at.customer.isEmpty())
                return u"%1\n%2"_s.arg(at.machine, at.customer);
            if (index.column() == When) return dayWords(at.when);
            return text(at, index.column());
        case SortRole:
            return index.column() == When ? QString::fromStdString(at.when)
                                          : text(at, index.column()).toLower();
        case QuietRole:
            return index.column() == State && !at.isOpen;
        default:
            return {};
    }
}

QVariant RecordsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (section) {
        case When:
            return tr("Date");
        case Machine:
            return tr("Machine");
        case What:
            return tr("What");
        case Outcome:
            return tr("Outcome");
        default:
            return tr("State");
    }
}

RecordsFilter::RecordsFilter(RecordsModel& records, QObject* parent)
    : QSortFilterProxyModel(parent), m_records(records) {
    setSourceModel(&records);
    setSortRole(SortRole);
    sort(RecordsModel::When, Qt::DescendingOrder);
}

void RecordsFilter::setWanted(Wanted wanted) {
    m_wanted = std::move(wanted);
    static const QRegularExpression part(u"\"([^\"]+)\"?|([^\\s\"]+)"_s);
    m_words.clear();
    auto found = part.globalMatch(m_wanted.text.toLower());
    while (found.hasNext()) {
        const auto match = found.next();
        m_words << (match.captured(1).isEmpty() ? match.captured(2) : match.captured(1));
    }
    invalidateFilter();
}

bool RecordsFilter::filterAcceptsRow(int row, const QModelIndex&) const {
    const RecordLine& line = m_records.line(row);
    if (!m_wanted.machine.isEmpty() && line.machine != m_wanted.machine) return false;
    if (!m_wanted.year.isEmpty() && line.year() != m_wanted.year) return false;
    if (m_wanted.kind && line.kind != *m_wanted.kind) return false;
    for (const QString& word : m_words) {
        if (!line.searched.contains(word)) return false;
    }
    return true;
}

const RecordLine* RecordsFilter::lineAt(int row) const {
    const QModelIndex at = mapToSource(index(row, 0));
    return at.isValid() ? &m_records.line(at.row()) : nullptr;
}

int RecordsFilter::rowOf(bool isCase, RecordId id) const {
    for (int row = 0; row < rowCount(); ++row) {
        const RecordLine* line = lineAt(row);
        if (line->isCase() == isCase && line->id == id) return row;
    }
    return -1;
}

}  // namespace bw
