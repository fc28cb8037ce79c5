// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_changes.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/season/job_verdict.h"
#include "core/window/window_ends.h"

namespace bw {
namespace {

constexpr double kTie = 1e-9;
constexpr double kCategory = 1.0 / static_cast<double>(ChoiceNames<DropletCategory>::names.size());

/// A change that might do, with the nozzle it is for.
struct Candidate {
    PlanChange change;
    const Nozzle* nozzle = nullptr;
};

double step(ChangeKind what, UnitSystem units) {
    const bool us = units == UnitSystem::Us;
    switch (what) {
        case ChangeKind::Speed:
            return 0.1 * info(displayUnit(units, Dimension::Speed)).inSi;
        case ChangeKind::Rate:
            return us ? 0.1 * info(Unit::GallonUsPerAcre).inSi : info(Unit::LitrePerHectare).inSi;
        case ChangeKind::Floor:
            return us ? info(Unit::Psi).inSi : 0.1 * info(Unit::Bar).inSi;
        default:
            return 0.0;
    }
}

double stepped(double value, double step, bool up) {
    return (up ? std::ceil(value / step - 1e-6) : std::floor(value / step + 1e-6)) * step;
}

/// The change with its figures stepped to the safe side; nothing if it has none to step.
std::optional<PlanChange> rounded(const PlanChange& change, UnitSystem units) {
    const double by = step(change.what, units);
    if (by == 0.0 || !change.value) return std::nullopt;
    PlanChange out = change;
    const bool isUp = change.bound == ChangeBound::Least || change.bound == ChangeBound::Between;
    out.value->si = stepped(change.value->si, by, isUp);
    if (out.to) out.to->si = stepped(change.to->si, by, false);
    if (!(out.value->si > 0) || (out.to && out.to->si < out.value->si)) return std::nullopt;
    return out;
}

/// Moves a speed or rate into the bounds of a change.
template <class Q>
void move(Known<Q>& field, const PlanChange& change, std::optional<Q> fallback = std::nullopt) {
    if (!field && !fallback) return;
    const double now = field ? field->value.si() : fallback->si();
    double moved = now;
    if (change.bound == ChangeBound::Most)
        moved = std::min(now, change.value->si);
    else if (change.bound == ChangeBound::Exactly)
        moved = change.value->si;
    else
        moved = std::max(now, change.value->si);
    if (change.to) moved = std::min(moved, change.to->si);
    if (moved != now) field = Sourced<Q>(Q::fromSi(moved));
}

class Seeker {
  public:
    Seeker(const Machine& machine, const Job& job, const std::vector<const Nozzle*>& nozzles,
           std::optional<UnitSystem> roundIn)
        : m_machine(machine), m_job(job), m_nozzles(nozzles), m_roundIn(roundIn) {}

    std::vector<PlanChange> seek() {
        const auto demand = demandOf(m_job);
        if (!demand) return {};
        m_demand = *demand;
        for (const Nozzle* nozzle : m_nozzles) {
            for (const auto& ends : endsInEachPosition(*nozzle)) addForEnds(*nozzle, ends);
            addFloor(*nozzle);
            addDrift(*nozzle);
        }
        std::stable_sort(
            m_candidates.begin(), m_candidates.end(),
            [](const auto& a, const auto& b) { return a.change.size < b.change.size; });
        std::vector<PlanChange> out;
        for (const auto& candidate : m_candidates) take(candidate, out);
        addDroplets(out);
        std::stable_sort(out.begin(), out.end(),
                         [](const PlanChange& a, const PlanChange& b) { return a.size < b.size; });
        return out;
    }

  private:
    bool covers(const Nozzle& nozzle, const PlanChange& change) const {
        Machine machine = m_machine;
        Job job = m_job;
        applyChange(change, machine, job);
        return pairVerdict(machine, nozzle, job).standing == Standing::Covers;
    }

