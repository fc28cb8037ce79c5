// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/simulation/why.h"

#include <algorithm>
#include <cmath>

#include "core/hydraulics/rate_law.h"
#include "core/simulation/stability.h"

namespace bw {
namespace {

constexpr double kSame = 1e-6;  // factors this near to 1 are not spoken of

template <class Q>
Argument arg(std::string name, Q q) {
    return {std::move(name), anyQuantity(q)};
}
bool differs(double factor) {
    return std::abs(factor - 1) > kSame;
}
/// Three digits are what a listener keeps.
double spoken(double factor) {
    if (!(std::abs(factor) > 0) || !std::isfinite(factor)) return 0.0;
    const double unit = std::pow(10.0, std::floor(std::log10(std::abs(factor))) - 2);
    return std::round(factor / unit) * unit;
}

/// Collects the chain for one state.
class Chain {
  public:
    explicit Chain(const RateLoop& loop)
        : m_loop(loop),
          m_setup(loop.setup()),
          m_speed(loop.sample().speed),
          m_need(neededFlow(m_setup.target, m_speed, m_setup.widthOn())) {}

    std::vector<Fact> built() {
        if (!loopSprays()) return {{"why.standing", {}}};
        if (m_setup.senses == Senses::Nothing) {
            say("why.by_hand");
        } else {
            whatHolds();
            restlessness();
        }
        sensing();
        beyondTheManifold();
        return std::move(m_facts);
    }

  private:
    bool loopSprays() const { return m_need.si() > 0; }
    void say(std::string code, std::vector<Argument> arguments = {}) {
        m_facts.push_back({std::move(code), std::move(arguments)});
    }
    void sayNeed() {
        const Pressure need = m_setup.running().boom.sensorAt(m_need);
        if (std::isfinite(need.si()))
            say("why.job_needs", {arg("need", need), arg("speed", m_speed)});
    }
    double factorAt(double control) const {
        const LoopCurves& c = m_loop.curves();
        return c.sprayed.at(c.metered.at(control)) / m_need.si();
    }

    void whatHolds() {
        const LoopCurves& curves = m_loop.curves();
        switch (m_loop.sample().limit) {
            case LoopLimit::Floor:
                pinned("why.floor_holds", "floor", *m_setup.floor, "why.gives_more",
                       curves.leastControl);
                return;
            case LoopLimit::Ceiling:
                pinned("why.ceiling_holds", "ceiling", *m_setup.ceiling, "why.gives_less",
                       curves.mostControl);
                return;
            case LoopLimit::FullControl:
                atStop("why.fully_open", 1.0, "why.gives_less");
                return;
            case LoopLimit::LeastControl:
                atStop("why.least_open", 0.0, "why.gives_more");
                return;
            case LoopLimit::None:
                break;
        }
        sayNeed();
        say("why.controller_free");
    }
    void pinned(std::string code, std::string name, Pressure limit, std::string outcome,
                double control) {
        say(std::move(code), {arg(std::move(name), limit)});
        if (differs(m_setup.meter.sensorScale))
            say("why.sensor_shows", {arg("factor", spoken(m_setup.meter.sensorScale))});
        sayNeed();
        outcomeOf(std::move(outcome), factorAt(control));
    }
    void outcomeOf(std::string code, double factor) {
        say(std::move(code), {arg("factor", spoken(factor))});
    }
    void atStop(std::string code, double control, std::string outcome) {
        if (m_setup.control.isReversed) say("why.reversed");
        const CircuitState state = Circuit(m_setup.running()).atControl(control);
        const CircuitLimit limit =
            state.limitedBy == CircuitLimit::None ? CircuitLimit::Pump : state.limitedBy;
        say(std::move(code), {arg("flow", state.sprayed),
                              {"limit", CodeText{"limit." + std::string(choiceName(limit))}}});
        say("why.job_needs_flow", {arg("need", m_need), arg("speed", m_speed)});
        const double factor = factorAt(control);
        // A floor may drive the control to its end although the job needs less.
        if (control > 0.5 && factor > 1 && m_setup.floor) {
            say("why.floor_unreached", {arg("floor", *m_setup.floor)});
            outcome = "why.gives_more";
        }
        outcomeOf(std::move(outcome), factor);
    }

