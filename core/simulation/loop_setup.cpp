// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/loop_setup.h"

#include <cmath>

#include "core/hydraulics/rate_law.h"
#include "core/window/job_demand.h"

namespace bw {
namespace {

Problem within(std::string_view part, Problem problem) {
    problem.where =
        problem.where.empty() ? std::string(part) : std::string(part) + "." + problem.where;
    return problem;
}

/// Without these a loop cannot run.
std::optional<Problem> missingPart(const Machine& machine) {
    if (machine.pulsed.pressure) return error("loop_not_pulsed", "machine.pulsed");
    const Control control = valueOr(machine.control, Control::PumpSpeed);
    const bool hasValve = machine.controlValve.flow && machine.controlValve.at;
    if (control != Control::PumpSpeed && !hasValve)
        return error("loop_needs_control_valve", "machine.control_valve");
    return std::nullopt;
}

LoopControl controlOf(const LoopSettings& loop) {
    LoopControl out;
    out.gain = valueOr(loop.gain, out.gain);
    out.deadBand = valueOr(loop.deadBand, out.deadBand);
    out.slew = valueOr(loop.slew, out.slew);
    out.deadTime = valueOr(loop.deadTime, out.deadTime);
    out.hydraulicLag = valueOr(loop.hydraulicLag, out.hydraulicLag);
    out.meterLag = valueOr(loop.meterLag, out.meterLag);
    out.stiction = valueOr(loop.stiction, out.stiction);
    return out;
}

bool isSound(const LoopControl& c) {
    constexpr double kLongest = 3600.0;  // s: beyond it is no sprayer, and the delay line must fit
    for (const double x : {c.gain, c.deadBand, c.slew, c.stiction})
        if (!(x >= 0) || !std::isfinite(x)) return false;
    for (const Duration t : {c.deadTime, c.hydraulicLag, c.meterLag})
        if (!(t.si() >= 0) || !(t.si() <= kLongest)) return false;
    return true;
}

LoopMeter meterOf(const Machine& machine, bool hasRestrictor) {
    LoopMeter out;
    const Meter& meter = machine.meter;
    out.scale = valueOr(meter.scale, out.scale);
    out.noise = valueOr(meter.noise, out.noise);
    out.noiseBelow = valueOr(meter.noiseBelow, out.noiseBelow);
    const Flow changeover =
        hasRestrictor ? valueOr(machine.restrictor.changeoverFlow, Flow{}) : Flow{};
    out.minimumFullBore = valueOr(meter.minimumFullBore, changeover);
    out.minimumNarrowed = valueOr(meter.minimumNarrowed, 0.25 * changeover);
    return out;
}

LoopRestrictor restrictorOf(const Machine& machine) {
    LoopRestrictor out;
    out.isFitted = valueOr(machine.restrictor.fitted, false);
    if (!out.isFitted) return out;
    out.position = valueOr(machine.restrictor.position, RestrictorPosition::FullBore);
    constexpr double kDischarge = 0.62;  // sharp edge, from memory
    const auto hole = bare(machine.restrictor.hole);
    out.holeUnknown = !hole;
    if (hole)
        out.narrowedLoss =
            restrictorLoss(*hole, valueOr(machine.restrictor.dischargeCoefficient, kDischarge));
    return out;
}

HealthyNeed needOf(const LoopSetup& setup) {
    HealthyNeed need;
    const CircuitParts& parts = setup.parts;
    need.flow = neededFlow(setup.target, setup.usual, setup.widthOn());
    need.sensor = parts.boom.sensorAt(need.flow);
    const SquareLoss series = parts.line + parts.plumbing + parts.restrictor;
    need.pump = need.sensor + parts.boom.specificGravity() * (series * (need.flow * need.flow));
    const CircuitState state = Circuit(parts).atFlow(need.flow);
    if (state.limitedBy == CircuitLimit::None) need.control = state.control;
    return need;
}

BoomLine withSections(const BoomLine& boom, const std::vector<bool>& isOn) {
    std::vector<BoomSection> sections = boom.sections();
    for (std::size_t i = 0; i < sections.size() && i < isOn.size(); ++i)
        sections[i].isOpen = sections[i].isOpen && isOn[i];
    return {std::move(sections), boom.law(), boom.valveLoss(), boom.specificGravity()};
}

}  // namespace

Result<LoopSetup> LoopSetup::make(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    if (const auto problem = missingPart(machine)) return *problem;
    const auto demand = demandOf(job);
    if (!demand) return within("job", demand.problem());
    const auto law = nozzleLaw(nozzle);
    if (!law) return within("nozzle", law.problem());
    const LoopRestrictor restrictor = restrictorOf(machine);
    auto parts = circuitParts(machine, *law, demand->specificGravity, restrictor.position);
    if (!parts) return within("machine", parts.problem());
    if (!parts->pump) return error("loop_needs_pump", "machine.pump");
    LoopSetup out(std::move(*parts));
    out.senses = valueOr(machine.senses, Senses::Flow);
    out.control = controlOf(machine.loop);
    out.meter = meterOf(machine, restrictor.isFitted);
    if (!isSound(out.control)) return error("loop_setting_bad", "machine.loop");
    out.restrictor = restrictor;
    out.floor = bare(machine.limits.pressureFloor);
    out.ceiling = bare(machine.limits.pressureCeiling);
    out.isOn.assign(out.parts.boom.sections().size(), true);
    out.spacing = machine.spacing->value;
    out.target = demand->rate;
    out.usual = demand->usual;
    out.profileDeadBand = out.control.deadBand;
    out.need = needOf(out);
    return out;
}

Length LoopSetup::widthOn() const {
    int nozzles = 0;
    const auto& sections = parts.boom.sections();
    for (std::size_t i = 0; i < sections.size(); ++i)
        if (isOn[i]) nozzles += sections[i].nozzles;
    return static_cast<double>(nozzles) * spacing;
}

Flow LoopSetup::meterMinimum() const {
    const Flow own = restrictor.position == RestrictorPosition::Narrowed ? meter.minimumNarrowed
                                                                         : meter.minimumFullBore;
    return std::max(own, meter.minimumByFault);
}

void LoopSetup::setRestrictor(RestrictorPosition position) {
    if (!restrictor.isFitted) return;
    restrictor.position = position;
    const bool narrowed = position == RestrictorPosition::Narrowed;
    parts.restrictor = narrowed ? restrictor.narrowedLoss : SquareLoss{};
    parts.restrictorUnknown = narrowed && restrictor.holeUnknown;
}

CircuitParts LoopSetup::running() const {
    CircuitParts out = parts;
    out.boom = withSections(parts.boom, isOn);
    return out;
}

BoomLine LoopSetup::enteredRunning() const {
    return withSections(entered, isOn);
}

}  // namespace bw
