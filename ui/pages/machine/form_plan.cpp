// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/form_plan.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/machine_fields.h"
#include "ui/kit/quantity_format.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("MachineForm", text);
}

FormGroup partsGroup() {
    return {u"parts"_s,
            words("Pump and circuit"),
            {u"pump.shutoff_pressure"_s,
             u"pump.curve"_s,
             u"pump.rated_flow"_s,
             u"pump.relief_pressure"_s,
             u"pump.least_speed"_s,
             u"pump.suction_available"_s,
             u"control_valve.flow"_s,
             u"control_valve.at"_s,
             u"control_valve.least_opening"_s,
             u"agitation.flow"_s,
             u"agitation.at"_s,
             u"losses.section.pressure"_s,
             u"losses.section.at"_s,
             u"losses.suction.pressure"_s,
             u"losses.suction.at"_s,
             u"losses.line.pressure"_s,
             u"losses.line.at"_s,
             u"losses.plumbing.pressure"_s,
             u"losses.plumbing.at"_s,
             u"restrictor.hole"_s,
             u"restrictor.discharge_coefficient"_s},
            {u"C8"_s, u"C9"_s, u"C10"_s},
            true};
}

bool isKnown(const Machine& machine, const QString& key) {
    const auto view = fieldView(machine, ss(key));
    return view && view->isKnown;
}

bool isPulsed(const Machine& m) {
    return bare(m.machineClass) == MachineClass::Pulsed || m.pulsed.pressure.has_value();
}

/// Whether the parts this machine is made of give the field a meaning.
bool hasPlace(const Machine& m, const QString& key) {
    if (key == u"restrictor.fitted"_s) return true;
    if (key.startsWith(u"restrictor."_s) || key == u"meter.minimum_narrowed"_s)
        return valueOr(m.restrictor.fitted, false);
    if (key.startsWith(u"meter."_s))
        return !m.senses || m.senses->value == Senses::Flow || m.senses->value == Senses::Both;
    if (key.startsWith(u"pulsed."_s)) return isPulsed(m);
    if (key == u"check_valve.opening_pressure"_s)
        return bare(m.checkValve.kind) == ShutOffKind::Ball;
    if (key == u"pump.shutoff_pressure"_s || key == u"pump.curve"_s)
        return bare(m.pump.kind) != PumpKind::PositiveDisplacement;
    if (key == u"pump.rated_flow"_s) return bare(m.pump.kind) != PumpKind::Centrifugal;
    if (key.startsWith(u"control_valve."_s)) return bare(m.control) != Control::PumpSpeed;
    return true;
}

}  // namespace

std::vector<FormGroup> formGroups() {
    return {{u"boom"_s,
             words("Boom, sections and nozzle bodies"),
             {u"width"_s, u"spacing"_s, u"sections"_s, u"body_positions"_s, u"sets_aboard"_s,
              u"check_valve.kind"_s, u"check_valve.opening_pressure"_s, u"section_returns"_s,
              u"tank"_s, u"boom_pipe.bore"_s, u"boom_pipe.feeds"_s, u"boom_pipe.ring"_s},
             {}},
            {u"senses"_s,
             words("What senses the rate, what changes it"),
             {u"senses"_s, u"control"_s, u"pump.kind"_s, u"pulsed.pressure"_s, u"pulsed.duty_min"_s,
              u"pulsed.duty_max"_s},
             {}},
            {u"limits"_s,
             words("Controller limits"),
             {u"limits.pressure_floor"_s, u"limits.pressure_ceiling"_s, u"limits.top_speed"_s},
             {u"C20"_s, u"C24"_s}},
            {u"meter"_s,
             words("Meter and restrictor valve"),
             {u"restrictor.fitted"_s, u"meter.minimum_full_bore"_s, u"meter.minimum_narrowed"_s,
              u"meter.maximum"_s, u"restrictor.changeover_flow"_s, u"restrictor.position"_s},
             {}},
            partsGroup(),
            {u"strainers"_s,
             words("Strainers (mesh)"),
             {u"strainers.suction.mesh"_s, u"strainers.line.mesh"_s, u"strainers.section.mesh"_s,
              u"strainers.nozzle.mesh"_s},
             {}}};
}

bool isShown(const Machine& machine, const QString& key) {
    return hasPlace(machine, key) || isKnown(machine, key);
}

Unit unitOfField(const QString& key, Dimension dimension, UnitSystem system) {
    if (key == u"spacing"_s) return smallLengthUnit(system);
    if (key == u"restrictor.hole"_s || key == u"boom_pipe.bore"_s)
        return system == UnitSystem::Us ? Unit::Inch : Unit::Millimetre;
    const bool isShare = key.startsWith(u"pulsed.duty"_s) || key.endsWith(u"least_speed"_s) ||
                         key.endsWith(u"least_opening"_s);
    if (isShare) return Unit::Percent;
    return dimension == Dimension::None ? Unit::None : displayUnit(system, dimension);
}

QString labelOf(const FarmSession& session, const Machine& machine, const QString& key) {
    std::string code = "machine.label." + ss(key);
    const auto special = code + ".restrictor";
    if (valueOr(machine.restrictor.fitted, false) && session.sentences().has(special))
        code = special;
    return qs(session.sentences().text(code));
}

QString inSentence(const QString& label) {
    return label.left(1).toLower() + label.mid(1);
}

QString whereText(const FarmSession& session, const QString& key) {
    const std::string code = "machine.where." + ss(key);
    return session.sentences().has(code) ? qs(session.sentences().text(code)) : QString();
}

QString choiceWord(const FarmSession& session, const QString& key, const QString& choice) {
    const std::string code = "machine.choice." + ss(key) + "." + ss(choice);
    return session.sentences().has(code) ? qs(session.sentences().text(code)) : choice;
}

QString fieldName(const QString& groupId, const QString& key) {
    if (key.contains(u'.')) return u"machine."_s + key;
    return u"machine."_s + groupId + u'.' + key;
}

}  // namespace bw
