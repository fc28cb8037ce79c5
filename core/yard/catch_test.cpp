// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/catch_test.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/yard/catch_flow.h"

namespace bw {
namespace {

/// Rounding must not turn a nozzle exactly at the limit into one past it.
constexpr double kRounding = 1e-9;

const Measured<Flow>& last(const CatchEntry& entry) {
    return entry.again ? *entry.again : entry.caught;
}

int sectionOf(int nozzle, const std::vector<int>& sections) {
    int end = 0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        end += sections[i];
        if (nozzle <= end) return static_cast<int>(i);
    }
    return -1;
}

std::optional<Problem> refusal(const std::vector<CatchEntry>& entries) {
    if (entries.empty()) return error("yard_no_runs", "nozzles");
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const double flow = last(entries[i]).value.si();
        if (!(flow >= 0) || !std::isfinite(flow)) return error("yard_not_positive", "nozzles");
        if (i > 0 && entries[i].nozzle == entries[i - 1].nozzle)
            return error("yard_nozzle_twice", "nozzles",
                         {{"nozzle", anyQuantity(double(entries[i].nozzle))}});
    }
    return std::nullopt;
}

std::optional<Problem> refusal(const CatchLimits& limits) {
    const auto isGood = [](double limit) { return limit > 0 && std::isfinite(limit); };
    if (!isGood(limits.ofMean)) return error("yard_not_positive", "limit_of_mean");
    if (!isGood(limits.ofNew)) return error("yard_not_positive", "limit_of_new");
    return std::nullopt;
}

Measured<Flow> meanOf(const std::vector<CatchEntry>& entries) {
    double sum = 0.0;
    double squares = 0.0;
    for (const auto& entry : entries) {
        sum += last(entry).value.si();
        squares += std::pow(last(entry).uncertainty.si(), 2);
    }
    const double n = double(entries.size());
    return {Flow::fromSi(sum / n), Flow::fromSi(std::sqrt(squares) / n)};
}

bool isHigh(const CaughtNozzle& n, const CatchLimits& limits) {
    return n.ofMean > 1 + limits.ofMean + kRounding ||
           (n.ofNew && *n.ofNew > 1 + limits.ofNew + kRounding);
}

CatchVerdict verdictOn(const CaughtNozzle& n, bool caughtAgain, const CatchLimits& limits) {
    if (isHigh(n, limits)) return CatchVerdict::Replace;
    if (n.ofMean >= 1 - limits.ofMean - kRounding) return CatchVerdict::Good;
    return caughtAgain ? CatchVerdict::Replace : CatchVerdict::CleanAndCatchAgain;
}

std::optional<double> spreadOf(const CatchSummary& summary) {
    if (summary.nozzles.size() < 2) return std::nullopt;
    double squares = 0.0;
    for (const auto& n : summary.nozzles) squares += std::pow(n.ofMean - 1, 2);
    return std::sqrt(squares / double(summary.nozzles.size() - 1));
}

std::vector<CaughtSection> sectionMeans(const std::vector<CaughtNozzle>& nozzles) {
    std::map<int, CaughtSection> bySection;
    for (const auto& n : nozzles) {
        if (n.section < 0) continue;
        CaughtSection& section = bySection[n.section];
        section.section = n.section;
        section.mean += n.flow.value;
        ++section.count;
    }
    std::vector<CaughtSection> out;
    for (auto& [index, section] : bySection) {
        section.mean = section.mean / double(section.count);
        out.push_back(section);
    }
    return out;
}

}  // namespace

Measured<Flow> caughtFlow(Volume volume, Duration time, const ReadingErrors& errors) {
    return measuredFrom<Flow>(
        [](const std::vector<double>& n) {
            return catchFlow(Volume::fromSi(n[0]), Duration::fromSi(n[1])).si();
        },
        {{volume.si(), errors.jug.si()}, {time.si(), errors.watch.si()}});
}

Result<CatchSummary> catchSummary(std::vector<CatchEntry> entries, const std::vector<int>& sections,
                                  std::optional<Flow> newNozzle, const CatchLimits& limits) {
    std::sort(entries.begin(), entries.end(),
              [](const auto& a, const auto& b) { return a.nozzle < b.nozzle; });
    if (auto bad = refusal(entries)) return *bad;
    if (newNozzle && !(newNozzle->si() > 0)) return error("yard_not_positive", "new_flow");
    if (auto bad = refusal(limits)) return *bad;
    CatchSummary out;
    out.mean = meanOf(entries);
    if (!(out.mean.value.si() > 0)) return error("yard_not_positive", "nozzles");
    int high = 0;
    bool isCoarse = false;
    for (const auto& entry : entries) {
        CaughtNozzle n{entry.nozzle, sectionOf(entry.nozzle, sections), last(entry), 0.0, {}, {}};
        n.ofMean = n.flow.value / out.mean.value;
        if (newNozzle) n.ofNew = n.flow.value / *newNozzle;
        n.verdict = verdictOn(n, entry.again.has_value(), limits);
        high += isHigh(n, limits) ? 1 : 0;
        isCoarse = isCoarse || 2 * n.flow.uncertainty.si() > limits.ofMean * out.mean.value.si();
        out.nozzles.push_back(std::move(n));
    }
    if (newNozzle) out.meanOfNew = out.mean.value / *newNozzle;
    out.cv = spreadOf(out);
    out.sections = sectionMeans(out.nozzles);
    out.replaceSet = high >= 2 || (out.meanOfNew && *out.meanOfNew > 1 + limits.ofNew + kRounding);
    if (isCoarse)
        out.warnings.push_back(warning("yard_catch_coarse", "nozzles",
                                       {{"percent", anyQuantity(limits.ofMean * 100)}}));
    return out;
}

std::vector<int> everyNozzle(int count, int step) {
    std::vector<int> out;
    for (int nozzle = 1; step > 0 && nozzle <= count; nozzle += step) out.push_back(nozzle);
    return out;
}

std::vector<int> sectionNozzles(const std::vector<int>& sections, int section) {
    std::vector<int> out;
    int nozzle = 1;
    for (int i = 0; i < static_cast<int>(sections.size()); ++i) {
        for (int k = 0; k < sections[static_cast<std::size_t>(i)]; ++k, ++nozzle) {
            if (i == section) out.push_back(nozzle);
        }
    }
    return out;
}

}  // namespace bw
