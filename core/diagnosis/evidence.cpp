// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/evidence.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

namespace bw {
namespace {

// All of these are judgement; no data set was found.
constexpr double kLeastChance = 0.04;    ///< one wrong answer never rules a cause out
constexpr double kOutlier = 0.08;        ///< part of readings that are misread altogether
constexpr double kBroad = 0.45;          ///< spread of what nothing predicts, of the reference
constexpr double kElseSymptom = 0.3;     ///< fit of something else to any complaint
constexpr double kElseLeast = 0.01;      ///< something else never has less
constexpr double kNoFit = 0.02;          ///< a complaint that the cause's data do not name
constexpr double kShownOtherwise = 0.1;  ///< the prediction shows something else than the complaint
constexpr double kShownSo = 0.5;         ///< the prediction shows the complaint
constexpr double kUnsaidHunting = 0.3;   ///< a swing would have been told
constexpr double kTankOff = 0.03;        ///< really off target by more shows in the tank
constexpr double kSaid = 8.0;  ///< levels of a word answer that the prediction gives, or not
constexpr double kNotSaid = 0.1;
constexpr double kUnexplained = 3.5;  ///< standard errors

double gaussian(double x, double mean, double error) {
    const double z = (x - mean) / error;
    return std::exp(-0.5 * z * z) / (error * std::sqrt(2 * std::numbers::pi));
}

std::optional<bool> showsComplaint(Symptom symptom, const Scenario& s) {
    if (symptom == Symptom::UnevenBoom) return s.uneven ? std::optional(true) : std::nullopt;
    if (!s.shown) return std::nullopt;
    switch (symptom) {
        case Symptom::Hunting:
            return *s.shown == Shown::Hunting;
        case Symptom::StuckHigh:
            return *s.shown == Shown::StuckHigh;
        case Symptom::StuckLow:
            return *s.shown == Shown::StuckLow;
        case Symptom::TankWrong:
            return *s.shown == Shown::OnRate && s.real && std::abs(*s.real - 1) > kTankOff;
        default:
            return std::nullopt;
    }
}

double symptomFit(const Hypothesis& h, const Scenario& s, std::optional<Symptom> symptom) {
    if (!symptom) return s.shown == Shown::Hunting ? kUnsaidHunting : 1.0;
    if (!h.cause) return kElseSymptom;
    const auto found = h.cause->symptoms.find(*symptom);
    const double told = std::max(found == h.cause->symptoms.end() ? 0.0 : found->second, kNoFit);
    const auto shows = showsComplaint(*symptom, s);
    if (!shows) return told;
    return *shows ? kShownSo + (1 - kShownSo) * told : kShownOtherwise * told;
}

const std::map<std::string, double>* levelsFor(const Check& check, const Hypothesis& h,
                                               const Scenario& s) {
    if (!s.variant.empty()) {
        const auto found = check.likelihoods.find(h.id + ":" + s.variant);
        if (found != check.likelihoods.end()) return &found->second;
    }
    const auto found = check.likelihoods.find(h.id);
    return found == check.likelihoods.end() ? nullptr : &found->second;
}

std::optional<std::string> binned(const Check& check, double value, const CaseNumbers& numbers) {
    if (check.bins.empty()) return std::nullopt;
    if (check.overSensor) {
        const auto boom = numbers.pressureRead();
        const auto base = boom ? boom : numbers.needSensor;
        if (!base) return std::nullopt;
        value -= base->si();
    }
    for (const auto& bin : check.bins) {
        if (!bin.upTo || std::abs(value) <= *bin.upTo) return bin.answer;
    }
    return std::nullopt;
}

void sortReading(const Check& check, const CaseNumbers& numbers, const Readings& healthy,
                 Given& out) {
    const auto kind = *choiceFor<Reading>(check.reading);
    const auto value = numbers.reading(kind);
    if (!value) return;
    if (isCompared(check, healthy))
        out.readings[static_cast<std::size_t>(kind)] = value;
    else if (const auto answer = binned(check, *value, numbers))
        out.answers.push_back({&check, *answer});
}

/// Word answers to one check: counted once; none if they differ.
void sortWords(const Check& check, const std::set<std::string>& words, Given& out) {
    if (words.size() > 1)
        out.conflicts.push_back(
            warning("finder_answers_differ", check.id, {{"question", check.question}}));
    if (words.size() == 1) out.answers.push_back({&check, *words.begin()});
}

}  // namespace

bool isCompared(const Check& check, const Readings& healthy) {
    const auto kind = choiceFor<Reading>(check.reading);
    if (!kind) return false;
    return check.bins.empty() || healthy[static_cast<std::size_t>(*kind)].has_value();
}

bool Evidence::compares(const Check& check) const {
    return isCompared(check, m_healthy);
}

Given sortObservations(const CaseRecord& record, const Knowledge& knowledge,
                       const CaseNumbers& numbers, const Predictor& predictor) {
    Given out;
    std::map<std::string, std::set<std::string>> words;
    for (const auto& o : record.observations) {
        if (o.check == kSpeedRead) continue;
        const Check* check = knowledge.check(o.check);
        const bool wordKnown = check && (o.answer == kCantTell || check->answer(o.answer));
        const bool numberKnown =
            check && !check->reading.empty() && o.reading &&
            o.reading->dimension == dimensionOf(*choiceFor<Reading>(check->reading));
        if (!wordKnown && !numberKnown) {
            out.conflicts.push_back(warning("finder_answer_unknown", o.check));
            continue;
        }
        out.asked.insert(o.check);
        if (wordKnown && o.answer != kCantTell) words[o.check].insert(o.answer);
    }
    for (const auto& [id, given] : words) sortWords(*knowledge.check(id), given, out);
    const Readings healthy = predictor.healthy().readings;
    std::set<std::string> ids(out.asked);
    for (const auto& id : ids) {
        const Check& check = *knowledge.check(id);
        if (!check.reading.empty() && !words.contains(id))
            sortReading(check, numbers, healthy, out);
    }
    return out;
}

double Hypothesis::probability() const {
    return std::accumulate(mass.begin(), mass.end(), 0.0);
}

Evidence::Evidence(const Knowledge& knowledge, const Predictor& predictor, const Given& given,
                   std::optional<Symptom> symptom)
    : m_given(given) {
    addHypotheses(knowledge, predictor);
    findReferences(predictor);
    weigh(symptom);
}

void Evidence::addHypotheses(const Knowledge& knowledge, const Predictor& predictor) {
    for (const auto& cause : knowledge.causes) {
        auto prediction = predictor.predict(cause);
        const double prior = cause.prior * prediction.priorFactor;
        if (prior <= 0) continue;
        m_hypotheses.push_back({&cause,
                                cause.id,
                                prior,
                                std::move(prediction.scenarios),
                                {},
                                std::move(prediction.described)});
    }
    m_hypotheses.push_back(
        {nullptr, std::string(kSomethingElse), knowledge.somethingElse, {Scenario{}}, {}, {}});
}

void Evidence::findReferences(const Predictor& predictor) {
    m_reference = m_healthy = predictor.healthy().readings;
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (m_reference[r]) continue;
        double sum = 0, count = 0;
        for (const auto& h : m_hypotheses) {
            for (const auto& s : h.scenarios) {
                if (!s.readings[r]) continue;
                sum += *s.readings[r];
                ++count;
            }
        }
        if (count > 0) m_reference[r] = sum / count;
    }
}

