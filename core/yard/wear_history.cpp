// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/wear_history.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "core/yard/catch_record.h"

namespace bw {
namespace {

std::optional<WearTest> testOf(const YardRecord& record) {
    const CatchTest& test = record.catchTest;
    const auto summary = summaryOf(test);
    if (!summary || !test.pressure) return std::nullopt;
    const int nozzles = std::accumulate(test.sections.begin(), test.sections.end(), 0);
    return wearTest(record.started.substr(0, 10), *summary, test.pressure->value, nozzles);
}

void add(WearHistory& history, const StoredYardRecord& stored) {
    history.machineId = stored.record.machineId;
    history.machineName = stored.record.machineName;
    history.set = stored.record.catchTest.set;
    history.limit = stored.record.catchTest.limitOfNew;
    const auto test = testOf(stored.record);
    if (!test) {
        ++history.leftOut;
        return;
    }
    history.tests.push_back(*test);
    history.records.push_back(stored.id);
}

}  // namespace

std::vector<WearHistory> wearHistories(const std::vector<StoredYardRecord>& records) {
    std::vector<const StoredYardRecord*> tests;
    for (const auto& stored : records) {
        const YardRecord& r = stored.record;
        if (r.kind == YardKind::CatchTest && !r.finished.empty() && !r.catchTest.set.empty())
            tests.push_back(&stored);
    }
    std::stable_sort(tests.begin(), tests.end(), [](const auto* a, const auto* b) {
        return a->record.started < b->record.started;
    });
    std::map<std::tuple<RecordId, std::string, std::string>, WearHistory> sorted;
    for (const auto* stored : tests) {
        const YardRecord& r = stored->record;
        const std::string gone = r.machineId == 0 ? r.machineName : std::string();
        add(sorted[{r.machineId, gone, r.catchTest.set}], *stored);
    }
    std::vector<WearHistory> out;
    for (auto& [key, history] : sorted) {
        history.trend = wearTrend(history.tests, history.limit);
        out.push_back(std::move(history));
    }
    std::stable_sort(out.begin(), out.end(), [](const WearHistory& a, const WearHistory& b) {
        return std::tie(a.machineName, a.set) < std::tie(b.machineName, b.set);
    });
    return out;
}

}  // namespace bw
