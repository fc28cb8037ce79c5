// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/simulation/loop_setup.h"

namespace bw {

/// A cause that can be put into the running loop, and how bad it is (0 to 1).
struct Fault {
    std::string cause;  ///< id as in the knowledge: "line_strainer"
    double severity = 0.0;
    bool operator==(const Fault&) const = default;
};

/// The ids that applyFault knows, in the order of the table in DEVELOPERS.md ("The loop").
const std::vector<std::string>& injectableCauses();
bool isInjectable(std::string_view cause);

/// Puts a fault into a setup: it sets parameters of the circuit, the sensors or the loop and
/// nothing else. Severities refer to the healthy need kept in the setup, so several faults go in in
/// any order. Section faults and one-nozzle faults are on the first section. What is wholly blocked
/// still passes a millionth.
/// Problems: fault_unknown, fault_severity (outside 0 to 1).
Outcome applyFault(LoopSetup& setup, const Fault& fault);
/// All of them; a cause given twice is refused (fault_twice). `where` is "faults[i]".
Outcome applyFaults(LoopSetup& setup, const std::vector<Fault>& faults);

}  // namespace bw
