// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdint>

namespace bw {

/// A generator of our own (the mixing of Steele, Lea and Flood, "Fast splittable pseudorandom
/// number generators", 2014), so that a seed means the same numbers with every compiler.
class Generator {
  public:
    explicit Generator(std::uint64_t seed) : m_state(seed) {}
    std::uint64_t next() {
        std::uint64_t z = (m_state += 0x9e3779b97f4a7c15ULL);
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31U);
    }
    /// Even over 0 to 1, neither end.
    double uniform() { return (static_cast<double>(next() >> 32U) + 0.5) * kStep; }
    /// Mean 0, variance 1: the sum of 12 uniforms less 6. Added as integers, so without rounding.
    double normal() {
        std::uint64_t sum = 6;  // 12 halves: each uniform is the middle of its cell
        for (int i = 0; i < 6; ++i) {
            const std::uint64_t two = next();
            sum += (two >> 32U) + (two & 0xffffffffULL);
        }
        return static_cast<double>(sum) * kStep - 6.0;
    }

  private:
    static constexpr double kStep = 1.0 / 4294967296.0;
    std::uint64_t m_state;
};

/// Noise with a memory (first order), variance 1, started at 0.
class SlowNoise {
  public:
    /// `memory` and `step` in s, `memory` > 0.
    SlowNoise(double memory, double step)
        : m_keep(std::exp(-step / memory)), m_add(std::sqrt(1 - m_keep * m_keep)) {}
    double next(Generator& generator) {
        m_value = m_keep * m_value + m_add * generator.normal();
        return m_value;
    }

  private:
    double m_keep;
    double m_add;
    double m_value = 0.0;
};

}  // namespace bw
