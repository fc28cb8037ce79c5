// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/unit.h"

/// What the sums take where a profile says nothing. Judgement, every one, unless a source stands
/// beside it; what uses one names it as assumed by the program (core/window/rests_on.h).
namespace bw::program {

inline constexpr double kDutyLeast = 0.2;
inline constexpr double kDutyMost = 1.0;
inline const Pressure kSuctionAvailable = make<Pressure>(0.6, Unit::Bar);
inline constexpr double kDischargeCoefficient = 0.62;  ///< sharp edge, from memory
/// A meter behind a narrowed restrictor reads from this part of the changeover flow.
inline constexpr double kNarrowedPart = 0.25;

}  // namespace bw::program
