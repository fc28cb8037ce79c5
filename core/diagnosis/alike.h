// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/evidence.h"

namespace bw {

/// Causes that no reading can part on this machine.
struct AlikeGroup {
    std::string id;                          ///< the shipped group's or the leading cause's
    std::vector<const Hypothesis*> members;  ///< most likely first
};

/// Whether no reading parts two causes at the severities that the evidence leaves: nearly all that
/// is left of each finds, within the error of every reading, a way in which the other may be
/// present.
bool areAlike(const Hypothesis& one, const Hypothesis& other);

/// All causes in play, and something else, as groups: those that the knowledge puts together, and
/// those that are alike on this machine as the leading cause of a group. Most likely group first.
std::vector<AlikeGroup> alikeGroups(const Evidence& evidence);

}  // namespace bw
