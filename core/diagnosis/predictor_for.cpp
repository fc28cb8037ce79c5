// SPDX-License-Identifier: GPL-3.0-or-later
#include <deque>
#include <map>

#include "core/diagnosis/circuit_predictor.h"

namespace bw {
namespace {

constexpr std::size_t kKept = 6;

/// Keeps what another predictor said of each cause.
class KeepingPredictor : public Predictor {
  public:
    explicit KeepingPredictor(std::unique_ptr<Predictor> from)
        : m_from(std::move(from)), m_healthy(m_from->healthy()) {}
    Scenario healthy() const override { return m_healthy; }
    Prediction predict(const Cause& cause) const override {
        Kept& kept = m_kept[cause.id];
        const std::pair<double, double> range{cause.severity.from, cause.severity.to};
        if (kept.prediction.scenarios.empty() || kept.range != range)
            kept = {range, m_from->predict(cause)};
        return kept.prediction;
    }

  private:
    struct Kept {
        std::pair<double, double> range;
        Prediction prediction;
    };
    std::unique_ptr<Predictor> m_from;
    Scenario m_healthy;
    mutable std::map<std::string, Kept> m_kept;
};

/// All that a prediction depends on.
struct Key {
    Machine machine;
    Nozzle nozzle;
    Job job;
    std::optional<Speed> speed;
    bool speedWasRead = false;
    bool operator==(const Key&) const = default;
};

}  // namespace

std::shared_ptr<const Predictor> predictorFor(const CaseRecord& record,
                                              const CaseNumbers& numbers) {
    thread_local std::deque<std::pair<Key, std::shared_ptr<const Predictor>>> last;
    Key key{record.machine, record.nozzle, record.job, numbers.speed, numbers.speedWasRead};
    for (const auto& [known, predictor] : last)
        if (known == key) return predictor;
    std::unique_ptr<Predictor> made = CircuitPredictor::make(record, numbers);
    if (!made) made = std::make_unique<BoomPredictor>(numbers);
    last.emplace_front(std::move(key), std::make_shared<KeepingPredictor>(std::move(made)));
    if (last.size() > kKept) last.pop_back();
    return last.front().second;
}

}  // namespace bw
