// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/triage.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "core/model/nozzle_sizes.h"
#include "core/window/window_curve.h"

namespace bw {
namespace {

constexpr double kFits = 0.08;     ///< of flow
constexpr double kOff = 0.03;      ///< of the target
constexpr double kAtLimit = 0.04;  ///< of the pressure
constexpr double kInside = 0.02;   ///< a way out ends this much inside its limit

template <class Q>
Argument arg(std::string name, Q value) {
    return {std::move(name), anyQuantity(value)};
}
Argument percent(double part) {
    return {"percent", AnyQuantity{Dimension::None, std::round(std::abs(part) * 100)}};
}

/// Flow and pressure as they were read.
struct Read {
    std::optional<Pressure> pressure;
    std::optional<Flow> flow;
    std::optional<Flow> fromPressure;  ///< what these nozzles give there
    std::optional<double> off;         ///< shown over target, less 1
};

Read readOf(const CaseNumbers& n) {
    Read r;
    r.pressure = n.pressureRead();
    r.flow = n.shownFlow();
    if (n.boom && r.pressure && !n.sections.empty()) r.fromPressure = n.boom->boomFlow(*r.pressure);
    if (const auto ratio = n.shownRatio()) r.off = *ratio - 1;
    return r;
}

bool at(const std::optional<Pressure>& limit, Pressure p) {
    return limit && std::abs(p / *limit - 1) < kAtLimit;
}

Fact fact(std::string code, std::vector<Argument> arguments) {
    return {std::move(code), std::move(arguments)};
}

void addNeed(const CaseNumbers& n, std::vector<Fact>& out) {
    if (!n.needSensor) return;
    std::vector<Argument> arguments{arg("rate", *n.rate), arg("speed", *n.speed),
                                    arg("need", *n.needSensor)};
    if (!n.needFlow || n.sections.empty()) {
        out.push_back(fact("finder.sum.need_pressure", std::move(arguments)));
        return;
    }
    arguments.push_back(arg("flow", *n.needFlow));
    out.push_back(fact("finder.sum.need", std::move(arguments)));
}

/// Pressure and flow do not belong together: outlets, meter or gauge. Only a meter can differ.
bool addMisfit(const CaseNumbers& n, const Read& r, std::vector<Fact>& out) {
    if (!n.hasMeter() || !r.flow || !r.fromPressure) return false;
    const double gap = *r.flow / *r.fromPressure - 1;
    if (std::abs(gap) <= kFits) return false;
    out.push_back(
        fact(gap < 0 ? "finder.sum.outlets_blocked" : "finder.sum.more_hole",
             {arg("pressure", *r.pressure), arg("flow", *r.flow), arg("fits", *r.fromPressure)}));
    return true;
}

void addHigh(const CaseNumbers& n, const Read& r, std::vector<Fact>& out) {
    if (!n.needSensor || !r.pressure || *r.pressure <= *n.needSensor * (1 + kAtLimit)) return;
    const double ratio = n.ratioAt(r.pressure->si());
    out.push_back(fact("finder.sum.will_not_go_low",
                       {arg("need", *n.needSensor), arg("pressure", *r.pressure),
                        arg("target", *n.rate), arg("rate", *n.rate * ratio)}));
}

void addLow(const CaseNumbers& n, const Read& r, std::vector<Fact>& out) {
    if (!n.needSensor || !r.pressure || *r.pressure >= *n.needSensor * (1 - kAtLimit)) return;
    const std::vector<Argument> arguments{arg("need", *n.needSensor), arg("pressure", *r.pressure)};
    out.push_back(
        fact(at(n.ceiling, *r.pressure) ? "finder.sum.out_of_pressure" : "finder.sum.too_little",
             arguments));
}

void addDose(const Read& r, std::vector<Fact>& out) {
    if (!r.off || std::abs(*r.off) <= kOff) return;
    const bool over = *r.off > 0;
    out.push_back(fact(over ? "finder.dose.over" : "finder.dose.under",
                       {percent(*r.off), {"caution", std::string(over ? "C16" : "C17")}}));
}

/// What a way out may reckon with.
struct Way {
    const CaseNumbers& n;
    const CaseRecord& record;

