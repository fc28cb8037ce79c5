// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/start_values.h"
#include "core/season/loads.h"
#include "core/season/work_rate.h"
#include "core/window/line_reading.h"
#include "tests/core/reference/handbook_makers.h"
#include "tests/support/builders.h"

namespace bw::handbook {
namespace {

const Duration kHour = make<Duration>(1, Unit::Hour);
const Area kAcre = make<Area>(1, Unit::Acre);

/// "rate_l_ac" is litres an acre, which is no unit of the program.
AreaRate rateOf(const Inputs& in) {
    if (in.has("rate_l_ac")) return make<Volume>(in.number("rate_l_ac"), Unit::Litre) / kAcre;
    return in.get<AreaRate>("rate");
}

/// The start value takes a part of the tank a minute; the highest that it holds plausible.
Flow agitationOf(const Inputs& in) {
    Machine machine = build::machine();
    machine.tank = Sourced<Volume>(in.get<Volume>("tank"));
    if (!takeStartValue(machine, "agitation.flow")) throw std::out_of_range("no start value");
    return machine.agitation.flow->to.value();
}

/// What a pump that passes a fixed flow sends back to the tank beside the boom.
Flow returnFlow(const Inputs& in) {
    Machine machine = build::machine();
    machine.control = Sourced<Control>(Control::Bypass);
    machine.pump.kind = Sourced<PumpKind>(PumpKind::PositiveDisplacement);
    machine.pump.ratedFlow = Sourced<Flow>(in.get<Flow>("pump"));
    machine.pump.reliefPressure = Sourced<Pressure>(build::bar(10));
    const Speed speed = build::kmh(10);
    const AreaRate rate = in.get<Flow>("boom") / (speed * sprayedWidth(machine));
    const auto model = WindowModel::make(machine, build::nozzle(build::lpm(3)),
                                         build::job(rate, speed, speed, speed));
    const LineReading line = lineAt(model.value(), speed);
    return line.bypass.value_or(Flow{}) + line.relief.value_or(Flow{});
}

WorkRate capacityOf(const Inputs& in) {
    return fieldCapacity(in.get<Length>("width"), in.get<Speed>("speed"),
                         in.number("efficiency_pct") / 100);
}

/// Unit of speed × unit of width over the unit of area an hour.
double capacityConstant(Unit speed, Unit width, Unit area) {
    const WorkRate rate = fieldCapacity(make<Length>(1, width), make<Speed>(1, speed));
    return 1 / in(areaIn(rate, kHour), area);
}

int loadsOf(const Inputs& in) {
    LoadsTask task;
    task.tank = in.get<Volume>("tank");
    task.rate = build::lha(100);
    task.area = areaOf(in.get<Volume>("total"), task.rate);
    return loadsFor(task).value().count;
}

}  // namespace

const std::map<std::string, Maker>& loadMakers() {
    static const std::map<std::string, Maker> makers{
        {"area_per_tank",
         [](const Inputs& i) { return anyQuantity(areaOf(i.get<Volume>("tank"), rateOf(i))); }},
        {"volume_for_part_load",
         [](const Inputs& i) { return anyQuantity(sprayFor(i.get<Area>("area"), rateOf(i))); }},
        {"total_spray",
         [](const Inputs& i) { return anyQuantity(sprayFor(i.get<Area>("area"), rateOf(i))); }},
        {"product_for_part_load",
         [](const Inputs& i) {
             return anyQuantity(i.get<MassRate>("product") * i.get<Area>("area"));
         }},
        {"product_from_active",
         [](const Inputs& i) {
             return anyQuantity(
                 productFor(i.get<MassRate>("active"), i.number("active_pct") / 100));
         }},
        {"tank_loads",
         [](const Inputs& i) { return anyQuantity(static_cast<double>(loadsOf(i))); }},
        {"agitation_flow", [](const Inputs& i) { return anyQuantity(agitationOf(i)); }},
        {"return_flow", [](const Inputs& i) { return anyQuantity(returnFlow(i)); }},
        {"tank_turnover_time",
         [](const Inputs& i) {
             return anyQuantity(turnoverTime(i.get<Volume>("tank"), i.get<Flow>("return")));
         }},
        {"effective_field_capacity",
         [](const Inputs& i) { return anyQuantity(areaIn(capacityOf(i), kHour)); }},
        {"capacity_constant_metric",
         [](const Inputs&) {
             return anyQuantity(
                 capacityConstant(Unit::KilometrePerHour, Unit::Metre, Unit::Hectare));
         }},
        {"capacity_constant_us",
         [](const Inputs&) {
             return anyQuantity(capacityConstant(Unit::MilePerHour, Unit::Foot, Unit::Acre));
         }},
        {"required_daily_capacity",
         [](const Inputs& i) {
             return anyQuantity(areaEach(i.get<Area>("area"), i.number("days")));
         }},
        {"sprayer_field_efficiency_typical",
         [](const Inputs&) { return anyQuantity(kFieldEfficiencyTypical); }},
        {"sprayer_field_efficiency_low",
         [](const Inputs&) { return anyQuantity(kFieldEfficiencyLow); }},
        {"sprayer_field_efficiency_high",
         [](const Inputs&) { return anyQuantity(kFieldEfficiencyHigh); }},
    };
    return makers;
}

}  // namespace bw::handbook
