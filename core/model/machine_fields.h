// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/model/machine.h"

namespace bw {

/// What kind of value a field of a machine holds.
/// `NozzleNumbers`: nozzles by their number along the boom.
enum class FieldKind { Quantity, WholeNumber, Choice, Sections, Curve, NozzleNumbers };

/// One field of a machine seen without its type: for forms and lists, never for reckoning.
struct FieldView {
    FieldKind kind = FieldKind::Quantity;
    Dimension dimension = Dimension::None;  ///< of Quantity
    std::vector<std::string> choices;       ///< words of Choice, in order; "yes" and "no" of a bool
    bool isKnown = false;
    AnyQuantity value;   ///< of Quantity and WholeNumber
    std::string choice;  ///< of Choice
    Origin origin = Origin::Handbook;
    std::string typed;
    std::string date;
    std::optional<AnyQuantity> from;
    std::optional<AnyQuantity> to;
};

/// The field of a key (as in visitFields); nothing if there is no such key.
std::optional<FieldView> fieldView(const Machine& machine, std::string_view key);

/// Sets a number. It is from the handbook then, whatever the old one was (core/model/typed_over.h).
/// False (nothing changed) if the field holds no such number.
bool setField(Machine& machine, std::string_view key, AnyQuantity value,
              const std::string& typed = {});
/// Sets a choice by its word ("yes" and "no" for a bool). False as above.
bool setField(Machine& machine, std::string_view key, std::string_view choice);
void setSections(Machine& machine, std::vector<int> sections);
void setFeeds(Machine& machine, std::vector<int> nozzles);
void setCurve(Machine& machine, std::vector<CurvePoint> curve);
/// Sets where a known value came from. The date is kept for measurements alone, the range for
/// assumptions. False if the field is unknown.
bool setFieldOrigin(Machine& machine, std::string_view key, Origin origin, std::string date = {});
/// The plausible range of an assumed number. False if the field is unknown or no number.
bool setFieldRange(Machine& machine, std::string_view key, AnyQuantity from, AnyQuantity to);
/// Makes a field unknown.
bool clearField(Machine& machine, std::string_view key);

struct OriginCounts {
    int measured = 0;
    int handbook = 0;
    int assumed = 0;
    bool operator==(const OriginCounts&) const = default;
};
/// How many known fields came from where.
OriginCounts originCounts(const Machine& machine);

/// The questions that make a machine usable, as groups of keys, in the order in which they are
/// asked. A question is given when each of its keys is known and one of them is not assumed.
enum class QuestionState { Open, Assumed, Given };
struct SetupQuestion {
    std::vector<std::string> keys;
    QuestionState state = QuestionState::Open;
};
std::vector<SetupQuestion> tenQuestions(const Machine& machine);

}  // namespace bw