    void restlessness() {
        const Flow metered = m_loop.sample().metered;
        const bool metering = m_setup.senses != Senses::Pressure;
        const Flow minimum = m_setup.meterMinimum();
        if (metering && minimum.si() > 0 && metered < minimum)
            say("why.meter_under", {arg("flow", metered), arg("minimum", minimum)});
        if (metering && m_setup.meter.noiseAdded > 0) say("why.flow_scatters");
        const auto at = stability(m_setup, m_speed);
        if (!at) return;
        if (!at->isStable())
            say("why.swings", {arg("gain", spoken(at->gain)), arg("limit", spoken(at->gainAtLimit)),
                               arg("period", at->period)});
        if (!deadBandHolds(m_setup, *at)) say("why.sticks");
    }

    void sensing() {
        const LoopMeter& meter = m_setup.meter;
        const std::size_t before = m_facts.size();
        const bool byPressure =
            m_setup.senses == Senses::Pressure || m_setup.senses == Senses::Nothing;
        if (!byPressure && differs(meter.scale))
            say("why.meter_shows", {arg("factor", spoken(meter.scale))});
        if (byPressure) byPressureErrors();
        if (differs(meter.speedScale))
            say("why.speed_shows", {arg("factor", spoken(meter.speedScale))});
        if (differs(meter.widthScale))
            say("why.width_entered", {arg("factor", spoken(meter.widthScale))});
        if (m_facts.size() > before) say("why.display_hides");
    }
    void byPressureErrors() {
        if (differs(m_setup.meter.sensorScale))
            say("why.sensor_shows_rate", {arg("factor", spoken(m_setup.meter.sensorScale))});
        const double gravity =
            m_setup.parts.boom.specificGravity() / m_setup.entered.specificGravity();
        if (differs(gravity)) say("why.density_unseen", {arg("factor", spoken(gravity))});
        const double nozzles = openNozzles(m_setup.parts.boom) / openNozzles(m_setup.entered);
        if (differs(nozzles)) say("why.nozzles_unseen", {arg("factor", spoken(nozzles))});
    }
    static double openNozzles(const BoomLine& boom) {
        double sum = 0.0;
        for (const auto& section : boom.sections())
            sum += section.isOpen ? section.openNozzles : 0.0;
        return sum;
    }

    void beyondTheManifold() {
        const LoopSample& s = m_loop.sample();
        const Flow lost = s.metered - s.sprayed;
        if (s.isSpraying && m_setup.parts.manifoldLeak.conductance > 0 && lost.si() > 0)
            say("why.not_sprayed", {arg("flow", lost), arg("metered", s.metered)});
        sections();
    }
    /// The section that gets least, against its share of what is sprayed.
    void sections() {
        const BoomLine boom = m_setup.running().boom;
        const Pressure sensor = m_loop.sample().sensor;
        const double each =
            boom.flowAt(sensor).si() * m_setup.spacing.si() / m_setup.widthOn().si();
        double least = 1.0;
        std::size_t weakest = 0;
        for (std::size_t i = 0; i < boom.sections().size(); ++i) {
            if (!m_setup.isOn[i]) continue;
            const BoomSection& section = boom.sections()[i];
            const double part = boom.sectionFlow(sensor, section).si() / (section.nozzles * each);
            if (part < least) {
                least = part;
                weakest = i;
            }
        }
        constexpr double kUneven = 0.03;  // sections of unlike size differ by less when healthy
        if (!(least < 1 - kUneven)) return;
        const double number = static_cast<double>(weakest + 1);
        if (least > 0)
            say("why.section_weak", {arg("section", number), arg("factor", spoken(least))});
        else
            say("why.section_dry", {arg("section", number)});
    }

    const RateLoop& m_loop;
    const LoopSetup& m_setup;
    Speed m_speed;
    Flow m_need;
    std::vector<Fact> m_facts;
};

}  // namespace

std::vector<Fact> whySo(const RateLoop& loop) {
    return Chain(loop).built();
}

}  // namespace bw
