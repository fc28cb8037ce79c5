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

Drive::Drive(const std::vector<std::pair<Duration, Speed>>& knots) {
    for (std::size_t i = 0; i < knots.size(); ++i) {
        const auto& [time, speed] = knots[i];
        double change = 0.0;
        if (i + 1 < knots.size() && knots[i + 1].first > time)
            change = (knots[i + 1].second - speed).si() / (knots[i + 1].first - time).si();
        m_knots.push_back({time.si(), speed.si(), change});
    }
}

Drive Drive::steady(Speed speed) {
    return Drive({{Duration{}, speed}});
}

Drive Drive::ramp(Speed from, Speed to, Duration start, Duration lasting) {
    return Drive({{Duration{}, from}, {start, from}, {start + lasting, to}});
}

Drive Drive::stopGo(Speed fieldSpeed, Speed headlandSpeed, Duration field, double share) {
    const Duration braking = Duration::fromSi(kBraking);
    const Duration headland = field * (fieldSpeed / headlandSpeed * share / (1 - share));
    const Duration turned = field + braking + headland;
    Drive out({{Duration{}, fieldSpeed},
               {field, fieldSpeed},
               {field + braking, headlandSpeed},
               {turned, headlandSpeed},
               {turned + braking, fieldSpeed}});
    out.m_repeats = turned + braking;
    return out;
}

Drive Drive::steps(Speed first, const std::vector<std::pair<Duration, Speed>>& changes) {
    std::vector<std::pair<Duration, Speed>> knots{{Duration{}, first}};
    for (const auto& [time, speed] : changes) {
        knots.push_back({time, knots.back().second});
        knots.push_back({time + Duration::fromSi(kStepping), speed});
    }
    return Drive(knots);
}

Speed Drive::at(Duration time) const {
    double t = time.si();
    if (m_repeats) {  // times are ≥ 0, so cutting off is rounding down
        const double rounds = t / m_repeats->si();
        t -= m_repeats->si() * static_cast<double>(static_cast<long long>(rounds));
    }
    std::size_t i = 0;
    while (i + 1 < m_knots.size() && m_knots[i + 1].time <= t) ++i;
    const Knot& knot = m_knots[i];
    return Speed::fromSi(knot.speed + knot.change * (t - knot.time));
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
