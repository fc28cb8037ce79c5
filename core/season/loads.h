// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/units/quantity.h"

namespace bw {

/// Spray that an area takes.
constexpr Volume sprayFor(Area area, AreaRate rate) {
    return rate * area;
}
/// Area that a volume of spray does; rate > 0.
constexpr Area areaOf(Volume spray, AreaRate rate) {
    return spray / rate;
}
/// Mass of product that brings a mass of active ingredient; `part` is the ingredient's part by
/// weight, over 0.
constexpr MassRate productFor(MassRate active, double part) {
    return active / part;
}
/// Time in which a flow (> 0) turns the whole tank over.
constexpr Duration turnoverTime(Volume tank, Flow flow) {
    return tank / flow;
}

/// A product of the mix, by volume or by mass on each area.
struct LoadProduct {
    std::string name;
    std::optional<AreaRate> volume;
    std::optional<MassRate> mass;
};
struct ProductAmount {
    std::string name;
    std::optional<Volume> volume;
    std::optional<Mass> mass;
};

struct LoadsTask {
    Volume tank;  ///< filled, > 0
    AreaRate rate;
    Area area;
    double specificGravity = 1.0;  ///< of the spray, against water
    std::vector<LoadProduct> products;
};
/// One fill of the tank.
struct Load {
    Volume volume;
    Area area;
    Mass mass;     ///< of the spray
    Volume water;  ///< volume without the liquid products; what solids take up is not known
    std::vector<ProductAmount> products;
};
struct Loads {
    int count = 0;             ///< all, the part load with them
    int fullCount = 0;         ///< full ones
    Load full;                 ///< what a full tank holds, even if none is needed
    std::optional<Load> last;  ///< the part load; nothing: it comes out even
    Load even;                 ///< if all were filled alike
    Load all;                  ///< everything together
};
/// A part load under a millionth of the tank is none. Problems: loads_not_positive (at tank, rate,
/// area, specific_gravity), loads_product_negative, loads_product_over_rate (the liquid products
/// are more than the spray), loads_too_many; a product at "products[0].rate".
Result<Loads> loadsFor(const LoadsTask& task);

}  // namespace bw
