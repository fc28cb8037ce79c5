// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "core/model/case_record.h"
#include "core/model/season.h"
#include "core/model/yard_record.h"

namespace bw {

enum class RecordKind { Machine, Nozzle, Job, Case, Customer, Yard };

/// One record before and after: added (no `before`), removed (no `after`) or changed. Both carry
/// the record's key.
template <class T>
struct Change {
    std::optional<T> before;
    std::optional<T> after;
    bool operator==(const Change&) const = default;
};

using RecordChange =
    std::variant<Change<StoredMachine>, Change<StoredNozzle>, Change<StoredJob>, Change<StoredCase>,
                 Change<StoredCustomer>, Change<StoredYardRecord>>;

template <class T>
RecordChange added(T record) {
    return Change<T>{std::nullopt, std::move(record)};
}
template <class T>
RecordChange removed(T record) {
    return Change<T>{std::move(record), std::nullopt};
}
template <class T>
RecordChange changed(T before, T after) {
    return Change<T>{std::move(before), std::move(after)};
}

/// Whether before and after are the same.
bool changesNothing(const RecordChange& change);
/// The changes that take back the given ones: last first, before and after swapped.
std::vector<RecordChange> takenBack(const std::vector<RecordChange>& changes);

}  // namespace bw
