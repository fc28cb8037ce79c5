// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/start_values.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "core/base/csv_text.h"
#include "core/base/resource.h"
#include "core/model/machine_fields.h"
#include "core/units/parse.h"

namespace bw {
namespace {

/// Number and unit as they stand in the table, "0.5 bar"; a choice or a plain number by itself.
std::string withUnit(std::string_view value, std::string_view unit) {
    std::string text(value);
    if (!text.empty() && !unit.empty()) text.append(" ").append(unit);
    return text;
}

std::vector<StartValue> readStartValues() {
    const CsvTable csv = parseCsv(resource("data/start_values.csv"));
    std::vector<StartValue> out;
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        const auto cell = [&](std::string_view column) { return csv.at(row, column); };
        StartValue start;
        start.machineClass = choiceFor<MachineClass>(cell("class"));
        start.units = unitSystemFor(cell("units"));
        start.key = cell("key");
        start.value = withUnit(cell("value"), cell("unit"));
        start.from = withUnit(cell("from"), cell("unit"));
        start.to = withUnit(cell("to"), cell("unit"));
        start.use = choiceFor<StartUse>(cell("use")).value_or(StartUse::Ask);
        start.source = cell("source");
        out.push_back(std::move(start));
    }
    return out;
}

std::optional<AnyQuantity> quantityOf(const std::string& text, const FieldView& view) {
    if (text.empty()) return std::nullopt;
    const auto read = parseQuantity(text, view.dimension, Unit::None, DecimalMarks::PointOnly);
    return read ? std::optional(read->quantity) : std::nullopt;
}

/// Puts a start value into its field, marked assumed.
bool put(Machine& machine, const StartValue& start) {
    const auto view = fieldView(machine, start.key);
    assert(view.has_value());
    if (!view || start.value.empty()) return false;
    if (view->kind == FieldKind::Choice) {
        if (!setField(machine, start.key, start.value)) return false;
        return setFieldOrigin(machine, start.key, Origin::Assumed);
    }
    const auto value = quantityOf(start.value, *view);
    if (!value || !setField(machine, start.key, *value, start.value)) return false;
    setFieldOrigin(machine, start.key, Origin::Assumed);
    const auto from = quantityOf(start.from, *view);
    const auto to = quantityOf(start.to, *view);
    if (from && to) setFieldRange(machine, start.key, *from, *to);
    return true;
}

/// Stirring takes 2 to 3 % of the tank a minute: a grains-research manual, Australia (as read).
bool assumeAgitation(Machine& machine) {
    if (!machine.tank) return false;
    const Flow all = machine.tank->value / make<Duration>(1, Unit::Minute);
    Sourced<Flow> flow(all * 0.025, Origin::Assumed);
    flow.from = all * 0.02;
    flow.to = all * 0.03;
    machine.agitation.flow = flow;
    return true;
}

/// The nozzle with the widest hole of those whose flow is known (square-root law); null without
/// one.
const Nozzle* largestOf(const std::vector<Nozzle>& nozzles) {
    const Nozzle* largest = nullptr;
    double most = 0.0;
    for (const Nozzle& nozzle : nozzles) {
        if (!nozzle.flow || !nozzle.at || !(nozzle.at->value.si() > 0)) continue;
        const double size = nozzle.flow->value.si() / std::sqrt(nozzle.at->value.si());
        if (size > most) largest = &nozzle;
        most = std::max(most, size);
    }
    return largest;
}

/// The field still holds what was assumed for the class. Start values of a class are choices.
bool holds(const Machine& machine, const StartValue& start) {
    const auto view = fieldView(machine, start.key);
    return view && view->isKnown && view->origin == Origin::Assumed && view->choice == start.value;
}

}  // namespace

const std::vector<StartValue>& startValues() {
    static const std::vector<StartValue> values = readStartValues();
    return values;
}

const StartValue* startValue(const Machine& machine, std::string_view key) {
    const auto found =
        std::find_if(startValues().begin(), startValues().end(), [&](const StartValue& start) {
            return start.key == key &&
                   (!start.machineClass || start.machineClass == bare(machine.machineClass)) &&
                   (!start.units || start.units == machine.units);
        });
    return found == startValues().end() ? nullptr : &*found;
}

bool takeStartValue(Machine& machine, std::string_view key) {
    clearField(machine, key);
    if (key == "agitation.flow") return assumeAgitation(machine);
    const StartValue* start = startValue(machine, key);
    const bool isMeant = start && (start->use == StartUse::Class || start->use == StartUse::Ask);
    return isMeant && put(machine, *start);
}

bool assumeSectionLoss(Machine& machine, const Nozzle& nozzle) {
    if (nozzleCount(machine) <= 0 || !nozzle.flow || !nozzle.at) return false;
    const auto& sections = machine.sections->value;
    const int most = *std::max_element(sections.begin(), sections.end());
    Sourced<Pressure> loss(nozzle.at->value * 0.05, Origin::Assumed);
    loss.from = Pressure{};
    loss.to = nozzle.at->value * 0.10;
    machine.losses.section.pressure = loss;
    machine.losses.section.at = Sourced<Flow>(nozzle.flow->value * most, Origin::Assumed);
    return true;
}

void assumePumpFlow(Machine& machine, Flow plate) {
    Sourced<Flow> flow(plate * 0.85, Origin::Assumed);
    flow.from = plate * 0.70;
    flow.to = plate;
    machine.pump.ratedFlow = flow;
}

bool assumeSlowSpeed(Job& job) {
    if (job.slow || !job.usual) return false;
    Sourced<Speed> slow(job.usual->value * 0.6, Origin::Assumed);
    slow.from = job.usual->value * 0.4;
    slow.to = job.usual->value * 0.8;
    job.slow = slow;
    return true;
}

std::vector<std::string> completeProfile(Machine& machine, const std::vector<Nozzle>& aboard) {
    std::vector<std::string> filled;
    const auto take = [&](const char* key) {
        if (fieldView(machine, key)->isKnown || !takeStartValue(machine, key)) return;
        filled.emplace_back(key);
    };
    if (bare(machine.checkValve.kind) == ShutOffKind::Ball) take("check_valve.opening_pressure");
    take("agitation.flow");
    if (machine.agitation.flow) take("agitation.at");
    if (bare(machine.machineClass) == MachineClass::Pulsed) {
        for (const char* key : {"pulsed.pressure", "pulsed.duty_min", "pulsed.duty_max"}) take(key);
    }
    const Nozzle* largest = largestOf(aboard);
    const bool isLossKnown = machine.losses.section.pressure || machine.losses.section.at;
    if (!isLossKnown && largest && assumeSectionLoss(machine, *largest)) {
        filled.emplace_back("losses.section.pressure");
        filled.emplace_back("losses.section.at");
    }
    return filled;
}

std::vector<std::string> takeClass(Machine& machine, MachineClass machineClass, Origin origin) {
    for (const StartValue& start : startValues()) {
        if (start.use == StartUse::Class && startValue(machine, start.key) == &start &&
            holds(machine, start))
            clearField(machine, start.key);
    }
    machine.machineClass = Sourced<MachineClass>(machineClass, origin);
    std::vector<std::string> filled;
    for (const StartValue& start : startValues()) {
        if (start.use != StartUse::Class || startValue(machine, start.key) != &start) continue;
        if (!fieldView(machine, start.key)->isKnown && put(machine, start))
            filled.push_back(start.key);
    }
    return filled;
}

}  // namespace bw
