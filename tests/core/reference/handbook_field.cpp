// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <numbers>

#include "core/hydraulics/liquid.h"
#include "core/hydraulics/minor_loss.h"
#include "core/hydraulics/parts.h"
#include "core/hydraulics/pipe_friction.h"
#include "core/hydraulics/rate_law.h"
#include "core/window/field.h"
#include "core/window/speed_window.h"
#include "core/yard/catch_flow.h"
#include "core/yard/course_speed.h"
#include "core/yard/spray_height.h"
#include "tests/core/reference/handbook_makers.h"
#include "tests/support/builders.h"

namespace bw::handbook {
namespace {

constexpr double kGravity = 9.80665;  // m/s², standard
constexpr Length kFoot = Length::fromSi(0.3048);

Length headOf(Pressure pressure) {
    return Length::fromSi(pressure.si() / (1000 * kGravity));
}
Pressure pressureOf(Length head) {
    return Pressure::fromSi(head.si() * 1000 * kGravity);
}

Length pipeHead(const Inputs& in) {
    const Pipe pipe{.bore = in.get<Length>("inside")};
    return headOf(Pressure::fromSi(
        pipeLoss(pipe, in.get<Length>("length"), in.get<Flow>("flow")).pressurePa));
}

/// What a hole passes when a pressure is lost over it.
Flow throughHole(Length hole, double coefficient, Pressure lost) {
    return Flow::fromSi(std::sqrt(lost.si() / restrictorLoss(hole, coefficient).si()));
}

/// Feet per second of a jet without losses.
double jetVelocity(Pressure pressure) {
    const Length bore = kFoot;
    const double area = std::numbers::pi / 4 * bore.si() * bore.si();
    return throughHole(bore, 1, pressure).si() / area / kFoot.si();
}

/// The coefficient that a narrowed restrictor gets when the profile gives none.
double assumedCoefficient() {
    Machine machine = build::machine();
    machine.restrictor.hole = Sourced<Length>(build::metres(0.012));
    const auto parts = circuitParts(machine, NozzleLaw(build::lpm(1), build::bar(3)), 1.0,
                                    RestrictorPosition::Narrowed);
    return std::sqrt(restrictorLoss(build::metres(0.012), 1.0) / parts.value().restrictor);
}

/// Last nozzles of a boom whose inner end runs on a circle of the radius given.
std::pair<TurnPoint, TurnPoint> turnOf(const Inputs& in) {
    const Length boom = in.get<Length>("boom");
    const Length radius = in.get<Length>("inner_radius") + 0.5 * boom;
    const auto speed = in.get<Speed>("centre_speed");
    const AreaRate any = build::gpa(10);
    return {turnAt(-0.5 * boom, radius, speed, any), turnAt(0.5 * boom, radius, speed, any)};
}

AreaRate bandRate(const Inputs& in) {
    const Duration time = make<Duration>(60, Unit::Second);  // any: it drops out
    return sprayRate(catchFlow(in.get<Volume>("catch"), time),
                     courseSpeed(in.get<Length>("course"), time), in.get<Length>("band"));
}

/// Boom of pulsed nozzles set to 3 bar, with the limits as they are without data of its own.
WindowModel pulsed(Flow nozzleFlow, AreaRate rate, Speed speed) {
    Machine machine = build::machine();
    machine.pulsed.pressure = Sourced<Pressure>(build::bar(3));
    return WindowModel::make(machine, build::nozzle(nozzleFlow, build::bar(3)),
                             build::job(rate, speed, speed, speed))
        .value();
}

/// Share of on-time that a speed needs, of the flow at full duty.
double duty(const WindowModel& model, Speed speed) {
    const Flow full = *model.limits().of(Limit::DutyMaximum);
    return model.demand().rate * speed * model.width() / full;
}

double dutyBySpeed(const Inputs& in) {
    const auto speed = in.get<Speed>("speed");
    const auto full = in.get<Speed>("speed_at_full_duty");
    const AreaRate rate = sprayRate(build::lpm(1.2), full, build::metres(0.5));
    return duty(pulsed(build::lpm(1.2), rate, full), speed);
}

double dutyOf(const Inputs& in) {
    const auto speed = in.get<Speed>("speed");
    const Flow flow = build::lpm(in.number("nozzle_flow_l_min_3bar"));
    return duty(pulsed(flow, in.get<AreaRate>("rate"), speed), speed);
}

/// Duty limits of a pulsed machine that gives none.
double dutyLimit(Limit limit) {
    const auto model = pulsed(build::lpm(1.2), build::lha(100), build::kmh(10));
    return *model.limits().of(limit) / *model.limits().of(Limit::DutyMaximum);
}

double bandShare() {
    const AreaRate all = sprayRate(build::lpm(1), build::kmh(10), build::metres(0.5));
    const AreaRate everySecond = sprayRate(build::lpm(1), build::kmh(10), build::metres(1));
    return everySecond / all;
}

}  // namespace

/// Fittings as the handbooks call them.
Fitting fittingOf(const std::string& printed) {
    static const std::map<std::string, Fitting> names{
        {"globe valve, open", Fitting::GlobeValve},
        {"angle valve, open", Fitting::AngleValve},
        {"swing check valve, open", Fitting::SwingCheckValve},
        {"swing check valve", Fitting::SwingCheckValve},
        {"lift check valve", Fitting::LiftCheckValve},
        {"gate valve, open", Fitting::GateValve},
        {"butterfly valve, open", Fitting::ButterflyValve},
        {"short-radius elbow", Fitting::ShortElbow},
        {"medium-radius elbow", Fitting::MediumElbow},
        {"long-radius elbow", Fitting::LongElbow},
        {"45 degree elbow", Fitting::Elbow45},
        {"mitred bend 90 degree", Fitting::MitredBend},
        {"closed return bend", Fitting::ReturnBend},
        {"standard tee, through run", Fitting::TeeThrough},
        {"standard tee, through branch", Fitting::TeeBranch},
        {"square entrance", Fitting::SquareEntrance},
        {"sharp-corner flush inlet", Fitting::SquareEntrance},
        {"exit", Fitting::Exit}};
    return names.at(printed);
}

/// Velocity heads that a fitting takes, from what a run with it loses beyond the pipe.
double headsLost(const Inputs& in) {
    const Pipe pipe{.bore = build::inches(1)};
    const Flow flow = build::gpm(20);
    const auto run = runLoss(pipe, build::metres(1), {fittingOf(in.text("fitting"))}, flow);
    return run.fittings / velocityPressure(pipe, flow);
}

const std::map<std::string, Maker>& pipeMakers() {
    static const std::map<std::string, Maker> makers{
        {"pipe_friction_loss", [](const Inputs& i) { return anyQuantity(pipeHead(i)); }},
        {"plastic_pipe_roughness",
         [](const Inputs&) { return anyQuantity(1000 * (Pipe{}.roughness / kFoot)); }},
        {"orifice_discharge",
         [](const Inputs& i) {
             return anyQuantity(throughHole(i.get<Length>("hole"), i.number("cd"),
                                            pressureOf(i.get<Length>("head"))));
         }},
        {"theoretical_nozzle_discharge",
         [](const Inputs& i) {
             return anyQuantity(
                 throughHole(i.get<Length>("diameter"), 1, i.get<Pressure>("pressure")));
         }},
        {"nozzle_flow_by_bore",
         [](const Inputs& i) {
             return anyQuantity(
                 throughHole(i.get<Length>("bore"), i.number("c"), i.get<Pressure>("pressure")));
         }},
        {"jet_velocity",
         [](const Inputs& i) { return anyQuantity(jetVelocity(i.get<Pressure>("pressure"))); }},
        {"fitting_loss_coefficient", [](const Inputs& i) { return anyQuantity(headsLost(i)); }},
        {"sharp_edge_orifice_cd", [](const Inputs&) { return anyQuantity(assumedCoefficient()); }},
    };
    return makers;
}

const std::map<std::string, Maker>& fieldMakers() {
    static const std::map<std::string, Maker> makers{
        {"inner_boom_speed", [](const Inputs& i) { return anyQuantity(turnOf(i).first.speed); }},
        {"outer_boom_speed", [](const Inputs& i) { return anyQuantity(turnOf(i).second.speed); }},
        {"outer_boom_rate",
         [](const Inputs& i) {
             const Length offset = build::metres(1) * (i.number("speed_ratio") - 1);
             return anyQuantity(
                 *turnAt(offset, build::metres(1), build::kmh(10), i.get<AreaRate>("centre_rate"))
                      .rate);
         }},
        {"band_rate_from_catch", [](const Inputs& i) { return anyQuantity(bandRate(i)); }},
        {"band_share_of_broadcast", [](const Inputs&) { return anyQuantity(bandShare()); }},
        {"speed_conversion", [](const Inputs& i) { return anyQuantity(i.get<Speed>("speed")); }},
        {"pwm_duty", [](const Inputs& i) { return anyQuantity(dutyOf(i)); }},
        {"pwm_full_duty", [](const Inputs& i) { return anyQuantity(dutyOf(i)); }},
        {"pwm_duty_by_speed", [](const Inputs& i) { return anyQuantity(dutyBySpeed(i)); }},
        {"pwm_duty_range_low",
         [](const Inputs&) { return anyQuantity(dutyLimit(Limit::DutyMinimum)); }},
        {"pwm_duty_range_high",
         [](const Inputs&) { return anyQuantity(dutyLimit(Limit::DutyMaximum)); }},
        {"height_for_overlap",
         [](const Inputs& i) {
             return anyQuantity(heightForOverlap(i.number("fan_deg"), i.get<Length>("spacing"),
                                                 i.number("overlap_pct") / 100));
         }},
        {"boom_height_100pct_overlap",
         [](const Inputs& i) {
             return anyQuantity(heightForOverlap(i.number("fan_deg"), build::inches(20), 1.0));
         }},
    };
    return makers;
}

}  // namespace bw::handbook
