// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/diagnosis/predictor.h"

namespace bw {

/// What is wrong with a boom, as factors on the healthy one; the defaults are nothing wrong.
struct BoomFault {
    double nozzles = 1.0;       ///< flow of every nozzle at a pressure
    double sectionShare = 0.0;  ///< part of the nozzles that sit in the faulty section
    double sectionKeeps = 1.0;  ///< part of its flow that the faulty section keeps
    double leak = 0.0;          ///< leaves behind the meter unsprayed, of the need at its pressure
    double density = 1.0;       ///< weight of the liquid over the weight reckoned with
    double meter = 1.0;         ///< shown over true flow
    double sensor = 1.0;        ///< shown over true pressure
    double groundMeasured =
        1.0;                  ///< speed × width that the controller believes in, over the case's
    double groundTrue = 1.0;  ///< speed × width really covered, over the case's
    double supply = 1e9;      ///< the most that arrives, as a part of the need
    std::optional<double> floor =
        std::nullopt;  ///< instead of the machine's, as a part of the needed pressure
    std::optional<double> ceiling = std::nullopt;  ///< likewise
    bool hunts = false;
};

/// What is seen at steady speed once the loop has come to rest: flow held on target by the meter
/// (or pressure by the sensor), clamped to floor and ceiling, then to what arrives.
Scenario steadyBoom(const CaseNumbers& numbers, const BoomFault& fault);

}  // namespace bw
