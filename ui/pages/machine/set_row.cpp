// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/set_row.h"

#include <QAbstractItemView>
#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Own nozzles, then the sizes of the standard: the record of the machine's units first.
QStringList nozzleNames(const FormView& view) {
    QStringList names;
    for (const auto& stored : view.session.season().nozzles)
        names.append(QString::fromStdString(stored.nozzle.name));
    QStringList others;
    const bool wantsUs = view.machine.units == UnitSystem::Us;
    for (const auto& nozzle : builtInNozzles()) {
        const bool isUs = nozzle.name.find("US") != std::string::npos;
        (isUs == wantsUs ? names : others).append(QString::fromStdString(nozzle.name));
    }
    return names + others;
}

}  // namespace

void setSetAboard(Machine& machine, int position, const std::string& nozzle) {
    auto& sets = machine.setsAboard;
    sets.erase(std::remove_if(sets.begin(), sets.end(),
                              [&](const SetAboard& set) { return set.position == position; }),
               sets.end());
    if (!nozzle.empty()) sets.push_back({position, nozzle});
    std::sort(sets.begin(), sets.end(),
              [](const auto& a, const auto& b) { return a.position < b.position; });
}

SetRow::SetRow(int position, const QString& name)
    : MachineRow(u"sets_aboard"_s, name), m_position(position), m_box(new ChoiceBox) {
    m_box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_box->setMinimumWidth(px(kEditorWidth));
    m_box->setMaximumWidth(px(302));
    placeEditor(m_box, true);
    connect(m_box, &QComboBox::activated, this, &SetRow::take);
}

int SetRow::rowsFor(const Machine& machine) {
    int rows = machine.bodyPositions ? machine.bodyPositions->value : 1;
    for (const auto& set : machine.setsAboard) rows = std::max(rows, set.position);
    return std::clamp(rows, 1, kMost);
}

void SetRow::present(const FormView& view) {
    const bool isOne = rowsFor(view.machine) == 1;
    setLabel(isOne ? tr("Nozzle set aboard") : tr("Set in position %1").arg(m_position));
    m_box->setAccessibleName(label());
    QString current;
    for (const auto& set : view.machine.setsAboard) {
        if (set.position == m_position) current = QString::fromStdString(set.nozzle);
    }
    fill(view, current);
    m_box->setCurrentData(current);
    m_box->setToolTip(m_box->currentText());
}

/// A name that is no longer among the nozzles is kept and shown.
void SetRow::fill(const FormView& view, const QString& current) {
    QStringList names = nozzleNames(view);
    if (!current.isEmpty() && !names.contains(current)) names.prepend(current);
    if (names == m_names) return;
    m_names = names;
    const QSignalBlocker quiet(m_box);
    m_box->clear();
    m_box->addItem(tr("none, or not known"), QString());
    for (const QString& name : names) m_box->addItem(name, name);
}

QWidget* SetRow::editor() const {
    return m_box;
}

void SetRow::take(int index) {
    const std::string nozzle = ss(m_box->itemData(index).toString());
    Q_EMIT edited(
        [position = m_position, nozzle](Machine& m) { setSetAboard(m, position, nozzle); },
        undoText(m_box->itemText(index)));
}

}  // namespace bw
