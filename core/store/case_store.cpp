// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "core/exchange/json.h"
#include "core/store/record_stores.h"
#include "core/store/record_table.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

const TableColumns kTable{
    u"case_record"_s,
    {u"machine_id"_s, u"customer_id"_s, u"opened"_s, u"symptom"_s, u"tank"_s, u"company"_s,
     u"place"_s, u"who"_s, u"state"_s, u"cause_found"_s, u"minutes"_s, u"notes"_s, u"is_demo"_s,
     u"machine"_s, u"nozzle"_s, u"job"_s}};

using DimensionName = std::pair<Dimension, std::string_view>;
constexpr std::array<DimensionName, 13> kDimensions{{
    {Dimension::None, "number"},
    {Dimension::Length, "length"},
    {Dimension::Area, "area"},
    {Dimension::Duration, "duration"},
    {Dimension::Speed, "speed"},
    {Dimension::Pressure, "pressure"},
    {Dimension::Volume, "volume"},
    {Dimension::Flow, "flow"},
    {Dimension::AreaRate, "area_rate"},
    {Dimension::Mass, "mass"},
    {Dimension::Density, "density"},
    {Dimension::MassRate, "mass_rate"},
    {Dimension::KinematicViscosity, "kinematic_viscosity"},
}};

std::string dimensionName(Dimension dimension) {
    for (const auto& [d, n] : kDimensions) {
        if (d == dimension) return std::string(n);
    }
    return {};
}

std::optional<Dimension> dimensionFor(std::string_view name) {
    for (const auto& [d, n] : kDimensions) {
        if (n == name) return d;
    }
    return std::nullopt;
}

bool isFinite(const std::optional<Cell>& cell) {
    const auto* number = cell ? std::get_if<double>(&*cell) : nullptr;
    return !number || std::isfinite(*number);
}

/// The copies are texts, which would leave a number that is not finite out without a word.
template <class Record>
Outcome checkFinite(const Record& record, const std::string& part) {
    for (const auto& row : fieldRows(record)) {
        if (isFinite(row.value) && isFinite(row.from) && isFinite(row.to)) continue;
        return error("value_not_finite", part + "." + row.key);
    }
    return Done{};
}

Outcome checkCopies(const CaseRecord& record) {
    if (auto o = checkFinite(record.machine, "machine"); !o) return o;
    if (auto o = checkFinite(record.nozzle, "nozzle"); !o) return o;
    return checkFinite(record.job, "job");
}

Outcome writeCaseRow(Connection& connection, const StoredCase& stored, bool isNew) {
    const CaseRecord& record = stored.record;
    const UnitSystem units = record.machine.units;
    return writeOneRow(rowCommand(connection, kTable, isNew)
                           .bind(record.machineId)
                           .bind(record.customerId)
                           .bind(record.opened)
                           .bind(std::string(record.symptom ? choiceName(*record.symptom) : ""))
                           .bind(record.tank)
                           .bind(record.company)
                           .bind(record.place)
                           .bind(record.who)
                           .bind(std::string(choiceName(record.state)))
                           .bind(record.causeFound)
                           .bind(record.minutes)
                           .bind(record.notes)
                           .bind(record.isDemo)
                           .bind(toJson(record.machine))
                           .bind(toJson(record.nozzle, units))
                           .bind(toJson(record.job, units))
                           .bind(stored.id));
}

Outcome writeObservation(Connection& connection, RecordId id, int place, const Observation& seen) {
    auto& command = connection.command(
        u"INSERT INTO observation (case_id, place, check_id, answer, dimension, reading, typed)"
        " VALUES (?, ?, ?, ?, ?, ?, ?)"_s);
    command.bind(id).bind(place).bind(seen.check).bind(seen.answer);
    if (seen.reading) {
        command.bind(dimensionName(seen.reading->dimension)).bind(seen.reading->si);
    } else {
        command.bind(std::string()).bindNull();
    }
    return command.bind(seen.typed).run();
}

