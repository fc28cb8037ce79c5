// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/problem.h"
#include "core/window/speed_window.h"

namespace bw {

/// Flow and pressure at each point of the line at one speed. What hangs on the pump is absent where
/// the pump is not known; losses are those of the clean parts on the mix of the job.
struct LineReading {
    Flow boom;
    std::optional<Flow> agitation;
    std::optional<Flow> bypass;  ///< back to the tank through the control valve
    std::optional<Flow> relief;  ///< over the relief valve
    std::optional<Flow> pump;    ///< all that the pump passes
    std::optional<Pressure> suctionLoss;
    std::optional<Pressure> pumpOutlet;
    std::optional<Pressure> valveLoss;  ///< over a control valve in the line
    Pressure lineLoss;
    Pressure plumbingLoss;                   ///< meter and pipes, restrictor at full bore
    std::optional<Pressure> restrictorLoss;  ///< absent: narrowed, and its hole is not known
    Pressure sensor;
    Pressure sectionLoss;  ///< of the largest section: valve, strainer and hose
    Pressure shutOffLoss;
    Pressure nozzle;                ///< of the mean nozzle
    std::optional<double> speed;    ///< of the pump, part of full
    std::optional<double> control;  ///< part of the stroke
    Limit heldBy = Limit::None;     ///< what pins the flow here, so that the rate is off
};

/// The line at a speed, with the flow that really comes (clamped by floor, ceiling and machine).
LineReading lineAt(const WindowModel& model, Speed speed);

/// Where the pressure goes and how the control stands, as facts "line.…".
std::vector<Fact> lineFacts(const WindowModel& model, const LineReading& line);

}  // namespace bw
