// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/rate_loop.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

/// Exact share of the way that a first-order lag goes in a step.
double lagShare(Duration lag) {
    return lag.si() > 0 ? -std::expm1(-RateLoop::kStep / lag.si()) : 1.0;
}

/// The controller's reckoning of flow from pressure, over the root of the reading.
MonotoneCurve enteredCurve(const BoomLine& boom, double topRoot) {
    constexpr int kKnots = 400;
    const double start = std::sqrt(boom.valveLoss().si());
    const double top = std::max(topRoot, start + 1.0);
    std::vector<double> root{0.0};
    std::vector<double> flow{0.0};
    for (int i = 0; i <= kKnots; ++i) {
        const double r = start + (top - start) * i / kKnots;
        if (!(r > root.back())) continue;
        root.push_back(r);
        flow.push_back(boom.flowAt(Pressure::fromSi(r * r)).si());
    }
    return {std::move(root), std::move(flow)};
}

}  // namespace

RateLoop::RateLoop(LoopSetup setup, std::uint64_t seed)
    : m_setup(std::move(setup)), m_curves(LoopCurves::of(m_setup)), m_generator(seed) {
    m_sample.speed = m_setup.usual;
    settleConstants();
    startSteady();
}

void RateLoop::change(LoopSetup setup) {
    m_setup = std::move(setup);
    m_curves = LoopCurves::of(m_setup);
    settleConstants();
}

void RateLoop::settleConstants() {
    const double steps = m_setup.control.deadTime.si() / kStep;
    const double whole = std::floor(steps + 1e-9);
    m_delaySteps = static_cast<std::size_t>(whole);
    m_delayPart = std::max(0.0, steps - whole);
    if (m_delayPart < 1e-6) m_delayPart = 0.0;
    const std::size_t needed = m_delaySteps + 2;
    if (needed > m_past.size()) {  // the older ones are taken as the oldest known
        std::vector<double> longer(needed, m_past.empty() ? 0.5 : 0.0);
        for (std::size_t i = 0; !m_past.empty() && i < needed; ++i) {
            const std::size_t age = std::min(i, m_past.size() - 1);
            longer[needed - 1 - i] = m_past[(m_newest + m_past.size() - age) % m_past.size()];
        }
        m_past = std::move(longer);
        m_newest = needed - 1;
    }
    m_hydraulicShare = lagShare(m_setup.control.hydraulicLag);
    m_meterShare = lagShare(m_setup.control.meterLag);
    m_width = m_setup.widthOn().si();
    m_meterMinimum = m_setup.meterMinimum().si();
    const LoopMeter& meter = m_setup.meter;
    m_isMeterNoisy =
        meter.noise > 0 || meter.noiseAdded > 0 || (meter.noiseBelow > 0 && m_meterMinimum > 0);
    m_isSpeedNoisy = meter.speedNoise > 0;
    const double topRoot = m_curves.rootPressure.at(m_curves.rootPressure.high()) *
                           std::sqrt(std::max(m_setup.meter.sensorScale, 1.0));
    m_enteredFlow = enteredCurve(m_setup.enteredRunning(), topRoot);
}

void RateLoop::startSteady() {
    const bool byHand = m_setup.senses == Senses::Nothing;
    const double start = byHand ? m_setup.need.control.value_or(1.0) : 0.5;
    std::fill(m_past.begin(), m_past.end(), start);
    m_sample.command = m_sample.actuator = start;
    m_metered = m_curves.metered.at(start);
    m_shownFlow = sensedFlow(0.0);
    m_sample.measuredSpeed = m_sample.speed * m_setup.meter.speedScale;
    show();
}

const LoopSample& RateLoop::step() {
    const double noise = m_isSpeedNoisy ? m_speedNoise.next(m_generator) : 0.0;
    const LoopMeter& meter = m_setup.meter;
    const double measured = m_sample.speed.si() * meter.speedScale * (1 + meter.speedNoise * noise);
    m_sample.measuredSpeed = Speed::fromSi(std::max(0.0, measured));
    m_sample.targetFlow = Flow::fromSi(m_setup.target.si() * m_sample.measuredSpeed.si() * m_width *
                                       meter.widthScale);
    m_sample.isSpraying = m_sample.targetFlow.si() > 0 && m_sample.speed.si() > 0;
    control();
    flow();
    sense();
    ++m_steps;
    show();
    return m_sample;
}

