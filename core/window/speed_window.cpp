// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/speed_window.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/window/pressure_run.h"
#include "core/window/supply.h"
#include "core/window/window_ends.h"

namespace bw {
namespace {

constexpr double kTie = 1e-9;  ///< speeds closer than this (relative) are one
constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool below(double a, double b) {
    return a < b * (1 - kTie);
}

std::optional<Problem> machineProblem(const Machine& machine) {
    if (!machine.spacing) return error("spacing_missing", "machine.spacing");
    if (!(machine.spacing->value.si() > 0)) return error("machine_not_positive", "machine.spacing");
    if (!machine.sections || machine.sections->value.empty())
        return error("sections_missing", "machine.sections");
    const auto& sections = machine.sections->value;
    if (std::any_of(sections.begin(), sections.end(), [](int n) { return n <= 0; }))
        return error("machine_not_positive", "machine.sections");
    const auto& limits = machine.limits;
    if (limits.pressureFloor && limits.pressureCeiling &&
        limits.pressureFloor->value >= limits.pressureCeiling->value) {
        return error("floor_over_ceiling", "machine.limits.pressure_floor",
                     {{"floor", anyQuantity(limits.pressureFloor->value)},
                      {"ceiling", anyQuantity(limits.pressureCeiling->value)}});
    }
    return std::nullopt;
}

Problem inside(std::string part, Problem problem) {
    problem.where = part + (problem.where.empty() ? "" : "." + problem.where);
    return problem;
}

/// One end of the window: the limits of that side, the one that stops first in front.
WindowEnd endOf(const std::vector<SpeedLimit>& limits, Side side) {
    WindowEnd end;
    std::vector<SpeedLimit> mine;
    std::copy_if(limits.begin(), limits.end(), std::back_inserter(mine),
                 [&](const auto& l) { return l.side == side; });
    std::stable_sort(mine.begin(), mine.end(), [&](const auto& a, const auto& b) {
        return side == Side::Low ? b.speed < a.speed : a.speed < b.speed;
    });
    if (mine.empty()) {
        if (side == Side::Low) end.speed = Speed{};
        return end;
    }
    // Among equals (to kTie) the order of Limit settles which one is named.
    auto first = mine.begin();
    for (auto it = mine.begin() + 1;
         it != mine.end() &&
         std::abs(it->speed.si() - mine.front().speed.si()) <= kTie * mine.front().speed.si();
         ++it) {
        if (rankOf(it->limit, side) < rankOf(first->limit, side)) first = it;
    }
    std::rotate(mine.begin(), first, first + 1);
    end.speed = mine.front().speed;
    end.limit = mine.front().limit;
    end.next.assign(mine.begin() + 1, mine.end());
    return end;
}

RestrictorPosition positionOf(const Machine& machine) {
    if (!hasRestrictor(machine)) return RestrictorPosition::FullBore;
    return valueOr(machine.restrictor.position, RestrictorPosition::FullBore);
}

bool crossed(const WindowEnd& low, const WindowEnd& high) {
    return high.speed && below(high.speed->si(), low.speed->si());
}

/// A whole psi or 0.1 bar, not under `least`; one that is whole to 1e-6 stays.
Pressure roundedUp(Pressure least, UnitSystem units) {
    const double step = units == UnitSystem::Us ? info(Unit::Psi).inSi : 0.1 * info(Unit::Bar).inSi;
    return Pressure::fromSi(std::ceil(least.si() / step - 1e-6) * step);
}

bool withinEnds(const WindowEnd& low, const WindowEnd& high, Speed speed) {
    return !below(speed.si(), low.speed->si()) &&
           !(high.speed && below(high.speed->si(), speed.si()));
}

/// What a window is reckoned from.
struct Reckoned {
    Circuit circuit;
    JobDemand demand;
};
Result<Reckoned> reckonedParts(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    if (const auto problem = machineProblem(machine)) return *problem;
    const auto law = nozzleLaw(nozzle);
    if (!law) return inside("nozzle", law.problem());
    const auto demand = demandOf(job);
    if (!demand) return inside("job", demand.problem());
    auto parts = circuitParts(machine, *law, demand->specificGravity, positionOf(machine));
    if (!parts) return inside("machine", parts.problem());
    return Reckoned{Circuit(std::move(parts).value()), *demand};
}

}  // namespace

WindowEnds endsOf(const SpeedWindow& w) {
    if (w.allRates) return {w.allRates->low.speed, w.allRates->high.speed, w.allRates->empty};
    return {w.low.speed, w.high.speed, w.empty};
}

bool WindowEnds::holds(Speed speed) const {
    if (empty) return false;
    return !below(speed.si(), low ? low->si() : 0.0) && !(high && below(high->si(), speed.si()));
}

Result<WindowEnds> windowEnds(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    auto parts = reckonedParts(machine, nozzle, job);
    if (!parts) return parts.problem();
    const JobDemand& demand = parts->demand;
    const Length width = sprayedWidth(machine);
    const auto limits =
        limitsFor(parts->circuit, machine, nozzle, job, demand, width, positionOf(machine));
    WindowEnds ends{Speed{}, std::nullopt, false};
    for (const auto& f : limits.flows) {
        const AreaRate rate = f.side == Side::Low ? demand.rateLeast : demand.rateMost;
        const Speed speed =
            f.limit == Limit::TopSpeed ? machine.limits.topSpeed->value : f.flow / (rate * width);
        if (f.side == Side::Low)
            ends.low = std::max(*ends.low, speed);
        else
            ends.high = ends.high ? std::min(*ends.high, speed) : speed;
    }
    ends.empty =
        limits.emptyWhy != Limit::None || (ends.high && below(ends.high->si(), ends.low->si()));
    return ends;
}

bool SpeedWindow::holds(Speed speed) const {
    return !empty && withinEnds(low, high, speed);
}

WindowModel::WindowModel(Circuit circuit, JobDemand demand, const Machine& machine,
                         const Nozzle& nozzle, const Job& job)
    : m_circuit(std::move(circuit)),
      m_demand(demand),
      m_machine(machine),
      m_nozzle(nozzle),
      m_job(job),
      m_width(sprayedWidth(machine)),
      m_nozzles(nozzleCount(machine)) {
    m_position = positionOf(machine);
    m_limits = limitsFor(m_circuit, m_machine, m_nozzle, m_job, m_demand, m_width, m_position);
}

Result<WindowModel> WindowModel::make(const Machine& machine, const Nozzle& nozzle,
                                      const Job& job) {
    auto parts = reckonedParts(machine, nozzle, job);
    if (!parts) return parts.problem();
    return WindowModel(std::move(parts->circuit), parts->demand, machine, nozzle, job);
}

std::vector<SpeedLimit> WindowModel::speedLimits(const WindowLimits& limits, AreaRate rate) const {
    std::vector<SpeedLimit> out;
    for (const auto& f : limits.flows) {
        const bool isSpeed =
            f.limit == Limit::TopSpeed;  // the one limit that is a speed, whatever the rate
        out.push_back({f.limit, f.side, f.flow,
                       isSpeed ? m_machine.limits.topSpeed->value : f.flow / (rate * m_width),
                       f.pins});
    }
    return out;
}

SpeedWindow WindowModel::window(std::optional<UnitSystem> units) const {
    SpeedWindow w;
    w.rate = m_demand.rate;
    w.limits = speedLimits(m_limits, m_demand.rate);
    w.low = endOf(w.limits, Side::Low);
    w.high = endOf(w.limits, Side::High);
    w.emptyWhy = m_limits.emptyWhy;
    w.empty = w.emptyWhy != Limit::None || crossed(w.low, w.high);
    w.notChecked = m_limits.notChecked;
    w.atSlow = at(m_demand.slow);
    w.atUsual = at(m_demand.usual);
    w.atFast = at(m_demand.fast);
    if (!m_machine.pulsed.pressure) w.floor = floorAdvice(units.value_or(m_machine.units));
    w.restrictor = restrictorAdvice();
    w.sectionsOff = sectionsOff();
    w.allRates = rateRange();
    judge(w);
    return w;
}

void WindowModel::judge(SpeedWindow& w) const {
    const WindowEnd& low = w.allRates ? w.allRates->low : w.low;
    const WindowEnd& high = w.allRates ? w.allRates->high : w.high;
    if (w.allRates ? w.allRates->empty : w.empty) return;
    w.coversUsual = withinEnds(low, high, m_demand.usual);
    w.coversBand = withinEnds(low, high, m_demand.slow) && withinEnds(low, high, m_demand.fast);
    const double usual = m_demand.usual.si();
    const double up = high.speed ? high.speed->si() - usual : kInfinity;
    w.roomToSpare = std::min(usual - low.speed->si(), up) / usual;
}

OperatingPoint WindowModel::at(Speed speed) const {
    OperatingPoint point;
    point.speed = speed;
    const Flow wish = wished(speed);
    const Flow flow = heldFlow(m_limits, wish);
    point.boomFlow = flow;
    point.nozzleFlow = flow / static_cast<double>(m_nozzles);
    const auto set = bare(m_machine.pulsed.pressure);
    point.nozzlePressure = set ? *set : line().meanNozzlePressure(flow);
    point.sensorPressure = set ? sensorPressure(flow) : line().sensorAt(flow);
    point.rateRatio = flow / wish;
    point.rate = point.rateRatio * m_demand.rate;
    if (m_nozzle.droplets) {
        if (const auto* band = bandAt(m_nozzle.droplets->value, point.nozzlePressure))
            point.droplets = band->category;
    }
    if (m_nozzle.drift) {
        if (const auto* band = bandAt(m_nozzle.drift->value, point.nozzlePressure))
            point.driftPercent = band->percent;
    }
    for (const auto& l : speedLimits(m_limits, m_demand.rate)) {
        const bool passed =
            l.side == Side::Low ? below(speed.si(), l.speed.si()) : below(l.speed.si(), speed.si());
        if (passed) point.past.push_back(l.limit);
    }
    if (m_limits.emptyWhy != Limit::None) point.past.push_back(m_limits.emptyWhy);
    if (point.rateRatio > 1 + kTie)
        point.verdict = PointVerdict::StuckHigh;
    else if (point.rateRatio < 1 - kTie)
        point.verdict = PointVerdict::StuckLow;
    else if (!point.past.empty())
        point.verdict = PointVerdict::BeyondLimit;
    return point;
}

Pressure WindowModel::neededSensorPressure(Speed speed) const {
    return sensorPressure(wished(speed));
}

Pressure WindowModel::sensorPressure(Flow boom) const {
    const auto set = bare(m_machine.pulsed.pressure);
    if (!set) return line().sensorAt(boom);
    // The mean flow passes the section's strainer and hose; the nozzle stands at the set pressure.
    const Flow section = boom * (static_cast<double>(line().largestSection()) / m_nozzles);
    return *set + line().valveLoss() +
           m_demand.specificGravity * (squareLoss(m_machine.losses.section) * (section * section));
}

Pressure WindowModel::nozzlePressure(Pressure sensor) const {
    return line().meanNozzlePressure(line().flowAt(sensor));
}

Speed WindowModel::speedAt(Pressure sensor) const {
    return boomFlow(sensor) / (m_demand.rate * m_width);
}

Flow WindowModel::boomFlow(Pressure sensor) const {
    return line().flowAt(sensor);
}

std::vector<ByHandRow> WindowModel::byHand(int rows) const {
    std::vector<ByHandRow> out;
    const Speed span = m_demand.fast - m_demand.slow;
    const int count = span.si() > 0 ? std::max(rows, 2) : 1;
    for (int i = 0; i < count; ++i) {
        const Speed speed =
            m_demand.slow + (count > 1 ? static_cast<double>(i) / (count - 1) : 0.0) * span;
        out.push_back({speed, neededSensorPressure(speed)});
    }
    return out;
}

std::optional<FloorAdvice> WindowModel::floorAdvice(UnitSystem units) const {
    FloorAdvice advice;
    // The least rate asks for the least pressure: a floor over it would pin that one.
    advice.most = sensorPressure(m_demand.rateLeast * m_demand.slow * m_width);
    if (!m_nozzle.pressureMin) return advice;
    advice.least = line().sensorFor(m_nozzle.pressureMin->value, line().largestSection());
    const Pressure rounded = roundedUp(*advice.least, units);
    const auto fits = [&](Pressure p) { return p.si() <= advice.most->si() * (1 + kTie); };
    if (fits(rounded))
        advice.recommended = rounded;
    else if (fits(*advice.least))
        advice.recommended = advice.least;
    return advice;
}

double WindowModel::coveredPart(RestrictorPosition position) const {
    const auto parts = circuitParts(m_machine, line().law(), m_demand.specificGravity, position);
    if (!parts) return 0.0;
    const auto limits =
        limitsFor(Circuit(*parts), m_machine, m_nozzle, m_job, m_demand, m_width, position);
    if (limits.emptyWhy != Limit::None) return 0.0;
    const WindowEnd low = endOf(speedLimits(limits, m_demand.rateLeast), Side::Low);
    const WindowEnd high = endOf(speedLimits(limits, m_demand.rateMost), Side::High);
    if (crossed(low, high)) return 0.0;
    const double span = m_demand.fast.si() - m_demand.slow.si();
    if (span <= kTie * m_demand.usual.si())
        return withinEnds(low, high, m_demand.usual) ? 1.0 : 0.0;
    const double from = std::max(low.speed->si(), m_demand.slow.si());
    const double to = std::min(high.speed ? high.speed->si() : kInfinity, m_demand.fast.si());
    return std::max(0.0, to - from) / span;
}

std::optional<RestrictorAdvice> WindowModel::restrictorAdvice() const {
    if (!hasRestrictor(m_machine) || !m_machine.restrictor.changeoverFlow) return std::nullopt;
    RestrictorAdvice advice;
    advice.crossingSpeed = m_machine.restrictor.changeoverFlow->value / (m_demand.rate * m_width);
    const Flow change = m_machine.restrictor.changeoverFlow->value;
    if (m_demand.rateMost * m_demand.fast * m_width < change)
        advice.band = Band::Under;
    else if (m_demand.rateLeast * m_demand.slow * m_width >= change)
        advice.band = Band::Over;
    const double fullBore = coveredPart(RestrictorPosition::FullBore);
    const double narrowed = coveredPart(RestrictorPosition::Narrowed);
    const bool byCrossing = m_demand.usual < advice.crossingSpeed;
    const bool narrow = std::abs(fullBore - narrowed) <= kTie ? byCrossing : narrowed > fullBore;
    advice.position = narrow ? RestrictorPosition::Narrowed : RestrictorPosition::FullBore;
    return advice;
}

std::vector<SectionsOn> WindowModel::sectionsOff() const {
    std::vector<SectionsOn> out;
    const auto& sections = m_machine.sections->value;
    const auto minimum = hasMeter(m_machine) ? meterMinimum(m_machine, m_position) : std::nullopt;
    const bool metered =
        valueOr(m_machine.sectionReturns, SectionReturns::None) == SectionReturns::Metered;
    // With a range of rates the least of them asks for the least flow.
    const Flow whole = m_demand.rateLeast * m_demand.usual * m_width;
    int nozzlesOn = m_nozzles;
    for (std::size_t on = sections.size(); on > 0; --on) {
        SectionsOn row{static_cast<int>(on), nozzlesOn, whole, std::nullopt};
        // Metered returns send a shut section's flow back to the tank: the meter sees it all.
        if (!metered) row.flow = row.flow * (static_cast<double>(nozzlesOn) / m_nozzles);
        if (minimum) row.underMinimum = below(row.flow.si(), minimum->si());
        out.push_back(row);
        nozzlesOn -= sections[on - 1];
    }
    return out;
}

std::optional<RateRangeWindow> WindowModel::rateRange() const {
    if (!m_job.rateLeast && !m_job.rateMost) return std::nullopt;
    RateRangeWindow range;
    range.low = endOf(speedLimits(m_limits, m_demand.rateLeast), Side::Low);
    range.high = endOf(speedLimits(m_limits, m_demand.rateMost), Side::High);
    range.empty = m_limits.emptyWhy != Limit::None || crossed(range.low, range.high);
    return range;
}

Result<SpeedWindow> speedWindow(const Machine& machine, const Nozzle& nozzle, const Job& job) {
    const auto model = WindowModel::make(machine, nozzle, job);
    if (!model) return model.problem();
    return model->window();
}

}  // namespace bw
