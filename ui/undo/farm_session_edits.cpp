// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>
#include <utility>

#include "core/store/farm_file.h"
#include "ui/undo/farm_session.h"
#include "ui/undo/mirror.h"

/// The edits of a session, each as a list of changes.
namespace bw {
namespace {

/// The change of one record to what `edit` makes of it; nothing if there is none of that key.
template <class T, class Edit>
std::optional<RecordChange> edited(const std::vector<T>& records, RecordId id, Edit&& edit) {
    const T* before = recordOf(records, id);
    if (!before) return std::nullopt;
    T after = *before;
    edit(after);
    return changed(*before, std::move(after));
}

/// Machines and jobs that refer to a nozzle by its old name, with the new one.
void renameUses(const Season& season, const std::string& from, const std::string& to,
                std::vector<RecordChange>& changes) {
    for (const auto& stored : season.machines) {
        StoredMachine after = stored;
        for (auto& set : after.machine.setsAboard) {
            if (set.nozzle == from) set.nozzle = to;
        }
        changes.push_back(changed(stored, std::move(after)));
    }
    for (const auto& stored : season.jobs) {
        StoredJob after = stored;
        if (after.job.pinnedNozzle == from) after.job.pinnedNozzle = to;
        changes.push_back(changed(stored, std::move(after)));
    }
}

}  // namespace

// Machines

Result<RecordId> FarmSession::addMachine(Machine machine, const QString& undoText) {
    const RecordId id = m_file->newId(RecordKind::Machine);
    auto done = performAsStep({added(StoredMachine{id, 0, std::move(machine)})}, undoText);
    if (!done) return done.problem();
    return id;
}

Outcome FarmSession::editMachine(RecordId id, Machine after, const QString& undoText) {
    const auto change =
        edited(m_season.machines, id, [&](auto& stored) { stored.machine = std::move(after); });
    if (!change) return error("record_gone");
    return performAsStep({*change}, undoText);
}

Outcome FarmSession::setMachineCustomer(RecordId machine, RecordId customerOrZero,
                                        const QString& undoText) {
    const auto change =
        edited(m_season.machines, machine, [&](auto& stored) { stored.customer = customerOrZero; });
    if (!change) return error("record_gone");
    return performAsStep({*change}, undoText);
}

Outcome FarmSession::removeMachine(RecordId id, const QString& undoText) {
    const auto* stored = recordOf(m_season.machines, id);
    if (!stored) return error("record_gone");
    std::vector<RecordChange> changes;
    for (auto& job : jobsOf(id)) changes.push_back(removed(std::move(job)));
    changes.push_back(removed(*stored));
    return performAsStep(std::move(changes), undoText);
}

// Nozzles

bool FarmSession::isNameTaken(const std::string& name, RecordId butFor) const {
    const auto& own = m_season.nozzles;
    return !name.empty() && std::any_of(own.begin(), own.end(), [&](const StoredNozzle& stored) {
        return stored.id != butFor && stored.nozzle.name == name;
    });
}

Problem FarmSession::nameTaken(const std::string& name) const {
    return error("nozzle_name_taken", "name", {{"nozzle", name}});
}

Result<RecordId> FarmSession::addNozzle(Nozzle nozzle, const QString& undoText) {
    if (isNameTaken(nozzle.name, 0)) return nameTaken(nozzle.name);
    const RecordId id = m_file->newId(RecordKind::Nozzle);
    nozzle.isBuiltIn = false;
    auto done = performAsStep({added(StoredNozzle{id, std::move(nozzle)})}, undoText);
    if (!done) return done.problem();
    return id;
}

Outcome FarmSession::addNozzles(std::vector<Nozzle> nozzles, const QString& undoText) {
    std::vector<StoredNozzle> fresh;
    for (auto& nozzle : nozzles) fresh.push_back({0, std::move(nozzle)});
    return takeNozzles(std::move(fresh), undoText);
}

Outcome FarmSession::takeNozzles(std::vector<StoredNozzle> nozzles, const QString& undoText) {
    std::vector<RecordChange> changes;
    std::set<std::string> names;
    for (auto& [id, nozzle] : nozzles) {
        const auto* before = id == 0 ? nullptr : recordOf(m_season.nozzles, id);
        if (id != 0 && !before) return error("record_gone");
        if (before) nozzle.name = before->nozzle.name;
        const bool isTwice = !nozzle.name.empty() && !names.insert(nozzle.name).second;
        if (isTwice || isNameTaken(nozzle.name, id)) return nameTaken(nozzle.name);
        nozzle.isBuiltIn = false;
        if (before)
            changes.push_back(changed(*before, StoredNozzle{id, std::move(nozzle)}));
        else
            changes.push_back(
                added(StoredNozzle{m_file->newId(RecordKind::Nozzle), std::move(nozzle)}));
    }
    return performAsStep(std::move(changes), undoText);
}

Outcome FarmSession::editNozzle(RecordId id, Nozzle after, const QString& undoText) {
    const auto* before = recordOf(m_season.nozzles, id);
    if (!before) return error("record_gone");
    if (isNameTaken(after.name, id)) return nameTaken(after.name);
    after.isBuiltIn = false;
    std::vector<RecordChange> changes;
    const std::string& oldName = before->nozzle.name;
    if (!oldName.empty() && oldName != after.name) {
        renameUses(m_season, oldName, after.name, changes);
    }
    changes.push_back(changed(*before, StoredNozzle{id, std::move(after)}));
    return performAsStep(std::move(changes), undoText);
}

Outcome FarmSession::removeNozzle(RecordId id, const QString& undoText) {
    const auto* stored = recordOf(m_season.nozzles, id);
    if (!stored) return error("record_gone");
    return performAsStep({removed(*stored)}, undoText);
}

// Jobs

Result<RecordId> FarmSession::addJob(RecordId machine, Job job, int position,
                                     const QString& undoText) {
    if (!this->machine(machine)) return error("record_gone");
    const auto before = jobsOf(machine);
    auto after = before;
    const RecordId id = m_file->newId(RecordKind::Job);
    insertJob(after, {id, machine, 0, std::move(job)}, position);
    auto done = performAsStep(jobChanges(before, after, [] { return RecordId{0}; }), undoText);
    if (!done) return done.problem();
    return id;
}

Outcome FarmSession::editJob(RecordId id, Job after, const QString& undoText) {
    const auto change =
        edited(m_season.jobs, id, [&](auto& stored) { stored.job = std::move(after); });
    if (!change) return error("record_gone");
    return performAsStep({*change}, undoText);
}

Outcome FarmSession::editJobs(std::vector<StoredJob> jobs, const QString& undoText) {
    std::map<RecordId, std::vector<StoredJob>> lists;
    for (const auto& job : m_season.jobs) {
        const auto after =
            std::find_if(jobs.begin(), jobs.end(), [&](const auto& j) { return j.id == job.id; });
        const StoredJob& now = after == jobs.end() ? job : *after;
        lists[now.machine].push_back(now);
    }
    for (auto& job : jobs) {
        const bool isNew = job.id == 0;
        if (!machine(job.machine) || (!isNew && !this->job(job.id))) return error("record_gone");
        if (isNew) insertJob(lists[job.machine], job, job.position);
    }
    std::vector<StoredJob> after;
    for (auto& [id, list] : lists) after.insert(after.end(), list.begin(), list.end());
    auto changes =
        jobChanges(m_season.jobs, after, [this] { return m_file->newId(RecordKind::Job); });
    return performAsStep(std::move(changes), undoText);
}

Outcome FarmSession::removeJobs(const std::vector<RecordId>& ids, const QString& undoText) {
    std::vector<RecordChange> changes;
    for (const RecordId id : std::set<RecordId>(ids.begin(), ids.end())) {
        const auto* stored = recordOf(m_season.jobs, id);
        if (!stored) return error("record_gone");
        changes.push_back(removed(*stored));
    }
    return performAsStep(std::move(changes), undoText);
}

// Customers

Result<RecordId> FarmSession::addCustomer(Customer customer, const QString& undoText) {
    const RecordId id = m_file->newId(RecordKind::Customer);
    auto done = performAsStep({added(StoredCustomer{id, std::move(customer)})}, undoText);
    if (!done) return done.problem();
    return id;
}

Outcome FarmSession::editCustomer(RecordId id, Customer after, const QString& undoText) {
    const auto change =
        edited(m_customers, id, [&](auto& stored) { stored.customer = std::move(after); });
    if (!change) return error("record_gone");
    return performAsStep({*change}, undoText);
}

Outcome FarmSession::removeCustomer(RecordId id, const QString& undoText) {
    const auto* stored = recordOf(m_customers, id);
    if (!stored) return error("record_gone");
    std::vector<RecordChange> changes;
    for (const auto& machine : m_season.machines) {
        if (machine.customer != id) continue;
        StoredMachine after = machine;
        after.customer = 0;
        changes.push_back(changed(machine, std::move(after)));
    }
    changes.push_back(removed(*stored));
    return performAsStep(std::move(changes), undoText);
}

// Records that are saved as they are taken

template <class Stored, class Record>
Result<RecordId> FarmSession::saveAsTaken(const std::vector<Stored>& list, RecordKind kind,
                                          RecordId idOrZero, Record record) {
    if (idOrZero == 0) {
        const RecordId id = m_file->newId(kind);
        if (auto done = perform({added(Stored{id, std::move(record)})}); !done)
            return done.problem();
        return id;
    }
    const auto change =
        edited(list, idOrZero, [&](auto& stored) { stored.record = std::move(record); });
    if (!change) return error("record_gone");
    if (changesNothing(*change)) return idOrZero;
    if (auto done = perform({*change}); !done) return done.problem();
    return idOrZero;
}

Result<RecordId> FarmSession::saveCase(RecordId idOrZero, CaseRecord record) {
    return saveAsTaken(m_cases, RecordKind::Case, idOrZero, std::move(record));
}

Result<RecordId> FarmSession::saveYardRecord(RecordId idOrZero, YardRecord record) {
    return saveAsTaken(m_yard, RecordKind::Yard, idOrZero, std::move(record));
}

Outcome FarmSession::removeYardRecord(RecordId id, const QString& undoText) {
    const auto* stored = recordOf(m_yard, id);
    if (!stored) return error("record_gone");
    return performAsStep({removed(*stored)}, undoText);
}

Outcome FarmSession::removeCase(RecordId id, const QString& undoText) {
    const auto* stored = recordOf(m_cases, id);
    if (!stored) return error("record_gone");
    return performAsStep({removed(*stored)}, undoText);
}

}  // namespace bw
