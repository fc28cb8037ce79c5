// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/candidates.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace bw {
namespace {

// Floor and ceiling to look between where the machine's are not known. From judgement: the usual
// range of field nozzles; it orders and thins a list, nothing is reckoned with it.
const Pressure kUsualFloor = make<Pressure>(1.0, Unit::Bar);
const Pressure kUsualCeiling = make<Pressure>(6.0, Unit::Bar);

struct Ranked {
    std::string name;
    Standing standing = Standing::Neither;
    double distance = 0.0;  ///< from the middle of the pressure range, as a logarithm
};

std::optional<Ranked> ranked(const Machine& machine, const Job& job, const Nozzle& nozzle) {
    const auto model = WindowModel::make(machine, nozzle, job);
    if (!model) return std::nullopt;
    const Pressure need =
        model->line().sensorAt(model->demand().rate * model->demand().usual * model->width());
    const Pressure floor = valueOr(machine.limits.pressureFloor, kUsualFloor);
    const Pressure ceiling = valueOr(machine.limits.pressureCeiling, kUsualCeiling);
    if (need < 0.4 * floor || need > 2.0 * ceiling) return std::nullopt;
    const double middle = 0.5 * (std::log(floor.si()) + std::log(ceiling.si()));
    return Ranked{nozzle.name, standingOf(model->window(), nozzle),
                  std::abs(std::log(need.si()) - middle)};
}

}  // namespace

int rankOf(Standing standing) {
    switch (standing) {
        case Standing::Covers:
            return 0;
        case Standing::UsualOnly:
            return 1;
        case Standing::NotChecked:
            return 2;
        case Standing::Neither:
            return 3;
        case Standing::Empty:
            break;
    }
    return 4;
}

std::vector<std::string> nearestNozzles(const Machine& machine, const Job& job,
                                        const std::vector<Nozzle>& from, std::size_t most) {
    std::vector<Ranked> list;
    for (const auto& nozzle : from) {
        if (auto r = ranked(machine, job, nozzle)) list.push_back(std::move(*r));
    }
    std::stable_sort(list.begin(), list.end(), [](const auto& a, const auto& b) {
        if (rankOf(a.standing) != rankOf(b.standing))
            return rankOf(a.standing) < rankOf(b.standing);
        return a.distance < b.distance;
    });
    std::vector<std::string> names;
    for (const auto& r : list) {
        if (names.size() < most) names.push_back(r.name);
    }
    return names;
}

}  // namespace bw