    /// Keeps the first of its kind that does.
    void take(const Candidate& candidate, std::vector<PlanChange>& out) const {
        const PlanChange& change = candidate.change;
        if (std::any_of(out.begin(), out.end(),
                        [&](const PlanChange& other) { return other.what == change.what; }))
            return;
        if (!covers(*candidate.nozzle, change)) return;
        const auto round = m_roundIn ? rounded(change, *m_roundIn) : std::nullopt;
        out.push_back(round && covers(*candidate.nozzle, *round) ? *round : change);
    }

    void add(const Nozzle& nozzle, PlanChange change) {
        change.nozzle = nozzle.name;
        if (std::isfinite(change.size) && change.size > 0)
            m_candidates.push_back({std::move(change), &nozzle});
    }

    std::vector<WindowEnds> endsInEachPosition(const Nozzle& nozzle) const {
        std::vector<WindowEnds> out;
        const auto look = [&](const Machine& machine) {
            const auto ends = windowEnds(machine, nozzle, m_job);
            if (ends) out.push_back(*ends);
        };
        if (!hasRestrictor(m_machine) || !m_machine.restrictor.changeoverFlow) {
            look(m_machine);
            return out;
        }
        Machine moved = m_machine;
        for (const auto& [position, name] : ChoiceNames<RestrictorPosition>::names) {
            moved.restrictor.position = Sourced<RestrictorPosition>(position);
            look(moved);
        }
        return out;
    }

    void addForEnds(const Nozzle& nozzle, const WindowEnds& ends) {
        const bool isLow = ends.low && ends.low->si() > m_demand.slow.si() * (1 + kTie);
        const bool isHigh = ends.high && ends.high->si() < m_demand.fast.si() * (1 - kTie);
        if (!ends.empty) addSpeed(nozzle, ends, isLow, isHigh);
        if (isLow == isHigh) return;
        const double by = isLow ? *ends.low / m_demand.slow : *ends.high / m_demand.fast;
        const AreaRate now = isLow ? m_demand.rateLeast : m_demand.rateMost;
        const bool isRange = m_job.rateLeast || m_job.rateMost;
        const ChangeBound bound = !isRange ? ChangeBound::Exactly
                                  : isLow  ? ChangeBound::Least
                                           : ChangeBound::Most;
        add(nozzle, {ChangeKind::Rate, bound, {}, anyQuantity(by * now), {}, {}, std::abs(by - 1)});
    }

    /// Never over the job's own fast speed.
    void addSpeed(const Nozzle& nozzle, const WindowEnds& ends, bool isLow, bool isHigh) {
        if (isLow && m_job.fast && *ends.low > m_job.fast->value) return;
        PlanChange change;
        change.what = ChangeKind::Speed;
        if (isLow) {
            change.bound = ChangeBound::Least;
            change.value = anyQuantity(*ends.low);
            change.size = *ends.low / m_demand.slow - 1;
        }
        if (isHigh) {
            change.bound = isLow ? ChangeBound::Between : ChangeBound::Most;
            (isLow ? change.to : change.value) = anyQuantity(*ends.high);
            change.size = std::max(change.size, 1 - *ends.high / m_demand.fast);
        }
        if (isLow || isHigh) add(nozzle, std::move(change));
    }

    /// The floor down to what the least rate needs at the slow speed.
    void addFloor(const Nozzle& nozzle) {
        const auto& floor = m_machine.limits.pressureFloor;
        if (!floor || m_machine.pulsed.pressure) return;
        const auto model = WindowModel::make(m_machine, nozzle, m_job);
        if (!model) return;
        const Pressure need =
            model->sensorPressure(m_demand.rateLeast * m_demand.slow * model->width());
        if (!(need.si() > 0) || need >= floor->value) return;
        add(nozzle, {ChangeKind::Floor,
                     ChangeBound::Most,
                     {},
                     anyQuantity(need),
                     {},
                     {},
                     1 - need / floor->value});
    }

