// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/units/unit.h"

namespace bw {

/// A value that a sentence names: a quantity (shown in the reader's units), a plain number or text.
/// `Code` is itself a code that has words of its own ("limit.pump"), filled in by the sentences.
struct CodeText {
    std::string code;
    bool operator==(const CodeText&) const = default;
};
using ArgumentValue = std::variant<AnyQuantity, std::string, CodeText>;

struct Argument {
    std::string name;
    ArgumentValue value;
    bool operator==(const Argument&) const = default;
};

enum class Severity { Note, Warning, Error };

/// What is wrong, as a fact: a code that has a sentence in resources/text, the field it belongs to
/// ("limits.pressure_floor", as in calc requests) and the values that the sentence names.
struct Problem {
    std::string code;
    Severity severity = Severity::Error;
    std::string where;
    std::vector<Argument> arguments;
    bool operator==(const Problem&) const = default;
};

/// A fact with words: what Problem is, without being wrong.
struct Fact {
    std::string code;
    std::vector<Argument> arguments;
    bool operator==(const Fact&) const = default;
};

inline Problem error(std::string code, std::string where = {},
                     std::vector<Argument> arguments = {}) {
    return {std::move(code), Severity::Error, std::move(where), std::move(arguments)};
}
inline Problem warning(std::string code, std::string where = {},
                       std::vector<Argument> arguments = {}) {
    return {std::move(code), Severity::Warning, std::move(where), std::move(arguments)};
}
inline Problem note(std::string code, std::string where = {},
                    std::vector<Argument> arguments = {}) {
    return {std::move(code), Severity::Note, std::move(where), std::move(arguments)};
}

}  // namespace bw