void RateLoop::control() {
    const LoopControl& c = m_setup.control;
    double command = m_sample.command;
    m_sample.limit = LoopLimit::None;
    if (m_sample.isSpraying && m_setup.senses != Senses::Nothing) {
        const double error = 1 - m_shownFlow / m_sample.targetFlow.si();
        if (std::abs(error) > c.deadBand) {
            const double move = std::clamp(c.gain * error, -c.slew, c.slew) * kStep;
            command += c.isReversed ? -move : move;
        }
        if (m_setup.floor && command <= m_curves.leastControl) {
            command = m_curves.leastControl;
            m_sample.limit = LoopLimit::Floor;
        }
        if (m_setup.ceiling && command >= m_curves.mostControl) {
            command = m_curves.mostControl;
            m_sample.limit = LoopLimit::Ceiling;
        }
    }
    // A floor or ceiling that cannot be reached leaves the command at the end of the stroke.
    if (command >= 1) m_sample.limit = LoopLimit::FullControl;
    if (command <= 0) m_sample.limit = LoopLimit::LeastControl;
    m_sample.command = std::clamp(command, 0.0, 1.0);
    const double late = delayed();
    if (std::abs(late - m_sample.actuator) > c.stiction) m_sample.actuator = late;
}

double RateLoop::delayed() {
    const std::size_t size = m_past.size();
    m_newest = m_newest + 1 == size ? 0 : m_newest + 1;
    m_past[m_newest] = m_sample.command;
    const auto back = [&](std::size_t steps) {
        return m_past[m_newest >= steps ? m_newest - steps : m_newest + size - steps];
    };
    const double near = back(m_delaySteps);
    return m_delayPart > 0 ? near + m_delayPart * (back(m_delaySteps + 1) - near) : near;
}

void RateLoop::flow() {
    m_metered += m_hydraulicShare * (m_curves.metered.at(m_sample.actuator) - m_metered);
}

/// What the sensor for the flow would show at once; `noise` of variance 1.
double RateLoop::sensedFlow(double noise) const {
    const LoopMeter& meter = m_setup.meter;
    if (m_setup.senses == Senses::Pressure || m_setup.senses == Senses::Nothing) {
        const double root = m_curves.rootPressure.at(m_metered) * std::sqrt(meter.sensorScale);
        return m_enteredFlow.at(root) * std::max(0.0, 1 + meter.noise * noise);
    }
    double spread = meter.noise + meter.noiseAdded;
    if (m_meterMinimum > 0)
        spread += meter.noiseBelow * std::max(0.0, 1 - m_metered / m_meterMinimum);
    return meter.scale * m_metered * std::max(0.0, 1 + spread * noise);
}

void RateLoop::sense() {
    const double now = sensedFlow(m_isMeterNoisy ? m_meterNoise.next(m_generator) : 0.0);
    m_shownFlow += m_meterShare * (now - m_shownFlow);
}

void RateLoop::show() {
    LoopSample& s = m_sample;
    s.time = Duration::fromSi(static_cast<double>(m_steps) * kStep);
    s.target = m_setup.target;
    s.shownFlow = Flow::fromSi(m_shownFlow);
    s.metered = Flow::fromSi(m_metered);
    const double root = m_curves.rootPressure.at(m_metered);
    s.sensor = Pressure::fromSi(root * root);
    s.reading = m_setup.meter.sensorScale * s.sensor;
    s.sprayed = Flow::fromSi(s.isSpraying ? m_curves.sprayed.at(m_metered) : 0.0);
    const double ground = s.speed.si() * m_width;
    const double believed = s.measuredSpeed.si() * m_width * m_setup.meter.widthScale;
    const bool isShown = s.isSpraying && believed > 0;
    s.shown = AreaRate::fromSi(isShown ? m_shownFlow / believed : 0.0);
    s.real = AreaRate::fromSi(s.isSpraying ? s.sprayed.si() / ground : 0.0);
}

}  // namespace bw
