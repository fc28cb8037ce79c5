// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/hydraulics/circuit.h"
#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/window/job_demand.h"
#include "core/window/limits.h"

namespace bw {

/// One limit as a boom flow, before it is turned into a speed.
struct FlowLimit {
    Limit limit = Limit::None;
    Side side = Side::Low;
    Flow flow;
    bool pins = false;
};

/// All limits of a pairing, and those that could not be checked for want of data.
struct WindowLimits {
    std::vector<FlowLimit> flows;  ///< in the order of Limit
    Limit emptyWhy =
        Limit::None;  ///< no speed will do: DropletsNone, DriftNone, or a set pressure that fails
    std::vector<Limit> notChecked;  ///< in the order of Limit
    /// The boom flow of a pinning limit, if it applies.
    std::optional<Flow> of(Limit limit) const;
};

/// Works them out (the equations of each limit: DEVELOPERS.md, "The speed window"). `circuit`
/// stands in the restrictor position given; `width` is the sprayed width.
WindowLimits limitsFor(const Circuit& circuit, const Machine& machine, const Nozzle& nozzle,
                       const Job& job, const JobDemand& demand, Length width,
                       RestrictorPosition position);

/// Least and greatest on-time share of pulsed nozzles, 0 to 1; 0.2 and 1 unless given (teaching
/// choice).
std::pair<double, double> dutyRange(const Machine& machine);
/// Whether a restrictor valve is fitted, as far as the profile says.
bool hasRestrictor(const Machine& machine);
/// Whether the machine senses its rate by a flow meter.
bool hasMeter(const Machine& machine);
/// Lowest flow at which the meter reads surely, for a restrictor position. Without a figure of its
/// own the changeover flow stands for full bore and a quarter of it for narrowed.
std::optional<Flow> meterMinimum(const Machine& machine, RestrictorPosition position);

}  // namespace bw
