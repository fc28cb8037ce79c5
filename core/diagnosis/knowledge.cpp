// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/knowledge.h"

#include <cassert>
#include <nlohmann/json.hpp>
#include <set>

#include "core/base/resource.h"
#include "core/diagnosis/readings.h"
#include "core/units/parse.h"

namespace bw {
namespace {

using Json = nlohmann::json;

/// Where the data are broken; never leaves this file.
struct Broken {
    std::string where;
};

constexpr std::array<std::pair<std::string_view, double>, 5> kLevels{{{"very likely", 8.0},
                                                                      {"likely", 2.5},
                                                                      {"unaffected", 1.0},
                                                                      {"unlikely", 0.4},
                                                                      {"very unlikely", 0.1}}};

double levelOf(const std::string& word, const std::string& where) {
    for (const auto& [name, level] : kLevels) {
        if (name == word) return level;
    }
    throw Broken{where + ": " + word};
}

std::string textOf(const Json& object, const char* key, const std::string& where) {
    const auto found = object.find(key);
    if (found == object.end() || !found->is_string() || found->get<std::string>().empty())
        throw Broken{where + "." + key};
    return found->get<std::string>();
}

std::vector<std::string> listOf(const Json& object, const char* key) {
    return object.value(key, std::vector<std::string>{});
}

Symptom symptomOf(const std::string& name, const std::string& where) {
    const auto symptom = choiceFor<Symptom>(name);
    if (!symptom) throw Broken{where + ".symptoms: " + name};
    return *symptom;
}

std::vector<Source> sourcesOf(const Json& object, const std::string& where) {
    std::vector<Source> out;
    for (const auto& source : object.value("sources", Json::array()))
        out.push_back({textOf(source, "kind", where), textOf(source, "text", where)});
    if (out.empty()) throw Broken{where + ".sources"};
    return out;
}

SeverityRange severityOf(const Json& object, const std::string& where) {
    const auto range = object.value("severity", std::vector<double>{1.0, 1.0});
    if (range.size() != 2 || !(range[0] <= range[1])) throw Broken{where + ".severity"};
    return {range[0], range[1]};
}

Cause causeOf(const Json& object) {
    Cause c;
    c.id = textOf(object, "id", "causes");
    const std::string where = "causes." + c.id;
    c.name = textOf(object, "name", where);
    c.phrase = textOf(object, "phrase", where);
    c.group = object.value("group", "");
    c.groupName = object.value("group_name", "");
    c.prior = object.at("prior").get<double>();
    for (const auto& [symptom, fit] : object.at("symptoms").items())
        c.symptoms[symptomOf(symptom, where)] = fit.get<double>();
    c.severity = severityOf(object, where);
    c.needs = listOf(object, "needs");
    c.asIs = object.value("as_is", "");
    c.remedy = textOf(object, "remedy", where);
    c.proof = textOf(object, "proof", where);
    c.prevention = textOf(object, "prevention", where);
    c.cautions = listOf(object, "cautions");
    c.waysOut = listOf(object, "ways_out");
    c.sources = sourcesOf(object, where);
    return c;
}

std::vector<ReadingBin> binsOf(const Json& object, const Check& check, const std::string& where) {
    std::vector<ReadingBin> out;
    for (const auto& bin : object.value("bins", Json::array())) {
        ReadingBin b{textOf(bin, "answer", where), std::nullopt};
        if (!check.answer(b.answer)) throw Broken{where + ".bins: " + b.answer};
        if (bin.contains("up_to")) {
            const auto dimension = dimensionOf(*choiceFor<Reading>(check.reading));
            const auto limit = parseQuantity(textOf(bin, "up_to", where), dimension, Unit::None);
            if (!limit) throw Broken{where + ".bins.up_to"};
            b.upTo = limit->quantity.si;
        }
        out.push_back(std::move(b));
    }
    if (!out.empty() && out.back().upTo) throw Broken{where + ".bins"};
    return out;
}

void readLikelihoods(const Json& object, Check& check, const std::string& where) {
    const auto rows = object.value("likelihoods", Json::object());
    for (const auto& [cause, answers] : rows.items()) {
        for (const auto& [answer, word] : answers.items()) {
            if (!check.answer(answer)) throw Broken{where + ".likelihoods." + cause + "." + answer};
            check.likelihoods[cause][answer] = levelOf(word.get<std::string>(), where);
        }
    }
}

void readAnswers(const Json& object, Check& check, const std::string& where) {
    for (const auto& answer : object.value("answers", Json::array())) {
        check.answers.push_back({textOf(answer, "id", where), textOf(answer, "text", where),
                                 answer.at("base_rate").get<double>()});
    }
    check.reading = object.value("reading", "");
    if (check.reading.empty() ? check.answers.size() < 2 : !choiceFor<Reading>(check.reading))
        throw Broken{where + ".answers"};
    check.bins = binsOf(object, check, where);
    check.overSensor = object.value("over_sensor", false);
    readLikelihoods(object, check, where);
}

Check checkOf(const Json& object) {
    Check c;
    c.id = textOf(object, "id", "checks");
    const std::string where = "checks." + c.id;
    c.question = textOf(object, "question", where);
    c.howTo = textOf(object, "how_to", where);
    c.why = textOf(object, "why", where);
    const auto place = choiceFor<CheckPlace>(textOf(object, "place", where));
    if (!place) throw Broken{where + ".place"};
    c.place = *place;
    c.minutes = object.at("minutes").get<int>();
    c.needsWater = object.value("needs_water", false);
    c.people = object.value("people", 1);
    c.tools = object.value("tools", "");
    c.cautions = listOf(object, "cautions");
    for (const auto& symptom : listOf(object, "only_for"))
        c.onlyFor.push_back(symptomOf(symptom, where));
    c.needs = listOf(object, "needs");
    c.sources = sourcesOf(object, where);
    readAnswers(object, c, where);
    return c;
}

void readCautions(const Json& object, Knowledge& out) {
    for (const auto& caution : object.at("cautions")) {
        const auto id = textOf(caution, "id", "cautions");
        out.cautions[id] = {id, textOf(caution, "text", "cautions." + id),
                            caution.value("where", "")};
    }
}

template <class Items>
void requireUnique(const Items& items, const std::string& kind) {
    std::set<std::string> seen;
    for (const auto& item : items) {
        if (!seen.insert(item.id).second) throw Broken{kind + "." + item.id + ": twice"};
    }
}

template <class Items>
void requireCautions(const Items& items, const Knowledge& all, const std::string& kind) {
    for (const auto& item : items) {
        for (const auto& id : item.cautions) {
            if (!all.cautions.contains(id)) throw Broken{kind + "." + item.id + ".cautions: " + id};
        }
    }
}

/// Every reference leads to something.
void requireWhole(const Knowledge& all) {
    requireUnique(all.causes, "causes");
    requireUnique(all.checks, "checks");
    requireCautions(all.causes, all, "causes");
    requireCautions(all.checks, all, "checks");
    for (const auto& check : all.checks) {
        for (const auto& [key, levels] : check.likelihoods) {
            if (!all.cause(key.substr(0, key.find(':'))))
                throw Broken{"checks." + check.id + ".likelihoods." + key};
        }
    }
}

Knowledge knowledgeOf(const Json& object) {
    Knowledge out;
    readCautions(object, out);
    for (const auto& cause : object.at("causes")) out.causes.push_back(causeOf(cause));
    for (const auto& check : object.at("checks")) out.checks.push_back(checkOf(check));
    out.somethingElse = object.value("something_else", out.somethingElse);
    if (!(out.somethingElse > 0)) throw Broken{"something_else"};
    requireWhole(out);
    return out;
}

Problem broken(const std::string& where) {
    return error("knowledge_broken", where);
}

template <class Items>
auto* byId(const Items& items, std::string_view id) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
    return found == items.end() ? nullptr : &*found;
}

}  // namespace

const Answer* Check::answer(std::string_view answerId) const {
    return byId(answers, answerId);
}
const Cause* Knowledge::cause(std::string_view id) const {
    return byId(causes, id);
}
const Check* Knowledge::check(std::string_view id) const {
    return byId(checks, id);
}

Result<Knowledge> Knowledge::fromJson(std::string_view json) {
    try {
        return knowledgeOf(Json::parse(json));
    } catch (const Broken& problem) {
        return broken(problem.where);
    } catch (const Json::exception& problem) {
        return broken(problem.what());
    }
}

const Knowledge& Knowledge::shipped() {
    static const Knowledge knowledge = [] {
        Json all = Json::object();
        for (const auto* file : {"causes", "checks", "cautions"}) {
            const auto bytes = resource("knowledge/" + std::string(file) + ".json");
            const auto part = Json::parse(bytes, nullptr, false);
            if (part.is_object()) all.update(part);
        }
        auto read = fromJson(all.dump());
        assert(read.isOk());
        return read ? std::move(read).value() : Knowledge{};
    }();
    return knowledge;
}

}  // namespace bw
