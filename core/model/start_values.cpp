// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/start_values.h"

#include <algorithm>
#include <cassert>

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
