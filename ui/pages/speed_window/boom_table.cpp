// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/boom_table.h"

#include "ui/kit/data_table.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

void BoomTable::setStrip(StripKind kind, const BoomStrip& strip, const NumberStyle& style,
                         const Sentences& sentences) {
    beginResetModel();
    m_kind = kind;
    m_strip = strip;
    m_style = style;
    m_sentences = &sentences;
    endResetModel();
}

int BoomTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_strip.nozzles.size());
}

int BoomTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(kColumns);
}

QString BoomTable::note(const StripNozzle& nozzle) const {
    switch (nozzle.state) {
        case StripState::Sprays:
            return {};
        case StripState::UnderLowest:
            return qs(m_sentences->text("strip.state.under_lowest"));
        case StripState::Shut:
            return qs(m_sentences->text("strip.state.shut"));
        case StripState::StandsStill:
            return qs(m_sentences->text("strip.state.stands_still"));
        case StripState::BacksUp:
            return qs(m_sentences->text("strip.state.backs_up"));
    }
    return {};
}

QString BoomTable::partText(const StripNozzle& nozzle) const {
    return nozzle.part ? plainNumber(100.0 * *nozzle.part, 1, m_style) : u"–"_s;
}

QString BoomTable::text(const StripNozzle& nozzle, int column) const {
    const bool isTurn = m_kind == StripKind::Turn;
    switch (column) {
        case Number:
            return QString::number(nozzle.number);
        case Section:
            return QString::number(nozzle.section);
        case Offset:
            return figure(nozzle.offset, m_style);
        case First:
            return isTurn ? figure(*nozzle.speed, m_style) : figure(*nozzle.pressure, m_style);
        case Second:
            if (!isTurn) return figure(*nozzle.flow, m_style);
            return nozzle.rate ? figure(*nozzle.rate, m_style) : u"–"_s;
        case Part:
            return partText(nozzle);
        default:
            return note(nozzle);
    }
}

QVariant BoomTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const StripNozzle& nozzle = m_strip.nozzles[static_cast<std::size_t>(index.row())];
    const bool isNote = index.column() == Note;
    if (role == Qt::DisplayRole) return text(nozzle, index.column());
    if (role == Qt::ToolTipRole && isNote) return note(nozzle);
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter | (isNote ? Qt::AlignLeft : Qt::AlignRight));
    if (role == SortRole) return nozzle.number;
    return {};
}

QVariant BoomTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter | (section == Note ? Qt::AlignLeft : Qt::AlignRight));
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    const bool isTurn = m_kind == StripKind::Turn;
    switch (section) {
        case Number:
            return tr("Nozzle\n");
        case Section:
            return tr("Section\n");
        case Offset:
            return tr("From the middle\n%1").arg(unitOf<Length>(m_style));
        case First:
            return isTurn ? tr("Speed\n%1").arg(unitOf<Speed>(m_style))
                          : tr("Nozzle pressure\n%1").arg(unitOf<Pressure>(m_style));
        case Second:
            return isTurn ? tr("Rate\n%1").arg(unitOf<AreaRate>(m_style))
                          : tr("Flow\n%1").arg(unitOf<Flow>(m_style));
        case Part:
            return m_kind == StripKind::Even ? tr("Of the feed's flow\n%")
                   : isTurn                  ? tr("Of the planned rate\n%")
                                             : tr("Of the level flow\n%");
        default:
            return tr("What it does\n");
    }
}

QString BoomTable::words(int row) const {
    if (row < 0 || row >= rowCount()) return {};
    const StripNozzle& n = m_strip.nozzles[static_cast<std::size_t>(row)];
    QStringList parts;
    if (n.pressure) parts << shown(*n.pressure, m_style);
    if (n.flow) parts << shown(*n.flow, m_style);
    if (n.speed) parts << shown(*n.speed, m_style);
    if (n.rate) parts << shown(*n.rate, m_style);
    if (n.part) parts << partText(n) + u" %"_s;
    if (n.state != StripState::Sprays) parts << note(n);
    return tr("Nozzle %1, section %2: %3").arg(n.number).arg(n.section).arg(parts.join(u" · "_s));
}

}  // namespace bw
