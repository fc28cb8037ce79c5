// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace bw {

/// A round pipe and the liquid in it.
struct Pipe {
    Length bore;
    Length roughness = Length::fromSi(1.5e-6);  ///< smooth plastic, common practice
    KinematicViscosity viscosity = KinematicViscosity::fromSi(1e-6);  ///< water near 20 °C
    double density = 1000.0;  ///< kg/m³; of water where a mix is told by its specific gravity
};

/// Darcy friction factor and its slope on the Reynolds number. 64/Re below 2000 (Hagen–Poiseuille),
/// Swamee–Jain above 4000 (J. Hydraul. Div. ASCE 102, 1976), between them the cubic that meets both
/// in value and slope: the last lengths of a boom are laminar, and Newton's method wants no jump.
struct FrictionFactor {
    double factor = 0.0;
    double slope = 0.0;  ///< d factor / d Re
};
/// `reynolds` > 0, `relativeRoughness` = roughness / bore ≥ 0.
FrictionFactor frictionFactor(double reynolds, double relativeRoughness);

/// Pressure lost over a length of pipe, and its slope on the flow (Darcy–Weisbach). Odd in the
/// flow.
struct PipeLoss {
    double pressurePa = 0.0;
    double slopePaPerM3PerS = 0.0;  ///< > 0, also at no flow
};
PipeLoss pipeLoss(const Pipe& pipe, Length length, Flow flow);

}  // namespace bw
