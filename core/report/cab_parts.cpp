// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/cab_parts.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/diagnosis/knowledge.h"
#include "core/window/pressure_run.h"
#include "core/window/rests_on.h"
#include "core/window/verdict.h"
#include "core/window/window_curve.h"

namespace bw {
namespace {

constexpr double kFertiliser = 1.1;
constexpr int kChartPoints = 60;

double stepFor(double span, int most) {
    const double least = span / std::max(1, most);
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        if (factor * power >= least * (1 - 1e-9)) return factor * power;
    }
    return 10.0 * power;
}

/// The ends that are shown: of all rates, if the job has a range.
const WindowEnd& lowEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->low : w.low;
}
const WindowEnd& highEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->high : w.high;
}
bool isEmpty(const SpeedWindow& w) {
    return w.allRates ? w.allRates->empty : w.empty;
}

bool liesInside(const SpeedWindow& w, Speed speed) {
    constexpr double kTie = 1e-9;
    if (isEmpty(w)) return false;
    const Speed low = lowEnd(w).speed.value_or(Speed{});
    if (speed.si() < low.si() * (1 - kTie)) return false;
    return !highEnd(w).speed || speed.si() <= highEnd(w).speed->si() * (1 + kTie);
}

std::string dropsAt(const WindowModel& model, Pressure nozzle) {
    const auto& bands = model.nozzle().droplets;
    const DropletBand* band = bands ? bandAt(bands->value, nozzle) : nullptr;
    return band ? std::string(choiceName(band->category)) : "?";
}

/// Of the whole boom: tenths only where the flow is small.
std::string boomFlowFigure(Flow flow, const ReportContext& context) {
    constexpr double kSmall = 30.0;
    const double number = context.number(flow);
    return formatFixed(number, number < kSmall ? 1 : 0, context.style.decimalMark);
}

/// One column of figures under the scale.
std::vector<std::string> figuresAt(const WindowModel& model, const SpeedWindow& window, Speed speed,
                                   const ReportContext& context) {
    const Flow flow = model.demand().rate * speed * model.width();
    const auto share = onTimeShare(model, flow);
    const Pressure needed = model.neededSensorPressure(speed);
    std::string second =
        share ? formatFixed(100 * *share, 0, context.style.decimalMark) : context.gauge(needed);
    if (!liesInside(window, speed)) second = "(" + second + ")";
    std::vector<std::string> out{context.figure(speed), second, boomFlowFigure(flow, context)};
    if (model.nozzle().droplets && !share)
        out.push_back(dropsAt(model, model.nozzlePressure(needed)));
    return out;
}

std::vector<std::string> rowLabels(const WindowModel& model, const ReportContext& context) {
    const bool isPulsed = model.machine().pulsed.pressure.has_value();
    std::vector<std::string> out{
        context.unit<Speed>(),
        isPulsed ? context.say("report.on_time")
                 : context.say("report.at_gauge", {{"unit", context.unit<Pressure>()}}),
        context.say("report.whole_boom", {{"unit", context.unit<Flow>()}})};
    if (model.nozzle().droplets && !isPulsed) out.push_back(context.say("report.drops"));
    return out;
}

void placeEnds(SheetScale& scale, const WindowModel& model, const SpeedWindow& window,
               const ReportContext& context) {
    scale.isEmpty = isEmpty(window);
    scale.isUnchecked = standingOf(window, model.nozzle()) == Standing::NotChecked;
    if (scale.isEmpty) return;
    const auto low = whatStops(model, window, Side::Low);
    const auto high = whatStops(model, window, Side::High);
    scale.lowReason = context.say(low.shortly);
    scale.highReason = context.say(high.shortly);
    if (low.speed && low.speed->si() > 0) {
        scale.low = context.number(*low.speed);
        scale.lowFigure = context.figure(*low.speed);
    }
    if (high.speed) {
        scale.high = context.number(*high.speed);
        scale.highFigure = context.figure(*high.speed);
    }
}

std::string driveWords(const SheetScale& scale, const WindowModel& model,
                       const ReportContext& context) {
    const auto& d = model.demand();
    const std::vector<Argument> arguments{{"low", scale.lowFigure},
                                          {"high", scale.highFigure},
                                          {"slow", context.figure(d.slow)},
                                          {"fast", context.shown(d.fast)}};
    const std::string plan =
        context.say(d.slow < d.fast ? "report.plan" : "report.plan_one", arguments);
    if (scale.isEmpty) return context.say("report.drive_none") + " " + plan;
    const char* code = scale.low && scale.high ? "report.drive"
                       : scale.high            ? "report.drive_up_to"
                       : scale.low             ? "report.drive_from"
                                               : "report.drive_any";
    return context.say(code, arguments) + " " + plan;
}

