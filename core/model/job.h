// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/nozzle.h"
#include "core/model/origin.h"
#include "core/units/unit.h"

namespace bw {

/// One job of the season: a rate (or a range of rates), the speeds people really drive, the mix.
struct Job {
    std::string name;
    Known<AreaRate> rate;
    Known<AreaRate> rateLeast;
    Known<AreaRate> rateMost;
    Known<Speed> slow;  ///< absent: usual
    Known<Speed> usual;
    Known<Speed> fast;                      ///< absent: usual
    Known<double> specificGravity;          ///< weight against water; absent: 1
    std::vector<DropletCategory> droplets;  ///< wished for; empty: nothing wanted
    Known<double> driftPercent;             ///< wished for
    Known<Area> area;
    std::string pinnedNozzle;  ///< name of the nozzle this job runs with, if chosen
    std::string notes;
    bool isDemo = false;
    bool operator==(const Job&) const = default;
};

template <class J, class F>
void visitFields(J& j, F&& f) requires(std::is_same_v<std::remove_const_t<J>, Job>) {
    f("rate", j.rate);
    f("rate_least", j.rateLeast);
    f("rate_most", j.rateMost);
    f("slow", j.slow);
    f("usual", j.usual);
    f("fast", j.fast);
    f("specific_gravity", j.specificGravity);
    f("drift_percent", j.driftPercent);
    f("area", j.area);
}

}  // namespace bw
