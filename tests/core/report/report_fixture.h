// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/report/plan_sheets.h"
#include "tests/support/builders.h"

namespace bw::test {

/// The invented trailed machine and its low-drift 03 on the flag-leaf job of the demo season.
inline Machine namedTrailed() {
    Machine m = build::trailed28();
    m.name = "Test trailed (invented)";
    m.senses = Sourced<Senses>(Senses::Flow);
    m.restrictor.fitted = Sourced<bool>(false);
    m.setsAboard = {{2, "Low-drift 03 (invented)"}};
    return m;
}
inline Nozzle namedLowDrift03() {
    Nozzle n = build::lowDrift03();
    n.name = "Low-drift 03 (invented)";
    n.sizeCode = "03";
    n.kind = Sourced<NozzleKind>(NozzleKind::Fan);
    n.sprayAngle = Sourced<double>(110);
    return n;
}
inline Job flagLeaf() {
    Job j = build::job();
    j.name = "Flag leaf (invented)";
    j.droplets = {DropletCategory::M, DropletCategory::C};
    return j;
}

inline const Sentences& words() {
    static const Sentences sentences = Sentences::shipped();
    return sentences;
}
inline ReportContext context(UnitSystem units = UnitSystem::Metric) {
    return {words(), {units, '.'}, "25 Nov 2026", "test.boomwright"};
}

inline std::string joined(const Sheet& sheet) {
    std::string out;
    for (const auto& text : textsOf(sheet)) out += text + "\n";
    return out;
}

/// The first block of a kind, at any depth.
template <class Block>
const Block* firstOf(const std::vector<SheetBlock>& blocks) {
    for (const auto& block : blocks) {
        if (const auto* found = std::get_if<Block>(&block.content)) return found;
        if (const auto* side = std::get_if<SheetSideBySide>(&block.content)) {
            for (const auto& part : side->parts) {
                if (const auto* found = firstOf<Block>(part)) return found;
            }
        }
    }
    return nullptr;
}

}  // namespace bw::test
