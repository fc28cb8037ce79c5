// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "app/calc/request.h"
#include "core/season/set_choice.h"
#include "core/season/set_words.h"

namespace bw::calc {
namespace {

constexpr RecordId kMachine = 1;

/// The records of a list, each with a name of its own; one without gets "nozzle 3".
template <class T>
std::vector<T> listOf(Request& request, const std::string& key, const std::string& word,
                      T (*read)(const Json&, JsonUse, const std::string&, JsonIssues&)) {
    std::vector<T> out;
    const Json* json = request.need(key);
    if (!json) return out;
    if (!json->is_array()) {
        request.fail(jsonWrongType(key, "list"));
        return out;
    }
    std::set<std::string> names;
    for (std::size_t i = 0; i < json->size(); ++i) {
        const std::string where = pathTo(key, i);
        out.push_back(read((*json)[i], JsonUse::Request, where, request.issues()));
        std::string& name = out.back().name;
        if (name.empty()) name = word + " " + std::to_string(i + 1);
        if (!names.insert(name).second)
            request.fail(error("calc_name_twice", pathTo(where, "name"), {{"name", name}}));
    }
    return out;
}

/// Names of nozzles of the request.
std::vector<std::string> namesIn(Request& request, std::string_view key,
                                 const std::vector<Nozzle>& nozzles) {
    std::vector<std::string> out;
    const Json* json = member(request.json(), key);
    if (!json) return out;
    std::vector<std::string> known;
    for (const auto& nozzle : nozzles) known.push_back(nozzle.name);
    const std::string where(key);
    if (!json->is_array()) {
        request.fail(jsonWrongType(where, "list"));
        return out;
    }
    for (std::size_t i = 0; i < json->size(); ++i) {
        std::string name;
        if (!readText((*json)[i], pathTo(where, i), name, request.issues())) return out;
        if (std::find(known.begin(), known.end(), name) == known.end())
            request.fail(jsonNotAChoice(pathTo(where, i), name, known));
        out.push_back(std::move(name));
    }
    return out;
}

double partIn(Request& request, std::string_view key, double otherwise) {
    const double part = request.value<double>(key).value_or(otherwise);
    if (request.ok() && !(part >= 0 && part <= 1))
        request.fail(error("calc_not_a_part", std::string(key)));
    return part;
}

SetWishes wishesIn(Request& request, std::vector<Nozzle>& nozzles) {
    SetWishes out;
    for (auto& name : namesIn(request, "owned", nozzles))
        out.owned.push_back({kMachine, std::move(name)});
    out.barred = namesIn(request, "barred", nozzles);
    out.spares = partIn(request, "spares", 0.0);
    if (member(request.json(), "field_efficiency"))
        out.fieldEfficiency = partIn(request, "field_efficiency", 1.0);
    bool isAccepted = false;
    readOptionalMark(request.json(), "", "accept_unchecked", isAccepted, request.issues());
    if (isAccepted)
        for (auto& nozzle : nozzles) nozzle.acceptUnchecked = true;
    return out;
}

SeasonInputs inputsIn(Machine machine, std::vector<Nozzle> nozzles, std::vector<Job> jobs) {
    SeasonInputs out;
    out.machines.push_back({kMachine, 0, std::move(machine)});
    for (std::size_t j = 0; j < jobs.size(); ++j)
        out.jobs.push_back({static_cast<RecordId>(j), kMachine, static_cast<int>(j), jobs[j]});
    out.nozzles = std::move(nozzles);
    return out;
}

/// Writes an answer; jobs by name.
class Writer {
  public:
    Writer(const Request& request, const SetChoice& choice)
        : m_request(request), m_choice(choice) {}

    OrderedJson whole() const {
        OrderedJson out{{"sets", sets(m_choice.plan)}, {"price", money(m_choice.plan.price)}};
        out["room_to_spare"] = money(m_choice.plan.room);
        out["uncovered"] = OrderedJson::array();
        for (const auto& job : m_choice.uncovered) out["uncovered"].push_back(uncovered(job));
        out["alternatives"] = OrderedJson::array();
        for (const auto& other : m_choice.alternatives)
            out["alternatives"].push_back(alternative(other));
        out["not_checked"] = limits(m_choice.machineGaps);
        out["taken_unchecked"] = limits(m_choice.takenUnchecked);
        return out;
    }

