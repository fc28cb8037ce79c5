// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointF>
#include <QRectF>

#include "core/model/machine.h"

/// Places of the drawn circuit, in units of the drawing (pixels at a body of 12).
namespace bw::circuit {

inline constexpr double kWidth = 648;
inline constexpr double kHeight = 372;
inline constexpr double kMostScale = 1.7;
inline constexpr double kLineY = 182;
inline constexpr double kFeedY = 260;
inline constexpr double kSectionY = 310;
inline constexpr double kBoomLeft = 10;
inline constexpr double kBoomRight = 638;
inline constexpr double kAgitationY = 92;
inline constexpr double kBypassY = 52;
inline constexpr double kAgitationX = 238;
inline constexpr double kBypassX = 262;
inline constexpr double kDownX = 536;

inline constexpr QRectF kTank{8, 32, 84, 100};
inline constexpr QPointF kSuctionStrainer{102, kLineY};
inline constexpr QPointF kPump{182, kLineY};
inline constexpr QPointF kAgitation{160, kAgitationY};
inline constexpr QPointF kBypass{196, kBypassY};
inline constexpr QPointF kLineStrainer{300, kLineY};
inline constexpr QPointF kThrottle{350, kLineY};
inline constexpr QPointF kMeter{404, kLineY};
inline constexpr QPointF kRestrictor{470, kLineY};
inline constexpr QPointF kSensor{kDownX, kLineY};

/// A meter is drawn where one senses the rate, or where nobody knows yet.
inline bool hasMeterDrawn(const Machine& m) {
    return !m.senses || m.senses->value == Senses::Flow || m.senses->value == Senses::Both;
}

}  // namespace bw::circuit
