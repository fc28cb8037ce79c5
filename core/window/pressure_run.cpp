// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/pressure_run.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

/// Typed in another unit, two bands that meet may differ in the last digit.
bool meet(Pressure a, Pressure b) {
    return std::abs(a.si() - b.si()) <= 1e-9 * std::max(std::abs(a.si()), std::abs(b.si()));
}

double distance(const PressureRun& run, Pressure p) {
    if (p < run.from) return (run.from - p).si();
    return p < run.to ? 0.0 : (p - run.to).si();
}

std::vector<PressureRun> runsOf(const std::vector<AllowedBand>& bands) {
    std::vector<PressureRun> runs;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        if (!bands[i].isAllowed) continue;
        const bool joinsBelow = i > 0 && meet(bands[i - 1].to, bands[i].from);
        const bool joinsAbove = i + 1 < bands.size() && meet(bands[i].to, bands[i + 1].from);
        if (joinsBelow && bands[i - 1].isAllowed) {
            runs.back().to = bands[i].to;
            runs.back().bandAbove = joinsAbove;
        } else {
            runs.push_back({bands[i].from, bands[i].to, joinsBelow, joinsAbove});
        }
    }
    return runs;
}

}  // namespace

std::optional<PressureRun> runFor(std::vector<AllowedBand> bands, Pressure needed) {
    std::sort(bands.begin(), bands.end(),
              [](const auto& a, const auto& b) { return a.from < b.from; });
    const auto runs = runsOf(bands);
    if (runs.empty()) return std::nullopt;
    return *std::min_element(runs.begin(), runs.end(), [&](const auto& a, const auto& b) {
        return distance(a, needed) < distance(b, needed);  // the first, lower one wins a tie
    });
}

std::vector<AllowedBand> allowedBands(const std::vector<DropletBand>& bands,
                                      const std::vector<DropletCategory>& wished) {
    std::vector<AllowedBand> out;
    out.reserve(bands.size());
    for (const auto& b : bands) {
        out.push_back(
            {b.from, b.to, std::find(wished.begin(), wished.end(), b.category) != wished.end()});
    }
    return out;
}

std::vector<AllowedBand> allowedBands(const std::vector<DriftBand>& bands, double percent) {
    std::vector<AllowedBand> out;
    out.reserve(bands.size());
    for (const auto& b : bands) out.push_back({b.from, b.to, b.percent >= percent});
    return out;
}

}  // namespace bw
