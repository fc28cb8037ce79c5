// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/model/checks.h"
#include "core/model/field_checks.h"
#include "core/model/pump_curve.h"

namespace bw {
namespace {

template <class T>
AnyQuantity any(const Known<T>& field) {
    return detail::toAny(field->value);
}

template <class T>
bool areBoth(const Known<T>& a, const Known<T>& b) {
    return a.has_value() && b.has_value();
}

void checkBoom(ProblemList& list, const Machine& m) {
    list.addIf(!m.spacing, error("spacing_missing", "spacing"));
    list.addIf(!m.sections || m.sections->value.empty(), error("sections_missing", "sections"));
    if (!m.sections) return;
    bool areCounts = true;
    for (std::size_t i = 0; i < m.sections->value.size(); ++i) {
        if (m.sections->value[i] > 0) continue;
        areCounts = false;
        list.add(
            error("section_without_nozzles", "sections", {{"section", std::to_string(i + 1)}}));
    }
    const int nozzles = nozzleCount(m);
    if (!areCounts || nozzles <= 0) return;
    ProblemList counts;
    checkNumber(counts, "machine", "nozzles", detail::toAny(nozzles));
    for (auto& problem : counts.take()) {
        problem.where = "sections";
        list.add(std::move(problem));
    }
    // A nominal width is rounded; a difference over one nozzle's share is a wrong count, spacing or
    // width.
    if (!m.width || !m.spacing || !(m.spacing->value.si() > 0)) return;
    const Length sum = sprayedWidth(m);
    const double apart = std::abs((m.width->value - sum).si());
    list.addIf(apart > m.spacing->value.si() * (1 + 1e-9),
               warning("width_mismatch", "width",
                       {{"width", any(m.width)},
                        {"nozzles", std::to_string(nozzles)},
                        {"spacing", any(m.spacing)},
                        {"sum", anyQuantity(sum)}}));
}

/// A boom pipe fed beside the boom, at no nozzle, or twice at one.
void checkBoomPipe(ProblemList& list, const Machine& m) {
    if (!m.boomPipe.feeds) return;
    const auto& feeds = m.boomPipe.feeds->value;
    const std::string where = "boom_pipe.feeds";
    list.addIf(feeds.empty(), error("boom_feeds_empty", where));
    const int nozzles = nozzleCount(m);
    std::set<int> seen;
    for (const int feed : feeds) {
        const std::vector<Argument> arguments{{"number", std::to_string(feed)},
                                              {"nozzles", std::to_string(nozzles)}};
        if (feed < 1 || (nozzles > 0 && feed > nozzles))
            list.add(error(nozzles > 0 ? "boom_feed_off_boom" : "boom_feed_under_one", where,
                           arguments));
        else
            list.addIf(!seen.insert(feed).second, error("boom_feed_twice", where, arguments));
    }
}

void checkSets(ProblemList& list, const Machine& m) {
    std::set<int> taken;
    for (const auto& set : m.setsAboard) {
        const std::vector<Argument> arguments{
            {"position", std::to_string(set.position)},
            {"nozzle", set.nozzle},
            {"positions", std::to_string(valueOr(m.bodyPositions, 0))}};
        const bool isThere =
            set.position >= 1 && (!m.bodyPositions || set.position <= m.bodyPositions->value);
        list.addIf(!isThere, error("set_position_missing", "sets_aboard", arguments));
        list.addIf(!taken.insert(set.position).second,
                   error("set_position_twice", "sets_aboard", arguments));
    }
}

void checkLimits(ProblemList& list, const Machine& m) {
    const auto& floor = m.limits.pressureFloor;
    const auto& ceiling = m.limits.pressureCeiling;
    if (areBoth(floor, ceiling) && floor->value >= ceiling->value) {
        list.add(error("floor_over_ceiling", "limits.pressure_floor",
                       {{"floor", any(floor)}, {"ceiling", any(ceiling)}}));
    }
    const auto& shutOff = m.pump.shutOffPressure;
    if (areBoth(floor, shutOff) && floor->value >= shutOff->value) {
        list.add(warning("floor_over_pump", "limits.pressure_floor",
                         {{"floor", any(floor)}, {"shutoff", any(shutOff)}}));
    }
    const auto& relief = m.pump.reliefPressure;
    if (areBoth(relief, ceiling) && relief->value <= ceiling->value) {
        list.add(note("relief_under_ceiling", "pump.relief_pressure",
                      {{"relief", any(relief)}, {"ceiling", any(ceiling)}}));
    }
    if (areBoth(floor, relief) && floor->value >= relief->value) {
        list.add(warning("floor_over_relief", "limits.pressure_floor",
                         {{"floor", any(floor)}, {"relief", any(relief)}}));
    }
}

void checkMeter(ProblemList& list, const Machine& m) {
    const auto& full = m.meter.minimumFullBore;
    const auto& narrowed = m.meter.minimumNarrowed;
    const auto& most = m.meter.maximum;
    if (areBoth(full, narrowed) && narrowed->value > full->value) {
        list.add(warning("meter_narrowed_over_full", "meter.minimum_narrowed",
                         {{"narrowed", any(narrowed)}, {"full", any(full)}}));
    }
    for (const auto* least : {&full, &narrowed}) {
        if (!areBoth(*least, most) || most->value > (*least)->value) continue;
        list.add(error("meter_maximum_under_minimum", "meter.maximum",
                       {{"maximum", any(most)}, {"minimum", any(*least)}}));
        break;
    }
}

/// Strainers get finer along the flow: each is compared with the finest one before it.
void checkStrainers(ProblemList& list, const Machine& m) {
    struct Place {
        const Known<double>& mesh;
        std::string name;
    };
    const std::array<Place, 4> places{{{m.strainers.suctionMesh, "suction"},
                                       {m.strainers.lineMesh, "line"},
                                       {m.strainers.sectionMesh, "section"},
                                       {m.strainers.nozzleMesh, "nozzle"}}};
    const Place* finest = nullptr;
    for (const auto& place : places) {
        if (!place.mesh) continue;
        if (finest && place.mesh->value < finest->mesh->value) {
            list.add(warning("strainer_coarser_downstream", "strainers." + place.name + ".mesh",
                             {{"strainer", CodeText{"strainer." + place.name}},
                              {"mesh", any(place.mesh)},
                              {"before", CodeText{"strainer." + finest->name}},
                              {"before_mesh", any(finest->mesh)}}));
        } else {
            finest = &place;
        }
    }
}

void checkCurve(ProblemList& list, const Pump& pump) {
    if (!pump.curve) return;
    const auto& curve = pump.curve->value;
    const auto isPoint = [](const CurvePoint& p) {
        return p.flow.si() > 0 && p.pressure.si() >= 0 && p.flow.isFinite() &&
               p.pressure.isFinite();
    };
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const std::vector<Argument> arguments{{"row", std::to_string(i + 1)}};
        list.addIf(!isPoint(curve[i]), error("pump_curve_not_positive", "pump.curve", arguments));
        const bool isRising =
            i > 0 && isPoint(curve[i - 1]) && isPoint(curve[i]) &&
            (curve[i].flow > curve[i - 1].flow) == (curve[i].pressure > curve[i - 1].pressure) &&
            curve[i].flow != curve[i - 1].flow && curve[i].pressure != curve[i - 1].pressure;
        list.addIf(isRising, warning("pump_curve_uneven", "pump.curve", arguments));
    }
    if (!pump.shutOffPressure || !std::all_of(curve.begin(), curve.end(), isPoint)) return;
    list.addIf(curveFall(pump.shutOffPressure->value, curve) < 0,
               error("pump_curve_rising", "pump.curve", {{"shutoff", any(pump.shutOffPressure)}}));
}

void checkPump(ProblemList& list, const Machine& m) {
    checkCurve(list, m.pump);
    const auto kind = bare(m.pump.kind);
    if (kind == PumpKind::Centrifugal) {
        list.addIf(!m.pump.shutOffPressure, note("pump_shutoff_missing", "pump.shutoff_pressure"));
    } else if (kind == PumpKind::PositiveDisplacement) {
        list.addIf(!m.pump.ratedFlow, note("pump_rated_flow_missing", "pump.rated_flow"));
        const bool isThrottled = bare(m.control) == Control::Throttle;
        list.addIf(isThrottled && !m.pump.reliefPressure,
                   error("relief_missing_with_throttle", "pump.relief_pressure"));
        list.addIf(!isThrottled && !m.pump.reliefPressure,
                   note("relief_missing", "pump.relief_pressure"));
    }
}

/// "So much pressure lost at such a flow" says nothing by halves.
void checkPairs(ProblemList& list, const Machine& m) {
    const auto pair = [&](const std::string& group, bool hasFirst, const char* first,
                          bool hasSecond, const char* second) {
        if (hasFirst == hasSecond) return;
        list.add(note("pair_incomplete", group + "." + (hasFirst ? second : first)));
    };
    const auto loss = [&](const std::string& group, const Loss& l) {
        pair(group, l.pressure.has_value(), "pressure", l.at.has_value(), "at");
    };
    loss("losses.suction", m.losses.suction);
    loss("losses.line", m.losses.line);
    loss("losses.plumbing", m.losses.plumbing);
    loss("losses.section", m.losses.section);
    pair("agitation", m.agitation.flow.has_value(), "flow", m.agitation.at.has_value(), "at");
    pair("control_valve", m.controlValve.flow.has_value(), "flow", m.controlValve.at.has_value(),
         "at");
    list.addIf(bare(m.checkValve.kind) == ShutOffKind::Ball && !m.checkValve.openingPressure,
               note("check_valve_pressure_missing", "check_valve.opening_pressure"));
}

void checkRestrictor(ProblemList& list, const Machine& m) {
    const auto& r = m.restrictor;
    const auto fitted = bare(r.fitted);
    if (fitted == false) {
        const auto unused = [&](bool isGiven, const char* where) {
            list.addIf(isGiven, warning("restrictor_not_fitted", where));
        };
        unused(r.changeoverFlow.has_value(), "restrictor.changeover_flow");
        unused(r.hole.has_value(), "restrictor.hole");
        unused(r.dischargeCoefficient.has_value(), "restrictor.discharge_coefficient");
        unused(bare(r.position) == RestrictorPosition::Narrowed, "restrictor.position");
        unused(m.meter.minimumNarrowed.has_value(), "meter.minimum_narrowed");
    }
    list.addIf(fitted == true && !r.changeoverFlow,
               note("restrictor_changeover_missing", "restrictor.changeover_flow"));
}

void checkPulsed(ProblemList& list, const Machine& m) {
    const auto& pulsed = m.pulsed;
    const bool isPulsed = bare(m.machineClass) == MachineClass::Pulsed;
    list.addIf(isPulsed && !pulsed.pressure, warning("pulsed_pressure_missing", "pulsed.pressure"));
    list.addIf(m.machineClass && !isPulsed && pulsed.pressure,
               warning("pulsed_class_differs", "pulsed.pressure"));
    if (areBoth(pulsed.dutyMin, pulsed.dutyMax) && pulsed.dutyMin->value >= pulsed.dutyMax->value) {
        list.add(error("duty_range_crossed", "pulsed.duty_min",
                       {{"least", any(pulsed.dutyMin)}, {"most", any(pulsed.dutyMax)}}));
    }
    if (!pulsed.pressure) return;
    list.addIf(
        m.limits.pressureFloor.has_value(),
        note("pulsed_floor_idle", "limits.pressure_floor", {{"pressure", any(pulsed.pressure)}}));
    list.addIf(m.limits.pressureCeiling.has_value(),
               note("pulsed_ceiling_idle", "limits.pressure_ceiling",
                    {{"pressure", any(pulsed.pressure)}}));
}

}  // namespace

std::vector<Problem> checkMachine(const Machine& machine) {
    ProblemList list;
    list.addIf(machine.name.find_first_not_of(" \t") == std::string::npos,
               warning("name_missing", "name"));
    visitFields(machine, [&](std::string_view key, const auto& field) {
        checkField(list, "machine", key, field);
    });
    checkBoom(list, machine);
    checkBoomPipe(list, machine);
    checkSets(list, machine);
    checkLimits(list, machine);
    checkMeter(list, machine);
    checkStrainers(list, machine);
    checkPump(list, machine);
    checkPairs(list, machine);
    checkRestrictor(list, machine);
    checkPulsed(list, machine);
    return list.take();
}

}  // namespace bw
