// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/fault_finder/numbers_form.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>
#include <cmath>

#include "core/diagnosis/case_numbers.h"
#include "core/diagnosis/findings.h"
#include "core/model/nozzle_sizes.h"
#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr UnitSystem kSystems[] = {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk};
constexpr Senses kSenses[] = {Senses::Flow, Senses::Pressure, Senses::Nothing};

/// A reading of the case's list, or nothing.
const Observation* readingOf(const CaseRecord& record, std::string_view check) {
    for (const auto& observation : record.observations) {
        if (observation.check == check && observation.reading) return &observation;
    }
    return nullptr;
}

void showReading(QuantityEdit* edit, const CaseRecord& record, std::string_view check) {
    const Observation* known = readingOf(record, check);
    if (known)
        edit->setQuantity(known->reading, qs(known->typed));
    else
        edit->setQuantity(std::nullopt);
}

void write(const QuantityEdit* edit, CaseRecord& record, std::string_view check) {
    std::erase_if(record.observations, [&](const Observation& observation) {
        return observation.check == check && observation.reading && !edit->quantity();
    });
    if (!edit->quantity()) return;
    observe(record, {std::string(check), {}, edit->quantity(), ss(edit->typed())});
}

template <class Q>
Known<Q> known(const QuantityEdit* edit) {
    const auto value = edit->value<Q>();
    if (!value) return std::nullopt;
    Sourced<Q> sourced(*value);
    sourced.typed = ss(edit->typed());
    return sourced;
}

const Nozzle* nozzleOfSize(const QString& name) {
    for (const auto& nozzle : builtInNozzles()) {
        if (qs(nozzle.name) == name) return &nozzle;
    }
    return nullptr;
}

}  // namespace

NumbersForm::NumbersForm(QWidget* parent) : QWidget(parent) {
    build();
}

void NumbersForm::build() {
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    outer->addWidget(scroll);
    auto* paper = new RolePanel(Role::Raised);
    scroll->setWidget(paper);
    auto* column = new QVBoxLayout(paper);
    column->setContentsMargins(px(18), px(10), px(18), px(12));
    column->setSpacing(px(9));
    m_title = new TextLabel({}, TextSize::Verdict, Role::Ink, true);
    m_title->setObjectName(u"finder.numbers.title"_s);
    column->addWidget(m_title->wrapped());
    m_intro = new TextLabel;
    column->addWidget(m_intro->wrapped());
    auto* caution = new CautionBox;
    caution->setObjectName(u"finder.numbers.caution"_s);
    column->addWidget(caution);
    caution->setTexts(cautionTexts({u"C7"_s}));
    m_grid = new QGridLayout;
    m_grid->setHorizontalSpacing(px(12));
    m_grid->setVerticalSpacing(px(6));
    m_grid->setColumnStretch(1, 1);
    m_grid->setColumnStretch(3, 1);
    column->addLayout(m_grid);
    m_done = new Button(tr("Next"), u"right"_s, Button::Kind::Primary);
    m_done->setObjectName(u"finder.numbers.next"_s);
    m_done->installEventFilter(this);
    connect(m_done, &QAbstractButton::clicked, this, [this] {
        commitAll();
        Q_EMIT finished();
    });
    m_units = addChoices(u"units"_s, tr("Units"), {tr("metric"), tr("US"), tr("UK")});
    m_width = addQuantity(u"width"_s, tr("Working width"), Dimension::Length, true);
    m_count = addQuantity(u"count"_s, tr("or nozzles on it"), Dimension::None, true);
    m_spacing = addQuantity(u"spacing"_s, tr("Nozzle spacing"), Dimension::Length, true);
    m_size = addSizes();
    m_senses = addChoices(u"senses"_s, tr("Rate is sensed by"),
                          {tr("meter"), tr("pressure"), tr("by hand")});
    m_pulsed = addChoices(u"pulsed"_s, tr("Pulsed nozzles"), {tr("no"), tr("yes")});
    m_rate = addQuantity(u"target"_s, tr("Target rate"), Dimension::AreaRate, false);
    m_speed = addQuantity(u"speed"_s, tr("Speed there"), Dimension::Speed, false);
    m_shownRate = addQuantity(u"shownRate"_s, tr("Shown rate"), Dimension::AreaRate, false);
    m_shownFlow = addQuantity(u"shownFlow"_s, tr("Shown flow"), Dimension::Flow, false);
    m_pressure = addQuantity(u"pressure"_s, tr("Boom pressure"), Dimension::Pressure, false);
    column->addWidget(m_done, 0, Qt::AlignRight);
    column->addStretch(1);
    connect(m_units, &SegmentedButtons::currentIndexChanged, this,
            [this](int index) { Q_EMIT unitsChosen(kSystems[index]); });
}

