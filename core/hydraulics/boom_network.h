// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/hydraulics/nozzle_law.h"
#include "core/hydraulics/pipe_friction.h"

namespace bw {

/// One boom pipe with a nozzle at every `spacing`, fed at one or more nozzles.
struct BoomPipe {
    int nozzles = 0;
    Length spacing;
    Pipe pipe;
    std::vector<int> feeds;  ///< nozzle numbers from 1 at which the pressure is held
    bool ring =
        false;  ///< a return pipe of the same bore and run joins the last nozzle to the first
};

struct NozzlePoint {
    Pressure pressure;
    Flow flow;
};

/// How even the boom sprays. `residual`: worst mass miss at a nozzle, against the flow of one at
/// the feed.
struct BoomEvenness {
    std::vector<NozzlePoint> nozzles;
    double cv = 0.0;  ///< spread between nozzles: standard deviation (n − 1) of flow over its mean
    double drop = 0.0;  ///< from the feed to the weakest nozzle, part of the feed pressure
    int iterations = 0;
    double residual = 0.0;
};

/// The usual limit for `drop` (10 %), from memory.
inline constexpr double kUsualDrop = 0.10;

/// Global gradient method (Todini and Pilati, 1988) on a sparse Cholesky factor, to 1e-9 relative.
/// Problems: boom_needs_nozzles, boom_needs_bore, boom_needs_feed, boom_feed_outside (with the
/// number), boom_needs_pressure, boom_not_converged.
Result<BoomEvenness> boomEvenness(const BoomPipe& boom, const NozzleLaw& law, Pressure feedPressure,
                                  double specificGravity = 1.0);

}  // namespace bw
