// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/simulation/loop_setup.h"
#include "tests/support/builders.h"

/// The invented demo machines with their loops, and working points on them.
namespace bw::build {

inline LoopSettings loopSettings(double gain, double slew, double dead, double hydraulic,
                                 double meter, double stiction) {
    LoopSettings out;
    out.gain = Sourced<double>(gain);
    out.deadBand = Sourced<double>(0.02);
    out.slew = Sourced<double>(slew);
    out.deadTime = Sourced<Duration>(Duration::fromSi(dead));
    out.hydraulicLag = Sourced<Duration>(Duration::fromSi(hydraulic));
    out.meterLag = Sourced<Duration>(Duration::fromSi(meter));
    out.stiction = Sourced<double>(stiction);
    return out;
}

struct LoopCase {
    Machine machine;
    Nozzle nozzle;
    Job job;
    LoopSetup setup() const { return LoopSetup::make(machine, nozzle, job).value(); }
};

/// 8 gal/ac at 14 mph, low-drift 04, restrictor narrowed.
inline LoopCase lowRate100() {
    LoopCase c{selfPropelled100(), lowDrift04(), job(gpa(8), mph(11), mph(14), mph(15.5))};
    c.machine.loop = loopSettings(0.25, 0.15, 0.5, 0.4, 0.6, 0.004);
    return c;
}
/// 17 gal/ac at 13 mph, air 08, full bore.
inline LoopCase highRate100() {
    LoopCase c = lowRate100();
    c.machine.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::FullBore);
    c.nozzle = airFan08();
    c.job = job(gpa(17), mph(11), mph(13), mph(15));
    return c;
}
/// 150 L/ha at 10 km/h, low-drift 03.
inline LoopCase trailedCase() {
    LoopCase c{trailed28(), lowDrift03(), job(lha(150), kmh(8), kmh(10), kmh(12))};
    c.machine.loop = loopSettings(0.3, 0.12, 0.6, 0.3, 0.8, 0.004);
    return c;
}

}  // namespace bw::build
