// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/model/choice.h"
#include "core/model/origin.h"
#include "core/units/unit.h"

namespace bw {

/// Droplet-size categories of ISO 25358 / ASABE S572, finest first.
enum class DropletCategory { XF, VF, F, M, C, VC, XC, UC };
template <>
struct ChoiceNames<DropletCategory> {
    static constexpr std::array<std::pair<DropletCategory, std::string_view>, 8> names{
        {{DropletCategory::XF, "XF"},
         {DropletCategory::VF, "VF"},
         {DropletCategory::F, "F"},
         {DropletCategory::M, "M"},
         {DropletCategory::C, "C"},
         {DropletCategory::VC, "VC"},
         {DropletCategory::XC, "XC"},
         {DropletCategory::UC, "UC"}}};
};

/// The form of the spray: a fan, a stream (liquid fertiliser), or a bar fed through a plate.
enum class NozzleKind { Fan, Stream, Plate };
template <>
struct ChoiceNames<NozzleKind> {
    static constexpr std::array<std::pair<NozzleKind, std::string_view>, 3> names{
        {{NozzleKind::Fan, "fan"}, {NozzleKind::Stream, "stream"}, {NozzleKind::Plate, "plate"}}};
};

/// What the part with the hole is made of: it decides how fast the hole wears.
enum class NozzleMaterial { Polymer, StainlessSteel, HardenedSteel, Ceramic, Brass, Other };
template <>
struct ChoiceNames<NozzleMaterial> {
    static constexpr std::array<std::pair<NozzleMaterial, std::string_view>, 6> names{
        {{NozzleMaterial::Polymer, "polymer"},
         {NozzleMaterial::StainlessSteel, "stainless_steel"},
         {NozzleMaterial::HardenedSteel, "hardened_steel"},
         {NozzleMaterial::Ceramic, "ceramic"},
         {NozzleMaterial::Brass, "brass"},
         {NozzleMaterial::Other, "other"}}};
};

/// Droplet category over `from <= p < to` (the last band includes `to`).
struct DropletBand {
    Pressure from;
    Pressure to;
    DropletCategory category = DropletCategory::M;
    bool operator==(const DropletBand&) const = default;
};

/// Drift reduction of at least `percent` over `from <= p < to`.
struct DriftBand {
    Pressure from;
    Pressure to;
    double percent = 0.0;
    bool operator==(const DriftBand&) const = default;
};

struct FlowPoint {
    Pressure pressure;
    Flow flow;
    bool operator==(const FlowPoint&) const = default;
};

/// One nozzle type. Flow by one rating and an exponent, or by a table whose fit replaces them.
struct Nozzle {
    std::string name;
    std::string family;  ///< maker's or own family name; nozzles of one family share droplet copies
    std::string sizeCode;  ///< ISO 10625 code ("03"), empty if not of the standard
    Known<NozzleKind> kind;
    Known<Flow> flow;  ///< at pressure `at`, on water
    Known<Pressure> at;
    Known<Pressure> pressureMin;
    Known<Pressure> pressureMax;
    Known<double> exponent;  ///< absent: 0.5
    Known<std::vector<FlowPoint>> table;
    Known<std::vector<DropletBand>> droplets;
    Known<std::vector<DriftBand>> drift;
    Known<double> sprayAngle;  ///< degrees
    Known<double> price;       ///< each, in the farm's currency
    Known<Length> passage;     ///< smallest way through it, for the mesh before it
    Known<NozzleMaterial> material;
    bool acceptUnchecked = false;  ///< the user takes this nozzle in spite of missing tables
    bool isDemo = false;
    bool isBuiltIn = false;  ///< a size record of the standard, not a product
    std::string notes;
    bool operator==(const Nozzle&) const = default;
};

template <class N, class F>
void visitFields(N& n, F&& f) requires(std::is_same_v<std::remove_const_t<N>, Nozzle>) {
    f("kind", n.kind);
    f("flow", n.flow);
    f("at", n.at);
    f("pressure_min", n.pressureMin);
    f("pressure_max", n.pressureMax);
    f("exponent", n.exponent);
    f("table", n.table);
    f("droplets", n.droplets);
    f("drift", n.drift);
    f("spray_angle", n.sprayAngle);
    f("price", n.price);
    f("passage", n.passage);
    f("material", n.material);
}

}  // namespace bw
