// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace bw {

/// Where a value came from.
enum class Origin { Measured, Handbook, Assumed };
std::string_view name(Origin origin);  ///< "measured", "handbook", "assumed"
std::optional<Origin> originFor(std::string_view name);

/// A value with what is known of it. `typed` is the text as the person wrote it, number and unit
/// ("40 psi"), so that it is shown again unrounded; empty if it was computed or preset.
template <class T>
struct Sourced {
    T value{};
    Origin origin = Origin::Handbook;
    std::string typed;
    std::string date;       ///< ISO date of a measurement; may be empty
    std::optional<T> from;  ///< plausible range of an assumed value
    std::optional<T> to;

    Sourced() = default;
    Sourced(T v, Origin o = Origin::Handbook) : value(std::move(v)), origin(o) {}
    bool operator==(const Sourced&) const = default;
};

/// A value that may be unknown. Unknown never passes a check; it is "not checked".
template <class T>
using Known = std::optional<Sourced<T>>;

/// The bare value of a known field, or nothing.
template <class T>
std::optional<T> bare(const Known<T>& known) {
    return known ? std::optional<T>(known->value) : std::nullopt;
}
template <class T>
T valueOr(const Known<T>& known, T fallback) {
    return known ? known->value : fallback;
}

}  // namespace bw
