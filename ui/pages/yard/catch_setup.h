// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/model/machine.h"
#include "core/model/yard_record.h"
#include "core/units/format.h"

class QGridLayout;

namespace bw {

class Button;
class ChoiceBox;
class FarmSession;
class QuantityEdit;
class SegmentedButtons;
class TextLabel;

/// What a catch test is to be: set, pressure, time, which nozzles, limits, from which end.
class CatchSetup : public QWidget {
    Q_OBJECT

  public:
    explicit CatchSetup(FarmSession& session, QWidget* parent = nullptr);
    /// For a machine. What was chosen before stays while the machine is the same.
    void present(RecordId machine);
    void takeFocus();
    bool commitPending();
    /// As the fields stand now.
    CatchTest test() const;
    bool isFromRight() const;
    /// Stands where the page puts it, always in sight.
    Button* startButton() const { return m_start; }

  Q_SIGNALS:
    void startWanted();

  private:
    void build();
    void buildWhat(QGridLayout* grid);
    void buildWhich(QGridLayout* grid);
    void buildLimits(QGridLayout* grid);
    QuantityEdit* addQuantity(const QString& name, const QString& label, Dimension dimension,
                              QGridLayout* grid, int row, int column);
    void fillSets(const Machine& machine);
    void fillScope(const Machine& machine);
    void showSums();
    const Machine* machine() const;
    NumberStyle style() const;

    FarmSession& m_session;
    RecordId m_machineId = 0;
    ChoiceBox* m_set;
    QuantityEdit* m_pressure = nullptr;
    QuantityEdit* m_time = nullptr;
    QuantityEdit* m_count = nullptr;
    TextLabel* m_countLabel = nullptr;
    SegmentedButtons* m_scope;
    ChoiceBox* m_section;
    SegmentedButtons* m_direction;
    QuantityEdit* m_ofMean = nullptr;
    QuantityEdit* m_ofNew = nullptr;
    TextLabel* m_newFlow;
    TextLabel* m_tooShort;
    TextLabel* m_notYet;
    Button* m_start;
};

}  // namespace bw
