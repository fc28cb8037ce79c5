// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"
#include "core/exchange/json_refusals.h"

namespace bw {
namespace {

std::vector<std::string> machineKeys() {
    std::vector<std::string> keys{"name", "units", "sets_aboard", "notes", "demo"};
    const Machine machine;
    visitFields(machine, [&](std::string_view key, const auto&) { keys.emplace_back(key); });
    return keys;
}

void readUnits(const Json& json, const std::string& where, UnitSystem& out, JsonIssues& issues) {
    const Json* units = member(json, "units");
    std::string word;
    if (!units || !readText(*units, pathTo(where, "units"), word, issues)) return;
    const auto system = unitSystemFor(word);
    if (system)
        out = *system;
    else
        issues.add(jsonNotAChoice(pathTo(where, "units"), word, {"metric", "us", "uk"}));
}

void readSetsAboard(const Json& json, const std::string& where, std::vector<SetAboard>& out,
                    JsonIssues& issues) {
    const Json* sets = member(json, "sets_aboard");
    if (!sets) return;
    const std::string path = pathTo(where, "sets_aboard");
    if (!sets->is_array()) return issues.add(jsonWrongType(path, "list"));
    for (std::size_t i = 0; i < sets->size(); ++i) {
        const Json& item = (*sets)[i];
        const std::string itemPath = pathTo(path, i);
        SetAboard set;
        checkKeys(item, itemPath, {"position", "nozzle"}, issues);
        if (const Json* position = member(item, "position")) {
            readWholeNumber(*position, pathTo(itemPath, "position"), set.position, issues);
        }
        readOptionalText(item, itemPath, "nozzle", set.nozzle, issues);
        out.push_back(std::move(set));
    }
}

template <class T>
void fill(Known<T>& field, T value) {
    if (!field) field = Sourced<T>(value, Origin::Assumed);
}

/// A restrictor group without a word on it means that one is fitted; `"fitted": null` leaves it
/// open.
void settleRestrictor(const Json& json, Restrictor& restrictor) {
    const Json* group = member(json, "restrictor");
    if (group && group->is_object() && !group->contains("fitted"))
        restrictor.fitted = Sourced<bool>(true);
}

/// A pump without points is flat and stops at nothing; a throttle of no stated size shuts fully.
void fillSupply(Machine& machine) {
    fill(machine.pump.leastSpeed, 0.0);
    if (machine.pump.kind->value == PumpKind::Centrifugal)
        fill(machine.pump.curve, std::vector<CurvePoint>());
    const ControlValve& valve = machine.controlValve;
    if (machine.control->value == Control::Throttle && !valve.flow)
        fill(machine.controlValve.leastOpening, 0.0);
}

/// What a request that leaves these out means.
void fillDefaults(Machine& machine, const Json& json) {
    fill(machine.senses, Senses::Flow);
    fill(machine.control, Control::PumpSpeed);
    fill(machine.sectionReturns, SectionReturns::None);
    if (!member(json, "restrictor")) fill(machine.restrictor.fitted, false);
    if (valueOr(machine.restrictor.fitted, false)) {
        fill(machine.restrictor.position, RestrictorPosition::FullBore);
        fill(machine.restrictor.dischargeCoefficient, 0.62);
    }
    if (machine.checkValve.openingPressure) fill(machine.checkValve.kind, ShutOffKind::Ball);
    if (machine.pump.kind) fillSupply(machine);
}

bool isWhole(const Machine& machine) {
    return machine.spacing && machine.sections;
}

}  // namespace

Machine readMachine(const Json& json, JsonUse use, const std::string& where, JsonIssues& issues) {
    Machine machine;
    static const auto kKeys = machineKeys();
    checkKeys(json, where, kKeys, issues);
    readOptionalText(json, where, "name", machine.name, issues);
    readUnits(json, where, machine.units, issues);
    visitFields(machine, [&](std::string_view key, auto& field) {
        if (const Json* value = memberAt(json, key))
            readKnown(*value, where + "." + std::string(key), field, issues);
    });
    readSetsAboard(json, where, machine.setsAboard, issues);
    readOptionalText(json, where, "notes", machine.notes, issues);
    readOptionalMark(json, where, "demo", machine.isDemo, issues);
    if (!issues.none()) return machine;
    settleRestrictor(json, machine.restrictor);
    if (use == JsonUse::Stored) return machine;
    if (use == JsonUse::Request) requireMachineKeys(json, machine, where, issues);
    putInOrder(machine, where, issues);
    refuseMachine(machine, where, issues);
    if (use == JsonUse::Request || isWhole(machine)) fillDefaults(machine, json);
    return machine;
}

OrderedJson writtenMachine(const Machine& machine) {
    OrderedJson out = OrderedJson::object();
    putText(out, "name", machine.name);
    out["units"] = std::string(name(machine.units));
    visitFields(machine, [&](std::string_view key, const auto& field) {
        putKnown(out, key, field, machine.units);
    });
    if (out.contains("restrictor") && !machine.restrictor.fitted)
        out["restrictor"]["fitted"] = nullptr;
    for (const auto& set : machine.setsAboard) {
        out["sets_aboard"].push_back({{"position", set.position}, {"nozzle", set.nozzle}});
    }
    putText(out, "notes", machine.notes);
    putMark(out, "demo", machine.isDemo);
    return out;
}

}  // namespace bw
