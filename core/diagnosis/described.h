// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/predictor.h"

namespace bw {

/// What the machine's own description says about a cause.
enum class Described { Nothing, Shows, DoesNotShow };

/// `what`: a cause's `asIs`.
Described describes(const std::string& what, const CaseNumbers& numbers);
/// The sum by which the machine as described shows the complaint; only where it does.
Fact describedFact(const std::string& what, const CaseNumbers& numbers);
/// How much likelier the description makes a cause than a hidden fault.
double describedFactor(Described said, const Cause& cause, const CaseNumbers& numbers);
/// Weights that add to 1: the machine as described (if it is the first) has all that makes the
/// cause likelier than a hidden fault, the rest share what is left.
void shareWeights(std::vector<Scenario>& scenarios, bool firstIsDescribed, double priorFactor);
/// Fills what a prediction takes from the description: factor, fact, weights. The scenarios stand
/// in `out`; where a limit as described shows the complaint, the healthy machine is put first.
void describe(const Cause& cause, const CaseNumbers& numbers, const Scenario& asDescribed,
              Prediction& out);

}  // namespace bw
