// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season/wishes_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/exchange/json_wishes.h"
#include "core/season/work_rate.h"
#include "core/store/farm_file.h"
#include "ui/kit/chips.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

template <class List, class T>
bool holds(const List& list, const T& item) {
    return std::find(list.begin(), list.end(), item) != list.end();
}

int percentOf(double part) {
    return static_cast<int>(std::lround(100 * part));
}

}  // namespace

SetWishes keptWishes(FarmSession& session) {
    const QString text = session.file().setting(u"season.wishes"_s);
    if (text.isEmpty()) return {};
    auto read = wishesFromJson(ss(text));
    return read ? std::move(read).value() : SetWishes{};
}

WishesDialog::WishesDialog(FarmSession& session, const SetWishes& wishes, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_before(wishes),
      m_spares(new QSpinBox),
      m_efficiency(new QSpinBox),
      m_allAboard(
          new QCheckBox(tr("All sets of a machine must fit on its nozzle bodies at once"))) {
    setObjectName(u"season.wishes"_s);
    setWindowTitle(tr("Wishes for the choice of sets"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(px(10));
    column->addWidget((new TextLabel(tr("The choice takes the fewest sets that hold every job slow "
                                        "to fast, then those that cost least. A set that is owned "
                                        "costs nothing; those aboard are owned.")))
                          ->wrapped());
    column->addWidget(buildNozzles(wishes), 1);
    buildRest(*column, wishes);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Ok)->setText(tr("Choose with these"));
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    resize(px(720), px(520));
}

QWidget* WishesDialog::buildNozzles(const SetWishes& wishes) {
    auto* content = new QWidget;
    auto* grid = new QGridLayout(content);
    grid->setHorizontalSpacing(px(16));
    grid->setVerticalSpacing(px(4));
    grid->setColumnStretch(1, 1);
    grid->addWidget(new TextLabel(tr("Nozzle"), TextSize::Small, Role::Quiet), 0, 0, 1, 2);
    grid->addWidget(new TextLabel(tr("May be chosen"), TextSize::Small, Role::Quiet), 0, 2);
    int column = 3;
    for (const auto& machine : m_session.season().machines) {
        auto* head = new TextLabel(tr("Owned for %1").arg(qs(machine.machine.name)),
                                   TextSize::Small, Role::Quiet);
        head->setWordWrap(true);
        head->setMaximumWidth(px(120));
        grid->addWidget(head, 0, column++, Qt::AlignBottom);
    }
    int row = 1;
    for (const auto& stored : m_session.season().nozzles)
        addNozzle(*grid, row++, stored.nozzle, wishes);
    grid->setRowStretch(row, 1);
    auto* scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setWidget(content);
    return scroll;
}

void WishesDialog::addNozzle(QGridLayout& grid, int row, const Nozzle& nozzle,
                             const SetWishes& wishes) {
    if (!nozzle.sizeCode.empty()) grid.addWidget(new NozzleChip(qs(nozzle.sizeCode)), row, 0);
    grid.addWidget(new TextLabel(qs(nozzle.name)), row, 1);
    auto* allowed = new QCheckBox;
    allowed->setObjectName(u"season.wishes.allow."_s + qs(nozzle.name));
    allowed->setAccessibleName(tr("%1 may be chosen").arg(qs(nozzle.name)));
    allowed->setChecked(!holds(wishes.barred, nozzle.name));
    grid.addWidget(allowed, row, 2, Qt::AlignHCenter);
    m_allowed.emplace_back(nozzle.name, allowed);
    int column = 3;
    const auto aboard = setsAboard(m_session.season().machines);
    for (const auto& machine : m_session.season().machines) {
        const OwnedSet set{machine.id, nozzle.name};
        auto* owned = new QCheckBox;
        owned->setObjectName(u"season.wishes.own%1."_s.arg(machine.id) + qs(nozzle.name));
        owned->setAccessibleName(
            tr("%1 is owned for %2").arg(qs(nozzle.name), qs(machine.machine.name)));
        const bool isAboard = holds(aboard, set);
        owned->setChecked(isAboard || holds(wishes.owned, set));
        owned->setEnabled(!isAboard);
        if (isAboard) owned->setToolTip(tr("Aboard, as the machine's profile says"));
        grid.addWidget(owned, row, column++, Qt::AlignHCenter);
        if (!isAboard) m_owned.emplace_back(set, owned);
    }
}

void WishesDialog::buildRest(QVBoxLayout& column, const SetWishes& wishes) {
    m_spares->setObjectName(u"season.wishes.spares"_s);
    m_spares->setRange(0, 100);
    m_spares->setSuffix(tr(" %"));
    m_spares->setValue(percentOf(wishes.spares));
    m_efficiency->setObjectName(u"season.wishes.efficiency"_s);
    m_efficiency->setRange(0, 100);
    m_efficiency->setSuffix(tr(" %"));
    m_efficiency->setSpecialValueText(tr("not counted"));
    m_efficiency->setValue(wishes.fieldEfficiency ? percentOf(*wishes.fieldEfficiency) : 0);
    m_allAboard->setObjectName(u"season.wishes.aboard"_s);
    m_allAboard->setChecked(wishes.isAllAboard);
    auto* form = new QFormLayout;
    form->addRow(tr("Spares on top of a set that is bought"), m_spares);
    form->addRow(tr("Part of the working time that is spraying"), m_efficiency);
    auto* source = new TextLabel(
        tr("Usual: %1 to %2 %, often %3 % (ASABE D497.7, from memory). Not counted: hours are "
           "those of spraying alone.")
            .arg(percentOf(kFieldEfficiencyLow))
            .arg(percentOf(kFieldEfficiencyHigh))
            .arg(percentOf(kFieldEfficiencyTypical)),
        TextSize::Small, Role::Quiet);
    form->addRow(QString(), source->wrapped());
    column.addLayout(form);
    column.addWidget(m_allAboard);
}

SetWishes WishesDialog::wishes() const {
    SetWishes out;
    out.acceptUnchecked = m_before.acceptUnchecked;
    for (const auto& [name, box] : m_allowed) {
        if (!box->isChecked()) out.barred.push_back(name);
    }
    for (const auto& [set, box] : m_owned) {
        if (box->isChecked()) out.owned.push_back(set);
    }
    out.spares = m_spares->value() / 100.0;
    out.isAllAboard = m_allAboard->isChecked();
    if (m_efficiency->value() > 0) out.fieldEfficiency = m_efficiency->value() / 100.0;
    return out;
}

}  // namespace bw
