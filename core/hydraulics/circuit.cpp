// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/circuit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/numeric.h"

namespace bw {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kReached = 1e-12;  // a wish this close (relative) to an end is met

/// One control setting of the line, in SI numbers: what stands in series, what branches off at the
/// pump outlet, how fast the pump turns. Solves for the boom sensor's pressure.
class Setting {
  public:
    Setting(const CircuitParts& parts, double control)
        : m_parts(parts), m_control(control), m_gravity(parts.boom.specificGravity()) {
        m_fixedSeries = parts.line.si() + parts.plumbing.si() + parts.restrictor.si();
        m_throttle = throttleLoss();
        m_outlet = parts.agitation.conductance + parts.outletLeak.conductance;
        if (parts.control == Control::Bypass && parts.valve)
            m_bypass = (1 - control) * parts.valve->conductance;
        const PumpParts& pump = *parts.pump;
        m_speed =
            parts.control == Control::PumpSpeed
                ? std::clamp(control, pump.leastSpeed, std::max(pump.topSpeed, pump.leastSpeed))
                : pump.topSpeed;
        m_suctionMost =
            parts.suction.si() > 0
                ? std::sqrt(pump.suctionAvailable.si() / (m_gravity * parts.suction.si()))
                : kInfinity;
        m_head = m_gravity * pump.health * pump.shutOff.si() * m_speed * m_speed;
        m_droop = m_gravity * (pump.droop.si() + parts.suction.si());
        m_displaced = pump.rated.si() * m_speed * pump.health;
    }

    /// Steady state; `byRoot` keeps the closed form out.
    CircuitState solve(bool byRoot) {
        if (!std::isfinite(m_throttle)) return shutIn();
        const bool closed = !byRoot && m_parts.boom.isHomogeneous() && sensorConductance() > 0;
        double sensor = closed ? closedSensor() : rootSensor();
        CircuitState state = fill(sensor);
        state.status = closed ? SolveStatus::Closed : SolveStatus::Root;
        return state;
    }

    double meteredAt(double sensor) const {
        return m_parts.boom.flowAt(Pressure::fromSi(sensor)).si() +
               m_parts.manifoldLeak.conductance * std::sqrt(std::max(sensor, 0.0) / m_gravity);
    }
    double series() const { return m_fixedSeries + m_throttle; }
    double outletAt(double sensor) const {
        const double flow = meteredAt(sensor);
        return sensor + m_gravity * series() * flow * flow;
    }
    double branches() const { return m_outlet + m_bypass; }
    double totalAt(double sensor) const {
        return meteredAt(sensor) + branches() * std::sqrt(outletAt(sensor) / m_gravity);
    }
    double available() const { return std::min(m_displaced, m_suctionMost); }
    double suctionMost() const { return m_suctionMost; }
    double head() const { return m_head; }
    double droop() const { return m_droop; }
    bool isCentrifugal() const { return m_parts.pump->kind == PumpKind::Centrifugal; }

    /// Sensor pressure at which the pump outlet would stand at `outlet`.
    double sensorAtOutlet(double outlet) {
        if (m_parts.boom.isHomogeneous() && sensorConductance() > 0) {
            const double g = sensorConductance();
            return outlet / (1 + series() * g * g);
        }
        return root([&](double p) { return outletAt(p) - outlet; }, outlet);
    }
    /// Sensor pressure at which the pump would pass `total`.
    double sensorAtTotal(double total) {
        if (m_parts.boom.isHomogeneous() && sensorConductance() > 0) {
            const double boom = total / (1 + branches() * std::sqrt(resistance()));
            const double ratio = boom / sensorConductance();
            return m_gravity * ratio * ratio;
        }
        return root([&](double p) { return totalAt(p) - total; }, highestSensor(total));
    }
    /// Sensor pressure at which a centrifugal pump's head is used up.
    double sensorOnCurve() {
        if (m_parts.boom.isHomogeneous() && sensorConductance() > 0) {
            const double r = 1 + branches() * std::sqrt(resistance());
            const double boom =
                std::sqrt(m_head / m_gravity / (resistance() + m_droop / m_gravity * r * r));
            const double ratio = boom / sensorConductance();
            return m_gravity * ratio * ratio;
        }
        return sensorOnCurveByRoot();
    }
    void useRootOnly() { m_rootOnly = true; }

