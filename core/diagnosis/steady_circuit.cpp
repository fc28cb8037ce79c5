// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/steady_circuit.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <numbers>

#include "core/base/numeric.h"
#include "core/simulation/rate_loop.h"
#include "core/simulation/stability.h"

namespace bw {
namespace {

constexpr double kOff = 0.03;           ///< shown off target by more: stuck (the trace's own)
constexpr double kSwing = 0.04;         ///< a larger spread: hunting (the trace's own)
constexpr double kOffBorder = 0.008;    ///< this near a border the word is not sure: the dead band
constexpr double kSwingBorder = 0.012;  ///< leaves the rest open, theory is not the run
constexpr double kGainBorder = 0.15;    ///< of the stable limit
constexpr double kSwingBlur = 2.5;      ///< a reading taken amid a swing (judgement)
constexpr double kWeak = 0.95;          ///< a nozzle with less than this of its neighbours is weak

/// Scatter of the flow meter at a flow, as the running loop has it.
double meterScatter(const LoopSetup& s, Flow metered) {
    const double minimum = s.meterMinimum().si();
    double out = s.meter.noise + s.meter.noiseAdded;
    if (minimum > 0) out += s.meter.noiseBelow * std::max(0.0, 1 - metered.si() / minimum);
    return out;
}

/// Mean of max(0, 1 + σξ): a meter never counts backward.
double noisyMean(double scatter) {
    if (!(scatter > 0.1)) return 1.0;
    const double z = 1 / scatter;
    return 0.5 * std::erfc(-z / std::numbers::sqrt2) +
           scatter * std::exp(-0.5 * z * z) / std::sqrt(2 * std::numbers::pi);
}

double meteredAt(const LoopSetup& s, double sensor) {
    const BoomLine& boom = s.parts.boom;
    return boom.flowAt(Pressure::fromSi(sensor)).si() +
           s.parts.manifoldLeak.conductance *
               std::sqrt(std::max(sensor, 0.0) / boom.specificGravity());
}

double sensorFor(const LoopSetup& s, double metered) {
    const double without = s.parts.boom.sensorAt(Flow::fromSi(metered)).si();
    if (!(s.parts.manifoldLeak.conductance > 0)) return without;
    return risingRoot([&](double p) { return meteredAt(s, p) - metered; }, 0.0, without).x;
}

/// One steady state, in SI.
struct Rest {
    const LoopSetup& s;
    const SteadyWish& wish;
    double target;  ///< flow that the controller wants
    double pressure = 0.0;
    bool held = false;  ///< by floor, ceiling, or what the line can give
    bool atFloor = false;
    bool atCeiling = false;
    CircuitState state;

