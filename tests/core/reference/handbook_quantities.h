// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>

#include "core/units/unit.h"

namespace bw::handbook {

/// The inputs of one printed example, "nozzle_flow_l_min=1.3;speed_km_h=7.8".
class Inputs {
  public:
    explicit Inputs(std::string_view text);
    bool has(const std::string& key) const { return m_values.count(key) > 0; }
    double number(const std::string& key) const;
    std::string text(const std::string& key) const;
    /// The input whose key is the name and a unit: get<Speed>("speed") finds speed_mph and
    /// speed_km_h.
    template <class Q>
    Q get(const std::string& name) const {
        for (const auto& [suffix, unit] : suffixes()) {
            const bool fits = info(unit).dimension == kDimensionOf<Q>;
            if (fits && has(name + "_" + suffix)) return make<Q>(number(name + "_" + suffix), unit);
        }
        throw std::out_of_range("no input " + name);
    }

  private:
    static const std::map<std::string, Unit>& suffixes();
    std::map<std::string, std::string> m_values;
};

/// What the core gives for a quantity of the tables, in the table's `unit`. Throws if the quantity,
/// an input or the unit is not known: a row that nobody computes must not pass.
double computed(const std::string& quantity, const Inputs& inputs, const std::string& unit);

}  // namespace bw::handbook
