// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/nozzle.h"

namespace bw {

/// One nozzle size of ISO 10625: its code, the colour that goes with it and its nominal flow, which
/// the trade keeps in two records that differ by about 1.3 %.
struct NozzleSize {
    std::string code;    ///< "03", "015", "0067"
    std::string colour;  ///< in words, "blue"
    Flow metric;         ///< at `metricRating()`, 3 bar
    Flow us;             ///< at `usRating()`, 40 psi
    std::string source;  ///< where the row is from
};

/// The pressures at which the two records rate a size: 3 bar and 40 psi.
Pressure metricRating();
Pressure usRating();

/// Every known size, smallest first, from resources/data/nozzle_sizes.csv.
const std::vector<NozzleSize>& nozzleSizes();
/// The size of a code; nothing if the standard has none.
std::optional<NozzleSize> nozzleSize(std::string_view code);

/// Each size as two nozzles, metric and US record ("Size 04 (metric record)", "Size 04 (US
/// record)"). They carry no pressure range and no droplet or drift table: a size says nothing about
/// either, so those limits stay "not checked".
const std::vector<Nozzle>& builtInNozzles();

}  // namespace bw
