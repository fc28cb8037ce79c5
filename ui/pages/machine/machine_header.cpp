// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_header.h"

#include <QHBoxLayout>

#include "core/model/machine_fields.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/pages/machine/origin_tally.h"

namespace bw {

using namespace Qt::StringLiterals;

MachineHeader::MachineHeader(const FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_machine(new ChoiceBox),
      m_class(new ChoiceBox),
      m_units(new ChoiceBox),
      m_tally(new OriginTally) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(10));
    m_machine->setObjectName(u"machine.header.machine"_s);
    m_machine->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_machine->setMinimumContentsLength(12);
    m_machine->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_machine->setMaximumWidth(px(280));
    m_class->setObjectName(u"machine.header.class"_s);
    m_units->setObjectName(u"machine.header.units"_s);
    fillFixed(session);
    row->addWidget(captioned(tr("Machine"), m_machine), 1);
    row->addWidget(deeds());
    row->addWidget(captioned(tr("Class"), m_class));
    row->addWidget(captioned(tr("Units"), m_units));
    row->addStretch(0);
    row->addWidget(m_tally);
    connect(m_machine, &QComboBox::activated, this,
            [this](int index) { Q_EMIT machineTaken(m_machine->itemData(index).toLongLong()); });
    connect(m_class, &QComboBox::activated, this,
            [this](int index) { Q_EMIT classTaken(m_class->itemData(index).toString()); });
    connect(m_units, &QComboBox::activated, this, [this](int index) {
        Q_EMIT unitsTaken(static_cast<UnitSystem>(m_units->itemData(index).toInt()));
    });
}

void MachineHeader::fillFixed(const FarmSession& session) {
    m_class->addItem(tr("not known"), QString());
    for (const auto& [value, word] : ChoiceNames<MachineClass>::names)
        m_class->addItem(choiceWord(session, u"class"_s, qs(word)), qs(word));
    const auto add = [this](const QString& text, UnitSystem units) {
        m_units->addItem(text, static_cast<int>(units));
    };
    add(tr("metric: bar, km/h"), UnitSystem::Metric);
    add(tr("US: psi, mph"), UnitSystem::Us);
    add(tr("UK: bar, mph"), UnitSystem::Uk);
    m_units->setToolTip(tr("How this machine's values are shown. Stored values stay as they are."));
}

IconButton* MachineHeader::deed(const QString& name, const QString& icon, const char* objectName,
                                void (MachineHeader::*signal)()) {
    auto* button = new IconButton(name, icon);
    button->setObjectName(QLatin1String(objectName));
    connect(button, &QAbstractButton::clicked, this, signal);
    return button;
}

QWidget* MachineHeader::deeds() {
    auto* box = new QWidget;
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, px(12), 0, 0);
    row->setSpacing(px(2));
    row->addWidget(
        deed(tr("New machine"), u"plus"_s, "machine.header.new", &MachineHeader::newWished));
    row->addWidget(m_duplicate = deed(tr("Duplicate this machine"), u"copy"_s,
                                      "machine.header.duplicate", &MachineHeader::duplicateWished));
    row->addWidget(m_delete = deed(tr("Delete this machine"), u"delete"_s, "machine.header.delete",
                                   &MachineHeader::deleteWished));
    box->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    return box;
}

void MachineHeader::presentMachines(const Season& season, RecordId inHand) {
    const QSignalBlocker quiet(m_machine);
    m_machine->clear();
    for (const auto& stored : season.machines) {
        QString name = QString::fromStdString(stored.machine.name);
        if (name.isEmpty()) name = tr("(no name)");
        m_machine->addItem(name, QVariant::fromValue<qint64>(stored.id));
    }
    m_machine->setCurrentData(QVariant::fromValue<qint64>(inHand));
    m_machine->setToolTip(m_machine->currentText());
}

void MachineHeader::present(const Season& season, RecordId inHand) {
    presentMachines(season, inHand);
    const Machine* machine = nullptr;
    for (const auto& stored : season.machines) {
        if (stored.id == inHand) machine = &stored.machine;
    }
    for (QWidget* widget : std::initializer_list<QWidget*>{m_machine, m_duplicate, m_delete,
                                                           m_class, m_units, m_tally})
        widget->setEnabled(machine);
    m_tally->setVisible(machine);
    if (!machine) return;
    m_class->setCurrentData(machine->machineClass ? qs(choiceName(machine->machineClass->value))
                                                  : QString());
    m_units->setCurrentData(static_cast<int>(machine->units));
    m_tally->setCounts(originCounts(*machine));
}

}  // namespace bw
