// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/season/set_matrix.h"

#include <algorithm>
#include <cmath>

namespace bw {
namespace {

constexpr double kWhole = 1e-9;  ///< a count this near to a whole one is that one

bool hasName(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

SetMatrix::SetMatrix(const SeasonReckoning& season, const SetWishes& wishes)
    : m_season(season), m_wishes(wishes) {
    findJobs();
    addColumns();
    buildTask();
}

void SetMatrix::findJobs() {
    const auto& all = m_season.inputs.jobs;
    double sum = 0.0;
    int known = 0;
    for (const auto& reckoning : m_season.jobs) {
        m_jobs.push_back(&*std::find_if(all.begin(), all.end(), [&](const StoredJob& stored) {
            return stored.id == reckoning.job;
        }));
        if (const auto area = bare(m_jobs.back()->job.area); area && area->si() > 0) {
            sum += in(*area, Unit::Hectare);
            ++known;
        }
    }
    for (const StoredJob* stored : m_jobs) {
        const auto area = bare(stored->job.area);
        const double otherwise = known > 0 ? sum / known : 1.0;
        m_weights.push_back(area && area->si() > 0 ? in(*area, Unit::Hectare) : otherwise);
    }
}

void SetMatrix::addColumns() {
    for (const auto& nozzle : m_season.inputs.nozzles) m_columns.push_back(&nozzle);
    for (const auto& nozzle : m_season.inputs.elsewhere) {
        const bool isPinned =
            std::any_of(m_season.jobs.begin(), m_season.jobs.end(), [&](const JobReckoning& r) {
                return r.verdict.elsewhere && r.verdict.nozzle == nozzle.name;
            });
        if (isPinned && !columnNamed(nozzle.name)) m_columns.push_back(&nozzle);
    }
}

std::optional<std::size_t> SetMatrix::columnNamed(const std::string& name) const {
    const auto it = std::find_if(m_columns.begin(), m_columns.end(),
                                 [&](const Nozzle* nozzle) { return nozzle->name == name; });
    if (it == m_columns.end()) return std::nullopt;
    return static_cast<std::size_t>(it - m_columns.begin());
}

const PairVerdict* SetMatrix::pair(std::size_t j, std::size_t n) const {
    const JobVerdict& v = verdict(j);
    if (n < m_season.inputs.nozzles.size()) return n < v.pairs.size() ? &v.pairs[n] : nullptr;
    return v.elsewhere && v.nozzle == nozzle(n).name ? &*v.elsewhere : nullptr;
}

bool SetMatrix::isAllowed(std::size_t j, std::size_t n) const {
    const auto& pinned = job(j).job.pinnedNozzle;
    if (m_task.barred[n] || !pair(j, n)) return false;
    return pinned.empty() || columnNamed(pinned) == n;
}

bool SetMatrix::isOwned(std::size_t m, std::size_t n) const {
    const OwnedSet set{machine(m).id, nozzle(n).name};
    return std::find(m_wishes.owned.begin(), m_wishes.owned.end(), set) != m_wishes.owned.end();
}

int SetMatrix::spares(std::size_t m, std::size_t n) const {
    if (isOwned(m, n)) return 0;
    const double wanted = m_wishes.spares * nozzleCount(machine(m).machine);
    return static_cast<int>(std::ceil(wanted - kWhole));
}

void SetMatrix::buildTask() {
    double dearest = 0.0;
    for (const Nozzle* nozzle : m_columns) {
        m_task.barred.push_back(hasName(m_wishes.barred, nozzle->name));
        dearest = std::max(dearest, valueOr(nozzle->price, 0.0));
    }
    m_task.spares.assign(nozzles(), 0.0);
    for (std::size_t m = 0; m < machines(); ++m)
        m_task.machines.push_back(coverMachine(m, dearest > 0 ? dearest : 1.0));
    for (std::size_t j = 0; j < jobs(); ++j) m_task.jobs.push_back(coverJob(j));
}

CoverMachine SetMatrix::coverMachine(std::size_t m, double unknownPrice) const {
    CoverMachine out;
    const Machine& aboard = machine(m).machine;
    for (std::size_t n = 0; n < nozzles(); ++n) {
        const double price = valueOr(nozzle(n).price, unknownPrice);
        out.cost.push_back(isOwned(m, n) ? 0.0 : nozzleCount(aboard) * price);
        if (m_wishes.spares > 0) out.spares.push_back(spares(m, n) * price);
    }
    if (m_wishes.isAllAboard && aboard.bodyPositions && aboard.bodyPositions->value > 0)
        out.positions = static_cast<std::size_t>(aboard.bodyPositions->value);
    return out;
}

CoverJob SetMatrix::coverJob(std::size_t j) const {
    CoverJob out;
    for (std::size_t m = 0; m < machines(); ++m)
        if (machine(m).id == m_season.jobs[j].machine) out.machine = m;
    for (std::size_t n = 0; n < nozzles(); ++n) {
        const PairVerdict* p = isAllowed(j, n) ? pair(j, n) : nullptr;
        const bool covers = p && !p->problem && p->standing == Standing::Covers;
        out.room.push_back(covers ? p->roomToSpare : std::nullopt);
    }
    return out;
}

}  // namespace bw