double Evidence::answerChance(const Check& check, const std::string& answer, const Hypothesis& h,
                              const Scenario& s) {
    const auto* levels = levelsFor(check, h, s);
    const auto word = s.words.find(check.id);
    double mine = 0, all = 0;
    for (const auto& a : check.answers) {
        double p = a.baseRate;
        if (word != s.words.end()) {  // the machine's own numbers say it
            p *= a.id == word->second ? kSaid : kNotSaid;
        } else if (levels) {
            const auto level = levels->find(a.id);
            if (level != levels->end()) p *= level->second;
        }
        all += p;
        if (a.id == answer) mine = p;
    }
    return std::max(mine / all, kLeastChance);
}

double Evidence::readingDensity(Reading kind, double value, const Scenario& s) const {
    const auto r = static_cast<std::size_t>(kind);
    if (!m_reference[r]) return 1.0;
    const double spread = std::max(kBroad * *m_reference[r], readingError(kind, *m_reference[r]));
    const double broad = gaussian(value, *m_reference[r], spread);
    if (!s.readings[r]) return broad;
    const double error =
        std::hypot(s.blur * readingError(kind, *s.readings[r]), s.spread[r].value_or(0.0));
    return (1 - kOutlier) * gaussian(value, *s.readings[r], error) + kOutlier * broad;
}

