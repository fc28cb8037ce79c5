// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/simulation/rate_loop.h"

namespace bw {
namespace {

constexpr int kKnots = 400;
constexpr int kHalvings = 40;  // to the place where the law changes

struct Knot {
    double control;
    CircuitState state;
    bool isCorner = false;  ///< the law changes here
};

/// Same law on both sides: the curve between is smooth.
bool isSameLaw(const CircuitState& a, const CircuitState& b) {
    return a.limitedBy == b.limitedBy && (a.sprayed.si() > 0) == (b.sprayed.si() > 0) &&
           (a.relief.si() > 0) == (b.relief.si() > 0);
}

void addWithBreak(std::vector<Knot>& knots, const Circuit& circuit, Knot next) {
    if (!knots.empty() && !isSameLaw(knots.back().state, next.state)) {
        Knot low = knots.back();
        Knot high = next;
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = 0.5 * (low.control + high.control);
            if (middle <= low.control || middle >= high.control) break;
            Knot between{middle, circuit.atControl(middle)};
            (isSameLaw(between.state, low.state) ? low : high) = between;
        }
        high.isCorner = true;
        if (high.control <= knots.back().control + 1e-9)
            knots.back().isCorner = true;
        else if (high.control >= next.control - 1e-9)
            next.isCorner = true;
        else
            knots.push_back(high);
    }
    knots.push_back(next);
}

/// Settings at which the control's own reach begins or ends.
std::array<double, 3> ends(const CircuitParts& parts) {
    return {parts.pump->leastSpeed, parts.pump->topSpeed, parts.leastOpening};
}
bool isEnd(const CircuitParts& parts, double control) {
    const auto at = ends(parts);
    return std::any_of(at.begin(), at.end(),
                       [&](double end) { return std::abs(end - control) < 1e-9; });
}

std::vector<double> grid(const CircuitParts& parts) {
    std::vector<double> out;
    for (int i = 0; i <= kKnots; ++i) out.push_back(static_cast<double>(i) / kKnots);
    for (const double at : ends(parts))
        if (at > 0 && at < 1) out.push_back(at);
    std::sort(out.begin(), out.end());
    const auto isClose = [](double a, double b) { return b - a < 1e-9; };
    out.erase(std::unique(out.begin(), out.end(), isClose), out.end());
    out.back() = 1.0;
    return out;
}

MonotoneCurve meteredCurve(const CircuitParts& parts) {
    const Circuit circuit(parts);
    std::vector<Knot> knots;
    for (const double u : grid(parts))
        addWithBreak(knots, circuit, {u, circuit.atControl(u), isEnd(parts, u)});
    std::vector<double> x;
    std::vector<double> y;
    std::vector<std::size_t> corners;
    for (const Knot& k : knots) {
        if (k.isCorner) corners.push_back(x.size());
        x.push_back(k.control);
        y.push_back(k.state.metered.si());
    }
    return {std::move(x), std::move(y), corners};
}

double leakAt(const CircuitParts& parts, double pressure) {
    return parts.manifoldLeak.conductance *
           std::sqrt(std::max(0.0, pressure) / parts.boom.specificGravity());
}

/// What leaves the manifold: sprayed and leaked, at steps of the root of its pressure.
void manifoldCurves(const CircuitParts& parts, double topPressure, LoopCurves& out) {
    std::vector<double> metered;
    std::vector<double> root;
    std::vector<double> sprayed;
    const double start =
        parts.manifoldLeak.conductance > 0 ? 0.0 : std::sqrt(parts.boom.valveLoss().si());
    const double top = std::max(std::sqrt(std::max(0.0, topPressure)), start + 1.0) * 1.25;
    for (int i = 0; i <= kKnots; ++i) {
        const double r = start + (top - start) * i / kKnots;
        const double boom = parts.boom.flowAt(Pressure::fromSi(r * r)).si();
        const double flow = i == 0 ? 0.0 : boom + leakAt(parts, r * r);
        if (i > 0 && !(flow > metered.back())) continue;  // nothing opens yet
        metered.push_back(flow);
        root.push_back(r);
        sprayed.push_back(boom);
    }
    if (metered.size() < 2) return;  // the boom is shut: the curves stay flat
    sprayed.front() = 0.0;
    out.rootPressure = MonotoneCurve(metered, std::move(root));
    out.sprayed = MonotoneCurve(std::move(metered), std::move(sprayed));
}

/// True sensor pressure that brings the reading to `shown`.
double trueFor(Pressure shown, double scale) {
    return scale > 0 ? shown.si() / scale : HUGE_VAL;
}

}  // namespace

LoopCurves LoopCurves::of(const LoopSetup& setup) {
    LoopCurves out;
    const CircuitParts parts = setup.running();
    out.metered = meteredCurve(parts);
    manifoldCurves(parts, Circuit(parts).atControl(1.0).sensor.si(), out);
    const auto flowAt = [&](double p) {
        return std::isfinite(p) ? parts.boom.flowAt(Pressure::fromSi(p)).si() + leakAt(parts, p)
                                : HUGE_VAL;
    };
    const double scale = setup.meter.sensorScale;
    if (setup.floor)
        out.leastControl = out.metered.firstReaching(flowAt(trueFor(*setup.floor, scale)));
    if (setup.ceiling)
        out.mostControl = out.metered.lastNotOver(flowAt(trueFor(*setup.ceiling, scale)));
    return out;
}

}  // namespace bw
