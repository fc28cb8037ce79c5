// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/checklist.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "core/base/resource.h"
#include "core/yard/yard_book.h"
#include "core/yard/yard_data.h"

namespace bw {
namespace {

using yard_data::BrokenData;
using yard_data::Json;
using yard_data::textOf;

constexpr double kHeavy = 1.02;  // under it the nozzle's flow changes by less than 1 %

ChecklistItem itemOf(const Json& object, const std::string& phase) {
    ChecklistItem item;
    item.id = textOf(object, "id", phase);
    const std::string where = phase + "." + item.id;
    item.text = textOf(object, "text", where);
    item.why = textOf(object, "why", where);
    item.when = yard_data::conditionsOf(object, where);
    item.cautions = yard_data::cautionsOf(object, where);
    item.sources = yard_data::sourcesOf(object, where);
    item.check = object.value("check", "");
    item.opensLine = object.value("opens_line", false);
    item.isForHeavyLiquid = object.value("heavy_liquid", false);
    if (item.cautions.empty()) throw BrokenData{where + ".cautions"};
    const std::vector<std::string> first{"C1", "C2"};
    const bool stopsFirst =
        item.cautions.size() >= 2 && std::equal(first.begin(), first.end(), item.cautions.begin());
    if (item.opensLine && !stopsFirst) throw BrokenData{where + ".cautions"};
    if (!item.check.empty() && !yardCheck(item.check)) throw BrokenData{where + ".check"};
    return item;
}

ChecklistPart partOf(const Json& object) {
    const auto id = textOf(object, "id", "phases");
    const auto phase = choiceFor<ChecklistPhase>(id);
    if (!phase) throw BrokenData{"phases." + id};
    ChecklistPart part{*phase, textOf(object, "title", "phases." + id), {}};
    for (const auto& item : object.at("items")) part.items.push_back(itemOf(item, "phases." + id));
    return part;
}

void requireUnique(const std::vector<ChecklistPart>& parts) {
    std::set<std::string> seen;
    for (const auto& part : parts) {
        for (const auto& item : part.items) {
            if (!seen.insert(item.id).second) throw BrokenData{"phases: " + item.id + ": twice"};
        }
    }
}

bool hasHeavyJob(const std::vector<Job>& jobs) {
    return jobs.empty() || std::any_of(jobs.begin(), jobs.end(), [](const Job& job) {
               return valueOr(job.specificGravity, 1.0) > kHeavy;
           });
}

}  // namespace

Result<std::vector<ChecklistPart>> checklistFrom(std::string_view json) {
    return yard_data::loaded([&] {
        std::vector<ChecklistPart> out;
        const Json whole = Json::parse(json);
        for (const auto& part : whole.at("phases")) out.push_back(partOf(part));
        requireUnique(out);
        return out;
    });
}

const std::vector<ChecklistPart>& wholeChecklist() {
    static const std::vector<ChecklistPart> parts =
        yard_data::shipped(checklistFrom(resource("knowledge/checklist.json")));
    return parts;
}

std::vector<ChecklistPart> checklistFor(const Machine& machine, const std::vector<Job>& jobs) {
    const bool isHeavy = hasHeavyJob(jobs);
    std::vector<ChecklistPart> out = wholeChecklist();
    for (auto& part : out) {
        std::erase_if(part.items, [&](const ChecklistItem& item) {
            return !allHold(item.when, machine) || (item.isForHeavyLiquid && !isHeavy);
        });
    }
    return out;
}

}  // namespace bw
