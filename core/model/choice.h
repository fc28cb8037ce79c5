// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace bw {

/// The words by which a choice is written in files and requests. Specialised beside each enum.
template <class E>
struct ChoiceNames;

template <class E>
constexpr std::string_view choiceName(E value) {
    for (const auto& [v, n] : ChoiceNames<E>::names) {
        if (v == value) return n;
    }
    return {};
}

template <class E>
constexpr std::optional<E> choiceFor(std::string_view text) {
    for (const auto& [v, n] : ChoiceNames<E>::names) {
        if (n == text) return v;
    }
    return std::nullopt;
}

}  // namespace bw
