// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/base/problem.h"
#include "core/window/speed_window.h"

namespace bw {

/// Advice in words: a heading and sentences, all facts "advice.…".
struct Advice {
    Fact title;
    std::vector<Fact> body;
    bool asksForWork = false;  ///< what is set now is not what is advised
};

/// The pressure floor: recommended against set. Nothing for pulsed nozzles.
std::optional<Advice> floorAdvice(const WindowModel& model, const SpeedWindow& window);
/// The restrictor valve, with the reason that fits the machine; nothing where none is fitted.
std::optional<Advice> restrictorAdvice(const WindowModel& model, const SpeedWindow& window);

/// What the meter sees with sections shut, at the usual speed, "sections.…". Nothing with one
/// section, without a meter, or without its lowest flow.
std::vector<Fact> sectionFacts(const WindowModel& model, const SpeedWindow& window);

/// What the rate is at a speed outside, and what that makes of the dose.
struct Outside {
    OperatingPoint point;
    Fact title;  ///< "Outside: 178 L/ha at 5 km/h"
    std::vector<Fact> body;
};
/// An example past each limit that pins the rate: the job's own slow or fast speed if it lies
/// there, else the next whole speed. Low side first; whole numbers are those of `units`.
std::vector<Outside> outsideExamples(const WindowModel& model, const SpeedWindow& window,
                                     UnitSystem units);
/// Where nothing senses the rate: what the slow and the fast speed get while the pressure for the
/// usual speed stays set. Both empty if the job has one speed.
std::vector<Fact> leftAtUsual(const WindowModel& model, UnitSystem units);

/// "This is 19 % more spray, and …" (caution C16) or "… less product …" (C17) for a rate as a part
/// of the one planned; nothing within half a percent.
std::optional<Fact> doseFact(double rateRatio, UnitSystem units);

/// How things stand at one speed, "point.…": on rate, past which limits, or how far off.
Fact pointFact(const OperatingPoint& point);
/// The same, and where the rate holds, whether the suction cuts the pump's flow all the while.
Fact pointFact(const WindowModel& model, const OperatingPoint& point);
/// Which limits are passed there, whatever the rate; only for a point that passes some.
Fact pastFact(const OperatingPoint& point);
/// As pointFact for a table cell, "point.…_shortly".
Fact shortPointFact(const OperatingPoint& point);

}  // namespace bw
