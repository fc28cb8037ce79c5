// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <compare>

namespace bw {

/// A number with a dimension, held in SI units. The exponents are those of liquid volume (V),
/// length (L), mass (M) and time (T).
///
/// Liquid volume is a base dimension of its own, so that a spray rate (m³ of liquid per m² of
/// ground) can never be taken for a length. Rate × speed × width is a flow, and the compiler
/// checks it. A bare double enters and leaves only through the named functions.
template <int V, int L, int M, int T>
class Quantity {
  public:
    constexpr Quantity() = default;
    /// From a number in SI units (m³, m, kg, s and what they make up; pressures gauge).
    static constexpr Quantity fromSi(double value) { return Quantity(value); }
    /// The number in SI units.
    constexpr double si() const { return m_si; }
    bool isFinite() const { return std::isfinite(m_si); }

    constexpr auto operator<=>(const Quantity&) const = default;
    constexpr Quantity operator-() const { return Quantity(-m_si); }
    constexpr Quantity& operator+=(Quantity o) {
        m_si += o.m_si;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity o) {
        m_si -= o.m_si;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) {
        return Quantity(a.m_si + b.m_si);
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b) {
        return Quantity(a.m_si - b.m_si);
    }
    friend constexpr Quantity operator*(Quantity a, double f) { return Quantity(a.m_si * f); }
    friend constexpr Quantity operator*(double f, Quantity a) { return Quantity(a.m_si * f); }
    friend constexpr Quantity operator/(Quantity a, double f) { return Quantity(a.m_si / f); }

  private:
    explicit constexpr Quantity(double value) : m_si(value) {}
    double m_si = 0.0;
};

template <int V, int L, int M, int T, int V2, int L2, int M2, int T2>
constexpr auto operator*(Quantity<V, L, M, T> a, Quantity<V2, L2, M2, T2> b) {
    if constexpr (V + V2 == 0 && L + L2 == 0 && M + M2 == 0 && T + T2 == 0) {
        return a.si() * b.si();
    } else {
        return Quantity<V + V2, L + L2, M + M2, T + T2>::fromSi(a.si() * b.si());
    }
}

template <int V, int L, int M, int T, int V2, int L2, int M2, int T2>
constexpr auto operator/(Quantity<V, L, M, T> a, Quantity<V2, L2, M2, T2> b) {
    if constexpr (V == V2 && L == L2 && M == M2 && T == T2) {
        return a.si() / b.si();
    } else {
        return Quantity<V - V2, L - L2, M - M2, T - T2>::fromSi(a.si() / b.si());
    }
}

using Length = Quantity<0, 1, 0, 0>;               ///< m
using Area = Quantity<0, 2, 0, 0>;                 ///< m²
using Duration = Quantity<0, 0, 0, 1>;             ///< s
using Speed = Quantity<0, 1, 0, -1>;               ///< m/s
using Pressure = Quantity<0, -1, 1, -2>;           ///< Pa, gauge
using Volume = Quantity<1, 0, 0, 0>;               ///< m³ of liquid
using Flow = Quantity<1, 0, 0, -1>;                ///< m³/s
using AreaRate = Quantity<1, -2, 0, 0>;            ///< m³ of liquid per m² of ground
using Mass = Quantity<0, 0, 1, 0>;                 ///< kg
using Density = Quantity<-1, 0, 1, 0>;             ///< kg per m³ of liquid
using MassRate = Quantity<0, -2, 1, 0>;            ///< kg per m² of ground (a nutrient)
using KinematicViscosity = Quantity<0, 2, 0, -1>;  ///< m²/s
/// Square-law loss: pressure lost per flow squared.
using SquareLoss = decltype(Pressure{} / (Flow{} * Flow{}));

}  // namespace bw
