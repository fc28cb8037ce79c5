// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/lever_panel.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "ui/kit/buttons.h"
#include "ui/kit/chart_panel.h"
#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"
#include "ui/pages/cause_effect/lever_row.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

constexpr double kMostShare = 0.8, kMostDeadBand = 20.0;  // %, of headland: a part
constexpr double kGainStep = 0.01, kMostGain = 3.0;       // strokes/s

/// A round step of which about 100 make the range.
double stepOf(double range) {
    const auto ticks = niceTicks(0.0, range, 100);
    return ticks.size() > 1 ? ticks[1] - ticks[0] : range / 100;
}

}  // namespace

LeverPanel::LeverPanel(QWidget* parent) : QWidget(parent) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(px(5));
    addDrive();
    m_target = addRow("target", tr("Target rate"), Dimension::AreaRate, Unit::LitrePerHectare);
    addSections();
    addRestrictor();
    addHead(tr("Limits of the controller"));
    m_floor = addRow("floor", tr("Pressure floor"), Dimension::Pressure, Unit::Bar);
    m_floor->setOptional(tr("none"));
    m_ceiling = addRow("ceiling", tr("Pressure ceiling"), Dimension::Pressure, Unit::Bar);
    m_ceiling->setOptional(tr("none"));
    addHead(tr("How it corrects"));
    m_gain = addRow("gain", tr("Gain, strokes a second"), Dimension::None, Unit::None);
    m_deadBand = addRow("deadBand", tr("Dead band"), Dimension::None, Unit::Percent);
    m_stability = new TextLabel({}, TextSize::Small, Role::Quiet);
    m_stability->setObjectName(u"causeEffect.stability"_s);
    column->addWidget(m_stability->wrapped());
    column->addStretch(1);
    connectRows();
}

LeverRow* LeverPanel::addRow(const char* name, const QString& label, Dimension dimension,
                             Unit unit) {
    auto* row = new LeverRow(u"causeEffect.lever."_s + QLatin1String(name), label, dimension, unit);
    layout()->addWidget(row);
    return row;
}

void LeverPanel::addHead(const QString& text) {
    layout()->addWidget(new HairLine);
    layout()->addWidget(new TextLabel(text, TextSize::Small, Role::Quiet, true));
}

void LeverPanel::addDrive() {
    m_speed = addRow("speed", tr("Speed"), Dimension::Speed, Unit::KilometrePerHour);
    m_drive = new ChoiceBox;
    m_drive->setObjectName(u"causeEffect.lever.drive"_s);
    m_drive->addItem(tr("Steady speed"), static_cast<int>(Script::Steady));
    m_drive->addItem(tr("Slow to fast in half a minute"), static_cast<int>(Script::Ramp));
    m_drive->addItem(tr("Field and headland in turn"), static_cast<int>(Script::StopGo));
    m_drive->addItem(tr("Steps: usual, slow, fast, usual"), static_cast<int>(Script::Steps));
    m_drive->setAccessibleName(tr("How the speed goes"));
    m_drive->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    layout()->addWidget(m_drive);
    m_share = addRow("share", tr("Headland at half speed: share of the field"), Dimension::None,
                     Unit::Percent);
    m_share->hide();
    connect(m_drive, &QComboBox::activated, this, [this] { tellScript(); });
}

void LeverPanel::addSections() {
    auto* row = new QWidget;
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    m_sections = new TextLabel;
    m_sections->setObjectName(u"causeEffect.lever.sections"_s);
    line->addWidget(m_sections->wrapped(), 1);
    m_allOn = new Button(tr("All on"));
    m_allOn->setObjectName(u"causeEffect.lever.allOn"_s);
    line->addWidget(m_allOn);
    layout()->addWidget(row);
    connect(m_allOn, &QAbstractButton::clicked, this, [this] {
        m_levers.isOn.assign(m_levers.isOn.size(), true);
        tell(tr("all sections on"));
    });
}

void LeverPanel::addRestrictor() {
    m_restrictorRow = new QWidget;
    auto* line = new QHBoxLayout(m_restrictorRow);
    line->setContentsMargins(0, 0, 0, 0);
    line->addWidget((new TextLabel(tr("Restrictor")))->wrapped(), 1);
    m_restrictor = new SegmentedButtons;
    m_restrictor->setObjectName(u"causeEffect.lever.restrictor"_s);
    m_restrictor->addChoice(tr("narrowed"));
    m_restrictor->addChoice(tr("full bore"));
    m_restrictor->button(0)->setObjectName(u"causeEffect.lever.narrowed"_s);
    m_restrictor->button(1)->setObjectName(u"causeEffect.lever.fullBore"_s);
    line->addWidget(m_restrictor);
    layout()->addWidget(m_restrictorRow);
    connect(m_restrictor, &SegmentedButtons::currentIndexChanged, this, [this](int index) {
        m_levers.restrictor =
            index == 0 ? RestrictorPosition::Narrowed : RestrictorPosition::FullBore;
        tell(index == 0 ? tr("restrictor narrowed") : tr("restrictor at full bore"));
    });
}

