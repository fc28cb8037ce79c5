// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cause_effect/run.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr std::size_t kRoom = static_cast<std::size_t>(Run::kKept / RateLoop::kStep);
constexpr std::size_t kMarksKept = 24;
// How the scripts go, in s. Teaching values.
constexpr double kRampWait = 5, kRampLasts = 30, kFieldLasts = 40, kStepLasts = 20;

Duration seconds(double s) {
    return Duration::fromSi(s);
}

Levers leversOf(const LoopSetup& setup) {
    Levers out;
    out.speed = setup.usual;
    out.target = setup.target;
    out.isOn = setup.isOn;
    out.restrictor = setup.restrictor.position;
    out.floor = setup.floor;
    out.ceiling = setup.ceiling;
    out.gain = setup.control.gain;
    out.deadBand = setup.control.deadBand;
    return out;
}

}  // namespace

Run::Run(const LoopSetup& healthy, const JobDemand& demand, std::uint64_t seed)
    : m_healthy(healthy),
      m_demand(demand),
      m_seed(seed),
      m_asEntered(leversOf(healthy)),
      m_levers(m_asEntered),
      m_drive(Drive::steady(healthy.usual)),
      m_loop(healthy, seed),
      m_trace(kRoom),
      m_otherTrace(kRoom) {
    restart(seed);
}

Result<LoopSetup> Run::setupOf(const Levers& levers) const {
    LoopSetup out = m_healthy;
    out.target = levers.target;
    out.isOn = levers.isOn;
    out.setRestrictor(levers.restrictor);
    out.floor = levers.floor;
    out.ceiling = levers.ceiling;
    out.control.gain = levers.gain;
    out.control.deadBand = levers.deadBand;
    const Outcome applied = applyFaults(out, levers.faults);
    if (!applied) return applied.problem();
    return out;
}

Outcome Run::setLevers(const Levers& levers, std::string text) {
    if (levers == m_levers) return Done{};
    auto setup = setupOf(levers);
    if (!setup) return setup.problem();
    m_levers = levers;
    m_loop.change(std::move(setup).value());
    if (m_script != Script::Ramp) m_drive = driveNow();
    mark(std::move(text));
    return Done{};
}

void Run::setScript(Script script, double headlandShare, std::string text) {
    const bool startsAnew = script != m_script;
    m_script = script;
    m_share = headlandShare;
    m_drive = driveNow();
    if (startsAnew || script == Script::Ramp) m_driveStart = m_loop.sample().time;
    mark(std::move(text));
}

Drive Run::driveNow() const {
    const Speed at = m_levers.speed;
    switch (m_script) {
        case Script::Ramp:
            return Drive::ramp(m_demand.slow, m_demand.fast, seconds(kRampWait),
                               seconds(kRampLasts));
        case Script::StopGo:
            return Drive::stopGo(at, 0.5 * at, seconds(kFieldLasts), m_share);
        case Script::Steps:
            return Drive::steps(at, {{seconds(kStepLasts), m_demand.slow},
                                     {seconds(2 * kStepLasts), m_demand.fast},
                                     {seconds(3 * kStepLasts), at}});
        case Script::Steady:
            break;
    }
    return Drive::steady(at);
}

void Run::restart(std::uint64_t seed) {
    m_seed = seed;
    auto setup = setupOf(m_levers);
    if (!setup) return;
    m_loop = RateLoop(std::move(setup).value(), seed);
    m_drive = driveNow();
    m_driveStart = {};
    m_trace.clear();
    m_otherTrace.clear();
    m_marks.clear();
    m_other.reset();
    for (double t = 0; t < kLead; t += RateLoop::kStep) {
        m_loop.setSpeed(m_levers.speed);
        m_loop.step();
        if (t >= kLead - kLeadShown) m_trace.push(m_loop.sample());
    }
    m_driveStart = m_loop.sample().time;
    m_lastChange = seconds(kLead - kLeadShown);
    m_owed = 0.0;
    if (m_otherLevers) compareWith(m_otherLevers);
}

void Run::mark(std::string text) {
    m_lastChange = m_loop.sample().time;
    // A lever that is dragged stands for one moment: its post goes along.
    constexpr double kSameMoment = 1.0;  // s
    const bool isSame = !m_marks.empty() && (m_lastChange - m_marks.back().time).si() < kSameMoment;
    if (isSame)
        m_marks.back().text = std::move(text);
    else
        m_marks.push_back({m_lastChange, std::move(text)});
    if (m_marks.size() > kMarksKept) m_marks.erase(m_marks.begin());
}

void Run::compareWith(const std::optional<Levers>& levers) {
    m_otherLevers = levers;
    m_other.reset();
    m_otherTrace.clear();
    if (!levers) return;
    auto setup = setupOf(*levers);
    if (!setup) return;
    m_other = m_loop;
    m_other->change(std::move(setup).value());
}

void Run::moveOther(const Levers& levers) {
    auto setup = setupOf(levers);
    if (!m_other || !setup || m_otherLevers == levers) return;
    m_otherLevers = levers;
    m_other->change(std::move(setup).value());
}

void Run::step() {
    const Speed speed = m_drive.at(m_loop.sample().time - m_driveStart);
    m_loop.setSpeed(speed);
    m_trace.push(m_loop.step());
    if (!m_other) return;
    m_other->setSpeed(speed);
    m_otherTrace.push(m_other->step());
}

void Run::advance(Duration simulated) {
    m_owed += std::max(0.0, simulated.si());
    const auto steps = static_cast<std::int64_t>(std::floor(m_owed / RateLoop::kStep + 1e-9));
    m_owed = std::max(0.0, m_owed - static_cast<double>(steps) * RateLoop::kStep);
    for (std::int64_t i = 0; i < steps; ++i) step();
}

void Run::stepOnce() {
    step();
}

}  // namespace bw
