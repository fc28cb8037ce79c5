// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/case_numbers.h"
#include "core/diagnosis/knowledge.h"

namespace bw {

/// What the display does at steady speed.
enum class Shown { OnRate, StuckHigh, StuckLow, Hunting };

/// One way in which a cause may be present (how bad, which way round) and what would then be seen.
/// What is empty is not predicted.
struct Scenario {
    double weight = 1.0;  ///< among the scenarios of one cause, adding to 1
    std::string variant;  ///< likelihoods of "cause:variant" stand before those of "cause"
    Readings readings;
    Readings spread;  ///< how far a reading may lie off, beside its error (SI; one severity stands
                      ///< for those near it)
    double blur = 1.0;  ///< reading errors are this many times larger (a figure that swings)
    std::optional<Shown> shown;
    std::optional<double> real;                             ///< really sprayed over target
    bool uneven = false;                                    ///< parts of the boom differ
    std::map<std::string, std::string, std::less<>> words;  ///< check id → the answer it would give
};

/// All scenarios of one cause, and how much likelier the machine as described makes it.
struct Prediction {
    std::vector<Scenario> scenarios;  ///< at least one
    double priorFactor = 1.0;         ///< 0: cannot be on this machine
    std::optional<Fact> described;    ///< how the machine as described shows the complaint
};

/// Says what this machine, with this nozzle and job, would show under a cause. The rest of the
/// finder knows no physics.
class Predictor {
  public:
    virtual ~Predictor() = default;
    virtual Prediction predict(const Cause& cause) const = 0;
    /// The machine as described, with nothing wrong.
    virtual Scenario healthy() const = 0;
};

/// For callers whose pump or line is not known: the steady boom behind its sensor (nozzles, section
/// losses, floor, ceiling, meter, sensor, sensing kind). The supply side is one figure, the part of
/// the needed flow that arrives.
class BoomPredictor : public Predictor {
  public:
    explicit BoomPredictor(const CaseNumbers& numbers) : m_numbers(numbers) {}
    Prediction predict(const Cause& cause) const override;
    Scenario healthy() const override;

  private:
    void addScenarios(const Cause& cause, std::vector<Scenario>& out) const;
    CaseNumbers m_numbers;
};

/// The circuit where it is known, else the boom alone. Predictions are kept for the machines of the
/// last few cases, so that only a case's first answer works them out.
std::shared_ptr<const Predictor> predictorFor(const CaseRecord& record, const CaseNumbers& numbers);

/// Whether the machine can have what a cause or a check needs ("flow_meter", "loop", "restrictor",
/// "shown"). Unknown counts as yes.
bool machineHas(const std::vector<std::string>& needs, const CaseNumbers& numbers);

}  // namespace bw
