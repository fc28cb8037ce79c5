// SPDX-License-Identifier: GPL-3.0-or-later
// The pre-season lists: made from the profile, with their cautions. All machines are invented.
#include "core/yard/checklist.h"

#include <gtest/gtest.h>

#include <functional>
#include <nlohmann/json.hpp>
#include <set>

#include "core/base/resource.h"
#include "core/model/machine_fields.h"
#include "core/model/start_values.h"
#include "core/yard/yard_book.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using Json = nlohmann::json;

std::set<std::string> idsOf(const std::vector<ChecklistPart>& parts) {
    std::set<std::string> out;
    for (const auto& part : parts) {
        for (const auto& item : part.items) out.insert(item.id);
    }
    return out;
}

/// Machines of every class, with every choice that a condition speaks of.
std::vector<Machine> manyMachines() {
    std::vector<Machine> out;
    for (const auto& [machineClass, className] : ChoiceNames<MachineClass>::names) {
        Machine base;
        takeClass(base, machineClass);
        out.push_back(base);
        for (const auto& key :
             {"senses", "control", "pump.kind", "restrictor.fitted", "section_returns"}) {
            const auto view = fieldView(base, key);
            for (const auto& choice : view->choices) {
                Machine m = base;
                setField(m, key, choice);
                out.push_back(m);
            }
        }
    }
    return out;
}

TEST(Checklist, ThreePhasesWithTheirItems) {
    ASSERT_EQ(wholeChecklist().size(), 3U);
    for (const auto& part : wholeChecklist()) {
        EXPECT_GE(part.items.size(), 10U) << part.title;
        for (const auto& item : part.items) {
            SCOPED_TRACE(item.id);
            EXPECT_TRUE(item.text.ends_with(".")) << item.text;
            EXPECT_TRUE(item.why.ends_with(".")) << item.why;
            for (const auto& source : item.sources) {
                EXPECT_TRUE(source.kind == "published" || source.kind == "practice" ||
                            source.kind == "judgement")
                    << source.kind;
            }
        }
    }
}

// Ticks are stored by id: one that goes missing or changes its meaning loses what people noted.
TEST(Checklist, IdsStay) {
    const std::set<std::string> ids{"rinse_path",
                                    "strainers_clean",
                                    "nozzles_out",
                                    "meter_out",
                                    "restrictor_stroke",
                                    "frost",
                                    "hoses",
                                    "pump_diaphragm",
                                    "pump_damper",
                                    "pump_centrifugal",
                                    "pulsed_plugs",
                                    "season_notes",
                                    "dry_store",
                                    "flush_leaks",
                                    "tank_lid",
                                    "pump_speed",
                                    "pump_line",
                                    "pump_left",
                                    "agitation_share",
                                    "relief",
                                    "gauge",
                                    "loss_baseline",
                                    "catch",
                                    "drips",
                                    "meter_volume",
                                    "meter_low",
                                    "restrictor_marks",
                                    "returns",
                                    "speed",
                                    "settings",
                                    "valve_stroke",
                                    "pump_drive_stroke",
                                    "section_valves",
                                    "loop_step",
                                    "pulsed_range",
                                    "figures",
                                    "by_hand",
                                    "nozzle_on",
                                    "floor_ceiling",
                                    "restrictor_position",
                                    "agitation_mark",
                                    "density",
                                    "load",
                                    "hand_valves",
                                    "pump_oil",
                                    "tyres",
                                    "strainers_product",
                                    "fill",
                                    "pulsed_pressure"};
    EXPECT_EQ(idsOf(wholeChecklist()), ids);
}

TEST(Checklist, EveryItemIsReachedAndEveryConditionLeavesSomeoneOut) {
    std::set<std::string> reached;
    for (const auto& machine : manyMachines()) reached.merge(idsOf(checklistFor(machine)));
    EXPECT_EQ(reached, idsOf(wholeChecklist()));
    for (const auto& part : wholeChecklist()) {
        for (const auto& item : part.items) {
            if (item.when.empty()) continue;
            int without = 0;
            for (const auto& machine : manyMachines())
                without += !idsOf(checklistFor(machine)).contains(item.id);
            EXPECT_GT(without, 0) << item.id;
        }
    }
}

