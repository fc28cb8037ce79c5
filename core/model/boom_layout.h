// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

#include "core/units/quantity.h"

namespace bw {

/// Nozzles that fill a sprayed width at a spacing (> 0), each spraying one spacing; to the nearest.
inline int nozzlesAcross(Length width, Length spacing) {
    return static_cast<int>(std::lround(width / spacing));
}

}  // namespace bw
