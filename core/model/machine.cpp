// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/machine.h"

#include <numeric>

namespace bw {

int nozzleCount(const Machine& machine) {
    if (!machine.sections) return 0;
    const auto& sections = machine.sections->value;
    return std::accumulate(sections.begin(), sections.end(), 0);
}

Length sprayedWidth(const Machine& machine) {
    if (!machine.spacing) return {};
    return nozzleCount(machine) * machine.spacing->value;
}

}  // namespace bw
