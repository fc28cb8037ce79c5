// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/simulation/trace_ring.h"
#include "core/window/job_demand.h"

namespace bw {

/// What the trainer can move.
struct Levers {
    Speed speed;
    AreaRate target;
    std::vector<bool> isOn;  ///< section by section
    RestrictorPosition restrictor = RestrictorPosition::FullBore;
    std::optional<Pressure> floor;
    std::optional<Pressure> ceiling;
    double gain = 0.0;
    double deadBand = 0.0;
    std::vector<Fault> faults;
    bool operator==(const Levers&) const = default;
};

/// How the ground speed goes.
enum class Script { Steady, Ramp, StopGo, Steps };

/// A moment worth a post in the charts.
struct RunMark {
    Duration time;
    std::string text;
};

/// The running loop of a page with its levers: turns levers and script into a setup and a speed,
/// steps the loop and keeps the last minutes. All sums are the core's. Knows nothing of the clock:
/// it is told how far to go.
class Run {
  public:
    /// The longest that a chart shows.
    static constexpr double kKept = 300.0;  ///< s
    /// Run before the page starts, of which the last `kLeadShown` are kept.
    static constexpr double kLead = 60.0, kLeadShown = 40.0;  ///< s
    static constexpr double kShare = 0.2;                     ///< of headland, unless chosen

    Run(const LoopSetup& healthy, const JobDemand& demand, std::uint64_t seed);

    const Levers& levers() const { return m_levers; }
    const Levers& asEntered() const { return m_asEntered; }
    const LoopSetup& healthy() const { return m_healthy; }
    const JobDemand& demand() const { return m_demand; }
    /// Problems: those of applyFaults; nothing is changed then.
    Outcome setLevers(const Levers& levers, std::string mark);
    Script script() const { return m_script; }
    double headlandShare() const { return m_share; }
    void setScript(Script script, double headlandShare, std::string mark);
    std::uint64_t seed() const { return m_seed; }
    /// From the start, with other noise, levers as they are.
    void restart(std::uint64_t seed);

    /// As many whole steps as fit; the rest waits for the next call.
    void advance(Duration simulated);
    void stepOnce();

    const RateLoop& loop() const { return m_loop; }
    const TraceRing& trace() const { return m_trace; }
    const std::vector<RunMark>& marks() const { return m_marks; }
    void mark(std::string text);
    /// When something was last moved: a steady reading starts there.
    Duration lastChange() const { return m_lastChange; }

    /// A second run with the same noise, speed and state from now on; nothing: none.
    void compareWith(const std::optional<Levers>& levers);
    /// Other levers for the second run, from where it is.
    void moveOther(const Levers& levers);
    bool isComparing() const { return m_other.has_value(); }
    const std::optional<Levers>& otherLevers() const { return m_otherLevers; }
    const RateLoop* other() const { return m_other ? &*m_other : nullptr; }
    const TraceRing& otherTrace() const { return m_otherTrace; }

  private:
    Result<LoopSetup> setupOf(const Levers& levers) const;
    Drive driveNow() const;
    void step();

    LoopSetup m_healthy;
    JobDemand m_demand;
    std::uint64_t m_seed;
    Levers m_asEntered;
    Levers m_levers;
    Script m_script = Script::Steady;
    double m_share = kShare;
    Drive m_drive;
    Duration m_driveStart;
    RateLoop m_loop;
    TraceRing m_trace;
    std::optional<Levers> m_otherLevers;
    std::optional<RateLoop> m_other;
    TraceRing m_otherTrace;
    std::vector<RunMark> m_marks;
    Duration m_lastChange;
    double m_owed = 0.0;  ///< s, less than a step
};

}  // namespace bw
