// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo_season.h"

#include <algorithm>
#include <utility>

#include "core/base/resource.h"
#include "core/exchange/json_fields.h"
#include "core/exchange/json_model.h"
#include "core/exchange/json_yard.h"

namespace bw {
namespace {

constexpr auto kUse = JsonUse::Stored;

/// Reads one demo season; the first problem stays in `issues`.
class DemoReader {
  public:
    explicit DemoReader(JsonIssues& issues) : m_issues(issues) {}

    DemoSeason read(const Json& root) {
        checkKeys(root, "", {"about", "name", "customers", "fleet", "nozzles", "cases", "yard"},
                  m_issues);
        readOptionalText(root, "", "name", m_out.season.name, m_issues);
        each(root, "", "customers",
             [&](const Json& j, const std::string& w) { readCustomer(j, w); });
        each(root, "", "nozzles",
             [&](const Json& j, const std::string& w) { readOneNozzle(j, w); });
        each(root, "", "fleet", [&](const Json& j, const std::string& w) { readOwned(j, w); });
        each(root, "", "cases", [&](const Json& j, const std::string& w) { readPastCase(j, w); });
        each(root, "", "yard", [&](const Json& j, const std::string& w) { readYard(j, w); });
        return std::move(m_out);
    }

  private:
    template <class Take>
    void each(const Json& object, const std::string& where, std::string_view key, Take&& take) {
        const Json* list = member(object, key);
        const std::string path = pathTo(where, key);
        if (!list) return;
        if (!list->is_array()) return m_issues.add(jsonWrongType(path, "list"));
        for (std::size_t i = 0; i < list->size() && m_issues.none(); ++i) {
            take((*list)[i], pathTo(path, i));
        }
    }

    void readCustomer(const Json& json, const std::string& where) {
        checkKeys(json, where, {"name", "place", "notes"}, m_issues);
        Customer customer;
        customer.isDemo = true;
        readOptionalText(json, where, "name", customer.name, m_issues);
        readOptionalText(json, where, "place", customer.place, m_issues);
        readOptionalText(json, where, "notes", customer.notes, m_issues);
        m_out.customers.push_back({nextId(m_out.customers), std::move(customer)});
    }

    void readOneNozzle(const Json& json, const std::string& where) {
        Nozzle nozzle = readNozzle(json, kUse, where, m_issues);
        nozzle.isDemo = true;
        m_out.season.nozzles.push_back({nextId(m_out.season.nozzles), std::move(nozzle)});
    }

    void readOwned(const Json& json, const std::string& where) {
        checkKeys(json, where, {"customer", "machine", "jobs"}, m_issues);
        const Json* part = member(json, "machine");
        if (!part) return m_issues.add(jsonMissing(pathTo(where, "machine")));
        StoredMachine stored;
        stored.id = nextId(m_out.season.machines);
        stored.machine = readMachine(*part, kUse, pathTo(where, "machine"), m_issues);
        stored.machine.isDemo = true;
        if (const auto* owner = named(m_out.customers, json, where, "customer"))
            stored.customer = owner->id;
        m_out.season.machines.push_back(stored);
        int position = 0;
        each(json, where, "jobs", [&](const Json& j, const std::string& w) {
            Job job = readJob(j, kUse, w, m_issues);
            job.isDemo = true;
            m_out.season.jobs.push_back(
                {nextId(m_out.season.jobs), stored.id, position++, std::move(job)});
        });
    }

    /// A case with copies of machine, nozzle and job, changed to what they were at the time.
    void readPastCase(const Json& json, const std::string& where) {
        checkKeys(json, where, {"customer", "machine", "nozzle", "job", "as_it_was", "case"},
                  m_issues);
        const Json* part = member(json, "case");
        if (!part) return m_issues.add(jsonMissing(pathTo(where, "case")));
        CaseRecord record = readCase(*part, pathTo(where, "case"), m_issues);
        record.isDemo = true;
        if (const auto* owner = named(m_out.customers, json, where, "customer"))
            record.customerId = owner->id;
        if (const auto* machine = named(m_out.season.machines, json, where, "machine")) {
            record.machineId = machine->id;
            record.machine = machine->machine;
        }
        if (const auto* nozzle = named(m_out.season.nozzles, json, where, "nozzle"))
            record.nozzle = nozzle->nozzle;
        if (const auto* job = named(m_out.season.jobs, json, where, "job")) record.job = job->job;
        if (const Json* then = member(json, "as_it_was")) {
            changeFields(*then, pathTo(where, "as_it_was"), record.machine);
        }
        m_out.cases.push_back({nextId(m_out.cases), std::move(record)});
    }

    void readYard(const Json& json, const std::string& where) {
        StoredYardRecord stored{nextId(m_out.yard), readYardRecord(json, where, m_issues)};
        stored.record.isDemo = true;
        if (const auto* machine = named(m_out.season.machines, json, where, "machine_name")) {
            stored.record.machineId = machine->id;
            stored.record.units = machine->machine.units;
        }
        m_out.yard.push_back(std::move(stored));
    }

    void changeFields(const Json& json, const std::string& where, Machine& machine) {
        std::vector<std::string> keys;
        visitFields(machine, [&](std::string_view key, const auto&) { keys.emplace_back(key); });
        checkKeys(json, where, keys, m_issues);
        visitFields(machine, [&](std::string_view key, auto& field) {
            const Json* value = memberAt(json, key);
            if (value) readKnown(*value, pathTo(where, key), field, m_issues);
        });
    }

    template <class T>
    static RecordId nextId(const std::vector<T>& list) {
        return static_cast<RecordId>(list.size()) + 1;
    }

    static const std::string& nameOf(const StoredCustomer& r) { return r.customer.name; }
    static const std::string& nameOf(const StoredMachine& r) { return r.machine.name; }
    static const std::string& nameOf(const StoredNozzle& r) { return r.nozzle.name; }
    static const std::string& nameOf(const StoredJob& r) { return r.job.name; }

    /// The record that the text under `key` names; null, and an issue if there is none of that
    /// name.
    template <class T>
    const T* named(const std::vector<T>& list, const Json& json, const std::string& where,
                   std::string_view key) {
        std::string name;
        if (!member(json, key)) return nullptr;
        readOptionalText(json, where, key, name, m_issues);
        const auto found =
            std::find_if(list.begin(), list.end(), [&](const T& r) { return nameOf(r) == name; });
        if (found != list.end()) return &*found;
        m_issues.add(error("demo_name_unknown", pathTo(where, key), {{"name", name}}));
        return nullptr;
    }

    JsonIssues& m_issues;
    DemoSeason m_out;
};

}  // namespace

Result<DemoSeason> demoSeasonFromJson(std::string_view text) {
    const auto root = parseJson(text);
    if (!root) return root.problem();
    JsonIssues issues;
    DemoSeason out = DemoReader(issues).read(*root);
    if (!issues.none()) return issues.first();
    return out;
}

Result<DemoSeason> demoSeason() {
    return demoSeasonFromJson(resource("demo/season.json"));
}

}  // namespace bw
