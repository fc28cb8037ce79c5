// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/nozzles/nozzles_model.h"

#include <QPainter>
#include <algorithm>

#include "core/hydraulics/nozzle_law.h"
#include "core/model/band_text.h"
#include "core/model/nozzle_sizes.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

bool matches(const Nozzle& nozzle, const QString& filter) {
    if (filter.isEmpty()) return true;
    const QString text = qs(nozzle.name) + u' ' + qs(nozzle.family) + u' ' + qs(nozzle.sizeCode);
    return text.contains(filter, Qt::CaseInsensitive);
}

QVariantList categoriesOf(const Nozzle& nozzle) {
    QVariantList out;
    if (!nozzle.droplets) return out;
    for (const auto& band : nozzle.droplets->value) {
        const int category = static_cast<int>(band.category);
        if (!out.contains(category)) out.append(category);
    }
    return out;
}

QString driftText(const Nozzle& nozzle, const NumberStyle& style) {
    if (!nozzle.drift || nozzle.drift->value.empty()) return {};
    double most = 0.0;
    for (const auto& band : nozzle.drift->value) most = std::max(most, band.percent);
    return plainNumber(most, 0, style) + u" %"_s;
}

}  // namespace

QString pressureRangeText(const Nozzle& nozzle, const NumberStyle& style) {
    if (nozzle.pressureMin && nozzle.pressureMax) {
        return NozzlesModel::tr("%1 to %2")
            .arg(figure(nozzle.pressureMin->value, style), shown(nozzle.pressureMax->value, style));
    }
    if (nozzle.pressureMin)
        return NozzlesModel::tr("from %1").arg(shown(nozzle.pressureMin->value, style));
    if (nozzle.pressureMax)
        return NozzlesModel::tr("up to %1").arg(shown(nozzle.pressureMax->value, style));
    return NozzlesModel::tr("not checked");
}

void NozzlesModel::setContent(const std::vector<StoredNozzle>& own, const QString& filter,
                              const NumberStyle& style) {
    beginResetModel();
    m_rows.clear();
    m_style = style;
    addGroup(tr("Your nozzles"), tr("pressure range, droplets and drift class as you entered them"),
             own, filter);
    std::vector<StoredNozzle> sizes;
    for (const auto& nozzle : builtInNozzles()) sizes.push_back({0, nozzle});
    addGroup(tr("Sizes of ISO 10625"), tr("flow and colour only: no range, no droplets"),
             std::move(sizes), filter);
    endResetModel();
}

void NozzlesModel::addGroup(const QString& title, const QString& note,
                            std::vector<StoredNozzle> nozzles, const QString& filter) {
    std::erase_if(nozzles, [&](const StoredNozzle& n) { return !matches(n.nozzle, filter); });
    m_rows.push_back({title, note, std::nullopt});
    for (auto& nozzle : nozzles) m_rows.push_back({{}, {}, std::move(nozzle)});
}

const StoredNozzle* NozzlesModel::nozzleAt(int row) const {
    if (row < 0 || row >= static_cast<int>(m_rows.size())) return nullptr;
    const auto& nozzle = m_rows[static_cast<std::size_t>(row)].nozzle;
    return nozzle ? &*nozzle : nullptr;
}

int NozzlesModel::rowOf(RecordId id) const {
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        if (m_rows[i].nozzle && m_rows[i].nozzle->id == id && id != 0) return static_cast<int>(i);
    }
    return -1;
}

int NozzlesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int NozzlesModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QString NozzlesModel::cellText(const Nozzle& nozzle, int column) const {
    const auto law = nozzleLaw(nozzle);
    switch (column) {
        case Name:
            return qs(nozzle.name);
        case FlowColumn:
            return law ? shown(nozzle.flow ? nozzle.flow->value : law->qRef(), m_style)
                       : tr("missing");
        case AtColumn:
            return law ? shown(nozzle.at ? nozzle.at->value : law->pRef(), m_style) : QString();
        case Range:
            return pressureRangeText(nozzle, m_style);
        case Droplets:
            return nozzle.droplets ? QString() : tr("not checked");
        case Drift:
            return driftText(nozzle, m_style);
        case Price:
            return nozzle.price ? plainNumber(nozzle.price->value, 2, m_style) : QString();
        default:
            return {};
    }
}

