// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <random>

#include "core/window/speed_window.h"
#include "tests/support/builders.h"

/// Random pairings of machine, nozzle and job, plausible and invented; a seed gives one row of
/// them.
namespace bw::build {

struct Case {
    Machine machine;
    Nozzle nozzle;
    Job job;
    WindowModel model() const { return *WindowModel::make(machine, nozzle, job); }
    SpeedWindow window() const { return model().window(); }
};

class RandomPairings {
  public:
    explicit RandomPairings(unsigned seed) : m_engine(seed) {}
    double between(double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(m_engine);
    }
    int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(m_engine); }

    Case next(bool homogeneous = false) {
        Case c{machineOf(homogeneous), lowDrift(between(0.8, 2.4), {}), {}};
        c.nozzle.droplets = lowDrift03().droplets;
        const double usual = between(7, 16);
        c.job = job(lha(between(60, 250)), kmh(usual * 0.85), kmh(usual), kmh(usual * 1.15));
        if (whole(0, 1)) c.job.droplets = {DropletCategory::C, DropletCategory::M};
        return c;
    }

    /// As `next`, with all that a pairing can have beside: pulsed nozzles, a range of rates, flow
    /// tables, drift classes, mixes, metered returns, a restrictor in either position, what senses.
    Case wide() {
        Case c = next();
        Machine& m = c.machine;
        const double size = nozzleCount(m) * 1.6;
        m.senses = Sourced<Senses>(static_cast<Senses>(whole(0, 3)));
        m.sectionReturns = Sourced<SectionReturns>(static_cast<SectionReturns>(whole(0, 1)));
        m.pump.leastSpeed = Sourced<double>(between(0.1, 0.5));
        m.controlValve.leastOpening = Sourced<double>(between(0, 0.3));
        m.restrictor = {};
        m.restrictor.fitted = Sourced<bool>(whole(0, 1) == 1);
        if (m.restrictor.fitted->value) {
            m.restrictor.hole = Sourced<Length>(metres(between(0.012, 0.03)));
            m.restrictor.changeoverFlow = Sourced<Flow>(lpm(size * between(0.2, 0.7)));
            m.restrictor.position =
                Sourced<RestrictorPosition>(static_cast<RestrictorPosition>(whole(0, 1)));
        }
        if (whole(0, 2) == 0)
            m.pulsed = {Sourced<Pressure>(bar(between(1.5, 5))), Sourced<double>(between(0.1, 0.4)),
                        Sourced<double>(between(0.8, 1))};
        widen(c.nozzle);
        widen(c.job);
        return c;
    }

  private:
    void widen(Nozzle& n) {
        if (whole(0, 1))
            n.drift = Sourced<std::vector<DriftBand>>(
                {{bar(1), bar(2), 75}, {bar(2), bar(between(3, 5)), 50}});
        const int kind = whole(0, 2);
        if (kind == 0) n.exponent = Sourced<double>(between(0.42, 0.55));
        if (kind != 1) return;
        std::vector<FlowPoint> rows;
        const double exponent = between(0.44, 0.53);
        for (const double p : {1.0, 2.0, 3.0, 4.5, 6.0}) {
            const double flow = in(n.flow->value, Unit::LitrePerMinute) * std::pow(p / 3, exponent);
            rows.push_back({bar(p), lpm(flow * between(0.985, 1.015))});
        }
        n.table = Sourced<std::vector<FlowPoint>>(rows);
        n.flow.reset();
        n.at.reset();
    }
    void widen(Job& j) {
        j.specificGravity = Sourced<double>(between(0.9, 1.35));
        if (whole(0, 2) == 0) j.driftPercent = Sourced<double>(between(40, 70));
        if (whole(0, 1)) {
            j.rateLeast = Sourced<AreaRate>(between(0.7, 1) * j.rate->value);
            j.rateMost = Sourced<AreaRate>(between(1, 1.3) * j.rate->value);
        }
    }
    Loss loss(double flow) {
        return {Sourced<Pressure>(bar(between(0.02, 0.4))), Sourced<Flow>(lpm(flow))};
    }
    Machine machineOf(bool homogeneous) {
        std::vector<int> sections;
        for (int i = whole(2, 9); i > 0; --i) sections.push_back(whole(4, 14));
        Machine m = machine(sections);
        const double size = nozzleCount(m) * 1.6;  // L/min, about what the boom takes
        m.control = Sourced<Control>(static_cast<Control>(whole(0, 2)));
        m.pump.kind =
            Sourced<PumpKind>(whole(0, 1) ? PumpKind::Centrifugal : PumpKind::PositiveDisplacement);
        m.pump.shutOffPressure = Sourced<Pressure>(bar(between(5, 9)));
        m.pump.curve = Sourced<std::vector<CurvePoint>>({{lpm(size), bar(between(3, 5))}});
        m.pump.ratedFlow = Sourced<Flow>(lpm(size * between(1, 2.5)));
        m.pump.reliefPressure = Sourced<Pressure>(bar(between(6, 14)));
        m.pump.suctionAvailable = Sourced<Pressure>(bar(between(0.3, 0.7)));
        m.controlValve = {Sourced<Flow>(lpm(size * between(0.8, 2))),
                          Sourced<Pressure>(bar(between(0.5, 2))),
                          {}};
        m.losses = {loss(size), loss(size), loss(size),
                    loss(size / static_cast<double>(sections.size()))};
        m.agitation = {Sourced<Flow>(lpm(size * between(0.02, 0.4))),
                       Sourced<Pressure>(bar(between(2, 6)))};
        m.meter.minimumFullBore = Sourced<Flow>(lpm(size * between(0.05, 0.3)));
        m.meter.maximum = Sourced<Flow>(lpm(size * between(1.5, 3)));
        m.limits = {Sourced<Pressure>(bar(between(0.8, 1.8))),
                    Sourced<Pressure>(bar(between(4, 8))), Sourced<Speed>(kmh(between(14, 30)))};
        if (whole(0, 1)) {
            m.restrictor.fitted = Sourced<bool>(true);
            m.restrictor.hole = Sourced<Length>(metres(between(0.012, 0.03)));
        }
        if (homogeneous) return m;
        m.checkValve.kind =
            Sourced<ShutOffKind>(whole(0, 1) ? ShutOffKind::Ball : ShutOffKind::Diaphragm);
        m.checkValve.openingPressure = Sourced<Pressure>(bar(between(0.2, 0.6)));
        return m;
    }
    std::mt19937 m_engine;
};

}  // namespace bw::build
