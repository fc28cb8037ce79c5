// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace bw {

/// Nozzles in each section, left to right, as people write them: "10, 14, 12, 14, 10",
/// "10 14 12 14 10", "5 x 12" (five sections of twelve), "2 x 10, 14, 2 x 10", "60 in 5" or
/// "60 nozzles in 5 sections" where that comes out even.
/// Problems: section_list_unread, section_list_fraction, section_list_zero, section_list_negative,
/// section_list_uneven, section_list_many.
Result<std::vector<int>> parseSections(std::string_view text);
/// "10, 14, 12, 14, 10", or "5 × 12" where three or more are alike.
std::string sectionsText(const std::vector<int>& sections);

/// Nozzles by number along the boom, "15, 46", "15 46" or "15 and 46", in rising order.
/// Problems: nozzle_numbers_unread, nozzle_numbers_twice.
Result<std::vector<int>> parseNozzleNumbers(std::string_view text);
/// "15, 46"
std::string nozzleNumbersText(const std::vector<int>& nozzles);

}  // namespace bw
