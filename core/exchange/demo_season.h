// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/model/case_record.h"
#include "core/model/season.h"
#include "core/model/yard_record.h"

namespace bw {

/// The demo season: two machines with their jobs, nozzle families, two customers and three past
/// cases, what was done in the yard, all invented and every record marked so. Keys count from 1.
struct DemoSeason {
    Season season;
    std::vector<StoredCustomer> customers;
    std::vector<StoredCase> cases;
    std::vector<StoredYardRecord> yard;
};

/// The shipped demo season (resources/demo/season.json).
Result<DemoSeason> demoSeason();

/// The same from a text. Beside the problems of json.h: demo_name_unknown (`name`), where a case or
/// a machine names a record that is not there.
Result<DemoSeason> demoSeasonFromJson(std::string_view text);

}  // namespace bw
