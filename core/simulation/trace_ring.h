// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/simulation/rate_loop.h"
#include "core/simulation/trace.h"

namespace bw {

/// What a chart keeps of a step, in SI units. `shown` and `real` mean nothing while not spraying.
struct TracePoint {
    double time = 0.0;
    double speed = 0.0;
    double target = 0.0;
    double shown = 0.0;
    double real = 0.0;
    double sensor = 0.0;
    double reading = 0.0;
    bool isSpraying = true;
    bool isLimited = false;
};

/// What is read from the steady end of a run: the shown rate and the sprayed one.
struct RunReading {
    TraceReading shown;
    Spread real;      ///< on the ground, as parts of the target
    Duration length;  ///< that was read
};

/// The last steps of a run, of a fixed number: the oldest make room for new ones. Pushing allocates
/// nothing.
class TraceRing {
  public:
    explicit TraceRing(std::size_t capacity) : m_points(capacity) {}
    void push(const LoopSample& sample);
    void clear() { m_size = 0; }
    std::size_t size() const { return m_size; }
    bool empty() const { return m_size == 0; }
    /// The oldest is 0.
    const TracePoint& at(std::size_t i) const { return m_points[(m_start + i) % m_points.size()]; }
    const TracePoint& newest() const { return at(m_size - 1); }
    /// The first point that is not before `time`; size() if all are.
    std::size_t firstFrom(Duration time) const;

    /// Reads what came after `since`, without its first third, and at most the last `longest`.
    /// Nothing while less than `kLeastRead` of spraying is left. Meant for steady speed.
    std::optional<RunReading> reading(Duration since, Duration longest, double deadBand) const;
    static constexpr double kLeastRead = 8.0;  ///< s

  private:
    std::vector<TracePoint> m_points;
    std::size_t m_start = 0;
    std::size_t m_size = 0;
};

}  // namespace bw