QVariant NozzlesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    if (!row.nozzle) {
        if (role == GroupRole) return true;
        if (role == Qt::DisplayRole && index.column() == 0) return row.group;
        if (role == Qt::UserRole && index.column() == 0) return row.groupNote;
        return {};
    }
    const Nozzle& nozzle = row.nozzle->nozzle;
    const QString text = role == Qt::DisplayRole || role == Qt::ToolTipRole || role == QuietRole
                             ? cellText(nozzle, index.column())
                             : QString();
    switch (role) {
        case Qt::DisplayRole:
            return text;
        case Qt::ToolTipRole:
            return index.column() == Droplets && nozzle.droplets
                       ? qs(dropletBandText(nozzle.droplets->value,
                                            displayUnit(m_style.units, Dimension::Pressure),
                                            m_style.decimalMark))
                       : text;
        case Qt::TextAlignmentRole:
            return int(Qt::AlignVCenter |
                       (index.column() == Name || index.column() == Droplets ? Qt::AlignLeft
                                                                             : Qt::AlignRight));
        case QuietRole:
            return text == tr("not checked");
        case SizeCodeRole:
            return qs(nozzle.sizeCode);
        case CategoriesRole:
            return categoriesOf(nozzle);
        default:
            return {};
    }
}

QVariant NozzlesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return int(Qt::AlignVCenter |
                   (section == Name || section == Droplets ? Qt::AlignLeft : Qt::AlignRight));
    if (role != Qt::DisplayRole) return {};
    const QStringList titles = {tr("Nozzle"),   tr("Flow"),  tr("at"),   tr("Pressure range"),
                                tr("Droplets"), tr("Drift"), tr("Price")};
    return titles.value(section);
}

Qt::ItemFlags NozzlesModel::flags(const QModelIndex& index) const {
    return nozzleAt(index.row()) ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::ItemIsEnabled;
}

void NozzleDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    const bool isGroup = index.data(GroupRole).toBool();
    const auto categories = index.data(NozzlesModel::CategoriesRole).toList();
    if (isGroup || (index.column() != NozzlesModel::Name &&
                    (index.column() != NozzlesModel::Droplets || categories.isEmpty()))) {
        TableDelegate::paint(painter, option, index);
        return;
    }
    paintGround(painter, option, index);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    double x = option.rect.left() + px(6);
    const double middle = option.rect.center().y() + 0.5;
    if (index.column() == NozzlesModel::Droplets) {
        for (const auto& value : categories) {
            const auto category = static_cast<DropletCategory>(value.toInt());
            const QSizeF size = dropletChipSize(category);
            if (x + size.width() > option.rect.right()) break;
            paintDropletChip(*painter, QPointF(x + size.width() / 2, middle), category);
            x += size.width() + px(3);
        }
    } else {
        const QString code = index.data(NozzlesModel::SizeCodeRole).toString();
        const double slot = px(38);
        if (!code.isEmpty()) paintNozzleChip(*painter, QPointF(x + slot / 2, middle), code);
        const QRectF box = QRectF(option.rect).adjusted(px(6) + slot + px(6), 0, -px(4), 0);
        painter->setFont(option.font);
        painter->setPen(color(Role::Ink));
        painter->drawText(box, Qt::AlignVCenter | Qt::AlignLeft,
                          QFontMetricsF(option.font)
                              .elidedText(index.data().toString(), Qt::ElideRight, box.width()));
    }
    painter->restore();
    paintFocus(painter, option);
}

}  // namespace bw
