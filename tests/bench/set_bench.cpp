// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <string>

#include "tests/support/season_builders.h"

namespace bw {
namespace {

using namespace build;

/// Two machines, jobs and nozzles as the random tests have them (invented).
SeasonInputs bigSeason(int jobs, int nozzles) {
    RandomSeasons random(3);
    std::vector<Nozzle> all;
    for (int n = 0; n < nozzles; ++n) all.push_back(random.nozzle("nozzle " + std::to_string(n)));
    std::vector<std::vector<Job>> ours(2);
    for (int j = 0; j < jobs; ++j) ours[static_cast<std::size_t>(j % 2)].push_back(random.job());
    return season(std::move(all), {selfPropelled100(), trailed28()}, ours);
}

/// The whole choice: matrix, sets, what cannot be covered and why, alternatives.
void ChooseSets(benchmark::State& state) {
    const SeasonInputs in =
        bigSeason(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
    SetWishes wishes;
    wishes.spares = 0.05;
    std::size_t sets = 0, uncovered = 0;
    for (auto _ : state) {
        const SetChoice choice = chooseSets(in, wishes);
        sets = choice.plan.sets.size();
        uncovered = choice.uncovered.size();
    }
    state.counters["sets"] = static_cast<double>(sets);
    state.counters["uncovered"] = static_cast<double>(uncovered);
}
BENCHMARK(ChooseSets)
    ->Args({10, 20})
    ->Args({50, 200})
    ->Args({100, 400})
    ->Unit(benchmark::kMillisecond);

/// The matrix alone.
void SeasonMatrix(benchmark::State& state) {
    const SeasonInputs in = bigSeason(50, 200);
    for (auto _ : state) benchmark::DoNotOptimize(reckonSeason(in));
}
BENCHMARK(SeasonMatrix)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace bw
