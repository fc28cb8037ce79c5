// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>

#include "core/text/sentences.h"
#include "core/window/boom_strip.h"

namespace bw {

/// What the strip along the boom is about.
enum class StripKind { Even, Turn, Slope };

/// The strip as a table, a row a nozzle.
class BoomTable : public QAbstractTableModel {
    Q_OBJECT

  public:
    explicit BoomTable(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
    void setStrip(StripKind kind, const BoomStrip& strip, const NumberStyle& style,
                  const Sentences& sentences);
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    /// "Nozzle 15, section 2: 2.9 bar, 1.21 L/min, 98.4 %": a row in words.
    QString words(int row) const;

  private:
    enum Column { Number, Section, Offset, First, Second, Part, Note, kColumns };
    QString text(const StripNozzle& nozzle, int column) const;
    QString note(const StripNozzle& nozzle) const;
    QString partText(const StripNozzle& nozzle) const;

    StripKind m_kind = StripKind::Even;
    BoomStrip m_strip;
    NumberStyle m_style;
    const Sentences* m_sentences = nullptr;
};

}  // namespace bw