    Rest(const LoopSetup& setup, const SteadyWish& w) : s(setup), wish(w) {
        target = s.target.si() * s.meter.speedScale * wish.speed.si() * s.widthOn().si() *
                 s.meter.widthScale;
        const Circuit circuit(s.running());
        if (s.senses == Senses::Nothing) {
            state = circuit.atControl(s.need.control.value_or(1.0));
            return;
        }
        pressure = wanted();
        clampToLimits();
        const double boom = s.parts.boom.flowAt(Pressure::fromSi(pressure)).si();
        if (std::isinf(pressure) || !(boom > 0)) {
            state = circuit.atControl(boom > 0 ? 1.0 : 0.0);
            held = true;
        } else {
            state = circuit.atFlow(Flow::fromSi(boom));
            if (state.limitedBy != CircuitLimit::None) {  // the limit is not reached
                held = true;
                atFloor = atCeiling = false;
            }
        }
    }
    double wanted() const {
        if (wish.atStop) return *wish.atStop ? std::numeric_limits<double>::infinity() : 0.0;
        const double flow = target * wish.restsAt;
        if (s.senses == Senses::Pressure)
            return s.entered.sensorAt(Flow::fromSi(flow)).si() / s.meter.sensorScale;
        return sensorFor(s, flow / s.meter.scale);
    }
    void clampToLimits() {
        const auto limit = [&](const std::optional<Pressure>& at, double way, bool& isAt) {
            if (!at || way * (pressure * s.meter.sensorScale - at->si()) <= 0) return;
            pressure = at->si() / s.meter.sensorScale;
            atFloor = atCeiling = false;
            held = isAt = true;
        };
        limit(s.floor, -1, atFloor);
        limit(s.ceiling, 1, atCeiling);  // wins over the floor
    }
    double reading() const { return state.sensor.si() * s.meter.sensorScale; }
    double shownFlow() const {
        if (s.senses == Senses::Pressure) return s.entered.flowAt(Pressure::fromSi(reading())).si();
        const double flow = s.meter.scale * state.metered.si();
        return held ? flow * noisyMean(meterScatter(s, state.metered)) : flow;
    }
    double shownRatio() const { return shownFlow() / target; }
    /// Flow of one nozzle of a section.
    double nozzleIn(const BoomSection& section) const {
        return s.parts.boom.sectionFlow(state.sensor, section).si() / section.nozzles;
    }
    double goodNozzle() const { return nozzleIn(s.parts.boom.sections().back()); }
    double weakNozzle() const {
        const BoomSection& first = s.parts.boom.sections().front();
        if (wish.oneNozzle == 1.0 || !(first.openNozzles > 0)) return nozzleIn(first);
        return s.parts.boom.sectionFlow(state.sensor, first).si() / first.openNozzles *
               wish.oneNozzle;
    }
};

void set(Readings& readings, Reading kind, double value) {
    readings[static_cast<std::size_t>(kind)] = value;
}

void fillReadings(const Rest& r, bool swings, Scenario& out) {
    set(out.readings, Reading::SensorPressure, r.reading());
    set(out.readings, Reading::GaugePressure, r.state.sensor.si());
    set(out.readings, Reading::PumpPressure, r.state.pumpOutlet.si());
    set(out.readings, Reading::SuctionVacuum, r.state.suctionLoss.si());
    if (r.state.control) set(out.readings, Reading::ControlPosition, *r.state.control);
    set(out.readings, Reading::CatchGood, r.goodNozzle());
    set(out.readings, Reading::CatchWeak, r.weakNozzle());
    if (r.s.senses == Senses::Nothing) return;
    set(out.readings, Reading::ShownFlow, r.shownFlow());
    set(out.readings, Reading::ShownRate, r.shownRatio() * r.s.target.si());
    if (r.held && !swings && !r.wish.atStop)
        set(out.readings, Reading::RightFrom,
            r.shownRatio() * r.s.meter.speedScale * r.wish.speed.si());
}

/// Swing of the loop itself: nothing where it is not sure.
std::optional<bool> loopSwings(const Rest& r, double strokeGain) {
    if (r.held || r.s.control.isReversed) return false;
    const LoopControl& c = r.s.control;
    const Duration half = Duration::fromSi(RateLoop::kStep / 2);
    const double limit = gainLimit(c.deadTime + half, c.hydraulicLag, c.meterLag).gain;
    const double part = c.gain * strokeGain / limit;
    // A stepping actuator goes to and fro across the target by one step.
    const double step = c.stiction * strokeGain;
    const bool steps = step > 2 * c.deadBand;
    if (part > 1 + kGainBorder || (steps && step / 2 > kSwing + kSwingBorder)) return true;
    if (part > 1 - kGainBorder || (steps && step / 2 > kSwing - kSwingBorder)) return std::nullopt;
    return false;
}

constexpr double kLoopSwing = 0.15;  ///< about what a swing of the loop spreads

/// How far the shown rate swings about its mean (standard deviation, part of the target); nothing
/// where it is not sure whether the loop swings.
std::optional<double> spreadAt(const Rest& r) {
    if (r.s.senses == Senses::Nothing) return std::nullopt;
    const double gain =
        r.held || !r.state.control ? 0.0 : flowPerStroke(Circuit(r.s.running()), *r.state.control);
    const auto loop = loopSwings(r, gain);
    if (!loop) return std::nullopt;
    if (*loop) return kLoopSwing;
    const auto noise = noiseSpread(r.s, r.state.metered, gain);
    return noise ? std::optional(*noise * r.shownRatio()) : std::nullopt;
}

/// The trace's own rule (core/simulation/trace.h), with nothing said near its borders.
std::optional<Shown> verdictOf(const Rest& r, std::optional<double> spread) {
    if (!spread) return std::nullopt;
    const double off = r.shownRatio() - 1;
    if (std::abs(off) < 2 * *spread || *spread < kSwing) {
        if (std::abs(*spread - kSwing) < kSwingBorder) return std::nullopt;
        if (*spread > kSwing) return Shown::Hunting;
    }
    if (std::abs(std::abs(off) - kOff) < kOffBorder) return std::nullopt;
    if (std::abs(off) < kOff) return Shown::OnRate;
    return off > 0 ? Shown::StuckHigh : Shown::StuckLow;
}

/// How far off the rate is at another speed, swing or mean; nothing where that is not sure.
std::optional<double> badnessAt(const LoopSetup& setup, SteadyWish wish, double part) {
    wish.speed = part * wish.speed;
    const Rest rest(setup, wish);
    const auto spread = spreadAt(rest);
    if (!spread) return std::nullopt;
    return std::max(std::abs(rest.shownRatio() - 1), *spread);
}

/// Answers that follow from the sums: at which end of the speeds it goes wrong, what holds the
/// pressure, whether the flow goes with the speed.
void fillWords(const Rest& r, Scenario& out) {
    if (r.s.senses == Senses::Nothing || r.wish.atStop) return;
    out.words["limit_flags"] = r.atFloor ? "floor_active" : r.atCeiling ? "ceiling_active" : "none";
    if (out.shown == Shown::Hunting) {
        out.words["flow_follows_speed"] = "wanders";
    } else if (out.shown == Shown::OnRate) {
        out.words["flow_follows_speed"] = "follows";
    } else if (out.shown && r.held) {
        out.words["flow_follows_speed"] = "constant";
    }
    constexpr double kOther = 0.25;  // of the speed, each way
    constexpr double kClear = 2.5;
    const auto slow = badnessAt(r.s, r.wish, 1 - kOther);
    const auto fast = badnessAt(r.s, r.wish, 1 + kOther);
    if (!slow || !fast || std::max(*slow, *fast) < kOff) return;
    if (*slow > kClear * *fast) out.words["speed_range"] = "slow_end";
    if (*fast > kClear * *slow) out.words["speed_range"] = "fast_end";
}

}  // namespace

std::optional<double> noiseSpread(const LoopSetup& s, Flow metered, double strokeGain) {
    using namespace std::complex_literals;
    constexpr int kPoints = 24;
    constexpr double kFrom = -4.0, kTo = 4.0;  // powers of e, rad/s
    const LoopControl& c = s.control;
    const double theta = c.deadTime.si() + RateLoop::kStep / 2;
    const double h = c.hydraulicLag.si(), m = c.meterLag.si(), memory = RateLoop::kNoiseMemory;
    const double k = c.gain * strokeGain;
    if (k >= gainLimit(Duration::fromSi(theta), c.hydraulicLag, c.meterLag).gain)
        return std::nullopt;
    const double meter = s.senses == Senses::Pressure ? s.meter.noise : meterScatter(s, metered);
    double variance = 0.0;
    for (int i = 0; i < kPoints; ++i) {
        const double at = kFrom + (kTo - kFrom) * (i + 0.5) / kPoints;
        const double w = std::exp(at);
        const auto lag = 1.0 + 1i * w * m;
        const auto loop = k * std::exp(-1i * w * theta) / (1i * w * (1.0 + 1i * w * h) * lag);
        const double through = 1 / std::norm(1.0 + loop);
        const double density = 2 * memory / (1 + w * w * memory * memory) / std::numbers::pi;
        variance += (meter * meter / std::norm(lag) + s.meter.speedNoise * s.meter.speedNoise) *
                    through * density * w * (kTo - kFrom) / kPoints;
    }
    return std::sqrt(variance);
}

Scenario steadyCircuit(const LoopSetup& setup, const SteadyWish& wish) {
    Scenario out;
    const Rest rest(setup, wish);
    if (!(rest.target > 0) || rest.state.status == SolveStatus::NotReached) return out;
    const auto spread = spreadAt(rest);
    const bool swings = !spread || *spread > kSwing;
    fillReadings(rest, swings, out);
    out.shown = verdictOf(rest, spread);
    out.real =
        rest.state.sprayed.si() / (setup.target.si() * wish.speed.si() * setup.widthOn().si());
    const double part = rest.goodNozzle() > 0 ? rest.weakNozzle() / rest.goodNozzle() : 1.0;
    out.uneven = part < kWeak || part > 1 / kWeak;
    if (wish.restsAt == 1.0) fillWords(rest, out);
    if (swings) out.blur = kSwingBlur;
    return out;
}

}  // namespace bw
