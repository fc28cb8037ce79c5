// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/text/sentences.h"
#include "core/units/format.h"

namespace bw {

/// What every sheet needs to be put into words: sentences, the reader's units, the day.
struct ReportContext {
    const Sentences& sentences;
    NumberStyle style;
    std::string printed;  ///< the day as it is read, "25 Nov 2026"
    std::string file;     ///< name of the farm file; may be empty

    std::string say(std::string_view code, std::vector<Argument> arguments = {}) const {
        return sentences.fill(code, arguments, style);
    }
    std::string say(const Fact& fact) const { return sentences.of(fact, style); }
    std::string say(const std::vector<Fact>& facts) const {
        std::string out;
        for (const auto& fact : facts) out += (out.empty() ? "" : " ") + say(fact);
        return out;
    }
    /// "2.8 bar"
    template <class Q>
    std::string shown(Q q) const {
        return format(anyQuantity(q), style);
    }
    /// "2.8"
    template <class Q>
    std::string figure(Q q) const {
        const Unit unit = displayUnit(style.units, kDimensionOf<Q>);
        return formatNumber(in(q, unit), unit, style.decimalMark);
    }
    /// As a gauge is read: tenths of a bar, whole psi.
    std::string gauge(Pressure pressure) const {
        const bool isPsi = displayUnit(style.units, Dimension::Pressure) == Unit::Psi;
        return formatFixed(number(pressure), isPsi ? 0 : 1, style.decimalMark);
    }
    /// "bar"
    template <class Q>
    std::string unit() const {
        return std::string(info(displayUnit(style.units, kDimensionOf<Q>)).symbol);
    }
    /// The figure as a plain number in the reader's unit, for charts.
    template <class Q>
    double number(Q q) const {
        return in(q, displayUnit(style.units, kDimensionOf<Q>));
    }
};

}  // namespace bw
