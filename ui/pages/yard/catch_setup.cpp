// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/yard/catch_setup.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/hydraulics/nozzle_law.h"
#include "core/model/nozzle_sizes.h"
#include "core/yard/catch_picture.h"
#include "core/yard/catch_record.h"
#include "ui/kit/buttons.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_edit.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/yard/yard_words.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// A usual catch time to begin with, common practice, no source; people set their own.
constexpr double kUsualSeconds = 30.0;
constexpr CatchScope kScopes[] = {CatchScope::All, CatchScope::EverySixth, CatchScope::Section};

std::optional<AnyQuantity> part(double of) {
    return AnyQuantity{Dimension::None, of};
}

}  // namespace

CatchSetup::CatchSetup(FarmSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_set(new ChoiceBox),
      m_scope(new SegmentedButtons),
      m_section(new ChoiceBox),
      m_direction(new SegmentedButtons),
      m_newFlow(new TextLabel({}, TextSize::Small, Role::Quiet)),
      m_tooShort(new TextLabel({}, TextSize::Small, Role::Limit)),
      m_notYet(new TextLabel({}, TextSize::Small, Role::Limit)),
      m_start(new Button(tr("Start catching"), u"right"_s, Button::Kind::Primary)) {
    build();
}

void CatchSetup::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(8));
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(px(12));
    grid->setVerticalSpacing(px(8));
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(3, 1);
    column->addLayout(grid);
    buildWhat(grid);
    buildWhich(grid);
    buildLimits(grid);
    m_notYet->setObjectName(u"yard.catch.notYet"_s);
    column->addWidget(m_notYet->wrapped());
    m_start->setObjectName(u"yard.catch.start"_s);
    connect(m_start, &QAbstractButton::clicked, this, [this] {
        if (commitPending() && m_start->isEnabled()) Q_EMIT startWanted();
    });
}

QuantityEdit* CatchSetup::addQuantity(const QString& name, const QString& label,
                                      Dimension dimension, QGridLayout* grid, int row, int column) {
    auto* edit = new QuantityEdit(dimension, displayUnit(UnitSystem::Metric, dimension));
    edit->setObjectName(u"yard.catch."_s + name);
    edit->line()->setObjectName(u"yard.catch."_s + name + u".line"_s);
    edit->setLabel(label);
    auto* words = new TextLabel(label);
    words->setBuddy(edit);
    grid->addWidget(words, row, column, Qt::AlignVCenter);
    grid->addWidget(edit, row, column + 1, Qt::AlignVCenter);
    connect(edit, &QuantityEdit::committed, this, [this] { showSums(); });
    connect(edit, &QuantityEdit::cleared, this, [this] { showSums(); });
    connect(edit->line(), &QLineEdit::returnPressed, this, [this, edit] {
        if (!edit->line()->isModified())
            edit->line()->nextInFocusChain()->setFocus(Qt::TabFocusReason);
    });
    return edit;
}

void CatchSetup::buildWhat(QGridLayout* grid) {
    m_set->setObjectName(u"yard.catch.set"_s);
    m_set->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_set->setMinimumContentsLength(10);
    m_set->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_set->setAccessibleName(tr("Nozzle set"));
    auto* label = new TextLabel(tr("Nozzle set"));
    label->setBuddy(m_set);
    grid->addWidget(label, 0, 0);
    grid->addWidget(m_set, 0, 1, 1, 3);
    m_pressure =
        addQuantity(u"pressure"_s, tr("Pressure at the nozzle"), Dimension::Pressure, grid, 1, 0);
    m_time = addQuantity(u"time"_s, tr("Time of each catch"), Dimension::Duration, grid, 1, 2);
    m_time->setOptional(false);
    m_time->setBounds(AnyQuantity{Dimension::Duration, 1.0}, std::nullopt);
    m_time->setQuantity(AnyQuantity{Dimension::Duration, kUsualSeconds});
    m_newFlow->setObjectName(u"yard.catch.newFlow"_s);
    m_tooShort->setObjectName(u"yard.catch.tooShort"_s);
    grid->addWidget(m_newFlow->wrapped(), 2, 0, 1, 4);
    grid->addWidget(m_tooShort->wrapped(), 3, 0, 1, 4);
    connect(m_set, &QComboBox::activated, this, [this] { showSums(); });
}

