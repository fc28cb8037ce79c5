// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/reasons.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr std::size_t kMostFacts = 6;
constexpr std::size_t kMostExpected = 4;
constexpr double kNear = 2.0;    ///< standard errors within which a reading fits
constexpr double kApart = 2.0;   ///< errors by which another cause must differ to be named
constexpr double kWeighs = 1.4;  ///< an answer this much likelier, or less likely, is named
constexpr double kWorthNaming = 0.02;

AnyQuantity quantity(Reading kind, double value) {
    return {dimensionOf(kind), value};
}

Argument readingName(Reading kind) {
    return {"reading", CodeText{"finder.reading." + std::string(choiceName(kind))}};
}

/// Hypotheses by what they stand at, most first; something else left out.
std::vector<const Hypothesis*> leading(const Evidence& evidence) {
    std::vector<const Hypothesis*> out;
    for (const auto& h : evidence.hypotheses()) {
        if (h.cause) out.push_back(&h);
    }
    std::stable_sort(out.begin(), out.end(), [](const auto* a, const auto* b) {
        return a->probability() > b->probability();
    });
    return out;
}

/// The likeliest other cause that would give clearly another reading.
struct Rival {
    const Hypothesis* cause = nullptr;
    double expected = 0;
};
std::optional<Rival> rivalOf(const Hypothesis& mine, double expected, Reading kind,
                             const Evidence& evidence) {
    for (const auto* other : leading(evidence)) {
        if (other->id == mine.id || other->probability() < kWorthNaming / 10) continue;
        const auto theirs = evidence.expected(kind, *other);
        if (theirs && std::abs(*theirs - expected) > kApart * readingError(kind, expected))
            return Rival{other, *theirs};
    }
    return std::nullopt;
}

void addReadings(const Hypothesis& h, const Evidence& evidence, std::vector<Fact>& out) {
    for (std::size_t r = 0; r < kReadings; ++r) {
        const auto kind = static_cast<Reading>(r);
        const auto& given = evidence.given().readings[r];
        const auto expected = evidence.expected(kind, h);
        if (!given || !expected) continue;
        const bool fits = std::abs(*given - *expected) <= kNear * readingError(kind, *expected);
        std::vector<Argument> arguments{readingName(kind),
                                        {"value", quantity(kind, *given)},
                                        {"cause", h.cause->phrase},
                                        {"expected", quantity(kind, *expected)}};
        const auto rival = rivalOf(h, *expected, kind, evidence);
        if (rival) {
            arguments.push_back({"other", rival->cause->cause->phrase});
            arguments.push_back({"other_expected", quantity(kind, rival->expected)});
        }
        const std::string code = fits ? "finder.why.reading_for" : "finder.why.reading_against";
        out.push_back({rival ? code : code + "_alone", std::move(arguments)});
    }
}

/// Mean chance of an answer under a hypothesis, its scenarios weighed as they stand.
double chance(const GivenAnswer& given, const Hypothesis& h) {
    double sum = 0;
    for (std::size_t s = 0; s < h.scenarios.size(); ++s)
        sum += h.mass[s] * Evidence::answerChance(*given.check, given.answer, h, h.scenarios[s]);
    return sum / h.probability();
}

void addAnswers(const Hypothesis& h, const Evidence& evidence, std::vector<Fact>& out) {
    if (!(h.probability() > 0)) return;
    for (const auto& given : evidence.given().answers) {
        const Answer& answer = *given.check->answer(given.answer);
        const double ratio = chance(given, h) / answer.baseRate;
        if (ratio < kWeighs && ratio > 1 / kWeighs) continue;
        out.push_back({ratio > 1 ? "finder.why.answer_for" : "finder.why.answer_against",
                       {{"question", given.check->question},
                        {"answer", answer.text},
                        {"cause", h.cause->phrase}}});
    }
}

