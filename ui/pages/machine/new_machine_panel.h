// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/model/machine.h"

namespace bw {

class AnswerRow;
class Button;
class FarmSession;
class SegmentedButtons;
class TextLabel;

/// The first question of a new machine: its class, and the units its papers are in. One answer
/// makes the machine.
class NewMachinePanel : public QWidget {
    Q_OBJECT

  public:
    explicit NewMachinePanel(const FarmSession& session, QWidget* parent = nullptr);
    /// `isFirst`: there is no machine yet, so there is no way back but the demo season.
    void present(bool isFirst, UnitSystem units);

  Q_SIGNALS:
    /// Nothing: the class is not known.
    void classTaken(std::optional<bw::MachineClass> machineClass, bw::UnitSystem units);
    void givenUp();
    void demoWished();

  private:
    void addAnswer(const QString& answer, const QString& meaning,
                   std::optional<MachineClass> machineClass, const char* name);
    UnitSystem units() const;
    std::vector<AnswerRow*> m_answers;
    SegmentedButtons* m_units;
    TextLabel* m_lead;
    Button* m_back;
    Button* m_demo;
};

}  // namespace bw
