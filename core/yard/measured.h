// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "core/base/problem.h"
#include "core/units/quantity.h"

namespace bw {

/// A reading, or what was worked out from readings, with its standard uncertainty (one standard
/// deviation, 0 or more). Twice that holds the true value about 19 times in 20.
template <class T>
struct Measured {
    T value{};
    T uncertainty{};
};

/// How far readings taken in the yard usually lie off, as standard deviations. Judgement, every
/// one: a dial gauge read to half a mark, a stopwatch worked by hand, a jug with marks.
struct ReadingErrors {
    Pressure gauge = Pressure::fromSi(5000);       ///< 0.05 bar
    double flow = 0.01;                            ///< part of a flow on the display
    double tankVolume = 0.005;                     ///< part of a volume weighed or from a can
    Volume jug = Volume::fromSi(1e-5);             ///< 10 mL
    Duration watch = Duration::fromSi(0.3);        ///< start and stop by hand
    Length course = Length::fromSi(0.1);           ///< pacing off with a tape
    Speed shownSpeed = Speed::fromSi(0.05 / 3.6);  ///< half of the last digit, 0.1 km/h
};

inline Measured<Flow> flowReading(Flow flow, const ReadingErrors& errors = {}) {
    return {flow, flow * errors.flow};
}
inline Measured<Pressure> gaugeReading(Pressure pressure, const ReadingErrors& errors = {}) {
    return {pressure, errors.gauge};
}
inline Measured<Volume> tankReading(Volume volume, const ReadingErrors& errors = {}) {
    return {volume, volume * errors.tankVolume};
}
inline Measured<Duration> watchReading(Duration time, const ReadingErrors& errors = {}) {
    return {time, errors.watch};
}

/// One input of a sum: its number (SI) and standard uncertainty.
struct UncertainNumber {
    double value = 0.0;
    double uncertainty = 0.0;
};
template <class T>
UncertainNumber bareNumber(const Measured<T>& m) {
    if constexpr (std::is_same_v<T, double>)
        return {m.value, m.uncertainty};
    else
        return {m.value.si(), m.uncertainty.si()};
}

/// Value and standard uncertainty of `f` of independent readings, first order: each is moved by
/// its own uncertainty to both sides, and the half differences add as squares.
UncertainNumber propagate(const std::function<double(const std::vector<double>&)>& f,
                          const std::vector<UncertainNumber>& readings);

template <class T>
Measured<T> measuredFrom(const std::function<double(const std::vector<double>&)>& f,
                         const std::vector<UncertainNumber>& readings) {
    const UncertainNumber out = propagate(f, readings);
    if constexpr (std::is_same_v<T, double>)
        return {out.value, out.uncertainty};
    else
        return {T::fromSi(out.value), T::fromSi(out.uncertainty)};
}

}  // namespace bw
