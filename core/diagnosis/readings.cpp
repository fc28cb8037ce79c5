// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagnosis/readings.h"

#include <algorithm>
#include <cmath>

namespace bw {

Dimension dimensionOf(Reading reading) {
    switch (reading) {
        case Reading::SensorPressure:
        case Reading::GaugePressure:
        case Reading::PumpPressure:
        case Reading::SuctionVacuum:
            return Dimension::Pressure;
        case Reading::ControlPosition:
            return Dimension::None;
        case Reading::ShownFlow:
        case Reading::CatchGood:
        case Reading::CatchWeak:
            return Dimension::Flow;
        case Reading::ShownRate:
            return Dimension::AreaRate;
        case Reading::RightFrom:
            return Dimension::Speed;
    }
    return Dimension::None;
}

double readingError(Reading reading, double size) {
    const double part = std::abs(size);
    switch (reading) {
        case Reading::SensorPressure:
            return std::max(0.05 * part, 7e3);
        case Reading::GaugePressure:
            return std::max(0.045 * part, 7e3);
        case Reading::PumpPressure:
            return std::max(0.08 * part, 2e4);
        case Reading::SuctionVacuum:
            return std::max(0.1 * part, 4e3);
        case Reading::ControlPosition:
            return 0.08;
        case Reading::ShownFlow:
        case Reading::CatchGood:
        case Reading::CatchWeak:
            return std::max(0.03 * part, 2e-7);  // 0.012 L/min
        case Reading::ShownRate:
            return std::max(0.03 * part, 1e-7);  // 1 L/ha
        case Reading::RightFrom:
            return std::max(0.06 * part, 0.03);
    }
    return part;
}

}  // namespace bw
