// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/work_rate.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kMostRuns = 1e6;
constexpr double kWhole = 1e-9;  ///< a number of runs this near to a whole one is that one

bool isGood(double value, bool zeroToo = false) {
    return std::isfinite(value) && (zeroToo ? value >= 0 : value > 0);
}

std::optional<Problem> problemOf(const WorkTask& task) {
    const auto wrong = [](const char* where) { return error("work_not_positive", where); };
    if (!isGood(task.width.si())) return wrong("width");
    if (!isGood(task.speed.si())) return wrong("speed");
    if (!isGood(task.area.si())) return wrong("area");
    if (task.run && !isGood(task.run->si())) return wrong("run");
    if (task.turn && !isGood(task.turn->si(), true)) return wrong("turn");
    if (task.filling && !isGood(task.filling->si(), true)) return wrong("filling");
    if (task.loads && *task.loads < 0) return wrong("loads");
    return std::nullopt;
}

}  // namespace

Result<WorkTime> workTime(const WorkTask& task) {
    if (const auto problem = problemOf(task)) return *problem;
    WorkTime out;
    out.sprayingRate = fieldCapacity(task.width, task.speed);
    out.spraying = timeFor(task.area, out.sprayingRate);
    if (task.run) {
        const double runs = task.area / (task.width * *task.run);
        if (runs > kMostRuns) return error("work_too_many_runs", "run");
        out.runs = std::max(1, static_cast<int>(std::ceil(runs * (1 - kWhole))));
        out.turns = out.runs - 1;
        if (task.turn) out.turning = static_cast<double>(out.turns) * *task.turn;
    }
    if (task.filling && task.loads) out.filling = static_cast<double>(*task.loads) * *task.filling;
    out.total = out.spraying + out.turning + out.filling;
    out.effectiveRate = task.area / out.total;
    out.efficiency = out.spraying / out.total;
    return out;
}

}  // namespace bw
