// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/minor_loss.h"

#include <numbers>
#include <numeric>

namespace bw {
namespace {

double areaOf(const Pipe& pipe) {
    return std::numbers::pi / 4 * pipe.bore.si() * pipe.bore.si();
}

}  // namespace

double lossCoefficient(Fitting fitting) {
    switch (fitting) {
        case Fitting::GlobeValve:
            return 10.0;
        case Fitting::AngleValve:
            return 5.0;
        case Fitting::SwingCheckValve:
            return 2.5;
        case Fitting::LiftCheckValve:
            return 4.6;
        case Fitting::GateValve:
            return 0.2;
        case Fitting::ButterflyValve:
            return 0.56;
        case Fitting::ShortElbow:
            return 0.9;
        case Fitting::MediumElbow:
            return 0.8;
        case Fitting::LongElbow:
            return 0.6;
        case Fitting::Elbow45:
            return 0.4;
        case Fitting::MitredBend:
            return 1.1;
        case Fitting::ReturnBend:
            return 2.2;
        case Fitting::TeeThrough:
            return 0.6;
        case Fitting::TeeBranch:
            return 1.8;
        case Fitting::SquareEntrance:
            return 0.5;
        case Fitting::Exit:
            return 1.0;
    }
    return 0.0;
}

Pressure velocityPressure(const Pipe& pipe, Flow flow) {
    const double speed = flow.si() / areaOf(pipe);
    return Pressure::fromSi(0.5 * pipe.density * speed * speed);
}

SquareLoss minorLoss(double heads, const Pipe& pipe) {
    const double area = areaOf(pipe);
    return SquareLoss::fromSi(heads * 0.5 * pipe.density / (area * area));
}

Length equivalentLength(double heads, const Pipe& pipe, Flow flow) {
    const Length one = Length::fromSi(1);
    const Pressure lost = heads * velocityPressure(pipe, flow);
    return (lost.si() / pipeLoss(pipe, one, flow).pressurePa) * one;
}

std::optional<Problem> runProblem(const Pipe& pipe, Length length, Flow flow) {
    if (!(pipe.bore.si() > 0)) return error("run_not_positive", "bore");
    if (!(flow.si() > 0)) return error("run_not_positive", "flow");
    if (!(pipe.viscosity.si() > 0)) return error("run_not_positive", "viscosity");
    if (!(length.si() >= 0)) return error("value_under_zero", "length");
    if (pipe.roughness.si() < 0 || pipe.roughness >= pipe.bore)
        return error("boom_too_rough", "roughness");
    return std::nullopt;
}

RunLoss runLoss(const Pipe& pipe, Length length, const std::vector<Fitting>& fittings, Flow flow) {
    const double heads =
        std::accumulate(fittings.begin(), fittings.end(), 0.0,
                        [](double sum, Fitting f) { return sum + lossCoefficient(f); });
    return {Pressure::fromSi(pipeLoss(pipe, length, flow).pressurePa),
            minorLoss(heads, pipe) * (flow * flow)};
}

}  // namespace bw
