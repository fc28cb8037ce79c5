// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/units/quantity.h"

namespace bw {

/// Area worked in a time, m²/s.
using WorkRate = decltype(Length{} * Speed{});

/// Part of the time that a boom sprayer really sprays, the rest being turns, filling, ways and
/// stops. ASABE D497.7 (March 2011, R2020), field efficiencies; from memory.
inline constexpr double kFieldEfficiencyLow = 0.50;
inline constexpr double kFieldEfficiencyTypical = 0.65;
inline constexpr double kFieldEfficiencyHigh = 0.80;

/// Effective field capacity: width × speed × efficiency (0 to 1; 1 counts the spraying alone).
constexpr WorkRate fieldCapacity(Length width, Speed speed, double efficiency = 1.0) {
    return width * speed * efficiency;
}
/// Time that an area takes at a work rate (> 0).
constexpr Duration timeFor(Area area, WorkRate rate) {
    return area / rate;
}
/// Area worked in a time.
constexpr Area areaIn(WorkRate rate, Duration time) {
    return rate * time;
}
/// Area to be worked in each of a number of days or hours (> 0) to be done in time.
constexpr Area areaEach(Area area, double count) {
    return area / count;
}

/// One field or job, as far as its time goes. A part that is not given takes no time and is said.
struct WorkTask {
    Length width;                     ///< sprayed, > 0
    Speed speed;                      ///< > 0
    Area area;                        ///< > 0
    std::optional<Length> run;        ///< length of one run across the field, > 0
    std::optional<Duration> turn;     ///< one turn at the headland
    std::optional<int> loads;         ///< tank loads it takes
    std::optional<Duration> filling;  ///< one fill, the way there and back with it
};
struct WorkTime {
    Duration spraying;
    Duration turning;
    Duration filling;
    Duration total;
    int runs = 0;   ///< 0 where the length of a run is not known
    int turns = 0;  ///< one between each two runs
    WorkRate sprayingRate;
    WorkRate effectiveRate;
    double efficiency = 1.0;  ///< spraying time / total
};
/// Problems: work_not_positive (at width, speed, area, run, turn, filling), work_too_many_runs.
Result<WorkTime> workTime(const WorkTask& task);

}  // namespace bw