Outcome writeObservations(Connection& connection, RecordId id,
                          const std::vector<Observation>& list) {
    auto& clear = connection.command(u"DELETE FROM observation WHERE case_id = ?"_s);
    if (auto gone = clear.bind(id).run(); !gone) return gone;
    int place = 0;
    for (const auto& seen : list) {
        if (auto o = writeObservation(connection, id, place++, seen); !o) return o;
    }
    return Done{};
}

struct ReadObservations {
    std::vector<Observation> list;
    bool isOdd = false;
};

Result<std::unordered_map<RecordId, ReadObservations>> readObservations(Connection& connection) {
    std::unordered_map<RecordId, ReadObservations> out;
    auto query = connection.query(
        u"SELECT case_id, check_id, answer, dimension, reading, typed FROM observation"
        " ORDER BY case_id, place"_s);
    if (auto ran = query.run(); !ran) return ran.problem();
    while (query.next()) {
        auto& [list, isOdd] = out[query.integer(0)];
        Observation seen{query.text(1), query.text(2), std::nullopt, query.text(5)};
        const auto reading = query.cell(4);
        const auto dimension = dimensionFor(query.text(3));
        if (reading && dimension)
            seen.reading = AnyQuantity{*dimension, std::get<double>(*reading)};
        isOdd = isOdd || (reading && !dimension);
        list.push_back(std::move(seen));
    }
    if (auto read = query.outcome(); !read) return read.problem();
    return out;
}

template <class T>
bool take(Result<T> read, T& out) {
    if (read) out = std::move(read).value();
    return read.isOk();
}

/// The choices and copies of a case; the name of the first odd one.
std::optional<std::string> readCaseParts(const Statement& from, CaseRecord& out) {
    const std::string symptom = from.text(4);
    out.symptom = choiceFor<Symptom>(symptom);
    if (!symptom.empty() && !out.symptom) return "symptom";
    const auto state = choiceFor<CaseState>(from.text(9));
    if (!state) return "state";
    out.state = *state;
    if (!take(machineFromJson(from.text(14)), out.machine)) return "machine";
    if (!take(nozzleFromJson(from.text(15)), out.nozzle)) return "nozzle";
    if (!take(jobFromJson(from.text(16)), out.job)) return "job";
    return std::nullopt;
}

StoredCase readCaseRow(const Statement& from) {
    StoredCase out;
    out.id = from.integer(0);
    CaseRecord& record = out.record;
    record.machineId = from.integer(1);
    record.customerId = from.integer(2);
    record.opened = from.text(3);
    record.tank = from.text(5);
    record.company = from.text(6);
    record.place = from.text(7);
    record.who = from.text(8);
    record.causeFound = from.text(10);
    record.minutes = static_cast<int>(from.integer(11));
    record.notes = from.text(12);
    record.isDemo = from.integer(13) != 0;
    return out;
}

}  // namespace

Outcome write(Connection& connection, const Change<StoredCase>& change) {
    if (!change.after) return removeRow(connection, kTable.table, change.before->id);
    const StoredCase& after = *change.after;
    if (auto checked = checkCopies(after.record); !checked) return checked;
    if (auto row = writeCaseRow(connection, after, !change.before); !row) return row;
    if (change.before && change.before->record.observations == after.record.observations)
        return Done{};
    return writeObservations(connection, after.id, after.record.observations);
}

Outcome readAll(Connection& connection, std::vector<StoredCase>& out, std::vector<Problem>& aside) {
    auto observations = readObservations(connection);
    if (!observations) return observations.problem();
    auto query = connection.query(u"SELECT id, "_s + kTable.columns.join(u", "_s) +
                                  u" FROM case_record ORDER BY id"_s);
    if (auto ran = query.run(); !ran) return ran;
    while (query.next()) {
        StoredCase stored = readCaseRow(query);
        auto odd = readCaseParts(query, stored.record);
        auto& seen = observations.value()[stored.id];
        if (!odd && seen.isOdd) odd = "observations";
        stored.record.observations = std::move(seen.list);
        if (odd) {
            aside.push_back(setAside("case", stored.record.opened, *odd));
        } else {
            out.push_back(std::move(stored));
        }
    }
    return query.outcome();
}

}  // namespace bw
