// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/mesh_advice.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/base/csv_text.h"
#include "core/base/resource.h"
#include "core/model/nozzle_sizes.h"
#include "core/units/format.h"

namespace bw {
namespace {

struct Sieve {
    double mesh = 0.0;
    Length opening;
};

/// Coarsest first.
const std::vector<Sieve>& sieves() {
    static const std::vector<Sieve> kSieves = [] {
        const CsvTable table = parseCsv(resource("data/mesh_opening.csv"));
        std::vector<Sieve> out;
        for (std::size_t i = 0; i < table.rows.size(); ++i)
            out.push_back({std::stod(std::string(table.at(i, "mesh"))),
                           make<Length>(std::stod(std::string(table.at(i, "opening_um"))),
                                        Unit::Micrometre)});
        return out;
    }();
    return kSieves;
}

/// The last strainer before the nozzles that is known.
std::optional<double> lastMesh(const Machine& machine) {
    const Strainers& s = machine.strainers;
    for (const auto* mesh : {&s.nozzleMesh, &s.sectionMesh, &s.lineMesh})
        if (*mesh) return (*mesh)->value;
    return std::nullopt;
}

/// What a nozzle asks for, and whether its passage or its size is why.
struct Need {
    double mesh = 0.0;
    bool isByPassage = false;
};

/// The finer of what the passage and what the size asks for: a wide passage does not make the
/// practice for its size void.
std::optional<Need> needOf(const Nozzle& nozzle) {
    const auto bySize = meshForSize(nozzle.sizeCode);
    const auto byPassage =
        nozzle.passage ? meshFor(nozzle.passage->value) : std::optional<double>();
    if (byPassage && (!bySize || *byPassage > *bySize)) return Need{*byPassage, true};
    if (bySize) return Need{*bySize, false};
    return std::nullopt;
}

Fact adviceFact(const std::string& code, const Nozzle& nozzle, const Need& need) {
    Fact fact{code + (need.isByPassage ? "passage" : "size"),
              {{"nozzle", nozzle.name}, {"mesh", formatExact(need.mesh)}}};
    if (need.isByPassage) fact.arguments.push_back({"passage", anyQuantity(nozzle.passage->value)});
    fact.arguments.push_back({"size", nozzle.sizeCode});
    return fact;
}

}  // namespace

std::optional<Length> meshOpening(double mesh) {
    std::optional<Length> out;
    for (const auto& sieve : sieves())
        if (sieve.mesh <= mesh) out = sieve.opening;
    return out;
}

std::optional<double> meshFor(Length passage) {
    for (const auto& sieve : sieves())
        if (sieve.opening < passage) return sieve.mesh;
    return std::nullopt;
}

std::optional<double> meshForSize(const std::string& sizeCode) {
    constexpr double kFine = 100, kUsual = 50;
    const auto size = nozzleSize(sizeCode), limit = nozzleSize("02");
    if (!size || !limit) return std::nullopt;
    return size->metric < limit->metric ? kFine : kUsual;
}

std::optional<Fact> meshAdvice(const Nozzle& nozzle) {
    const auto need = needOf(nozzle);
    if (!need) return std::nullopt;
    return adviceFact("mesh.by_", nozzle, *need);
}

std::vector<Fact> coarseStrainers(const Machine& machine, const std::vector<Nozzle>& nozzles) {
    std::vector<Fact> out;
    const auto has = lastMesh(machine);
    if (!has) return out;
    for (const auto& nozzle : nozzles) {
        const auto need = needOf(nozzle);
        if (!need || *has >= need->mesh) continue;
        Fact fact = adviceFact("mesh.too_coarse_", nozzle, *need);
        fact.arguments.push_back({"has", formatExact(*has)});
        out.push_back(std::move(fact));
    }
    return out;
}

}  // namespace bw
