// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/store/record_change.h"

/// The records in memory, kept in the order in which the file gives them: by key, jobs by machine
/// and position.
namespace bw {

struct Mirror {
    Season& season;
    std::vector<StoredCase>& cases;
    std::vector<StoredCustomer>& customers;
    std::vector<StoredYardRecord>& yard;
};

/// Brings the mirror up to changes that were stored.
void show(const std::vector<RecordChange>& changes, Mirror mirror);

/// The record of a key, or null.
template <class T>
const T* recordOf(const std::vector<T>& records, RecordId id) {
    for (const auto& record : records) {
        if (record.id == id) return &record;
    }
    return nullptr;
}

/// What became of a machine's jobs when one list is replaced by another: removals, changes,
/// additions. Records of `after` without a key are given one by `newId`.
template <class NewId>
std::vector<RecordChange> jobChanges(const std::vector<StoredJob>& before,
                                     std::vector<StoredJob>& after, NewId&& newId) {
    std::vector<RecordChange> out;
    for (const auto& job : before) {
        if (!recordOf(after, job.id)) out.push_back(removed(job));
    }
    for (auto& job : after) {
        if (job.id == 0) job.id = newId();
        const StoredJob* old = recordOf(before, job.id);
        if (!old) {
            out.push_back(added(job));
        } else if (!(*old == job)) {
            out.push_back(changed(*old, job));
        }
    }
    return out;
}

/// Puts a job into a machine's ordered list at an index (below 0 or past the end: last) and moves
/// the following positions only as far as they collide.
void insertJob(std::vector<StoredJob>& list, StoredJob job, int index);

}  // namespace bw
