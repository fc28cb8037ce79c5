// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ui/pages/speed_window/window_study.h"

namespace bw {

/// The table by speed: what happens with the nozzle in hand at each speed, the pressure to set when
/// working by hand, and the pressure that each other candidate would need.
class SpeedTable : public QAbstractTableModel {
    Q_OBJECT

  public:
    /// The first columns; behind them one for each other candidate.
    enum Column { Speeds, ByHand, Sensor, NozzlePressure, OneNozzle, Boom, Rate, Drops, Stands };

    explicit SpeedTable(const Sentences& sentences, QObject* parent = nullptr);
    /// Shows a study; the caller keeps it alive until the next one. Null: empty.
    void setStudy(const WindowStudy* study);
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    /// The row nearest to a speed; -1 if there is none.
    int rowNear(Speed speed) const;
    Speed speedOf(int row) const { return m_rows.at(static_cast<std::size_t>(row)).speed; }

  private:
    struct Row {
        Speed speed;
        QString mark;  ///< "slow", "usual", "fast", "low end", "high end"
        OperatingPoint point;
        Pressure byHand;
    };
    void addRow(Speed speed, const QString& mark);
    QString text(const Row& row, int column) const;
    const StudiedNozzle* other(int column) const;

    const Sentences& m_sentences;
    const WindowStudy* m_study = nullptr;
    std::vector<Row> m_rows;
    std::vector<std::size_t> m_others;  ///< places in the study, a column each
};

}  // namespace bw
