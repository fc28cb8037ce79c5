// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/read_outs.h"

#include <QGridLayout>
#include <QHBoxLayout>

#include "ui/kit/metrics.h"
#include "ui/kit/quantity_format.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

/// Labels are written several times a second: only what differs is laid out again.
void write(TextLabel* label, const QString& text) {
    if (label->text() != text) label->setText(text);
}

}  // namespace

ReadOuts::ReadOuts(QWidget* parent) : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(px(12));
    grid->setVerticalSpacing(px(6));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    m_display = addField(0, 0, "display", tr("Display shows"), Role::Ink, true);
    m_ground = addField(0, 1, "ground", tr("On the ground"), Role::Ok, true);
    m_pressure = addField(1, 0, "pressure", tr("Boom pressure"), Role::Accent, false);
    m_speed = addField(1, 1, "speed", tr("Speed"), Role::Ink, false);
}

ReadOuts::Field ReadOuts::addField(int row, int column, const char* name, const QString& caption,
                                   Role role, bool isBig) {
    auto* cell = new QWidget;
    auto* lines = new QVBoxLayout(cell);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addWidget(new TextLabel(caption, TextSize::Small, Role::Quiet));
    Field out;
    out.figure = new TextLabel({}, isBig ? TextSize::Entry : TextSize::ReadOut, role, true);
    out.figure->setObjectName(u"causeEffect.read."_s + QLatin1String(name));
    out.figure->setAccessibleName(caption);
    out.beside = new TextLabel({}, TextSize::Small, Role::Quiet);
    out.beside->setObjectName(u"causeEffect.read."_s + QLatin1String(name) + u".beside"_s);
    out.beside->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    out.other = new TextLabel({}, TextSize::Small, Role::Measured, true);
    out.other->setObjectName(u"causeEffect.read."_s + QLatin1String(name) + u".other"_s);
    out.other->hide();
    lines->addWidget(out.figure);
    lines->addWidget(out.beside);
    lines->addWidget(out.other);
    static_cast<QGridLayout*>(layout())->addWidget(cell, row, column);
    return out;
}

void ReadOuts::show(const TracePoint& now, const std::optional<RunReading>& reading,
                    const TracePoint* other, const NumberStyle& style) {
    const auto rate = [&](double si) { return figure(AreaRate::fromSi(si), style); };
    const QString none = u"\u2014"_s;
    write(m_display.figure, now.isSpraying ? rate(now.shown) : none);
    write(m_ground.figure, now.isSpraying ? rate(now.real) : none);
    const QString unit = unitOf<AreaRate>(style);
    const auto beside = [&](double spread) {
        return reading && now.isSpraying
                   ? tr("%1 \u00b1%2 %").arg(unit, plainNumber(spread * 100, 1, style))
                   : unit;
    };
    write(m_display.beside, beside(reading ? reading->shown.shown.spread : 0.0));
    write(m_ground.beside, beside(reading ? reading->real.spread : 0.0));
    for (const Field& field : {m_display, m_ground}) field.other->setVisible(other);
    if (other) {
        const auto second = [&](double si) {
            return tr("second run %1").arg(other->isSpraying ? rate(si) : none);
        };
        write(m_display.other, second(other->shown));
        write(m_ground.other, second(other->real));
    }
    write(m_pressure.figure, figure(Pressure::fromSi(now.sensor), style));
    const bool readsFalse = std::abs(now.reading - now.sensor) > 1e-6 * now.sensor;
    write(m_pressure.beside,
          unitOf<Pressure>(style) +
              (readsFalse
                   ? tr(" \u00b7 gauge shows %1").arg(figure(Pressure::fromSi(now.reading), style))
                   : QString()));
    write(m_speed.figure, figure(Speed::fromSi(now.speed), style));
    write(m_speed.beside, unitOf<Speed>(style));
}

void ReadOuts::hideFigures() {
    for (const Field& field : {m_display, m_ground, m_pressure, m_speed}) {
        write(field.figure, u"?"_s);
        write(field.beside, {});
        write(field.other, {});
    }
}

}  // namespace bw