void addExpected(Reading kind, const Evidence& evidence, const Scenario& healthy,
                 Expectation& out) {
    const auto& well = healthy.readings[static_cast<std::size_t>(kind)];
    if (well) out.healthy = quantity(kind, *well);
    for (const auto* h : leading(evidence)) {
        if (out.byCause.size() >= kMostExpected || h->probability() < kWorthNaming) break;
        if (const auto value = evidence.expected(kind, *h))
            out.byCause.emplace_back(h->id, quantity(kind, *value));
    }
}

/// The two leading causes whose expected readings lie furthest apart.
void addPartedByReading(Reading kind, const Evidence& evidence, std::vector<Fact>& out) {
    const Hypothesis *low = nullptr, *high = nullptr;
    double least = 0, most = 0;
    for (const auto* h : leading(evidence)) {
        if (h->probability() < kWorthNaming) break;
        const auto expected = evidence.expected(kind, *h);
        if (!expected) continue;
        if (!low || *expected < least) low = h, least = *expected;
        if (!high || *expected > most) high = h, most = *expected;
    }
    if (!low || most - least < kApart * readingError(kind, most)) return;
    out.push_back({"finder.next.parts_reading",
                   {{"one", low->cause->phrase},
                    {"one_expected", quantity(kind, least)},
                    {"other", high->cause->phrase},
                    {"other_expected", quantity(kind, most)}}});
}

double likeliest(const Check& check, const Hypothesis& h, std::string& answer) {
    double best = 0;
    for (const auto& a : check.answers) {
        const double lift = chance({&check, a.id}, h) / a.baseRate;
        if (lift > best) {
            best = lift;
            answer = a.text;
        }
    }
    return best;
}

/// The first two leading causes that point to different answers.
void addPartedByWords(const Check& check, const Evidence& evidence, std::vector<Fact>& out) {
    const Hypothesis* one = nullptr;
    std::string oneAnswer;
    for (const auto* h : leading(evidence)) {
        if (h->probability() < kWorthNaming) return;
        std::string answer;
        if (likeliest(check, *h, answer) < kWeighs) continue;
        if (!one) {
            one = h;
            oneAnswer = answer;
        } else if (answer != oneAnswer) {
            out.push_back({"finder.next.parts_words",
                           {{"one", one->cause->phrase},
                            {"one_answer", oneAnswer},
                            {"other", h->cause->phrase},
                            {"other_answer", answer}}});
            return;
        }
    }
}

const char* stepCode(SafetyStep step) {
    switch (step) {
        case SafetyStep::Cab:
            return "finder.next.cab";
        case SafetyStep::OnFoot:
            return "finder.next.on_foot";
        case SafetyStep::OnFootOnWater:
            return "finder.next.on_water";
        case SafetyStep::Deferred:
            return "finder.next.deferred";
        case SafetyStep::LineOpened:
            return "finder.next.line_opened";
    }
    return "finder.next.line_opened";
}

}  // namespace

std::vector<Fact> reasonsFor(const Hypothesis& h, const Evidence& evidence) {
    std::vector<Fact> out;
    if (!h.cause) return out;
    if (h.described) out.push_back(*h.described);
    addReadings(h, evidence, out);
    addAnswers(h, evidence, out);
    if (out.size() > kMostFacts) out.resize(kMostFacts);
    return out;
}

NextCheck describeNext(const Candidate& candidate, const Evidence& evidence,
                       const Scenario& healthy) {
    const Check& check = *candidate.check;
    NextCheck out;
    out.check = check.id;
    out.bitsPerMinute = candidate.bitsPerMinute();
    out.minutes = candidate.standing.minutes;
    const auto kind = choiceFor<Reading>(check.reading);
    if (kind && evidence.compares(check)) {
        addExpected(*kind, evidence, healthy, out.expected);
        addPartedByReading(*kind, evidence, out.why);
    } else {
        addPartedByWords(check, evidence, out.why);
    }
    out.why.push_back({stepCode(candidate.standing.step), {}});
    return out;
}

}  // namespace bw
