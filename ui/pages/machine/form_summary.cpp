// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/form_summary.h"

#include <QCoreApplication>
#include <QStringList>

#include "ui/kit/quantity_format.h"
#include "ui/pages/machine/form_plan.h"
#include "ui/undo/farm_session.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("MachineForm", text);
}

QString boom(const FormView& view) {
    const Machine& m = view.machine;
    if (!m.sections) return words("sections not known");
    const auto sections = static_cast<int>(m.sections->value.size());
    QString text = sections == 1
                       ? words("%1 nozzles in 1 section").arg(nozzleCount(m))
                       : words("%1 nozzles in %2 sections").arg(nozzleCount(m)).arg(sections);
    if (m.spacing) text += u", "_s + shown(sprayedWidth(m), view.style);
    return text;
}

QString senses(const FormView& view) {
    const Machine& m = view.machine;
    QStringList parts;
    if (m.senses)
        parts.append(choiceWord(view.session, u"senses"_s, qs(choiceName(m.senses->value))));
    if (m.control)
        parts.append(choiceWord(view.session, u"control"_s, qs(choiceName(m.control->value))));
    return parts.isEmpty() ? words("not known") : parts.join(u"; "_s);
}

/// "1.6 to 7 bar", "from 1.6 bar", "up to 7 bar".
template <class Q>
QString span(const Known<Q>& from, const Known<Q>& to, const NumberStyle& style) {
    if (from && to)
        return words("%1 to %2").arg(figure(from->value, style), shown(to->value, style));
    if (from) return words("from %1").arg(shown(from->value, style));
    return to ? words("up to %1").arg(shown(to->value, style)) : QString();
}

QString limits(const FormView& view) {
    const auto& l = view.machine.limits;
    QStringList parts;
    const QString pressures = span(l.pressureFloor, l.pressureCeiling, view.style);
    if (!pressures.isEmpty()) parts.append(pressures);
    if (l.topSpeed) parts.append(shown(l.topSpeed->value, view.style));
    return parts.isEmpty() ? words("not known") : parts.join(u", "_s);
}

QString meter(const FormView& view) {
    const Machine& m = view.machine;
    QStringList parts;
    const QString flows = span(m.meter.minimumFullBore, m.meter.maximum, view.style);
    if (!flows.isEmpty()) parts.append(flows);
    if (m.restrictor.fitted)
        parts.append(m.restrictor.fitted->value ? words("restrictor valve fitted")
                                                : words("no restrictor valve"));
    return parts.isEmpty() ? words("not known") : parts.join(u"; "_s);
}

QString strainers(const FormView& view) {
    const Strainers& s = view.machine.strainers;
    QStringList parts;
    for (const auto* mesh : {&s.suctionMesh, &s.lineMesh, &s.sectionMesh, &s.nozzleMesh})
        if (*mesh) parts.append(qs(formatExact((*mesh)->value, view.style.decimalMark)));
    return parts.isEmpty() ? words("not known") : parts.join(u", "_s);
}

}  // namespace

QString groupSummary(const FormView& view, const QString& group) {
    if (group == u"boom"_s) return boom(view);
    if (group == u"senses"_s) return senses(view);
    if (group == u"limits"_s) return limits(view);
    if (group == u"meter"_s) return meter(view);
    if (group == u"strainers"_s) return strainers(view);
    return words("I know the parts");
}

}  // namespace bw
