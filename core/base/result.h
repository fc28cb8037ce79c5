// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cassert>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/problem.h"

namespace bw {

/// A value, or the problem that kept it from coming about. For what can happen: bad input, no
/// solution, a full disk. What cannot happen is asserted instead.
template <class T>
class [[nodiscard]] Result {
  public:
    Result(T value) : m_content(std::in_place_index<0>, std::move(value)) {}
    Result(Problem problem) : m_content(std::in_place_index<1>, std::move(problem)) {}

    bool isOk() const { return m_content.index() == 0; }
    explicit operator bool() const { return isOk(); }
    const T& value() const& {
        assert(isOk());
        return std::get<0>(m_content);
    }
    T& value() & {
        assert(isOk());
        return std::get<0>(m_content);
    }
    T&& value() && {
        assert(isOk());
        return std::get<0>(std::move(m_content));
    }
    const T& operator*() const& { return value(); }
    const T* operator->() const { return &value(); }
    const Problem& problem() const {
        assert(!isOk());
        return std::get<1>(m_content);
    }

  private:
    std::variant<T, Problem> m_content;
};

/// For what yields nothing but may fail.
struct Done {};
using Outcome = Result<Done>;

}  // namespace bw
