// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/need_curve.h"

#include <cmath>

#include "core/hydraulics/rate_law.h"

namespace bw {

std::vector<NeedPoint> needCurve(const LoopSetup& setup, Speed from, Speed to, int points) {
    std::vector<NeedPoint> out;
    const Length width = setup.widthOn();
    if (!(width.si() > 0) || points < 2) return out;
    const Circuit circuit(setup.running());
    for (int i = 0; i < points; ++i) {
        NeedPoint p;
        p.speed = from + (to - from) * (static_cast<double>(i) / (points - 1));
        const Flow flow = neededFlow(setup.target, p.speed, width);
        p.needed = circuit.parts().boom.sensorAt(flow);
        p.fed = circuit.mostSensorPressure(flow);
        if (p.fed && !std::isfinite(p.fed->si())) p.fed.reset();
        if (std::isfinite(p.needed.si())) out.push_back(p);
    }
    return out;
}

std::vector<double> sectionShares(const LoopSetup& setup, const LoopSample& sample) {
    const BoomLine boom = setup.running().boom;
    std::vector<double> out(boom.sections().size(), 0.0);
    if (!sample.isSpraying) return out;
    for (std::size_t i = 0; i < out.size(); ++i) {
        const BoomSection& section = boom.sections()[i];
        const Length width = static_cast<double>(section.nozzles) * setup.spacing;
        const Flow need = neededFlow(sample.target, sample.speed, width);
        if (section.isOpen && need.si() > 0)
            out[i] = boom.sectionFlow(sample.sensor, section) / need;
    }
    return out;
}

}  // namespace bw