void NumbersForm::addRow(const QString& label, QWidget* control, bool callerOnly) {
    auto* text = new TextLabel(label);
    text->setBuddy(control);
    if (control->accessibleName().isEmpty()) control->setAccessibleName(label);
    // Owned from the start: a call that never comes to the numbers places no rows.
    for (QWidget* widget : {static_cast<QWidget*>(text), control}) {
        widget->setParent(m_grid->parentWidget());
        widget->hide();
    }
    m_rows.push_back({text, control, callerOnly});
}

QuantityEdit* NumbersForm::addQuantity(const QString& name, const QString& label,
                                       Dimension dimension, bool callerOnly) {
    auto* edit = new QuantityEdit(dimension, displayUnit(UnitSystem::Metric, dimension));
    edit->setObjectName(u"finder.numbers."_s + name);
    edit->line()->setObjectName(u"finder.numbers."_s + name + u".line"_s);
    edit->setLabel(label);
    edit->setMinimumWidth(px(110));
    edit->line()->setMinimumWidth(px(110));
    connect(edit->line(), &QLineEdit::returnPressed, this, [this, edit] {
        if (!edit->hasProblem()) next(edit);
    });
    addRow(label, edit, callerOnly);
    return edit;
}

SegmentedButtons* NumbersForm::addChoices(const QString& name, const QString& label,
                                          const QStringList& choices) {
    auto* box = new SegmentedButtons;
    box->setObjectName(u"finder.numbers."_s + name);
    for (const QString& choice : choices) {
        const int index = box->addChoice(choice);
        box->button(index)->setObjectName(u"finder.numbers.%1.%2"_s.arg(name).arg(index));
        box->button(index)->installEventFilter(this);
    }
    addRow(label, box, true);
    return box;
}

ChoiceBox* NumbersForm::addSizes() {
    auto* box = new ChoiceBox;
    box->setObjectName(u"finder.numbers.size"_s);
    box->installEventFilter(this);
    addRow(tr("Nozzle size"), box, true);
    return box;
}

void NumbersForm::placeRows() {
    int place = 0;
    QWidget* before = nullptr;
    for (const auto& row : m_rows) {
        const bool isIn = m_isCaller || !row.callerOnly;
        row.label->setVisible(isIn);
        row.control->setVisible(isIn);
        if (!isIn) continue;
        const bool isWide = !qobject_cast<QuantityEdit*>(row.control);
        if (isWide) place += place % 2;
        m_grid->addWidget(row.label, place / 2, place % 2 * 2, Qt::AlignVCenter);
        m_grid->addWidget(row.control, place / 2, place % 2 * 2 + 1, 1, isWide ? 3 : 1);
        place += isWide ? 2 : 1;
        if (before) setTabOrder(before, row.control);
        before = row.control;
    }
    if (before) setTabOrder(before, m_done);
}

void NumbersForm::setRecord(const CaseRecord& record, const NumberStyle& style) {
    m_isCaller = record.machineId == 0;
    m_style = style;
    const auto* system = std::find(std::begin(kSystems), std::end(kSystems), style.units);
    {
        const QSignalBlocker quiet(m_units);
        m_units->setCurrentIndex(static_cast<int>(system - std::begin(kSystems)));
    }
    for (QuantityEdit* edit : {m_width, m_rate, m_speed, m_shownRate, m_shownFlow, m_pressure})
        edit->setNumberStyle(style);
    m_count->setDecimalMark(style.decimalMark);
    m_spacing->setDecimalMark(style.decimalMark);
    m_spacing->setUnit(smallLengthUnit(style.units));
    m_width->setKnown(record.machine.width);
    m_spacing->setKnown(record.machine.spacing);
    m_rate->setKnown(record.job.rate);
    const int count = nozzleCount(record.machine);
    const bool isOwnCount = count > 0 && !record.machine.width;
    m_count->setQuantity(isOwnCount ? std::optional(anyQuantity(static_cast<double>(count)))
                                    : std::nullopt);
    m_size->clear();
    m_size->addItem(tr("not known"), QString());
    const bool us = style.units == UnitSystem::Us;
    for (const auto& nozzle : builtInNozzles()) {
        if (qs(nozzle.name).contains(us ? u"US"_s : u"metric"_s))
            m_size->addItem(qs(nozzle.name), qs(nozzle.name));
    }
    m_size->setCurrentIndex(std::max(0, m_size->findData(qs(record.nozzle.name))));
    for (int i = 0; i < 3; ++i) {
        if (record.machine.senses && record.machine.senses->value == kSenses[i])
            m_senses->setCurrentIndex(i);
    }
    const bool pulsed =
        record.machine.machineClass && record.machine.machineClass->value == MachineClass::Pulsed;
    m_pulsed->setCurrentIndex(pulsed ? 1 : 0);
    showReading(m_speed, record, kSpeedRead);
    showReading(m_shownRate, record, choiceName(Reading::ShownRate));
    showReading(m_shownFlow, record, choiceName(Reading::ShownFlow));
    showReading(m_pressure, record, choiceName(Reading::SensorPressure));
    m_title->setText(m_isCaller ? tr("What does the caller know of the machine?")
                                : tr("What does the display show while it is wrong?"));
    m_intro->setText(tr("Enter goes on; skip what nobody knows. A figure may carry its own unit."));
    placeRows();
}

