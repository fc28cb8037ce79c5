// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_refusals.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "core/model/checks.h"
#include "core/model/field_checks.h"

namespace bw {
namespace {

/// Groups that say nothing unless they hold these keys.
const std::vector<std::pair<std::string, std::vector<std::string>>>& groupKeys() {
    static const std::vector<std::pair<std::string, std::vector<std::string>>> kGroups{
        {"control_valve", {"flow", "at"}},
        {"pump", {"kind"}},
        {"losses.suction", {"pressure", "at"}},
        {"losses.line", {"pressure", "at"}},
        {"losses.plumbing", {"pressure", "at"}},
        {"losses.section", {"pressure", "at"}},
        {"agitation", {"flow", "at"}},
        {"check_valve", {"opening_pressure"}},
        {"pulsed", {"pressure"}},
        {"strainers.suction", {"mesh"}},
        {"strainers.line", {"mesh"}},
        {"strainers.section", {"mesh"}},
        {"strainers.nozzle", {"mesh"}},
    };
    return kGroups;
}

std::string inside(const std::string& where, std::string_view key) {
    return key.empty() ? where : where + "." + std::string(key);
}

void require(const Json& json, std::string_view key, const std::string& where, JsonIssues& issues) {
    if (!memberAt(json, key)) issues.add(jsonMissing(inside(where, key)));
}

void refuseKey(const Json& json, std::string_view key, const std::string& where,
               JsonIssues& issues) {
    if (memberAt(json, key)) issues.add(error("json_other_pump_kind", inside(where, key)));
}

void requirePumpKeys(const Json& json, const Pump& pump, const std::string& where,
                     JsonIssues& issues) {
    if (!pump.kind) return;
    if (pump.kind->value == PumpKind::Centrifugal) {
        require(json, "pump.shutoff_pressure", where, issues);
        refuseKey(json, "pump.rated_flow", where, issues);
    } else {
        require(json, "pump.rated_flow", where, issues);
        refuseKey(json, "pump.shutoff_pressure", where, issues);
        refuseKey(json, "pump.curve", where, issues);
    }
}

/// An air or electric shut-off valve has no opening pressure to give.
bool needsNothing(const Machine& machine, const std::string& group) {
    return group == "check_valve" && machine.checkValve.kind &&
           machine.checkValve.kind->value == ShutOffKind::AirOrElectric;
}

/// What the general checks find missing. Whether a request needs it is said by the keys above.
bool isAboutGaps(const Problem& problem) {
    static const std::set<std::string, std::less<>> kCodes{
        "spacing_missing",   "sections_missing", "nozzle_flow_missing",
        "nozzle_at_missing", "job_rate_missing", "job_usual_missing"};
    return kCodes.contains(problem.code);
}

void addErrors(const std::vector<Problem>& problems, const std::string& where, JsonIssues& issues) {
    for (Problem problem : problems) {
        if (problem.severity != Severity::Error || isAboutGaps(problem)) continue;
        problem.where = inside(where, problem.where);
        issues.add(std::move(problem));
    }
}

/// The ends of an assumed range must be possible too: both are reckoned with.
template <class Record>
void refuseBounds(const Record& record, std::string_view area, const std::string& where,
                  JsonIssues& issues) {
    ProblemList list;
    visitFields(record, [&](std::string_view key, const auto& field) {
        using Value = std::decay_t<decltype(field->value)>;
        if constexpr (detail::IsNumeric<Value>::value) {
            if (!field) return;
            if (field->from) checkNumber(list, area, key, detail::toAny(*field->from));
            if (field->to) checkNumber(list, area, key, detail::toAny(*field->to));
            list.addIf(field->from && field->to && *field->from > *field->to,
                       error("json_bounds_order", std::string(key)));
        }
    });
    addErrors(list.take(), where, issues);
}

void refuseSections(const Machine& machine, const std::string& where, JsonIssues& issues) {
    if (!machine.sections) return;
    const auto& sections = machine.sections->value;
    if (sections.empty()) issues.add(error("json_sections_empty", where));
    long long sum = 0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (sections[i] < 1) issues.add(error("json_not_positive", pathTo(where, i)));
        sum += sections[i];
    }
    // So that the count of nozzles, an int, can be asked at all.
    if (sum > 1'000'000) issues.add(error("json_too_many_nozzles", where));
}

template <class Band>
void refuseBands(const Known<std::vector<Band>>& table, const std::string& where,
                 JsonIssues& issues) {
    if (!table) return;
    const auto& bands = table->value;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        if (bands[i].from.si() < 0)
            issues.add(error("json_not_positive", pathTo(pathTo(where, i), "from")));
        if (bands[i].from >= bands[i].to)
            issues.add(error("json_band_order", pathTo(pathTo(where, i), "from")));
    }
    std::vector<std::size_t> order(bands.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](auto a, auto b) { return bands[a].from < bands[b].from; });
    for (std::size_t i = 1; i < order.size(); ++i) {
        if (bands[order[i]].from >= bands[order[i - 1]].to) continue;
        // Named is the later of the two in the table.
        const auto later = std::max(order[i], order[i - 1]);
        issues.add(error("json_bands_overlap", pathTo(pathTo(where, later), "from")));
    }
}

