// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/problem.h"
#include "core/hydraulics/pipe_friction.h"
#include "core/model/choice.h"

namespace bw {

/// Valves (fully open), bends, tees and ends of a pipe.
enum class Fitting {
    GlobeValve,
    AngleValve,
    SwingCheckValve,
    LiftCheckValve,
    GateValve,
    ButterflyValve,
    ShortElbow,
    MediumElbow,
    LongElbow,
    Elbow45,
    MitredBend,
    ReturnBend,
    TeeThrough,
    TeeBranch,
    SquareEntrance,
    Exit
};
template <>
struct ChoiceNames<Fitting> {
    static constexpr std::array<std::pair<Fitting, std::string_view>, 16> names{
        {{Fitting::GlobeValve, "globe_valve"},
         {Fitting::AngleValve, "angle_valve"},
         {Fitting::SwingCheckValve, "swing_check_valve"},
         {Fitting::LiftCheckValve, "lift_check_valve"},
         {Fitting::GateValve, "gate_valve"},
         {Fitting::ButterflyValve, "butterfly_valve"},
         {Fitting::ShortElbow, "short_elbow"},
         {Fitting::MediumElbow, "medium_elbow"},
         {Fitting::LongElbow, "long_elbow"},
         {Fitting::Elbow45, "elbow_45"},
         {Fitting::MitredBend, "mitred_bend"},
         {Fitting::ReturnBend, "return_bend"},
         {Fitting::TeeThrough, "tee_through"},
         {Fitting::TeeBranch, "tee_branch"},
         {Fitting::SquareEntrance, "square_entrance"},
         {Fitting::Exit, "exit"}}};
};

/// Velocity heads lost in a fitting (K, turbulent flow). Makes differ by several times.
/// Sources: US Environmental Protection Agency, drinking-water network
/// model user manual, ch. 3; lift check and butterfly valve and mitred bend: handbook
/// "Environmentally Conscious Materials Handling", table 9.2.
double lossCoefficient(Fitting fitting);

/// Dynamic pressure ρ·v²/2 of a flow in a bore (> 0).
Pressure velocityPressure(const Pipe& pipe, Flow flow);

/// What `heads` velocity heads lose in the pipe, as a loss with the square of flow.
SquareLoss minorLoss(double heads, const Pipe& pipe);

/// Length of straight pipe that loses as much at this flow (> 0).
Length equivalentLength(double heads, const Pipe& pipe, Flow flow);

/// Loss of a run of pipe with its fittings at a flow (≥ 0).
struct RunLoss {
    Pressure friction;
    Pressure fittings;
    Pressure whole() const { return friction + fittings; }
};
/// What cannot be reckoned: bore, flow or viscosity not positive, a length under zero, a wall
/// as rough as the bore. Problems: run_not_positive, value_under_zero, boom_too_rough.
std::optional<Problem> runProblem(const Pipe& pipe, Length length, Flow flow);
RunLoss runLoss(const Pipe& pipe, Length length, const std::vector<Fitting>& fittings, Flow flow);

}  // namespace bw
