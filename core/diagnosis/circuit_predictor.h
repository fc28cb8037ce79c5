// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "core/diagnosis/predictor.h"
#include "core/diagnosis/steady_circuit.h"
#include "core/simulation/fault.h"

namespace bw {

/// The whole spray line with its loop: what every reading would be under a cause, from the same
/// equations and the same injected faults as the simulation, at as many severities as it takes for
/// the readings to change little from one to the next.
class CircuitPredictor : public Predictor {
  public:
    /// Nothing where pump, nozzle, job or speed are not known well enough to solve the line. The
    /// loop's own numbers that are not known take the start values meant for the running machine.
    static std::unique_ptr<CircuitPredictor> make(const CaseRecord& record,
                                                  const CaseNumbers& numbers);
    Prediction predict(const Cause& cause) const override;
    Scenario healthy() const override { return m_healthy; }
    /// As `predict`, with another fault besides; the description is left out.
    std::vector<Scenario> together(const Cause& cause, const Fault& other) const;

  private:
    struct Variant;
    CircuitPredictor(CaseNumbers numbers, LoopSetup setup);
    std::vector<Variant> variantsOf(const Cause& cause) const;
    std::optional<Scenario> at(const Variant& variant, const Cause& cause, double severity) const;
    std::vector<Scenario> scan(const Variant& variant, const Cause& cause) const;
    std::vector<Scenario> all(const Cause& cause, double& feltPart) const;
    bool isFelt(const Scenario& s) const;

    CaseNumbers m_numbers;
    LoopSetup m_setup;
    Speed m_speed;  ///< as driven with nothing wrong
    Scenario m_healthy;
    std::optional<Fault> m_other;
};

}  // namespace bw
