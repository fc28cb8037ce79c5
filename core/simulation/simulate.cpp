// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/simulate.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kBraking = 3.0;  // s, teaching choice
constexpr double kStepping = 1.0;

void readMeans(const std::vector<LoopSample>& trace, Simulation& out) {
    std::vector<double> real;
    double n = 0.0;
    for (std::size_t i = trace.size() / 3; i < trace.size(); ++i) {
        const LoopSample& s = trace[i];
        if (!s.isSpraying) continue;
        real.push_back(s.real / s.target);
        n += 1;
        out.sensor += (s.sensor - out.sensor) / n;
        out.sensorReading += (s.reading - out.sensorReading) / n;
        out.shownFlow += (s.shownFlow - out.shownFlow) / n;
    }
    out.real = spreadOf(real);
}

}  // namespace

Drive Drive::steady(Speed speed) {
    Drive out;
    out.m_knots = {{Duration{}, speed}};
    return out;
}

Drive Drive::ramp(Speed from, Speed to, Duration start, Duration lasting) {
    Drive out;
    out.m_knots = {{Duration{}, from}, {start, from}, {start + lasting, to}};
    return out;
}

Drive Drive::stopGo(Speed fieldSpeed, Speed headlandSpeed, Duration field, double share) {
    Drive out;
    const Duration braking = Duration::fromSi(kBraking);
    const Duration headland = field * (fieldSpeed / headlandSpeed * share / (1 - share));
    const Duration turned = field + braking + headland;
    out.m_knots = {{Duration{}, fieldSpeed},
                   {field, fieldSpeed},
                   {field + braking, headlandSpeed},
                   {turned, headlandSpeed},
                   {turned + braking, fieldSpeed}};
    out.m_repeats = turned + braking;
    return out;
}

Drive Drive::steps(Speed first, const std::vector<std::pair<Duration, Speed>>& changes) {
    Drive out = steady(first);
    for (const auto& [time, speed] : changes) {
        out.m_knots.push_back({time, out.m_knots.back().second});
        out.m_knots.push_back({time + Duration::fromSi(kStepping), speed});
    }
    return out;
}

Speed Drive::at(Duration time) const {
    double t = time.si();
    if (m_repeats) t = std::fmod(t, m_repeats->si());
    const auto after = std::find_if(m_knots.begin(), m_knots.end(),
                                    [t](const auto& knot) { return knot.first.si() > t; });
    if (after == m_knots.begin()) return m_knots.front().second;
    const auto& before = *std::prev(after);
    if (after == m_knots.end()) return before.second;
    const double part = (t - before.first.si()) / (after->first - before.first).si();
    return before.second + part * (after->second - before.second);
}

Simulation simulate(const LoopSetup& setup, const SimulationWish& wish) {
    RateLoop loop(setup, wish.seed);
    Simulation out;
    const auto steps = static_cast<std::size_t>(std::lround(wish.length.si() / RateLoop::kStep));
    out.trace.reserve(steps);
    for (std::size_t i = 0; i < steps; ++i) {
        if (wish.drive) loop.setSpeed(wish.drive->at(loop.sample().time));
        out.trace.push_back(loop.step());
    }
    out.last = loop.sample();
    out.reading = readTrace(out.trace, setup.profileDeadBand);
    readMeans(out.trace, out);
    if (!wish.keepTrace) out.trace.clear();
    return out;
}

}  // namespace bw
