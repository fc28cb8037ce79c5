// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/window_limits.h"

#include <algorithm>

#include "core/model/program_values.h"
#include "core/window/pressure_run.h"
#include "core/window/supply.h"

namespace bw {
namespace {

/// Collects the limits of one pairing, one subject a function.
class Collector {
  public:
    Collector(const Circuit& circuit, const Machine& machine, const Nozzle& nozzle, const Job& job,
              const JobDemand& demand, Length width)
        : m_circuit(circuit),
          m_line(circuit.parts().boom),
          m_machine(machine),
          m_nozzle(nozzle),
          m_job(job),
          m_demand(demand),
          m_width(width) {}

    WindowLimits collect(RestrictorPosition position) {
        if (m_machine.pulsed.pressure) {
            setPressure(m_machine.pulsed.pressure->value);
        } else {
            controllerPressures();
            nozzleRange();
            droplets();
            drift();
            controlMinimum();
        }
        pumpSide();
        meter(position);
        topSpeed();
        std::stable_sort(m_out.flows.begin(), m_out.flows.end(), [](const auto& a, const auto& b) {
            return rankOf(a.limit, a.side) < rankOf(b.limit, b.side);
        });
        std::sort(m_out.notChecked.begin(), m_out.notChecked.end());
        return std::move(m_out);
    }

  private:
    void add(Limit limit, Side side, Flow flow, bool pins) {
        m_out.flows.push_back({limit, side, flow, pins});
    }
    void unchecked(Limit limit) { m_out.notChecked.push_back(limit); }
    void emptyBecause(Limit limit) {
        if (m_out.emptyWhy == Limit::None) m_out.emptyWhy = limit;
    }

    void controllerPressures() {
        const auto& limits = m_machine.limits;
        if (limits.pressureFloor)
            add(Limit::PressureFloor, Side::Low, m_line.flowAt(limits.pressureFloor->value), true);
        else
            unchecked(Limit::PressureFloor);
        if (limits.pressureCeiling)
            add(Limit::PressureCeiling, Side::High, m_line.flowAt(limits.pressureCeiling->value),
                true);
        else
            unchecked(Limit::PressureCeiling);
    }

    /// Low limits look at the nozzle with least pressure (largest section), high ones at that with
    /// most.
    Flow lowFlow(Pressure nozzle) const {
        return m_line.flowAt(m_line.sensorFor(nozzle, m_line.largestSection()));
    }
    Flow highFlow(Pressure nozzle) const {
        return m_line.flowAt(m_line.sensorFor(nozzle, m_line.smallestSection()));
    }

    void nozzleRange() {
        if (m_nozzle.pressureMin)
            add(Limit::NozzleMinimum, Side::Low, lowFlow(m_nozzle.pressureMin->value), false);
        else
            unchecked(Limit::NozzleMinimum);
        if (m_nozzle.pressureMax)
            add(Limit::NozzleMaximum, Side::High, highFlow(m_nozzle.pressureMax->value), false);
        else
            unchecked(Limit::NozzleMaximum);
    }

    Pressure neededAtUsual() const {
        return m_line.meanNozzlePressure(m_demand.rate * m_demand.usual * m_width);
    }

    void droplets() {
        if (m_job.droplets.empty()) return;
        if (!m_nozzle.droplets) return unchecked(Limit::Droplets);
        const auto run =
            runFor(allowedBands(m_nozzle.droplets->value, m_job.droplets), neededAtUsual());
        if (!run) return emptyBecause(Limit::DropletsNone);
        add(run->bandBelow ? Limit::DropletsTooCoarse : Limit::DropletsUnlisted, Side::Low,
            lowFlow(run->from), false);
        add(run->bandAbove ? Limit::DropletsTooFine : Limit::DropletsUnlisted, Side::High,
            highFlow(run->to), false);
    }

    void drift() {
        if (!m_job.driftPercent) return;
        if (!m_nozzle.drift) return unchecked(Limit::DriftClass);
        const auto run =
            runFor(allowedBands(m_nozzle.drift->value, m_job.driftPercent->value), neededAtUsual());
        if (!run) return emptyBecause(Limit::DriftNone);
        add(Limit::DriftClass, Side::Low, lowFlow(run->from), false);
        add(Limit::DriftClass, Side::High, highFlow(run->to), false);
    }

    void controlMinimum() {
        const auto least = m_circuit.least();
        if (!least || !isLeastFlowKnown(m_machine)) unchecked(Limit::ControlMinimum);
        if (least && least->si() > 0) add(Limit::ControlMinimum, Side::Low, *least, true);
    }

    /// Pulsed nozzles hold their pressure, so the sensor does not follow the flow by the nozzles'
    /// law.
    Circuit::Most mostOfThePump() const {
        const auto set = bare(m_machine.pulsed.pressure);
        if (!set)
            return {m_circuit.mostByPump(), m_circuit.mostByRelief(), m_circuit.mostBySuction()};
        const double share = static_cast<double>(m_line.largestSection()) / m_line.nozzles();
        return m_circuit.mostHolding(*set + m_line.valveLoss(),
                                     share * share * squareLoss(m_machine.losses.section));
    }

