// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/pump_curve.h"

namespace bw {

double curveFall(Pressure shutOff, const std::vector<CurvePoint>& curve) {
    double over = 0.0;
    double under = 0.0;
    for (const auto& point : curve) {
        const double square = point.flow.si() * point.flow.si();
        over += (shutOff - point.pressure).si() * square;
        under += square * square;
    }
    return under > 0 ? over / under : 0.0;
}

}  // namespace bw
