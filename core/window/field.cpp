// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/field.h"

#include <cmath>

#include "core/base/numeric.h"

namespace bw {
namespace {

constexpr double kStill = 1e-9;         // of the centre's speed
constexpr double kGravity = 9.80665;    // m/s², standard gravity
constexpr double kWaterDensity = 1000;  // kg/m³

Length offsetOf(int index, int nozzles, Length spacing) {
    return (index - 0.5 * (nozzles - 1)) * spacing;
}

}  // namespace

TurnPoint turnAt(Length offset, Length radius, Speed speed, AreaRate rate) {
    const double part = 1 + offset / radius;
    if (std::abs(part) < kStill) return {offset, Speed{}, std::nullopt};
    return {offset, part * speed, rate / std::abs(part)};
}

std::pair<TurnPoint, TurnPoint> turnEnds(int nozzles, Length spacing, Length radius, Speed speed,
                                         AreaRate rate) {
    return {turnAt(offsetOf(0, nozzles, spacing), radius, speed, rate),
            turnAt(offsetOf(nozzles - 1, nozzles, spacing), radius, speed, rate)};
}

std::vector<TurnPoint> turnAlong(int nozzles, Length spacing, Length radius, Speed speed,
                                 AreaRate rate) {
    std::vector<TurnPoint> out;
    for (int i = 0; i < nozzles; ++i)
        out.push_back(turnAt(offsetOf(i, nozzles, spacing), radius, speed, rate));
    return out;
}

std::vector<SlopePoint> slopeAlong(const BoomLine& line, Length spacing, Flow boom,
                                   double percent) {
    const double sine = std::sin(std::atan(percent / 100));
    const double perMetre =
        kWaterDensity * line.specificGravity() * kGravity * sine;  // Pa per m along the boom
    const int nozzles = line.nozzles();
    const auto at = [&](int i, double middle) {
        const Length y = offsetOf(i, nozzles, spacing);
        const Pressure p = Pressure::fromSi(std::max(0.0, middle - perMetre * y.si()));
        return SlopePoint{y, p, line.law().flow(p, line.specificGravity())};
    };
    const auto miss = [&](double middle) {
        double sum = 0.0;
        for (int i = 0; i < nozzles; ++i) sum += at(i, middle).flow.si();
        return sum - boom.si();
    };
    const double reach = std::abs(perMetre * offsetOf(nozzles - 1, nozzles, spacing).si());
    const double level = line.meanNozzlePressure(boom).si();
    // Very steep, the middle may stand under nothing while the low end still sprays.
    const double middle = risingRoot(miss, -reach, level + 2 * reach + 1.0).x;
    std::vector<SlopePoint> out;
    for (int i = 0; i < nozzles; ++i) out.push_back(at(i, middle));
    return out;
}

}  // namespace bw
