// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/plan_sheets.h"

#include <algorithm>

namespace bw {
namespace {

const Nozzle* nozzleNamed(const std::string& name, const std::vector<Nozzle>& nozzles) {
    const auto found = std::find_if(nozzles.begin(), nozzles.end(),
                                    [&](const Nozzle& nozzle) { return nozzle.name == name; });
    return found == nozzles.end() ? nullptr : &*found;
}

}  // namespace

PlannedJob plannedJob(const Machine& machine, const Job& job, const std::vector<Nozzle>& nozzles,
                      const std::vector<Nozzle>& elsewhere) {
    PlannedJob out{job, {}, {}};
    const JobVerdict verdict = jobVerdict(machine, job, nozzles, elsewhere);
    if (verdict.problem) {
        out.problem = verdict.problem;
        return out;
    }
    const Nozzle* nozzle = nozzleNamed(verdict.nozzle, nozzles);
    if (!nozzle) nozzle = nozzleNamed(verdict.nozzle, elsewhere);
    if (!nozzle) {
        out.problem = error("no_nozzle_yet");
        return out;
    }
    auto model = modelInBetterPosition(machine, *nozzle, job);
    if (model)
        out.model = std::move(model).value();
    else
        out.problem = model.problem();
    return out;
}

}  // namespace bw
