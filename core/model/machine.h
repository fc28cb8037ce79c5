// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/model/choice.h"
#include "core/model/origin.h"
#include "core/units/unit.h"

namespace bw {

enum class MachineClass { Mounted, Trailed, SelfPropelled, Pulsed };
/// What senses the spray rate.
enum class Senses { Flow, Pressure, Both, Nothing };
/// How the rate is changed: pump speed, a valve in the line (throttle), or a by-pass to the tank.
enum class Control { PumpSpeed, Throttle, Bypass };
enum class PumpKind { Centrifugal, PositiveDisplacement };
/// Nozzle shut-off valve: a ball in the strainer loses its opening pressure; a diaphragm, once
/// open, and an air or electric one lose nothing.
enum class ShutOffKind { Ball, Diaphragm, AirOrElectric };
enum class RestrictorPosition { FullBore, Narrowed };
enum class SectionReturns { None, Metered };

template <>
struct ChoiceNames<MachineClass> {
    static constexpr std::array<std::pair<MachineClass, std::string_view>, 4> names{
        {{MachineClass::Mounted, "mounted"},
         {MachineClass::Trailed, "trailed"},
         {MachineClass::SelfPropelled, "self_propelled"},
         {MachineClass::Pulsed, "pulsed"}}};
};
template <>
struct ChoiceNames<Senses> {
    static constexpr std::array<std::pair<Senses, std::string_view>, 4> names{
        {{Senses::Flow, "flow"},
         {Senses::Pressure, "pressure"},
         {Senses::Both, "both"},
         {Senses::Nothing, "nothing"}}};
};
template <>
struct ChoiceNames<Control> {
    static constexpr std::array<std::pair<Control, std::string_view>, 3> names{
        {{Control::PumpSpeed, "pump_speed"},
         {Control::Throttle, "throttle"},
         {Control::Bypass, "bypass"}}};
};
template <>
struct ChoiceNames<PumpKind> {
    static constexpr std::array<std::pair<PumpKind, std::string_view>, 2> names{
        {{PumpKind::Centrifugal, "centrifugal"},
         {PumpKind::PositiveDisplacement, "positive_displacement"}}};
};
template <>
struct ChoiceNames<ShutOffKind> {
    static constexpr std::array<std::pair<ShutOffKind, std::string_view>, 3> names{
        {{ShutOffKind::Ball, "ball"},
         {ShutOffKind::Diaphragm, "diaphragm"},
         {ShutOffKind::AirOrElectric, "air_or_electric"}}};
};
template <>
struct ChoiceNames<RestrictorPosition> {
    static constexpr std::array<std::pair<RestrictorPosition, std::string_view>, 2> names{
        {{RestrictorPosition::FullBore, "full_bore"}, {RestrictorPosition::Narrowed, "narrowed"}}};
};
template <>
struct ChoiceNames<SectionReturns> {
    static constexpr std::array<std::pair<SectionReturns, std::string_view>, 2> names{
        {{SectionReturns::None, "none"}, {SectionReturns::Metered, "metered"}}};
};

/// One point of a pump's curve at full speed on water.
struct CurvePoint {
    Flow flow;
    Pressure pressure;
    bool operator==(const CurvePoint&) const = default;
};

/// Pressure lost at a flow, on clean water.
struct Loss {
    Known<Pressure> pressure;
    Known<Flow> at;
    bool operator==(const Loss&) const = default;
};

struct ControlValve {
    Known<Flow> flow;  ///< fully open: what passes when `at` is lost over it
    Known<Pressure> at;
    Known<double> leastOpening;  ///< least part of the stroke, 0 to 1
    bool operator==(const ControlValve&) const = default;
};

struct Pump {
    Known<PumpKind> kind;                  ///< absent: no pump known
    Known<Pressure> shutOffPressure;       ///< centrifugal, full speed, water, no flow
    Known<std::vector<CurvePoint>> curve;  ///< centrifugal
    Known<Flow> ratedFlow;                 ///< positive displacement, at full speed
    Known<Pressure> reliefPressure;
    Known<double> leastSpeed;  ///< fraction of full speed
    Known<Pressure> suctionAvailable;
    bool operator==(const Pump&) const = default;
};

struct Losses {
    Loss suction;
    Loss line;
    Loss plumbing;  ///< holds meter and restrictor at full bore
    Loss section;   ///< one section, at its own flow
    bool operator==(const Losses&) const = default;
};

struct Restrictor {
    Known<bool> fitted;  ///< unknown: neither advice nor limits from it
    Known<Length> hole;
    Known<double> dischargeCoefficient;
    Known<Flow> changeoverFlow;
    Known<RestrictorPosition> position;
    bool operator==(const Restrictor&) const = default;
};

struct Meter {
    Known<Flow> minimumFullBore;
    Known<Flow> minimumNarrowed;
    Known<Flow> maximum;
    Known<double> scale;  ///< 1.1 shows 10 % too much
    Known<double> noise;
    Known<double> noiseBelow;
    bool operator==(const Meter&) const = default;
};

struct ControllerLimits {
    Known<Pressure> pressureFloor;    ///< at the boom pressure sensor
    Known<Pressure> pressureCeiling;  ///< at the boom pressure sensor
    Known<Speed> topSpeed;
    bool operator==(const ControllerLimits&) const = default;
};

struct Agitation {
    Known<Flow> flow;
    Known<Pressure> at;  ///< pump outlet pressure
    bool operator==(const Agitation&) const = default;
};

struct ShutOffValve {
    Known<ShutOffKind> kind;
    Known<Pressure> openingPressure;
    bool operator==(const ShutOffValve&) const = default;
};

/// The pipe along the boom that the nozzles sit on; roughness and viscosity are taken as usual.
struct BoomFeed {
    Known<Length> bore;             ///< inner
    Known<std::vector<int>> feeds;  ///< nozzles at which the pipe is fed, from 1, left to right
    Known<bool> ring;  ///< a return pipe of the same bore joins the last nozzle to the first
    bool operator==(const BoomFeed&) const = default;
};

struct Pulsed {
    Known<Pressure> pressure;  ///< set nozzle pressure; absent: not pulsed
    Known<double> dutyMin;
    Known<double> dutyMax;
    bool operator==(const Pulsed&) const = default;
};

struct Strainers {
    Known<double> suctionMesh;
    Known<double> lineMesh;
    Known<double> sectionMesh;
    Known<double> nozzleMesh;
    bool operator==(const Strainers&) const = default;
};

struct LoopSettings {
    Known<double> gain;      ///< strokes/s for a whole target of error
    Known<double> deadBand;  ///< part of the target
    Known<double> slew;      ///< strokes/s
    Known<Duration> deadTime;
    Known<Duration> hydraulicLag;
    Known<Duration> meterLag;
    Known<double> stiction;  ///< part of the stroke
    bool operator==(const LoopSettings&) const = default;
};

/// A nozzle set aboard: which nozzle sits in which position of the bodies.
struct SetAboard {
    int position = 1;    ///< position on the nozzle body, from 1
    std::string nozzle;  ///< the nozzle's name
    bool operator==(const SetAboard&) const = default;
};

/// All that is known of one sprayer.
struct Machine {
    std::string name;
    UnitSystem units = UnitSystem::Metric;
    Known<MachineClass> machineClass;
    Known<Length> spacing;             ///< between nozzles
    Known<Length> width;               ///< as the owner says; checked against nozzles × spacing
    Known<std::vector<int>> sections;  ///< nozzles in each section, left to right
    Known<int> bodyPositions;          ///< positions per nozzle body
    std::vector<SetAboard> setsAboard;
    Known<Volume> tank;
    Known<Senses> senses;
    Known<Control> control;
    ControlValve controlValve;
    Pump pump;
    Losses losses;
    Restrictor restrictor;
    Meter meter;
    ControllerLimits limits;
    Agitation agitation;
    ShutOffValve checkValve;
    Known<SectionReturns> sectionReturns;
    BoomFeed boomPipe;
    Pulsed pulsed;
    Strainers strainers;
    LoopSettings loop;
    std::string notes;
    bool isDemo = false;  ///< invented data, marked so wherever it is shown
    bool operator==(const Machine&) const = default;
};

/// Nozzles on the whole boom; 0 if the sections are unknown.
int nozzleCount(const Machine& machine);
/// Nozzles × spacing; zero if either is unknown.
Length sprayedWidth(const Machine& machine);

/// Calls `f(key, field)` for every field with an origin, in the order of the page. Keys are those
/// of a calc request ("limits.pressure_floor"). `M` is Machine or const Machine.
template <class M, class F>
void visitFields(M& m, F&& f) {
    f("class", m.machineClass);
    f("spacing", m.spacing);
    f("width", m.width);
    f("sections", m.sections);
    f("body_positions", m.bodyPositions);
    f("tank", m.tank);
    f("check_valve.kind", m.checkValve.kind);
    f("check_valve.opening_pressure", m.checkValve.openingPressure);
    f("boom_pipe.bore", m.boomPipe.bore);
    f("boom_pipe.feeds", m.boomPipe.feeds);
    f("boom_pipe.ring", m.boomPipe.ring);
    f("senses", m.senses);
    f("control", m.control);
    f("section_returns", m.sectionReturns);
    f("limits.pressure_floor", m.limits.pressureFloor);
    f("limits.pressure_ceiling", m.limits.pressureCeiling);
    f("limits.top_speed", m.limits.topSpeed);
    f("meter.minimum_full_bore", m.meter.minimumFullBore);
    f("meter.minimum_narrowed", m.meter.minimumNarrowed);
    f("meter.maximum", m.meter.maximum);
    f("meter.scale", m.meter.scale);
    f("meter.noise", m.meter.noise);
    f("meter.noise_below", m.meter.noiseBelow);
    f("restrictor.fitted", m.restrictor.fitted);
    f("restrictor.changeover_flow", m.restrictor.changeoverFlow);
    f("restrictor.position", m.restrictor.position);
    f("restrictor.hole", m.restrictor.hole);
    f("restrictor.discharge_coefficient", m.restrictor.dischargeCoefficient);
    f("pulsed.pressure", m.pulsed.pressure);
    f("pulsed.duty_min", m.pulsed.dutyMin);
    f("pulsed.duty_max", m.pulsed.dutyMax);
    f("pump.kind", m.pump.kind);
    f("pump.shutoff_pressure", m.pump.shutOffPressure);
    f("pump.curve", m.pump.curve);
    f("pump.rated_flow", m.pump.ratedFlow);
    f("pump.relief_pressure", m.pump.reliefPressure);
    f("pump.least_speed", m.pump.leastSpeed);
    f("pump.suction_available", m.pump.suctionAvailable);
    f("control_valve.flow", m.controlValve.flow);
    f("control_valve.at", m.controlValve.at);
    f("control_valve.least_opening", m.controlValve.leastOpening);
    f("agitation.flow", m.agitation.flow);
    f("agitation.at", m.agitation.at);
    f("losses.suction.pressure", m.losses.suction.pressure);
    f("losses.suction.at", m.losses.suction.at);
    f("losses.line.pressure", m.losses.line.pressure);
    f("losses.line.at", m.losses.line.at);
    f("losses.plumbing.pressure", m.losses.plumbing.pressure);
    f("losses.plumbing.at", m.losses.plumbing.at);
    f("losses.section.pressure", m.losses.section.pressure);
    f("losses.section.at", m.losses.section.at);
    f("strainers.suction.mesh", m.strainers.suctionMesh);
    f("strainers.line.mesh", m.strainers.lineMesh);
    f("strainers.section.mesh", m.strainers.sectionMesh);
    f("strainers.nozzle.mesh", m.strainers.nozzleMesh);
    f("loop.gain", m.loop.gain);
    f("loop.dead_band", m.loop.deadBand);
    f("loop.slew", m.loop.slew);
    f("loop.dead_time", m.loop.deadTime);
    f("loop.hydraulic_lag", m.loop.hydraulicLag);
    f("loop.meter_lag", m.loop.meterLag);
    f("loop.stiction", m.loop.stiction);
}

}  // namespace bw
