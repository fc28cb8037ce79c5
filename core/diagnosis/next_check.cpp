// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/next_check.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bw {
namespace {

constexpr int kGrid = 48;            ///< points over the range of a reading
constexpr double kReach = 3.0;       ///< the range ends this many errors beyond the predictions
constexpr double kLeastMass = 1e-5;  ///< scenarios with less do not move the sum

/// Mutual information of two variables from rows p(outcome | hypothesis) · p(hypothesis).
double information(const std::vector<std::vector<double>>& joint) {
    if (joint.empty()) return 0.0;
    const std::size_t outcomes = joint.front().size();
    std::vector<double> outcome(outcomes, 0.0);
    for (const auto& row : joint) {
        for (std::size_t i = 0; i < outcomes; ++i) outcome[i] += row[i];
    }
    double bits = 0;
    for (const auto& row : joint) {
        double mine = 0;
        for (const double p : row) mine += p;
        if (!(mine > 0)) continue;
        for (std::size_t i = 0; i < outcomes; ++i) {
            if (row[i] > 0) bits += row[i] * std::log2(row[i] / (mine * outcome[i]));
        }
    }
    return std::max(bits, 0.0);
}

double bitsOfWords(const Check& check, const Evidence& evidence) {
    std::vector<std::vector<double>> joint;
    for (const auto& h : evidence.hypotheses()) {
        std::vector<double> row(check.answers.size(), 0.0);
        for (std::size_t s = 0; s < h.scenarios.size(); ++s) {
            if (h.mass[s] < kLeastMass) continue;
            for (std::size_t a = 0; a < row.size(); ++a)
                row[a] += h.mass[s] *
                          Evidence::answerChance(check, check.answers[a].id, h, h.scenarios[s]);
        }
        joint.push_back(std::move(row));
    }
    return information(joint);
}

/// Values of a reading (SI) that the likely scenarios span; empty if none predicts it.
std::vector<double> gridOf(Reading kind, const Evidence& evidence) {
    const auto r = static_cast<std::size_t>(kind);
    double from = std::numeric_limits<double>::infinity(), to = -from;
    for (const auto& h : evidence.hypotheses()) {
        for (std::size_t s = 0; s < h.scenarios.size(); ++s) {
            const auto& mean = h.scenarios[s].readings[r];
            if (!mean || h.mass[s] < kLeastMass) continue;
            const double reach =
                kReach * readingError(kind, *mean) + h.scenarios[s].spread[r].value_or(0.0);
            from = std::min(from, *mean - reach);
            to = std::max(to, *mean + reach);
        }
    }
    std::vector<double> out;
    for (int i = 0; i < kGrid && from < to; ++i)
        out.push_back(from + (to - from) * i / (kGrid - 1));
    return out;
}

/// What nothing predicts, over the grid, adding to 1.
std::vector<double> broadOver(const std::vector<double>& grid, Reading kind,
                              const Evidence& evidence) {
    std::vector<double> out;
    double sum = 0;
    for (const double x : grid) {
        out.push_back(evidence.readingDensity(kind, x, {}));
        sum += out.back();
    }
    for (auto& p : out) p /= sum;
    return out;
}

/// The densities at the grid, scaled to add to 1 within each scenario: what falls outside the range
/// counts as spread over it.
double bitsOfReading(Reading kind, const Evidence& evidence) {
    const auto grid = gridOf(kind, evidence);
    if (grid.empty()) return 0.0;
    std::vector<std::vector<double>> joint;
    std::vector<double> at(grid.size());
    const auto broad = broadOver(grid, kind, evidence);
    for (const auto& h : evidence.hypotheses()) {
        std::vector<double> row(grid.size(), 0.0);
        double unpredicted = 0;
        for (std::size_t s = 0; s < h.scenarios.size(); ++s) {
            if (h.mass[s] < kLeastMass) continue;
            if (!h.scenarios[s].readings[static_cast<std::size_t>(kind)]) {
                unpredicted += h.mass[s];
                continue;
            }
            double sum = 0;
            for (std::size_t i = 0; i < grid.size(); ++i)
                sum += at[i] = evidence.readingDensity(kind, grid[i], h.scenarios[s]);
            for (std::size_t i = 0; i < grid.size() && sum > 0; ++i)
                row[i] += h.mass[s] * at[i] / sum;
        }
        for (std::size_t i = 0; i < grid.size(); ++i) row[i] += unpredicted * broad[i];
        joint.push_back(std::move(row));
    }
    return information(joint);
}

bool onWater(const CaseRecord& record) {
    return record.tank == "water" || record.tank == "rinsed";
}

bool fits(const Check& check, const CaseNumbers& numbers, std::optional<Symptom> symptom) {
    if (check.place == CheckPlace::Sum || !machineHas(check.needs, numbers)) return false;
    // Nobody complains and the display is on target: questions about a complaint make no sense.
    if (!symptom) return check.onlyFor.empty() || !numbers.shownRatio();
    return check.onlyFor.empty() ||
           std::find(check.onlyFor.begin(), check.onlyFor.end(), *symptom) != check.onlyFor.end();
}

bool better(const Candidate& a, const Candidate& b) {
    if (a.bitsPerMinute() != b.bitsPerMinute()) return a.bitsPerMinute() > b.bitsPerMinute();
    return a.check->id < b.check->id;
}

SafetyStep stepOf(CheckPlace place) {
    switch (place) {
        case CheckPlace::Sum:
        case CheckPlace::CabWorking:
        case CheckPlace::CabParked:
            return SafetyStep::Cab;
        case CheckPlace::OnFoot:
            return SafetyStep::OnFoot;
        case CheckPlace::OnFootOnWater:
            return SafetyStep::OnFootOnWater;
        case CheckPlace::LineOpened:
            return SafetyStep::LineOpened;
    }
    return SafetyStep::LineOpened;
}

void weigh(std::vector<Candidate>& candidates, const Evidence& evidence) {
    for (auto& candidate : candidates) candidate.bits = expectedBits(*candidate.check, evidence);
}

/// The one with most bits per minute among those that bring so many bits.
std::optional<Candidate> bestOf(const std::vector<Candidate>& candidates, double least) {
    std::optional<Candidate> best;
    for (const auto& candidate : candidates) {
        if (candidate.bits < least) continue;
        if (!best || better(candidate, *best)) best = candidate;
    }
    return best;
}

}  // namespace