void CatchSetup::buildWhich(QGridLayout* grid) {
    m_count = addQuantity(u"count"_s, tr("Nozzles on the boom"), Dimension::None, grid, 4, 0);
    m_count->setBounds(AnyQuantity{Dimension::None, 1.0}, AnyQuantity{Dimension::None, 1000.0});
    m_countLabel = qobject_cast<TextLabel*>(grid->itemAtPosition(4, 0)->widget());
    m_scope->setObjectName(u"yard.catch.scope"_s);
    m_scope->setAccessibleName(tr("Which nozzles"));
    const QString names[] = {tr("all"), tr("every sixth"), tr("one section")};
    for (const QString& name : names) {
        const int index = m_scope->addChoice(name);
        m_scope->button(index)->setObjectName(u"yard.catch.scope.%1"_s.arg(index));
    }
    m_section->setObjectName(u"yard.catch.section"_s);
    m_section->setAccessibleName(tr("Section"));
    auto* row = new QHBoxLayout;
    row->setSpacing(px(8));
    row->addWidget(m_scope);
    row->addWidget(m_section);
    row->addStretch(1);
    grid->addWidget(new TextLabel(tr("Catch")), 5, 0);
    grid->addLayout(row, 5, 1, 1, 3);
    m_direction->setObjectName(u"yard.catch.direction"_s);
    m_direction->setAccessibleName(tr("Begin at"));
    const QString ends[] = {tr("the left end"), tr("the right end")};
    for (const QString& end : ends) {
        const int index = m_direction->addChoice(end);
        m_direction->button(index)->setObjectName(u"yard.catch.direction.%1"_s.arg(index));
    }
    grid->addWidget(new TextLabel(tr("Begin at")), 6, 0);
    grid->addWidget(m_direction, 6, 1, 1, 3, Qt::AlignLeft);
    connect(m_scope, &SegmentedButtons::currentIndexChanged, this, [this] { showSums(); });
}

void CatchSetup::buildLimits(QGridLayout* grid) {
    m_ofMean = addQuantity(u"ofMean"_s, tr("Limit, off the mean"), Dimension::None, grid, 7, 0);
    m_ofNew = addQuantity(u"ofNew"_s, tr("Limit, over a new one"), Dimension::None, grid, 7, 2);
    for (QuantityEdit* edit : {m_ofMean, m_ofNew}) {
        edit->setUnit(Unit::Percent);
        edit->setOptional(false);
        edit->setBounds(part(0.001), part(1.0));
    }
    m_ofMean->setQuantity(part(CatchLimits{}.ofMean));
    m_ofNew->setQuantity(part(CatchLimits{}.ofNew));
}

const Machine* CatchSetup::machine() const {
    return m_session.machine(m_machineId);
}

NumberStyle CatchSetup::style() const {
    return machine() ? m_session.styleOf(*machine()) : m_session.currentStyle();
}

void CatchSetup::fillSets(const Machine& machine) {
    const QString before = m_set->currentData().toString();
    m_set->clear();
    QStringList names;
    for (const auto& set : machine.setsAboard) names << qs(set.nozzle);
    const auto aboard = names.size();
    for (const auto& stored : m_session.season().nozzles) names << qs(stored.nozzle.name);
    for (const auto& nozzle : builtInNozzles()) names << qs(nozzle.name);
    names.removeDuplicates();
    for (qsizetype i = 0; i < names.size(); ++i) {
        m_set->addItem(i < aboard ? tr("%1 (aboard)").arg(names[i]) : names[i], names[i]);
        m_set->setItemData(static_cast<int>(i), names[i], Qt::ToolTipRole);
    }
    m_set->addItem(tr("another one, its flow is not known"), QString());
    const int kept = before.isEmpty() ? -1 : m_set->findData(before);
    m_set->setCurrentIndex(std::max(0, kept));
}

