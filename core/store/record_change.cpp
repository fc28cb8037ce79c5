// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/record_change.h"

#include <utility>

namespace bw {

bool changesNothing(const RecordChange& change) {
    return std::visit([](const auto& c) { return c.before == c.after; }, change);
}

std::vector<RecordChange> takenBack(const std::vector<RecordChange>& changes) {
    std::vector<RecordChange> out(changes.rbegin(), changes.rend());
    for (auto& change : out) std::visit([](auto& c) { std::swap(c.before, c.after); }, change);
    return out;
}

}  // namespace bw
