// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <sstream>

#include "app/calc/request.h"
#include "core/simulation/fault.h"
#include "core/simulation/simulate.h"
#include "core/simulation/why.h"

namespace bw::calc {
namespace {

constexpr double kUsualSeconds = 120;
constexpr double kMostSeconds = 3600;
constexpr double kMostSeed = 4294967295.0;
constexpr std::size_t kTraceEvery = 5;  // steps: a row each 0.1 s

enum class TraceForm { None, Rows, Csv };

TraceForm traceForm(Request& request) {
    const Json* json = member(request.json(), "trace");
    if (!json) return TraceForm::None;
    if (json->is_boolean()) return json->get<bool>() ? TraceForm::Rows : TraceForm::None;
    if (json->is_string() && *json == "csv") return TraceForm::Csv;
    request.fail(error("simulate_trace", "trace"));
    return TraceForm::None;
}

Fault readFault(Request& request, const Json& json, const std::string& where) {
    Fault out;
    if (!json.is_object()) {
        request.fail(jsonWrongType(where, "group"));
        return out;
    }
    checkKeys(json, where, {"cause", "severity"}, request.issues());
    const Json* cause = member(json, "cause");
    const Json* severity = member(json, "severity");
    if (!cause) request.fail(jsonMissing(pathTo(where, "cause")));
    if (!severity) request.fail(jsonMissing(pathTo(where, "severity")));
    if (!cause || !severity) return out;
    const std::string at = pathTo(where, "cause");
    if (readText(*cause, at, out.cause, request.issues()) && !isInjectable(out.cause))
        request.fail(jsonNotAChoice(at, out.cause, injectableCauses()));
    readValue(*severity, pathTo(where, "severity"), out.severity, nullptr, request.issues());
    return out;
}

std::vector<Fault> readFaults(Request& request) {
    std::vector<Fault> out;
    const Json* json = member(request.json(), "faults");
    if (!json) return out;
    if (!json->is_array()) {
        request.fail(jsonWrongType("faults", "list"));
        return out;
    }
    for (std::size_t i = 0; i < json->size() && request.ok(); ++i)
        out.push_back(readFault(request, (*json)[i], "faults[" + std::to_string(i) + "]"));
    return out;
}

SimulationWish readWish(Request& request) {
    SimulationWish out;
    const double seconds = request.value<double>("seconds").value_or(kUsualSeconds);
    if (!(seconds >= RateLoop::kStep) || !(seconds <= kMostSeconds))
        request.fail(error("simulate_length", "seconds"));
    const double seed = request.value<double>("seed").value_or(1);
    if (!(seed >= 0) || !(seed <= kMostSeed) || seed != std::floor(seed))
        request.fail(error("simulate_seed", "seed"));
    if (!request.ok()) return out;
    out.length = Duration::fromSi(seconds);
    out.seed = static_cast<std::uint64_t>(seed);
    return out;
}

struct Column {
    const char* name;
    AnyQuantity (*value)(const LoopSample&);
};
const std::vector<Column>& columns() {
    static const std::vector<Column> kColumns{
        {"time", [](const LoopSample& s) { return anyQuantity(s.time); }},
        {"speed", [](const LoopSample& s) { return anyQuantity(s.speed); }},
        {"target", [](const LoopSample& s) { return anyQuantity(s.target); }},
        {"shown", [](const LoopSample& s) { return anyQuantity(s.shown); }},
        {"real", [](const LoopSample& s) { return anyQuantity(s.real); }},
        {"shown_flow", [](const LoopSample& s) { return anyQuantity(s.shownFlow); }},
        {"boom_flow", [](const LoopSample& s) { return anyQuantity(s.sprayed); }},
        {"sensor_pressure", [](const LoopSample& s) { return anyQuantity(s.sensor); }},
        {"sensor_reading", [](const LoopSample& s) { return anyQuantity(s.reading); }},
        {"command", [](const LoopSample& s) { return anyQuantity(s.command); }},
        {"control", [](const LoopSample& s) { return anyQuantity(s.actuator); }}};
    return kColumns;
}

Unit unitOf(const Request& request, AnyQuantity quantity) {
    return quantity.dimension == Dimension::None ? Unit::None
                                                 : displayUnit(request.units(), quantity.dimension);
}
double inUnit(const Request& request, AnyQuantity quantity) {
    return quantity.dimension == Dimension::None ? quantity.si
                                                 : toUnit(quantity, unitOf(request, quantity));
}

/// {"columns": [{name, unit}…], "rows": [[…]…]}; the last column is what holds the command.
OrderedJson traceRows(const Request& request, const std::vector<LoopSample>& trace) {
    auto heads = OrderedJson::array();
    for (const auto& column : columns()) {
        const AnyQuantity quantity = column.value(trace.front());
        heads.push_back({{"name", column.name}, {"unit", jsonSymbol(unitOf(request, quantity))}});
    }
    heads.push_back({{"name", "limit"}, {"unit", ""}});
    auto rows = OrderedJson::array();
    for (std::size_t i = kTraceEvery - 1; i < trace.size(); i += kTraceEvery) {
        auto row = OrderedJson::array();
        for (const auto& column : columns()) row.push_back(inUnit(request, column.value(trace[i])));
        row.push_back(std::string(choiceName(trace[i].limit)));
        rows.push_back(std::move(row));
    }
    return {{"columns", heads}, {"rows", rows}};
}

/// The same as comma-separated text, decimal point, heads with their units.
std::string traceCsv(const Request& request, const std::vector<LoopSample>& trace) {
    const OrderedJson table = traceRows(request, trace);
    std::ostringstream out;
    out.imbue(std::locale::classic());
    out.precision(12);
    const char* comma = "";
    for (const auto& head : table["columns"]) {
        const auto unit = head["unit"].get<std::string>();
        out << comma << head["name"].get<std::string>() << (unit.empty() ? "" : " (" + unit + ")");
        comma = ",";
    }
    out << '\n';
    for (const auto& row : table["rows"]) {
        comma = "";
        for (const auto& cell : row) {
            out << comma;
            if (cell.is_string())
                out << cell.get<std::string>();
            else
                out << cell.get<double>();
            comma = ",";
        }
        out << '\n';
    }
    return out.str();
}

OrderedJson spreadJson(const Spread& spread) {
    return {{"mean", spread.mean}, {"spread", spread.spread}};
}

/// The chain at the run's end, with the same seed.
std::string whyText(const Request& request, const LoopSetup& setup, const SimulationWish& wish) {
    RateLoop loop(setup, wish.seed);
    const long steps = std::lround(wish.length.si() / RateLoop::kStep);
    for (long i = 0; i < steps; ++i) loop.step();
    return request.words(whySo(loop));
}

OrderedJson simulationJson(const Request& request, const LoopSetup& setup,
                           const SimulationWish& wish, TraceForm form) {
    const Simulation run = bw::simulate(setup, wish);
    OrderedJson out;
    out["shown"] = spreadJson(run.reading.shown);
    out["real"] = spreadJson(run.real);
    out["period"] = request.number(run.reading.period);
    out["sensor_pressure"] = request.number(run.sensor);
    out["sensor_reading"] = request.number(run.sensorReading);
    out["share_at_limit"] = run.reading.shareAtLimit;
    out["verdict"] = std::string(choiceName(run.reading.verdict));
    out["why"] = whyText(request, setup, wish);
    if (form == TraceForm::Rows) out["trace"] = traceRows(request, run.trace);
    if (form == TraceForm::Csv) out["trace"] = traceCsv(request, run.trace);
    return out;
}

}  // namespace

OrderedJson simulate(Request& request) {
    request.allowKeys({"machine", "nozzle", "job", "faults", "seconds", "seed", "trace"});
    const Machine machine = request.machine();
    const Nozzle nozzle = request.nozzle();
    const Job job = request.job();
    const TraceForm form = traceForm(request);
    const std::vector<Fault> faults = readFaults(request);
    const SimulationWish wish = readWish(request);
    if (!request.ok()) return {};
    auto setup = LoopSetup::make(machine, nozzle, job);
    if (!setup) {
        request.fail(setup.problem());
        return {};
    }
    const auto done = applyFaults(setup.value(), faults);
    if (done) return simulationJson(request, *setup, wish, form);
    request.fail(done.problem());
    return {};
}

}  // namespace bw::calc
