// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/speed_window/window_study.h"

#include <algorithm>

#include "core/model/nozzle_sizes.h"
#include "ui/kit/chart_panel.h"

namespace bw {
namespace {

constexpr int kCurvePoints = 160, kRibbonPoints = 24;
constexpr int kCurves = 7;  ///< curve 1 is the one in hand

StudiedNozzle studiedNozzle(const Machine& machine, const Job& job, const Nozzle& nozzle,
                            std::size_t place, UnitSystem units) {
    StudiedNozzle out;
    out.nozzle = nozzle;
    out.style = 2 + static_cast<int>(place) % kCurves;
    for (const auto& set : machine.setsAboard) {
        if (set.nozzle == nozzle.name) out.position = set.position;
    }
    auto model = WindowModel::make(machine, nozzle, job);
    if (!model) {
        out.problem = model.problem();
        return out;
    }
    out.window = model->window(units);
    out.model = std::move(model).value();
    return out;
}

/// How many candidates come before by name: whatever their order of the moment, a nozzle keeps its
/// colour and dash.
std::size_t placeByName(const std::vector<Nozzle>& candidates, const Nozzle& nozzle) {
    return static_cast<std::size_t>(
        std::count_if(candidates.begin(), candidates.end(),
                      [&](const Nozzle& other) { return other.name < nozzle.name; }));
}

/// What keeps the machine or the job from being reckoned with, whatever the nozzle.
std::optional<Problem> ownProblem(const Machine& machine, const Job& job) {
    const auto model = WindowModel::make(machine, builtInNozzles().front(), job);
    return model ? std::nullopt : std::optional(model.problem());
}

void placeAxes(WindowStudy& study) {
    const CurveExtent extent = extentOf(study.model(), study.window());
    const double from = study.x(extent.from), to = study.x(extent.to);
    std::tie(study.xFrom, study.xTo) = niceRange(from, to, 7);
    study.speedTicks = niceTicks(study.xFrom, study.xTo, 7);
    study.pressureTo = niceRange(0.0, study.y(extent.top), 7).second;
    study.rateTo = niceRange(0.0, study.rate(extent.rateTop), 6).second;
}

/// Where a nozzle's curve meets a pressure limit, in the reader's unit; `otherwise` without it.
double speedOf(const WindowStudy& study, const StudiedNozzle& nozzle, Limit limit,
               double otherwise) {
    for (const auto& l : nozzle.window->limits) {
        if (l.limit == limit) return study.x(l.speed);
    }
    return otherwise;
}

void drawCurves(WindowStudy& study) {
    // At a standstill there is no rate to hold: start just off it.
    const Speed from = study.speedAt(std::max(study.xFrom, 0.01 * study.xTo));
    const Speed to = study.speedAt(study.xTo);
    for (auto& n : study.nozzles) {
        if (n.model) n.curve = operatingCurve(*n.model, from, to, kCurvePoints);
    }
    study.rates = rateBand(study.model(), from, to, kCurvePoints / 2);
    for (const auto& p : pumpReach(study.model(), from, to, kCurvePoints / 2))
        study.fed.emplace_back(study.x(p.speed), study.y(p.sensorPressure));
    study.droplets = dropletStretches(study.model());
    const Speed least = study.speedAt(speedOf(study, study.hand(), Limit::PressureFloor, 0.0));
    Speed most = to;
    for (const auto& l : study.window().limits) {
        if (l.pins && l.side == Side::High) most = std::min(most, l.speed);
    }
    for (const auto& s : study.droplets) {
        const Speed start = std::max({s.from, least, from});
        const Speed end = std::min({s.to, most, to});
        if (start >= end) continue;
        RibbonStretch stretch{s.category, {}};
        for (const auto& p : operatingCurve(study.model(), start, end, kRibbonPoints))
            stretch.points.emplace_back(study.x(p.speed), study.y(p.sensorPressure));
        study.ribbon.push_back(std::move(stretch));
    }
}

}  // namespace

std::vector<QPointF> WindowStudy::pressurePoints(const StudiedNozzle& nozzle) const {
    std::vector<QPointF> out;
    const double end = speedOf(*this, nozzle, Limit::PressureCeiling, xTo) * (1 + 1e-9);
    for (const auto& p : nozzle.curve) {
        if (x(p.speed) <= end) out.emplace_back(x(p.speed), y(p.sensorPressure));
    }
    return out;
}

std::vector<QPointF> WindowStudy::ratePoints(const StudiedNozzle& nozzle) const {
    std::vector<QPointF> out;
    for (const auto& p : nozzle.curve) out.emplace_back(x(p.speed), rate(p.rate));
    return out;
}

WindowStudy studied(const Machine* machine, const Job* job, const NumberStyle& style,
                    const std::vector<Nozzle>& candidates, const std::string& inHand) {
    WindowStudy study;
    study.style = style;
    if (!machine) return study;
    study.machine = *machine;
    study.state = WindowStudy::State::NoJob;
    if (!job) return study;
    study.job = *job;
    if (auto problem = ownProblem(*machine, *job)) {
        study.problem = std::move(*problem);
        study.state = WindowStudy::State::Refused;
        return study;
    }
    study.state = WindowStudy::State::NoNozzle;
    for (const auto& nozzle : candidates) {
        if (nozzle.name == inHand) study.inHand = study.nozzles.size();
        study.nozzles.push_back(
            studiedNozzle(*machine, *job, nozzle, placeByName(candidates, nozzle), style.units));
    }
    if (study.nozzles.empty()) return study;
    if (study.hand().problem) {
        study.problem = *study.hand().problem;
        study.state = WindowStudy::State::Refused;
        return study;
    }
    study.state = WindowStudy::State::Ready;
    placeAxes(study);
    drawCurves(study);
    return study;
}

std::string shortName(const Nozzle& nozzle) {
    if (!nozzle.family.empty()) return nozzle.family;
    std::string name = nozzle.name;
    const std::string tail = " " + nozzle.sizeCode;
    if (!nozzle.sizeCode.empty() && name.ends_with(tail)) name.resize(name.size() - tail.size());
    return name;
}

}  // namespace bw
