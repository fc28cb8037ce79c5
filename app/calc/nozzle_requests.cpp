// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/hydraulics/nozzle_law.h"
#include "core/model/field_checks.h"

namespace bw::calc {
namespace {

/// Refuses what the field named `area.key` could not be; nothing flows at nothing, which is fine.
void refuseImpossible(Request& request, const std::string& where, std::string_view area,
                      std::string_view key, AnyQuantity value) {
    ProblemList list;
    if (value.si != 0.0) checkNumber(list, area, key, value);
    for (Problem problem : list.take()) {
        if (problem.severity != Severity::Error) continue;
        problem.where = where;
        request.fail(std::move(problem));
    }
}

double specificGravity(Request& request) {
    const double gravity = request.value<double>("specific_gravity").value_or(1.0);
    if (gravity == 0.0) request.fail(error("json_not_positive", "specific_gravity"));
    refuseImpossible(request, "specific_gravity", "job", "specific_gravity", anyQuantity(gravity));
    return gravity;
}

/// The law of the request's nozzle. Only the law: limits and tables play no part here.
std::optional<NozzleLaw> lawIn(Request& request) {
    const Nozzle nozzle = request.nozzle();
    return request.ok() ? lawOf(request, nozzle) : std::nullopt;
}

/// What a table was turned into, and whether the answer lies beyond its rows.
void addFit(const Request& request, const NozzleLaw& law, Pressure pressure, OrderedJson& answer) {
    if (!law.fit()) return;
    const auto& fit = *law.fit();
    answer["fit"] = {{"exponent", law.exponent()},
                     {"flow", request.number(law.qRef())},
                     {"at", request.number(law.pRef())},
                     {"largest_miss", fit.largestMiss}};
    answer["extrapolated"] = pressure < fit.from || pressure > fit.to;
}

}  // namespace

OrderedJson nozzleFlow(Request& request) {
    request.allowKeys({"nozzle", "pressure", "specific_gravity"});
    request.need("pressure");
    const Pressure pressure = request.value<Pressure>("pressure").value_or(Pressure{});
    refuseImpossible(request, "pressure", "nozzle", "pressure_max", anyQuantity(pressure));
    const double gravity = specificGravity(request);
    const auto law = lawIn(request);
    if (!law) return {};
    OrderedJson answer{{"flow", request.number(law->flow(pressure, gravity))}};
    addFit(request, *law, pressure, answer);
    return answer;
}

OrderedJson nozzlePressure(Request& request) {
    request.allowKeys({"nozzle", "flow", "specific_gravity"});
    request.need("flow");
    const Flow flow = request.value<Flow>("flow").value_or(Flow{});
    refuseImpossible(request, "flow", "nozzle", "flow", anyQuantity(flow));
    const double gravity = specificGravity(request);
    const auto law = lawIn(request);
    if (!law) return {};
    const Pressure pressure = law->pressure(flow, gravity);
    OrderedJson answer{{"pressure", request.number(pressure)}};
    addFit(request, *law, pressure, answer);
    return answer;
}

}  // namespace bw::calc
