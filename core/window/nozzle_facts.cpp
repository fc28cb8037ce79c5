// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/nozzle_facts.h"

#include <utility>

#include "core/hydraulics/nozzle_law.h"
#include "core/units/format.h"
#include "core/window/mesh_advice.h"

namespace bw {
namespace {

Fact lawFact(const NozzleLaw& law) {
    if (!law.fit())
        return {law.isSquareRoot() ? "nozzle.law" : "nozzle.law_power",
                {{"exponent", formatFixed(law.exponent(), 2)}}};
    return {"nozzle.fit",
            {{"exponent", formatFixed(law.exponent(), 3)},
             {"miss", formatFixed(100 * law.fit()->largestMiss, 1)},
             {"from", anyQuantity(law.fit()->from)},
             {"to", anyQuantity(law.fit()->to)}}};
}

}  // namespace

std::vector<Fact> nozzleFacts(const Nozzle& nozzle) {
    std::vector<Fact> out;
    const auto law = nozzleLaw(nozzle);
    if (law) {
        out.push_back(lawFact(*law));
        if (nozzle.pressureMin && nozzle.pressureMax) {
            // What one set spans: at a held rate speed goes with flow.
            const double span =
                law->flow(nozzle.pressureMax->value) / law->flow(nozzle.pressureMin->value);
            out.push_back({"nozzle.span",
                           {{"least", anyQuantity(law->flow(nozzle.pressureMin->value))},
                            {"most", anyQuantity(law->flow(nozzle.pressureMax->value))},
                            {"times", formatFixed(span, 2)}}});
        }
    }
    if (auto mesh = meshAdvice(nozzle)) out.push_back(std::move(*mesh));
    if (!nozzle.pressureMin || !nozzle.pressureMax) out.push_back({"nozzle.not_checked_range", {}});
    if (!nozzle.droplets) out.push_back({"nozzle.not_checked_droplets", {}});
    if (!nozzle.drift) out.push_back({"nozzle.not_checked_drift", {}});
    return out;
}

}  // namespace bw
