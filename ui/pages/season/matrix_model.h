// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <memory>
#include <optional>
#include <vector>

#include "core/season/set_choice.h"
#include "ui/kit/span_bar.h"
#include "ui/pages/season/season_rows.h"

namespace bw {

class FarmSession;
class SeasonRunner;

/// How one nozzle serves one job, for a cell of the matrix.
struct MatrixCell {
    Span span;
    QString word;              ///< what stops it, the room to spare, or "not checked"
    bool isBest = false;       ///< the verdict on the job speaks of this pairing
    bool isUnchecked = false;  ///< would serve, or is taken, without having been checked
};

/// Jobs × own nozzles, row by row beside the jobs table.
class MatrixModel : public SeasonRowsModel {
    Q_OBJECT

  public:
    MatrixModel(FarmSession& session, const SeasonRunner& runner, QObject* parent = nullptr);
    void reload(const SeasonScope& scope);
    void showVerdicts() { touchAll(); }
    /// Marks the pairings of a choice of sets; null: the best of each job again.
    void setChoice(std::shared_ptr<const SetChoice> choice);

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation,
                        int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    /// Nothing where no verdict is known yet.
    std::optional<MatrixCell> cellAt(const QModelIndex& index) const;
    const StoredNozzle* nozzleAt(int column) const;

  private:
    const PairVerdict* pairAt(const QModelIndex& index) const;
    QString toolTip(const QModelIndex& index) const;
    bool isChosen(RecordId job, int column) const;
    QString wordOf(const PairVerdict& pair, const NumberStyle& style) const;

    FarmSession& m_session;
    const SeasonRunner& m_runner;
    std::shared_ptr<const SetChoice> m_choice;
    std::vector<StoredNozzle> m_nozzles;
};

}  // namespace bw
