// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/circuit.h"

#include <algorithm>
#include <cmath>

#include "core/hydraulics/circuit_setting.h"

namespace bw {
namespace {

/// Pump outlet pressure with the throttle passing `metered`: the pump at full speed feeds it and
/// the branches.
double outletAhead(const CircuitParts& parts, const CircuitSetting& full, double metered) {
    const double gravity = parts.boom.specificGravity();
    double outlet = 0.0;
    if (full.isCentrifugal()) {
        const auto excess = [&](double p) {
            const double total = metered + full.branches() * std::sqrt(p / gravity);
            return p - (full.head() - full.droop() * total * total);
        };
        outlet = risingRoot(excess, 0.0, full.head()).x;
    } else {
        const double spare = full.available() - metered;
        outlet = full.branches() > 0
                     ? gravity * (spare / full.branches()) * (spare / full.branches())
                     : kCircuitInfinity;
    }
    return parts.pump->relief ? std::min(outlet, parts.pump->relief->si()) : outlet;
}

/// The control setting that sprays a flow inside the reach, worked out backward from the boom.
std::optional<double> controlFor(const CircuitParts& parts, double sensor) {
    const double gravity = parts.boom.specificGravity();
    const CircuitSetting full(parts, 1.0);
    const double metered = full.meteredAt(sensor);
    const double fixed = parts.line.si() + parts.plumbing.si() + parts.restrictor.si();
    const double behind = sensor + gravity * fixed * metered * metered;
    if (parts.control == Control::PumpSpeed) {
        const double total = metered + full.branches() * std::sqrt(behind / gravity);
        const PumpParts& pump = *parts.pump;
        if (!full.isCentrifugal()) return total / (pump.rated.si() * pump.health);
        return std::sqrt((behind + full.droop() * total * total) /
                         (gravity * pump.health * pump.shutOff.si()));
    }
    if (!parts.valve || parts.valve->conductance <= 0) return std::nullopt;
    if (parts.control == Control::Throttle) {
        const double outlet = outletAhead(parts, full, metered);
        const double loss = (outlet - behind) / (gravity * metered * metered);
        return loss > 0 ? std::min(1.0, 1 / (std::sqrt(loss) * parts.valve->conductance)) : 1.0;
    }
    // A flat pump holds its pressure whatever the by-pass takes: no opening of it changes the flow.
    if (full.isCentrifugal() && !(full.droop() > 0)) return 1.0;
    const double branched = full.branches() * std::sqrt(behind / gravity);
    const double given = full.isCentrifugal()
                             ? std::sqrt(std::max(0.0, (full.head() - behind) / full.droop()))
                             : full.available();
    const double spare = std::min(given, full.suctionMost()) - metered - branched;
    return std::clamp(1 - spare / (parts.valve->conductance * std::sqrt(behind / gravity)), 0.0,
                      1.0);
}

CircuitState notReached() {
    return {};
}

}  // namespace

CircuitState Circuit::atControl(double control) const {
    if (!m_parts.pump) return notReached();
    return CircuitSetting(m_parts, std::clamp(control, 0.0, 1.0)).solve(false);
}

CircuitState Circuit::atControlByRoot(double control) const {
    if (!m_parts.pump) return notReached();
    return CircuitSetting(m_parts, std::clamp(control, 0.0, 1.0)).solve(true);
}

std::optional<Flow> Circuit::mostByPump() const {
    if (!m_parts.pump) return std::nullopt;
    CircuitSetting full(m_parts, 1.0);
    const double sensor = full.isCentrifugal()
                              ? full.sensorOnCurve()
                              : full.sensorAtTotal(m_parts.pump->rated.si() *
                                                   m_parts.pump->topSpeed * m_parts.pump->health);
    return m_parts.boom.flowAt(Pressure::fromSi(sensor));
}

std::optional<Flow> Circuit::mostByRelief() const {
    if (!m_parts.pump || !m_parts.pump->relief) return std::nullopt;
    CircuitSetting full(m_parts, 1.0);
    return m_parts.boom.flowAt(Pressure::fromSi(full.sensorAtOutlet(m_parts.pump->relief->si())));
}

std::optional<Flow> Circuit::mostBySuction() const {
    if (!m_parts.pump) return std::nullopt;
    CircuitSetting full(m_parts, 1.0);
    if (!std::isfinite(full.suctionMost())) return std::nullopt;
    return m_parts.boom.flowAt(Pressure::fromSi(full.sensorAtTotal(full.suctionMost())));
}

std::optional<Flow> Circuit::least() const {
    if (!m_parts.pump) return std::nullopt;
    if (m_parts.control == Control::Bypass && !m_parts.valve) return std::nullopt;
    if (m_parts.control == Control::Throttle && !m_parts.valve) return Flow{};
    return atControl(0.0).sprayed;
}

Circuit::Most Circuit::mostHolding(Pressure held, SquareLoss boomLoss) const {
    if (!m_parts.pump) return {};
    const CircuitSetting full(m_parts, 1.0);
    const double gravity = m_parts.boom.specificGravity();
    const double series = full.series() + boomLoss.si();
    const auto outlet = [&](double flow) { return held.si() + gravity * series * flow * flow; };
    const auto total = [&](double flow) {
        return flow + full.branches() * std::sqrt(outlet(flow) / gravity);
    };
    const auto mostWhere = [&](auto&& excess) {  // rises with flow
        double high = 1e-3;
        for (int i = 0; i < 60 && excess(high) < 0; ++i) high *= 2;
        return Flow::fromSi(risingRoot(excess, 0.0, high).x);
    };
    Most most;
    if (full.isCentrifugal()) {
        most.pump = mostWhere([&](double q) {
            return outlet(q) - (full.head() - full.droop() * total(q) * total(q));
        });
    } else {
        const double displaced =
            m_parts.pump->rated.si() * m_parts.pump->topSpeed * m_parts.pump->health;
        most.pump = mostWhere([&](double q) { return total(q) - displaced; });
    }
    if (m_parts.pump->relief)
        most.relief = mostWhere([&](double q) { return outlet(q) - m_parts.pump->relief->si(); });
    if (std::isfinite(full.suctionMost()))
        most.suction = mostWhere([&](double q) { return total(q) - full.suctionMost(); });
    return most;
}

CircuitState Circuit::atFlow(Flow boom) const {
    if (!m_parts.pump) return notReached();
    CircuitState full = atControl(1.0);
    if (boom.si() > full.sprayed.si() * (1 + kCircuitReached)) {
        if (full.limitedBy == CircuitLimit::None) full.limitedBy = CircuitLimit::Pump;
        return full;
    }
    if (const auto lowest = least(); lowest && boom.si() < lowest->si() * (1 - kCircuitReached)) {
        CircuitState state = atControl(0.0);
        state.limitedBy = CircuitLimit::ControlMinimum;
        return state;
    }
    const auto control = controlFor(m_parts, m_parts.boom.sensorAt(boom).si());
    if (!control) {
        CircuitState state = full;
        state.control.reset();
        state.status = SolveStatus::NotReached;
        return state;
    }
    return atControl(*control);
}

std::optional<Pressure> Circuit::mostSensorPressure(Flow boom) const {
    if (!m_parts.pump || m_parts.restrictorUnknown) return std::nullopt;
    const CircuitSetting full(m_parts, 1.0);
    const double metered = boom.si();
    if (!full.isCentrifugal() && metered >= full.available()) return Pressure{};
    const double outlet =
        std::min(outletAhead(m_parts, full, metered), full.outletBySuction(metered));
    const double lost = m_parts.boom.specificGravity() * full.series() * metered * metered;
    return Pressure::fromSi(std::max(0.0, outlet - lost));
}

}  // namespace bw