double Evidence::likelihood(const Hypothesis& h, const Scenario& s,
                            std::optional<Symptom> symptom) const {
    double log = std::log(symptomFit(h, s, symptom));
    for (const auto& [check, answer] : m_given.answers)
        log += std::log(answerChance(*check, answer, h, s));
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (!m_given.readings[r] || !m_reference[r]) continue;
        const double density = readingDensity(static_cast<Reading>(r), *m_given.readings[r], s);
        log += std::log(std::max(density * *m_reference[r], std::numeric_limits<double>::min()));
    }
    return log;
}

void Evidence::weigh(std::optional<Symptom> symptom) {
    double top = -std::numeric_limits<double>::infinity();
    for (auto& h : m_hypotheses) {
        for (const auto& s : h.scenarios) {
            h.mass.push_back(std::log(h.prior * s.weight) + likelihood(h, s, symptom));
            top = std::max(top, h.mass.back());
        }
    }
    double sum = 0;
    for (auto& h : m_hypotheses) {
        for (auto& m : h.mass) sum += m = std::exp(m - top);
    }
    for (auto& h : m_hypotheses) {
        for (auto& m : h.mass) m *= (1 - kElseLeast) / sum;
    }
    m_hypotheses.back().mass.front() += kElseLeast;
}

std::optional<double> Evidence::expected(Reading kind, const Hypothesis& h) const {
    const auto r = static_cast<std::size_t>(kind);
    double sum = 0, weights = 0;
    for (std::size_t i = 0; i < h.scenarios.size(); ++i) {
        const auto& s = h.scenarios[i];
        if (!s.readings[r]) continue;
        sum += h.mass[i] * *s.readings[r];
        weights += h.mass[i];
    }
    if (!(weights > 0)) return std::nullopt;
    return sum / weights;
}

Evidence Evidence::among(const std::vector<std::string>& ids, const Knowledge& knowledge) const {
    Evidence out = *this;
    for (const auto& check : knowledge.checks)
        if (compares(check)) out.m_given.asked.insert(check.id);
    std::erase_if(out.m_hypotheses, [&](const Hypothesis& h) {
        return std::find(ids.begin(), ids.end(), h.id) == ids.end();
    });
    double sum = 0;
    for (const auto& h : out.m_hypotheses) sum += h.probability();
    for (auto& h : out.m_hypotheses) {
        for (auto& m : h.mass) m /= sum;
    }
    return out;
}

std::vector<Problem> unexplainedReadings(const Evidence& evidence) {
    const Readings& given = evidence.given().readings;
    std::vector<Problem> out;
    double together = std::numeric_limits<double>::infinity();
    Readings nearest;  // least miss of each reading on its own, in standard errors
    for (const auto& h : evidence.hypotheses()) {
        if (!h.cause) continue;
        for (const auto& s : h.scenarios) {
            double worst = 0;
            for (std::size_t r = 0; r < kReadings; ++r) {
                if (!given[r] || !s.readings[r]) continue;
                const double error =
                    std::hypot(s.blur * readingError(static_cast<Reading>(r), *s.readings[r]),
                               s.spread[r].value_or(0.0));
                const double miss = std::abs(*given[r] - *s.readings[r]) / error;
                nearest[r] = std::min(nearest[r].value_or(miss), miss);
                worst = std::max(worst, miss);
            }
            together = std::min(together, worst);
        }
    }
    for (std::size_t r = 0; r < kReadings; ++r) {
        if (!nearest[r] || *nearest[r] < kUnexplained) continue;
        const auto kind = static_cast<Reading>(r);
        const std::string id(choiceName(kind));
        out.push_back(warning("finder_reading_unexplained", id,
                              {{"reading", CodeText{"finder.reading." + id}},
                               {"value", AnyQuantity{dimensionOf(kind), *given[r]}}}));
    }
    if (out.empty() && std::isfinite(together) && together > kUnexplained)
        out.push_back(warning("finder_readings_disagree"));
    return out;
}

}  // namespace bw
