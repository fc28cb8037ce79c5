// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/model/machine.h"
#include "core/yard/meter_check.h"
#include "core/yard/yard_checks.h"

namespace bw {

/// What a check writes into one field of the machine; nothing makes the field unknown, because what
/// it said is now inside another measured value.
struct ProfileEdit {
    using Value = std::variant<std::monostate, AnyQuantity, std::string, std::vector<CurvePoint>>;
    std::string key;  ///< as in visitFields
    Value value;      ///< a number, a choice's word, the pump's curve
};

/// Y1: pump kind, shut-off pressure and one point of the curve. What the line already holds (losses
/// of suction, line and plumbing, agitation) is cleared where it was known: it would count twice.
/// A throttle's loss, fully open, stays and is added to the curve's point; it is cleared if that
/// would make the curve rise.
std::vector<ProfileEdit> profileEdits(const PumpLine& result, const Machine& machine);
/// Y1d: the pump's flow; what the agitation of the profile takes at that pressure is added.
std::vector<ProfileEdit> profileEdits(const PumpLeft& result, const Machine& machine);
/// Y2: loss of the section with the most nozzles at its own flow, kind of shut-off valve and its
/// opening pressure where a ball valve shows. Nothing while the sections are not known.
std::vector<ProfileEdit> profileEdits(const NozzleLoss& result, const Machine& machine);
/// Y3: the meter's minimum in that restrictor position.
std::vector<ProfileEdit> profileEdits(const SteadyFlow& result, const Machine& machine);
/// Y4: the delay, if there were swings.
std::vector<ProfileEdit> profileEdits(const Recovery& result, const Machine& machine);
/// Y5: how much the meter shows too much; 1 once the new number stands in the controller.
std::vector<ProfileEdit> profileEdits(const MeterCheck& result, const Machine& machine,
                                      bool numberEntered);
/// Y8: the agitation's flow, at the boom pressure read (the pump outlet stands a little higher).
std::vector<ProfileEdit> profileEdits(const AgitationFlow& result, const Machine& machine);

/// Writes them, marked measured on that (ISO) date. False, and nothing changed, if one of them does
/// not fit its field.
bool applyEdits(Machine& machine, const std::vector<ProfileEdit>& edits, const std::string& date);

/// Which yard check of this machine firms up a field: "Y1" ("Y1d" for a diaphragm or piston pump),
/// "Y2" and so on; empty where none does.
std::string_view checkFor(const Machine& machine, std::string_view key);

}  // namespace bw
