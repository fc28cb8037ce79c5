// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"
#include "core/season/loads.h"
#include "core/season/work_rate.h"

namespace bw::calc {
namespace {

const Duration kHour = make<Duration>(1, Unit::Hour);

template <class T>
T needed(Request& request, std::string_view key) {
    if (!request.need(key)) return T{};
    return request.value<T>(key).value_or(T{});
}

OrderedJson hours(Duration time) {
    return {{"value", in(time, Unit::Hour)}, {"unit", "h"}};
}
OrderedJson areaAnHour(const Request& request, WorkRate rate) {
    const Unit unit = displayUnit(request.units(), Dimension::Area);
    return {{"value", in(areaIn(rate, kHour), unit)}, {"unit", jsonSymbol(unit) + "/h"}};
}

/// The rate of a product: a volume or a mass on each area.
void readProductRate(Request& request, const Json& json, const std::string& where,
                     LoadProduct& out) {
    std::string text;
    if (!readText(json, where, text, request.issues())) return;
    const auto quantity = parseJsonQuantity(text);
    if (!quantity) {
        Problem problem = quantity.problem();
        problem.where = where;
        request.fail(std::move(problem));
    } else if (quantity->dimension == Dimension::AreaRate) {
        out.volume = AreaRate::fromSi(quantity->si);
    } else if (quantity->dimension == Dimension::MassRate) {
        out.mass = MassRate::fromSi(quantity->si);
    } else {
        request.fail(error("calc_product_rate", where));
    }
}

std::vector<LoadProduct> productsIn(Request& request) {
    std::vector<LoadProduct> out;
    const Json* list = member(request.json(), "products");
    if (!list) return out;
    if (!list->is_array()) request.fail(jsonWrongType("products", "list"));
    for (std::size_t i = 0; request.ok() && i < list->size(); ++i) {
        const std::string where = pathTo("products", i);
        const Json& json = (*list)[i];
        if (!json.is_object()) {
            request.fail(jsonWrongType(where, "group"));
            break;
        }
        checkKeys(json, where, {"name", "rate"}, request.issues());
        LoadProduct product;
        readOptionalText(json, where, "name", product.name, request.issues());
        if (const Json* rate = member(json, "rate"))
            readProductRate(request, *rate, pathTo(where, "rate"), product);
        else
            request.fail(jsonMissing(pathTo(where, "rate")));
        out.push_back(std::move(product));
    }
    return out;
}

OrderedJson loadJson(const Request& request, const Load& load) {
    OrderedJson out{{"volume", request.number(load.volume)},
                    {"area", request.number(load.area)},
                    {"water", request.number(load.water)},
                    {"weight", request.number(load.mass)}};
    out["products"] = OrderedJson::array();
    for (const auto& product : load.products)
        out["products"].push_back({{"name", product.name},
                                   {"amount", product.volume ? request.number(*product.volume)
                                                             : request.number(product.mass)}});
    return out;
}

/// Loads as given, or from tank, rate and area.
std::optional<int> loadCountIn(Request& request, Area area) {
    if (member(request.json(), "loads")) return request.value<int>("loads");
    if (!member(request.json(), "tank") && !member(request.json(), "rate")) return {};
    LoadsTask task;
    task.tank = needed<Volume>(request, "tank");
    task.rate = needed<AreaRate>(request, "rate");
    task.area = area;
    if (!request.ok()) return {};
    const auto loads = loadsFor(task);
    if (loads) return loads->count;
    request.fail(loads.problem());
    return {};
}

Length widthIn(Request& request) {
    if (!member(request.json(), "machine")) return needed<Length>(request, "width");
    if (member(request.json(), "width")) request.fail(error("calc_width_twice", "width"));
    return sprayedWidth(request.machine());
}

OrderedJson byEfficiency(Request& request, Length width, Speed speed, std::optional<Area> area) {
    const double efficiency = request.value<double>("efficiency").value_or(1.0);
    if (request.ok() && !(efficiency > 0 && efficiency <= 1))
        request.fail(error("calc_not_a_part", "efficiency"));
    for (const char* where : {"run", "turn", "filling", "loads", "tank", "rate"})
        if (member(request.json(), where)) request.fail(error("calc_efficiency_and_parts", where));
    // Checked as a field of any size would be.
    const Area any = area.value_or(make<Area>(1, Unit::Hectare));
    const auto time = workTime({width, speed, any, {}, {}, {}, {}});
    if (!time) request.fail(time.problem());
    if (!request.ok()) return {};
    const WorkRate effective = fieldCapacity(width, speed, efficiency);
    OrderedJson out{{"spraying_rate", areaAnHour(request, time->sprayingRate)},
                    {"effective_rate", areaAnHour(request, effective)},
                    {"efficiency", efficiency}};
    if (area)
        out["time"] = {{"spraying", hours(time->spraying)},
                       {"total", hours(timeFor(*area, effective))}};
    return out;
}

OrderedJson byParts(Request& request, WorkTask task) {
    task.run = request.value<Length>("run");
    task.turn = request.value<Duration>("turn");
    task.filling = request.value<Duration>("filling");
    task.loads = loadCountIn(request, task.area);
    if (task.turn && !task.run) request.fail(jsonMissing("run"));
    if (task.filling && !task.loads) request.fail(jsonMissing("loads"));
    if (!request.ok()) return {};
    const auto time = workTime(task);
    if (!time) {
        request.fail(time.problem());
        return {};
    }
    OrderedJson out{{"spraying_rate", areaAnHour(request, time->sprayingRate)},
                    {"effective_rate", areaAnHour(request, time->effectiveRate)},
                    {"efficiency", time->efficiency},
                    {"time",
                     {{"spraying", hours(time->spraying)},
                      {"turning", hours(time->turning)},
                      {"filling", hours(time->filling)},
                      {"total", hours(time->total)}}}};
    if (task.run) out["runs"] = time->runs;
    if (task.loads) out["loads"] = *task.loads;
    return out;
}

}  // namespace

OrderedJson loadsAnswer(Request& request) {
    request.allowKeys({"tank", "rate", "area", "specific_gravity", "products"});
    LoadsTask task;
    task.tank = needed<Volume>(request, "tank");
    task.rate = needed<AreaRate>(request, "rate");
    task.area = needed<Area>(request, "area");
    task.specificGravity = request.value<double>("specific_gravity").value_or(1.0);
    task.products = productsIn(request);
    if (!request.ok()) return {};
    const auto loads = loadsFor(task);
    if (!loads) {
        request.fail(loads.problem());
        return {};
    }
    OrderedJson out{{"loads", loads->count},
                    {"full_loads", loads->fullCount},
                    {"full", loadJson(request, loads->full)}};
    out["last"] = loads->last ? loadJson(request, *loads->last) : OrderedJson(nullptr);
    out["even"] = loadJson(request, loads->even);
    out["all"] = loadJson(request, loads->all);
    return out;
}

OrderedJson workRateAnswer(Request& request) {
    request.allowKeys({"machine", "width", "speed", "area", "run", "turn", "filling", "loads",
                       "tank", "rate", "efficiency"});
    const Length width = widthIn(request);
    const auto speed = needed<Speed>(request, "speed");
    const auto area = request.value<Area>("area");
    const bool hasParts = member(request.json(), "run") || member(request.json(), "filling") ||
                          member(request.json(), "loads") || member(request.json(), "tank");
    if (member(request.json(), "efficiency") || !hasParts)
        return byEfficiency(request, width, speed, area);
    if (!area) request.need("area");
    return byParts(request, {width, speed, area.value_or(Area{}), {}, {}, {}, {}});
}

}  // namespace bw::calc
