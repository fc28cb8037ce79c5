// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yard/measured.h"

namespace bw {

UncertainNumber propagate(const std::function<double(const std::vector<double>&)>& f,
                          const std::vector<UncertainNumber>& readings) {
    std::vector<double> at;
    for (const auto& reading : readings) at.push_back(reading.value);
    double variance = 0.0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        std::vector<double> up = at;
        std::vector<double> down = at;
        up[i] += readings[i].uncertainty;
        down[i] -= readings[i].uncertainty;
        const double half = (f(up) - f(down)) / 2;
        variance += half * half;
    }
    return {f(at), std::sqrt(variance)};
}

}  // namespace bw
