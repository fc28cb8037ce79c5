// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/boom_line.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

namespace bw {
namespace {

constexpr int kRootBits = 50;  // relative 1e-15: as far as doubles go
constexpr std::uintmax_t kRootSteps = 200;

/// Root of a rising function between `low` (≤ 0 there) and `high` (≥ 0 there).
template <class F>
double risingRoot(F&& f, double low, double high) {
    const double atLow = f(low);
    const double atHigh = f(high);
    if (atLow >= 0) return low;
    if (atHigh <= 0) return high;
    auto steps = kRootSteps;
    const auto [a, b] = boost::math::tools::toms748_solve(
        f, low, high, atLow, atHigh, boost::math::tools::eps_tolerance<double>(kRootBits), steps);
    return 0.5 * (a + b);
}

}  // namespace

BoomLine::BoomLine(std::vector<int> sections, NozzleLaw law, SquareLoss sectionLoss,
                   Pressure valveLoss, double specificGravity)
    : m_law(std::move(law)),
      m_loss(sectionLoss.si()),
      m_valveLoss(valveLoss),
      m_gravity(specificGravity) {
    std::sort(sections.begin(), sections.end());
    for (const int size : sections) {
        if (m_groups.empty() || m_groups.back().size != size) m_groups.push_back({size, 0});
        ++m_groups.back().count;
        m_nozzles += size;
    }
    m_smallest = sections.front();
    m_largest = sections.back();
    if (m_law.isSquareRoot()) {
        for (const auto& g : m_groups) m_conductance += g.count * sectionConductance(g.size);
    }
}

double BoomLine::sectionConductance(int size) const {
    const double nozzles = size * m_law.qRef().si();
    return 1.0 / std::sqrt(m_loss + m_law.pRef().si() / (nozzles * nozzles));
}

Pressure BoomLine::sensorFor(Pressure nozzle, int sectionNozzles) const {
    const double flow = sectionNozzles * m_law.flow(nozzle, m_gravity).si();
    return m_valveLoss + Pressure::fromSi(m_gravity * m_loss * flow * flow) + nozzle;
}

Flow BoomLine::sectionFlow(Pressure overValve, int size) const {
    if (overValve.si() <= 0) return {};
    if (m_law.isSquareRoot())
        return Flow::fromSi(sectionConductance(size) * std::sqrt(overValve.si() / m_gravity));
    const Flow free = size * m_law.flow(overValve, m_gravity);
    if (m_loss <= 0) return free;
    const auto excess = [&](double q) {
        return m_gravity * m_loss * q * q + m_law.pressure(Flow::fromSi(q / size), m_gravity).si() -
               overValve.si();
    };
    return Flow::fromSi(risingRoot(excess, 0.0, free.si()));
}

Pressure BoomLine::nozzleAt(Pressure sensor, int sectionNozzles) const {
    const Pressure over = sensor - m_valveLoss;
    if (over.si() <= 0) return {};
    return m_law.pressure(sectionFlow(over, sectionNozzles) / static_cast<double>(sectionNozzles),
                          m_gravity);
}

Flow BoomLine::flowAt(Pressure sensor) const {
    const Pressure over = sensor - m_valveLoss;
    if (over.si() <= 0) return {};
    if (m_law.isSquareRoot()) return Flow::fromSi(m_conductance * std::sqrt(over.si() / m_gravity));
    Flow sum;
    for (const auto& g : m_groups) sum += g.count * sectionFlow(over, g.size);
    return sum;
}

Pressure BoomLine::sensorAt(Flow boom) const {
    if (boom.si() <= 0) return m_valveLoss;
    if (m_law.isSquareRoot()) {
        const double ratio = boom.si() / m_conductance;
        return m_valveLoss + Pressure::fromSi(m_gravity * ratio * ratio);
    }
    const Pressure mean = meanNozzlePressure(boom);
    if (m_groups.size() == 1 || m_loss <= 0) return sensorFor(mean, m_groups.front().size);
    // Between the needs of the smallest and the largest section if each nozzle had the mean flow.
    const double low = sensorFor(mean, m_smallest).si();
    const double high = sensorFor(mean, m_largest).si();
    return Pressure::fromSi(risingRoot(
        [&](double p) { return flowAt(Pressure::fromSi(p)).si() - boom.si(); }, low, high));
}

Pressure BoomLine::meanNozzlePressure(Flow boom) const {
    return m_law.pressure(boom / static_cast<double>(m_nozzles), m_gravity);
}

SquareLoss squareLoss(const Loss& loss) {
    if (!loss.pressure || !loss.at || loss.at->value.si() <= 0) return {};
    return loss.pressure->value / (loss.at->value * loss.at->value);
}

Pressure shutOffLoss(const ShutOffValve& valve) {
    if (!valve.openingPressure) return {};
    return valueOr(valve.kind, ShutOffKind::Ball) == ShutOffKind::Ball
               ? valve.openingPressure->value
               : Pressure{};
}

}  // namespace bw
