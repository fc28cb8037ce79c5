// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/knowledge.h"

#include "app/calc/knowledge_words.h"
#include "app/calc/request.h"
#include "core/diagnosis/readings.h"

namespace bw::calc {
namespace {

OrderedJson causeJson(const Cause& cause, const Knowledge& knowledge) {
    OrderedJson out{{"id", cause.id}, {"name", cause.name}};
    if (!cause.group.empty()) out["group"] = cause.group;
    out["symptoms"] = OrderedJson::array();
    for (const auto& [symptom, fit] : cause.symptoms)
        if (fit > 0) out["symptoms"].push_back(std::string(choiceName(symptom)));
    out["cautions"] = cautionTexts(knowledge, cause.cautions);
    out["remedy"] = cause.remedy;
    out["proof"] = cause.proof;
    return out;
}

/// A check with what it takes: `answers` by id, or a `reading` in units of this dimension.
OrderedJson checkJson(const Request& request, const Check& check, const Knowledge& knowledge) {
    OrderedJson out{{"id", check.id}, {"question", check.question}};
    if (!check.answers.empty()) {
        out["answers"] = OrderedJson::array();
        for (const auto& answer : check.answers)
            out["answers"].push_back({{"id", answer.id}, {"text", answer.text}});
    }
    if (const auto reading = choiceFor<Reading>(check.reading)) {
        out["reading"] = check.reading;
        out["unit"] = jsonSymbol(displayUnit(request.units(), dimensionOf(*reading)));
    }
    out["place"] = std::string(choiceName(check.place));
    out["minutes"] = check.minutes;
    out["cautions"] = cautionTexts(knowledge, check.cautions);
    out["how_to"] = check.howTo;
    return out;
}

}  // namespace

OrderedJson cautionTexts(const Knowledge& knowledge, const std::vector<std::string>& ids) {
    auto out = OrderedJson::array();
    for (const auto& id : ids) {
        const auto found = knowledge.cautions.find(id);
        if (found != knowledge.cautions.end()) out.push_back(found->second.text);
    }
    return out;
}

OrderedJson knowledge(Request& request) {
    request.allowKeys({});
    const Knowledge& all = Knowledge::shipped();
    OrderedJson out;
    out["symptoms"] = choiceWords<Symptom>();
    out["causes"] = OrderedJson::array();
    for (const auto& cause : all.causes) out["causes"].push_back(causeJson(cause, all));
    out["checks"] = OrderedJson::array();
    for (const auto& check : all.checks) {
        // A sum is reckoned by the program, never asked.
        if (check.place != CheckPlace::Sum) out["checks"].push_back(checkJson(request, check, all));
    }
    return out;
}

}  // namespace bw::calc