std::string originWords(const RestsOn& item, const ReportContext& context) {
    if (item.origin == Origin::Measured && !item.date.empty())
        return context.say("report.origin_measured_on", {{"date", item.date}});
    return context.say("report.origin_" + std::string(name(item.origin)));
}

void addFloorAndCeiling(SheetLineChart& chart, const Machine& machine,
                        const ReportContext& context) {
    if (const auto floor = bare(machine.limits.pressureFloor)) {
        const double at = context.number(*floor);
        chart.bands.push_back({false, 0.0, at, true, false,
                               context.say("report.floor", {{"floor", context.shown(*floor)}})});
    }
    if (const auto ceiling = bare(machine.limits.pressureCeiling)) {
        const double at = context.number(*ceiling);
        chart.y.to = std::max(chart.y.to, at * 1.08);
        chart.bands.push_back(
            {false, at, chart.y.to, true, true,
             context.say("report.ceiling", {{"ceiling", context.shown(*ceiling)}})});
    }
}

}  // namespace

std::vector<std::pair<double, std::string>> axisTicks(double from, double to, int most,
                                                      char decimalMark) {
    std::vector<std::pair<double, std::string>> out;
    if (!(to > from)) return out;
    const double step = stepFor(to - from, most);
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    for (double i = std::ceil(from / step - 1e-9); i * step <= to + step * 1e-9; ++i)
        out.emplace_back(i * step, formatFixed(i * step, decimals, decimalMark));
    return out;
}

namespace {

/// The own speeds and whole steps that keep `apart` (of a step) from them.
std::vector<Speed> speedsApart(std::vector<Speed> speeds, Speed from, Speed to, double unit,
                               double step, double apart, std::size_t most) {
    const auto isFree = [&](double x) {
        return std::none_of(speeds.begin(), speeds.end(), [&](Speed own) {
            return std::abs(own.si() / unit - x) < apart * step - 1e-9;
        });
    };
    for (double x = std::ceil(from.si() / unit / step - 1e-9) * step;
         x <= to.si() / unit * (1 + 1e-9); x += step) {
        if (x > 0 && speeds.size() < most && isFree(x)) speeds.push_back(Speed::fromSi(x * unit));
    }
    std::sort(speeds.begin(), speeds.end(), [](Speed a, Speed b) { return a < b; });
    return speeds;
}

}  // namespace

std::vector<Speed> figureSpeeds(const WindowModel& model, Speed from, Speed to, UnitSystem units,
                                std::size_t most) {
    constexpr double kNear = 0.5, kFar = 0.6;
    constexpr std::size_t kRoomy = 5;
    const auto& d = model.demand();
    std::vector<Speed> own{d.slow};
    for (const Speed next : {d.usual, d.fast}) {
        if (next.si() > own.back().si() * 1.005) own.push_back(next);
    }
    const double unit = info(displayUnit(units, Dimension::Speed)).inSi;
    const double step = std::max(stepFor((to - from).si() / unit, static_cast<int>(most)), 0.5);
    const auto near = speedsApart(own, from, to, unit, step, kNear, most);
    return near.size() <= kRoomy ? near : speedsApart(own, from, to, unit, step, kFar, most);
}

SheetScale windowScale(const WindowModel& model, const SpeedWindow& window,
                       const ReportContext& context) {
    const CurveExtent extent = extentOf(model, window);
    const auto& d = model.demand();
    SheetScale scale;
    scale.title = context.say("report.drive_title");
    placeEnds(scale, model, window, context);
    scale.words = driveWords(scale, model, context);
    scale.slow = context.number(d.slow);
    scale.usual = context.number(d.usual);
    scale.fast = context.number(d.fast);
    scale.usualWords = context.say("report.usual", {{"usual", context.figure(d.usual)}});
    const double room = 0.12 * (scale.fast - scale.slow) + 0.05 * scale.usual;
    double from = std::min(scale.slow, scale.low.value_or(scale.slow)) - room;
    double to = std::max(scale.fast, scale.high.value_or(scale.fast)) + room;
    // Ends far off the job only press its figures together: the bar then runs out of the scale.
    from = std::max({from, 0.0, 0.35 * scale.slow, context.number(extent.from)});
    to = std::min(to, 2.0 * scale.fast);
    scale.from = from;
    scale.to = to;
    scale.rowsTitle = context.say(model.machine().pulsed.pressure ? "report.at_each_speed"
                                                                  : "report.by_hand_title");
    scale.rowLabels = rowLabels(model, context);
    const Unit unit = displayUnit(context.style.units, Dimension::Speed);
    const double edge = 0.03 * (to - from);
    for (const Speed speed : figureSpeeds(model, make<Speed>(from + edge, unit),
                                          make<Speed>(to - edge, unit), context.style.units)) {
        // "8" outside beside a window "from 8" (8.04) would only puzzle.
        const std::string figure = context.figure(speed);
        const bool isOwn = speed == d.slow || speed == d.usual || speed == d.fast;
        if (!isOwn && (figure == scale.lowFigure || figure == scale.highFigure) &&
            !liesInside(window, speed))
            continue;
        const bool isPlan = speed >= d.slow * (1 - 1e-9) && speed <= d.fast * (1 + 1e-9);
        scale.columns.push_back(
            {context.number(speed), figuresAt(model, window, speed, context), isPlan});
    }
    return scale;
}

