// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/model/nozzle.h"

namespace bw {

/// A band of nozzle pressure and whether the job allows what the nozzle does there.
struct AllowedBand {
    Pressure from;
    Pressure to;
    bool isAllowed = false;
};

/// Adjoining allowed bands taken together: the nozzle pressures that will do.
struct PressureRun {
    Pressure from;
    Pressure to;
    bool bandBelow =
        false;  ///< another (not allowed) band adjoins below; else the table stops or gaps
    bool bandAbove = false;
};

/// The run that holds `needed`, else the nearest one (equal: the lower). Nothing if no band is
/// allowed. Bands need not be sorted; they must not overlap.
std::optional<PressureRun> runFor(std::vector<AllowedBand> bands, Pressure needed);

/// Droplet bands against the categories wished for.
std::vector<AllowedBand> allowedBands(const std::vector<DropletBand>& bands,
                                      const std::vector<DropletCategory>& wished);
/// Drift bands of at least `percent`.
std::vector<AllowedBand> allowedBands(const std::vector<DriftBand>& bands, double percent);

/// The band over `from ≤ p < to` (the last band includes its `to`) that holds a pressure.
template <class B>
const B* bandAt(const std::vector<B>& bands, Pressure p) {
    const B* last = nullptr;
    for (const B& band : bands) {
        if (band.from <= p && p < band.to) return &band;
        if (!last || band.to > last->to) last = &band;
    }
    return last && p == last->to ? last : nullptr;
}

}  // namespace bw
