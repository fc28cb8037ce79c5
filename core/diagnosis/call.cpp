// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/call.h"

#include <algorithm>
#include <map>

#include "core/diagnosis/reasons.h"
#include "core/diagnosis/triage.h"

namespace bw {
namespace {

constexpr double kSure = 0.8;          ///< a cause or group over this ends the questions
constexpr double kElseLeads = 0.5;     ///< something else over this: nothing known fits
constexpr double kLeadsEnough = 0.2;   ///< a finding's ways out are given from here on
constexpr std::size_t kExplained = 8;  ///< causes that get reasons

std::string findingOf(const CauseStanding& s) {
    return s.group.empty() ? s.cause : s.group;
}

void fillStanding(const Evidence& evidence, CallState& out) {
    for (const auto& h : evidence.hypotheses())
        out.standing.push_back({h.id, h.cause ? h.cause->group : "", h.probability(), {}});
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

/// The leading finding, its causes' ways out once each, in the order of the leading cause.
void addWaysOut(const CaseNumbers& numbers, const CaseRecord& record, const Knowledge& knowledge,
                CallState& state) {
    const auto all = findings(state);
    const auto top = std::max_element(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    if (top->second < kLeadsEnough) return;
    std::vector<std::string> codes;
    for (const auto& s : state.standing) {
        const Cause* cause = knowledge.cause(s.cause);
        if (!cause || findingOf(s) != top->first) continue;
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

void addNext(const std::optional<Candidate>& next, const Evidence& evidence,
             const Predictor& predictor, CallState& state) {
    const auto all = findings(state);
    const bool sure = std::any_of(all.begin(), all.end(), [](const auto& finding) {
        return finding.first != kSomethingElse && finding.second > kSure;
    });
    state.done = sure || !next;
    if (!next) return;
    (state.done ? state.further : state.next) = describeNext(*next, evidence, predictor.healthy());
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
    const BoomPredictor predictor(numbers);
    const Evidence evidence(knowledge, predictor, sortObservations(record, knowledge, numbers),
                            symptom);
    fillStanding(evidence, state);
    state.sums = triage(numbers, symptom);
    addWaysOut(numbers, record, knowledge, state);
    addConflicts(evidence, state);
    addBarred(record, knowledge, state);
    addNext(nextCheck(record, knowledge, evidence, numbers, symptom), evidence, predictor, state);
    return state;
}

}  // namespace bw
