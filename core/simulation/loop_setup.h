// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/hydraulics/circuit.h"
#include "core/model/job.h"
#include "core/model/machine.h"

namespace bw {

/// The controller and its actuator. Strokes are parts of the whole, 0 to 1.
struct LoopControl {
    double gain = 0.25;      ///< strokes/s for a whole target of error
    double deadBand = 0.02;  ///< part of the target
    double slew = 0.15;      ///< strokes/s
    Duration deadTime = Duration::fromSi(0.5);
    Duration hydraulicLag = Duration::fromSi(0.4);
    Duration meterLag = Duration::fromSi(0.6);
    double stiction = 0.0;    ///< part of the stroke: the actuator takes no smaller move
    bool isReversed = false;  ///< opens when told to shut
};

/// What senses the flow. Scatter is the standard deviation as a part of the flow.
struct LoopMeter {
    double scale = 1.0;  ///< shown over true flow
    double noise = 0.01;
    double noiseBelow = 0.5;    ///< added over the part of the meter's minimum that is lacking
    double noiseAdded = 0.0;    ///< by faults
    Flow minimumFullBore;       ///< zero: none known, no such scatter
    Flow minimumNarrowed;       ///< likewise
    Flow minimumByFault;        ///< part-full pipe: the minimum is at least this
    double speedNoise = 0.005;  ///< of the measured ground speed
    double speedScale = 1.0;    ///< measured over true ground speed
    double widthScale = 1.0;    ///< entered over true width
    double sensorScale = 1.0;   ///< shown over true pressure at the boom sensor
};

/// The restrictor valve as it stands.
struct LoopRestrictor {
    bool isFitted = false;
    RestrictorPosition position = RestrictorPosition::FullBore;
    SquareLoss narrowedLoss;
    bool holeUnknown = false;
};

/// What the job needs at its usual speed with nothing wrong; the faults' severities refer to it.
struct HealthyNeed {
    Flow flow;
    Pressure sensor;
    Pressure pump;                  ///< without a throttle's loss
    std::optional<double> control;  ///< setting that gives it; nothing if out of reach
};

/// Everything the running loop works with. A fault or a lever changes these numbers and nothing
/// else: change a copy, then hand it to RateLoop::change. Noise amplitudes are teaching values.
struct LoopSetup {
    explicit LoopSetup(CircuitParts line) : parts(std::move(line)), entered(parts.boom) {}

    CircuitParts parts;  ///< the spray line as it really is
    BoomLine entered;    ///< the boom as the controller believes it to be
    Senses senses = Senses::Flow;
    LoopControl control;
    LoopMeter meter;
    LoopRestrictor restrictor;
    std::optional<Pressure> floor;    ///< acts on the sensor's reading
    std::optional<Pressure> ceiling;  ///< likewise; wins over the floor
    std::vector<bool> isOn;           ///< section by section, as the controller has switched them
    Length spacing;
    AreaRate target;
    Speed usual;
    HealthyNeed need;
    double profileDeadBand = 0.02;  ///< before faults: the verdict's measure

    /// The setup of a healthy machine. Problems: those of demandOf, nozzleLaw and circuitParts
    /// (with "job." or "nozzle." before `where`), loop_needs_pump, loop_needs_control_valve,
    /// loop_not_pulsed, loop_setting_bad.
    static Result<LoopSetup> make(const Machine& machine, const Nozzle& nozzle, const Job& job);

    /// Width of the sections that are switched on.
    Length widthOn() const;
    /// Meter minimum for the restrictor's position, faults included.
    Flow meterMinimum() const;
    /// Moves the restrictor valve; nothing if none is fitted.
    void setRestrictor(RestrictorPosition position);
    /// The spray line with the switched-off sections shut.
    CircuitParts running() const;
    /// The controller's boom likewise.
    BoomLine enteredRunning() const;
};

}  // namespace bw