SheetLineChart pressureChart(const WindowModel& model, const SpeedWindow& window,
                             const ReportContext& context) {
    const CurveExtent extent = extentOf(model, window);
    const auto& d = model.demand();
    SheetLineChart chart;
    chart.heightShare = 0.46;
    chart.x.title = context.unit<Speed>();
    chart.y.title = context.say("report.at_sensor", {{"unit", context.unit<Pressure>()}});
    chart.x.from = context.number(extent.from);
    chart.x.to = context.number(extent.to);
    chart.y.to = context.number(extent.top);
    chart.bands.push_back({true, context.number(d.slow), context.number(d.fast), false, false, {}});
    addFloorAndCeiling(chart, model.machine(), context);
    chart.x.ticks = axisTicks(chart.x.from, chart.x.to, 6, context.style.decimalMark);
    chart.y.ticks = axisTicks(chart.y.from, chart.y.to, 5, context.style.decimalMark);
    SheetSeries curve;
    const Speed least = std::max(extent.from, extent.to * 0.01);
    for (const auto& point : operatingCurve(model, least, extent.to, kChartPoints))
        curve.points.emplace_back(context.number(point.speed),
                                  context.number(point.sensorPressure));
    chart.series.push_back(std::move(curve));
    if (isEmpty(window)) return chart;
    for (const WindowEnd* end : {&lowEnd(window), &highEnd(window)}) {
        if (end->speed && end->speed->si() > 0)
            chart.lines.push_back({true, context.number(*end->speed), context.figure(*end->speed)});
    }
    return chart;
}

SheetList restsOnList(const WindowModel& model, const ReportContext& context, std::size_t most) {
    SheetList list;
    std::map<Origin, int> left;
    for (const auto& item : restsOn(model.machine(), model.nozzle(), model.job())) {
        const bool tells = item.move || item.binds || item.worn || item.origin == Origin::Assumed;
        if (!tells || list.items.size() >= most) {
            ++left[item.origin];
            continue;
        }
        std::vector<Argument> arguments;
        if (item.value) arguments.push_back({"value", *item.value});
        list.items.push_back({context.say("rests." + item.where, arguments),
                              originWords(item, context), SheetMark::originOf(item.origin)});
    }
    std::string rest;
    for (const auto& [origin, count] : left) {
        rest += (rest.empty() ? "" : ", ") + std::to_string(count) + " " +
                context.say("report.origin_" + std::string(name(origin)));
    }
    if (!rest.empty())
        list.items.push_back({context.say("report.rest", {{"counts", rest}}), {}, {}});
    return list;
}

SheetList uncheckedList(const WindowModel& model, const SpeedWindow& window,
                        const ReportContext& context) {
    SheetList list;
    for (const auto& open : whatIsUnchecked(model, window))
        list.items.push_back({context.say(open.what), {}, SheetMark::notChecked()});
    if (list.items.empty()) list.items.push_back({context.say("report.nothing_open"), {}, {}});
    return list;
}

SheetCautions windowCautionsOnPaper(const WindowModel& model, const ReportContext& context) {
    SheetCautions box;
    const auto& all = Knowledge::shipped().cautions;
    const auto add = [&](const std::string& id) {
        const auto found = all.find(id);
        if (found == all.end()) return;
        const std::string lead = "report.lead_" + id;
        box.items.push_back(
            {id, context.sentences.has(lead) ? context.say(lead) : "", found->second.text});
    };
    add("C19");
    add("C20");
    add("C18");
    const bool hasClass =
        !model.job().droplets.empty() || model.job().driftPercent || model.nozzle().droplets;
    if (hasClass) add("C21");
    if (valueOr(model.job().specificGravity, 1.0) >= kFertiliser) add("C25");
    add("C5");
    add("C30");
    return box;
}

}  // namespace bw
