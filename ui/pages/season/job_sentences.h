// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/season/job_verdict.h"
#include "core/text/sentences.h"

namespace bw {

/// What is said of a job with a nozzle: the sentence of the speed window, with the valve where it
/// serves the job, and what an off rate does to the dose. A problem where nothing can be reckoned.
QString pairSentence(const Machine& machine, const Nozzle& nozzle, const Job& job,
                     const Sentences& sentences, const NumberStyle& style);
/// The sentence of the dose at an off rate, empty within half a percent: "At 8 km/h: 180 L/ha. This
/// is 20 % more spray …".
QString offSentence(const PairVerdict& pair, const Sentences& sentences, const NumberStyle& style);

}  // namespace bw
