// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/diagnosis/predictor.h"

namespace bw {

inline constexpr std::string_view kSomethingElse = "something_else";
inline constexpr std::string_view kCantTell = "cant_tell";

/// One word answer that counts.
struct GivenAnswer {
    const Check* check = nullptr;
    std::string answer;
};

/// The observations of a case, sorted: order and repeats do not matter. Answers that contradict one
/// another, or name nothing known, count as nothing and are said in `conflicts`.
struct Given {
    std::vector<GivenAnswer> answers;  ///< by check id; binned readings among them
    Readings readings;                 ///< those that are compared with predictions
    std::set<std::string> asked;       ///< checks that need not be asked again, can't tell included
    std::vector<Problem> conflicts;
};
Given sortObservations(const CaseRecord& record, const Knowledge& knowledge,
                       const CaseNumbers& numbers, const Predictor& predictor);
/// The number of this check is compared with predictions (else, or if it takes none, it is words).
bool isCompared(const Check& check, const Readings& healthy);

/// One cause, or something else (`cause` null), with its scenarios and their part of all
/// probability.
struct Hypothesis {
    const Cause* cause = nullptr;
    std::string id;
    double prior = 1.0;
    std::vector<Scenario> scenarios;
    std::vector<double> mass;       ///< per scenario; over all hypotheses they add to 1
    std::optional<Fact> described;  ///< as in Prediction
    double probability() const;
};

/// Bayes over causes: priors, fit of the complaint, word answers, readings.
class Evidence {
  public:
    Evidence(const Knowledge& knowledge, const Predictor& predictor, const Given& given,
             std::optional<Symptom> symptom);

    const std::vector<Hypothesis>& hypotheses() const { return m_hypotheses; }
    /// p(answer | scenario of a hypothesis): base rate × level, scaled to 1, never under 0.01.
    static double answerChance(const Check& check, const std::string& answer, const Hypothesis& h,
                               const Scenario& s);
    /// Density of a reading (SI) under a scenario: Gaussian about the prediction with a thin broad
    /// tail, or broad about the healthy reading where nothing is predicted.
    double readingDensity(Reading kind, double value, const Scenario& s) const;
    /// What the broad densities stand around; nothing if no scenario predicts this reading.
    std::optional<double> reference(Reading kind) const {
        return m_reference[static_cast<std::size_t>(kind)];
    }
    /// Mean prediction of a hypothesis for a reading, at the severities that the evidence leaves.
    std::optional<double> expected(Reading kind, const Hypothesis& h) const;
    const Given& given() const { return m_given; }
    /// The same with only these hypotheses left, their masses adding to 1, and no number to ask for
    /// any more: what parts causes that no reading parts.
    Evidence among(const std::vector<std::string>& ids, const Knowledge& knowledge) const;
    /// A number of this check is compared with predictions.
    bool compares(const Check& check) const;

  private:
    void addHypotheses(const Knowledge& knowledge, const Predictor& predictor);
    void findReferences(const Predictor& predictor);
    void weigh(std::optional<Symptom> symptom);
    double likelihood(const Hypothesis& h, const Scenario& s, std::optional<Symptom> symptom) const;

    Given m_given;
    Readings m_reference;
    Readings m_healthy;
    std::vector<Hypothesis> m_hypotheses;
};

/// Readings that no scenario of any cause explains, alone or together with the others.
std::vector<Problem> unexplainedReadings(const Evidence& evidence);

}  // namespace bw
