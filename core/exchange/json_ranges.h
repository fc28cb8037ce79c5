// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/exchange/json_document.h"
#include "core/exchange/json_fields.h"

/// Sane ranges of single values. They are wide: only what no sprayer, and no arithmetic, can stand
/// is refused, such as nothing where something must flow, or 1e300.
namespace bw {

/// An issue at `where` if the number is out of the range of its dimension, or of its key for plain
/// numbers. Some keys may be nothing ("limits.pressure_floor"); no quantity may be negative.
void checkRange(AnyQuantity quantity, std::string_view key, const std::string& where,
                JsonIssues& issues);

/// Value and bounds of a field; bounds the right way round.
template <class T>
void checkFieldRange(const Known<T>&, std::string_view, const std::string&, JsonIssues&) {}
template <class T>
void checkNumberRange(const Sourced<T>& field, std::string_view key, const std::string& where,
                      JsonIssues& issues) {
    checkRange(anyQuantity(field.value), key, where, issues);
    if (field.from) checkRange(anyQuantity(*field.from), key, pathTo(where, "from"), issues);
    if (field.to) checkRange(anyQuantity(*field.to), key, pathTo(where, "to"), issues);
    if (field.from && field.to && *field.from > *field.to) {
        issues.add(error("json_bounds_order", pathTo(where, "from")));
    }
}
template <int V, int L, int M, int T>
void checkFieldRange(const Known<Quantity<V, L, M, T>>& field, std::string_view key,
                     const std::string& where, JsonIssues& issues) {
    if (field) checkNumberRange(*field, key, where, issues);
}
inline void checkFieldRange(const Known<double>& field, std::string_view key,
                            const std::string& where, JsonIssues& issues) {
    if (field) checkNumberRange(*field, key, where, issues);
}

}  // namespace bw
