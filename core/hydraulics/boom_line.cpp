// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/boom_line.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/base/numeric.h"

namespace bw {
namespace {

std::vector<BoomSection> alike(const std::vector<int>& sizes, SquareLoss loss) {
    std::vector<BoomSection> out;
    out.reserve(sizes.size());
    for (const int n : sizes) out.push_back({n, static_cast<double>(n), loss, true});
    return out;
}

}  // namespace

BoomLine::BoomLine(const std::vector<int>& sections, NozzleLaw law, SquareLoss sectionLoss,
                   Pressure valveLoss, double specificGravity)
    : BoomLine(alike(sections, sectionLoss), std::move(law), valveLoss, specificGravity) {}

BoomLine::BoomLine(std::vector<BoomSection> sections, NozzleLaw law, Pressure valveLoss,
                   double specificGravity)
    : m_sections(std::move(sections)),
      m_law(std::move(law)),
      m_valveLoss(valveLoss),
      m_gravity(specificGravity),
      m_builtLoss(m_sections.front().loss),
      m_largest(m_sections.front().nozzles),
      m_smallest(m_largest) {
    for (const auto& section : m_sections) {
        m_nozzles += section.nozzles;
        m_largest = std::max(m_largest, section.nozzles);
        m_smallest = std::min(m_smallest, section.nozzles);
        m_builtLoss = std::min(m_builtLoss, section.loss);
        const auto same = std::find_if(m_groups.begin(), m_groups.end(),
                                       [&](const Group& g) { return g.section == section; });
        if (same == m_groups.end())
            m_groups.push_back({section, 1});
        else
            ++same->count;
    }
    if (m_law.isSquareRoot()) {
        for (const auto& g : m_groups) m_conductance += g.count * conductanceOf(g.section);
    }
}

double BoomLine::conductanceOf(const BoomSection& section) const {
    if (!section.isOpen || section.openNozzles <= 0) return 0.0;
    const double nozzles = section.openNozzles * m_law.qRef().si();
    return 1.0 / std::sqrt(section.loss.si() + m_law.pRef().si() / (nozzles * nozzles));
}

Pressure BoomLine::sensorFor(Pressure nozzle, int sectionNozzles) const {
    const double flow = sectionNozzles * m_law.flow(nozzle, m_gravity).si();
    return m_valveLoss + Pressure::fromSi(m_gravity * m_builtLoss.si() * flow * flow) + nozzle;
}

Pressure BoomLine::nozzleAt(Pressure sensor, int sectionNozzles) const {
    return nozzleAt(sensor, BoomSection{sectionNozzles, static_cast<double>(sectionNozzles),
                                        m_builtLoss, true});
}

Flow BoomLine::flowOver(Pressure overValve, const BoomSection& section) const {
    if (overValve.si() <= 0 || !section.isOpen || section.openNozzles <= 0) return {};
    if (m_law.isSquareRoot())
        return Flow::fromSi(conductanceOf(section) * std::sqrt(overValve.si() / m_gravity));
    const Flow free = section.openNozzles * m_law.flow(overValve, m_gravity);
    const double loss = section.loss.si();
    if (loss <= 0) return free;
    if (!std::isfinite(loss)) return {};
    const auto excess = [&](double q) {
        return m_gravity * loss * q * q +
               m_law.pressure(Flow::fromSi(q / section.openNozzles), m_gravity).si() -
               overValve.si();
    };
    return Flow::fromSi(risingRoot(excess, 0.0, free.si()).x);
}

Flow BoomLine::sectionFlow(Pressure sensor, const BoomSection& section) const {
    return flowOver(sensor - m_valveLoss, section);
}

Pressure BoomLine::nozzleAt(Pressure sensor, const BoomSection& section) const {
    if (section.openNozzles <= 0) return {};
    return m_law.pressure(sectionFlow(sensor, section) / section.openNozzles, m_gravity);
}

Flow BoomLine::flowAt(Pressure sensor) const {
    const Pressure over = sensor - m_valveLoss;
    if (over.si() <= 0) return {};
    if (m_law.isSquareRoot()) return Flow::fromSi(m_conductance * std::sqrt(over.si() / m_gravity));
    Flow sum;
    for (const auto& g : m_groups) sum += g.count * flowOver(over, g.section);
    return sum;
}

Pressure BoomLine::sensorAt(Flow boom) const {
    if (boom.si() <= 0) return m_valveLoss;
    if (m_law.isSquareRoot()) {
        const double ratio = boom.si() / m_conductance;
        return m_valveLoss + Pressure::fromSi(m_gravity * ratio * ratio);
    }
    // Each section alone would need between these two: all flow shared alike, the easiest and the
    // hardest section.
    double open = 0.0;
    for (const auto& g : m_groups) open += g.section.isOpen ? g.count * g.section.openNozzles : 0.0;
    if (!(open > 0)) return Pressure::fromSi(std::numeric_limits<double>::infinity());
    const Pressure mean = m_law.pressure(boom / open, m_gravity);
    double low = 0.0;
    double high = 0.0;
    for (const auto& g : m_groups) {
        if (!g.section.isOpen || g.section.openNozzles <= 0) continue;
        const double flow = g.section.openNozzles * boom.si() / open;
        const double need =
            m_valveLoss.si() + m_gravity * g.section.loss.si() * flow * flow + mean.si();
        low = low > 0 ? std::min(low, need) : need;
        high = std::max(high, need);
    }
    if (low == high) return Pressure::fromSi(low);
    return Pressure::fromSi(
        risingRoot([&](double p) { return flowAt(Pressure::fromSi(p)).si() - boom.si(); }, low,
                   high)
            .x);
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
