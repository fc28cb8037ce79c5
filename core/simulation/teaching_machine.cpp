// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/teaching_machine.h"

#include <algorithm>
#include <cmath>

#include "core/hydraulics/boom_line.h"
#include "core/hydraulics/rate_law.h"
#include "core/model/machine_fields.h"
#include "core/model/start_values.h"
#include "core/units/parse.h"
#include "core/window/job_demand.h"

namespace bw {
namespace {

// How large a pump and valve are taken, against what the fast speed needs. Judgement.
constexpr double kPumpFlow = 1.3;
constexpr double kShutOff = 1.8;
constexpr double kCurvePressure = 1.5;
constexpr double kRelief = 2.0;
constexpr double kBypassFlow = 3.0, kBypassPressure = 0.3;  // a centrifugal pump gives way little
constexpr double kRatedPressure = 0.5;                      // a displacement pump's whole flow
constexpr double kThrottleFlow = 1.3, kThrottleLoss = 0.5;  // of what the pump has to spare

struct Need {
    Flow flow;
    Pressure pressure;
};

class Filler {
  public:
    explicit Filler(const Machine& machine) { m_out.machine = machine; }

    template <class T>
    void assume(Known<T>& field, const T& value, std::string_view key) {
        if (field) return;
        field = Sourced<T>(value, Origin::Assumed);
        m_out.assumed.emplace_back(key);
    }
    void startValues() {
        for (const auto& start : bw::startValues()) {
            if (start.use == StartUse::Range || startValue(m_out.machine, start.key) != &start)
                continue;
            const auto view = fieldView(m_out.machine, start.key);
            // The boom's pipe plays no part in the loop, and an assumed ceiling would hold a rate
            // that the machine's own controller does not.
            const bool isMeant = start.use == StartUse::Model || start.key == "control" ||
                                 start.key == "senses" || start.key == "pump.kind" ||
                                 start.key == "restrictor.fitted" || start.key == "spacing";
            if (!view || view->isKnown || !isMeant) continue;
            if (start.use != StartUse::Model) {
                if (takeStartValue(m_out.machine, start.key)) m_out.assumed.push_back(start.key);
                continue;
            }
            const auto read =
                parseQuantity(start.value, view->dimension, Unit::None, DecimalMarks::PointOnly);
            if (read.isOk() && setField(m_out.machine, start.key, read->quantity)) {
                setFieldOrigin(m_out.machine, start.key, Origin::Assumed);
                m_out.assumed.push_back(start.key);
            }
        }
    }
    void pump(const Need& need) {
        Machine& m = m_out.machine;
        assume(m.pump.kind, PumpKind::PositiveDisplacement, "pump.kind");
        const Flow stirred = m.agitation.at ? valueOr(m.agitation.flow, Flow{}) : Flow{};
        if (m.pump.kind->value == PumpKind::PositiveDisplacement) {
            assume(m.pump.ratedFlow, kPumpFlow * need.flow + stirred, "pump.rated_flow");
            const Pressure ceiling = valueOr(m.limits.pressureCeiling, Pressure{});
            assume(m.pump.reliefPressure, std::max(kRelief * need.pressure, 1.2 * ceiling),
                   "pump.relief_pressure");
        } else if (!m.pump.shutOffPressure) {
            assume(m.pump.shutOffPressure, kShutOff * need.pressure, "pump.shutoff_pressure");
            const CurvePoint point{kPumpFlow * need.flow + stirred, kCurvePressure * need.pressure};
            m.pump.curve.reset();
            assume(m.pump.curve, std::vector<CurvePoint>{point}, "pump.curve");
        }
    }
    void valve(const Need& need) {
        Machine& m = m_out.machine;
        const Control control = valueOr(m.control, Control::PumpSpeed);
        if (control == Control::PumpSpeed || (m.controlValve.flow && m.controlValve.at)) return;
        m.controlValve.flow.reset();
        m.controlValve.at.reset();
        Flow flow = kThrottleFlow * need.flow;
        Pressure at = kThrottleLoss * (most() - need.pressure);
        if (control == Control::Bypass) {
            const bool isRated = m.pump.kind->value == PumpKind::PositiveDisplacement;
            flow = isRated ? m.pump.ratedFlow->value : kBypassFlow * need.flow;
            at = (isRated ? kRatedPressure : kBypassPressure) * need.pressure;
        }
        assume(m.controlValve.flow, flow, "control_valve.flow");
        assume(m.controlValve.at, std::max(at, 0.1 * need.pressure), "control_valve.at");
    }
    /// The pump's own highest pressure.
    Pressure most() const {
        const Pump& pump = m_out.machine.pump;
        return pump.kind->value == PumpKind::PositiveDisplacement ? pump.reliefPressure->value
                                                                  : pump.shutOffPressure->value;
    }
    TeachingMachine out() && { return std::move(m_out); }
    const Machine& machine() const { return m_out.machine; }

  private:
    TeachingMachine m_out;
};

/// At the fast speed; nothing if it cannot be told.
std::optional<Need> needOf(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto demand = demandOf(job);
    const auto law = nozzleLaw(nozzle);
    const int nozzles = nozzleCount(machine);
    if (!demand || !law || nozzles <= 0 || !machine.spacing) return std::nullopt;
    const BoomLine boom(machine.sections->value, *law, squareLoss(machine.losses.section),
                        shutOffLoss(machine.checkValve), demand->specificGravity);
    const Length width = static_cast<double>(nozzles) * machine.spacing->value;
    Need need;
    need.flow = neededFlow(demand->rate, std::max(demand->fast, demand->usual), width);
    const SquareLoss series = squareLoss(machine.losses.line) + squareLoss(machine.losses.plumbing);
    need.pressure = boom.sensorAt(need.flow) + series * (need.flow * need.flow);
    if (!(need.pressure.si() > 0) || !std::isfinite(need.pressure.si())) return std::nullopt;
    return need;
}

}  // namespace

TeachingMachine teachingMachine(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    Filler filler(machine);
    filler.startValues();
    if (const auto need = needOf(filler.machine(), nozzle, job)) {
        filler.pump(*need);
        filler.valve(*need);
    }
    return std::move(filler).out();
}

}  // namespace bw
