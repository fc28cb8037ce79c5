// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"

namespace bw {

/// When a start value is taken: as soon as the class is chosen, only when a person says "I don't
/// know", only where the running machine is reckoned (never written into a machine), or never,
/// because it tells no more than what is usual for the class.
enum class StartUse { Class, Ask, Model, Range };
template <>
struct ChoiceNames<StartUse> {
    static constexpr std::array<std::pair<StartUse, std::string_view>, 4> names{
        {{StartUse::Class, "class"},
         {StartUse::Ask, "ask"},
         {StartUse::Model, "model"},
         {StartUse::Range, "range"}}};
};

/// What is assumed for a field while nobody knows better. Judgement, every one.
struct StartValue {
    std::optional<MachineClass> machineClass;  ///< nothing: every class
    std::optional<UnitSystem> units;           ///< nothing: all units
    std::string key;                           ///< as in visitFields
    std::string value;                         ///< a choice, or number and unit; empty for a range
    std::string from;                          ///< number and unit; empty for choices
    std::string to;
    StartUse use = StartUse::Ask;
    std::string source;
};

/// Every start value, from resources/data/start_values.csv.
const std::vector<StartValue>& startValues();
/// The one that fits a machine's class and units; null if there is none for the field.
const StartValue* startValue(const Machine& machine, std::string_view key);

/// "I don't know": the field takes its start value (marked assumed, with its range), or becomes
/// unknown if there is none. Agitation takes 2 to 3 % of the tank a minute. True if a value is
/// assumed now.
bool takeStartValue(Machine& machine, std::string_view key);

/// Assumes what is lost from the boom sensor to the nozzles: 5 % of the nozzle's pressure (0 to
/// 10 %), at the flow of the section with the most nozzles. `nozzle`: the largest of those aboard.
/// 10 % is the usual limit of inspections, from memory; 5 % is judgement. False (nothing changed)
/// if the sections or the nozzle's flow are not known.
bool assumeSectionLoss(Machine& machine, const Nozzle& nozzle);

/// Assumes what a diaphragm or piston pump still gives, from the flow on its plate (> 0): 85 % (70
/// to 100 %). About 3 % lost a year: a grains-research manual, Australia (as read); five years of
/// it, and the ends, are judgement.
void assumePumpFlow(Machine& machine, Flow plate);

/// Assumes the slow speed of a job that has none: 60 % of the usual (40 to 80 %), judgement: people
/// guess it too high. False (nothing changed) if there is one, or no usual speed.
bool assumeSlowSpeed(Job& job);

/// Completes a profile after the class and the ten questions: what an answer uses and nobody was
/// asked for is assumed, with its range: the loss from sensor to nozzle (5 %, for the largest of
/// the nozzles `aboard`), the opening pressure of ball valves, agitation from the tank, pressure
/// and on-time share of pulsed nozzles. Nothing that is known is touched. Returns the keys filled.
std::vector<std::string> completeProfile(Machine& machine, const std::vector<Nozzle>& aboard);

/// Gives a machine its class and fills what is unknown, or was assumed for the class before, with
/// the start values of the new one. What a person gave stays. Returns the keys that were filled.
std::vector<std::string> takeClass(Machine& machine, MachineClass machineClass,
                                   Origin origin = Origin::Handbook);

}  // namespace bw
