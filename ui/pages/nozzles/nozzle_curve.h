// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/nozzle.h"
#include "core/units/format.h"

namespace bw {

class ChartPanel;

/// Flow against pressure of one nozzle, its droplet bands as the ribbon, its range between two
/// posts.
void drawNozzleCurve(ChartPanel& chart, const Nozzle& nozzle, const NumberStyle& style);

}  // namespace bw
