// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/job.h"
#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/units/unit.h"

/// Small builders for tests. All machines, nozzles and jobs here are invented.
namespace bw::build {

inline Pressure bar(double x) {
    return make<Pressure>(x, Unit::Bar);
}
inline Pressure psi(double x) {
    return make<Pressure>(x, Unit::Psi);
}
inline Flow lpm(double x) {
    return make<Flow>(x, Unit::LitrePerMinute);
}
inline Flow gpm(double x) {
    return make<Flow>(x, Unit::GallonUsPerMinute);
}
inline Speed kmh(double x) {
    return make<Speed>(x, Unit::KilometrePerHour);
}
inline Speed mph(double x) {
    return make<Speed>(x, Unit::MilePerHour);
}
inline AreaRate lha(double x) {
    return make<AreaRate>(x, Unit::LitrePerHectare);
}
inline AreaRate gpa(double x) {
    return make<AreaRate>(x, Unit::GallonUsPerAcre);
}
inline Length metres(double x) {
    return Length::fromSi(x);
}
inline Length inches(double x) {
    return make<Length>(x, Unit::Inch);
}

inline Machine machine(std::vector<int> sections = {8, 8, 8}, Length spacing = metres(0.5)) {
    Machine m;
    m.name = "Test machine (invented)";
    m.spacing = Sourced<Length>(spacing);
    m.sections = Sourced<std::vector<int>>(std::move(sections));
    return m;
}

inline Nozzle nozzle(Flow flow = lpm(1.2), Pressure at = bar(3)) {
    Nozzle n;
    n.name = "Test nozzle (invented)";
    n.flow = Sourced<Flow>(flow);
    n.at = Sourced<Pressure>(at);
    return n;
}

inline Job job(AreaRate rate = lha(150), Speed slow = kmh(8), Speed usual = kmh(10),
               Speed fast = kmh(12)) {
    Job j;
    j.name = "Test job (invented)";
    j.rate = Sourced<AreaRate>(rate);
    j.slow = Sourced<Speed>(slow);
    j.usual = Sourced<Speed>(usual);
    j.fast = Sourced<Speed>(fast);
    return j;
}

/// The invented trailed machine of the demo season: 56 nozzles, ball shut-off valves, section loss.
inline Machine trailed28() {
    Machine m = machine({6, 9, 9, 8, 9, 9, 6});
    m.control = Sourced<Control>(Control::Bypass);
    m.pump.kind = Sourced<PumpKind>(PumpKind::PositiveDisplacement);
    m.pump.ratedFlow = Sourced<Flow>(lpm(155));
    m.pump.reliefPressure = Sourced<Pressure>(bar(11));
    m.controlValve = {Sourced<Flow>(lpm(170)), Sourced<Pressure>(bar(2)), {}};
    m.pump.suctionAvailable = Sourced<Pressure>(bar(0.6));
    m.losses.suction = {Sourced<Pressure>(bar(0.08)), Sourced<Flow>(lpm(155))};
    m.losses.line = {Sourced<Pressure>(bar(0.10)), Sourced<Flow>(lpm(100))};
    m.losses.plumbing = {Sourced<Pressure>(bar(0.35)), Sourced<Flow>(lpm(100))};
    m.agitation = {Sourced<Flow>(lpm(40)), Sourced<Pressure>(bar(5))};
    m.losses.section = {Sourced<Pressure>(bar(0.12)), Sourced<Flow>(lpm(16))};
    m.meter.minimumFullBore = Sourced<Flow>(lpm(12));
    m.meter.maximum = Sourced<Flow>(lpm(200));
    m.limits = {Sourced<Pressure>(bar(1.6)), Sourced<Pressure>(bar(7)), Sourced<Speed>(kmh(16))};
    m.checkValve.openingPressure = Sourced<Pressure>(bar(0.4));
    return m;
}

/// The invented self-propelled machine of the demo season: 60 nozzles, restrictor valve.
inline Machine selfPropelled100() {
    Machine m = machine({10, 14, 12, 14, 10}, inches(20));
    m.units = UnitSystem::Us;
    m.pump.kind = Sourced<PumpKind>(PumpKind::Centrifugal);
    m.pump.shutOffPressure = Sourced<Pressure>(psi(122));
    m.pump.curve = Sourced<std::vector<CurvePoint>>({{gpm(40), psi(112)}, {gpm(80), psi(83)}});
    m.pump.leastSpeed = Sourced<double>(0.3);
    m.pump.suctionAvailable = Sourced<Pressure>(psi(9));
    m.losses.suction = {Sourced<Pressure>(psi(0.9)), Sourced<Flow>(gpm(60))};
    m.losses.line = {Sourced<Pressure>(psi(1.1)), Sourced<Flow>(gpm(40))};
    m.losses.plumbing = {Sourced<Pressure>(psi(6)), Sourced<Flow>(gpm(40))};
    m.agitation = {Sourced<Flow>(gpm(14)), Sourced<Pressure>(psi(45))};
    m.restrictor.hole = Sourced<Length>(inches(0.54));
    m.losses.section = {Sourced<Pressure>(psi(1.5)), Sourced<Flow>(gpm(9))};
    m.restrictor.fitted = Sourced<bool>(true);
    m.restrictor.changeoverFlow = Sourced<Flow>(gpm(30));
    m.restrictor.position = Sourced<RestrictorPosition>(RestrictorPosition::Narrowed);
    m.meter.minimumFullBore = Sourced<Flow>(gpm(30));
    m.meter.minimumNarrowed = Sourced<Flow>(gpm(7));
    m.meter.maximum = Sourced<Flow>(gpm(75));
    m.limits = {Sourced<Pressure>(psi(18)), Sourced<Pressure>(psi(85)), Sourced<Speed>(mph(20))};
    return m;
}

inline Nozzle lowDrift(double flowLpm, std::vector<DropletBand> bands) {
    Nozzle n = nozzle(lpm(flowLpm));
    n.pressureMin = Sourced<Pressure>(bar(1));
    n.pressureMax = Sourced<Pressure>(bar(6));
    n.droplets = Sourced<std::vector<DropletBand>>(std::move(bands));
    return n;
}
inline Nozzle lowDrift03() {
    return lowDrift(1.18, {{bar(1), bar(1.6), DropletCategory::VC},
                           {bar(1.6), bar(3), DropletCategory::C},
                           {bar(3), bar(6), DropletCategory::M}});
}
inline Nozzle lowDrift04() {
    return lowDrift(1.58, {{bar(1), bar(1.8), DropletCategory::VC},
                           {bar(1.8), bar(3.2), DropletCategory::C},
                           {bar(3.2), bar(6), DropletCategory::M}});
}

inline Nozzle airFan08() {
    Nozzle n = nozzle(lpm(3.15));
    n.pressureMin = Sourced<Pressure>(bar(1.5));
    n.pressureMax = Sourced<Pressure>(bar(7));
    return n;
}

}  // namespace bw::build
