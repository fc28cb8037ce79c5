// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/model/choice.h"
#include "core/simulation/rate_loop.h"

namespace bw {

/// What a trace of the shown rate says.
enum class TraceVerdict { OnRate, StuckHigh, StuckLow, Hunting };
template <>
struct ChoiceNames<TraceVerdict> {
    static constexpr std::array<std::pair<TraceVerdict, std::string_view>, 4> names{
        {{TraceVerdict::OnRate, "on_rate"},
         {TraceVerdict::StuckHigh, "stuck_high"},
         {TraceVerdict::StuckLow, "stuck_low"},
         {TraceVerdict::Hunting, "hunting"}}};
};

/// Where the swing of a hunting rate likely comes from.
enum class SwingSource { Loop, Stiction, Noise };

/// Mean and standard deviation, as parts of the target.
struct Spread {
    double mean = 0.0;
    double spread = 0.0;
};
/// Of at least one number.
Spread spreadOf(const std::vector<double>& parts);

/// What is read from shown over target at steady speed.
struct TraceReading {
    Spread shown;
    std::optional<Duration> period;  ///< of the swing, if it has one
    double shareAtLimit = 0.0;       ///< part of the time
    TraceVerdict verdict = TraceVerdict::OnRate;
};

/// Period of the swing in evenly spaced numbers: the highest point of the autocorrelation in its
/// first positive stretch after its first negative value, if over 0.5; up to half the length.
std::optional<Duration> swingPeriod(const std::vector<double>& values, Duration step);

/// Reads steady speed. `shown`: shown over target, evenly spaced by `step`; `deadBand`: the healthy
/// profile's. Hunting: spread over 0.04 and |mean − 1| under twice the spread; else stuck where
/// |mean − 1| is over 0.03 and over the dead band and 0.01.
TraceReading readTrace(const std::vector<double>& shown, Duration step, double deadBand);
/// The same for a simulated trace without its first third (samples while standing are left out),
/// with the share of the time at a limit.
TraceReading readTrace(const std::vector<LoopSample>& samples, double deadBand);

/// Hunting by a period near the loop's own (within a third) is the loop, by a longer one stiction,
/// without one the noise of meter, air or speed.
SwingSource swingSource(std::optional<Duration> period, std::optional<Duration> loopPeriod);

/// Time outside 5 % of target from a speed change on; over 10 s: slow to settle.
Duration timeUnsettled(const std::vector<double>& shownAfterChange, Duration step);
inline bool isSlowToSettle(Duration unsettled) {
    return unsettled.si() > 10.0;
}

}  // namespace bw
