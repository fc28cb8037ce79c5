// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/findings.h"

#include <algorithm>

#include "core/diagnosis/evidence.h"
#include "core/model/boom_layout.h"

namespace bw {
namespace {

constexpr double kMoves = 0.02;         ///< a gain under this is no news (judgement)
constexpr std::size_t kNamedGains = 2;  ///< more do not fit beside an answer
constexpr std::size_t kNamedTogether = 3;

Finding findingFor(const CauseStanding& standing, const Knowledge& knowledge) {
    Finding finding;
    const Cause* cause = knowledge.cause(standing.cause);
    finding.isSomethingElse = standing.cause == kSomethingElse;
    finding.id = standing.group.empty() ? standing.cause : standing.group;
    if (!cause) return finding;
    finding.phrase = cause->phrase;
    return finding;
}

/// One cause bears its own name, causes of one shipped group the group's; others are named one
/// after the other, most likely first.
std::string nameOf(const Finding& finding, const Knowledge& knowledge) {
    std::vector<std::string> names;
    for (const auto& id : finding.causes) {
        const Cause* cause = knowledge.cause(id);
        if (!cause) continue;
        const bool named = finding.causes.size() > 1 && !cause->group.empty();
        const std::string& name = named ? cause->groupName : cause->name;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    std::string out;
    for (std::size_t i = 0; i < std::min(names.size(), kNamedTogether); ++i)
        out += (i > 0 ? " / " : "") + names[i];
    return out;
}

double probabilityOf(const std::vector<Finding>& findings, const std::string& id) {
    for (const auto& finding : findings) {
        if (finding.id == id) return finding.probability;
    }
    return 0.0;
}

}  // namespace

Likeliness likeliness(double probability) {
    if (probability >= kLikelyFrom) return Likeliness::Likely;
    if (probability >= kPossibleFrom) return Likeliness::Possible;
    return probability >= kLessLikelyFrom ? Likeliness::LessLikely : Likeliness::NoLonger;
}

std::vector<Finding> findingsOf(const CallState& state, const Knowledge& knowledge) {
    std::vector<Finding> findings;
    for (const auto& standing : state.standing) {
        const std::string id = standing.group.empty() ? standing.cause : standing.group;
        auto known = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& f) { return f.id == id; });
        if (known == findings.end())
            known = findings.insert(findings.end(), findingFor(standing, knowledge));
        known->causes.push_back(standing.cause);
        known->probability += standing.probability;
    }
    for (auto& finding : findings) finding.name = nameOf(finding, knowledge);
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return a.probability > b.probability;
    });
    return findings;
}

Outlook outlookOf(const CaseRecord& record, const Knowledge& knowledge, const CallState& now,
                  const Observation& observation) {
    CaseRecord then = record;
    observe(then, observation);
    const auto before = findingsOf(now, knowledge);
    const auto after = findingsOf(reason(then, knowledge), knowledge);
    std::vector<std::pair<double, const Finding*>> gains;
    for (const auto& finding : after) {
        const double gain = finding.probability - probabilityOf(before, finding.id);
        if (gain > kMoves) gains.emplace_back(gain, &finding);
    }
    std::stable_sort(gains.begin(), gains.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    Outlook outlook;
    for (std::size_t i = 0; i < std::min(kNamedGains, gains.size()); ++i)
        outlook.gains.push_back(*gains[i].second);
    if (!after.empty()) outlook.leads = after.front();
    return outlook;
}

void observe(CaseRecord& record, const Observation& observation) {
    for (auto& known : record.observations) {
        if (known.check != observation.check) continue;
        known = observation;
        return;
    }
    record.observations.push_back(observation);
}

void takeNozzleCount(Machine& machine, std::optional<int> nozzles) {
    if (!nozzles && machine.width && machine.spacing && machine.spacing->value.si() > 0)
        nozzles = nozzlesAcross(machine.width->value, machine.spacing->value);
    machine.sections.reset();
    if (nozzles && *nozzles > 0) machine.sections = Sourced<std::vector<int>>({*nozzles});
}

}  // namespace bw
