// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of start values and of usual ranges must not contradict each other.
#include <gtest/gtest.h>

#include <set>

#include "core/model/checks.h"
#include "core/model/field_checks.h"
#include "core/model/start_values.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

std::set<std::string> startKeys() {
    std::set<std::string> keys;
    for (const auto& value : startValues()) keys.insert(value.key);
    return keys;
}

/// The ends of assumed ranges must be possible as well.
template <class V>
void expectEndsPossible(std::string_view key, const Known<V>& field) {
    if constexpr (detail::IsNumeric<V>::value) {
        if (!field || !field->from || !field->to) return;
        ProblemList list;
        EXPECT_TRUE(checkNumber(list, "machine", key, detail::toAny(*field->from))) << key;
        EXPECT_TRUE(checkNumber(list, "machine", key, detail::toAny(*field->to))) << key;
    }
}

TEST(RangesAgree, StartValuesAreUsual) {
    for (const auto& [machineClass, name] : ChoiceNames<MachineClass>::names) {
        for (const auto units : {UnitSystem::Metric, UnitSystem::Us, UnitSystem::Uk}) {
            Machine machine = build::machine();
            machine.units = units;
            takeClass(machine, machineClass);
            for (const auto& key : startKeys()) takeStartValue(machine, key);
            for (const auto& problem : checkMachine(machine)) {
                // The set pressure of pulsed nozzles is the user's choice; nobody assumes one.
                if (problem.code == "pulsed_pressure_missing") continue;
                EXPECT_EQ(problem.severity, Severity::Note)
                    << name << ": " << problem.code << " at " << problem.where;
            }
            visitFields(machine, [](std::string_view key, const auto& field) {
                expectEndsPossible(key, field);
            });
        }
    }
}

}  // namespace
}  // namespace bw
