// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/hydraulics/boom_network.h"
#include "core/window/field.h"
#include "core/window/job_demand.h"

namespace bw::calc {
namespace {

/// A field of a part of the request; what is missing stays as it is, unless it is needed.
template <class T>
void readField(Request& request, const Json& part, const std::string& path, const char* key, T& out,
               bool isNeeded) {
    const Json* json = member(part, key);
    const std::string where = pathTo(path, key);
    if (json)
        readValue(*json, where, out, nullptr, request.issues());
    else if (isNeeded)
        request.fail(jsonMissing(where));
}

BoomPipe boomPipe(Request& request, const Machine& machine) {
    BoomPipe boom;
    boom.nozzles = nozzleCount(machine);
    boom.spacing = machine.spacing ? machine.spacing->value : Length{};
    const std::string path = "boom_pipe";
    const Json* part = request.need(path);
    if (!part) return boom;
    if (!part->is_object()) {
        request.fail(jsonWrongType(path, "group"));
        return boom;
    }
    checkKeys(*part, path, {"bore", "feed", "ring", "roughness", "viscosity"}, request.issues());
    readField(request, *part, path, "bore", boom.pipe.bore, true);
    readField(request, *part, path, "feed", boom.feeds, true);
    readField(request, *part, path, "ring", boom.ring, false);
    readField(request, *part, path, "roughness", boom.pipe.roughness, false);
    readField(request, *part, path, "viscosity", boom.pipe.viscosity, false);
    return boom;
}

OrderedJson evennessJson(const Request& request, const BoomEvenness& boom) {
    auto nozzles = OrderedJson::array();
    for (const auto& n : boom.nozzles)
        nozzles.push_back(
            {{"pressure", request.number(n.pressure)}, {"flow", request.number(n.flow)}});
    return {{"nozzles", nozzles}, {"cv", 100 * boom.cv}, {"drop", 100 * boom.drop}};
}

OrderedJson turnJson(const Request& request, const TurnPoint& end) {
    return {{"speed", request.number(end.speed)}, {"rate", request.number(end.rate)}};
}

}  // namespace

OrderedJson boomEvenness(Request& request) {
    request.allowKeys({"machine", "nozzle", "pressure", "boom_pipe"});
    request.need("pressure");
    const Machine machine = request.machine();
    const Nozzle nozzle = request.nozzle();
    const BoomPipe boom = boomPipe(request, machine);
    const Pressure pressure = request.value<Pressure>("pressure").value_or(Pressure{});
    if (!request.ok()) return {};
    const auto law = lawOf(request, nozzle);
    if (!law) return {};
    const auto solved = bw::boomEvenness(boom, *law, pressure);
    if (solved) return evennessJson(request, *solved);
    request.fail(solved.problem());
    return {};
}

OrderedJson turn(Request& request) {
    request.allowKeys({"machine", "job", "radius"});
    request.need("radius");
    const Machine machine = request.machine();
    const Job job = request.job();
    const Length radius = request.value<Length>("radius").value_or(Length{});
    if (request.ok() && !(radius.si() > 0))
        request.fail(error("turn_radius_not_positive", "radius"));
    if (!request.ok()) return {};
    const auto ends = turnEnds(nozzleCount(machine), machine.spacing->value, radius,
                               job.usual->value, job.rate->value);
    return {{"inner", turnJson(request, ends.first)}, {"outer", turnJson(request, ends.second)}};
}

}  // namespace bw::calc
