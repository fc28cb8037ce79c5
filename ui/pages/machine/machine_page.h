// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/model/season.h"
#include "ui/kit/page.h"
#include "ui/pages/machine/machine_row.h"

class QStackedWidget;

namespace bw {

class CircuitPanel;
class MachineEvidence;
class MachineForm;
class MachineHeader;
class NewMachinePanel;

/// The machine: its profile as a form, its circuit as a drawing, and what is looked at on the way.
class MachinePage : public Page {
    Q_OBJECT

  public:
    explicit MachinePage(FarmSession& session, QWidget* parent = nullptr);

    QString title() const override;
    QWidget* headerTools() override;
    void refresh() override;
    QString hint() const override;
    void takeInHand(const QString& fieldKey) override;

  private:
    void build();
    void addActions();
    void connectForm();
    void connectHeader();
    void connectNewPanel();
    RecordId machineInHand() const;
    const Machine* machine() const;
    void presentMachine(const Machine& machine);
    /// One undo step; the problem is told if it cannot be stored.
    void edit(const MachineChange& change, const QString& undoText);
    void tell(const Problem& problem);
    void askForNew();
    void addMachine(std::optional<MachineClass> machineClass, UnitSystem units);
    void duplicate();
    void removeMachine();
    void takeClassChoice(const QString& choice);
    void takeUnits(UnitSystem units);
    void addCustomer();
    void setCustomer(RecordId customer, const QString& name);
    QString freeName(const QString& wished) const;

    QStackedWidget* m_stack;
    NewMachinePanel* m_new;
    MachineHeader* m_header;
    MachineForm* m_form;
    CircuitPanel* m_circuit;
    MachineEvidence* m_evidence;
    bool m_isAsking = false;  ///< the class of a new machine is being asked
};

}  // namespace bw
