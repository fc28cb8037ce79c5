// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/alike.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bw {
namespace {

constexpr double kInPlay = 0.02;     ///< causes with less are left by themselves
constexpr double kNear = 1.5;        ///< reading errors, each way
constexpr double kNearlyAll = 0.85;  ///< of what is left of a cause

bool readsAlike(const Scenario& a, const Scenario& b) {
    if (a.uneven != b.uneven || a.shown != b.shown) return false;
    if (a.shown == Shown::Hunting) return false;  // the swing itself tells, and what causes it
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (a.readings[r].has_value() != b.readings[r].has_value()) return false;
        if (!a.readings[r]) continue;
        const auto kind = static_cast<Reading>(r);
        const double error = readingError(kind, std::min(*a.readings[r], *b.readings[r]));
        const double most = kNear * error + a.spread[r].value_or(0.0) + b.spread[r].value_or(0.0);
        if (std::abs(*a.readings[r] - *b.readings[r]) > most) return false;
    }
    return true;
}

bool predictsSomething(const Scenario& s) {
    return std::any_of(s.readings.begin(), s.readings.end(),
                       [](const auto& reading) { return reading.has_value(); });
}

/// Part of what is left of `one` that the other may show as well.
double covered(const Hypothesis& one, const Hypothesis& other) {
    double near = 0, all = 0;
    for (std::size_t i = 0; i < one.scenarios.size(); ++i) {
        all += one.mass[i];
        if (!predictsSomething(one.scenarios[i])) continue;
        const bool found =
            std::any_of(other.scenarios.begin(), other.scenarios.end(),
                        [&](const Scenario& s) { return readsAlike(one.scenarios[i], s); });
        if (found) near += one.mass[i];
    }
    return all > 0 ? near / all : 0.0;
}

bool joins(const Hypothesis& h, const AlikeGroup& group) {
    const Hypothesis& lead = *group.members.front();
    if (!h.cause || !lead.cause) return false;
    const bool isTogether =
        !h.cause->group.empty() &&
        std::any_of(group.members.begin(), group.members.end(),
                    [&](const auto* member) { return member->cause->group == h.cause->group; });
    if (isTogether) return true;
    return h.probability() >= kInPlay && lead.probability() >= kInPlay && areAlike(h, lead);
}

}  // namespace

bool areAlike(const Hypothesis& one, const Hypothesis& other) {
    return covered(one, other) >= kNearlyAll && covered(other, one) >= kNearlyAll;
}

std::vector<AlikeGroup> alikeGroups(const Evidence& evidence) {
    std::vector<const Hypothesis*> order;
    for (const auto& h : evidence.hypotheses()) order.push_back(&h);
    std::stable_sort(order.begin(), order.end(), [](const auto* a, const auto* b) {
        return a->probability() > b->probability();
    });
    std::vector<AlikeGroup> out;
    for (const auto* h : order) {
        const auto group =
            std::find_if(out.begin(), out.end(), [&](const AlikeGroup& g) { return joins(*h, g); });
        if (group != out.end()) {
            group->members.push_back(h);
            continue;
        }
        const bool named = h->cause && !h->cause->group.empty();
        out.push_back({named ? h->cause->group : h->id, {h}});
    }
    const auto weight = [](const AlikeGroup& g) {
        double sum = 0;
        for (const auto* h : g.members) sum += h->probability();
        return sum;
    };
    std::stable_sort(out.begin(), out.end(), [&](const AlikeGroup& a, const AlikeGroup& b) {
        return weight(a) > weight(b);
    });
    return out;
}

}  // namespace bw