    std::optional<Pressure> nozzleLowest() const {
        const auto lowest = bare(record.nozzle.pressureMin);
        if (!lowest || !n.boom) return std::nullopt;
        // least sensor pressure at which the mean nozzle has its lowest
        const auto loss =
            Pressure::fromSi(n.needSensor->si()) - n.boom->nozzlePressure(*n.needSensor);
        return *lowest + (loss.si() > 0 ? loss : Pressure{});
    }
    /// Where the pressure is held while it is wrong: read if it was read, else the limit.
    std::optional<Pressure> heldAt(const std::optional<Pressure>& limit) const {
        if (limit) return limit;
        return n.pressureRead();
    }
    /// The job's fastest or the machine's top speed, whichever comes first.
    std::optional<Speed> fastest() const {
        const auto fast = bare(record.job.fast);
        const auto top = bare(record.machine.limits.topSpeed);
        return fast && top ? std::min(*fast, *top) : fast ? fast : top;
    }
};

using WayOf = std::function<std::optional<Fact>(const Way&)>;

std::optional<Fact> lowerFloor(const Way& w) {
    const auto held = w.heldAt(w.n.floor);
    if (!held || *w.n.needSensor >= *held) return std::nullopt;
    const auto lowest = w.nozzleLowest();
    if (lowest && *lowest > *w.n.needSensor)
        return fact("finder.out.floor_not_enough",
                    {arg("floor", *lowest), arg("need", *w.n.needSensor)});
    // A little inside the need, but never under what the nozzle still sprays well at.
    const Pressure inside = *w.n.needSensor * (1 - kInside);
    std::vector<Argument> arguments{arg("floor", lowest ? std::max(inside, *lowest) : inside),
                                    arg("held", *held)};
    if (!lowest) return fact("finder.out.floor_unchecked", std::move(arguments));
    arguments.push_back(arg("lowest", *lowest));
    return fact("finder.out.floor", std::move(arguments));
}

/// The size nearest the one wanted by which the need comes back inside the limit.
std::optional<Fact> otherSize(const Way& w, bool smaller) {
    const auto held = w.heldAt(smaller ? w.n.floor : w.n.ceiling);
    if (!held || (smaller ? *w.n.needSensor >= *held : *w.n.needSensor <= *held))
        return std::nullopt;
    const double gravity = w.n.boom->demand().specificGravity;
    const double atHeld = w.n.boom->nozzlePressure(*held).si();
    std::optional<Fact> best;
    for (const auto& size : nozzleSizes()) {
        const double part = *w.n.needNozzle / size.metric;
        const auto need = metricRating() * (part * part * gravity);
        const bool inside =
            smaller ? need.si() >= atHeld * (1 + kInside) : need.si() <= atHeld * (1 - kInside);
        if (!inside) continue;
        Fact found = fact(smaller ? "finder.out.nozzle_smaller" : "finder.out.nozzle_larger",
                          {{"size", size.code}, arg("pressure", need)});
        if (!smaller) return found;
        best = std::move(found);
    }
    return best;
}

std::optional<Fact> faster(const Way& w) {
    const auto held = w.heldAt(w.n.floor);
    if (!held || *w.n.needSensor >= *held) return std::nullopt;
    const Speed from = *w.n.speed * w.n.ratioAt(held->si());
    if (w.fastest() && from > *w.fastest()) return std::nullopt;
    return fact("finder.out.faster", {arg("speed", from), {"caution", std::string("C19")}});
}

std::optional<Fact> slower(const Way& w) {
    const auto held = w.heldAt(w.n.ceiling);
    if (!held || *w.n.needSensor <= *held) return std::nullopt;
    return fact("finder.out.slower", {arg("speed", *w.n.speed * w.n.ratioAt(held->si()))});
}

std::optional<Fact> rateLimit(const Way& w, bool least) {
    const auto held = w.heldAt(least ? w.n.floor : w.n.ceiling);
    if (!held || (least ? *w.n.needSensor >= *held : *w.n.needSensor <= *held)) return std::nullopt;
    return fact(least ? "finder.out.rate_least" : "finder.out.rate_most",
                {arg("rate", *w.n.rate * w.n.ratioAt(held->si())), arg("speed", *w.n.speed)});
}

std::optional<Fact> moveRestrictor(const Way& w) {
    const auto right = w.n.rightPosition();
    if (!right) return std::nullopt;
    std::string code = "finder.out.restrictor_full_bore";
    // Which reason fits depends on what the narrowed valve steadies.
    if (*right == RestrictorPosition::Narrowed)
        code = w.n.hasMeter() ? "finder.out.restrictor_narrowed"
                              : "finder.out.restrictor_narrowed_valve";
    return fact(std::move(code), {arg("flow", *w.n.needFlow), arg("changeover", *w.n.changeover)});
}

std::optional<Fact> meterMinimum(const Way& w) {
    const auto minimum = w.n.meterMinimum();
    if (!minimum || !w.n.needFlow || !w.n.speed) return std::nullopt;
    if (*w.n.needFlow >= *minimum) return std::nullopt;
    return fact("finder.out.meter_minimum",
                {arg("flow", *w.n.needFlow), arg("minimum", *minimum),
                 arg("speed", *w.n.speed * (*minimum / *w.n.needFlow))});
}

struct WayEntry {
    WayOf fill;
    bool needsPressure = true;
};

const std::map<std::string, WayEntry>& ways() {
    static const std::map<std::string, WayEntry> table{
        {"finder.out.floor", {lowerFloor}},
        {"finder.out.nozzle_smaller", {[](const Way& w) { return otherSize(w, true); }}},
        {"finder.out.nozzle_larger", {[](const Way& w) { return otherSize(w, false); }}},
        {"finder.out.faster", {faster}},
        {"finder.out.slower", {slower}},
        {"finder.out.rate_least", {[](const Way& w) { return rateLimit(w, true); }}},
        {"finder.out.rate_most", {[](const Way& w) { return rateLimit(w, false); }}},
        {"finder.out.restrictor", {moveRestrictor, false}},
        {"finder.out.meter_minimum", {meterMinimum, false}}};
    return table;
}

}  // namespace

std::vector<Fact> triage(const CaseNumbers& n, std::optional<Symptom> symptom) {
    std::vector<Fact> out;
    addNeed(n, out);
    const Read r = readOf(n);
    if (symptom == Symptom::Hunting) {
        out.push_back(fact("finder.sum.swinging", {}));
    } else if (!addMisfit(n, r, out)) {
        const auto before = out.size();
        if (!r.off || *r.off > kOff) addHigh(n, r, out);
        if (!r.off || *r.off < -kOff) addLow(n, r, out);
        const bool onTarget = r.off && std::abs(*r.off) <= kOff;
        if (out.size() == before && onTarget && r.pressure && n.needSensor)
            out.push_back(fact("finder.sum.all_fit", {}));
    }
    addDose(r, out);
    return out;
}

std::vector<Fact> pulsedSums(const CaseRecord& record) {
    const CaseNumbers numbers(record);
    const auto made = WindowModel::make(record.machine, record.nozzle, record.job);
    std::optional<double> share;
    if (made && numbers.needFlow) share = onTimeShare(*made, *numbers.needFlow);
    if (!share) return {fact("finder.pulsed.no_numbers", {})};
    const auto part = [](std::string name, double value) {
        return Argument{std::move(name),
                        AnyQuantity{Dimension::None, std::round(value * 1000) / 10}};
    };
    std::vector<Argument> arguments{arg("rate", *numbers.rate), arg("speed", *numbers.speed),
                                    part("duty", *share)};
    const auto least = bare(record.machine.pulsed.dutyMin);
    const auto most = bare(record.machine.pulsed.dutyMax);
    if (!least || !most) return {fact("finder.pulsed.duty", std::move(arguments))};
    arguments.push_back(part("least", *least));
    arguments.push_back(part("most", *most));
    const char* code = *share < *least  ? "finder.pulsed.duty_under"
                       : *share > *most ? "finder.pulsed.duty_over"
                                        : "finder.pulsed.duty_within";
    return {fact(code, std::move(arguments))};
}

std::vector<Fact> waysOut(const std::vector<std::string>& codes, const CaseNumbers& numbers,
                          const CaseRecord& record) {
    std::vector<Fact> out;
    const Way way{numbers, record};
    for (const auto& code : codes) {
        const auto entry = ways().find(code);
        if (entry == ways().end() || (entry->second.needsPressure && !numbers.needSensor)) continue;
        if (auto found = entry->second.fill(way)) out.push_back(std::move(*found));
    }
    return out;
}

std::vector<std::string> knownWaysOut() {
    std::vector<std::string> out;
    for (const auto& [code, entry] : ways()) out.push_back(code);
    return out;
}

}  // namespace bw
