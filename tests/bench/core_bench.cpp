// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include "core/hydraulics/boom_network.h"
#include "core/window/window_ends.h"
#include "tests/support/builders.h"

namespace bw {
namespace {

using namespace build;

Job wheat() {
    Job j = job(gpa(12), mph(9), mph(11.5), mph(12.5));
    j.droplets = {DropletCategory::M, DropletCategory::C};
    return j;
}

/// Model and whole answer, as the Speed window page asks for it.
void WholeWindow(benchmark::State& state) {
    const Machine m = selfPropelled100();
    const Nozzle n = lowDrift04();
    const Job j = wheat();
    for (auto _ : state) benchmark::DoNotOptimize(speedWindow(m, n, j));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(WholeWindow);

/// The ends alone, as the season's matrix, the ranges of assumed values and the ways out ask.
void EndsOfWindow(benchmark::State& state) {
    const Machine m = selfPropelled100();
    const Nozzle n = lowDrift04();
    const Job j = wheat();
    for (auto _ : state) benchmark::DoNotOptimize(windowEnds(m, n, j));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(EndsOfWindow);

/// What really happens at one speed: each step of a dragged cursor.
void PointOfTheCursor(benchmark::State& state) {
    const auto model = WindowModel::make(selfPropelled100(), lowDrift04(), wheat()).value();
    for (auto _ : state) benchmark::DoNotOptimize(model.at(mph(11)));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(PointOfTheCursor);

void CircuitClosedForm(benchmark::State& state) {
    const Circuit circuit(circuitParts(selfPropelled100(), nozzleLaw(lowDrift04()).value(), 1.0,
                                       RestrictorPosition::Narrowed)
                              .value());
    for (auto _ : state) benchmark::DoNotOptimize(circuit.atControl(0.8));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(CircuitClosedForm);

void CircuitByRoot(benchmark::State& state) {
    const Circuit circuit(circuitParts(trailed28(), nozzleLaw(lowDrift03()).value(), 1.0,
                                       RestrictorPosition::FullBore)
                              .value());
    for (auto _ : state) benchmark::DoNotOptimize(circuit.atControl(0.8));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(CircuitByRoot);

void BoomOf144Nozzles(benchmark::State& state) {
    BoomPipe boom{144, metres(0.25), {.bore = metres(0.02)}, {36, 108}, false};
    const NozzleLaw law(lpm(0.8), bar(3));
    for (auto _ : state) benchmark::DoNotOptimize(boomEvenness(boom, law, bar(3)));
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(BoomOf144Nozzles);

}  // namespace
}  // namespace bw

BENCHMARK_MAIN();
