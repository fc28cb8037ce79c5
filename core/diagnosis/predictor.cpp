// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/predictor.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numeric>
#include <set>

#include "core/diagnosis/described.h"
#include "core/diagnosis/steady_boom.h"

namespace bw {
namespace {

constexpr int kSeverities = 12;
struct Variant {
    BoomFault fault;
    std::string name = {};
    double weight = 1.0;
    bool unforeseen = false;  ///< may show anything: predicts nothing
};
using Variants = std::vector<Variant>;

/// One severity of a cause as faults of the boom.
using FaultOf = std::function<Variants(double x, const CaseNumbers&)>;

Variants one(const BoomFault& fault) {
    return {{fault, {}}};
}

/// For each size of section on the boom, that section keeping a part of its flow.
Variants sectionKeeps(double keeps, const CaseNumbers& n) {
    Variants out;
    double total = 0;
    for (const int size : n.sections) total += size;
    const std::set<int> sizes(n.sections.begin(), n.sections.end());
    for (const int size : sizes) {
        const auto count = std::count(n.sections.begin(), n.sections.end(), size);
        if (size >= total) continue;
        out.push_back({{.sectionShare = size / total, .sectionKeeps = keeps}, {}, double(count)});
    }
    return out;
}

Variants restrictor(double x, const CaseNumbers& n) {
    const Variant wide{{.hunts = true}, "full_bore", 1.0};
    const Variant narrow{{.supply = 1 - x}, "narrowed", 1.0};
    const auto right = n.rightPosition();
    if (!right) return {wide, narrow};
    return *right == RestrictorPosition::Narrowed ? Variants{wide} : Variants{narrow};
}

Variants shortOrHunting(double x, const CaseNumbers&) {
    return {{{.hunts = true}, {}, 1.0}, {{.supply = 1 - x}, {}, 1.0}};
}

Variants nozzleFactor(double factor, bool limitKnown) {
    Variants out = one({.nozzles = factor});
    if (limitKnown) return out;
    const double pressure = 1 / (factor * factor);
    for (const double past : {1.15, 1.45}) {  // held by a limit that nobody told
        BoomFault held{.nozzles = factor};
        (factor > 1 ? held.floor : held.ceiling) = factor > 1 ? pressure * past : pressure / past;
        out.push_back({held, {}, 0.5});
    }
    return out;
}

Variants tooSlow(double x, const CaseNumbers& n) {
    if (!n.floor) return one({.floor = 1 + x});
    return n.speedWasRead ? one({}) : one({.groundMeasured = 1 - x, .groundTrue = 1 - x});
}

Variants tooFast(double x, const CaseNumbers& n) {
    if (!n.ceiling) return one({.ceiling = 1 - x});
    return n.speedWasRead ? one({}) : one({.groundMeasured = 1 + x, .groundTrue = 1 + x});
}

/// A speed read off the display is wrong with its signal: the figures agree and the ground does
/// not.
Variants speedScale(double factor, const CaseNumbers& n) {
    return n.speedWasRead ? one({.groundTrue = 1 / factor}) : one({.groundMeasured = factor});
}

FaultOf supplyShort() {
    return [](double x, const CaseNumbers&) { return one({.supply = 1 - x}); };
}
FaultOf hunting() {
    return [](double, const CaseNumbers&) { return one({.hunts = true}); };
}

/// Mostly swings; now and then rests somewhere off target.
FaultOf huntingOrOff() {
    return [](double, const CaseNumbers&) {
        return Variants{{{.hunts = true}, {}, 0.7}, {{}, {}, 0.3, true}};
    };
}

using FaultTable = std::map<std::string, FaultOf, std::less<>>;

void addSupply(FaultTable& t) {
    for (const auto* id :
         {"suction_strainer", "suction_hose", "suction_valve_misset", "pump_worn", "pump_drive",
          "pump_airlocked", "line_strainer", "hose_kinked", "agitation_open", "bypass_passing"})
        t[id] = supplyShort();
    t["suction_air"] = shortOrHunting;
    t["foam"] = shortOrHunting;
    t["restrictor_position"] = restrictor;
}

void addBoom(FaultTable& t) {
    t["nozzles_worn"] = [](double x, const CaseNumbers&) { return one({.nozzles = 1 + x}); };
    t["one_nozzle_worn"] = [](double x, const CaseNumbers& n) {
        const int nozzles = std::accumulate(n.sections.begin(), n.sections.end(), 0);
        return one({.sectionShare = 1.0 / std::max(nozzles, 10), .sectionKeeps = 1 + x});
    };
    t["nozzle_strainers"] = [](double x, const CaseNumbers&) { return one({.nozzles = 1 - x}); };
    t["nozzle_large"] = [](double x, const CaseNumbers& n) {
        return nozzleFactor(1 + x, n.floor.has_value());
    };
    t["nozzle_small"] = [](double x, const CaseNumbers& n) {
        return nozzleFactor(1 - x, n.ceiling.has_value());
    };
    t["section_strainer"] = [](double x, const CaseNumbers& n) { return sectionKeeps(1 - x, n); };
    t["section_shut"] = [](double, const CaseNumbers& n) { return sectionKeeps(0, n); };
    t["one_nozzle_blocked"] = [](double x, const CaseNumbers& n) {
        const int nozzles = std::accumulate(n.sections.begin(), n.sections.end(), 0);
        return one({.sectionShare = 1.0 / std::max(nozzles, 10), .sectionKeeps = 1 - x});
    };
    t["return_open"] = [](double x, const CaseNumbers&) { return one({.leak = x}); };
    t["section_leak"] = [](double x, const CaseNumbers& n) {
        Variants out;
        for (auto& section : sectionKeeps(1.0, n)) {
            out.push_back({{.leak = x * section.fault.sectionShare}, {}, section.weight});
        }
        return out;
    };
    t["density_ignored"] = [](double x, const CaseNumbers&) { return one({.density = 1 + x}); };
    t["checks_drip"] = [](double, const CaseNumbers&) { return one({}); };
}

void addSettings(FaultTable& t) {
    t["floor_high"] = [](double x, const CaseNumbers&) { return one({.floor = 1 + x}); };
    t["ceiling_low"] = [](double x, const CaseNumbers&) { return one({.ceiling = 1 - x}); };
    t["speed_too_slow"] = tooSlow;
    t["speed_too_fast"] = tooFast;
    t["width_large"] = [](double x, const CaseNumbers&) { return one({.groundMeasured = 1 + x}); };
    t["width_small"] = [](double x, const CaseNumbers&) { return one({.groundMeasured = 1 - x}); };
    t["gain_high"] = hunting();
    t["dead_band_small"] = hunting();
    t["actuator_stiff"] = huntingOrOff();
}

void addSensors(FaultTable& t) {
    t["meter_high"] = [](double x, const CaseNumbers&) { return one({.meter = 1 + x}); };
    t["meter_low"] = [](double x, const CaseNumbers&) { return one({.meter = 1 - x}); };
    t["meter_fouled"] = t["meter_low"];
    t["meter_part_full"] = huntingOrOff();
    t["sensor_high"] = [](double x, const CaseNumbers&) { return one({.sensor = 1 + x}); };
    t["sensor_low"] = [](double x, const CaseNumbers&) { return one({.sensor = 1 - x}); };
    t["speed_high"] = [](double x, const CaseNumbers& n) { return speedScale(1 + x, n); };
    t["speed_low"] = [](double x, const CaseNumbers& n) { return speedScale(1 - x, n); };
    t["speed_noisy"] = hunting();
}

const FaultTable& faults() {
    static const FaultTable table = [] {
        FaultTable t;
        addSupply(t);
        addBoom(t);
        addSettings(t);
        addSensors(t);
        return t;
    }();
    return table;
}

/// What a cause can take from supply or section here, where no line turns its severity into flow
/// (parts; judgement).
SeverityRange rangeOf(const Cause& cause) {
    static const std::map<std::string, SeverityRange, std::less<>> kShort{
        {"suction_strainer", {0.05, 0.6}},
        {"suction_hose", {0.05, 0.6}},
        {"suction_valve_misset", {0.05, 0.6}},
        {"line_strainer", {0.05, 0.6}},
        {"hose_kinked", {0.05, 0.5}},
        {"pump_worn", {0.05, 0.5}},
        {"pump_drive", {0.05, 0.6}},
        {"agitation_open", {0.05, 0.5}},
        {"bypass_passing", {0.05, 0.5}},
        {"suction_air", {0.05, 0.4}},
        {"foam", {0.05, 0.4}},
        {"section_strainer", {0.2, 0.95}},
        {"restrictor_position", {0.03, 0.35}}};
    const auto found = kShort.find(cause.id);
    return found == kShort.end() ? cause.severity : found->second;
}

std::vector<double> severities(const SeverityRange& range) {
    if (range.to <= range.from) return {range.from};
    std::vector<double> out;
    out.reserve(kSeverities);
    for (int i = 0; i < kSeverities; ++i)
        out.push_back(range.from + (range.to - range.from) * i / (kSeverities - 1));
    return out;
}

/// Needs figures that the case does not have: predicted by nothing.
bool predictable(const BoomFault& fault, const CaseNumbers& n) {
    return n.needSensor || (!fault.floor && !fault.ceiling);
}

}  // namespace

bool machineHas(const std::vector<std::string>& needs, const CaseNumbers& numbers) {
    return std::all_of(needs.begin(), needs.end(), [&](const auto& need) {
        if (need == "flow_meter") return numbers.hasMeter();
        if (need == "loop" || need == "shown") return numbers.senses != Senses::Nothing;
        if (need == "restrictor") return numbers.restrictorFitted.value_or(true);
        return true;
    });
}

Scenario BoomPredictor::healthy() const {
    return steadyBoom(m_numbers, {});
}

void BoomPredictor::addScenarios(const Cause& cause, std::vector<Scenario>& out) const {
    const auto before = out.size();
    const auto fault = faults().find(cause.id);
    if (fault != faults().end()) {
        for (const double x : severities(rangeOf(cause))) {
            for (const auto& variant : fault->second(x, m_numbers)) {
                Scenario s;
                if (!variant.unforeseen && predictable(variant.fault, m_numbers))
                    s = steadyBoom(m_numbers, variant.fault);
                s.weight = variant.weight;
                s.variant = variant.name;
                out.push_back(std::move(s));
            }
        }
    }
    if (out.size() == before) out.emplace_back();
}

Prediction BoomPredictor::predict(const Cause& cause) const {
    if (!machineHas(cause.needs, m_numbers)) return {{Scenario{}}, 0.0, {}};
    Prediction out;
    addScenarios(cause, out.scenarios);
    describe(cause, m_numbers, healthy(), out);
    return out;
}

}  // namespace bw
