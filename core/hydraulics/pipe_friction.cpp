// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/pipe_friction.h"

#include <cmath>
#include <numbers>

namespace bw {
namespace {

constexpr double kLaminarEnd = 2000.0;
constexpr double kTurbulentStart = 4000.0;

FrictionFactor laminar(double reynolds) {
    return {64 / reynolds, -64 / (reynolds * reynolds)};
}

FrictionFactor swameeJain(double reynolds, double relativeRoughness) {
    const double power = 5.74 * std::pow(reynolds, -0.9);
    const double inside = relativeRoughness / 3.7 + power;
    const double logarithm = std::log10(inside);
    const double factor = 0.25 / (logarithm * logarithm);
    const double insideSlope = -0.9 * power / reynolds;
    return {factor, -2 * factor / (logarithm * inside * std::numbers::ln10) * insideSlope};
}

/// Cubic through both ends with their slopes.
FrictionFactor between(double reynolds, double relativeRoughness) {
    const auto a = laminar(kLaminarEnd);
    const auto b = swameeJain(kTurbulentStart, relativeRoughness);
    const double span = kTurbulentStart - kLaminarEnd;
    const double t = (reynolds - kLaminarEnd) / span;
    const double rise = b.factor - a.factor;
    const double c2 = 3 * rise - span * (2 * a.slope + b.slope);
    const double c3 = -2 * rise + span * (a.slope + b.slope);
    const double c1 = span * a.slope;
    return {a.factor + t * (c1 + t * (c2 + t * c3)), (c1 + t * (2 * c2 + 3 * t * c3)) / span};
}

}  // namespace

FrictionFactor frictionFactor(double reynolds, double relativeRoughness) {
    if (reynolds <= kLaminarEnd) return laminar(reynolds);
    if (reynolds >= kTurbulentStart) return swameeJain(reynolds, relativeRoughness);
    return between(reynolds, relativeRoughness);
}

PipeLoss pipeLoss(const Pipe& pipe, Length length, Flow flow) {
    const double bore = pipe.bore.si();
    const double area = std::numbers::pi / 4 * bore * bore;
    const double size = std::abs(flow.si());
    const double perFlow = bore / (pipe.viscosity.si() * area);  // Reynolds number per flow
    const double shape = length.si() / bore * pipe.density / (2 * area * area);
    const double reynolds = perFlow * size;
    if (reynolds <= kLaminarEnd) {
        const double slope = 64 * shape / perFlow;  // 64/Re · Q² is linear, also at no flow
        return {slope * flow.si(), slope};
    }
    const auto f = frictionFactor(reynolds, pipe.roughness.si() / bore);
    const double loss = shape * f.factor * size * size;
    return {flow.si() < 0 ? -loss : loss,
            shape * (2 * f.factor * size + f.slope * perFlow * size * size)};
}

}  // namespace bw
