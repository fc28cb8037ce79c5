// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/speed_table.h"

#include <algorithm>
#include <cmath>

#include "core/window/advice.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/chips.h"
#include "ui/kit/data_table.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {
constexpr int kOwnColumns = SpeedTable::Stands + 1;
constexpr double kSame = 1e-6;  ///< speeds closer than this (relative) share a row
}  // namespace

SpeedTable::SpeedTable(const Sentences& sentences, QObject* parent)
    : QAbstractTableModel(parent), m_sentences(sentences) {}

void SpeedTable::setStudy(const WindowStudy* study) {
    beginResetModel();
    m_study = study;
    m_rows.clear();
    m_others.clear();
    if (study) {
        const JobDemand& d = study->model().demand();
        addRow(d.usual, tr("usual"));
        addRow(d.slow, tr("slow"));
        addRow(d.fast, tr("fast"));
        const SpeedWindow& w = study->window();
        if (!w.empty && w.low.speed && w.low.speed->si() > 0) addRow(*w.low.speed, tr("low end"));
        if (!w.empty && w.high.speed) addRow(*w.high.speed, tr("high end"));
        for (const double x : niceTicks(study->xFrom, study->xTo, 14)) {
            if (x > 0) addRow(study->speedAt(x), {});
        }
        std::sort(m_rows.begin(), m_rows.end(),
                  [](const auto& a, const auto& b) { return a.speed < b.speed; });
        for (std::size_t i = 0; i < study->nozzles.size(); ++i) {
            if (i != study->inHand && study->nozzles[i].model) m_others.push_back(i);
        }
    }
    endResetModel();
}

void SpeedTable::addRow(Speed speed, const QString& mark) {
    for (Row& row : m_rows) {
        if (std::abs(row.speed.si() - speed.si()) > kSame * speed.si()) continue;
        if (!mark.isEmpty()) row.mark += (row.mark.isEmpty() ? u""_s : u", "_s) + mark;
        return;
    }
    m_rows.push_back(
        {speed, mark, m_study->model().at(speed), m_study->model().neededSensorPressure(speed)});
}

int SpeedTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int SpeedTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() || !m_study ? 0 : kOwnColumns + static_cast<int>(m_others.size());
}

const StudiedNozzle* SpeedTable::other(int column) const {
    const auto place = static_cast<std::size_t>(column - kOwnColumns);
    return column >= kOwnColumns && place < m_others.size() ? &m_study->nozzles[m_others[place]]
                                                            : nullptr;
}

QString SpeedTable::text(const Row& row, int column) const {
    const NumberStyle& style = m_study->style;
    switch (column) {
        case Speeds:
            return row.mark.isEmpty() ? figure(row.speed, style)
                                      : row.mark + u"   "_s + figure(row.speed, style);
        case ByHand:
            if (const auto share = onTimeShare(m_study->model(), row.point.boomFlow))
                return plainNumber(100.0 * *share, 0, style);
            return figure(row.byHand, style);
        case Sensor:
            return figure(row.point.sensorPressure, style);
        case NozzlePressure:
            return figure(row.point.nozzlePressure, style);
        case OneNozzle:
            return figure(row.point.nozzleFlow, style);
        case Boom:
            return figure(row.point.boomFlow, style);
        case Rate:
            return figure(row.point.rate, style);
        case Drops:
            return row.point.droplets ? letters(*row.point.droplets) : u"–"_s;
        case Stands:
            return qs(m_sentences.of(shortPointFact(row.point), style));
        default:
            return figure(other(column)->model->at(row.speed).sensorPressure, style);
    }
}

QVariant SpeedTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !m_study) return {};
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    const bool words = index.column() == Stands;
    switch (role) {
        case Qt::DisplayRole:
            return text(row, index.column());
        case Qt::ToolTipRole:
            return words ? text(row, index.column()) : QVariant();
        case Qt::TextAlignmentRole:
            return int(Qt::AlignVCenter | (words ? Qt::AlignLeft : Qt::AlignRight));
        case SortRole:
            return row.speed.si();
        case QuietRole:
            return row.point.verdict != PointVerdict::OnRate && !words;
        default:
            return {};
    }
}

QVariant SpeedTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || !m_study) return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter | (section == Stands ? Qt::AlignLeft : Qt::AlignRight));
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    const NumberStyle& style = m_study->style;
    const QString bar = unitOf<Pressure>(style), flow = unitOf<Flow>(style);
    switch (section) {
        case Speeds:
            return tr("Speed\n%1").arg(unitOf<Speed>(style));
        case ByHand:
            return m_study->isPulsed() ? tr("On-time\n%") : tr("Set by hand\n%1").arg(bar);
        case Sensor:
            return tr("Boom sensor\n%1").arg(bar);
        case NozzlePressure:
            return tr("Nozzle\n%1").arg(bar);
        case OneNozzle:
            return tr("One nozzle\n%1").arg(flow);
        case Boom:
            return tr("Boom\n%1").arg(flow);
        case Rate:
            return tr("Rate\n%1").arg(unitOf<AreaRate>(style));
        case Drops:
            return tr("Drops");
        case Stands:
            return tr("How it stands");
        default:
            break;
    }
    const StudiedNozzle* nozzle = other(section);
    if (!nozzle) return {};
    if (role == Qt::ToolTipRole) return qs(nozzle->nozzle.name);
    return qs(shortName(nozzle->nozzle)) + u'\n' +
           (nozzle->nozzle.sizeCode.empty() ? bar
                                            : tr("%1, %2").arg(qs(nozzle->nozzle.sizeCode), bar));
}

int SpeedTable::rowNear(Speed speed) const {
    int best = -1;
    double distance = 0;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const double d = std::abs(m_rows[i].speed.si() - speed.si());
        if (best >= 0 && d >= distance) continue;
        best = static_cast<int>(i);
        distance = d;
    }
    return best;
}

}  // namespace bw