void NumbersForm::writeCaller(CaseRecord& record) const {
    record.machine.units = kSystems[std::max(0, m_units->currentIndex())];
    record.machine.width = known<Length>(m_width);
    record.machine.spacing = known<Length>(m_spacing);
    std::optional<int> count;
    if (const auto given = m_count->quantity()) count = static_cast<int>(std::lround(given->si));
    takeNozzleCount(record.machine, count);
    record.machine.senses = Sourced<Senses>(kSenses[std::max(0, m_senses->currentIndex())]);
    record.machine.machineClass.reset();
    if (m_pulsed->currentIndex() == 1)
        record.machine.machineClass = Sourced<MachineClass>(MachineClass::Pulsed);
    record.job.usual = known<Speed>(m_speed);
    const Nozzle* nozzle = nozzleOfSize(m_size->currentData().toString());
    record.nozzle = nozzle ? *nozzle : Nozzle{};
}

void NumbersForm::writeInto(CaseRecord& record) const {
    if (record.machineId == 0) writeCaller(record);
    const auto rate = known<AreaRate>(m_rate);
    if (bare(rate) != bare(record.job.rate)) record.job.rate = rate;
    if (!record.job.usual) record.job.usual = known<Speed>(m_speed);
    write(m_speed, record, kSpeedRead);
    write(m_shownRate, record, choiceName(Reading::ShownRate));
    write(m_shownFlow, record, choiceName(Reading::ShownFlow));
    write(m_pressure, record, choiceName(Reading::SensorPressure));
}

bool NumbersForm::asksFor(std::string_view check) {
    return check == kSpeedRead || check == choiceName(Reading::ShownRate) ||
           check == choiceName(Reading::ShownFlow) || check == choiceName(Reading::SensorPressure);
}

void NumbersForm::commitAll() const {
    for (const auto& row : m_rows) {
        if (auto* edit = qobject_cast<QuantityEdit*>(row.control)) edit->commitPending();
    }
}

void NumbersForm::takeFocus() {
    for (const auto& row : m_rows) {
        const bool isIn = m_isCaller || !row.callerOnly;
        if (!isIn) continue;
        auto* choices = qobject_cast<SegmentedButtons*>(row.control);
        QWidget* target = choices ? choices->button(choices->currentIndex()) : row.control;
        return target->setFocus(Qt::OtherFocusReason);
    }
}

void NumbersForm::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    takeFocus();
}

void NumbersForm::next(QWidget* after) {
    bool isPast = false;
    for (const auto& row : m_rows) {
        if (isPast && (m_isCaller || !row.callerOnly)) {
            auto* choices = qobject_cast<SegmentedButtons*>(row.control);
            QWidget* target = choices ? choices->button(choices->currentIndex()) : row.control;
            return target->setFocus(Qt::TabFocusReason);
        }
        isPast = isPast || row.control == after || row.control->isAncestorOf(after);
    }
    m_done->setFocus(Qt::TabFocusReason);
}

bool NumbersForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key != Qt::Key_Return && key != Qt::Key_Enter) return false;
    if (watched == m_done)
        m_done->click();
    else
        next(static_cast<QWidget*>(watched));
    return true;
}

}  // namespace bw
