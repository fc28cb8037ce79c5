// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/model/machine.h"

namespace bw {

/// Least-squares loss of head with flow of a centrifugal pump, c = Σ(a−p)Q²/ΣQ⁴ in Pa/(m³/s)²;
/// zero without points. Under zero: the curve rises, which the pump's law has no place for.
double curveFall(Pressure shutOff, const std::vector<CurvePoint>& curve);

}  // namespace bw