    void addDrift(const Nozzle& nozzle) {
        if (!m_job.driftPercent || !nozzle.drift) return;
        const double wish = m_job.driftPercent->value;
        std::set<double> percents;
        for (const auto& band : nozzle.drift->value)
            if (band.percent > 0 && band.percent < wish) percents.insert(band.percent);
        for (const double percent : percents)
            add(nozzle, {ChangeKind::Drift,
                         ChangeBound::Exactly,
                         {},
                         anyQuantity(percent),
                         {},
                         {},
                         1 - percent / wish});
    }

    /// The wish widened by categories next to it, the fewest first; finer ones after coarser.
    void addDroplets(std::vector<PlanChange>& out) const {
        if (m_job.droplets.empty()) return;
        std::vector<const Nozzle*> hopeful;
        for (const Nozzle* nozzle : m_nozzles)
            if (nozzle->droplets && covers(*nozzle, widened(8, 8))) hopeful.push_back(nozzle);
        for (PlanChange change : widerWishes()) {
            for (const Nozzle* nozzle : hopeful) {
                if (!covers(*nozzle, change)) continue;
                change.nozzle = nozzle->name;
                out.push_back(std::move(change));
                return;
            }
        }
    }
    /// Fewest categories added first; of as many, the coarser ones.
    std::vector<PlanChange> widerWishes() const {
        std::vector<PlanChange> out;
        for (int finer = 0; finer < 8; ++finer) {
            for (int coarser = 0; coarser < 8; ++coarser) {
                PlanChange change = widened(finer, coarser);
                if (change.size > 0) out.push_back(std::move(change));
            }
        }
        std::stable_sort(out.begin(), out.end(),
                         [](const PlanChange& a, const PlanChange& b) { return a.size < b.size; });
        return out;
    }
    PlanChange widened(int finer, int coarser) const {
        const auto [fine, coarse] =
            std::minmax_element(m_job.droplets.begin(), m_job.droplets.end());
        PlanChange change;
        change.what = ChangeKind::Droplets;
        int added = 0;
        for (const auto& [category, name] : ChoiceNames<DropletCategory>::names) {
            const int place = static_cast<int>(category);
            const bool isWished = std::find(m_job.droplets.begin(), m_job.droplets.end(),
                                            category) != m_job.droplets.end();
            const bool isNear = place >= static_cast<int>(*fine) - finer &&
                                place <= static_cast<int>(*coarse) + coarser;
            if (isWished || isNear) change.droplets.push_back(category);
            added += !isWished && isNear;
        }
        change.size = added * kCategory;
        return change;
    }

    const Machine& m_machine;
    const Job& m_job;
    const std::vector<const Nozzle*>& m_nozzles;
    std::optional<UnitSystem> m_roundIn;
    JobDemand m_demand;
    std::vector<Candidate> m_candidates;
};

void applyRate(const PlanChange& change, Job& job) {
    move(job.rate, change);
    move(job.rateLeast, change);
    move(job.rateMost, change);
}

}  // namespace

void applyChange(const PlanChange& change, Machine& machine, Job& job) {
    switch (change.what) {
        case ChangeKind::Speed: {
            const auto usual = bare(job.usual);
            move(job.slow, change, usual);
            move(job.fast, change, usual);
            move(job.usual, change);
            return;
        }
        case ChangeKind::Rate:
            applyRate(change, job);
            return;
        case ChangeKind::Floor:
            machine.limits.pressureFloor = Sourced<Pressure>(Pressure::fromSi(change.value->si));
            return;
        case ChangeKind::Droplets:
            job.droplets = change.droplets;
            return;
        case ChangeKind::Drift:
            job.driftPercent = Sourced<double>(change.value->si);
            return;
    }
}

std::vector<PlanChange> changesThatDo(const Machine& machine, const Job& job,
                                      const std::vector<const Nozzle*>& nozzles,
                                      std::optional<UnitSystem> roundIn) {
    return Seeker(machine, job, nozzles, roundIn).seek();
}

}  // namespace bw
