// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/numeric.h"
#include "core/hydraulics/circuit.h"

/// How circuit.cpp solves one setting; nobody else includes this.
namespace bw {

inline constexpr double kCircuitInfinity = std::numeric_limits<double>::infinity();
inline constexpr double kCircuitReached = 1e-12;  // a wish this close (relative) to an end is met

/// One control setting of the line, in SI numbers: what stands in series, what branches off at the
/// pump outlet, how fast the pump turns. Solves for the boom sensor's pressure.
class CircuitSetting {
  public:
    CircuitSetting(const CircuitParts& parts, double control)
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
                : kCircuitInfinity;
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
    /// Outlet pressure at which the branches take what the suction side gives beside `metered`.
    double outletBySuction(double metered) const {
        const double spare = m_suctionMost - metered;
        if (spare <= 0) return 0.0;
        if (!(branches() > 0)) return kCircuitInfinity;
        return m_gravity * (spare / branches()) * (spare / branches());
    }
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
        return opening > 0 ? 1 / (opening * opening) : kCircuitInfinity;
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
        if (relief && outletAt(sensor) > relief->si() * (1 + kCircuitReached)) {
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

    /// What the pump's own law gives into its branches alone, then held by suction and relief
    /// valve.
    double shutInOutlet() {
        double outlet = kCircuitInfinity;
        if (isCentrifugal()) {
            outlet = m_head / (1 + m_droop * branches() * branches() / m_gravity);
        } else if (branches() > 0) {
            const double root = m_displaced / branches();
            outlet = m_gravity * root * root;
        }
        if (const double most = outletBySuction(0.0); most < outlet) {
            m_limit = CircuitLimit::Suction;
            outlet = most;
        }
        if (const auto relief = m_parts.pump->relief; relief && relief->si() < outlet) {
            m_limit = CircuitLimit::ReliefValve;
            m_reliefOpen = true;
            outlet = relief->si();
        }
        return outlet;
    }
    /// A shut throttle: the pump stands at shut-off, or at its relief valve; nothing reaches the
    /// boom.
    CircuitState shutIn() {
        CircuitState s;
        s.status = SolveStatus::Closed;
        s.control = m_control;
        s.pumpSpeed = m_speed;
        const double outlet = shutInOutlet();
        s.limitedBy = m_limit;
        s.pumpOutlet = Pressure::fromSi(outlet);
        const double root = std::sqrt(outlet / m_gravity);
        s.agitation = Flow::fromSi(m_parts.agitation.conductance * root);
        s.outletLeak = Flow::fromSi(m_parts.outletLeak.conductance * root);
        const Flow branched = s.agitation + s.outletLeak;
        s.pump = Flow::fromSi(pumpFlow(outlet, branched.si()));
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
    double m_suctionMost = kCircuitInfinity;
    double m_head = 0.0;
    double m_droop = 0.0;
    double m_displaced = 0.0;
    bool m_rootOnly = false;
    bool m_reliefOpen = false;
    CircuitLimit m_limit = CircuitLimit::None;
    int m_steps = 0;
};

}  // namespace bw
