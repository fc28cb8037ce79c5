// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/call.h"

#include <algorithm>
#include <map>

#include "core/diagnosis/alike.h"
#include "core/diagnosis/reasons.h"
#include "core/diagnosis/triage.h"

namespace bw {
namespace {

constexpr double kSure = 0.9;          ///< a cause or group over this ends the questions
constexpr double kElseLeads = 0.5;     ///< something else over this: nothing known fits
constexpr double kLeadsEnough = 0.2;   ///< a finding's ways out are given from here on
constexpr std::size_t kExplained = 8;  ///< causes that get reasons

std::string findingOf(const CauseStanding& s) {
    return s.group.empty() ? s.cause : s.group;
}

void fillStanding(const Evidence& evidence, CallState& out) {
    for (const auto& group : alikeGroups(evidence)) {
        for (const auto* h : group.members) {
            const bool alone = group.members.size() == 1 && group.id == h->id;
            out.standing.push_back({h->id, alone ? "" : group.id, h->probability(), {}});
        }
    }
    std::stable_sort(out.standing.begin(), out.standing.end(),
                     [](const auto& a, const auto& b) { return a.probability > b.probability; });
    const std::size_t explained = std::min(kExplained, out.standing.size());
    for (std::size_t i = 0; i < explained; ++i) {
        for (const auto& h : evidence.hypotheses()) {
            if (h.id == out.standing[i].cause) out.standing[i].why = reasonsFor(h, evidence);
        }
    }
}

std::map<std::string, double> findings(const CallState& state) {
    std::map<std::string, double> out;
    for (const auto& s : state.standing) out[findingOf(s)] += s.probability;
    return out;
}

std::string leadingFinding(const CallState& state) {
    const auto all = findings(state);
    return std::max_element(all.begin(), all.end(),
                            [](const auto& a, const auto& b) { return a.second < b.second; })
        ->first;
}

/// The leading finding, its causes' ways out once each, in the order of the leading cause.
void addWaysOut(const CaseNumbers& numbers, const CaseRecord& record, const Knowledge& knowledge,
                CallState& state) {
    const auto all = findings(state);
    const std::string top = leadingFinding(state);
    if (all.at(top) < kLeadsEnough) return;
    std::vector<std::string> codes;
    for (const auto& s : state.standing) {
        const Cause* cause = knowledge.cause(s.cause);
        if (!cause || findingOf(s) != top) continue;
        for (const auto& code : cause->waysOut) {
            if (std::find(codes.begin(), codes.end(), code) == codes.end()) codes.push_back(code);
        }
    }
    state.waysOut = waysOut(codes, numbers, record);
}

void addConflicts(const Evidence& evidence, CallState& state) {
    state.conflicts = evidence.given().conflicts;
    for (auto& problem : unexplainedReadings(evidence))
        state.conflicts.push_back(std::move(problem));
    const bool told = !evidence.given().answers.empty() || !state.conflicts.empty();
    const auto all = findings(state);
    const auto other = all.find(std::string(kSomethingElse));
    if (told && other != all.end() && other->second > kElseLeads)
        state.conflicts.push_back(warning("finder_nothing_fits"));
}

void addBarred(const CaseRecord& record, const Knowledge& knowledge, CallState& state) {
    for (const auto& check : knowledge.checks) {
        if (checkStanding(check, record).barred) state.barredChecks.push_back(check.id);
    }
}

/// The check that would part the causes of the leading group; nothing if it is one cause, or none
/// would.
std::optional<Candidate> parting(const CaseRecord& record, const Knowledge& knowledge,
                                 const Evidence& evidence, const CaseNumbers& numbers,
                                 const std::optional<Symptom>& symptom, const CallState& state) {
    const std::string leader = leadingFinding(state);
    std::vector<std::string> causes;
    for (const auto& s : state.standing)
        if (findingOf(s) == leader) causes.push_back(s.cause);
    if (causes.size() < 2) return std::nullopt;
    return nextCheck(record, knowledge, evidence.among(causes, knowledge), numbers, symptom);
}

bool isSure(const CallState& state) {
    const auto all = findings(state);
    return std::any_of(all.begin(), all.end(), [](const auto& finding) {
        return finding.first != kSomethingElse && finding.second > kSure;
    });
}

}  // namespace

CallState reason(const CaseRecord& record, const Knowledge& knowledge) {
    CallState state;
    const Machine& machine = record.machine;
    const bool pulsed =
        machine.pulsed.pressure.has_value() ||
        (machine.machineClass && machine.machineClass->value == MachineClass::Pulsed);
    if (pulsed) {
        state.notCovered = true;
        state.done = true;
        state.sums = pulsedSums(record);
        return state;
    }
    const CaseNumbers numbers(record);
    state.symptomFromNumbers = symptomFromNumbers(numbers);
    const auto symptom = record.symptom ? record.symptom : state.symptomFromNumbers;
    const auto known = predictorFor(record, numbers);
    const Predictor& predictor = *known;
    const Evidence evidence(knowledge, predictor,
                            sortObservations(record, knowledge, numbers, predictor), symptom);
    fillStanding(evidence, state);
    state.sums = triage(numbers, symptom);
    addWaysOut(numbers, record, knowledge, state);
    addConflicts(evidence, state);
    addBarred(record, knowledge, state);
    auto next = nextCheck(record, knowledge, evidence, numbers, symptom);
    const bool sure = isSure(state);
    state.done = sure || !next;
    if (sure) {
        auto parts = parting(record, knowledge, evidence, numbers, symptom, state);
        if (parts) next = parts;
    }
    if (next)
        (state.done ? state.further : state.next) =
            describeNext(*next, evidence, predictor.healthy());
    return state;
}

}  // namespace bw
