// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/calc/request.h"

namespace bw::calc {

const Sentences& sentences() {
    static const Sentences kSentences = Sentences::shipped();
    return kSentences;
}

void Request::allowKeys(std::vector<std::string> keys) {
    keys.insert(keys.end(), {"do", "units"});
    checkKeys(m_json, {}, keys, m_issues);
    const Json* units = member(m_json, "units");
    std::string word;
    if (!units || !readText(*units, "units", word, m_issues)) return;
    m_units = unitSystemFor(word);
    if (!m_units) fail(jsonNotAChoice("units", word, {"metric", "us", "uk"}));
}

const Json* Request::need(std::string_view key) {
    const Json* part = member(m_json, key);
    if (!part) fail(jsonMissing(std::string(key)));
    return part;
}

Machine Request::machine(JsonUse use) {
    const Json* part = use == JsonUse::Request ? need("machine") : member(m_json, "machine");
    if (!part) return {};
    Machine out = readMachine(*part, use, "machine", m_issues);
    m_machineUnits = out.units;
    return out;
}

Nozzle Request::nozzle(JsonUse use) {
    const Json* part = use == JsonUse::Request ? need("nozzle") : member(m_json, "nozzle");
    return part ? readNozzle(*part, use, "nozzle", m_issues) : Nozzle{};
}

Job Request::job(JsonUse use) {
    const Json* part = use == JsonUse::Request ? need("job") : member(m_json, "job");
    return part ? readJob(*part, use, "job", m_issues) : Job{};
}

OrderedJson Request::number(AnyQuantity quantity) const {
    if (quantity.dimension == Dimension::None) return quantity.si;
    const Unit unit = displayUnit(units(), quantity.dimension);
    return {{"value", toUnit(quantity, unit)}, {"unit", jsonSymbol(unit)}};
}

std::string Request::words(const std::vector<Fact>& facts) const {
    std::string out;
    for (const auto& fact : facts) out += (out.empty() ? "" : " ") + words(fact);
    return out;
}

std::optional<NozzleLaw> lawOf(Request& request, const Nozzle& nozzle) {
    const auto law = nozzleLaw(nozzle);
    if (law) return *law;
    Problem problem = law.problem();
    problem.where = pathTo("nozzle", problem.where);
    request.fail(std::move(problem));
    return std::nullopt;
}

}  // namespace bw::calc
