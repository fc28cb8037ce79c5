// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace bw {

/// How a root search ended.
struct Root {
    double x = 0.0;
    int steps = 0;
    bool isBracketed = false;  ///< false: no sign change; `x` is the nearer end
};

/// Root of a rising function between `low` and `high`, to the last digits of a double.
template <class F>
Root risingRoot(F&& f, double low, double high) {
    constexpr int kBits = 50;
    constexpr std::uintmax_t kMostSteps = 200;
    const double atLow = f(low);
    if (atLow >= 0) return {low, 1, atLow == 0};
    const double atHigh = f(high);
    if (atHigh <= 0) return {high, 2, atHigh == 0};
    std::uintmax_t steps = kMostSteps;
    const auto ends = boost::math::tools::toms748_solve(
        f, low, high, atLow, atHigh, boost::math::tools::eps_tolerance<double>(kBits), steps);
    // The end with the smaller miss, so that a root at an end of the bracket stays exact.
    const double x = std::abs(f(ends.first)) <= std::abs(f(ends.second)) ? ends.first : ends.second;
    return {x, static_cast<int>(steps) + 2, true};
}

}  // namespace bw