void LeverPanel::connectRows() {
    const auto words = [this](const QString& lever, auto value) {
        return u"%1 %2"_s.arg(lever, shown(value, m_style));
    };
    connect(m_speed, &LeverRow::moved, this, [=, this](AnyQuantity v) {
        m_levers.speed = Speed::fromSi(v.si);
        tell(words(tr("speed"), m_levers.speed));
    });
    connect(m_target, &LeverRow::moved, this, [=, this](AnyQuantity v) {
        m_levers.target = AreaRate::fromSi(v.si);
        tell(words(tr("target"), m_levers.target));
    });
    connect(m_floor, &LeverRow::moved, this, [=, this](AnyQuantity v) {
        m_levers.floor = Pressure::fromSi(v.si);
        tell(words(tr("floor"), *m_levers.floor));
    });
    connect(m_floor, &LeverRow::cleared, this, [this] {
        m_levers.floor.reset();
        tell(tr("no floor"));
    });
    connect(m_ceiling, &LeverRow::moved, this, [=, this](AnyQuantity v) {
        m_levers.ceiling = Pressure::fromSi(v.si);
        tell(words(tr("ceiling"), *m_levers.ceiling));
    });
    connect(m_ceiling, &LeverRow::cleared, this, [this] {
        m_levers.ceiling.reset();
        tell(tr("no ceiling"));
    });
    connect(m_gain, &LeverRow::moved, this, [this](AnyQuantity v) {
        m_levers.gain = v.si;
        tell(tr("gain %1").arg(plainNumber(v.si, 2, m_style)));
    });
    connect(m_deadBand, &LeverRow::moved, this, [this](AnyQuantity v) {
        m_levers.deadBand = v.si;
        tell(tr("dead band %1 %").arg(plainNumber(v.si * 100, 1, m_style)));
    });
    connect(m_share, &LeverRow::moved, this, [this](AnyQuantity) { tellScript(); });
}

void LeverPanel::tell(const QString& words) {
    const Levers levers = m_levers;
    Q_EMIT changed(levers, words);
}

void LeverPanel::tellScript() {
    const auto script = static_cast<Script>(m_drive->currentData().toInt());
    Q_EMIT scriptChosen(script, m_share->value().value_or(AnyQuantity{}).si,
                        m_drive->currentText());
}

void LeverPanel::setRun(const Run& run, const NumberStyle& style) {
    m_style = style;
    const Levers& home = run.asEntered();
    const auto ready = [&](LeverRow* row, Dimension dimension, double most, auto quantity) {
        const Unit unit = displayUnit(style.units, dimension);
        row->setStyle(style, unit);
        const double step = stepOf(most / info(unit).inSi);
        row->setRange(0.0, most / info(unit).inSi, step);
        row->setHome(quantity);
    };
    const auto any = [](const auto& value) { return std::optional(anyQuantity(value)); };
    const auto anyOr = [](const std::optional<Pressure>& p) {
        return p ? std::optional(anyQuantity(*p)) : std::nullopt;
    };
    ready(m_speed, Dimension::Speed, 1.5 * std::max(run.demand().fast, home.speed).si(),
          any(home.speed));
    ready(m_target, Dimension::AreaRate, 2.5 * home.target.si(), any(home.target));
    const double pressure = 1.4 * std::max({home.ceiling.value_or(Pressure{}).si(),
                                            home.floor.value_or(Pressure{}).si(),
                                            1.5 * run.healthy().need.sensor.si()});
    ready(m_floor, Dimension::Pressure, pressure, anyOr(home.floor));
    ready(m_ceiling, Dimension::Pressure, pressure, anyOr(home.ceiling));
    m_gain->setStyle(style, Unit::None);
    m_gain->setRange(0.0, std::max(kMostGain, 2 * home.gain), kGainStep);
    m_gain->setHome(anyQuantity(home.gain));
    m_deadBand->setStyle(style, Unit::Percent);
    m_deadBand->setRange(0.0, kMostDeadBand, 0.5);
    m_deadBand->setBounds(0.0, 100.0);
    m_deadBand->setHome(anyQuantity(home.deadBand));
    m_share->setStyle(style, Unit::Percent);
    m_share->setRange(5, 100 * kMostShare, 5);
    m_share->setBounds(1, 100 * kMostShare);
    m_share->setHome(anyQuantity(Run::kShare));
    m_restrictorRow->setVisible(run.healthy().restrictor.isFitted);
    setLevers(run);
}

void LeverPanel::setLevers(const Run& run) {
    m_levers = run.levers();
    const QSignalBlocker quiet(m_restrictor);
    m_speed->setValue(anyQuantity(m_levers.speed));
    m_target->setValue(anyQuantity(m_levers.target));
    m_floor->setValue(m_levers.floor ? std::optional(anyQuantity(*m_levers.floor)) : std::nullopt);
    m_ceiling->setValue(m_levers.ceiling ? std::optional(anyQuantity(*m_levers.ceiling))
                                         : std::nullopt);
    m_gain->setValue(anyQuantity(m_levers.gain));
    m_deadBand->setValue(anyQuantity(m_levers.deadBand));
    m_share->setValue(anyQuantity(run.headlandShare()));
    m_share->setVisible(run.script() == Script::StopGo);
    m_drive->setCurrentData(static_cast<int>(run.script()));
    m_restrictor->setCurrentIndex(m_levers.restrictor == RestrictorPosition::Narrowed ? 0 : 1);
    const auto on = std::count(m_levers.isOn.begin(), m_levers.isOn.end(), true);
    m_sections->setText(tr("Sections: %1 of %2 on").arg(on).arg(m_levers.isOn.size()));
    m_allOn->setEnabled(on < static_cast<std::ptrdiff_t>(m_levers.isOn.size()));
}

void LeverPanel::setStability(const QString& words) {
    if (m_stability->text() != words) m_stability->setText(words);
}

}  // namespace bw
