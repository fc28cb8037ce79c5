// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/boom_strip.h"

#include <algorithm>
#include <cmath>

#include "core/hydraulics/boom_network.h"
#include "core/units/format.h"
#include "core/window/advice.h"
#include "core/window/field.h"

namespace bw {
namespace {

constexpr double kWorthSaying = 0.005;  // half a percent of the rate, as for the dose

template <class Q>
Argument arg(const char* name, Q value) {
    return {name, anyQuantity(value)};
}
Argument arg(const char* name, int value) {
    return {name, std::to_string(value)};
}
/// A part of one that lies close to it, in percent with a decimal.
Argument shareArg(const char* name, double part) {
    return arg(name, std::round(1000.0 * part) / 10);
}
/// A part of one in percent, with a decimal below ten.
Argument percentArg(const char* name, double part) {
    const double percent = 100.0 * part;
    return arg(name,
               std::abs(percent) < 9.95 ? std::round(10 * percent) / 10 : std::round(percent));
}

/// The boom as it stands: numbers, sections and places.
std::vector<StripNozzle> boomOf(const WindowModel& model) {
    std::vector<StripNozzle> out;
    const Length spacing = model.machine().spacing->value;
    const double middle = 0.5 * (model.nozzles() + 1);
    int section = 0;
    for (const int count : model.machine().sections->value) {
        ++section;
        for (int i = 0; i < count; ++i) {
            StripNozzle nozzle;
            nozzle.number = static_cast<int>(out.size()) + 1;
            nozzle.section = section;
            nozzle.offset = (nozzle.number - middle) * spacing;
            out.push_back(nozzle);
        }
    }
    return out;
}

BoomPipe pipeOf(const WindowModel& model) {
    const Machine& m = model.machine();
    BoomPipe pipe;
    pipe.nozzles = model.nozzles();
    pipe.spacing = m.spacing->value;
    pipe.pipe.bore = m.boomPipe.bore->value;
    pipe.feeds = m.boomPipe.feeds->value;
    pipe.ring = valueOr(m.boomPipe.ring, false);
    return pipe;
}

BoomStrip notChecked(const WindowModel& model) {
    const BoomFeed& pipe = model.machine().boomPipe;
    BoomStrip strip;
    if (!pipe.bore) strip.missing.push_back("boom_pipe.bore");
    if (!pipe.feeds) strip.missing.push_back("boom_pipe.feeds");
    const std::string which = strip.missing.size() == 2 ? "both" : pipe.bore ? "feeds" : "bore";
    strip.facts = {{"strip.even_unknown." + which, {}}};
    return strip;
}

BoomStrip refused(const Problem& problem) {
    BoomStrip strip;
    strip.missing = {problem.where.empty() ? "boom_pipe.bore" : problem.where};
    strip.facts = {{"problem." + problem.code, problem.arguments}};
    return strip;
}

const StripNozzle& weakest(const std::vector<StripNozzle>& nozzles) {
    return *std::min_element(nozzles.begin(), nozzles.end(),
                             [](const auto& a, const auto& b) { return *a.flow < *b.flow; });
}

void sayEven(BoomStrip& strip, const WindowModel& model, const BoomEvenness& even, Pressure feed) {
    const StripNozzle& least = weakest(strip.nozzles);
    strip.asksForWork = even.drop > kUsualDrop;
    strip.facts = {{strip.asksForWork ? "strip.even_over" : "strip.even_within",
                    {percentArg("drop", even.drop), percentArg("usual", kUsualDrop),
                     arg("number", least.number)}},
                   {"strip.even_flow",
                    {arg("pressure", feed), arg("number", least.number),
                     shareArg("part", *least.part), percentArg("cv", even.cv)}}};
    if (!model.machine().boomPipe.ring) strip.facts.push_back({"strip.even_ring_unknown", {}});
}

/// Says the dose at both ends of the range of rates, and marks which cautions belong to it.
void sayDose(BoomStrip& strip, double least, std::optional<double> most, UnitSystem units) {
    strip.hasMore = !most || *most > 1 + kWorthSaying;
    strip.hasLess = least < 1 - kWorthSaying;
    if (strip.hasMore && most) {
        strip.facts.push_back({"strip.dose_where_most", {}});
        if (const auto dose = doseFact(*most, units)) strip.facts.push_back(*dose);
    }
    if (!most) strip.facts.push_back({"strip.dose_unbounded", {}});
    if (!strip.hasLess) return;
    strip.facts.push_back({"strip.dose_where_least", {}});
    if (const auto dose = doseFact(least, units)) strip.facts.push_back(*dose);
}

int countOf(const BoomStrip& strip, StripState state) {
    return static_cast<int>(std::count_if(strip.nozzles.begin(), strip.nozzles.end(),
                                          [&](const auto& n) { return n.state == state; }));
}

/// The headline of a turn: what the inner and the outer end get.
void sayTurn(BoomStrip& strip, const WindowModel& model, AreaRate rate, Length radius) {
    const StripNozzle &inner = strip.nozzles.front(), &outer = strip.nozzles.back();
    const int back = countOf(strip, StripState::BacksUp);
    const int still = countOf(strip, StripState::StandsStill);
    std::vector<Argument> end{arg("radius", radius), arg("outer_speed", *outer.speed),
                              arg("outer_rate", *outer.rate)};
    if (back > 0) {
        end.push_back(arg("count", back));
        strip.facts.push_back({back == 1 ? "strip.turn_backs_up_one" : "strip.turn_backs_up", end});
    } else if (still > 0) {
        strip.facts.push_back({"strip.turn_stands", end});
    } else {
        end.push_back(arg("inner_speed", *inner.speed));
        end.push_back(arg("inner_rate", *inner.rate));
        strip.facts.push_back({"strip.turn_ends", end});
    }
    if (back > 0 && still > 0) strip.facts.push_back({"strip.turn_one_stands", {}});
    strip.asksForWork = back + still > 0;
    if (radius >= 0.5 * model.width())
        strip.facts.push_back({"strip.turn_mean_stays", {arg("rate", rate)}});
    else
        strip.facts.push_back({"strip.turn_ground_twice", {}});
}

/// The first and the last nozzle of a state, as "nozzles 3 to 9".
void sayRun(BoomStrip& strip, StripState state, const std::string& code,
            std::vector<Argument> arguments) {
    const auto is = [&](const auto& n) { return n.state == state; };
    const auto first = std::find_if(strip.nozzles.begin(), strip.nozzles.end(), is);
    if (first == strip.nozzles.end()) return;
    const auto last = std::find_if(strip.nozzles.rbegin(), strip.nozzles.rend(), is);
    arguments.push_back(arg("first", first->number));
    arguments.push_back(arg("last", last->number));
    const bool isOne = first->number == last->number;
    strip.facts.push_back({code + (isOne ? "_one" : ""), std::move(arguments)});
    strip.asksForWork = true;
}

/// What the nozzle does at its pressure. A shut-off valve sees the pipe's pressure: with a ball
/// kind that is over the nozzle's by what the valve loses.
StripState slopeState(const WindowModel& model, Pressure nozzle) {
    const auto& opening = model.machine().checkValve.openingPressure;
    const Pressure pipe = nozzle + model.line().valveLoss();
    const bool isHeldShut = opening && opening->value.si() > 0 && pipe <= opening->value;
    if (isHeldShut || nozzle.si() <= 0) return StripState::Shut;
    const auto& lowest = model.nozzle().pressureMin;
    return lowest && nozzle < lowest->value ? StripState::UnderLowest : StripState::Sprays;
}

void saySlope(BoomStrip& strip, const WindowModel& model, double percent) {
    const StripNozzle &low = strip.nozzles.front(), &high = strip.nozzles.back();
    strip.facts.push_back(
        {"strip.slope_ends",
         {arg("percent", percent), arg("high", *high.pressure), arg("low", *low.pressure),
          shareArg("least", *high.part), shareArg("most", *low.part)}});
    sayRun(strip, StripState::Shut, "strip.slope_shut", {});
    if (const auto& lowest = model.nozzle().pressureMin)
        sayRun(strip, StripState::UnderLowest, "strip.slope_under", {arg("lowest", lowest->value)});
    else
        strip.facts.push_back({"strip.slope_lowest_unknown", {}});
    strip.hasLowPressure =
        countOf(strip, StripState::Shut) + countOf(strip, StripState::UnderLowest) > 0;
    if (!strip.asksForWork && model.nozzle().pressureMin)
        strip.facts.push_back({"strip.slope_all_spray", {}});
    if (!model.machine().checkValve.openingPressure)
        strip.facts.push_back({"strip.slope_opening_unknown", {}});
}

}  // namespace

BoomStrip evenStrip(const WindowModel& model, Speed speed) {
    const BoomFeed& pipe = model.machine().boomPipe;
    if (!pipe.bore || !pipe.feeds) return notChecked(model);
    const NozzleLaw& law = model.line().law();
    const double gravity = model.line().specificGravity();
    const Pressure feed = model.at(speed).nozzlePressure;
    const auto even = boomEvenness(pipeOf(model), law, feed, gravity);
    if (!even) return refused(even.problem());
    BoomStrip strip;
    strip.nozzles = boomOf(model);
    const Flow full = law.flow(feed, gravity);
    for (std::size_t i = 0; i < strip.nozzles.size(); ++i) {
        StripNozzle& nozzle = strip.nozzles[i];
        nozzle.pressure = even->nozzles[i].pressure;
        nozzle.flow = even->nozzles[i].flow;
        nozzle.part = *nozzle.flow / full;
    }
    strip.limitPart = law.flow((1 - kUsualDrop) * feed, gravity) / full;
    sayEven(strip, model, *even, feed);
    return strip;
}

BoomStrip turnStrip(const WindowModel& model, Speed speed, Length radius, UnitSystem units) {
    const AreaRate planned = model.demand().rate;
    const AreaRate sprayed = model.at(speed).rate;
    BoomStrip strip;
    strip.nozzles = boomOf(model);
    double least = 1e9, most = 0.0;
    bool isBounded = true;
    for (StripNozzle& nozzle : strip.nozzles) {
        const TurnPoint point = turnAt(nozzle.offset, radius, speed, sprayed);
        nozzle.speed = point.speed;
        nozzle.rate = point.rate;
        if (point.rate) nozzle.part = *point.rate / planned;
        if (point.standsStill()) nozzle.state = StripState::StandsStill;
        if (point.backsUp()) nozzle.state = StripState::BacksUp;
        isBounded = isBounded && nozzle.state == StripState::Sprays;
        if (!nozzle.part) continue;
        least = std::min(least, *nozzle.part);
        most = std::max(most, *nozzle.part);
    }
    sayTurn(strip, model, sprayed, radius);
    sayDose(strip, least, isBounded ? std::optional(most) : std::nullopt, units);
    return strip;
}

BoomStrip slopeStrip(const WindowModel& model, Speed speed, double percent, UnitSystem units) {
    const OperatingPoint point = model.at(speed);
    // Pulsed nozzles: pressure and flow are those of an open nozzle, not of the mean over time.
    const BoomLine& line = model.line();
    const Flow level = line.law().flow(point.nozzlePressure, line.specificGravity());
    const Flow boom = static_cast<double>(model.nozzles()) * level;
    BoomStrip strip;
    strip.nozzles = boomOf(model);
    const auto along = slopeAlong(line, model.machine().spacing->value, boom, percent);
    for (std::size_t i = 0; i < strip.nozzles.size(); ++i) {
        StripNozzle& nozzle = strip.nozzles[i];
        nozzle.pressure = along[i].nozzlePressure;
        nozzle.flow = along[i].flow;
        nozzle.part = along[i].flow / level;
        nozzle.state = slopeState(model, along[i].nozzlePressure);
    }
    saySlope(strip, model, percent);
    sayDose(strip, *strip.nozzles.back().part * point.rateRatio,
            *strip.nozzles.front().part * point.rateRatio, units);
    return strip;
}

}  // namespace bw
