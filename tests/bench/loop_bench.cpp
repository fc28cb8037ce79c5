// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <cmath>

#include "core/simulation/simulate.h"
#include "tests/support/cvode_loop.h"
#include "tests/support/loop_machines.h"

namespace bw {
namespace {

using namespace build;

constexpr double kSeconds = 3600;

/// "simulated" is simulated seconds per second: how many times real time.
void tell(benchmark::State& state) {
    state.counters["simulated"] = benchmark::Counter(
        kSeconds * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

/// One hour with all noise, stiction and dead time, set-up of the curves included.
void LoopOneHour(benchmark::State& state) {
    const LoopSetup setup = state.range(0) == 0 ? lowRate100().setup() : trailedCase().setup();
    for (auto _ : state) {
        RateLoop loop(setup);
        for (int i = 0; i < 180000; ++i) benchmark::DoNotOptimize(loop.step());
    }
    tell(state);
}
BENCHMARK(LoopOneHour)->Arg(0)->Arg(1);

void LeverChange(benchmark::State& state) {
    const LoopSetup setup = state.range(0) == 0 ? lowRate100().setup() : trailedCase().setup();
    RateLoop loop(setup);
    for (auto _ : state) loop.change(setup);
}
BENCHMARK(LeverChange)->Arg(0)->Arg(1);

#ifdef BW_HAS_CVODE

/// Stop and go for an hour, as a differential equation: ours, then CVODE's at the tolerance
/// that comes as near to the exact solution as ours does (the counter "gap", parts of the target).
/// No dead band: where it is entered hangs on a hair, and one such event would be the whole gap.
LoopSetup smoothTrailed() {
    LoopSetup setup = smoothed(trailedCase().setup());
    setup.control.deadBand = 0;
    return setup;
}

Drive headlands(const LoopSetup& setup) {
    return Drive::stopGo(setup.usual, 0.6 * setup.usual, Duration::fromSi(25), 0.2);
}

double gapToExact(const LoopSetup& setup, const std::vector<double>& flows) {
    CvodeLoop exact(setup, headlands(setup), 1e-7);
    double worst = 0;
    for (std::size_t i = 0; i < flows.size(); ++i) {
        if (!exact.to(0.1 * static_cast<double>(i + 1))) return std::nan("");  // no judge, no gap
        worst = std::max(worst, std::abs(flows[i] - exact.flow()) / setup.need.flow.si());
    }
    return worst;
}

void SmoothLoopOurs(benchmark::State& state) {
    const LoopSetup setup = smoothTrailed();
    const Drive drive = headlands(setup);
    std::vector<double> flows;
    for (auto _ : state) {
        flows.clear();
        RateLoop loop(setup);
        for (int i = 1; i <= 180000; ++i) {
            loop.setSpeed(drive.at(loop.sample().time));
            loop.step();
            if (i % 5 == 0) flows.push_back(loop.sample().metered.si());
        }
    }
    tell(state);
    state.counters["gap"] = gapToExact(setup, flows);
}
BENCHMARK(SmoothLoopOurs);

void SmoothLoopCvode(benchmark::State& state) {
    const LoopSetup setup = smoothTrailed();
    const double tolerance = std::pow(10.0, -static_cast<double>(state.range(0)));
    std::vector<double> flows;
    for (auto _ : state) {
        flows.clear();
        CvodeLoop loop(setup, headlands(setup), tolerance);
        for (int i = 1; i <= 36000; ++i) {
            loop.to(0.1 * i);
            flows.push_back(loop.flow());
        }
    }
    tell(state);
    state.counters["gap"] = gapToExact(setup, flows);
}
BENCHMARK(SmoothLoopCvode)->DenseRange(2, 6);

#endif

}  // namespace
}  // namespace bw
