// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/loads.h"

#include <cmath>

#include "core/hydraulics/liquid.h"

namespace bw {
namespace {

constexpr double kMostLoads = 1e6;
constexpr double kWhole = 1e-6;  ///< part of a tank that is no load of its own

bool isPositive(double value) {
    return std::isfinite(value) && value > 0;
}

std::optional<Problem> problemOf(const LoadsTask& task) {
    const auto wrong = [](const char* where) { return error("loads_not_positive", where); };
    if (!isPositive(task.tank.si())) return wrong("tank");
    if (!isPositive(task.rate.si())) return wrong("rate");
    if (!isPositive(task.area.si())) return wrong("area");
    if (!isPositive(task.specificGravity)) return wrong("specific_gravity");
    AreaRate liquids;
    for (std::size_t i = 0; i < task.products.size(); ++i) {
        const auto& product = task.products[i];
        const double rate = product.volume ? product.volume->si()
                            : product.mass ? product.mass->si()
                                           : 0.0;
        const std::string where = "products[" + std::to_string(i) + "].rate";
        if (!std::isfinite(rate) || rate < 0) return error("loads_product_negative", where);
        liquids += product.volume.value_or(AreaRate{});
        if (liquids > task.rate) return error("loads_product_over_rate", where);
    }
    return std::nullopt;
}

Load loadOf(const LoadsTask& task, Volume volume) {
    Load out;
    out.volume = volume;
    out.area = areaOf(volume, task.rate);
    out.mass = volume * (task.specificGravity * waterDensity());
    out.water = volume;
    for (const auto& product : task.products) {
        ProductAmount amount{product.name, {}, {}};
        if (product.volume) {
            amount.volume = sprayFor(out.area, *product.volume);
            out.water -= *amount.volume;
        }
        if (product.mass) amount.mass = *product.mass * out.area;
        out.products.push_back(std::move(amount));
    }
    return out;
}

}  // namespace

Result<Loads> loadsFor(const LoadsTask& task) {
    if (const auto problem = problemOf(task)) return *problem;
    const Volume total = sprayFor(task.area, task.rate);
    const double tanks = total / task.tank;
    if (tanks > kMostLoads) return error("loads_too_many", "tank");
    Loads out;
    out.fullCount = static_cast<int>(std::floor(tanks + kWhole));
    const Volume rest = total - static_cast<double>(out.fullCount) * task.tank;
    const bool isEven = out.fullCount > 0 && rest.si() <= kWhole * task.tank.si();
    out.count = out.fullCount + (isEven ? 0 : 1);
    out.full = loadOf(task, task.tank);
    if (!isEven) out.last = loadOf(task, rest);
    out.even = loadOf(task, total / static_cast<double>(out.count));
    out.all = loadOf(task, total);
    return out;
}

}  // namespace bw