void refusePercents(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    if (!nozzle.drift) return;
    const auto& bands = nozzle.drift->value;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        if (bands[i].percent < 0 || bands[i].percent > 100)
            issues.add(error("json_not_percent", pathTo(pathTo(where, i), "percent")));
    }
}

/// A pressure or flow of a table: more than nothing, and one that the field itself could have.
void refuseCell(std::string_view key, AnyQuantity value, const std::string& where,
                JsonIssues& issues) {
    ProblemList list;
    checkNumber(list, "nozzle", key, value);
    for (Problem problem : list.take()) {
        if (problem.severity != Severity::Error) continue;
        problem.where = where;
        issues.add(std::move(problem));
    }
}

void refuseTable(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    if (!nozzle.table) return;
    const auto& rows = nozzle.table->value;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        refuseCell("at", anyQuantity(rows[i].pressure), pathTo(pathTo(where, i), 0), issues);
        refuseCell("flow", anyQuantity(rows[i].flow), pathTo(pathTo(where, i), 1), issues);
    }
}

template <class Row, class Key>
void sortRows(Known<std::vector<Row>>& table, Key key) {
    if (!table) return;
    auto& rows = table->value;
    std::stable_sort(rows.begin(), rows.end(),
                     [&](const Row& a, const Row& b) { return key(a) < key(b); });
}

/// A point without flow only repeats the shut-off pressure. A curve of nothing else says nothing.
void dropPointsWithoutFlow(Pump& pump, const std::string& where, JsonIssues& issues) {
    if (!pump.curve || pump.curve->value.empty()) return;
    auto& curve = pump.curve->value;
    std::erase_if(curve, [](const CurvePoint& point) { return point.flow.si() == 0.0; });
    if (curve.empty()) issues.add(error("json_curve_without_flow", where));
}

}  // namespace

void requireMachineKeys(const Json& json, const Machine& machine, const std::string& where,
                        JsonIssues& issues) {
    require(json, "spacing", where, issues);
    require(json, "sections", where, issues);
    for (const auto& [group, keys] : groupKeys()) {
        if (!memberAt(json, group) || needsNothing(machine, group)) continue;
        for (const auto& key : keys) require(json, group + "." + key, where, issues);
    }
    requirePumpKeys(json, machine.pump, where, issues);
}

void requireNozzleKeys(const Json& json, const std::string& where, JsonIssues& issues) {
    if (member(json, "table")) return;
    require(json, "flow", where, issues);
    require(json, "at", where, issues);
}

void requireJobKeys(const Json& json, const std::string& where, JsonIssues& issues) {
    require(json, "rate", where, issues);
    require(json, "usual", where, issues);
}

void putInOrder(Machine& machine, const std::string& where, JsonIssues& issues) {
    dropPointsWithoutFlow(machine.pump, inside(where, "pump.curve"), issues);
}

void putInOrder(Nozzle& nozzle) {
    // An empty table is no table: it must not pass for one that was looked through.
    if (nozzle.droplets && nozzle.droplets->value.empty()) nozzle.droplets.reset();
    if (nozzle.drift && nozzle.drift->value.empty()) nozzle.drift.reset();
    sortRows(nozzle.droplets, [](const DropletBand& band) { return band.from; });
    sortRows(nozzle.drift, [](const DriftBand& band) { return band.from; });
    sortRows(nozzle.table, [](const FlowPoint& row) { return row.pressure; });
}

void refuseMachine(const Machine& machine, const std::string& where, JsonIssues& issues) {
    refuseSections(machine, inside(where, "sections"), issues);
    if (!issues.none()) return;
    refuseBounds(machine, "machine", where, issues);
    addErrors(checkMachine(machine), where, issues);
}

void refuseNozzleRows(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    refuseBands(nozzle.droplets, inside(where, "droplets"), issues);
    refuseBands(nozzle.drift, inside(where, "drift"), issues);
    refusePercents(nozzle, inside(where, "drift"), issues);
    refuseTable(nozzle, inside(where, "table"), issues);
}

void refuseNozzle(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    refuseBounds(nozzle, "nozzle", where, issues);
    addErrors(checkNozzle(nozzle), where, issues);
}

void refuseJob(const Job& job, const std::string& where, JsonIssues& issues) {
    refuseBounds(job, "job", where, issues);
    addErrors(checkJob(job), where, issues);
}

}  // namespace bw
