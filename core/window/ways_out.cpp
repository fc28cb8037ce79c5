// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/window/ways_out.h"

#include <algorithm>
#include <cmath>

#include "core/model/nozzle_sizes.h"
#include "core/window/window_ends.h"

namespace bw {
namespace {

constexpr double kTie = 1e-9;

/// Rounded to whole steps, down or up; a whole one (to 1e-6) stays.
double stepped(double value, double step, bool up) {
    return (up ? std::ceil(value / step - 1e-6) : std::floor(value / step + 1e-6)) * step;
}

double rateStep(UnitSystem units) {
    return units == UnitSystem::Us ? 0.1 * info(Unit::GallonUsPerAcre).inSi
                                   : info(Unit::LitrePerHectare).inSi;
}
double pressureStep(UnitSystem units) {
    return units == UnitSystem::Us ? info(Unit::Psi).inSi : 0.1 * info(Unit::Bar).inSi;
}

// The ends that count: those of all rates where the job has a range of them.
const WindowEnd& lowEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->low : w.low;
}
const WindowEnd& highEnd(const SpeedWindow& w) {
    return w.allRates ? w.allRates->high : w.high;
}
bool isEmpty(const SpeedWindow& w) {
    return w.allRates ? w.allRates->empty : w.empty;
}
class Seeker {
  public:
    Seeker(const WindowModel& model, const SpeedWindow& window, Side side, UnitSystem units)
        : m_model(model), m_window(window), m_side(side), m_units(units) {}

    WaysOut seek() const {
        WaysOut out;
        out.side = m_side;
        out.limit = end().limit;
        if (isLow()) {
            out.floor = floor();
            out.floorUnchecked = !m_model.nozzle().pressureMin;
        }
        if (!isEmpty(m_window)) out.speed = end().speed;
        out.rate = rate();
        out.size = size();
        return out;
    }

  private:
    bool isLow() const { return m_side == Side::Low; }
    const WindowEnd& end() const { return isLow() ? lowEnd(m_window) : highEnd(m_window); }
    Speed wanted() const { return isLow() ? m_model.demand().slow : m_model.demand().fast; }

    bool serves(const Machine& m, const Nozzle& n, const Job& j) const {
        const auto ends = windowEnds(m, n, j);
        return ends && ends->holds(wanted()) && ends->holds(m_model.demand().usual);
    }

    std::optional<Pressure> floor() const {
        if (!m_model.machine().limits.pressureFloor || m_model.machine().pulsed.pressure)
            return std::nullopt;
        const auto& d = m_model.demand();
        const AreaRate least = m_window.allRates ? d.rateLeast : d.rate;
        const Pressure need = m_model.sensorPressure(least * wanted() * m_model.width());
        const Pressure round = Pressure::fromSi(stepped(need.si(), pressureStep(m_units), false));
        for (const Pressure p : {round, need}) {
            if (p.si() <= 0 || p >= m_model.machine().limits.pressureFloor->value) continue;
            Machine m = m_model.machine();
            m.limits.pressureFloor->value = p;
            if (serves(m, m_model.nozzle(), m_model.job())) return p;
        }
        return std::nullopt;
    }

    std::optional<AreaRate> rate() const {
        if (m_window.allRates || !end().speed || wanted().si() <= 0) return std::nullopt;
        const AreaRate exact = (*end().speed / wanted()) * m_window.rate;
        const auto round = AreaRate::fromSi(stepped(exact.si(), rateStep(m_units), isLow()));
        for (const AreaRate r : {round, exact}) {
            if (r.si() <= 0) continue;
            Job j = m_model.job();
            j.rate->value = r;
            if (serves(m_model.machine(), m_model.nozzle(), j)) return r;
        }
        return std::nullopt;
    }

    /// The sizes on the wanted side of the nozzle in hand, nearest first.
    std::vector<NozzleSize> sizes() const {
        const bool us = m_units == UnitSystem::Us;
        const Pressure at = us ? usRating() : metricRating();
        const Flow mine = m_model.line().law().flow(at);
        std::vector<NozzleSize> out;
        for (const auto& s : nozzleSizes()) {
            const Flow flow = us ? s.us : s.metric;
            if (isLow() ? flow < mine * (1 - kTie) : flow > mine * (1 + kTie)) out.push_back(s);
        }
        if (isLow()) std::reverse(out.begin(), out.end());
        return out;
    }

    std::optional<std::string> size() const {
        const bool us = m_units == UnitSystem::Us;
        for (const auto& s : sizes()) {
            if (s.code == m_model.nozzle().sizeCode) continue;
            Nozzle n = m_model.nozzle();
            n.table.reset();
            n.flow = Sourced<Flow>(us ? s.us : s.metric);
            n.at = Sourced<Pressure>(us ? usRating() : metricRating());
            if (serves(m_model.machine(), n, m_model.job())) return s.code;
        }
        return std::nullopt;
    }

    const WindowModel& m_model;
    const SpeedWindow& m_window;
    Side m_side;
    UnitSystem m_units;
};

}  // namespace

Fact WaysOut::title() const {
    if (side == Side::High) return {"ways.title_high", {}};
    return {limit == Limit::PressureFloor ? "ways.title_floor" : "ways.title_low", {}};
}

std::vector<Fact> WaysOut::facts() const {
    const std::string tail = side == Side::Low ? "_low" : "_high";
    std::vector<Fact> out;
    if (floor) {
        out.push_back({floorUnchecked ? "ways.floor_unchecked" : "ways.floor",
                       {{"pressure", anyQuantity(*floor)}}});
    }
    if (speed) out.push_back({"ways.speed" + tail, {{"speed", anyQuantity(*speed)}}});
    if (size) out.push_back({"ways.size" + tail, {{"size", *size}}});
    if (rate) out.push_back({"ways.rate" + tail, {{"rate", anyQuantity(*rate)}}});
    return out;
}

std::vector<WaysOut> waysOut(const WindowModel& model, const SpeedWindow& window,
                             UnitSystem units) {
    std::vector<WaysOut> out;
    if (window.emptyWhy != Limit::None) return out;
    const auto& d = model.demand();
    const auto& low = lowEnd(window).speed;
    const auto& high = highEnd(window).speed;
    if (low && d.slow.si() < low->si() * (1 - kTie))
        out.push_back(Seeker(model, window, Side::Low, units).seek());
    if (high && d.fast.si() > high->si() * (1 + kTie))
        out.push_back(Seeker(model, window, Side::High, units).seek());
    return out;
}

}  // namespace bw
