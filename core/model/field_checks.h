// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/base/problem.h"
#include "core/model/origin.h"
#include "core/units/unit.h"

namespace bw {

/// Gathers problems in the order in which they are found.
class ProblemList {
  public:
    void add(Problem problem) { m_problems.push_back(std::move(problem)); }
    void addIf(bool isWrong, Problem problem) {
        if (isWrong) add(std::move(problem));
    }
    std::vector<Problem> take() { return std::move(m_problems); }

  private:
    std::vector<Problem> m_problems;
};

/// Checks one number against what is possible and usual for `area.key` ("machine", "spacing").
/// Problems (where = key): value_not_finite, value_negative, value_zero, value_not_possible are
/// errors, value_unusual is a warning. False if the number can't be reckoned with.
bool checkNumber(ProblemList& list, std::string_view area, std::string_view key, AnyQuantity value);

/// Checks the origin of a field: measured_without_date (a note), a range of an assumed value that
/// is crossed (assumed_range_crossed) or does not hold the value (assumed_outside_range).
template <class T>
void checkOrigin(ProblemList& list, std::string_view key, const Sourced<T>& field);

namespace detail {
template <class T>
struct IsNumeric : std::bool_constant<std::is_same_v<T, double> || std::is_same_v<T, int>> {};
template <int V, int L, int M, int T>
struct IsNumeric<Quantity<V, L, M, T>> : std::true_type {};

template <class T>
AnyQuantity toAny(T value) {
    if constexpr (std::is_same_v<T, int>)
        return anyQuantity(static_cast<double>(value));
    else
        return anyQuantity(value);
}
void checkAssumedRange(ProblemList& list, std::string_view key, AnyQuantity value, AnyQuantity from,
                       AnyQuantity to);
}  // namespace detail

template <class T>
void checkOrigin(ProblemList& list, std::string_view key, const Sourced<T>& field) {
    list.addIf(field.origin == Origin::Measured && field.date.empty(),
               note("measured_without_date", std::string(key)));
    if constexpr (detail::IsNumeric<T>::value) {
        if (field.origin == Origin::Assumed && field.from && field.to) {
            detail::checkAssumedRange(list, key, detail::toAny(field.value),
                                      detail::toAny(*field.from), detail::toAny(*field.to));
        }
    }
}

/// All that can be said of one field by itself; nothing if it is unknown.
template <class T>
void checkField(ProblemList& list, std::string_view area, std::string_view key,
                const Known<T>& field) {
    if (!field) return;
    checkOrigin(list, key, *field);
    if constexpr (detail::IsNumeric<T>::value)
        checkNumber(list, area, key, detail::toAny(field->value));
}

}  // namespace bw
