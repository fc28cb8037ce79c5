// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/profile_edits.h"

#include <algorithm>
#include <cmath>

#include "core/model/machine_fields.h"
#include "core/yard/yard_book.h"

namespace bw {
namespace {

template <class Q>
ProfileEdit edit(const char* key, Q value) {
    return {key, anyQuantity(value)};
}

void clearKnown(const Machine& machine, const char* key, std::vector<ProfileEdit>& edits) {
    const auto view = fieldView(machine, key);
    if (view && view->isKnown) edits.push_back({key, std::monostate{}});
}

bool applyOne(Machine& machine, const ProfileEdit& edit, const std::string& date) {
    if (std::holds_alternative<std::monostate>(edit.value)) return clearField(machine, edit.key);
    bool fits = true;
    if (const auto* number = std::get_if<AnyQuantity>(&edit.value))
        fits = setField(machine, edit.key, *number);
    else if (const auto* word = std::get_if<std::string>(&edit.value))
        fits = setField(machine, edit.key, std::string_view(*word));
    else
        setCurve(machine, std::get<std::vector<CurvePoint>>(edit.value));
    return fits && setFieldOrigin(machine, edit.key, Origin::Measured, date);
}

/// What a throttle, fully open, loses at a flow; nothing where there is none, or its size is not
/// known.
Pressure throttleLoss(const Machine& machine, Flow flow) {
    const auto& valve = machine.controlValve;
    const bool isThrottle = bare(machine.control) == Control::Throttle;
    if (!isThrottle || !valve.flow || !valve.at || !(valve.flow->value.si() > 0)) return {};
    return valve.at->value * std::pow(flow / valve.flow->value, 2);
}

}  // namespace

std::vector<ProfileEdit> profileEdits(const PumpLine& result, const Machine& machine) {
    // A throttle keeps its loss in the profile, since the least flow comes from its size: the curve
    // is the line ahead of it. A loss that would make the curve rise was a wrong one.
    const Pressure ahead = result.pressure.value + throttleLoss(machine, result.flow.value);
    const bool isThrottleWrong = ahead >= result.shutOff.value;
    std::vector<ProfileEdit> edits{
        {"pump.kind", std::string(choiceName(PumpKind::Centrifugal))},
        edit("pump.shutoff_pressure", result.shutOff.value),
        {"pump.curve", std::vector<CurvePoint>{
                           {result.flow.value, isThrottleWrong ? result.pressure.value : ahead}}}};
    for (const char* key : {"control_valve.flow", "control_valve.at"}) {
        if (isThrottleWrong) clearKnown(machine, key, edits);
    }
    for (const char* key :
         {"losses.suction.pressure", "losses.suction.at", "losses.line.pressure", "losses.line.at",
          "losses.plumbing.pressure", "losses.plumbing.at", "agitation.flow", "agitation.at"})
        clearKnown(machine, key, edits);
    return edits;
}

std::vector<ProfileEdit> profileEdits(const PumpLeft& result, const Machine& machine) {
    Flow all = result.left.value;
    if (machine.agitation.flow && machine.agitation.at)
        all += machine.agitation.flow->value * std::sqrt(result.at / machine.agitation.at->value);
    return {{"pump.kind", std::string(choiceName(PumpKind::PositiveDisplacement))},
            edit("pump.rated_flow", all)};
}

std::vector<ProfileEdit> profileEdits(const NozzleLoss& result, const Machine& machine) {
    std::vector<ProfileEdit> edits;
    const int all = nozzleCount(machine);
    if (all > 0) {
        const auto& sections = machine.sections->value;
        const int most = *std::max_element(sections.begin(), sections.end());
        const double q = result.highFlow.si();
        edits.push_back(edit("losses.section.pressure", Pressure::fromSi(result.k * q * q)));
        edits.push_back(edit("losses.section.at", result.highFlow * (double(most) / all)));
    }
    if (!result.kind) return edits;
    edits.push_back({"check_valve.kind", std::string(choiceName(*result.kind))});
    if (*result.kind == ShutOffKind::Ball)
        edits.push_back(edit("check_valve.opening_pressure", result.constant.value));
    return edits;
}

std::vector<ProfileEdit> profileEdits(const SteadyFlow& result, const Machine&) {
    const bool isNarrowed = result.position == RestrictorPosition::Narrowed;
    return {
        edit(isNarrowed ? "meter.minimum_narrowed" : "meter.minimum_full_bore", result.minimum)};
}

std::vector<ProfileEdit> profileEdits(const Recovery& result, const Machine&) {
    if (!result.delay) return {};
    return {edit("loop.dead_time", result.delay->value)};
}

std::vector<ProfileEdit> profileEdits(const MeterCheck& result, const Machine&,
                                      bool numberEntered) {
    return {edit("meter.scale", numberEntered ? 1.0 : result.shownOverTrue.value)};
}

std::vector<ProfileEdit> profileEdits(const AgitationFlow& result, const Machine&) {
    return {edit("agitation.flow", result.flow.value), edit("agitation.at", result.at)};
}

bool applyEdits(Machine& machine, const std::vector<ProfileEdit>& edits, const std::string& date) {
    Machine after = machine;
    for (const auto& one : edits) {
        if (!applyOne(after, one, date)) return false;
    }
    machine = std::move(after);
    return true;
}

std::string_view checkFor(const Machine& machine, std::string_view key) {
    return checkForValue(machine, "machine." + std::string(key));
}

}  // namespace bw
