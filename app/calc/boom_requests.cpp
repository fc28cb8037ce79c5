// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/hydraulics/boom_network.h"
#include "core/hydraulics/minor_loss.h"
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

/// The pipe that the machine itself tells of.
BoomPipe ownPipe(const Machine& machine) {
    BoomPipe boom;
    boom.nozzles = nozzleCount(machine);
    boom.spacing = valueOr(machine.spacing, Length{});
    boom.pipe.bore = valueOr(machine.boomPipe.bore, Length{});
    boom.feeds = valueOr(machine.boomPipe.feeds, std::vector<int>());
    boom.ring = valueOr(machine.boomPipe.ring, false);
    return boom;
}

/// What the request's own group says, and for the rest the machine's.
BoomPipe boomPipe(Request& request, const Machine& machine) {
    BoomPipe boom = ownPipe(machine);
    const BoomFeed& own = machine.boomPipe;
    const std::string path = "boom_pipe";
    if (!member(request.json(), path) && (own.bore || own.feeds)) {
        if (!own.bore) request.fail(jsonMissing("machine.boom_pipe.bore"));
        if (!own.feeds) request.fail(jsonMissing("machine.boom_pipe.feeds"));
        return boom;
    }
    const Json* part = request.need(path);
    if (!part) return boom;
    if (!part->is_object()) {
        request.fail(jsonWrongType(path, "group"));
        return boom;
    }
    checkKeys(*part, path, {"bore", "feed", "ring", "roughness", "viscosity"}, request.issues());
    readField(request, *part, path, "bore", boom.pipe.bore, !own.bore);
    readField(request, *part, path, "feed", boom.feeds, !own.feeds);
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

OrderedJson lineLoss(Request& request) {
    request.allowKeys({"bore", "length", "fittings", "flow", "roughness", "viscosity"});
    const Json& whole = request.json();
    Pipe pipe{};
    Length length{};
    std::vector<Fitting> fittings;
    Flow flow{};
    readField(request, whole, {}, "bore", pipe.bore, true);
    readField(request, whole, {}, "flow", flow, true);
    readField(request, whole, {}, "length", length, false);
    readField(request, whole, {}, "fittings", fittings, false);
    readField(request, whole, {}, "roughness", pipe.roughness, false);
    readField(request, whole, {}, "viscosity", pipe.viscosity, false);
    if (!request.ok()) return {};
    if (const auto problem = runProblem(pipe, length, flow)) {
        request.fail(*problem);
        return {};
    }
    const RunLoss loss = runLoss(pipe, length, fittings, flow);
    return {{"pressure", request.number(loss.whole())},
            {"at", request.number(flow)},
            {"friction", request.number(loss.friction)},
            {"fittings", request.number(loss.fittings)},
            {"note", request.words(Fact{"calc.line_loss_estimate", {}})}};
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
