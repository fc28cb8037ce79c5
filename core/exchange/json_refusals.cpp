// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_refusals.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/exchange/json_ranges.h"

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

void require(const Json& json, std::string_view key, const std::string& where, JsonIssues& issues) {
    if (!memberAt(json, key)) issues.add(jsonMissing(where + "." + std::string(key)));
}

void refuseKey(const Json& json, std::string_view key, const std::string& where,
               JsonIssues& issues) {
    if (memberAt(json, key))
        issues.add(error("json_other_pump_kind", where + "." + std::string(key)));
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

template <class T>
bool over(const Known<T>& a, const Known<T>& b) {
    return a && b && a->value > b->value;
}

void refuseSections(const Machine& machine, const std::string& where, JsonIssues& issues) {
    if (!machine.sections) return;
    const std::string path = pathTo(where, "sections");
    const auto& sections = machine.sections->value;
    if (sections.empty()) issues.add(error("json_sections_empty", path));
    if (sections.size() > 1000) issues.add(error("json_absurd", path));
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (sections[i] < 1) issues.add(error("json_not_positive", pathTo(path, i)));
        if (sections[i] > 10000) issues.add(error("json_absurd", pathTo(path, i)));
    }
}

/// c of p = a − c·Q², the fit through the shut-off pressure; below 0 the curve would rise.
double curveFall(const std::vector<CurvePoint>& curve, Pressure shutOff) {
    double up = 0.0;
    double down = 0.0;
    for (const auto& point : curve) {
        const double square = point.flow.si() * point.flow.si();
        up += (shutOff - point.pressure).si() * square;
        down += square * square;
    }
    return down > 0.0 ? up / down : std::nan("");
}

void refuseCurve(const Pump& pump, const std::string& where, JsonIssues& issues) {
    if (!pump.curve || pump.curve->value.empty()) return;
    const auto& curve = pump.curve->value;
    const std::string path = pathTo(where, "curve");
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const std::string point = pathTo(path, i);
        if (curve[i].flow.si() != 0.0)
            checkRange(anyQuantity(curve[i].flow), "curve", pathTo(point, 0), issues);
        if (curve[i].pressure.si() != 0.0)
            checkRange(anyQuantity(curve[i].pressure), "curve", pathTo(point, 1), issues);
    }
    if (!issues.none() || !pump.shutOffPressure) return;
    const double fall = curveFall(curve, pump.shutOffPressure->value);
    if (std::isnan(fall)) issues.add(error("json_curve_without_flow", path));
    if (fall < 0.0) issues.add(error("json_curve_rises", path));
}

template <class Band>
void refuseBands(const Known<std::vector<Band>>& table, const std::string& where,
                 JsonIssues& issues) {
    if (!table) return;
    const auto& bands = table->value;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const std::string path = pathTo(where, i);
        if (bands[i].from.si() != 0.0)
            checkRange(anyQuantity(bands[i].from), "from", pathTo(path, "from"), issues);
        checkRange(anyQuantity(bands[i].to), "to", pathTo(path, "to"), issues);
        if (bands[i].from >= bands[i].to)
            issues.add(error("json_band_order", pathTo(path, "from")));
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

void refuseTable(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    if (!nozzle.table) return;
    const auto& rows = nozzle.table->value;
    const std::string path = pathTo(where, "table");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        checkRange(anyQuantity(rows[i].pressure), "table", pathTo(pathTo(path, i), 0), issues);
        checkRange(anyQuantity(rows[i].flow), "table", pathTo(pathTo(path, i), 1), issues);
    }
    const bool twoPressures = std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
        return row.pressure != rows.front().pressure;
    });
    if (!twoPressures) issues.add(error("json_table_too_short", path));
    if (nozzle.exponent) issues.add(error("json_table_and_exponent", pathTo(where, "exponent")));
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

void refuseMachine(const Machine& machine, const std::string& where, JsonIssues& issues) {
    visitFields(machine, [&](std::string_view key, const auto& field) {
        checkFieldRange(field, key, where + "." + std::string(key), issues);
    });
    refuseSections(machine, where, issues);
    refuseCurve(machine.pump, pathTo(where, "pump"), issues);
    const auto& limits = machine.limits;
    if (limits.pressureFloor && limits.pressureCeiling &&
        limits.pressureFloor->value >= limits.pressureCeiling->value) {
        issues.add(error("json_floor_over_ceiling", where + ".limits.pressure_floor"));
    }
    if (over(machine.pulsed.dutyMin, machine.pulsed.dutyMax))
        issues.add(error("json_duty_order", where + ".pulsed.duty_min"));
    const bool throttle = machine.control && machine.control->value == Control::Throttle;
    const bool displacement =
        machine.pump.kind && machine.pump.kind->value == PumpKind::PositiveDisplacement;
    if (throttle && displacement && !machine.pump.reliefPressure) {
        issues.add(error("json_throttle_without_relief", where + ".pump.relief_pressure"));
    }
}

void refuseNozzle(const Nozzle& nozzle, const std::string& where, JsonIssues& issues) {
    visitFields(nozzle, [&](std::string_view key, const auto& field) {
        checkFieldRange(field, key, pathTo(where, key), issues);
    });
    if (over(nozzle.pressureMin, nozzle.pressureMax))
        issues.add(error("json_nozzle_range_order", pathTo(where, "pressure_min")));
    refuseBands(nozzle.droplets, pathTo(where, "droplets"), issues);
    refuseBands(nozzle.drift, pathTo(where, "drift"), issues);
    if (nozzle.drift) {
        const auto& bands = nozzle.drift->value;
        for (std::size_t i = 0; i < bands.size(); ++i) {
            const AnyQuantity percent{Dimension::None, bands[i].percent};
            checkRange(percent, "percent", pathTo(pathTo(pathTo(where, "drift"), i), "percent"),
                       issues);
        }
    }
    refuseTable(nozzle, where, issues);
}

void refuseJob(const Job& job, const std::string& where, JsonIssues& issues) {
    visitFields(job, [&](std::string_view key, const auto& field) {
        checkFieldRange(field, key, pathTo(where, key), issues);
    });
    if (over(job.slow, job.usual)) issues.add(error("json_slow_over_usual", pathTo(where, "slow")));
    if (over(job.usual, job.fast)) issues.add(error("json_usual_over_fast", pathTo(where, "fast")));
    if (over(job.slow, job.fast)) issues.add(error("json_slow_over_usual", pathTo(where, "slow")));
    if (over(job.rateLeast, job.rate))
        issues.add(error("json_rate_order", pathTo(where, "rate_least")));
    if (over(job.rate, job.rateMost))
        issues.add(error("json_rate_order", pathTo(where, "rate_most")));
}

}  // namespace bw
