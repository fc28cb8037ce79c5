// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of rows: every row that is wrong is told, by its number.
#include <gtest/gtest.h>

#include "core/model/checks.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

/// "code row" of each problem, in order.
std::vector<std::string> told(const std::vector<Problem>& problems, std::string_view where) {
    std::vector<std::string> out;
    for (const auto& problem : problems) {
        if (problem.where != where) continue;
        std::string text = problem.code;
        for (const auto& argument : problem.arguments) {
            if (argument.name == "row") text += " " + std::get<std::string>(argument.value);
        }
        out.push_back(text);
    }
    return out;
}
std::vector<std::string> toldOfTable(const std::vector<FlowPoint>& rows) {
    return told(checkFlowTable(rows), "table");
}
using Told = std::vector<std::string>;

TEST(FlowTableRows, APressureMayStandInSeveralRows) {
    EXPECT_EQ(toldOfTable({{bar(1), lpm(1)}, {bar(1), lpm(1.1)}, {bar(1), lpm(0.9)}}),
              Told{"nozzle_table_too_short"});
    EXPECT_EQ(toldOfTable({{bar(1), lpm(1)}, {bar(1), lpm(1.1)}, {bar(2), lpm(1.4)}}), Told{});
    // Scatter may reach under a single row below, not under the mean there (1.049 L/min).
    EXPECT_EQ(toldOfTable({{bar(1), lpm(1)}, {bar(1), lpm(1.1)}, {bar(1.1), lpm(1.06)}}), Told{});
    EXPECT_EQ(toldOfTable({{bar(1), lpm(1)}, {bar(1), lpm(1.1)}, {bar(1.1), lpm(1.04)}}),
              Told{"nozzle_table_not_rising 3"});
    EXPECT_EQ(toldOfTable({{bar(1), lpm(1)}, {bar(2), lpm(1.4)}, {bar(2), lpm(0.9)}}),
              Told{"nozzle_table_not_rising 3"});
}

TEST(FlowTableRows, EveryWrongRowIsTold) {
    EXPECT_EQ(toldOfTable({}), Told{"nozzle_table_too_short"});
    EXPECT_EQ(toldOfTable({{bar(0), lpm(1)}, {bar(2), lpm(1)}, {bar(1), lpm(2)}, {bar(3), lpm(0)}}),
              (Told{"nozzle_table_not_rising 1", "nozzle_table_not_rising 3",
                    "nozzle_table_not_rising 4"}));
}

TEST(PumpCurveRows, EveryWrongPointIsTold) {
    Machine m = selfPropelled100();
    m.pump.curve->value = {{gpm(0), psi(122)}, {gpm(40), psi(112)}, {gpm(-5), psi(100)}};
    EXPECT_EQ(told(checkMachine(m), "pump.curve"),
              (Told{"pump_curve_not_positive 1", "pump_curve_not_positive 3"}));
    m.pump.curve->value = {{gpm(40), psi(112)}, {gpm(80), psi(83)}};
    EXPECT_EQ(told(checkMachine(m), "pump.curve"), Told{});
}

}  // namespace
}  // namespace bw
