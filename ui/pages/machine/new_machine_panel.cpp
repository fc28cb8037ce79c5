// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/new_machine_panel.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QTimer>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

NewMachinePanel::NewMachinePanel(const FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_units(new SegmentedButtons),
      m_lead(new TextLabel),
      m_back(new Button(tr("Back"), u"back"_s)),
      m_demo(new Button(tr("Try the demo season"), u"season"_s)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(px(28), px(24), px(28), px(20));
    column->setSpacing(px(10));
    column->addWidget(
        new TextLabel(tr("What kind of machine is it?"), TextSize::Verdict, Role::Ink, true));
    column->addWidget(m_lead->wrapped());
    auto* units = new QHBoxLayout;
    units->addWidget(new TextLabel(tr("Its papers and display are in")));
    m_units->addChoice(tr("metric: bar, km/h, L/ha"));
    m_units->addChoice(tr("US: psi, mph, gal/ac"));
    m_units->addChoice(tr("UK: bar, mph, L/ha"));
    m_units->setObjectName(u"machine.new.units"_s);
    units->addWidget(m_units);
    units->addStretch(1);
    column->addLayout(units);
    column->addSpacing(px(6));
    const auto word = [&](const char* choice) {
        return choiceWord(session, u"class"_s, QLatin1String(choice));
    };
    addAnswer(word("mounted"), tr("on the tractor's arms, about 12 to 24 m (40 to 80 ft)"),
              MachineClass::Mounted, "mounted");
    addAnswer(word("trailed"), tr("on its own axle, about 24 to 36 m (80 to 120 ft)"),
              MachineClass::Trailed, "trailed");
    addAnswer(word("self_propelled"), tr("its own engine, about 24 to 40 m (80 to 132 ft)"),
              MachineClass::SelfPropelled, "selfPropelled");
    addAnswer(word("pulsed"), tr("the nozzles switch; the pressure is held"), MachineClass::Pulsed,
              "pulsed");
    addAnswer(tr("Another, or not known"), tr("nothing is assumed"), std::nullopt, "other");
    auto* row = new QHBoxLayout;
    m_back->setObjectName(u"machine.new.back"_s);
    m_demo->setObjectName(u"machine.new.demo"_s);
    row->addWidget(m_back);
    row->addWidget(m_demo);
    row->addStretch(1);
    column->addSpacing(px(6));
    column->addLayout(row);
    column->addStretch(1);
    auto* escape = new QShortcut(QKeySequence(Qt::Key_Escape), this);
    connect(escape, &QShortcut::activated, this, [this] {
        if (m_back->isVisible()) m_back->click();
    });
    connect(m_back, &QAbstractButton::clicked, this, &NewMachinePanel::givenUp);
    connect(m_demo, &QAbstractButton::clicked, this, &NewMachinePanel::demoWished);
}

void NewMachinePanel::addAnswer(const QString& answer, const QString& meaning,
                                std::optional<MachineClass> machineClass, const char* name) {
    auto* row = new AnswerRow(QString::number(m_answers.size() + 1), answer, meaning);
    row->setObjectName(u"machine.new."_s + QLatin1String(name));
    row->setMaximumWidth(px(620));
    m_answers.push_back(row);
    layout()->addWidget(row);
    connect(row, &QAbstractButton::clicked, this,
            [this, machineClass] { Q_EMIT classTaken(machineClass, units()); });
    // Works wherever the focus is, as long as the question is on the screen.
    auto* digit = new QShortcut(QKeySequence(QString::number(m_answers.size())), this);
    connect(digit, &QShortcut::activated, row, &QAbstractButton::click);
}

void NewMachinePanel::present(bool isFirst, UnitSystem units) {
    m_lead->setText(
        isFirst
            ? tr("Everything begins with a machine. One answer here and the ten questions after "
                 "it are enough; what you do not know is assumed, and says so.")
            : tr("One answer here and the ten questions after it are enough; what you do not "
                 "know is assumed, and says so."));
    m_back->setVisible(!isFirst);
    m_demo->setVisible(isFirst);
    m_units->setCurrentIndex(units == UnitSystem::Us ? 1 : units == UnitSystem::Uk ? 2 : 0);
    // Once the page stands: the frame still moves the focus while it changes pages.
    QTimer::singleShot(0, this, [this] {
        if (isVisible() && !isAncestorOf(window()->focusWidget()))
            m_answers.front()->setFocus(Qt::OtherFocusReason);
    });
}

UnitSystem NewMachinePanel::units() const {
    constexpr UnitSystem kUnits[] = {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk};
    return kUnits[std::clamp(m_units->currentIndex(), 0, 2)];
}

}  // namespace bw
