// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/simulation/loop_setup.h"

namespace bw {

/// The loop near a working point, as a linear one: an integrator of `gain`, a dead time and two
/// lags. Dead band, noise, stiction, slew and limits are left out.
struct LoopStability {
    double control = 0.0;        ///< setting at the working point
    double gain = 0.0;           ///< k, 1/s: loop gain × ∂lnQ/∂u
    double gainAtLimit = 0.0;    ///< k_u, 1/s: over it a swing grows until slew or stroke hold it
    Duration period;             ///< of the swing at that limit
    double flowPerStroke = 0.0;  ///< ∂lnQ/∂u
    bool isStable() const { return gain < gainAtLimit; }
};

/// k_u and period for a dead time (> 0 with the step's half) and lags (≥ 0).
struct GainLimit {
    double gain = 0.0;
    Duration period;
};
/// ωθ + atan(ωτ_h) + atan(ωτ_m) = π/2, k_u = ω·√(1+ω²τ_h²)·√(1+ω²τ_m²). `deadTime` > 0.
GainLimit gainLimit(Duration deadTime, Duration hydraulicLag, Duration meterLag);

/// ∂lnQ/∂u of the metered flow at a setting, from the circuit itself. Zero where nothing flows.
double flowPerStroke(const Circuit& circuit, double control);

/// The setting at which the controller's sensed flow meets the target at `speed`; nothing if that
/// lies outside the stroke. Floor and ceiling are left out.
std::optional<double> workingControl(const LoopSetup& setup, Speed speed);

/// The loop at the working point of a speed; the simulation's half step is part of the dead time.
/// Nothing if the target is out of reach, or nothing is sensed.
std::optional<LoopStability> stability(const LoopSetup& setup, Speed speed);

/// A stepping actuator rests for sure in this dead band.
inline bool deadBandHolds(const LoopSetup& setup, const LoopStability& at) {
    return setup.control.stiction * at.flowPerStroke < 2 * setup.control.deadBand;
}

}  // namespace bw
