// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/model/nozzle.h"
#include "core/units/quantity.h"

namespace bw {

/// Flow through one nozzle: q = qRef · (p / (SG · pRef))^n. Flow depends on p/ρ, so density carries
/// the same exponent. From one rating with an exponent (0.5 unless given), or fitted to a table.
class NozzleLaw {
  public:
    NozzleLaw(Flow qRef, Pressure pRef, double exponent = 0.5)
        : m_qRef(qRef), m_pRef(pRef), m_exponent(exponent) {}

    /// Flow at a nozzle pressure (≥ 0) with a liquid of `specificGravity` (> 0).
    Flow flow(Pressure pressure, double specificGravity = 1.0) const;
    /// Nozzle pressure that gives a flow (≥ 0).
    Pressure pressure(Flow flow, double specificGravity = 1.0) const;

    Flow qRef() const { return m_qRef; }
    Pressure pRef() const { return m_pRef; }
    double exponent() const { return m_exponent; }
    /// The square-root law to within rounding: closed forms of the boom hold.
    bool isSquareRoot() const;
    /// Same nozzle passing `factor` times the flow at every pressure (wear, blockage, another
    /// size).
    NozzleLaw scaled(double factor) const { return {m_qRef * factor, m_pRef, m_exponent}; }

    /// For a fit: the pressures between which the table stands, and the largest relative miss of a
    /// row.
    struct Fit {
        Pressure from;
        Pressure to;
        double largestMiss = 0.0;
    };
    const std::optional<Fit>& fit() const { return m_fit; }

  private:
    friend Result<NozzleLaw> nozzleLaw(const Nozzle& nozzle);
    Flow m_qRef;
    Pressure m_pRef;
    double m_exponent;
    std::optional<Fit> m_fit;
};

/// The law of a nozzle. Problems: nozzle_flow_missing, nozzle_at_missing, nozzle_table_too_short,
/// nozzle_table_not_rising (each with its field in `where`).
Result<NozzleLaw> nozzleLaw(const Nozzle& nozzle);

}  // namespace bw
