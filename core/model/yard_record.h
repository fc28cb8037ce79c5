// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/season.h"

namespace bw {

/// One reading as noted down at the machine, in the check's own words (resources/knowledge).
struct NotedReading {
    std::string id;  ///< of the reading within the check: "shut_in", "flow"
    int run = 1;     ///< where a reading is taken several times, from 1
    AnyQuantity value;
    std::string typed;  ///< as typed
    bool operator==(const NotedReading&) const = default;
};

/// One choice made with a check: "convention", "position".
struct NotedChoice {
    std::string id;
    std::string word;
    bool operator==(const NotedChoice&) const = default;
};

/// One item of a checklist that was ticked.
struct NotedTick {
    std::string item;  ///< id of the item
    std::string date;  ///< ISO
    std::string note;
    bool operator==(const NotedTick&) const = default;
};

/// One nozzle caught. The list keeps the order in which they were caught, so that the last can be
/// taken back; a nozzle caught again after cleaning stands a second time, marked so.
struct NotedCatch {
    int nozzle = 1;        ///< from 1, left to right
    bool isAgain = false;  ///< caught again, after cleaning
    Volume volume;         ///< caught in `time`
    Duration time;
    std::string typed;  ///< the volume as typed
    bool operator==(const NotedCatch&) const = default;
};

enum class CatchScope { All, EverySixth, Section };
template <>
struct ChoiceNames<CatchScope> {
    static constexpr std::array<std::pair<CatchScope, std::string_view>, 3> names{
        {{CatchScope::All, "all"},
         {CatchScope::EverySixth, "every_sixth"},
         {CatchScope::Section, "section"}}};
};

/// A catch test as it goes on. The set, its new flow and the sections are kept as they were, so
/// that a later change of the profile does not change what was found.
struct CatchTest {
    std::string set;           ///< name of the nozzle caught; may be empty
    Known<Pressure> pressure;  ///< at the nozzle, water
    Known<Flow> newFlow;       ///< of a new nozzle at that pressure
    Duration time;             ///< of each catch; 0: not set
    CatchScope scope = CatchScope::All;
    int section = 0;            ///< from 0, for CatchScope::Section
    std::vector<int> sections;  ///< nozzles of each section, left to right
    double limitOfMean = 0.05;  ///< part; see CatchLimits
    double limitOfNew = 0.10;
    std::vector<NotedCatch> catches;
    bool operator==(const CatchTest&) const = default;
};

/// What was done at a machine in the yard: a check with its readings, a catch test or a checklist.
enum class YardKind { Check, CatchTest, Checklist };
template <>
struct ChoiceNames<YardKind> {
    static constexpr std::array<std::pair<YardKind, std::string_view>, 3> names{
        {{YardKind::Check, "check"},
         {YardKind::CatchTest, "catch_test"},
         {YardKind::Checklist, "checklist"}}};
};

struct YardRecord {
    YardKind kind = YardKind::Check;
    std::string check;        ///< id of the check ("Y1") or of the checklist's phase
    RecordId machineId = 0;   ///< the record outlives the machine
    std::string machineName;  ///< as it was
    UnitSystem units = UnitSystem::Metric;
    std::string started;   ///< ISO date and time
    std::string finished;  ///< empty: can be gone on with
    std::vector<NotedReading> readings;
    std::vector<NotedChoice> choices;
    std::vector<NotedTick> ticks;
    CatchTest catchTest;                     ///< for YardKind::CatchTest
    std::vector<std::string> writtenFields;  ///< keys written into the profile as measured
    std::string notes;
    bool isDemo = false;
    bool operator==(const YardRecord&) const = default;
};
struct StoredYardRecord {
    RecordId id = 0;
    YardRecord record;
    bool operator==(const StoredYardRecord&) const = default;
};

}  // namespace bw
