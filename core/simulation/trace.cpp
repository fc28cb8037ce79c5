// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/trace.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kHuntingSpread = 0.04;
constexpr double kStuckOff = 0.03;
constexpr double kBeyondDeadBand = 0.01;
constexpr double kPeriodPeak = 0.5;
constexpr double kUnsettled = 0.05;

/// Autocorrelation at lags, each by the pairs there are.
class Correlation {
  public:
    explicit Correlation(const std::vector<double>& values) : m_values(values) {
        const Spread s = spreadOf(values);
        for (double& v : m_values) v -= s.mean;
        m_variance = s.spread * s.spread;
    }
    bool isFlat() const { return !(m_variance > 1e-18); }
    double at(std::size_t lag) const {
        double sum = 0.0;
        const std::size_t pairs = m_values.size() - lag;
        for (std::size_t i = 0; i < pairs; ++i) sum += m_values[i] * m_values[i + lag];
        return sum / static_cast<double>(pairs) / m_variance;
    }

  private:
    std::vector<double> m_values;
    double m_variance = 0.0;
};

/// Lag of the top of a parabola through three neighbours, from the middle one.
double parabolaTop(double before, double top, double after) {
    const double bend = before - 2 * top + after;
    return bend < 0 ? std::clamp(0.5 * (before - after) / bend, -0.5, 0.5) : 0.0;
}

/// A swing takes seconds: 0.1 s apart is fine enough, and the work goes with the square.
std::vector<double> thinned(const std::vector<double>& values, std::size_t every) {
    std::vector<double> out;
    for (std::size_t i = 0; i + every <= values.size(); i += every) {
        double sum = 0.0;
        for (std::size_t j = 0; j < every; ++j) sum += values[i + j];
        out.push_back(sum / static_cast<double>(every));
    }
    return out;
}

}  // namespace

Spread spreadOf(const std::vector<double>& parts) {
    Spread out;
    if (parts.empty()) return out;
    const double n = static_cast<double>(parts.size());
    for (const double x : parts) out.mean += x / n;
    double squares = 0.0;
    for (const double x : parts) squares += (x - out.mean) * (x - out.mean);
    out.spread = std::sqrt(squares / n);
    return out;
}

std::optional<Duration> swingPeriod(const std::vector<double>& values, Duration step) {
    const std::size_t every =
        std::max<std::size_t>(1, static_cast<std::size_t>(std::lround(0.1 / step.si())));
    const std::vector<double> coarse = thinned(values, every);
    const Correlation correlation(coarse);
    if (coarse.size() < 8 || correlation.isFlat()) return std::nullopt;
    const std::size_t most = coarse.size() / 2;
    std::vector<double> r{1.0};
    std::size_t best = 0;
    bool wasNegative = false;
    bool wasPositive = false;
    for (std::size_t lag = 1; lag <= most; ++lag) {
        r.push_back(correlation.at(lag));
        wasNegative = wasNegative || r[lag] < 0;
        if (!wasNegative) continue;
        if (r[lag] > 0) {
            wasPositive = true;
            if (best == 0 || r[lag] > r[best]) best = lag;
        } else if (wasPositive) {
            break;
        }
    }
    if (best == 0 || best + 1 >= r.size() || !(r[best] > kPeriodPeak)) return std::nullopt;
    const double lag = static_cast<double>(best) + parabolaTop(r[best - 1], r[best], r[best + 1]);
    return lag * static_cast<double>(every) * step;
}

TraceReading readTrace(const std::vector<double>& shown, Duration step, double deadBand) {
    TraceReading out;
    if (shown.empty()) return out;
    out.shown = spreadOf(shown);
    out.period = swingPeriod(shown, step);
    const double off = out.shown.mean - 1;
    if (out.shown.spread > kHuntingSpread && std::abs(off) < 2 * out.shown.spread)
        out.verdict = TraceVerdict::Hunting;
    else if (std::abs(off) > std::max(kStuckOff, deadBand + kBeyondDeadBand))
        out.verdict = off > 0 ? TraceVerdict::StuckHigh : TraceVerdict::StuckLow;
    return out;
}

TraceReading readTrace(const std::vector<LoopSample>& samples, double deadBand) {
    std::vector<double> shown;
    std::size_t limited = 0;
    for (std::size_t i = samples.size() / 3; i < samples.size(); ++i) {
        if (!samples[i].isSpraying) continue;
        shown.push_back(samples[i].shown / samples[i].target);
        limited += samples[i].limit != LoopLimit::None ? 1 : 0;
    }
    TraceReading out = readTrace(shown, Duration::fromSi(RateLoop::kStep), deadBand);
    if (!shown.empty())
        out.shareAtLimit = static_cast<double>(limited) / static_cast<double>(shown.size());
    return out;
}

SwingSource swingSource(std::optional<Duration> period, std::optional<Duration> loopPeriod) {
    if (!period) return SwingSource::Noise;
    const bool isLonger = !loopPeriod || period->si() > loopPeriod->si() * 4 / 3;
    return isLonger ? SwingSource::Stiction : SwingSource::Loop;
}

Duration timeUnsettled(const std::vector<double>& shownAfterChange, Duration step) {
    const auto outside = std::count_if(shownAfterChange.begin(), shownAfterChange.end(),
                                       [](double x) { return std::abs(x - 1) > kUnsettled; });
    return static_cast<double>(outside) * step;
}

}  // namespace bw