void CatchSetup::fillScope(const Machine& machine) {
    const int before = std::max(0, m_section->currentIndex());
    m_section->clear();
    int start = 1;
    const auto sections = bare(machine.sections).value_or(std::vector<int>{});
    for (std::size_t i = 0; i < sections.size(); ++i) {
        m_section->addItem(
            tr("section %1: %2 to %3").arg(i + 1).arg(start).arg(start + sections[i] - 1));
        start += sections[i];
    }
    m_section->setCurrentIndex(std::min(before, m_section->count() - 1));
    const bool isKnown = !sections.empty();
    m_count->setVisible(!isKnown);
    m_countLabel->setVisible(!isKnown);
    m_scope->button(2)->setEnabled(isKnown);
}

void CatchSetup::present(RecordId machineId) {
    const bool isOther = machineId != m_machineId;
    m_machineId = machineId;
    const Machine* now = machine();
    if (!now) return;
    if (isOther) m_set->clear();
    for (QuantityEdit* edit : {m_pressure, m_time}) edit->setNumberStyle(style());
    for (QuantityEdit* edit : {m_count, m_ofMean, m_ofNew})
        edit->setDecimalMark(style().decimalMark);
    fillSets(*now);
    fillScope(*now);
    showSums();
}

CatchTest CatchSetup::test() const {
    CatchTest out;
    const Machine* now = machine();
    if (!now) return out;
    out.set = ss(m_set->currentData().toString());
    if (const auto pressure = m_pressure->value<Pressure>()) {
        out.pressure = Sourced<Pressure>(*pressure, Origin::Measured);
        out.pressure->typed = ss(m_pressure->typed());
        out.pressure->date = ss(m_session.now().toString(u"yyyy-MM-dd"_s));
        const Nozzle* nozzle = m_session.nozzleNamed(out.set);
        if (nozzle) {
            const auto law = nozzleLaw(*nozzle);
            const Origin origin = nozzle->flow ? nozzle->flow->origin : Origin::Handbook;
            if (law && pressure->si() > 0)
                out.newFlow = Sourced<Flow>(law->flow(*pressure), origin);
        }
    }
    out.time = m_time->value<Duration>().value_or(Duration{});
    out.scope = kScopes[std::max(0, m_scope->currentIndex())];
    out.section = std::max(0, m_section->currentIndex());
    out.sections = bare(now->sections).value_or(std::vector<int>{});
    if (out.sections.empty() && m_count->quantity())
        out.sections = {static_cast<int>(std::lround(m_count->quantity()->si))};
    if (const auto limit = m_ofMean->quantity()) out.limitOfMean = limit->si;
    if (const auto limit = m_ofNew->quantity()) out.limitOfNew = limit->si;
    return out;
}

bool CatchSetup::isFromRight() const {
    return m_direction->currentIndex() == 1;
}

void CatchSetup::showSums() {
    const CatchTest now = test();
    m_section->setVisible(now.scope == CatchScope::Section);
    QString fresh =
        tr("Without the pressure, or a nozzle whose flow is known, nozzles are compared "
           "with the mean alone.");
    m_tooShort->hide();
    if (now.newFlow) {
        const Flow flow = now.newFlow->value;
        fresh = tr("A new one gives %1 there").arg(shown(flow, style()));
        if (now.time.si() > 0)
            fresh +=
                tr(": %1 in %2.")
                    .arg(shownIn(anyQuantity(flow * now.time), jugUnit(style().units), style()),
                         shown(now.time, style()));
        const Duration least = leastCatchTime(flow, flow, now.limitOfMean);
        if (now.time < least) {
            m_tooShort->setText(tr("Jug and watch cannot tell %1 so soon: catch for %2 s or more.")
                                    .arg(percent(now.limitOfMean, style()))
                                    .arg(std::ceil(least.si())));
            m_tooShort->show();
        }
    }
    m_newFlow->setText(fresh);
    const auto count = nozzlesToCatch(now).size();
    m_start->setText(tr("Start catching (%1)").arg(count));
    m_start->setEnabled(count > 0 && now.time.si() > 0);
    m_notYet->setText(tr("How many nozzles are on the boom?"));
    m_notYet->setVisible(count == 0);
}

bool CatchSetup::commitPending() {
    bool isFine = true;
    for (QuantityEdit* edit : {m_pressure, m_time, m_count, m_ofMean, m_ofNew})
        isFine = edit->commitPending() && isFine;
    return isFine;
}

void CatchSetup::takeFocus() {
    m_pressure->setFocus(Qt::OtherFocusReason);
}

}  // namespace bw
