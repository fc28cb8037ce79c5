// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/machine/machine_row.h"

namespace bw {

class ChoiceBox;

/// The nozzle set in one position of the nozzle bodies.
class SetRow : public MachineRow {
    Q_OBJECT

  public:
    SetRow(int position, const QString& name);
    int position() const { return m_position; }
    void present(const FormView& view) override;
    QWidget* editor() const override;

    /// Rows that a machine needs: one for each position of its bodies, and for each set aboard.
    static int rowsFor(const Machine& machine);
    static constexpr int kMost = 12;

  private:
    void fill(const FormView& view, const QString& current);
    void take(int index);
    int m_position;
    QStringList m_names;
    ChoiceBox* m_box;
};

/// Puts a set in a position; an empty name takes it out. Positions stay in order.
void setSetAboard(Machine& machine, int position, const std::string& nozzle);

}  // namespace bw
