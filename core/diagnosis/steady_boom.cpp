// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/steady_boom.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kOff = 0.03;       ///< shown off target by more: stuck
constexpr double kSwingBlur = 2.5;  ///< a reading taken amid a swing (judgement)
/// Beyond these parts of the needed pressure a limit that nobody knows may be at work.
constexpr double kLowPressure = 0.97;
constexpr double kHighPressure = 1.03;
constexpr double kPumpMayEnd = 1.3;

/// One steady state; flows as parts of the needed flow, pressures in SI.
struct Steady {
    const CaseNumbers& n;
    const BoomFault& f;
    double holes;   ///< all that leaves behind the meter, over the healthy boom, at a pressure
    double target;  ///< what the controller wants, as a part of the need
    double flow = 1.0;
    std::optional<double> pressure;
    bool limited = false;

    Steady(const CaseNumbers& numbers, const BoomFault& fault) : n(numbers), f(fault) {
        holes = sprayingHoles() + f.leak;
        target = f.groundMeasured;
        settle();
        clampPressure();
        clampSupply();
    }

    double sprayingHoles() const {
        return f.nozzles * (1 - f.sectionShare * (1 - f.sectionKeeps)) / std::sqrt(f.density);
    }
    void settle() {
        if (n.hasMeter()) {
            flow = target / f.meter;
            if (n.needSensor) pressure = n.sensorAt(flow / holes);
        } else if (n.needSensor) {
            setPressure(n.sensorAt(target) / f.sensor);
        } else {
            flow = target * holes;
        }
    }
    void setPressure(double p) {
        pressure = p;
        flow = holes * n.ratioAt(p);
    }
    std::optional<double> limit(const std::optional<double>& part,
                                const std::optional<Pressure>& machine) const {
        if (part) return *part * n.needSensor->si();
        return machine ? std::optional(machine->si()) : std::nullopt;
    }
    void clampPressure() {
        if (!pressure) return;
        const auto floor = limit(f.floor, n.floor);
        const auto ceiling = limit(f.ceiling, n.ceiling);
        const double shown = *pressure * f.sensor;
        if (ceiling && shown > *ceiling)
            setPressure(*ceiling / f.sensor);
        else if (floor && shown < *floor)
            setPressure(*floor / f.sensor);
        else
            return;
        limited = true;
    }
    void clampSupply() {
        if (flow <= f.supply) return;
        flow = f.supply;
        if (n.needSensor) pressure = n.sensorAt(flow / holes);
        limited = true;
    }
    double shownFlow() const {
        if (n.hasMeter()) return flow * f.meter;
        return pressure ? n.ratioAt(*pressure * f.sensor) : flow;
    }
    double sprayed() const { return flow * sprayingHoles() / holes; }
    double goodNozzle() const { return flow / holes * f.nozzles / std::sqrt(f.density); }
};

void set(Readings& readings, Reading kind, double value) {
    readings[static_cast<std::size_t>(kind)] = value;
}

void showFigures(const Steady& s, Scenario& out) {
    const CaseNumbers& n = s.n;
    if (n.senses == Senses::Nothing) return;
    if (n.needFlow) set(out.readings, Reading::ShownFlow, s.shownFlow() * n.needFlow->si());
    if (n.rate) set(out.readings, Reading::ShownRate, s.shownFlow() / s.target * n.rate->si());
    if (s.limited && n.speed && !s.f.hunts)
        set(out.readings, Reading::RightFrom,
            n.speed->si() * s.f.groundTrue * s.shownFlow() / s.target);
}

/// A limit that nobody knows may keep the rate off at this pressure.
bool unsure(const Steady& s) {
    if (s.limited || !s.pressure) return s.n.senses == Senses::Nothing;
    const double part = *s.pressure / s.n.needSensor->si();
    return (part < kLowPressure && !s.n.floor) || (part > kHighPressure && !s.n.ceiling) ||
           part > kPumpMayEnd;
}

std::optional<Shown> verdictOf(const Steady& s) {
    if (s.f.hunts) return Shown::Hunting;
    const double off = s.shownFlow() / s.target - 1;
    if (off > kOff) return Shown::StuckHigh;
    if (off < -kOff) return Shown::StuckLow;
    return unsure(s) ? std::nullopt : std::optional(Shown::OnRate);
}

}  // namespace

Scenario steadyBoom(const CaseNumbers& n, const BoomFault& f) {
    Scenario out;
    if (!n.rate || !n.speed) return out;
    const Steady s(n, f);
    showFigures(s, out);
    if (s.pressure) {
        set(out.readings, Reading::SensorPressure, *s.pressure * f.sensor);
        set(out.readings, Reading::GaugePressure, *s.pressure);
    }
    if (n.needNozzle) {
        const double catchGood = s.goodNozzle() * n.needNozzle->si();
        set(out.readings, Reading::CatchGood, catchGood);
        set(out.readings, Reading::CatchWeak, catchGood * f.sectionKeeps);
    }
    out.shown = verdictOf(s);
    out.real = s.sprayed() / f.groundTrue;
    out.uneven = f.sectionShare > 0 && f.sectionKeeps < 0.95;
    if (f.hunts) out.blur = kSwingBlur;
    return out;
}

}  // namespace bw
