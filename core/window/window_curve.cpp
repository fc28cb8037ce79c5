// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/window_curve.h"

#include <algorithm>

#include "core/window/supply.h"

namespace bw {
namespace {

// An end far beyond the job would squeeze the job into a sliver, and a limit that pins well past
// the ends is not worth the room.
constexpr double kFarthest = 2.5;
constexpr double kPinFarthest = 1.25;

Flow flowOf(const WindowModel& model, Pressure nozzle) {
    return static_cast<double>(model.nozzles()) *
           model.line().law().flow(nozzle, model.demand().specificGravity);
}

}  // namespace

std::vector<OperatingPoint> operatingCurve(const WindowModel& model, Speed from, Speed to,
                                           int points) {
    std::vector<Speed> speeds;
    for (int i = 0; i < points; ++i)
        speeds.push_back(from + (static_cast<double>(i) / (points - 1)) * (to - from));
    for (const auto& f : model.limits().flows) {
        const Speed corner = f.flow / (model.demand().rate * model.width());
        if (f.pins && corner > from && corner < to) speeds.push_back(corner);
    }
    std::sort(speeds.begin(), speeds.end());
    std::vector<OperatingPoint> out;
    out.reserve(speeds.size());
    for (const Speed speed : speeds) out.push_back(model.at(speed));
    return out;
}

std::vector<DropletStretch> dropletStretches(const WindowModel& model) {
    std::vector<DropletStretch> out;
    if (!model.nozzle().droplets || model.machine().pulsed.pressure) return out;
    for (const auto& band : model.nozzle().droplets->value) {
        const Flow low = flowOf(model, band.from);
        const Flow high = flowOf(model, band.to);
        const auto speed = [&](Flow flow) { return flow / (model.demand().rate * model.width()); };
        out.push_back({band.category, speed(low), speed(high), model.sensorPressure(low),
                       model.sensorPressure(high)});
    }
    std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
    return out;
}

std::vector<RateBandPoint> rateBand(const WindowModel& model, Speed from, Speed to, int points) {
    std::vector<RateBandPoint> out;
    const auto& d = model.demand();
    if (d.rateLeast == d.rateMost || model.machine().pulsed.pressure) return out;
    const auto pressure = [&](AreaRate rate, Speed speed) {
        return model.sensorPressure(heldFlow(model.limits(), rate * speed * model.width()));
    };
    for (int i = 0; i < points; ++i) {
        const Speed speed = from + (static_cast<double>(i) / (points - 1)) * (to - from);
        out.push_back({speed, pressure(d.rateLeast, speed), pressure(d.rateMost, speed)});
    }
    return out;
}

std::optional<double> onTimeShare(const WindowModel& model, Flow boomFlow) {
    const auto set = bare(model.machine().pulsed.pressure);
    if (!set) return std::nullopt;
    return boomFlow / flowOf(model, *set);
}

CurveExtent extentOf(const WindowModel& model, const SpeedWindow& window) {
    const auto& d = model.demand();
    Speed least = d.slow;
    Speed most = d.fast;
    const auto take = [&](Speed speed) {
        if (speed.si() <= 0) return;
        least = std::min(least, std::max(speed, d.slow / kFarthest));
        most = std::max(most, std::min(speed, kFarthest * d.fast));
    };
    for (const auto* end : {&window.low, &window.high}) {
        if (end->speed) take(*end->speed);
    }
    if (window.allRates) {
        if (window.allRates->low.speed) take(*window.allRates->low.speed);
        if (window.allRates->high.speed) take(*window.allRates->high.speed);
    }
    const Speed pinLeast = least / kPinFarthest;
    const Speed pinMost = kPinFarthest * most;
    // Of the limits that pin, the first on each side: behind it the others change nothing.
    for (const Side side : {Side::Low, Side::High}) {
        const SpeedLimit* first = nullptr;
        for (const auto& l : window.limits) {
            if (!l.pins || l.side != side) continue;
            const bool isNearer =
                !first || (side == Side::Low ? l.speed > first->speed : l.speed < first->speed);
            if (isNearer) first = &l;
        }
        if (first) take(std::clamp(first->speed, pinLeast, pinMost));
    }
    CurveExtent extent;
    extent.from = 0.75 * least;
    extent.to = most + 0.25 * (most - least) + 0.1 * most;
    const auto ceiling = bare(model.machine().limits.pressureCeiling);
    const Pressure needed = model.at(most).sensorPressure;
    extent.top = ceiling && !model.machine().pulsed.pressure ? 1.12 * *ceiling : 1.2 * needed;
    if (model.machine().pulsed.pressure) extent.top = 1.6 * needed;
    extent.rateTop =
        std::min(std::max(1.3 * d.rateMost, 1.05 * model.at(extent.from).rate), 2.5 * d.rateMost);
    return extent;
}

std::vector<ReachPoint> pumpReach(const WindowModel& model, Speed from, Speed to, int points) {
    std::vector<ReachPoint> out;
    if (!isPumpCurveKnown(model.machine())) return out;
    for (int i = 0; i <= points; ++i) {
        const Speed speed = from + (static_cast<double>(i) / points) * (to - from);
        const auto most =
            model.circuit().mostSensorPressure(model.demand().rate * speed * model.width());
        if (most && most->isFinite()) out.push_back({speed, *most});
    }
    return out;
}

}  // namespace bw