    void pumpSide() {
        const auto& parts = m_circuit.parts();
        if (!parts.pump) return unchecked(Limit::Pump);
        const auto most = mostOfThePump();
        // What an unknown hole takes, when narrowed, lowers what hangs on the pump's pressure: the
        // flows found without it are upper bounds, and as such they stay. (Suction feels it only by
        // what more pressure drives through the branches.)
        const bool isOpen = parts.restrictorUnknown;
        if (most.pump) add(Limit::Pump, Side::High, *most.pump, true);
        if (isOpen || !isPumpCurveKnown(m_machine)) unchecked(Limit::Pump);
        const bool displaces = parts.pump->kind == PumpKind::PositiveDisplacement;
        if (most.relief) add(Limit::ReliefValve, Side::High, *most.relief, true);
        if (most.relief ? isOpen : displaces) unchecked(Limit::ReliefValve);
        if (most.suction)
            add(Limit::Suction, Side::High, *most.suction, true);
        else
            unchecked(Limit::Suction);
    }

    void meter(RestrictorPosition position) {
        if (!hasMeter(m_machine)) return;
        const auto minimum = meterMinimum(m_machine, position);
        const auto maximum = bare(m_machine.meter.maximum);
        if (minimum) add(Limit::MeterMinimum, Side::Low, *minimum, false);
        if (maximum) add(Limit::MeterMaximum, Side::High, *maximum, false);
        if (!minimum || !maximum) unchecked(Limit::Meter);
    }

    void topSpeed() {
        if (!m_machine.limits.topSpeed) return unchecked(Limit::TopSpeed);
        add(Limit::TopSpeed, Side::High, m_demand.rate * m_machine.limits.topSpeed->value * m_width,
            false);
    }

    /// Pulsed nozzles: the nozzle stands at the set pressure at every speed; only the on-time share
    /// moves.
    void setPressure(Pressure set) {
        const Flow full = static_cast<double>(m_line.nozzles()) *
                          m_line.law().flow(set, m_line.specificGravity());
        const auto [least, most] = dutyRange(m_machine);
        add(Limit::DutyMinimum, Side::Low, least * full, true);
        add(Limit::DutyMaximum, Side::High, most * full, true);
        if (!m_nozzle.pressureMin)
            unchecked(Limit::NozzleMinimum);
        else if (set < m_nozzle.pressureMin->value)
            emptyBecause(Limit::NozzleMinimum);
        if (!m_nozzle.pressureMax)
            unchecked(Limit::NozzleMaximum);
        else if (set > m_nozzle.pressureMax->value)
            emptyBecause(Limit::NozzleMaximum);
        pulsedDroplets(set);
        pulsedDrift(set);
    }

    void pulsedDroplets(Pressure set) {
        if (m_job.droplets.empty()) return;
        if (!m_nozzle.droplets) return unchecked(Limit::Droplets);
        const auto* band = bandAt(m_nozzle.droplets->value, set);
        const auto& wished = m_job.droplets;
        if (!band || std::find(wished.begin(), wished.end(), band->category) == wished.end())
            emptyBecause(Limit::DropletsNone);
    }

    void pulsedDrift(Pressure set) {
        if (!m_job.driftPercent) return;
        if (!m_nozzle.drift) return unchecked(Limit::DriftClass);
        const auto* band = bandAt(m_nozzle.drift->value, set);
        if (!band || band->percent < m_job.driftPercent->value) emptyBecause(Limit::DriftNone);
    }

    const Circuit& m_circuit;
    const BoomLine& m_line;
    const Machine& m_machine;
    const Nozzle& m_nozzle;
    const Job& m_job;
    const JobDemand& m_demand;
    Length m_width;
    WindowLimits m_out;
};

}  // namespace

std::optional<Flow> WindowLimits::of(Limit limit) const {
    for (const auto& f : flows) {
        if (f.limit == limit) return f.flow;
    }
    return std::nullopt;
}

std::pair<double, double> dutyRange(const Machine& machine) {
    return {valueOr(machine.pulsed.dutyMin, program::kDutyLeast),
            valueOr(machine.pulsed.dutyMax, program::kDutyMost)};
}

bool hasRestrictor(const Machine& machine) {
    const auto& r = machine.restrictor;
    return r.fitted ? r.fitted->value : r.hole || r.changeoverFlow || r.position;
}

bool hasMeter(const Machine& machine) {
    const auto senses = valueOr(machine.senses, Senses::Flow);
    return senses == Senses::Flow || senses == Senses::Both;
}

std::optional<Flow> meterMinimum(const Machine& machine, RestrictorPosition position) {
    const auto fullBore = bare(machine.meter.minimumFullBore);
    if (!hasRestrictor(machine)) return fullBore;
    const auto changeover = bare(machine.restrictor.changeoverFlow);
    if (position == RestrictorPosition::FullBore) return fullBore ? fullBore : changeover;
    if (machine.meter.minimumNarrowed) return machine.meter.minimumNarrowed->value;
    if (changeover) return program::kNarrowedPart * *changeover;
    return std::nullopt;
}

WindowLimits limitsFor(const Circuit& circuit, const Machine& machine, const Nozzle& nozzle,
                       const Job& job, const JobDemand& demand, Length width,
                       RestrictorPosition position) {
    return Collector(circuit, machine, nozzle, job, demand, width).collect(position);
}

}  // namespace bw
