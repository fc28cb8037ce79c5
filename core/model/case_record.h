// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/season.h"

namespace bw {

/// What the caller complains of. "Reads right, but the tank comes out wrong" is TankWrong.
enum class Symptom {
    Hunting,
    StuckHigh,
    StuckLow,
    UnevenBoom,
    TankWrong,
    SlowToSettle,
    NothingComes,
    NoReading,
    NotShuttingOff
};
template <>
struct ChoiceNames<Symptom> {
    static constexpr std::array<std::pair<Symptom, std::string_view>, 9> names{
        {{Symptom::Hunting, "hunting"},
         {Symptom::StuckHigh, "stuck_high"},
         {Symptom::StuckLow, "stuck_low"},
         {Symptom::UnevenBoom, "uneven_boom"},
         {Symptom::TankWrong, "tank_wrong"},
         {Symptom::SlowToSettle, "slow_to_settle"},
         {Symptom::NothingComes, "nothing_comes"},
         {Symptom::NoReading, "no_reading"},
         {Symptom::NotShuttingOff, "not_shutting_off"}}};
};

/// One answer of a case: a word answer (its id) or a reading.
struct Observation {
    std::string check;                   ///< id of the check, or of the reading
    std::string answer;                  ///< id of the answer; "cant_tell" changes nothing
    std::optional<AnyQuantity> reading;  ///< instead of an answer
    std::string typed;                   ///< the reading as typed
    bool operator==(const Observation&) const = default;
};

enum class CaseState { Open, Found, Confirmed, NotConfirmed };
template <>
struct ChoiceNames<CaseState> {
    static constexpr std::array<std::pair<CaseState, std::string_view>, 4> names{
        {{CaseState::Open, "open"},
         {CaseState::Found, "found"},
         {CaseState::Confirmed, "confirmed"},
         {CaseState::NotConfirmed, "not_confirmed"}}};
};

/// A case: answers are a list that can be changed; the standing of causes is always recomputed.
/// Machine, nozzle and job are kept as they were when the case was taken.
struct CaseRecord {
    RecordId machineId = 0;  ///< 0: the caller's machine is not in the file
    RecordId customerId = 0;
    std::string opened;  ///< ISO date and time
    std::optional<Symptom> symptom;
    std::string tank;     ///< safety answer: "water", "rinsed", "product", "" = not asked yet
    std::string company;  ///< "alone", "second_person"
    std::string place;    ///< "field", "yard", "road"
    std::string who;      ///< "operator", "technician"
    std::vector<Observation> observations;
    CaseState state = CaseState::Open;
    std::string causeFound;  ///< id, as confirmed or most likely at the end
    int minutes = 0;
    std::string notes;
    Machine machine;
    Nozzle nozzle;
    Job job;
    bool isDemo = false;
    bool operator==(const CaseRecord&) const = default;
};
struct StoredCase {
    RecordId id = 0;
    CaseRecord record;
    bool operator==(const StoredCase&) const = default;
};

}  // namespace bw