CheckStanding checkStanding(const Check& check, const CaseRecord& record) {
    CheckStanding out;
    out.step = stepOf(check.place);
    out.minutes = std::max(check.minutes, 1);
    const bool wantsRinse = check.needsWater && !onWater(record);
    const bool wantsCompany = check.people > 1 && record.company != "second_person";
    if (wantsRinse) out.minutes += kRinseMinutes;
    if ((wantsRinse || wantsCompany) && out.step != SafetyStep::LineOpened)
        out.step = SafetyStep::Deferred;
    const bool onRoad = record.place == "road";
    out.barred = (check.people > 1 && record.company == "alone") ||
                 (onRoad && (check.needsWater || stepOf(check.place) != SafetyStep::Cab));
    return out;
}

double expectedBits(const Check& check, const Evidence& evidence) {
    if (!evidence.compares(check)) return bitsOfWords(check, evidence);
    return bitsOfReading(*choiceFor<Reading>(check.reading), evidence);
}

std::optional<Candidate> nextCheck(const CaseRecord& record, const Knowledge& knowledge,
                                   const Evidence& evidence, const CaseNumbers& numbers,
                                   std::optional<Symptom> symptom) {
    std::map<SafetyStep, std::vector<Candidate>> open;
    for (const auto& check : knowledge.checks) {
        if (evidence.given().asked.contains(check.id) || !fits(check, numbers, symptom)) continue;
        const auto standing = checkStanding(check, record);
        if (!standing.barred) open[standing.step].push_back({&check, standing, 0.0});
    }
    for (auto& [step, candidates] : open) {
        if (step > SafetyStep::OnFootOnWater) break;
        weigh(candidates, evidence);
        if (auto best = bestOf(candidates, kWorthBits)) return best;
    }
    for (auto& [step, candidates] : open) {
        if (step > SafetyStep::OnFootOnWater) weigh(candidates, evidence);
        if (auto best = bestOf(candidates, kTellsBits)) return best;
    }
    return std::nullopt;
}

}  // namespace bw
