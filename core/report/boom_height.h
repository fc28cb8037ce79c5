// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/machine.h"
#include "core/model/nozzle.h"
#include "core/report/report_context.h"

namespace bw {

/// Height of the nozzles over the target that a publication advises, for fans of an angle.
struct PublishedHeight {
    double fanDegrees = 0.0;
    Length from, to;
    std::string source;
};
/// From resources/data/boom_heights.csv.
const std::vector<PublishedHeight>& publishedHeights();

/// What can be said of the boom height, geometry and published advice each in a sentence of its
/// own; without fan angle or spacing one sentence that it was not checked. Empty for nozzles that
/// make no fan.
std::vector<std::string> boomHeightWords(const Machine& machine, const Nozzle& nozzle,
                                         const ReportContext& context);

}  // namespace bw
