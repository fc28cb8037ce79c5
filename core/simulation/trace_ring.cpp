// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/trace_ring.h"

#include <algorithm>

namespace bw {

void TraceRing::push(const LoopSample& s) {
    TracePoint& p = m_points[(m_start + m_size) % m_points.size()];
    p = {s.time.si(),    s.speed.si(), s.target.si(),
         s.shown.si(),   s.real.si(),  s.sensor.si(),
         s.reading.si(), s.isSpraying, s.limit != LoopLimit::None};
    if (m_size < m_points.size())
        ++m_size;
    else
        m_start = (m_start + 1) % m_points.size();
}

std::size_t TraceRing::firstFrom(Duration time) const {
    std::size_t low = 0, high = m_size;
    while (low < high) {
        const std::size_t middle = (low + high) / 2;
        if (at(middle).time < time.si())
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

std::optional<RunReading> TraceRing::reading(Duration since, Duration longest,
                                             double deadBand) const {
    if (empty()) return std::nullopt;
    const double end = newest().time;
    const double start = std::max(since.si(), at(0).time);
    const double from = std::max(start + (end - start) / 3, end - longest.si());
    std::vector<double> shown, real;
    std::size_t limited = 0;
    for (std::size_t i = firstFrom(Duration::fromSi(from)); i < m_size; ++i) {
        const TracePoint& p = at(i);
        if (!p.isSpraying || !(p.target > 0)) continue;
        shown.push_back(p.shown / p.target);
        real.push_back(p.real / p.target);
        limited += p.isLimited ? 1 : 0;
    }
    const double count = static_cast<double>(shown.size());
    if (count * RateLoop::kStep < kLeastRead) return std::nullopt;
    RunReading out;
    out.shown = readTrace(shown, Duration::fromSi(RateLoop::kStep), deadBand);
    out.shown.shareAtLimit = static_cast<double>(limited) / count;
    out.real = spreadOf(real);
    out.length = Duration::fromSi(count * RateLoop::kStep);
    return out;
}

}  // namespace bw
