// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/undo/mirror.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace bw {
namespace {

template <class T>
auto orderOf(const T& record) {
    return record.id;
}
auto orderOf(const StoredJob& job) {
    return std::tuple(job.machine, job.position, job.id);
}

template <class T>
void showOne(const Change<T>& change, std::vector<T>& records) {
    if (change.before) {
        std::erase_if(records, [&](const T& r) { return r.id == change.before->id; });
    }
    if (!change.after) return;
    const auto at =
        std::upper_bound(records.begin(), records.end(), *change.after,
                         [](const T& a, const T& b) { return orderOf(a) < orderOf(b); });
    records.insert(at, *change.after);
}

std::vector<StoredMachine>& listOf(Mirror& m, const Change<StoredMachine>&) {
    return m.season.machines;
}
std::vector<StoredNozzle>& listOf(Mirror& m, const Change<StoredNozzle>&) {
    return m.season.nozzles;
}
std::vector<StoredJob>& listOf(Mirror& m, const Change<StoredJob>&) {
    return m.season.jobs;
}
std::vector<StoredCase>& listOf(Mirror& m, const Change<StoredCase>&) {
    return m.cases;
}
std::vector<StoredCustomer>& listOf(Mirror& m, const Change<StoredCustomer>&) {
    return m.customers;
}
std::vector<StoredYardRecord>& listOf(Mirror& m, const Change<StoredYardRecord>&) {
    return m.yard;
}

}  // namespace

void show(const std::vector<RecordChange>& changes, Mirror mirror) {
    for (const auto& change : changes) {
        std::visit([&](const auto& c) { showOne(c, listOf(mirror, c)); }, change);
    }
}

void insertJob(std::vector<StoredJob>& list, StoredJob job, int index) {
    const auto count = static_cast<int>(list.size());
    const int at = index < 0 ? count : std::min(index, count);
    job.position = at < count  ? list[static_cast<std::size_t>(at)].position
                   : count > 0 ? list.back().position + 1
                               : 0;
    auto place = list.insert(list.begin() + at, std::move(job));
    for (auto next = place + 1; next != list.end() && next->position <= place->position; ++next) {
        next->position = place->position + 1;
        place = next;
    }
}

}  // namespace bw