  private:
    double throttleLoss() const {
        if (m_parts.control != Control::Throttle || !m_parts.valve) return 0.0;
        const double opening =
            std::max(m_control, m_parts.leastOpening) * m_parts.valve->conductance;
        return opening > 0 ? 1 / (opening * opening) : kInfinity;
    }
    double sensorConductance() const {
        return m_rootOnly ? 0.0 : m_parts.boom.conductance() + m_parts.manifoldLeak.conductance;
    }
    /// D of the closed form: from pump outlet to spray.
    double resistance() const {
        const double g = sensorConductance();
        return series() + 1 / (g * g);
    }
    double sensorOnCurveByRoot() {
        return root(
            [&](double p) {
                const double total = totalAt(p);
                return outletAt(p) - (m_head - m_droop * total * total);
            },
            m_head);
    }
    double highestSensor(double total) const {
        double p = 1e5;
        for (int i = 0; i < 80 && totalAt(p) < total; ++i) p *= 2;
        return p;
    }
    template <class F>
    double root(F&& f, double high) {
        const Root found = risingRoot(f, 0.0, high);
        m_steps += found.steps;
        return found.x;
    }

    double closedSensor() {
        double sensor = isCentrifugal() ? sensorOnCurve() : sensorAtTotal(available());
        return limited(sensor);
    }
    double rootSensor() {
        m_rootOnly = true;
        double sensor = isCentrifugal() ? sensorOnCurveByRoot() : sensorAtTotal(available());
        return limited(sensor);
    }
    /// Suction and relief valve come after the pump's own law.
    double limited(double sensor) {
        if (!isCentrifugal() && m_suctionMost < m_displaced) m_limit = CircuitLimit::Suction;
        if (isCentrifugal() && totalAt(sensor) > m_suctionMost) {
            m_limit = CircuitLimit::Suction;
            sensor = sensorAtTotal(m_suctionMost);
        }
        const auto relief = m_parts.pump->relief;
        if (relief && outletAt(sensor) > relief->si() * (1 + kReached)) {
            m_limit = CircuitLimit::ReliefValve;
            sensor = sensorAtOutlet(relief->si());
            m_reliefOpen = true;
        }
        return sensor;
    }

    double pumpFlow(double outlet, double total) const {
        if (!m_reliefOpen) return total;
        const double given =
            isCentrifugal()
                ? (m_droop > 0 ? std::sqrt(std::max(0.0, (m_head - outlet) / m_droop)) : total)
                : m_displaced;
        return std::max(total, std::min(given, m_suctionMost));
    }

    CircuitState fill(double sensor) const {
        CircuitState s;
        const double metered = meteredAt(sensor);
        const double outlet = outletAt(sensor);
        const double root = std::sqrt(outlet / m_gravity);
        const double loss = m_gravity * metered * metered;
        s.iterations = m_steps;
        s.limitedBy = m_limit;
        s.control = m_control;
        s.pumpSpeed = m_speed;
        s.sensor = Pressure::fromSi(sensor);
        s.sprayed = m_parts.boom.flowAt(s.sensor);
        s.metered = Flow::fromSi(metered);
        s.agitation = Flow::fromSi(m_parts.agitation.conductance * root);
        s.outletLeak = Flow::fromSi(m_parts.outletLeak.conductance * root);
        s.bypass = Flow::fromSi(m_bypass * root);
        const double total = metered + branches() * root;
        s.pump = Flow::fromSi(pumpFlow(outlet, total));
        s.relief = s.pump - Flow::fromSi(total);
        s.pumpOutlet = Pressure::fromSi(outlet);
        s.suctionLoss =
            Pressure::fromSi(m_gravity * m_parts.suction.si() * s.pump.si() * s.pump.si());
        s.valveLoss = Pressure::fromSi(m_throttle * loss);
        s.lineLoss = Pressure::fromSi(m_parts.line.si() * loss);
        s.plumbingLoss = Pressure::fromSi(m_parts.plumbing.si() * loss);
        s.restrictorLoss = Pressure::fromSi(m_parts.restrictor.si() * loss);
        return s;
    }

