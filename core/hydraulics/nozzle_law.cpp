// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/hydraulics/nozzle_law.h"

#include <algorithm>
#include <cmath>

#include "core/model/checks.h"

namespace bw {
namespace {

struct Line {
    double slope;
    double offset;
};

/// Least squares of ln q on ln p, all rows alike.
Line logFit(const std::vector<FlowPoint>& rows) {
    double sumX = 0.0;
    double sumY = 0.0;
    for (const auto& row : rows) {
        sumX += std::log(row.pressure.si());
        sumY += std::log(row.flow.si());
    }
    const auto count = static_cast<double>(rows.size());
    const double meanX = sumX / count;
    const double meanY = sumY / count;
    double over = 0.0;
    double under = 0.0;
    for (const auto& row : rows) {
        const double x = std::log(row.pressure.si()) - meanX;
        over += x * (std::log(row.flow.si()) - meanY);
        under += x * x;
    }
    const double slope = over / under;
    return {slope, meanY - slope * meanX};
}

}  // namespace

Flow NozzleLaw::flow(Pressure pressure, double specificGravity) const {
    const double ratio = pressure / (specificGravity * m_pRef);
    if (ratio <= 0) return {};
    return m_qRef * (m_exponent == 0.5 ? std::sqrt(ratio) : std::pow(ratio, m_exponent));
}

Pressure NozzleLaw::pressure(Flow flow, double specificGravity) const {
    const double ratio = flow / m_qRef;
    if (ratio <= 0) return {};
    return specificGravity * m_pRef *
           (m_exponent == 0.5 ? ratio * ratio : std::pow(ratio, 1.0 / m_exponent));
}

bool NozzleLaw::isSquareRoot() const {
    return std::abs(m_exponent - 0.5) < 1e-12;
}

Result<NozzleLaw> nozzleLaw(const Nozzle& nozzle) {
    if (nozzle.table) {
        const auto& rows = nozzle.table->value;
        if (const auto problems = checkFlowTable(rows); !problems.empty()) return problems.front();
        const auto [slope, offset] = logFit(rows);
        const Pressure pRef = rows.front().pressure;
        NozzleLaw law(Flow::fromSi(std::exp(offset + slope * std::log(pRef.si()))), pRef, slope);
        double largest = 0.0;
        for (const auto& row : rows)
            largest = std::max(largest, std::abs(law.flow(row.pressure) / row.flow - 1.0));
        law.m_fit = NozzleLaw::Fit{rows.front().pressure, rows.back().pressure, largest};
        return law;
    }
    if (!nozzle.flow || nozzle.flow->value.si() <= 0) return error("nozzle_flow_missing", "flow");
    if (!nozzle.at || nozzle.at->value.si() <= 0) return error("nozzle_at_missing", "at");
    return NozzleLaw(nozzle.flow->value, nozzle.at->value, valueOr(nozzle.exponent, 0.5));
}

}  // namespace bw
