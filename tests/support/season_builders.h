// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "core/season/set_choice.h"
#include "tests/support/builders.h"

/// Small seasons for tests. Machines, nozzles, jobs, prices are invented.
namespace bw::build {

inline Nozzle ranged(const std::string& name, double flow, double least = 1, double most = 6) {
    Nozzle n = nozzle(lpm(flow));
    n.name = name;
    n.pressureMin = Sourced<Pressure>(bar(least));
    n.pressureMax = Sourced<Pressure>(bar(most));
    return n;
}
inline Nozzle priced(Nozzle n, double price) {
    n.price = Sourced<double>(price);
    return n;
}
inline Job named(Job j, const std::string& name, double hectares = 0) {
    j.name = name;
    if (hectares > 0) j.area = Sourced<Area>(make<Area>(hectares, Unit::Hectare));
    return j;
}

/// Machines get the ids 1, 2 …; jobs of machine m the ids 100 m, 100 m + 1 ….
inline SeasonInputs season(std::vector<Nozzle> nozzles, const std::vector<Machine>& machines,
                           const std::vector<std::vector<Job>>& jobs) {
    SeasonInputs out;
    for (std::size_t m = 0; m < machines.size(); ++m) {
        const auto id = static_cast<RecordId>(m + 1);
        out.machines.push_back({id, 0, machines[m]});
        for (std::size_t j = 0; j < jobs[m].size(); ++j)
            out.jobs.push_back(
                {100 * id + static_cast<RecordId>(j), id, static_cast<int>(j), jobs[m][j]});
    }
    out.nozzles = std::move(nozzles);
    return out;
}

/// Random seasons with what real ones differ in: floors, restrictors, droplet tables and wishes,
/// drift classes, ranges of rates, pins, missing data.
class RandomSeasons {
  public:
    /// `spread`: how far slow and fast lie from the usual speed at most, as a part of it.
    explicit RandomSeasons(unsigned seed, double spread = 0.25)
        : m_random(seed), m_spread(spread) {}

    std::size_t below(std::size_t n) { return m_random() % n; }
    bool oneIn(std::size_t n) { return below(n) == 0; }
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(m_random);
    }

    Machine machine() {
        Machine m = build::machine({12, 12, 12}, metres(0.5));
        if (oneIn(2)) m.sections = Sourced<std::vector<int>>({10, 9, 10});
        if (oneIn(2)) m.limits.pressureFloor = Sourced<Pressure>(bar(between(0.8, 2)));
        if (oneIn(3)) m.limits.pressureCeiling = Sourced<Pressure>(bar(between(4, 8)));
        if (oneIn(3)) m.limits.topSpeed = Sourced<Speed>(kmh(between(12, 20)));
        if (oneIn(2)) {
            m.restrictor.fitted = Sourced<bool>(true);
            m.restrictor.changeoverFlow = Sourced<Flow>(lpm(between(20, 50)));
            m.meter.maximum = Sourced<Flow>(lpm(150));
        }
        return m;
    }
    Nozzle nozzle(const std::string& name) {
        const double size = 0.4 * std::pow(1.26, static_cast<double>(below(9)));
        Nozzle n =
            priced(ranged(name, size, between(0.8, 2), between(4, 8)), 1.0 + double(below(9)));
        if (oneIn(12)) n.pressureMin.reset();
        const double a = between(1.5, 2.5), b = between(2.6, 4);
        if (!oneIn(4))
            n.droplets = Sourced<std::vector<DropletBand>>({{bar(0.8), bar(a), DropletCategory::VC},
                                                            {bar(a), bar(b), DropletCategory::C},
                                                            {bar(b), bar(8), DropletCategory::M}});
        if (oneIn(2))
            n.drift =
                Sourced<std::vector<DriftBand>>({{bar(0.8), bar(a), 90}, {bar(a), bar(8), 50}});
        n.acceptUnchecked = oneIn(15);
        return n;
    }
    Job job() {
        const double usual = between(6, 14);
        Job j = build::job(lha(between(60, 220)), kmh(usual * between(1 - m_spread, 1)), kmh(usual),
                           kmh(usual * between(1, 1 + m_spread)));
        if (oneIn(4)) {
            j.rateLeast = Sourced<AreaRate>(j.rate->value * between(0.8, 1));
            j.rateMost = Sourced<AreaRate>(j.rate->value * between(1, 1.2));
        }
        if (oneIn(4)) j.droplets = {DropletCategory::C, DropletCategory::VC};
        if (oneIn(6)) j.droplets = {DropletCategory::M, DropletCategory::C};
        if (oneIn(8)) j.driftPercent = Sourced<double>(75);
        if (!oneIn(4)) j.area = Sourced<Area>(make<Area>(between(5, 200), Unit::Hectare));
        return j;
    }
    SeasonInputs season(std::size_t mostNozzles, std::size_t mostJobs, std::size_t fleet) {
        std::vector<Nozzle> nozzles;
        for (std::size_t n = mostNozzles / 2 + below(mostNozzles / 2 + 1); n > 0; --n)
            nozzles.push_back(nozzle("nozzle " + std::to_string(n)));
        std::vector<Machine> machines;
        std::vector<std::vector<Job>> jobs;
        for (std::size_t m = fleet; m > 0; --m) {
            machines.push_back(machine());
            jobs.emplace_back();
        }
        for (std::size_t j = mostJobs / 2 + below(mostJobs / 2 + 1); j > 0; --j) {
            Job one = job();
            if (oneIn(20)) one.pinnedNozzle = nozzles[below(nozzles.size())].name;
            jobs[below(jobs.size())].push_back(std::move(one));
        }
        return build::season(std::move(nozzles), machines, jobs);
    }
    SetWishes wishes(const SeasonInputs& inputs) {
        SetWishes out;
        for (const auto& nozzle : inputs.nozzles) {
            if (oneIn(15)) out.barred.push_back(nozzle.name);
            if (oneIn(20)) out.acceptUnchecked.push_back(nozzle.name);
            for (const auto& machine : inputs.machines)
                if (oneIn(6)) out.owned.push_back({machine.id, nozzle.name});
        }
        if (oneIn(2)) out.spares = between(0, 0.2);
        return out;
    }

  private:
    std::mt19937 m_random;
    double m_spread;
};

}  // namespace bw::build