TEST(Checklist, APartThatIsNotFittedDoesNotShow) {
    const auto expectOnly = [](const char* key, const char* with, const char* without,
                               const std::vector<std::string>& items) {
        Machine m;
        setField(m, key, with);
        const auto there = idsOf(checklistFor(m));
        setField(m, key, without);
        const auto gone = idsOf(checklistFor(m));
        for (const auto& item : items) {
            EXPECT_TRUE(there.contains(item)) << item << " with " << with;
            EXPECT_FALSE(gone.contains(item)) << item << " with " << without;
        }
    };
    expectOnly("restrictor.fitted", "yes", "no",
               {"restrictor_stroke", "restrictor_marks", "restrictor_position"});
    expectOnly("senses", "flow", "pressure", {"meter_out", "meter_volume", "meter_low"});
    expectOnly("senses", "nothing", "flow", {"by_hand"});
    expectOnly("senses", "both", "nothing", {"settings", "loop_step", "floor_ceiling"});
    expectOnly("section_returns", "metered", "none", {"returns"});
    expectOnly("pump.kind", "positive_displacement", "centrifugal",
               {"pump_diaphragm", "pump_damper", "pump_oil", "pump_left", "agitation_share"});
    expectOnly("pump.kind", "centrifugal", "positive_displacement",
               {"pump_centrifugal", "pump_line"});
    expectOnly("control", "bypass", "pump_speed", {"valve_stroke"});
    expectOnly("control", "pump_speed", "throttle", {"pump_drive_stroke"});
    expectOnly("class", "pulsed", "trailed", {"pulsed_plugs", "pulsed_range", "pulsed_pressure"});
}

TEST(Checklist, WhatNobodyKnowsIsNotLeftOut) {
    const auto ids = idsOf(checklistFor(Machine{}));
    for (const auto* item : {"meter_out", "restrictor_stroke", "pump_oil", "returns"})
        EXPECT_TRUE(ids.contains(item)) << item;
    EXPECT_FALSE(ids.contains("pump_line")) << "an unknown pump is never shut in";
}

TEST(Checklist, HeavyLiquidAsksForItsOwn) {
    Job water = build::job();
    Job heavy = build::job();
    heavy.specificGravity = Sourced<double>(1.28);
    const auto has = [](const std::vector<Job>& jobs) {
        return idsOf(checklistFor(Machine{}, jobs)).contains("density");
    };
    EXPECT_TRUE(has({}));
    EXPECT_FALSE(has({water}));
    EXPECT_TRUE(has({water, heavy}));
}

TEST(Checklist, ItsYardChecksAreForTheMachine) {
    for (const auto& machine : manyMachines()) {
        for (const auto& part : checklistFor(machine)) {
            for (const auto& item : part.items) {
                if (item.check.empty()) continue;
                EXPECT_TRUE(applies(*yardCheck(item.check), machine)) << item.id;
            }
        }
    }
}

/// An item that a yard check does carries what can hurt in that check.
TEST(Checklist, CautionsOfTheCheckStandInTheListToo) {
    for (const auto& part : wholeChecklist()) {
        for (const auto& item : part.items) {
            if (item.check.empty()) continue;
            for (const auto* id : {"C1", "C2", "C3", "C8", "C9", "C10", "C22", "C23", "C29"}) {
                const auto& all = yardCheck(item.check)->cautions;
                if (item.check == "Y7" || std::count(all.begin(), all.end(), id) == 0) continue;
                EXPECT_EQ(std::count(item.cautions.begin(), item.cautions.end(), id), 1)
                    << item.id << " " << id;
            }
        }
    }
}

TEST(Checklist, BrokenDataAreRefused) {
    const Json whole = Json::parse(resource("knowledge/checklist.json"));
    ASSERT_TRUE(checklistFrom(whole.dump()).isOk());
    const auto expectBroken = [&](const char* pointer, const Json& value) {
        Json broken = whole;
        broken[Json::json_pointer(pointer)] = value;
        const auto read = checklistFrom(broken.dump());
        ASSERT_FALSE(read.isOk()) << pointer;
        EXPECT_EQ(read.problem().code, "knowledge_broken");
    };
    expectBroken("/phases/0/id", "summer");
    expectBroken("/phases/0/items/0/id", "frost");
    expectBroken("/phases/0/items/0/text", "");
    expectBroken("/phases/0/items/0/cautions", Json::array());
    expectBroken("/phases/0/items/0/cautions/0", "C99");
    expectBroken("/phases/0/items/1/cautions/0", "C15");  // opens the line, does not stop first
    expectBroken("/phases/0/items/0/check", "Y9");
    expectBroken("/phases/0/items/0/sources", Json::array());
    expectBroken("/phases/0/items/3/when/0/key", "colour");
}

}  // namespace
}  // namespace bw
