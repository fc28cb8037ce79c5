// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/model/nozzle.h"
#include "core/units/parse.h"

namespace bw {

/// How band texts are read: the unit of bare pressures and of bare flows, and the reader's decimal
/// mark.
struct BandStyle {
    Unit pressure = Unit::Bar;
    Unit flow = Unit::LitrePerMinute;
    DecimalMarks marks = DecimalMarks::OwnPoint;
};

/// Droplet bands as people say them: "VC up to 1.6, C up to 3, M up to 6" (the first starts at
/// `start`), or with both ends, "VC 1-1.6; C 1.6-3". Any pressure may carry its unit. Empty text:
/// no bands. Problems, each naming the `part` of the text it means: band_category_unknown,
/// band_pressure_missing, band_start_missing (no `start` and none typed), band_ends_early,
/// band_overlap, and those of parseQuantity.
Result<std::vector<DropletBand>> parseDropletBands(std::string_view text,
                                                   std::optional<Pressure> start,
                                                   const BandStyle& style);
/// Drift-reduction bands: "90 % up to 2, 75 % up to 3". Problems as above; band_percent_range
/// outside 0 to 100.
Result<std::vector<DriftBand>> parseDriftBands(std::string_view text, std::optional<Pressure> start,
                                               const BandStyle& style);
/// Flow table: a row of pressure and flow per line or ";", cells parted by a tab, blanks or a comma
/// and a blank; a row without digits (a heading) is passed over. Problems: table_row_cells (names
/// the row), and those of parseQuantity.
Result<std::vector<FlowPoint>> parseFlowTable(std::string_view text, const BandStyle& style);

/// The texts that read back as the same bands ("VC 1-1.6, C 1.6-3" where gaps would be lost
/// otherwise).
std::string dropletBandText(const std::vector<DropletBand>& bands, Unit pressure, char decimalMark);
std::string driftBandText(const std::vector<DriftBand>& bands, Unit pressure, char decimalMark);
std::string flowTableText(const std::vector<FlowPoint>& rows, Unit pressure, Unit flow,
                          char decimalMark);

}  // namespace bw
