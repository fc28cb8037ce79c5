// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"

namespace bw::calc {
namespace {

std::optional<AnyQuantity> quantityIn(Request& request) {
    const Json* json = request.need("value");
    if (!json) return std::nullopt;
    if (!json->is_string()) {
        request.fail(
            jsonWrongType("value", json->is_number() ? "quantity_not_number" : "quantity"));
        return std::nullopt;
    }
    const auto read = parseJsonQuantity(json->get_ref<const std::string&>());
    if (read) return *read;
    Problem problem = read.problem();
    problem.where = "value";
    request.fail(std::move(problem));
    return std::nullopt;
}

std::optional<Unit> unitIn(Request& request) {
    const Json* json = request.need("to");
    std::string word;
    if (!json || !readText(*json, "to", word, request.issues())) return std::nullopt;
    const auto unit = jsonUnitFor(word);
    if (!unit)
        request.fail(
            error("unit_unknown", "to", {{"typed", shortened(word)}, {"unit", shortened(word)}}));
    return unit;
}

}  // namespace

OrderedJson convert(Request& request) {
    request.allowKeys({"value", "to"});
    const auto quantity = quantityIn(request);
    const auto unit = unitIn(request);
    if (!request.ok()) return {};
    if (info(*unit).dimension != quantity->dimension) {
        request.fail(error("calc_other_dimension", "to", {{"unit", jsonSymbol(*unit)}}));
        return {};
    }
    return {{"value", {{"value", toUnit(*quantity, *unit)}, {"unit", jsonSymbol(*unit)}}}};
}

}  // namespace bw::calc
