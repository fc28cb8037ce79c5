// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/described.h"

#include <utility>

namespace bw {
namespace {

/// How many times likelier than one hidden fault it is that nothing is hidden, where the machine as
/// described already shows the complaint (judgement).
constexpr double kAsDescribed = 30.0;
/// The profile speaks against it, but profiles are wrong at times (judgement).
constexpr double kProfileSaysNo = 0.3;
constexpr double kProfileRulesOut = 0.05;
/// The needed pressure must miss a limit by this part for the sum to say so.
constexpr double kSumMargin = 0.015;

Described described(bool shows) {
    return shows ? Described::Shows : Described::DoesNotShow;
}

}  // namespace

Described describes(const std::string& what, const CaseNumbers& n) {
    if (what == "floor" && n.floor && n.needSensor)
        return described(*n.needSensor < *n.floor * (1 - kSumMargin));
    if (what == "ceiling" && n.ceiling && n.needSensor)
        return described(*n.needSensor > *n.ceiling * (1 + kSumMargin));
    if (what == "restrictor" && n.position && n.rightPosition())
        return described(*n.position != *n.rightPosition());
    if (what == "meter_minimum" && n.needFlow && n.meterMinimum()) {
        const bool byRestrictor = describes("restrictor", n) == Described::Shows;
        return described(!byRestrictor && *n.needFlow < *n.meterMinimum());
    }
    return Described::Nothing;
}

Fact describedFact(const std::string& what, const CaseNumbers& n) {
    const auto arg = [](std::string name, auto value) {
        return Argument{std::move(name), anyQuantity(value)};
    };
    const std::string code = "finder.why.described_" + what;
    if (what == "floor") return {code, {arg("need", *n.needSensor), arg("limit", *n.floor)}};
    if (what == "ceiling") return {code, {arg("need", *n.needSensor), arg("limit", *n.ceiling)}};
    if (what == "meter_minimum")
        return {code, {arg("flow", *n.needFlow), arg("limit", *n.meterMinimum())}};
    const bool under = n.rightPosition() == RestrictorPosition::Narrowed;
    return {code + (under ? "_full_bore" : "_narrowed"),
            {arg("flow", *n.needFlow), arg("limit", *n.changeover)}};
}

void shareWeights(std::vector<Scenario>& scenarios, bool firstIsDescribed, double priorFactor) {
    const std::size_t from = firstIsDescribed ? 1 : 0;
    const double hidden = firstIsDescribed ? 1 / priorFactor : 1.0;
    if (firstIsDescribed) scenarios.front().weight = 1 - hidden;
    double sum = 0;
    for (auto i = from; i < scenarios.size(); ++i) sum += scenarios[i].weight;
    for (auto i = from; i < scenarios.size(); ++i) scenarios[i].weight *= hidden / sum;
}

double describedFactor(Described said, const Cause& cause, const CaseNumbers& n) {
    switch (said) {
        case Described::Nothing:
            return 1.0;
        case Described::Shows:
            return 1 + kAsDescribed;
        case Described::DoesNotShow:
            break;
    }
    const bool speedKnown = n.speedWasRead && cause.id.starts_with("speed_too_");
    return speedKnown ? kProfileRulesOut : kProfileSaysNo;
}

void describe(const Cause& cause, const CaseNumbers& numbers, const Scenario& asDescribed,
              Prediction& out) {
    const auto said = describes(cause.asIs, numbers);
    const bool byPressure = cause.asIs == "floor" || cause.asIs == "ceiling";
    const bool isFirst = said == Described::Shows && byPressure;
    if (isFirst) {
        std::vector<Scenario> hidden = std::move(out.scenarios);
        out.scenarios.clear();
        out.scenarios.push_back(asDescribed);
        for (auto& scenario : hidden) out.scenarios.push_back(std::move(scenario));
    }
    const double factor = describedFactor(said, cause, numbers);
    if (said == Described::Shows) out.described = describedFact(cause.asIs, numbers);
    shareWeights(out.scenarios, isFirst, factor);
    out.priorFactor *= factor;
}

}  // namespace bw