    /// A shut throttle: the pump stands at shut-off, or at its relief valve; nothing reaches the
    /// boom.
    CircuitState shutIn() const {
        CircuitState s;
        s.status = SolveStatus::Closed;
        s.control = m_control;
        s.pumpSpeed = m_speed;
        const auto relief = m_parts.pump->relief;
        double outlet = 0.0;
        if (isCentrifugal())
            outlet = m_head / (1 + m_droop * branches() * branches() / m_gravity);
        else if (branches() > 0)
            outlet = m_gravity * (available() / branches()) * (available() / branches());
        else
            outlet = kInfinity;
        if (relief) outlet = std::min(outlet, relief->si());
        s.pumpOutlet = Pressure::fromSi(outlet);
        const double root = std::sqrt(outlet / m_gravity);
        s.agitation = Flow::fromSi(m_parts.agitation.conductance * root);
        s.outletLeak = Flow::fromSi(m_parts.outletLeak.conductance * root);
        const Flow branched = s.agitation + s.outletLeak;
        s.pump = isCentrifugal() ? branched : Flow::fromSi(available());
        s.relief = s.pump - branched;
        s.suctionLoss =
            Pressure::fromSi(m_gravity * m_parts.suction.si() * s.pump.si() * s.pump.si());
        s.valveLoss = s.pumpOutlet;
        return s;
    }

    const CircuitParts& m_parts;
    double m_control;
    double m_gravity;
    double m_fixedSeries = 0.0;
    double m_throttle = 0.0;
    double m_outlet = 0.0;
    double m_bypass = 0.0;
    double m_speed = 1.0;
    double m_suctionMost = kInfinity;
    double m_head = 0.0;
    double m_droop = 0.0;
    double m_displaced = 0.0;
    bool m_rootOnly = false;
    bool m_reliefOpen = false;
    CircuitLimit m_limit = CircuitLimit::None;
    int m_steps = 0;
};

/// Pump outlet pressure with the throttle passing `metered`: the pump at full speed feeds it and
/// the branches.
double outletAhead(const CircuitParts& parts, const Setting& full, double metered) {
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
                     : kInfinity;
    }
    return parts.pump->relief ? std::min(outlet, parts.pump->relief->si()) : outlet;
}

/// The control setting that sprays a flow inside the reach, worked out backward from the boom.
std::optional<double> controlFor(const CircuitParts& parts, double sensor) {
    const double gravity = parts.boom.specificGravity();
    const Setting full(parts, 1.0);
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
    return Setting(m_parts, std::clamp(control, 0.0, 1.0)).solve(false);
}

CircuitState Circuit::atControlByRoot(double control) const {
    if (!m_parts.pump) return notReached();
    return Setting(m_parts, std::clamp(control, 0.0, 1.0)).solve(true);
}

std::optional<Flow> Circuit::mostByPump() const {
    if (!m_parts.pump) return std::nullopt;
    Setting full(m_parts, 1.0);
    const double sensor = full.isCentrifugal()
                              ? full.sensorOnCurve()
                              : full.sensorAtTotal(m_parts.pump->rated.si() *
                                                   m_parts.pump->topSpeed * m_parts.pump->health);
    return m_parts.boom.flowAt(Pressure::fromSi(sensor));
}

std::optional<Flow> Circuit::mostByRelief() const {
    if (!m_parts.pump || !m_parts.pump->relief) return std::nullopt;
    Setting full(m_parts, 1.0);
    return m_parts.boom.flowAt(Pressure::fromSi(full.sensorAtOutlet(m_parts.pump->relief->si())));
}

std::optional<Flow> Circuit::mostBySuction() const {
    if (!m_parts.pump) return std::nullopt;
    Setting full(m_parts, 1.0);
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
    const Setting full(m_parts, 1.0);
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
    if (boom.si() > full.sprayed.si() * (1 + kReached)) {
        if (full.limitedBy == CircuitLimit::None) full.limitedBy = CircuitLimit::Pump;
        return full;
    }
    if (const auto lowest = least(); lowest && boom.si() < lowest->si() * (1 - kReached)) {
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

}  // namespace bw
