// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/catch_record.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace bw {
namespace {

constexpr int kSparseStep = 6;

bool isCaught(const CatchTest& test, int nozzle) {
    return std::any_of(test.catches.begin(), test.catches.end(),
                       [&](const NotedCatch& c) { return c.nozzle == nozzle; });
}

}  // namespace

std::vector<int> nozzlesToCatch(const CatchTest& test) {
    const int count = std::accumulate(test.sections.begin(), test.sections.end(), 0);
    switch (test.scope) {
        case CatchScope::All:
            return everyNozzle(count);
        case CatchScope::EverySixth:
            return everyNozzle(count, kSparseStep);
        case CatchScope::Section:
            return sectionNozzles(test.sections, test.section);
    }
    return {};
}

std::optional<int> nextToCatch(const CatchTest& test) {
    for (const int nozzle : nozzlesToCatch(test)) {
        if (!isCaught(test, nozzle)) return nozzle;
    }
    return std::nullopt;
}

std::vector<CatchEntry> catchEntries(const CatchTest& test, const ReadingErrors& errors) {
    std::map<int, CatchEntry> byNozzle;
    for (const auto& one : test.catches) {
        CatchEntry& entry = byNozzle[one.nozzle];
        entry.nozzle = one.nozzle;
        const auto flow = caughtFlow(one.volume, one.time, errors);
        if (one.isAgain)
            entry.again = flow;
        else
            entry.caught = flow;
    }
    std::vector<CatchEntry> out;
    for (auto& [nozzle, entry] : byNozzle) {
        // A first catch that was taken back leaves the second to stand for it.
        if (entry.caught.value.si() <= 0.0 && entry.again) entry.caught = *entry.again;
        out.push_back(entry);
    }
    return out;
}

Result<CatchSummary> summaryOf(const CatchTest& test, const ReadingErrors& errors) {
    const std::optional<Flow> newFlow =
        test.newFlow ? std::optional(test.newFlow->value) : std::nullopt;
    return catchSummary(catchEntries(test, errors), test.sections, newFlow,
                        {test.limitOfMean, test.limitOfNew});
}

}  // namespace bw