  private:
    static OrderedJson money(const std::optional<double>& sum) {
        return sum ? OrderedJson(*sum) : OrderedJson(nullptr);
    }
    static OrderedJson limits(const std::vector<Limit>& limits) {
        auto out = OrderedJson::array();
        for (const Limit limit : limits) out.push_back(choiceName(limit));
        return out;
    }
    std::string nameOf(RecordId job) const {
        return m_choice.season.inputs.jobs[static_cast<std::size_t>(job)].job.name;
    }
    OrderedJson names(const std::vector<RecordId>& jobs) const {
        auto out = OrderedJson::array();
        for (const RecordId job : jobs) out.push_back(nameOf(job));
        return out;
    }
    OrderedJson sets(const SetPlan& plan) const {
        auto out = OrderedJson::array();
        for (const auto& set : plan.sets)
            out.push_back({{"nozzle", set.nozzle},
                           {"jobs", names(set.jobs)},
                           {"forced_by", names(set.forcedBy)},
                           {"to_buy", set.toBuy},
                           {"price", money(set.price)},
                           {"without", facts(set.without)}});
        return out;
    }
    OrderedJson facts(const std::vector<JobChange>& changes) const {
        auto out = OrderedJson::array();
        for (const auto& change : changes)
            if (const auto fact = jobChangeFact(change, nameOf(change.before.job)))
                out.push_back(m_request.words(*fact));
        return out;
    }
    OrderedJson uncovered(const UncoveredJob& job) const {
        OrderedJson out{{"job", nameOf(job.job)}, {"why", m_request.words(job.why)}};
        out["limit"] = choiceName(job.limit);
        out["usual_only"] = job.usualOnly;
        out["smallest_change"] =
            job.changes.empty() ? OrderedJson(nullptr) : change(job.changes.front());
        out["changes"] = OrderedJson::array();
        for (const auto& one : job.changes) out["changes"].push_back(change(one));
        return out;
    }
    OrderedJson change(const PlanChange& change) const {
        OrderedJson out{{"what", choiceName(change.what)}, {"nozzle", change.nozzle}};
        if (change.what == ChangeKind::Droplets) {
            out["value"] = OrderedJson::array();
            for (const auto category : change.droplets)
                out["value"].push_back(choiceName(category));
        } else {
            out["value"] = m_request.number(change.value);
        }
        out["bound"] = choiceName(change.bound);
        if (change.to) out["to"] = m_request.number(*change.to);
        out["note"] = m_request.words(changeFact(change));
        return out;
    }
    OrderedJson alternative(const SetAlternative& other) const {
        return {{"kind", choiceName(other.kind)},
                {"sets", sets(other.plan)},
                {"price", money(other.plan.price)},
                {"left_area", m_request.number(other.leftArea)},
                {"left_jobs", other.leftJobs},
                {"changes", facts(other.changes)},
                {"note", m_request.words(alternativeFacts(other))}};
    }

    const Request& m_request;
    const SetChoice& m_choice;
};

}  // namespace

OrderedJson chooseSetsAnswer(Request& request) {
    request.allowKeys({"machine", "nozzles", "jobs", "accept_unchecked", "owned", "barred",
                       "spares", "field_efficiency"});
    Machine machine = request.machine();
    auto nozzles = listOf<Nozzle>(request, "nozzles", "nozzle", readNozzle);
    auto jobs = listOf<Job>(request, "jobs", "job", readJob);
    const SetWishes wishes = wishesIn(request, nozzles);
    if (!request.ok()) return {};
    const SetChoice choice =
        chooseSets(inputsIn(std::move(machine), std::move(nozzles), std::move(jobs)), wishes);
    if (choice.end == SolveEnd::Optimal) return Writer(request, choice).whole();
    request.fail(error("calc_no_choice"));
    return {};
}

}  // namespace bw::calc
